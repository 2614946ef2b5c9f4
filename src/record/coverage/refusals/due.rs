//! By when a plan answers: so many hours that pass, from the moment it has the prescriber's statement.
//!
//! Hours are counted between moments and not on a wall, so that the night on which clocks are changed
//! neither gives nor takes one.

use super::super::{kind::Kind, rules};
use crate::base::clock::Instant;
use time::Duration;

/// The moment an answer is due; none for a kind of cover whose hours are not known here.
pub fn due(kind: Kind, statement_at: Instant, expedited: bool) -> Option<Instant> {
    let answers = &rules::medicare().answers;
    let hours = if expedited { answers.expedited_hours } else { answers.hours };
    kind.has_answer_hours().then(|| statement_at.plus(Duration::hours(hours)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::zone::Zone;
    use time::{
        Date, Time,
        macros::{date, time},
    };

    fn new_york(day: Date, clock: Time) -> Instant {
        Zone::parse("America/New_York").expect("a zone").instant(day, clock)
    }

    fn words(at: Option<Instant>) -> String {
        let zone = Zone::parse("America/New_York").expect("a zone");
        at.map(|it| zone.in_words(it)).unwrap_or_default()
    }

    /// 42 CFR 423.568(b), from memory: 72 hours from the receipt of the prescriber's statement. The
    /// clocks went forward on Sunday 8 March 2026 (checked with Python's zoneinfo).
    #[test]
    fn seventy_two_hours_pass_over_the_night_the_clocks_go_forward() {
        let friday = new_york(date!(2026 - 03 - 06), time!(16:10));
        assert_eq!(words(due(Kind::DrugPlan, friday, false)), "Mon 9 Mar 2026, 5:10 pm");
        let before = new_york(date!(2026 - 03 - 03), time!(16:10));
        assert_eq!(words(due(Kind::DrugPlan, before, false)), "Fri 6 Mar 2026, 4:10 pm");
        let back = new_york(date!(2026 - 10 - 30), time!(16:10));
        assert_eq!(words(due(Kind::DrugPlan, back, false)), "Mon 2 Nov 2026, 3:10 pm");
    }

    /// 42 CFR 423.572(a), from memory: 24 hours when it is expedited.
    #[test]
    fn twenty_four_hours_when_it_is_expedited() {
        let at = new_york(date!(2026 - 03 - 07), time!(16:10));
        assert_eq!(words(due(Kind::MedicareAdvantage, at, true)), "Sun 8 Mar 2026, 5:10 pm");
    }

    #[test]
    fn for_other_covers_nothing_is_reckoned() {
        let at = new_york(date!(2026 - 03 - 06), time!(16:10));
        for kind in [Kind::Medicaid, Kind::Veterans, Kind::Other, Kind::OriginalMedicare] {
            assert_eq!(due(kind, at, false), None, "{kind}");
        }
    }
}
