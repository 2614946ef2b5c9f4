//! Where someone lives, as far as clocks are concerned: the only place that turns a moment into a wall time or back.
//!
//! A `Zone` is a name of the IANA time zone database, which is compiled in, so that every machine agrees.
//! A wall time that does not exist (clocks spring forward) is read with the offset before the gap, and one that comes
//! twice (clocks fall back) is the first of the two: IETF RFC 5545 (2009), section 3.3.5.
//! A stored name that a newer database no longer knows counts as UTC: a page with odd hours is better than none.

pub mod changes;

use jiff::civil;
use jiff::tz::{self, TimeZone};
use serde::Serialize;
use time::{Date, Month, PrimitiveDateTime, Time};

use super::clock::Instant;
use super::day;

/// An IANA time zone name, such as "America/Chicago".
#[derive(Clone, PartialEq, Eq, Hash, Debug, Serialize, sqlx::Type)]
#[sqlx(transparent)]
#[serde(transparent)]
pub struct Zone(String);

impl Zone {
    /// Takes any name or old name the database knows, in any case, and keeps the name in force:
    /// "asia/calcutta" becomes "Asia/Kolkata".
    pub fn parse(name: &str) -> Option<Zone> {
        let rules = TimeZone::get(name.trim()).ok()?;
        rules.primary_iana_name().map(|name| Zone(name.to_owned()))
    }

    pub fn name(&self) -> &str {
        &self.0
    }

    pub fn utc() -> Zone {
        Zone("UTC".to_owned())
    }

    /// All names in force, in alphabetical order.
    pub fn names() -> impl Iterator<Item = Zone> {
        let mut names: Vec<String> = tz::db()
            .available()
            .filter(|name| TimeZone::get(name.as_str()).is_ok_and(|rules| rules.is_primary()))
            .map(|name| name.as_str().to_owned())
            .collect();
        names.sort();
        names.into_iter().map(Zone)
    }

    /// Whether the database at hand has rules for it.
    pub fn is_known(&self) -> bool {
        TimeZone::get(&self.0).is_ok()
    }

    /// The town the zone is named after: "America/Kentucky/Louisville" is "Louisville". A name
    /// that is no longer known is said to be so, beside hours that are those of UTC.
    pub fn place(&self) -> String {
        if !self.is_known() {
            return format!("UTC ({} is not known here any more)", self.0);
        }
        let last = self.0.rsplit('/').next().unwrap_or(&self.0);
        last.replace('_', " ")
    }

    /// The date on the wall there.
    pub fn day(&self, at: Instant) -> Date {
        self.wall(at).date()
    }

    /// Date and time on the wall there.
    pub fn wall(&self, at: Instant) -> PrimitiveDateTime {
        let offset = self.offset_seconds(at);
        let utc = at.utc();
        let shifted = utc.saturating_add(time::Duration::seconds(offset));
        PrimitiveDateTime::new(shifted.date(), shifted.time())
    }

    /// The moment when the wall there shows this date and time.
    pub fn instant(&self, day: Date, time: Time) -> Instant {
        let wall = civil_from(day, time);
        let moment = self.rules().to_ambiguous_timestamp(wall).compatible();
        // Only the first and the last hours of the calendar can fail: there UTC stands in.
        moment.map_or_else(
            |_| Instant::new(PrimitiveDateTime::new(day, time).assume_utc()),
            |moment| Instant::from_unix(moment.as_second()),
        )
    }

    /// Whether the clocks there and in `other` show different times at this moment.
    pub fn offset_differs(&self, other: &Zone, at: Instant) -> bool {
        self.offset_seconds(at) != other.offset_seconds(at)
    }

    /// "Tue 3 Mar 2026, 9:30 am"
    pub fn in_words(&self, at: Instant) -> String {
        format!("{}, {}", day::short_words(self.day(at)), self.clock_words(at))
    }

    /// "Tuesday 3 March, 9:12 am"
    pub fn long_words(&self, at: Instant) -> String {
        let day = self.day(at);
        format!("{} {} {}, {}", day.weekday(), day.day(), day.month(), self.clock_words(at))
    }

