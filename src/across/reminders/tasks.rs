//! A task on the day it is due, and once when that day is past: her own, and for those who look after
//! the board also what nobody has taken.
//!
//! What was put off reminds of nothing until its day.

use super::{
    occasion::{Asked, Occasion, Says},
    unsaid::Unsaid,
};
use crate::{
    across::tasks::seen,
    family::{
        members::mail_choices::{kind::Kind, model::Whose},
        tasks::{model::Task, store::Wanted},
    },
    platform::{
        auth::area::{Role, Tasks},
        error::Result,
        web::urls,
    },
};
use time::Duration;

/// So long after its day a task is no news any more.
const OF_USE: Duration = Duration::days(14);

pub async fn occasions(asked: &Asked<'_>) -> Result<Vec<Occasion>> {
    let Some(view) = asked.view.area::<Tasks>() else { return Ok(Vec::new()) };
    let today = asked.whom.whose_zone.day(asked.now);
    // Who works on her own tasks only does not hear of what lies on the board.
    let all = asked.choice.tasks == Whose::All && asked.whom.reach.role != Role::Aide;
    let hers = |it: &Task| it.is_owned_by(asked.whom.member) || all && it.owner_id.is_none();
    let mut found = Vec::new();
    for it in seen::list(&view, &Wanted::default()).await? {
        if it.stands() && !it.is_closed() && !it.is_put_off(today) && hers(&it) {
            found.extend(occasion(asked, &it));
        }
    }
    if asked.whom.names && !found.is_empty() {
        let unsaid = Unsaid::read(asked).await?;
        for (occasion, title) in &mut found {
            if let Says::Task { named, .. } = &mut occasion.says {
                *named = Some(title.clone()).filter(|it| unsaid.may_say(it));
            }
        }
    }
    Ok(found.into_iter().map(|it| it.0).collect())
}

fn occasion(asked: &Asked<'_>, it: &Task) -> Option<(Occasion, String)> {
    let due = it.due_on?;
    let after = asked.of_day(due.next_day()?);
    let past = after <= asked.now;
    let at = if past { after } else { asked.of_day(due) };
    let until = if past { after.plus(OF_USE) } else { after };
    let occasion = Occasion {
        kind: Kind::Task,
        item_kind: "task",
        item: it.id.into(),
        occurrence: format!("{due}, {}", if past { "past" } else { "due" }),
        at,
        begins: None,
        until: Some(until),
        stands: true,
        says: Says::Task { due, past, named: None },
        why: match it.is_owned_by(asked.whom.member) {
            true => "a task of this member is due",
            false => "a task that nobody has taken is due",
        },
        to: urls::task(it.id),
    };
    Some((occasion, it.title.to_string()))
}
