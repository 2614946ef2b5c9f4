//! The visit that the sheet is for: with whom, since when changes are told, what is to be asked and
//! what is still open from before.

use super::{Asked, Item, Part, Questions, Reader, earlier::Earlier};
use crate::{
    across::{
        questions::occasion::{With, waiting},
        tasks::seen,
    },
    base::{
        day,
        ids::{AppointmentId, ContactId},
    },
    family::tasks::{model::Task, store::Wanted},
    platform::{
        auth::area::{Clinical, Essentials, Tasks},
        db::View,
        error::{Error, Result},
    },
    record::{
        appointments::{escort::Escort, meeting::Meeting, store as appointments},
        contacts::{model::Contact, store as contacts},
        questions::{model::Question, store as questions},
    },
};
use time::{Date, Duration, Time};

/// Which visit: one time of an appointment, or with a contact; and since when, where it was typed.
pub struct Which {
    pub visit: Option<(AppointmentId, Date)>,
    pub contact: Option<ContactId>,
    pub since: Option<Date>,
}

pub struct Occasion {
    pub visit: Option<(AppointmentId, Date)>,
    pub since: Date,
    with: Option<With>,
    earlier: Earlier,
    lines: Vec<String>,
    /// Why from that day on.
    since_words: String,
}

impl Occasion {
    pub async fn read(view: &View<Clinical>, which: &Which, today: Date) -> Result<Occasion> {
        let meeting = match which.visit {
            Some((id, on)) => {
                let view = view.area::<Tasks>().ok_or(Error::NotFound)?;
                Some(appointments::meeting(&view, id, on).await?)
            }
            None => None,
        };
        let booked = meeting.as_ref().and_then(|it| it.appointment.contact_id);
        let contact = match (which.contact, booked) {
            (Some(id), _) => Some(contact(view, id).await?),
            // Whoever sees no contacts is still shown when the visit is.
            (None, Some(id)) => contact(view, id).await.ok(),
            (None, None) => None,
        };
        let typed = meeting.as_ref().and_then(|it| it.appointment.with_whom.as_ref());
        let whom = contact.as_ref().map(|it| &it.name).or(typed).map(ToString::to_string);
        let with = match (&contact, &meeting) {
            (Some(contact), _) => Some(With::contact(contact)),
            // Where nobody is named, what the visit is.
            (None, Some(it)) => {
                let title = it.appointment.title.to_string();
                let name = whom.clone().unwrap_or(title);
                Some(With { contact: booked, kind: None, name })
            }
            (None, None) => None,
        };
        let visit = meeting.as_ref().map(|it| (it.id(), it.on));
        let zone = view.whose().await?.zone;
        let until = match &meeting {
            Some(meeting) => meeting.starts,
            None => zone.instant(today + Duration::days(1), Time::MIDNIGHT),
        };
        let earlier = match &with {
            Some(with) => Earlier::read(view, with, (until, visit)).await?,
            None => Earlier::default(),
        };
        let lines = match &meeting {
            Some(meeting) => lines(view, meeting, whom).await?,
            None => whom.iter().map(|it| format!("With {it}")).collect(),
        };
        let last = earlier.last(&zone);
        let (since, since_words) = since(which.since, (with.as_ref(), last), today);
        Ok(Occasion { visit, since, with, earlier, lines, since_words })
    }

    pub fn lines(&self) -> Vec<String> {
        self.lines.clone()
    }

    pub fn since_words(&self) -> String {
        self.since_words.clone()
    }

    /// What is to be asked, in the family's order, and what is still open from before.
    pub async fn open(&self, view: &View<Clinical>, reader: &Reader) -> Result<(Questions, Part)> {
        let names = view.names().await?;
        let (open, asked): (Vec<_>, Vec<_>) =
            self.questions(view).await?.into_iter().partition(Question::is_open);
        let says = |it: &Question| match it.owner_id {
            Some(owner) => format!("{} will ask", names.of(owner)),
            None => "nobody has said that she will ask".to_owned(),
        };
        let items = open.iter().map(|it| Asked { words: it.words.to_string(), says: says(it) });
        let items: Vec<Asked> = items.collect();
        let sentence = items.is_empty().then(|| match &self.with {
            Some(with) => format!("No question waits for {}.", with.name),
            None => "No question is written down.".to_owned(),
        });
        let questions = Questions { title: "Questions", sentence, items };
        let mut overdue = self.overdue(view, reader).await?;
        overdue.items.extend(asked.iter().map(|it| {
            let on = it.asked_day().unwrap_or_default();
            let lines = vec![format!("asked {on}, no answer is written down")];
            Item { head: it.words.to_string(), lines }
        }));
        if overdue.items.is_empty() && overdue.sentence.is_none() {
            let none = "Nothing is open from before that this record knows of.";
            overdue.sentence = Some(none.to_owned());
        }
        Ok((questions, overdue))
    }

