//! When the clocks of a place are changed: said in words at a time that falls into it, and listed for calendars.

use super::{Zone, civil_from};
use crate::base::{clock::Instant, day, time_of_day};
use jiff::{Timestamp, tz::AmbiguousOffset};
use time::{Date, PrimitiveDateTime, Time};

/// The clocks go from one offset to another, both in seconds east of UTC.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    pub at: Instant,
    pub before: i64,
    pub after: i64,
    /// "CDT", as the database has it.
    pub name: String,
    pub saves_daylight: bool,
}

impl Change {
    /// What the wall shows at the moment of the change, by the old offset.
    pub fn wall(&self) -> PrimitiveDateTime {
        let it = self.at.plus(time::Duration::seconds(self.before)).utc();
        PrimitiveDateTime::new(it.date(), it.time())
    }
}

impl Zone {
    /// What becomes of a time that the wall there does not show on this day, or shows twice.
    pub fn unusual(&self, day: Date, time: Time) -> Option<String> {
        let clock = time_of_day::words;
        let on = day::words(day);
        match self.rules().to_ambiguous_timestamp(civil_from(day, time)).offset() {
            AmbiguousOffset::Unambiguous { .. } => None,
            AmbiguousOffset::Gap { .. } => {
                let kept = self.wall(self.instant(day, time)).time();
                let (from, to) = self.gap(day, time)?;
                Some(format!(
                    "On {on} the clocks there go from {} to {}: {} does not come, and this is kept as {}.",
                    clock(from),
                    clock(to),
                    clock(time),
                    clock(kept)
                ))
            }
            AmbiguousOffset::Fold { .. } => Some(format!(
                "On {on} the clocks there are put back, and {} comes twice. This is kept as the first of the two.",
                clock(time)
            )),
        }
    }

    /// From which time to which the clocks go over this one.
    fn gap(&self, day: Date, time: Time) -> Option<(Time, Time)> {
        let kept = self.instant(day, time);
        let change = self.changes(kept.minus(time::Duration::days(1)), kept).pop()?;
        let after =
            change.wall().saturating_add(time::Duration::seconds(change.after - change.before));
        Some((change.wall().time(), after.time()))
    }

    /// Every change of the clocks after one moment, up to another.
    pub fn changes(&self, from: Instant, to: Instant) -> Vec<Change> {
        let Ok(start) = Timestamp::from_second(from.unix()) else { return Vec::new() };
        let rules = self.rules();
        let mut before = i64::from(rules.to_offset(start).seconds());
        let all = rules.following(start).take_while(|it| it.timestamp().as_second() <= to.unix());
        all.map(|it| {
            let after = i64::from(it.offset().seconds());
            let change = Change {
                at: Instant::from_unix(it.timestamp().as_second()),
                before,
                after,
                name: it.abbreviation().to_owned(),
                saves_daylight: it.dst().is_dst(),
            };
            before = after;
            change
        })
        .collect()
    }

    /// How many seconds the wall there is ahead of UTC, and what that is called.
    pub fn offset_at(&self, at: Instant) -> (i64, String) {
        let moment = Timestamp::from_second(at.unix()).unwrap_or(Timestamp::UNIX_EPOCH);
        let rules = self.rules();
        let info = rules.to_offset_info(moment);
        (info.offset().seconds().into(), info.abbreviation().to_owned())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::{date, datetime, time};

    fn chicago() -> Zone {
        Zone::parse("America/Chicago").expect("a zone")
    }

    #[test]
    fn an_hour_that_does_not_come_is_said_in_words() {
        let said = chicago().unusual(date!(2026 - 03 - 08), time!(2:30));
        let words = "On 8 March 2026 the clocks there go from 2 am to 3 am: 2:30 am does not come, and this is kept as 3:30 am.";
        assert_eq!(said.as_deref(), Some(words));
        assert_eq!(chicago().unusual(date!(2026 - 03 - 08), time!(3:00)), None);
        assert_eq!(chicago().unusual(date!(2026 - 03 - 09), time!(2:30)), None);
    }

    #[test]
    fn an_hour_that_comes_twice_is_the_first() {
        let said = chicago().unusual(date!(2026 - 11 - 01), time!(1:30)).expect("twice");
        assert!(
            said.contains("1:30 am comes twice") && said.contains("first of the two"),
            "{said}"
        );
    }

    /// Python zoneinfo: 2026-03-08 08:00Z and 2026-11-01 07:00Z, six and five hours behind.
    #[test]
    fn the_changes_of_a_year_are_listed() {
        let at = |it: time::OffsetDateTime| Instant::new(it);
        let year = (at(datetime!(2026-01-01 00:00 UTC)), at(datetime!(2027-01-01 00:00 UTC)));
        let all = chicago().changes(year.0, year.1);
        let told: Vec<_> = all
            .iter()
            .map(|it| {
                (
                    it.at.to_string(),
                    it.before / 3600,
                    it.after / 3600,
                    it.name.as_str(),
                    it.saves_daylight,
                )
            })
            .collect();
        assert_eq!(
            told,
            [
                ("2026-03-08T08:00:00Z".to_owned(), -6, -5, "CDT", true),
                ("2026-11-01T07:00:00Z".to_owned(), -5, -6, "CST", false),
            ]
        );
        assert_eq!(all[0].wall(), datetime!(2026-03-08 02:00));
        assert_eq!(Zone::utc().changes(year.0, year.1), []);
    }
}
