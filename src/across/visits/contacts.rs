//! With whom a visit was: one of the contacts, as far as the one who writes sees them, or a name.

use crate::{
    base::{ids::ContactId, text::Line},
    platform::{
        auth::area::{Clinical, Essentials},
        db::View,
        error::Result,
        web::form::FormErrors,
    },
    record::contacts::{model::Contact, store as contacts},
};

/// Those that can be chosen.
pub async fn listed(view: &View<Clinical>) -> Result<Vec<Contact>> {
    match view.area::<Essentials>() {
        Some(view) => contacts::list(&view).await,
        None => Ok(Vec::new()),
    }
}

/// The name of the contact that was chosen, or the typed one; `kept` is the one it was with before,
/// which may have left the list since.
pub async fn name(
    view: &View<Clinical>,
    (contact, typed): (Option<ContactId>, Option<Line>),
    kept: Option<(ContactId, &Line)>,
) -> Result<(Option<ContactId>, Line)> {
    let Some(id) = contact else {
        let says = "Choose or enter with whom the visit was.";
        return Ok((None, typed.ok_or_else(|| FormErrors::at("with_whom", says))?));
    };
    if let Some((_, name)) = kept.filter(|it| it.0 == id) {
        return Ok((Some(id), name.clone()));
    }
    let found = listed(view).await?.into_iter().find(|it| it.id == id);
    let gone = || FormErrors::at("contact_id", "This is not on the list any more. Choose again.");
    Ok((Some(id), found.ok_or_else(gone)?.name))
}