    /// Those for the one it is with; where nobody is chosen, all that wait.
    async fn questions(&self, view: &View<Clinical>) -> Result<Vec<Question>> {
        if let Some(with) = &self.with {
            return waiting(view, with).await;
        }
        let mut all = questions::list(view, &questions::Wanted::default()).await?;
        all.retain(Question::waits);
        Ok(all)
    }

    /// What was to be done after the earlier visits, and is not done.
    async fn overdue(&self, view: &View<Clinical>, reader: &Reader) -> Result<Part> {
        const TITLE: &str = "Still open from before";
        let Some(tasks) = view.area::<Tasks>() else {
            return Ok(Part::closed(TITLE, &reader.name));
        };
        let mut open = seen::list(&tasks, &Wanted::default()).await?;
        open.retain(|it| it.stands() && self.earlier.led_to(it));
        open.sort_by_key(|it| (!it.is_overdue(reader.today), it.due_on.is_none(), it.due_on));
        let names = view.names().await?;
        let item = |it: &Task| {
            let due = match it.due_on {
                Some(on) if on < reader.today => format!("was due {}", day::words(on)),
                Some(on) => format!("due {}", day::words(on)),
                None => "no day is set".to_owned(),
            };
            let owner = it.owner_id.map(|it| format!("{} has it", names.of(it)));
            let owner = owner.unwrap_or_else(|| "nobody has it".to_owned());
            Item { head: it.title.to_string(), lines: vec![due, owner] }
        };
        let items = open.iter().map(item).collect();
        Ok(Part { title: TITLE, sentence: None, notice: None, items })
    }
}

async fn lines(
    view: &View<Clinical>,
    meeting: &Meeting,
    whom: Option<String>,
) -> Result<Vec<String>> {
    let (zone, of) = (view.whose().await?.zone, &meeting.appointment);
    let when = match meeting.is_timed() {
        true => format!("{}, {} time", zone.in_words(meeting.starts), zone.place()),
        false => format!("{}, the time is not known", day::short_words(meeting.day(&zone))),
    };
    let place = of.place.as_ref().map(|it| format!(", {it}")).unwrap_or_default();
    let with = match whom {
        Some(whom) => Some(format!("With {whom}{place}")),
        None => of.place.as_ref().map(ToString::to_string),
    };
    let names = view.names().await?;
    let along = match meeting.escort {
        Escort::Member(member) => Some(format!("{} goes along", names.of(member))),
        Escort::Contact(id) => {
            contact(view, id).await.ok().map(|it| format!("{} goes along", it.name))
        }
        Escort::Alone => None,
        Escort::Nobody => Some("Nobody has said that she will go along".to_owned()),
    };
    let interpreter = of.interpreter.as_ref().map(|it| format!("Interpreter: {it}"));
    let head = Some(format!("{when}: {}", of.title));
    Ok([head, with, along, interpreter].into_iter().flatten().collect())
}

/// The day that was typed, that of the last visit there, or a month back.
fn since(
    typed: Option<Date>,
    (with, last): (Option<&With>, Option<Date>),
    today: Date,
) -> (Date, String) {
    let month = today - Duration::days(30);
    match (typed, with, last) {
        (Some(on), ..) => (on, format!("Since {}", day::words(on))),
        (None, Some(with), Some(on)) => {
            (on, format!("Since the visit with {} on {}", with.name, day::words(on)))
        }
        (None, Some(with), None) => {
            let on = day::words(month);
            (month, format!("Since {on}: no earlier visit with {} was kept", with.name))
        }
        (None, None, _) => (month, format!("Since {}: no visit is chosen", day::words(month))),
    }
}

async fn contact(view: &View<Clinical>, id: ContactId) -> Result<Contact> {
    let view = view.area::<Essentials>().ok_or(Error::NotFound)?;
    contacts::find(&view, id).await
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    #[test]
    fn changes_are_told_since_the_last_visit_there_or_since_the_day_that_was_typed() {
        let today = date!(2026 - 11 - 25);
        let lind = With { contact: None, kind: None, name: "Dr Lind".to_owned() };
        let last = Some(date!(2026 - 08 - 03));
        let (on, words) = since(None, (Some(&lind), last), today);
        assert_eq!(
            (Some(on), words.as_str()),
            (last, "Since the visit with Dr Lind on 3 August 2026")
        );
        let typed = Some(date!(2026 - 01 - 01));
        assert_eq!(since(typed, (Some(&lind), last), today).0, date!(2026 - 01 - 01));
        let (on, words) = since(None, (Some(&lind), None), today);
        assert_eq!(on, date!(2026 - 10 - 26));
        assert!(words.ends_with("no earlier visit with Dr Lind was kept"));
        assert!(since(None, (None, None), today).1.ends_with("no visit is chosen"));
    }
}
