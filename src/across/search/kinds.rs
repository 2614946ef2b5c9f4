//! Everything that can be found: one function for each kind of thing, and this one list to extend.
//!
//! Each reads through the store of its kind, so what is hidden from the reader, out of her reach, or
//! her own alone by rules of the kind, is never among the leaves. A leaf has only what stands on the
//! item's own page, as the reader would see it there.

mod clinical;
mod papers;
mod person;
mod shared;

use crate::{
    across::history::kinds as history,
    base::zone::Zone,
    platform::{
        auth::area::{Clinical, Directives, Essentials, Log, Papers, Tasks},
        db::View,
        error::Result,
        web::urls::{self, Address},
        words::Leaf,
    },
};

/// Each kind, what one of it is called, and what many are.
const KINDS: [(&str, &str, &str); 21] = [
    ("person", "About the person", "About the person"),
    ("baseline", "Usual self", "Usual self"),
    ("statement", "Blood thinner, implant or device", "Blood thinner, implant or device"),
    ("medicine", "Medicine", "Medicines"),
    ("condition", "Condition", "Conditions"),
    ("allergy", "Allergy or intolerance", "Allergies and intolerances"),
    ("operation", "Operation or implant", "Operations and implants"),
    ("contact", "Contact", "Contacts"),
    ("question", "Question", "Questions and answers"),
    ("visit", "Note of a visit", "Notes of visits"),
    ("appointment", "Appointment", "Appointments"),
    ("task", "Task", "Tasks"),
    ("happening", "What happened", "What happened"),
    ("observation", "What was noticed", "What was noticed"),
    ("decision", "Decision", "Decisions"),
    ("paper", "Paper", "Papers and their pages"),
    ("directive", "Directive", "Directives"),
    ("card", "Card", "Cards"),
    ("cover", "Cover", "Covers"),
    ("refusal", "Refused at the counter", "Refused at the counter"),
    ("renewal", "To be renewed", "To be renewed"),
];

/// Everything that the reader may find; the pages of papers are added to their leaves.
pub async fn all<A>(view: &View<A>, zone: &Zone) -> Result<Vec<Leaf>> {
    let mut all = Vec::new();
    if let Some(view) = view.area::<Essentials>() {
        all.extend(person::person(&view).await?);
        all.extend(shared::allergies(&view).await?);
        all.extend(shared::contacts(&view).await?);
    }
    if let Some(view) = view.area::<Clinical>() {
        all.extend(person::statements(&view).await?);
        all.extend(clinical::medicines(&view).await?);
        all.extend(clinical::conditions(&view).await?);
        all.extend(clinical::operations(&view).await?);
        all.extend(clinical::questions(&view, zone).await?);
        all.extend(clinical::visits(&view).await?);
        all.extend(shared::decisions(&view, zone).await?);
    }
    if let Some(view) = view.area::<Tasks>() {
        all.extend(shared::appointments(&view).await?);
        all.extend(shared::tasks(&view, zone).await?);
    }
    if let Some(view) = view.area::<Log>() {
        all.extend(shared::happenings(&view, zone).await?);
        all.extend(shared::observations(&view).await?);
    }
    if let Some(view) = view.area::<Papers>() {
        all.extend(papers::papers(&view).await?);
        all.extend(papers::cards(&view).await?);
        all.extend(papers::covers(&view).await?);
        all.extend(papers::refusals(&view).await?);
        all.extend(papers::renewals(&view).await?);
    }
    if let Some(view) = view.area::<Directives>() {
        all.extend(papers::directives(&view).await?);
    }
    Ok(all)
}

/// What one of a kind is called.
pub fn name(kind: &str) -> &'static str {
    KINDS.iter().find(|it| it.0 == kind).map_or("", |it| it.1)
}

/// The kinds of which there is anything among these, in the order of the list.
pub fn on(leaves: &[Leaf]) -> Vec<(&'static str, &'static str)> {
    let there = KINDS.iter().filter(|kind| leaves.iter().any(|it| it.kind == kind.0));
    there.map(|(kind, _, many)| (*kind, *many)).collect()
}

/// Where it is shown.
pub fn address(leaf: &Leaf) -> Address {
    history::page(leaf.kind, leaf.item).unwrap_or_else(urls::search)
}
