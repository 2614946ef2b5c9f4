//! What was carried: by whom, on which day, how long or how far.

use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{CarriedId, MemberId, PersonId},
    text::Line,
};
use crate::platform::{
    error::{Error, Result},
    web::form::{Choice, FormErrors},
};
use time::Date;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Kind {
    #[serde(rename = "hours")]
    #[sqlx(rename = "hours")]
    Hours,
    #[serde(rename = "a night")]
    #[sqlx(rename = "a night")]
    Night,
    #[serde(rename = "an errand")]
    #[sqlx(rename = "an errand")]
    Errand,
    #[serde(rename = "travel")]
    #[sqlx(rename = "travel")]
    Travel,
}

impl Choice for Kind {
    const ALL: &'static [Kind] = &[Kind::Hours, Kind::Night, Kind::Errand, Kind::Travel];

    fn words(self) -> &'static str {
        match self {
            Kind::Hours => "hours",
            Kind::Night => "a night",
            Kind::Errand => "an errand",
            Kind::Travel => "travel",
        }
    }
}

impl Kind {
    /// Whether it says how long.
    pub fn is_timed(self) -> bool {
        matches!(self, Kind::Hours | Kind::Travel)
    }

    /// Above the sums of a kind.
    pub fn heading(self) -> &'static str {
        match self {
            Kind::Hours => "Hours",
            Kind::Night => "Nights",
            Kind::Errand => "Errands",
            Kind::Travel => "Travel",
        }
    }
}

#[derive(Clone, Debug, PartialEq)]
pub struct Carried {
    pub id: CarriedId,
    pub person_id: PersonId,
    /// Who did it; where she does not sign in, her name.
    pub member_id: Option<MemberId>,
    pub name: Option<Line>,
    pub kind: Kind,
    pub day_on: Date,
    /// How long, of hours and of travel.
    pub minutes: Option<i64>,
    /// How far, of travel, if that was noted.
    pub miles: Option<i64>,
    pub words: Option<Line>,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Carried as "carried" {
    member_id: "", name: "name", kind: "kind", day_on: "day", minutes: "minutes", miles: "miles",
    words: "words", entered_by: "", entered_at: "", struck: "struck", struck_reason: "why struck",
} skip { id, person_id, version });

/// What is written down.
#[derive(Clone, Debug)]
pub struct Entry {
    pub name: Option<Line>,
    pub kind: Kind,
    pub on: Date,
    pub minutes: Option<i64>,
    pub miles: Option<i64>,
    pub words: Option<Line>,
}

