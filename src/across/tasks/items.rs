//! What a task can be about: the items that a note can be about, and the questions that wait.

use crate::{
    across::happenings::items::{self, Choice, Group},
    platform::{auth::area::Clinical, db::View, error::Result},
    record::questions::store::{self as questions, Wanted},
};

pub async fn all<A>(view: &View<A>) -> Result<Vec<Group>> {
    let mut groups = items::all(view).await?;
    if let Some(view) = view.area::<Clinical>() {
        let all = questions::list(&view, &Wanted::default()).await?.into_iter();
        let waiting = all.filter(|it| it.waits());
        let choice = |id: i64| Choice { kind: "question".to_owned(), item: id };
        let items: Vec<_> = waiting.map(|it| (choice(it.id.into()), it.title())).collect();
        if !items.is_empty() {
            groups.push(Group { label: "Questions", items });
        }
    }
    Ok(groups)
}

/// Whether it is listed now; what was chosen may have left the list since.
pub async fn has<A>(view: &View<A>, kind: &str, item: i64) -> Result<bool> {
    let mut listed = all(view).await?.into_iter().flat_map(|it| it.items);
    Ok(listed.any(|(it, _)| it.kind == kind && it.item == item))
}
