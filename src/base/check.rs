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

/// The oldest check of a block of facts: `None` where it is empty or something in it was never
/// checked.
pub fn oldest(checks: impl IntoIterator<Item = Option<Check>>) -> Option<Check> {
    let all: Option<Vec<Check>> = checks.into_iter().collect();
    all?.into_iter().min_by_key(|it| it.at)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn check(at: i64) -> Option<Check> {
        let against = Line::from("the label".to_owned());
        Check::of(Some(Instant::from_unix(at)), Some(MemberId::from(1)), Some(&against))
    }

    #[test]
    fn a_block_is_as_old_as_its_oldest_check_and_unchecked_by_one_gap() {
        assert_eq!(oldest([check(5), check(3), check(9)]), check(3));
        assert_eq!(oldest([check(5), None]), None);
        assert_eq!(oldest([]), None);
    }
}
