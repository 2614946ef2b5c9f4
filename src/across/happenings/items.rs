//! The items a note can be about: what is listed now, as far as the reader sees it.

use crate::{
    platform::{
        auth::area::{Clinical, Essentials},
        db::View,
        error::Result,
    },
    record::{
        allergies::store as allergies, baseline::store as baseline,
        conditions::store as conditions, contacts::store as contacts,
        medicines::store as medicines, operations::store as operations, people::store as people,
    },
};
use std::fmt;

/// An item, as a form sends it: `medicine/7`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    pub kind: String,
    pub item: i64,
}

impl Choice {
    fn of(kind: &str, item: impl Into<i64>) -> Choice {
        Choice { kind: kind.to_owned(), item: item.into() }
    }

    pub fn parse(sent: &str) -> Option<Choice> {
        let (kind, item) = sent.split_once('/')?;
        Some(Choice { kind: kind.to_owned(), item: item.parse().ok()? })
    }
}

impl fmt::Display for Choice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.kind, self.item)
    }
}

/// Items of one kind, under what the page calls them.
pub struct Group {
    pub label: &'static str,
    pub items: Vec<(Choice, String)>,
}

/// Everything a note or a question can be about now.
pub async fn all<A>(view: &View<A>) -> Result<Vec<Group>> {
    let mut groups = Vec::new();
    if let Some(view) = view.area::<Clinical>() {
        let medicines = medicines::current(&view).await?.into_iter();
        let medicines = medicines.map(|it| (Choice::of("medicine", it.id), it.title()));
        groups.push(group("Medicines", medicines));
        let conditions = conditions::standing(&view).await?.into_iter();
        let conditions = conditions.map(|it| (Choice::of("condition", it.id), it.name.to_string()));
        groups.push(group("Conditions", conditions));
        let operations = operations::list(&view).await?.into_iter();
        let operations = operations.map(|it| (Choice::of("operation", it.id), it.name.to_string()));
        groups.push(group("Operations and implants", operations));
    }
    if let Some(view) = view.area::<Essentials>() {
        let allergies = allergies::list(&view).await?.into_iter();
        let allergies =
            allergies.map(|it| (Choice::of("allergy", it.id), it.substance.to_string()));
        groups.push(group("Allergies", allergies));
        let contacts = contacts::list(&view).await?.into_iter();
        let contacts = contacts.map(|it| (Choice::of("contact", it.id), it.name.to_string()));
        groups.push(group("Contacts", contacts));
        let usual = baseline::find(&view).await?;
        let name = people::find(&view).await?.name;
        let usual = (usual.version > 0)
            .then(|| (Choice::of("baseline", usual.id), format!("How {name} usually is")));
        groups.push(group("Usual self", usual.into_iter()));
    }
    groups.retain(|it| !it.items.is_empty());
    Ok(groups)
}

/// The title of an item that is listed now; what was chosen may have left the list since.
pub async fn title<A>(view: &View<A>, kind: &str, item: i64) -> Result<Option<String>> {
    let mut listed = all(view).await?.into_iter().flat_map(|it| it.items);
    let found = listed.find(|(it, _)| it.kind == kind && it.item == item);
    Ok(found.map(|(_, title)| title))
}

/// What is said at the field where it has.
pub const GONE: &str = "This is not on the list any more. Choose again.";

fn group(label: &'static str, items: impl Iterator<Item = (Choice, String)>) -> Group {
    Group { label, items: items.collect() }
}
