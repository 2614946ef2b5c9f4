//! One time of an appointment in words: when it is there and for the reader, with whom, who goes along.

use crate::{
    base::{
        day,
        ids::{ContactId, MemberId},
        time_of_day::TimeOfDay,
        zone::Zone,
    },
    platform::{
        audit::Names,
        auth::area::{Essentials, Tasks},
        db::View,
        error::Result,
        web::{
            page::Page,
            urls::{self, Address},
        },
    },
    record::{
        appointments::{
            escort::Escort,
            meeting::Meeting,
            model::{Appointment, Status},
            store,
        },
        contacts::store as contacts,
    },
};
use std::collections::HashMap;
use time::Date;

/// What is needed to say it: names, and whose clocks.
pub struct Words {
    names: Names,
    contacts: HashMap<ContactId, String>,
    /// The members who may go along.
    escorts: Vec<(MemberId, String)>,
    me: MemberId,
    person: String,
    zone: Zone,
    reader: Zone,
}

impl Words {
    pub async fn read(view: &View<Tasks>, page: &Page) -> Result<Words> {
        let contacts = match view.area::<Essentials>() {
            Some(view) => contacts::titles(&view).await?.into_iter().collect(),
            None => HashMap::new(),
        };
        Ok(Words {
            names: view.names().await?,
            contacts,
            escorts: store::escorts(view).await?,
            me: view.member(),
            person: page.person.as_ref().map(|it| it.name.clone()).unwrap_or_default(),
            zone: page.local().clone(),
            reader: page.zone.clone(),
        })
    }

    /// "Ines", "Ruth Maki", "Ottoline Varga goes alone"; none: nobody has said that she will.
    pub fn escort(&self, escort: Escort) -> Option<String> {
        match escort {
            Escort::Nobody => None,
            Escort::Alone => Some(format!("{} goes alone", self.person)),
            Escort::Contact(id) => Some(
                self.contacts.get(&id).map_or("one of the contacts", String::as_str).to_owned(),
            ),
            Escort::Member(id) => Some(match self.has_left(id) {
                true => format!("{}, who has no place here any more", self.names.of(id)),
                false => self.names.of(id).to_owned(),
            }),
        }
    }

    /// Whether the one who was to go along sees the calendar no more.
    pub fn has_left(&self, member: MemberId) -> bool {
        !self.escorts.iter().any(|(id, _)| *id == member)
    }

    /// "goes along: Ines"
    pub fn along(&self, meeting: &Meeting) -> String {
        match meeting.escort {
            Escort::Alone => format!("{} goes alone", self.person),
            other => match self.escort(other) {
                Some(name) => format!("{name} goes along"),
                None => "nobody goes along yet".into(),
            },
        }
    }

    /// Whom a form offers to go along, each with its name there; who stands there already stays.
    pub fn choices(
        &self,
        contacts: &[(ContactId, String)],
        now: Option<Escort>,
    ) -> Vec<(String, String)> {
        let members = self.escorts.iter().map(|(id, name)| (Escort::Member(*id), name.clone()));
        let contacts = contacts.iter().map(|(id, name)| (Escort::Contact(*id), name.clone()));
        let alone = (Escort::Alone, format!("{} goes alone", self.person));
        let mut all: Vec<_> = members.chain([alone]).chain(contacts).collect();
        let missing = now.filter(|now| !all.iter().any(|(it, _)| it == now));
        all.extend(missing.and_then(|it| Some((it, self.escort(it)?))));
        all.into_iter().map(|(it, name)| (it.name(), name)).collect()
    }

    pub fn with(&self, of: &Appointment) -> Option<String> {
        let contact = of.contact_id.and_then(|it| self.contacts.get(&it).cloned());
        contact.or_else(|| of.with_whom.as_ref().map(ToString::to_string))
    }

    pub fn when(&self, meeting: &Meeting) -> When {
        When::of(meeting, &self.zone, &self.reader)
    }
}

/// When it is, where the person is and for the reader.
pub struct When {
    /// "Tue 3 Mar 2026"
    pub day: String,
    /// "9:30 am", "9:30 am Duluth" where the reader's clock differs.
    pub time: String,
    /// "7:30 am for you"
    pub here: Option<String>,
    pub date: Date,
}

