//! Plain sums of what was carried: of each kind, each one's, by the names in their order. All
//! together only where nobody is left out: otherwise a subtraction would tell.

use crate::{
    family::carried::model::{Carried, Kind, count, long},
    platform::web::form::Choice,
};
use std::collections::{BTreeMap, BTreeSet};
use time::Date;

/// One kind of things: who, and how much in words.
pub struct Part {
    pub kind: Kind,
    pub each: Vec<(String, String)>,
    pub together: Option<String>,
}

/// An entry with the name of the one who did it.
pub struct Named {
    pub carried: Carried,
    pub who: String,
}

pub fn parts(entries: &[Named], nobody_left_out: bool) -> Vec<Part> {
    let part = |kind: Kind| {
        let of_kind: Vec<&Named> = entries.iter().filter(|it| it.carried.kind == kind).collect();
        // By the name as it is read, small or large letters.
        let mut by_name: BTreeMap<(String, &str), Vec<&Named>> = BTreeMap::new();
        for it in &of_kind {
            by_name.entry((it.who.to_lowercase(), it.who.as_str())).or_default().push(it);
        }
        let each: Vec<_> = by_name
            .into_iter()
            .map(|((_, who), entries)| (who.to_owned(), sum(kind, &entries)))
            .collect();
        let together = (nobody_left_out && each.len() > 1).then(|| sum(kind, &of_kind));
        Part { kind, each, together }
    };
    Kind::ALL.iter().map(|it| part(*it)).filter(|it| !it.each.is_empty()).collect()
}

fn sum(kind: Kind, entries: &[&Named]) -> String {
    let many = entries.len() as i64;
    let minutes: i64 = entries.iter().filter_map(|it| it.carried.minutes).sum();
    let miles: i64 = entries.iter().filter_map(|it| it.carried.miles).sum();
    let days: BTreeSet<Date> = entries.iter().map(|it| it.carried.day_on).collect();
    match kind {
        Kind::Hours => format!("{} on {}", long(minutes), count(days.len() as i64, "day")),
        Kind::Night => count(many, "night"),
        Kind::Errand => count(many, "errand"),
        Kind::Travel if miles > 0 => format!(
            "{}, {}; {} where miles were noted",
            count(many, "way"),
            long(minutes),
            count(miles, "mile")
        ),
        Kind::Travel => format!("{}, {}", count(many, "way"), long(minutes)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::clock::Instant;
    use crate::family::carried::model::Entry;
    use time::macros::date;

    fn named(who: &str, kind: Kind, (day, minutes, miles): (u8, i64, i64)) -> Named {
        let on = date!(2026 - 11 - 01).replace_day(day).expect("a day");
        let (minutes, miles) =
            (Some(minutes).filter(|it| *it > 0), Some(miles).filter(|it| *it > 0));
        let entry = Entry { name: None, kind, on, minutes, miles, words: None };
        let by = (1.into(), Instant::from_unix(0));
        let carried = Carried::new(1.into(), entry, by, date!(2026 - 11 - 25)).expect("kept");
        Named { carried, who: who.to_owned() }
    }

    fn said(part: &Part) -> Vec<String> {
        part.each.iter().map(|(who, says)| format!("{who}: {says}")).collect()
    }

    #[test]
    fn the_names_stand_in_their_order_whoever_gave_more() {
        let entries = [
            named("Juno", Kind::Hours, (3, 600, 0)),
            named("bram", Kind::Hours, (3, 30, 0)),
            named("bram", Kind::Hours, (3, 15, 0)),
            named("Ines", Kind::Hours, (2, 60, 0)),
            named("Ines", Kind::Hours, (4, 75, 0)),
            named("Ines", Kind::Night, (4, 0, 0)),
        ];
        let parts = parts(&entries, true);
        assert_eq!(parts.len(), 2, "what nobody did is not there");
        let hours = [
            "bram: 45 minutes on 1 day",
            "Ines: 2 hours 15 minutes on 2 days",
            "Juno: 10 hours on 1 day",
        ];
        assert_eq!(said(&parts[0]), hours);
        assert_eq!(parts[0].together.as_deref(), Some("13 hours on 3 days"));
        assert_eq!(said(&parts[1]), ["Ines: 1 night"]);
        assert_eq!(parts[1].together, None, "one alone is no sum of several");
    }

    #[test]
    fn nothing_is_added_up_where_someone_is_left_out() {
        let entries =
            [named("Ines", Kind::Errand, (2, 0, 0)), named("Juno", Kind::Errand, (2, 0, 0))];
        assert!(parts(&entries, false).iter().all(|it| it.together.is_none()));
        assert_eq!(parts(&entries, true)[0].together.as_deref(), Some("2 errands"));
    }

    #[test]
    fn ways_are_added_with_the_miles_that_were_noted() {
        let entries =
            [named("Bram", Kind::Travel, (5, 300, 210)), named("Bram", Kind::Travel, (6, 20, 0))];
        let says = "Bram: 2 ways, 5 hours 20 minutes; 210 miles where miles were noted";
        assert_eq!(said(&parts(&entries, true)[0]), [says]);
    }
}
