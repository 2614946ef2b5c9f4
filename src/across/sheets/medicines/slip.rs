//! The facts of a change slip: what changed among the medicines since a day, who said so and why,
//! for a clinician or a pharmacy that has not been told. One change alone, or all that a contact has
//! not been told. The slip asks for nothing and advises nothing: it says what the family was told.

use super::{Ground, Head};
use crate::{
    across::turns::told,
    base::{
        day as calendar,
        ids::{ContactId, TurnId},
        text::Line,
    },
    platform::{
        auth::area::{Clinical, Essentials},
        db::View,
        error::{Error, Result},
    },
    record::{
        contacts::{model::Contact, store as contacts},
        medicines::{
            model::Medicine,
            store as medicines,
            turns::{
                model::Turn,
                store::{self as turns, Wanted},
            },
        },
    },
};
use serde::Serialize;
use time::Date;

/// Which changes: this one, or those since a day that this contact was not told; all of them, where
/// neither is said.
pub struct Which {
    pub turn: Option<TurnId>,
    pub contact: Option<ContactId>,
    pub since: Date,
}

#[derive(Serialize)]
pub struct Facts {
    pub paper: &'static str,
    pub lang: &'static str,
    pub title: &'static str,
    pub person: Head,
    pub for_whom: Option<Line>,
    /// "2 changes since 25 October 2026"
    pub sentence: String,
    pub items: Vec<Item>,
}

#[derive(Serialize)]
pub struct Item {
    pub medicine: String,
    /// "put on hold from 9 March 2026"
    pub what: String,
    pub before: Option<String>,
    pub now: String,
    pub purpose: Option<Line>,
    pub in_place_of: Option<String>,
    pub resume: Option<String>,
    pub said_by: Line,
    pub reason: Line,
}

impl Facts {
    /// As the reader may see them, in one snapshot.
    pub async fn read(view: &View<Clinical>, which: &Which) -> Result<Facts> {
        let ground = Ground::read(view).await?;
        let shown = medicines::list(view).await?;
        let contact = match which.contact {
            Some(id) => Some(contact(view, id).await?),
            None => None,
        };
        let turns = chosen(view, which, contact.as_ref()).await?;
        let items: Vec<_> = turns.iter().filter_map(|it| item(it, &shown)).collect();
        if which.turn.is_some() && items.is_empty() {
            return Err(Error::NotFound);
        }
        Ok(Facts {
            paper: ground.paper,
            lang: "en",
            title: "Changes of the medicines",
            sentence: sentence(items.len(), which),
            person: ground.head,
            for_whom: contact.map(|it| it.name),
            items,
        })
    }
}

async fn contact(view: &View<Clinical>, id: ContactId) -> Result<Contact> {
    let view = view.area::<Essentials>().ok_or(Error::NotFound)?;
    contacts::find(&view, id).await
}

async fn chosen(
    view: &View<Clinical>,
    which: &Which,
    contact: Option<&Contact>,
) -> Result<Vec<Turn>> {
    if let Some(id) = which.turn {
        return Ok(vec![turns::find(view, id).await?]);
    }
    let wanted = Wanted { since: Some(which.since), ..Wanted::default() };
    let mut all = turns::list(view, &wanted).await?;
    if let Some(contact) = contact {
        let tellings = turns::tellings(view, None).await?;
        all.retain(|it| told::is_untold(contact, it, &tellings));
    }
    Ok(all)
}

fn item(turn: &Turn, shown: &[Medicine]) -> Option<Item> {
    let of = |id| shown.iter().find(|it| it.id == id);
    let medicine = of(turn.medicine_id)?;
    Some(Item {
        medicine: medicine.title(),
        what: turn.sentence(),
        before: turn.was_taken(medicine),
        now: medicine.taken(),
        purpose: medicine.purpose.clone(),
        in_place_of: turn.replaces_id.and_then(of).map(Medicine::title),
        resume: turn
            .is_hold()
            .then(|| turn.resuming_words().unwrap_or_else(|| "no day to resume is given".into())),
        said_by: turn.said_by.clone(),
        reason: turn.reason.clone(),
    })
}

fn sentence(count: usize, which: &Which) -> String {
    let noun = if count == 1 { "change" } else { "changes" };
    match (which.turn, count) {
        (Some(_), _) => "One change".to_owned(),
        (None, 0) => format!("Nothing changed since {}", calendar::words(which.since)),
        (None, _) => format!("{count} {noun} since {}", calendar::words(which.since)),
    }
}
