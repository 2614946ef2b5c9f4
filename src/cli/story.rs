//! The invented family of the demo and an ordinary month of theirs, told through the same writes
//! that the pages use, so that its history is a true one. Every name and number is invented.

mod answers;
mod appointments;
mod carried;
mod clock;
mod conditions;
mod contacts;
mod corrections;
mod coverage;
mod decisions;
mod directives;
mod given;
mod heart;
mod infection;
mod ingredients;
mod laid_out;
mod lists;
mod mail;
mod notes;
mod noticed;
mod papers;
mod phones;
mod questions;
mod renewals;
mod sharing;
mod stock;
mod tasks;
mod told;
mod turns;
mod usual;
mod visit;
mod weeks;
mod years;

pub use self::{clock::StoryClock, told::Told};
use crate::{
    base::{
        ids::{MemberId, PersonId},
        reach::{Email, Phone},
        text::Line,
        zone::Zone,
    },
    family::members::{
        model::{Member, Membership},
        store as members,
    },
    platform::{
        auth::{
            area::{Area, Clinical, Essentials, Members, Role},
            doors::Operator,
        },
        db::{Db, Write},
        error::Result,
        files::Files,
    },
    record::{
        allergies::{
            model::{Account, Allergy, Nature},
            store as allergies,
        },
        medicines::{
            model::{Label, Medicine, Supply},
            store as medicines,
        },
        people::{model::Person, store as people},
    },
};
use time::{Date, Duration, Time, macros::date};

/// Who signs in: name, role in Ottoline's record, zone, phone.
const CAST: [(&str, Role, &str, &str); 6] = [
    ("Ottoline", Role::Person, "America/Chicago", "218-555-0100"),
    ("Ines", Role::Steward, "America/Chicago", "218-555-0101"),
    ("Bram", Role::Relative, "America/Los_Angeles", "503-555-0102"),
    ("Juno", Role::Relative, "America/New_York", "617-555-0103"),
    ("Delia", Role::Aide, "America/Chicago", "218-555-0104"),
    ("Rosalind", Role::Reader, "America/Chicago", "218-555-0105"),
];

/// Name, strength, form, dose, when, what for, as needed with its limit, how it is got, since.
/// All of them since before the longest record that is told, so that none starts after its check.
type Row = (
    &'static str,
    &'static str,
    &'static str,
    &'static str,
    &'static str,
    &'static str,
    &'static str,
    Supply,
    Date,
);

#[rustfmt::skip]
const MEDICINES: [Row; 9] = [
    ("Warfarin", "2.5 mg", "tablet", "1 tablet", "in the evening", "heart rhythm", "", Supply::Prescription, date!(2004 - 04 - 02)),
    ("Furosemide", "20 mg", "tablet", "1 tablet", "in the morning", "swollen legs", "", Supply::Prescription, date!(2005 - 01 - 17)),
    ("Metoprolol succinate", "50 mg", "extended-release tablet", "1 tablet", "in the morning", "heart rhythm", "", Supply::Prescription, date!(2004 - 04 - 02)),
    ("Levothyroxine", "75 mcg", "tablet", "1 tablet", "in the morning, before breakfast", "thyroid", "", Supply::Prescription, date!(2003 - 10 - 14)),
    ("Lisinopril", "10 mg", "tablet", "1 tablet", "in the morning", "blood pressure", "", Supply::Prescription, date!(2002 - 06 - 11)),
    ("Alendronate", "70 mg", "tablet", "1 tablet", "on Sunday mornings", "bones", "", Supply::Prescription, date!(2005 - 06 - 21)),
    ("Acetaminophen", "500 mg", "tablet", "1 tablet", "when the hip hurts", "hip pain", "at most 6 tablets in 24 hours", Supply::OverTheCounter, date!(2005 - 09 - 01)),
    ("Latanoprost", "0.005 %", "eye drops", "1 drop in each eye", "at bedtime", "eye pressure", "", Supply::Prescription, date!(2005 - 02 - 08)),
    ("Vitamin D3", "25 mcg", "capsule", "1 capsule", "with breakfast", "", "", Supply::Supplement, date!(2005 - 06 - 21)),
];

fn line(text: &str) -> Line {
    Line::from(text.to_owned())
}

fn some(text: &str) -> Option<Line> {
    (!text.is_empty()).then(|| line(text))
}

fn phone(text: &str) -> Phone {
    Phone::from(text.to_owned())
}

/// One telling: who is who, where the clock stands, and how many days ago the record was begun.
struct Telling<'a> {
    operator: Operator,
    files: &'a Files,
    clock: &'a StoryClock,
    zone: Zone,
    person: PersonId,
    cast: Vec<(MemberId, Role)>,
    began: i64,
}

/// Tells the month, and so many years before it; says what the record then holds.
pub async fn tell((db, files): (&Db, &Files), clock: &StoryClock, years: u8) -> Result<Told> {
    let zone = Zone::parse("America/Chicago").unwrap_or_else(Zone::utc);
    let operator = Operator::new(db.clone());
    let (person, cast) = (PersonId::default(), Vec::new());
    let began = 31 + years::DAYS * i64::from(years);
    let mut it = Telling { operator, files, clock, zone, person, cast, began };
    it.day(began, (18, 40));
    it.family().await?;
    it.first_list().await?;
    it.contacts().await?;
    it.conditions().await?;
    it.years(years).await?;
    it.month().await?;
    let told = it.told(years).await?;
    it.second_parent().await?;
    it.second_parents_answers().await?;
    clock.set(clock.now());
    Ok(told)
}

