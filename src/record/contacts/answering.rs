//! Whether a contact answers at this moment, and if not, from when on: from its hours, on its own
//! clocks. Said in the person's day: "answers now, until 5 pm", "answers from Thu 9 am (in 14 h)".

use super::hours::{DAY, Span, Week, clock_time, clock_words, day_name};
use crate::base::{clock::Instant, zone::Zone};
use time::Duration;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Answering {
    /// Until then; `None`: at any time.
    Now(Option<Instant>),
    From(Instant),
    Unknown,
}

impl Answering {
    /// By the hours on the clocks of `zone`.
    pub fn at(now: Instant, week: &Week, zone: &Zone) -> Answering {
        let open = opened(now, week, zone);
        if let Some((_, until)) = open.iter().find(|(from, until)| *from <= now && now < *until) {
            // A week of spans that touch is no closing time.
            let ends = until.since(now) < Duration::days(7);
            return Answering::Now(ends.then_some(*until));
        }
        let next = open.iter().find(|(from, _)| *from > now);
        next.map_or(Answering::Unknown, |(from, _)| Answering::From(*from))
    }

    pub fn is_now(self) -> bool {
        matches!(self, Answering::Now(_))
    }

    /// In words, on the clocks of the person.
    pub fn words(self, now: Instant, person: &Zone) -> String {
        match self {
            Answering::Unknown => "hours not known".into(),
            Answering::Now(None) => "answers at any time".into(),
            Answering::Now(Some(until)) => {
                format!("answers now, until {}", when(until, now, person))
            }
            Answering::From(at) => {
                format!("answers from {} ({})", when(at, now, person), ahead(at.since(now)))
            }
        }
    }
}

/// The stretches of a little more than a week around now, in order; those that touch are one.
fn opened(now: Instant, week: &Week, zone: &Zone) -> Vec<(Instant, Instant)> {
    let today = zone.day(now);
    let mut all = Vec::new();
    // One that began the day before may go on past midnight.
    for date in (-1..=8).map(|days| today.saturating_add(Duration::days(days))) {
        let day = date.weekday().number_days_from_monday();
        let moment = |minute: u16| {
            let date = date.saturating_add(Duration::days((minute / DAY).into()));
            zone.instant(date, clock_time(minute))
        };
        let own = week.spans().iter().filter(|it| it.day == day);
        all.extend(own.map(|Span { from, to, .. }| (moment(*from), moment(*to))));
    }
    all.sort_unstable();
    let mut joined: Vec<(Instant, Instant)> = Vec::new();
    for (from, until) in all {
        match joined.last_mut() {
            Some(last) if from <= last.1 => last.1 = last.1.max(until),
            _ => joined.push((from, until)),
        }
    }
    joined
}

/// "5 pm" of the same day, "Thu 9 am" of another.
fn when(at: Instant, now: Instant, zone: &Zone) -> String {
    let wall = zone.wall(at);
    let clock = clock_words(u16::from(wall.hour()) * 60 + u16::from(wall.minute()));
    match zone.day(now) == wall.date() {
        true => clock,
        false => format!("{} {clock}", day_name(wall.weekday().number_days_from_monday())),
    }
}

/// Rounded up: whoever phones after that finds them there.
fn ahead(span: Duration) -> String {
    let minutes = (span.whole_seconds() + 59) / 60;
    match minutes {
        ..60 => format!("in {minutes} min"),
        60..2880 => format!("in {} h", (minutes + 59) / 60),
        _ => format!("in {} days", minutes / (24 * 60)),
    }
}

#[cfg(test)]
mod tests {
    use super::super::hours::Hours;
    use super::*;
    use time::macros::{date, time};

    fn zone(name: &str) -> Zone {
        Zone::parse(name).expect("a zone")
    }

    fn at(day: time::Date, hour: time::Time) -> Instant {
        zone("America/Chicago").instant(day, hour)
    }

    fn said(hours: &str, of: &str, now: Instant) -> String {
        let week = Hours::parse(hours).expect(hours).week();
        Answering::at(now, &week, &zone(of)).words(now, &zone("America/Chicago"))
    }

    #[test]
    fn says_until_when_or_from_when() {
        let (own, wednesday) = ("America/Chicago", date!(2026 - 11 - 25));
        let office = "Mon-Fri 9-17; Sat 9-12";
        for (hour, words) in [
            (time!(8:59), "answers from 9 am (in 1 min)"),
            (time!(9:00), "answers now, until 5 pm"),
            (time!(16:59), "answers now, until 5 pm"),
            (time!(17:00), "answers from Thu 9 am (in 16 h)"),
            (time!(19:00), "answers from Thu 9 am (in 14 h)"),
            (time!(18:30), "answers from Thu 9 am (in 15 h)"),
        ] {
            assert_eq!(said(office, own, at(wednesday, hour)), words, "{hour}");
        }
        let saturday = at(date!(2026 - 11 - 28), time!(12:00));
        assert_eq!(said(office, own, saturday), "answers from Mon 9 am (in 45 h)");
        assert_eq!(
            said("Wed 9-10", own, at(wednesday, time!(10:00))),
            "answers from Wed 9 am (in 6 days)"
        );
        assert_eq!(said("24/7", own, saturday), "answers at any time");
    }

    #[test]
    fn a_night_goes_on_past_midnight_and_nights_that_touch_are_one() {
        let own = "America/Chicago";
        let night = at(date!(2026 - 11 - 28), time!(1:30));
        assert_eq!(said("Fri 22-2", own, night), "answers now, until 2 am");
        assert_eq!(said("Fri 22-2; Sat 2-6am", own, night), "answers now, until 6 am");
        let late = at(date!(2026 - 11 - 27), time!(23:00));
        assert_eq!(said("Fri 22-2", own, late), "answers now, until Sat 2 am");
    }

    #[test]
    fn hours_are_those_of_the_contacts_own_clocks() {
        let (portland, morning) = ("America/Los_Angeles", at(date!(2026 - 11 - 25), time!(9:30)));
        assert_eq!(said("Mon-Fri 8-17", portland, morning), "answers from 10 am (in 30 min)");
        // Clocks go forward on 8 March 2026, and the office opens by its own: 9 am is an hour sooner.
        let saturday = at(date!(2026 - 03 - 07), time!(21:00));
        assert_eq!(
            said("Sun 9-10", "America/Chicago", saturday),
            "answers from Sun 9 am (in 11 h)"
        );
    }

    #[test]
    fn without_hours_nothing_is_known() {
        let now = at(date!(2026 - 11 - 25), time!(9:30));
        let none = Hours::from("whatever".to_owned()).week();
        assert_eq!(Answering::at(now, &none, &Zone::utc()), Answering::Unknown);
        assert_eq!(Answering::Unknown.words(now, &Zone::utc()), "hours not known");
    }
}