    /// "9:12 am"; midnight is "12:00 am" and noon "12:00 pm".
    pub fn clock_words(&self, at: Instant) -> String {
        let wall = self.wall(at);
        let hour = match wall.hour() % 12 {
            0 => 12,
            hour => hour,
        };
        let half = if wall.hour() < 12 { "am" } else { "pm" };
        format!("{hour}:{:02} {half}", wall.minute())
    }

    fn offset_seconds(&self, at: Instant) -> i64 {
        offset_by(&self.rules(), at)
    }

    fn rules(&self) -> TimeZone {
        TimeZone::get(&self.0).unwrap_or(TimeZone::UTC)
    }
}

/// What is kept is the moment; what the wall shows is asked of the rules at hand, every time.
fn offset_by(rules: &TimeZone, at: Instant) -> i64 {
    let moment = jiff::Timestamp::from_second(at.unix());
    moment.map_or(0, |moment| rules.to_offset(moment).seconds().into())
}

fn civil_from(day: Date, time: Time) -> civil::DateTime {
    let (hour, minute, second) = time.as_hms();
    let [month, dom, hour, minute, second] =
        [month_number(day.month()), day.day(), hour, minute, second].map(u8::cast_signed);
    // Both calendars are Gregorian and reach from -9999 to 9999, so every date of one is a date of the other.
    let year = i16::try_from(day.year()).unwrap_or(i16::MAX);
    civil::date(year, month, dom).at(hour, minute, second, 0)
}

