//! The member's own tasks that have a day, each as a whole day of her calendar.
//!
//! As an event and not as a VTODO: programs that fetch a calendar by its address leave those out (common practice, no
//! source). What is done, let go or handed on is not in it any more.

use super::{
    event::{Event, Starts, State},
    gather::{About, Detail},
};
use crate::{
    across::tasks::seen,
    base::{clock::Instant, ids::MemberId},
    family::tasks::{model::Task, store::Wanted},
    platform::{audit::steady_uuid, auth::area::Tasks, db::View, error::Result},
};
use std::collections::HashMap;

/// Those that the member has, with when each was last changed.
pub async fn read(view: &View<Tasks>, member: MemberId) -> Result<Vec<(Task, Instant)>> {
    let changed: HashMap<i64, Instant> = view.last_changes("task").await?.into_iter().collect();
    let mut all = seen::list(view, &Wanted::default()).await?;
    all.retain(|it| it.stands() && it.is_owned_by(member));
    let dated = |it: Task| {
        let at = changed.get(&i64::from(it.id)).copied().unwrap_or(it.entered_at);
        (it, at)
    };
    Ok(all.into_iter().map(dated).collect())
}

/// None: no day matters, so it is in no calendar.
pub fn event(about: &About, task: &Task, changed: Instant) -> Option<Event> {
    let title = match about.detail {
        Detail::Names => task.title.as_str(),
        Detail::Nothing => "Task",
    };
    let base = about.house.trim_end_matches('/');
    Some(Event {
        uid: steady_uuid(&format!("{} {} task {}", about.house, about.person, task.id)),
        sequence: task.version - 1,
        stamp: changed,
        starts: Starts::Day(task.due_on?),
        minutes: 0,
        rule: None,
        instead_of: None,
        state: State::Confirmed,
        summary: format!("{title} ({})", about.called),
        place: None,
        more: task.due(),
        page: format!("{base}/p/{}/tasks/{}", about.person, task.id),
    })
}
