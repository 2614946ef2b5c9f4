//! A check: someone compared what is kept with something outside it. Checked is not edited.

use super::{clock::Instant, ids::MemberId, text::Line};

#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Check {
    pub at: Instant,
    pub by: MemberId,
    /// The label, the clinic's list, what she says herself.
    pub against: Line,
}

impl Check {
    /// From the three columns that every checked table has; all or none are filled.
    pub fn of(at: Option<Instant>, by: Option<MemberId>, against: Option<&Line>) -> Option<Check> {
        Some(Check { at: at?, by: by?, against: against?.clone() })
    }
}

/// The checks of a block of facts, seen together.
#[derive(Debug, PartialEq, Eq)]
pub struct Together {
    pub count: usize,
    pub unchecked: usize,
    pub oldest: Option<Check>,
}

impl Together {
    pub fn of(checks: impl IntoIterator<Item = Option<Check>>) -> Together {
        let all: Vec<Option<Check>> = checks.into_iter().collect();
        let (count, checked) = (all.len(), all.into_iter().flatten());
        let checked: Vec<Check> = checked.collect();
        let unchecked = count - checked.len();
        Together { count, unchecked, oldest: checked.into_iter().min_by_key(|it| it.at) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(at: i64) -> Option<Check> {
        let against = Line::from("the label".to_owned());
        Check::of(Some(Instant::from_unix(at)), Some(MemberId::from(1)), Some(&against))
    }

    #[test]
    fn a_block_is_as_old_as_its_oldest_check_and_counts_its_gaps() {
        let whole = Together::of([check(5), check(3), check(9)]);
        assert_eq!(whole, Together { count: 3, unchecked: 0, oldest: check(3) });
        assert_eq!(Together::of([check(5), None]).unchecked, 1);
        assert_eq!(Together::of([]), Together { count: 0, unchecked: 0, oldest: None });
    }
}