fn month_number(month: Month) -> u8 {
    u8::from(month)
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::{date, datetime, format_description, time};

    fn zone(name: &str) -> Zone {
        Zone::parse(name).unwrap()
    }

    #[test]
    fn follows_daylight_saving_in_new_york() {
        // Python zoneinfo; IETF RFC 5545 (2009), section 3.3.5 for the time that does not exist.
        let new_york = zone("America/New_York");
        for (wall, utc) in [
            (datetime!(2026-03-07 08:00), datetime!(2026-03-07 13:00 UTC)),
            (datetime!(2026-03-08 08:00), datetime!(2026-03-08 12:00 UTC)),
            (datetime!(2026-10-31 08:00), datetime!(2026-10-31 12:00 UTC)),
            (datetime!(2026-11-01 08:00), datetime!(2026-11-01 13:00 UTC)),
            (datetime!(2026-03-08 02:30), datetime!(2026-03-08 07:30 UTC)),
            (datetime!(2026-11-01 01:30), datetime!(2026-11-01 05:30 UTC)),
        ] {
            assert_eq!(new_york.instant(wall.date(), wall.time()).utc(), utc, "{wall}");
        }
    }

    /// The cases were made by Python's zoneinfo: `tests/outside/zone_cases.py`.
    #[test]
    fn agrees_with_another_reader_of_the_database() {
        let minutes = format_description!("[year]-[month]-[day]T[hour]:[minute]");
        let read = |text| PrimitiveDateTime::parse(text, &minutes).unwrap();
        let cases = include_str!("../../tests/suite/fixtures/zone_cases.csv");
        let mut checked = 0;
        for line in cases.lines().filter(|line| !line.starts_with('#')).skip(1) {
            let [name, _, wall, utc, again] = line.split(',').collect::<Vec<_>>()[..] else {
                panic!("five columns expected: {line}");
            };
            let wall = read(wall);
            let at = zone(name).instant(wall.date(), wall.time());
            assert_eq!(at, Instant::new(read(utc).assume_utc()), "{line}");
            assert_eq!(zone(name).wall(at), read(again), "{line}");
            checked += 1;
        }
        assert!(checked >= 200, "only {checked} cases");
    }

    #[test]
    fn a_name_is_brought_to_the_one_in_force() {
        assert_eq!(zone(" america/new_york ").name(), "America/New_York");
        assert_eq!(zone("Asia/Calcutta").name(), "Asia/Kolkata");
        assert_eq!(zone("US/Central").name(), "America/Chicago");
        for unknown in ["", "America/Atlantis", "+05:00", "Etc/Unknown", "../etc/passwd"] {
            assert_eq!(Zone::parse(unknown), None, "{unknown}");
        }
    }

    #[test]
    fn every_name_offered_is_taken_and_kept() {
        let names: Vec<Zone> = Zone::names().collect();
        assert!(names.len() > 300);
        assert!(names.is_sorted_by_key(|zone| zone.name().to_owned()));
        assert!(names.contains(&Zone::utc()));
        for offered in names {
            assert_eq!(Zone::parse(offered.name()).as_ref(), Some(&offered));
        }
    }

    #[test]
    fn a_name_the_database_lost_counts_as_utc() {
        let lost = Zone("America/Atlantis".to_owned());
        assert_eq!(lost.wall(Instant::from_unix(0)), datetime!(1970-01-01 00:00));
        assert_eq!(lost.place(), "UTC (America/Atlantis is not known here any more)");
        assert_eq!(lost.instant(date!(1970 - 01 - 01), time!(00:00)), Instant::from_unix(0));
    }

    /// Minnesota gives up daylight saving, and the program is updated: the moment that was kept
    /// is the same one, and the wall shows it by the new rules. A day has no rules.
    #[test]
    fn a_kept_moment_is_shown_by_the_rules_at_hand_and_a_day_by_none() {
        let kept = serde_json::to_string(&Instant::new(datetime!(2026-07-15 17:30 UTC))).unwrap();
        let at: Instant = Instant::parse(kept.trim_matches('"')).unwrap();
        let by = |rules: &str| offset_by(&TimeZone::posix(rules).unwrap(), at) / 3600;
        assert_eq!((by("CST6CDT,M3.2.0,M11.1.0"), by("CST6")), (-5, -6));
        assert_eq!(at.utc(), datetime!(2026-07-15 17:30 UTC));
        let day = serde_json::to_string(&date!(2026 - 07 - 15)).unwrap();
        assert_eq!(day, r#""2026-07-15""#);
    }

    #[test]
    fn the_ends_of_the_calendar_do_not_panic() {
        let kiritimati = zone("Pacific/Kiritimati");
        assert_eq!(kiritimati.day(Instant::from_unix(i64::MAX)).year(), 9999);
        assert_eq!(kiritimati.instant(Date::MIN, time!(00:00)).utc().year(), -9999);
        assert_eq!(zone("Pacific/Niue").instant(Date::MAX, time!(23:59)).utc().year(), 9999);
    }

    #[test]
    fn a_place_is_the_town() {
        assert_eq!(zone("America/Kentucky/Louisville").place(), "Louisville");
        assert_eq!(zone("America/New_York").place(), "New York");
        assert_eq!(Zone::utc().place(), "UTC");
    }

    #[test]
    fn the_day_is_the_one_on_the_wall() {
        let late = Instant::new(datetime!(2026-03-04 04:30 UTC));
        assert_eq!(zone("America/Chicago").day(late), date!(2026 - 03 - 03));
        assert_eq!(zone("Europe/Budapest").day(late), date!(2026 - 03 - 04));
    }

    #[test]
    fn tells_whether_two_places_show_different_times() {
        let (denver, phoenix) = (zone("America/Denver"), zone("America/Phoenix"));
        assert!(!denver.offset_differs(&phoenix, Instant::new(datetime!(2026-01-15 12:00 UTC))));
        assert!(denver.offset_differs(&phoenix, Instant::new(datetime!(2026-07-15 12:00 UTC))));
    }

    #[test]
    fn speaks_in_words() {
        let chicago = zone("America/Chicago");
        let morning = chicago.instant(date!(2026 - 03 - 03), time!(09:05));
        assert_eq!(chicago.in_words(morning), "Tue 3 Mar 2026, 9:05 am");
        assert_eq!(chicago.long_words(morning), "Tuesday 3 March, 9:05 am");
        let clock = |time| chicago.clock_words(chicago.instant(date!(2026 - 03 - 03), time));
        assert_eq!(clock(time!(00:00)), "12:00 am");
        assert_eq!(clock(time!(12:00)), "12:00 pm");
        assert_eq!(clock(time!(23:59)), "11:59 pm");
    }
}
