//! The names of directives, copies and events for the history, as the reader sees them.

use super::ground::Ground;
use crate::platform::{auth::area::Directives, db::View, error::Result};

/// Each kind's name with its id and title.
pub async fn titles(view: &View<Directives>) -> Result<Vec<(&'static str, i64, String)>> {
    let ground = Ground::read(view).await?;
    let mut all = Vec::new();
    for it in &ground.all {
        all.push(("directive", it.id.into(), it.title()));
    }
    for it in &ground.copies {
        let title = format!("{} for {}", ground.title(it.directive_id), ground.holder(it));
        all.push(("directive_copy", it.id.into(), title));
    }
    for it in &ground.events {
        all.push(("directive_event", it.id.into(), ground.event_title(it)));
    }
    for it in &ground.asides {
        all.push(("directive_aside", it.id.into(), ground.title(it.directive_id)));
    }
    let asked = "“Are there directives?”".to_owned();
    all.push(("directive_answer", ground.answer.id.into(), asked));
    Ok(all)
}