impl When {
    fn of(meeting: &Meeting, zone: &Zone, reader: &Zone) -> When {
        let at = meeting.starts;
        let date = meeting.day(zone);
        let day = day::short_words(date);
        if !meeting.is_timed() {
            return When { day, time: "time not known yet".into(), here: None, date };
        }
        let differs = zone.offset_differs(reader, at);
        let time = match differs {
            true => format!("{} {}", zone.clock_words(at), zone.place()),
            false => zone.clock_words(at),
        };
        let other_day = reader.day(at) != date;
        let weekday = if other_day { &reader.in_words(at)[..4] } else { "" };
        let here = differs.then(|| format!("{weekday}{} for you", reader.clock_words(at)));
        When { day, time, here, date }
    }

    /// "Tue 3 Mar 2026, 9:30 am Duluth"
    pub fn at(&self) -> String {
        format!("{}, {}", self.day, self.time)
    }

    /// "Tue 3 Mar 2026, 9:30 am Duluth · 7:30 am for you"
    pub fn words(&self) -> String {
        let here = self.here.as_ref().map(|it| format!(" · {it}")).unwrap_or_default();
        format!("{}, {}{here}", self.day, self.time)
    }
}

/// As it stands in a list.
pub struct Row {
    pub meeting: Meeting,
    pub when: When,
    pub with: Option<String>,
    pub along: String,
    /// "booked in the zone of New York, 10:30 am there"
    pub earlier_zone: Option<String>,
    pub warnings: Vec<String>,
    pub to: Address,
    pub over: bool,
}

impl Row {
    pub fn of(words: &Words, meeting: Meeting, page: &Page) -> Row {
        Row {
            when: words.when(&meeting),
            with: words.with(&meeting.appointment),
            along: words.along(&meeting),
            earlier_zone: earlier_zone(&meeting, page.local()),
            warnings: Vec::new(),
            to: place(&meeting),
            over: meeting.starts <= page.now,
            meeting,
        }
    }

    pub fn is_hers(&self, words: &Words) -> bool {
        self.meeting.escort.is_member(words.me)
    }

    /// Why it was cancelled.
    pub fn why(&self) -> Option<String> {
        let own = self.meeting.occurrence.as_ref().and_then(|it| it.reason.as_ref());
        own.or(self.meeting.appointment.reason.as_ref()).map(ToString::to_string)
    }

    /// Whether someone went along to what is over.
    pub fn went(&self) -> bool {
        !matches!(self.meeting.escort, Escort::Nobody)
    }

    pub fn is_kept(&self) -> bool {
        self.meeting.status == Status::Kept
    }

    /// That it is booked goes without saying.
    pub fn says_status(&self) -> bool {
        self.meeting.status != Status::Booked
    }

    pub fn is_cancelled(&self) -> bool {
        self.meeting.status == Status::Cancelled
    }

    /// Whether its time has come and nobody has said what became of it.
    pub fn is_unsaid(&self) -> bool {
        self.over && self.meeting.status.is_open()
    }
}

/// Its page: one of a series has its own.
pub fn place(meeting: &Meeting) -> Address {
    match meeting.appointment.is_series() {
        true => urls::appointment_on(meeting.id(), meeting.on),
        false => urls::appointment(meeting.id()),
    }
}

/// Where it was booked in a zone that is not the person's any more, and the clocks differ.
fn earlier_zone(meeting: &Meeting, person: &Zone) -> Option<String> {
    let (zone, at) = (&meeting.appointment.zone, meeting.starts);
    let differs = meeting.is_timed() && meeting.status.is_open() && zone.offset_differs(person, at);
    differs.then(|| {
        format!("written in the earlier zone: {} in {}", zone.clock_words(at), zone.place())
    })
}

/// What becomes of its time where the clocks are changed on its day.
pub fn unusual(meeting: &Meeting) -> Option<String> {
    let own = meeting.occurrence.as_ref();
    let day = own.and_then(|it| it.moved_on).unwrap_or(meeting.on);
    let time = own.and_then(|it| it.moved_time.as_ref()).or(meeting.appointment.at_time.as_ref());
    meeting.appointment.zone.unusual(day, time.map(TimeOfDay::time)?)
}