/// Everyone with a place in the first record, in order: for the sign-in links.
pub async fn cast(db: &Db) -> Result<Vec<(MemberId, String, Role)>> {
    let view = Operator::new(db.clone()).view().await?;
    let mut cast = Vec::new();
    for (name, role, ..) in CAST {
        if let Some(member) = members::by_email(&view, &address(name)).await? {
            cast.push((member.id, member.name.to_string(), role));
        }
    }
    Ok(cast)
}

fn address(name: &str) -> Email {
    Email::from(format!("{}@example.org", name.to_lowercase()))
}

impl Telling<'_> {
    /// The story goes on so many days ago, at this hour and minute where the person is.
    fn day(&self, ago: i64, (hour, minute): (u8, u8)) {
        let day = self.date(ago);
        let time = Time::from_hms(hour, minute, 0).unwrap_or(Time::MIDNIGHT);
        let at = self.zone.instant(day, time);
        self.clock.set(at.min(self.clock.now()));
    }

    fn date(&self, ago: i64) -> Date {
        self.zone.day(self.clock.now()) - Duration::days(ago)
    }

    /// The ordinary month, in the order in which it happened: the history is told as it came.
    async fn month(&self) -> Result<()> {
        self.usual_self().await?;
        self.laid_out().await?;
        self.supply_begins().await?;
        self.calendar_begins().await?;
        self.corrections().await?;
        self.phones().await?;
        self.therapy_moved().await?;
        self.infection().await?;
        self.calendar_looked_through().await?;
        self.log_begins().await?;
        self.visit().await?;
        self.last_days().await?;
        self.calendar_goes_on().await
    }

    fn member(&self, name: &str) -> (MemberId, Role) {
        let at = CAST.iter().position(|(it, ..)| *it == name).unwrap_or(1);
        self.cast[at]
    }

    async fn write<A: Area>(&self, name: &str) -> Result<Write<A>> {
        let (member, role) = self.member(name);
        self.operator.write_for(self.person, member, role).await
    }

    async fn family(&mut self) -> Result<()> {
        let mut write = self.operator.write().await?;
        for (name, role, zone, number) in CAST {
            let zone = Zone::parse(zone).unwrap_or_else(Zone::utc);
            let mut member = Member::new(line(name), address(name), zone);
            member.phone = Some(phone(number));
            self.cast.push((members::add(&mut write, &member).await?, role));
        }
        let ines = self.cast[1].0;
        let mut person =
            Person::new(line("Ottoline Varga"), date!(1944 - 03 - 09), self.zone.clone());
        person.address =
            some("114 Old Lock Street, Duluth, Minnesota; key with the neighbor at 116");
        person.language = some("English and Hungarian");
        person.hearing = some("hearing aid on the left");
        person.vision = some("reading glasses");
        person.mobility = some("walks with a stick, not on stairs alone");
        let mut essentials = write.in_record::<Essentials>(self.person, ines)?;
        self.person = people::add(&mut essentials, &person).await?;
        let mut places = write.in_record::<Members>(self.person, ines)?;
        for (member, role) in &self.cast {
            members::place(&mut places, &Membership::new(self.person, *member, *role)).await?;
        }
        write.commit().await.map(|_| ())
    }

    async fn first_list(&self) -> Result<()> {
        self.medicines_by("Ines", &MEDICINES).await?;
        let mut write = self.write::<Essentials>("Ines").await?;
        for (substance, nature, reaction, since) in [
            ("Penicillin", Nature::Allergy, "hives, and swelling of the lips", "1988"),
            ("Codeine", Nature::Intolerance, "sick and confused for a day", "2001"),
        ] {
            let source = some("told by Emeric, who saw it");
            let (substance, reaction) = (line(substance), some(reaction));
            let account = Account { substance, nature, reaction, since: some(since), source };
            allergies::add(&mut write, &Allergy::new(self.person, account)).await?;
        }
        write.commit().await.map(|_| ())
    }

    async fn medicines_by(&self, who: &str, rows: &[Row]) -> Result<()> {
        let mut write = self.write::<Clinical>(who).await?;
        for (name, strength, form, dose, times, purpose, limit, supply, since) in rows {
            let prescribed = *supply == Supply::Prescription;
            let label = Label {
                name: line(name),
                strength: some(strength),
                form: some(form),
                dose: some(dose),
                route: some(if *form == "eye drops" { "in the eyes" } else { "by mouth" }),
                times: some(times),
                purpose: some(purpose),
                prescriber: prescribed.then(|| line("Dr Adaeze Oyelaran")),
                started_on: prescribed.then_some(*since),
                as_needed: !limit.is_empty(),
                label_limit: some(limit),
                supply: *supply,
                source: some("read off the bottle"),
            };
            medicines::add(&mut write, &Medicine::new(self.person, label)).await?;
        }
        write.commit().await.map(|_| ())
    }

    /// Emeric's short record, kept by Ines, seen by Juno.
    async fn second_parent(&mut self) -> Result<()> {
        self.day(8, (19, 30));
        let (ines, juno) = (self.cast[1].0, self.cast[3].0);
        let write = self.operator.write().await?;
        let person = Person::new(line("Emeric Varga"), date!(1941 - 11 - 02), self.zone.clone());
        let mut essentials = write.in_record::<Essentials>(PersonId::default(), ines)?;
        self.person = people::add(&mut essentials, &person).await?;
        let mut places = write.in_record::<Members>(self.person, ines)?;
        for (member, role) in [(ines, Role::Steward), (juno, Role::Relative)] {
            members::place(&mut places, &Membership::new(self.person, member, role)).await?;
        }
        write.commit().await?;
        self.medicines_by(
            "Ines",
            &[(
                "Tamsulosin",
                "0.4 mg",
                "capsule",
                "1 capsule",
                "after supper",
                "prostate",
                "",
                Supply::Prescription,
                date!(2021 - 05 - 04),
            )],
        )
        .await
    }
}
