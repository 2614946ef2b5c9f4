//! Which papers hold no longer, or only for a while; and by which day a tray is sorted.
//!
//! Thirty days before its last day a paper is said to lapse soon: common practice, no source. When one
//! has to be renewed is another question, and not answered here.

use super::model::Paper;
use crate::base::day;
use time::{Date, Duration};

/// So many days before its last day a paper lapses soon, and so many after it Today still says so.
pub const SOON: i64 = 30;

/// So many papers of a pile are sorted on one day, where nobody says another number: 15 to 20 are
/// usual (common practice, no source).
pub const A_DAY: usize = 15;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lapse {
    Over,
    Soon,
}

impl Paper {
    /// How it stands with its last day; nothing while that is far, or where it has none.
    pub fn lapse(&self, today: Date) -> Option<Lapse> {
        let last = self.expires_on.filter(|_| self.stands())?;
        match (last - today).whole_days() {
            ..0 => Some(Lapse::Over),
            0..=SOON => Some(Lapse::Soon),
            _ => None,
        }
    }

    /// "lapsed 9 days ago", "lapses tomorrow"
    pub fn lapse_words(&self, today: Date) -> Option<String> {
        let ago = day::ago(self.expires_on?, today);
        Some(match self.lapse(today)? {
            Lapse::Over => format!("lapsed {ago}"),
            Lapse::Soon => format!("lapses {ago}"),
        })
    }

    /// Whether Today says so: soon, or not long ago.
    pub fn needs_a_look(&self, today: Date) -> bool {
        let long_ago = |last: Date| (today - last).whole_days() > SOON;
        self.lapse(today).is_some() && !self.expires_on.is_some_and(long_ago)
    }
}

/// The day on which the last one is filed, at so many a day; what was filed today counts.
pub fn sorted_by(waiting: usize, a_day: usize, filed_today: usize, today: Date) -> Date {
    let a_day = a_day.max(1);
    let later = waiting.saturating_sub(a_day.saturating_sub(filed_today));
    let days = i64::try_from(later.div_ceil(a_day)).unwrap_or(i64::MAX).min(36_500);
    today.saturating_add(Duration::days(days))
}

#[cfg(test)]
mod tests {
    use super::super::{kind::Kind, model::Filing};
    use super::*;
    use crate::base::{clock::Instant, ids::MemberId, text::Line};
    use time::macros::date;

    fn until(expires_on: Date) -> Paper {
        let by = (MemberId::from(2), Instant::from_unix(0));
        let filing = Filing {
            about: None,
            kind: Kind::IdentityCard,
            title: Line::from("Placard".to_owned()),
            dated_on: None,
            contact_id: None,
            from_name: None,
            original: None,
            original_where: None,
            stewards_only: false,
            expires_on: Some(expires_on),
            note: None,
        };
        let waiting = Paper::arrived(1.into(), None, by);
        waiting.filed(filing, by, date!(2026 - 11 - 25)).expect("filed")
    }

    #[test]
    fn a_paper_holds_on_its_last_day_and_not_on_the_next() {
        let it = until(date!(2026 - 11 - 25));
        assert_eq!(it.lapse(date!(2026 - 10 - 25)), None);
        assert_eq!(it.lapse(date!(2026 - 10 - 26)), Some(Lapse::Soon));
        let words = |today| it.lapse_words(today);
        assert_eq!(words(date!(2026 - 11 - 25)).as_deref(), Some("lapses today"));
        assert_eq!(words(date!(2026 - 11 - 26)).as_deref(), Some("lapsed yesterday"));
        assert!(it.needs_a_look(date!(2026 - 12 - 25)) && !it.needs_a_look(date!(2026 - 12 - 26)));
        assert_eq!(it.replaced(9.into()).lapse(date!(2026 - 12 - 01)), None);
    }

    #[test]
    fn a_pile_is_sorted_by_a_day() {
        // 15 to 20 papers a day: common practice, no source. The rest is arithmetic.
        let today = date!(2026 - 11 - 25);
        for (waiting, filed, on) in [
            (0, 0, today),
            (15, 0, today),
            (16, 0, date!(2026 - 11 - 26)),
            (45, 0, date!(2026 - 11 - 27)),
            (45, 15, date!(2026 - 11 - 28)),
            (10, 5, today),
            (11, 5, date!(2026 - 11 - 26)),
        ] {
            assert_eq!(sorted_by(waiting, A_DAY, filed, today), on, "{waiting} after {filed}");
        }
        assert_eq!(sorted_by(3, 0, 0, today), date!(2026 - 11 - 27));
    }
}