impl Carried {
    /// Of the one who writes it down, or of the one whose name stands there.
    pub fn new(
        person_id: PersonId,
        entry: Entry,
        (by, at): (MemberId, Instant),
        today: Date,
    ) -> Result<Carried> {
        FormErrors::unless_come("day_on", entry.on, today)?;
        Ok(Carried {
            id: CarriedId::default(),
            person_id,
            member_id: entry.name.is_none().then_some(by),
            name: entry.name,
            kind: entry.kind,
            day_on: entry.on,
            minutes: entry.minutes,
            miles: entry.miles,
            words: entry.words,
            entered_by: by,
            entered_at: at,
            struck: false,
            struck_reason: None,
            version: 1,
        })
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Carried> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Put right. Whose it is stays: what one member carried is not made another's.
    pub fn put_right(&self, entry: Entry, today: Date) -> Result<Carried> {
        FormErrors::unless_come("day_on", entry.on, today)?;
        let name = self.name.as_ref().and(entry.name.or(self.name.clone()));
        let Entry { kind, on: day_on, minutes, miles, words, .. } = entry;
        Ok(Carried { name, kind, day_on, minutes, miles, words, ..self.clone() })
    }

    /// Whether a member may change it: her own, or one that she entered for another.
    pub fn may_be_changed_by(&self, member: MemberId) -> bool {
        self.member_id == Some(member) || self.name.is_some() && self.entered_by == member
    }

    pub fn struck(&self, reason: Line) -> Carried {
        Carried { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Carried {
        Carried { struck: false, struck_reason: None, ..self.clone() }
    }

    pub fn day(&self) -> String {
        day::short_words(self.day_on)
    }

    /// "2 hours 30 minutes", "a night", "travel: 1 hour, 40 miles".
    pub fn says(&self) -> String {
        let long = self.minutes.map(long).unwrap_or_default();
        match (self.kind, self.miles) {
            (Kind::Hours, _) => long,
            (Kind::Travel, Some(miles)) => format!("travel: {long}, {}", count(miles, "mile")),
            (Kind::Travel, None) => format!("travel: {long}"),
            (kind, _) => kind.words().to_owned(),
        }
    }

    /// For the history: "2 hours 30 minutes on Tue 3 Mar 2026".
    pub fn title(&self) -> String {
        format!("{} on {}", self.says(), self.day())
    }
}

/// "2 hours 30 minutes", "1 hour", "45 minutes".
pub fn long(minutes: i64) -> String {
    match (minutes / 60, minutes % 60) {
        (0, rest) => count(rest, "minute"),
        (hours, 0) => count(hours, "hour"),
        (hours, rest) => format!("{} {}", count(hours, "hour"), count(rest, "minute")),
    }
}

/// "1 night", "3 nights".
pub fn count(many: i64, one: &str) -> String {
    if many == 1 { format!("1 {one}") } else { format!("{many} {one}s") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    const TODAY: Date = date!(2026 - 11 - 25);

    fn entry(kind: Kind) -> Entry {
        let minutes = kind.is_timed().then_some(90);
        Entry { name: None, kind, on: TODAY, minutes, miles: None, words: None }
    }

    fn carried(entry: Entry) -> Carried {
        Carried::new(1.into(), entry, (2.into(), Instant::from_unix(0)), TODAY).expect("kept")
    }

    #[test]
    fn it_is_of_who_writes_it_or_of_who_does_not_sign_in() {
        let own = carried(entry(Kind::Night));
        assert_eq!((own.member_id, own.name.clone()), (Some(2.into()), None));
        assert!(own.may_be_changed_by(2.into()) && !own.may_be_changed_by(3.into()));
        let name = Some(Line::from("Emeric".to_owned()));
        let his = carried(Entry { name: name.clone(), ..entry(Kind::Night) });
        assert_eq!((his.member_id, his.name.clone()), (None, name.clone()));
        assert!(his.may_be_changed_by(2.into()) && !his.may_be_changed_by(3.into()));
        // A name does not come to one's own, and does not go from another's.
        let named = own.put_right(Entry { name, ..entry(Kind::Night) }, TODAY).expect("kept");
        assert_eq!(named.name, None);
        assert!(his.put_right(entry(Kind::Night), TODAY).expect("kept").name.is_some());
    }

    #[test]
    fn it_is_of_a_day_that_has_come() {
        let on = date!(2026 - 11 - 26);
        let by = (2.into(), Instant::from_unix(0));
        let tomorrow = Entry { on, ..entry(Kind::Hours) };
        assert!(Carried::new(1.into(), tomorrow.clone(), by, TODAY).is_err());
        assert!(carried(entry(Kind::Hours)).put_right(tomorrow, TODAY).is_err());
    }

    #[test]
    fn it_says_how_long_and_how_far() {
        assert_eq!(carried(entry(Kind::Hours)).title(), "1 hour 30 minutes on Wed 25 Nov 2026");
        assert_eq!(carried(entry(Kind::Errand)).says(), "an errand");
        let travel = Entry { miles: Some(40), minutes: Some(60), ..entry(Kind::Travel) };
        assert_eq!(carried(travel).says(), "travel: 1 hour, 40 miles");
        assert_eq!((long(45).as_str(), long(121).as_str()), ("45 minutes", "2 hours 1 minute"));
    }
}
