//! What was said to be renewed, by its title, for the history and for tasks: as the reader sees what it
//! is about, and nothing of what is hidden from her.

use super::sources::{self, WINDOW};
use crate::{
    base::ids::RenewalId,
    platform::{auth::area::Papers, db::View, error::Result},
    record::renewals::{model::Renewal, store},
};

/// Those that a task can be about: neither struck nor let lapse.
pub async fn standing(view: &View<Papers>) -> Result<Vec<(RenewalId, String)>> {
    let all = store::list(view).await?;
    let rests =
        |id: RenewalId| all.iter().any(|it| it.id == id && (it.struck || it.lapsed_on.is_some()));
    Ok(of(view).await?.into_iter().filter(|(id, _)| !rests(*id)).collect())
}

pub async fn of(view: &View<Papers>) -> Result<Vec<(RenewalId, String)>> {
    let all = store::list(view).await?;
    if all.is_empty() {
        return Ok(Vec::new());
    }
    let about = sources::titles(view).await?;
    let title = |it: Renewal| {
        let title = match (it.title, it.about_kind, it.about_item) {
            (Some(title), ..) => title.to_string(),
            (None, Some(kind), Some(item)) if kind == WINDOW => {
                sources::window_named(item, it.rule)?
            }
            (None, Some(kind), Some(item)) => about.get(&(kind, item))?.clone(),
            _ => return None,
        };
        Some((it.id, title))
    };
    Ok(all.into_iter().filter_map(title).collect())
}
