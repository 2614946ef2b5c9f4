//! The visit that the sheet is for: with whom, since when changes are told, what is to be asked and
//! what is overdue.

use super::{Asked, Item, Part, Questions, Reader};
use crate::{
    base::{
        day,
        ids::{AppointmentId, ContactId},
    },
    platform::{
        auth::area::{Clinical, Essentials},
        db::View,
        error::{Error, Result},
    },
    record::{
        contacts::{model::Contact, store as contacts},
        questions::{
            model::Question,
            store::{self as questions, Wanted},
        },
    },
};
use time::{Date, Duration};

/// Which visit: one time of an appointment, or with a contact; and since when, where it was typed.
pub struct Which {
    pub visit: Option<(AppointmentId, Date)>,
    pub contact: Option<ContactId>,
    pub since: Option<Date>,
}

pub struct Occasion {
    pub visit: Option<(AppointmentId, Date)>,
    pub with: Option<String>,
    pub since: Date,
    /// Why from that day on.
    since_words: String,
}

impl Occasion {
    pub async fn read(view: &View<Clinical>, which: &Which, today: Date) -> Result<Occasion> {
        let contact = match which.contact {
            Some(id) => Some(contact(view, id).await?),
            None => None,
        };
        let with = contact.map(|it| it.name.to_string());
        let month = today - Duration::days(30);
        let since = which.since.unwrap_or(month);
        let since_words = format!("Since {}", day::words(since));
        Ok(Occasion { visit: which.visit, with, since, since_words })
    }

    pub fn lines(&self) -> Vec<String> {
        self.with.iter().map(|it| format!("With {it}")).collect()
    }

    pub fn since_words(&self) -> String {
        self.since_words.clone()
    }

    /// What is to be asked, and what is overdue.
    pub async fn open(&self, view: &View<Clinical>, _: &Reader) -> Result<(Questions, Part)> {
        let names = view.names().await?;
        let mut all = questions::list(view, &Wanted::default()).await?;
        all.retain(Question::waits);
        let owner = |it: &Question| match it.owner_id {
            Some(owner) => format!("{} will ask", names.of(owner)),
            None => "nobody has said that she will ask".to_owned(),
        };
        let asked = all
            .iter()
            .filter(|it| it.is_open())
            .map(|it| Asked { words: it.words.to_string(), says: owner(it) });
        let items: Vec<Asked> = asked.collect();
        let overdue = all.iter().filter_map(|it| {
            let on = it.asked_day()?;
            let lines = vec![format!("asked {on}, no answer is written down")];
            Some(Item { head: it.words.to_string(), lines })
        });
        let none = "Nothing is overdue that this record knows of.".to_owned();
        let overdue = Part::of("Still open from before", none, overdue.collect());
        let sentence = items.is_empty().then(|| "No question is written down.".to_owned());
        Ok((Questions { title: "Questions", sentence, items }, overdue))
    }
}

async fn contact(view: &View<Clinical>, id: ContactId) -> Result<Contact> {
    let view = view.area::<Essentials>().ok_or(Error::NotFound)?;
    contacts::find(&view, id).await
}
