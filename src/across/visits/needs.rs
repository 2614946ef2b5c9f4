//! What a member's own visits need of her on Today: a note she is typing, and notes that she was asked
//! to read. Nobody else is shown either.

use super::contacts;
use crate::{
    across::today::needs::Need,
    platform::{auth::area::Clinical, db::View, error::Result, web::urls},
    record::{
        contacts::model::Contact,
        visits::{
            drafts::{model::Draft, store as drafts},
            store,
        },
    },
};

pub async fn own(view: &View<Clinical>) -> Result<Vec<Need>> {
    let mut needs = Vec::new();
    if view.may_change() {
        let drafts = drafts::list(view).await?;
        let contacts = if drafts.is_empty() { Vec::new() } else { contacts::listed(view).await? };
        for it in drafts {
            let says = format!("Your note is not saved yet: {}", title(&it, &contacts));
            needs.push(Need { says, to: urls::visit_draft(it.id) });
        }
    }
    for it in store::unread(view).await? {
        let says = format!("You were asked to read the note of the visit: {}", it.title());
        needs.push(Need { says, to: urls::visit(it.id) });
    }
    Ok(needs)
}

/// "a visit with Dr Lind of 12 November 2026", by what is typed in it.
pub fn title(draft: &Draft, contacts: &[Contact]) -> String {
    let chosen = contacts.iter().find(|it| Some(it.id) == draft.contact());
    let name = chosen.map(|it| it.name.to_string()).or_else(|| draft.field("with_whom"));
    let with = name.map(|it| format!(" with {it}")).unwrap_or_default();
    let on = draft.field("held_on").map(|it| format!(" of {it}")).unwrap_or_default();
    format!("a visit{with}{on}")
}
