//! What every page knows: where it is, whose record it shows, who is reading, what was just said.
//!
//! Made by a door. A template holds it as `page` and gets every address from `page.at(..)`.

use super::{
    asked::Asked,
    assets,
    layout::{self, AreaLink},
    urls::{self, Address},
};
use crate::base::{clock::Instant, day, ids::PersonId, zone::Zone};
use crate::platform::{
    auth::{
        area::AreaName,
        grant::Place,
        policy::{self, Level},
        session::SignedIn,
        voice::Voice,
    },
    house::House,
    random,
};
use std::borrow::Borrow;

pub struct Page {
    pub title: String,
    pub person: Option<PersonHead>,
    /// The name of the member who reads.
    pub member: Option<String>,
    pub areas: Vec<AreaLink>,
    /// Whether the reader may open the person's page and the emergency sheet.
    pub has_sheet: bool,
    /// Whether she may read what was noted.
    pub has_log: bool,
    /// Whether decisions are told to her.
    pub has_decisions: bool,
    /// Whether she may read what is to be done.
    pub has_tasks: bool,
    /// Whether she may see papers and cards.
    pub has_papers: bool,
    /// One line about what was just done.
    pub said: Option<String>,
    pub form_key: String,
    pub stylesheet: String,
    pub demo: bool,
    /// The reader's zone.
    pub zone: Zone,
    pub now: Instant,
    id: PersonId,
    base: String,
    path: String,
}

/// Name and birth date stand on every page of a record: two marks to know the person by
/// (common practice, no source).
pub struct PersonHead {
    pub name: String,
    pub born: String,
    /// The day of death, from which on the age stands still.
    pub died: Option<String>,
    pub age: i32,
    /// "Tuesday 3 March, 9:12 am, Chicago time"
    pub there: String,
    /// "7:12 am for you", where the reader's clock differs.
    pub here: Option<String>,
    pub zone: Zone,
}

impl Page {
    pub(in crate::platform) fn of_record(
        house: &House,
        asked: &Asked,
        signed: &SignedIn,
        place: &Place,
        title: String,
    ) -> Page {
        let now = house.clock.now();
        let (zone, reader) = (&place.zone, &signed.zone);
        let differs = zone.offset_differs(reader, now);
        let head = PersonHead {
            name: place.name.clone(),
            born: day::words(place.born),
            died: place.died.map(day::words),
            age: day::age(place.born, place.died.unwrap_or(zone.day(now))),
            there: format!("{}, {} time", zone.long_words(now), zone.place()),
            here: differs.then(|| format!("{} for you", reader.clock_words(now))),
            zone: zone.clone(),
        };
        let mut page = Page::of_account(house, asked, signed, title);
        page.id = place.person;
        page.person = Some(head);
        page.areas = layout::areas(place.reach);
        let sees = |area| policy::level(place.reach, area) >= Level::See;
        page.has_log = sees(AreaName::Log);
        page.has_tasks = sees(AreaName::Tasks);
        page.has_papers = sees(AreaName::Papers);
        page.has_decisions = sees(AreaName::Clinical) && sees(AreaName::Members);
        page.has_sheet = sees(AreaName::Essentials);
        page
    }

    pub(in crate::platform) fn of_account(
        house: &House,
        asked: &Asked,
        signed: &SignedIn,
        title: String,
    ) -> Page {
        let mut page = Page::of_visitor(house, asked, title);
        page.member = Some(signed.name.clone());
        page.zone = signed.zone.clone();
        page
    }

    pub(in crate::platform) fn of_visitor(house: &House, asked: &Asked, title: String) -> Page {
        Page {
            title,
            person: None,
            member: None,
            areas: Vec::new(),
            has_sheet: false,
            has_log: false,
            has_decisions: false,
            has_tasks: false,
            has_papers: false,
            said: asked.flash.clone(),
            form_key: random::hex(16),
            stylesheet: assets::stylesheet(),
            demo: house.demo,
            zone: Zone::utc(),
            now: house.clock.now(),
            id: PersonId::default(),
            base: house.config.base().path().to_owned(),
            path: asked.path.clone(),
        }
    }

    /// The path of an address, in this record.
    pub fn at(&self, address: impl Borrow<Address>) -> String {
        address.borrow().path(&self.base, self.id)
    }

    /// Where this page's own form goes: to the address that shows it.
    pub fn here(&self) -> String {
        format!("{}{}", self.base, self.path)
    }

    pub fn style(&self) -> String {
        self.at(urls::asset(&self.stylesheet))
    }

    /// A file of ours, under the name that changes with its content.
    pub fn asset(&self, name: &str) -> String {
        self.at(urls::asset(&assets::marked(name)))
    }

    /// Whether the reader is in this area now.
    pub fn in_area(&self, area: &AreaLink) -> bool {
        area.places().iter().any(|place| {
            let below = self.path.strip_prefix(&place.path("", self.id));
            match area.exact {
                true => below.is_some_and(|it| matches!(it, "" | "/" | "/edit" | "/check")),
                false => below.is_some_and(|it| it.is_empty() || it.starts_with('/')),
            }
        })
    }

    /// The day and time of an instant, in the person's zone (or the reader's, in no record).
    pub fn when(&self, at: &Instant) -> String {
        self.local().in_words(*at)
    }

    /// The time of day alone.
    pub fn clock(&self, at: &Instant) -> String {
        self.local().clock_words(*at)
    }

    /// How long ago, in days where the person is: "yesterday", "9 days ago".
    pub fn ago(&self, at: &Instant) -> String {
        day::ago(self.local().day(*at), self.today())
    }

    pub fn today(&self) -> time::Date {
        self.local().day(self.now)
    }

    /// Whether the person has died: then nothing is asked of her.
    pub fn has_died(&self) -> bool {
        self.person.as_ref().is_some_and(|it| it.died.is_some())
    }

    /// Who enters the answers of a person who does not sign in.
    pub fn entered_for(&self, voice: &Voice) -> Option<String> {
        voice.entered_for(&self.person.as_ref()?.name)
    }

    /// The person's zone, or the reader's in no record.
    pub fn local(&self) -> &Zone {
        self.person.as_ref().map_or(&self.zone, |it| &it.zone)
    }
}
