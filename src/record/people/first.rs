//! "Phone first": where a hospice or a clinician told the family whom to phone before anyone
//! else, that line stands above the emergency number.
//!
//! It is whom, which number, and who said so. The three stand together or not at all: a number
//! without the one who said so would be this program's advice.

use crate::base::text::{Line, Phone};

/// Whom to phone before anyone else.
pub struct First<'a> {
    pub whom: &'a Line,
    pub number: &'a Phone,
    pub said_by: &'a Line,
}

/// The fields, in this order, with what is said at one that is missing.
pub const FIELDS: [(&str, &str); 3] = [
    ("first_whom", "Enter whom to phone first, or leave all three empty."),
    ("first_number", "Enter the number to phone first, or leave all three empty."),
    ("first_said_by", "Enter who told the family so, or leave all three empty."),
];

/// What is missing, where some of the three fields were filled.
pub fn missing(filled: [bool; 3]) -> Vec<(&'static str, &'static str)> {
    if !filled.contains(&true) {
        return Vec::new();
    }
    let fields = FIELDS.into_iter().zip(filled);
    fields.filter(|(_, filled)| !filled).map(|(field, _)| field).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn all_three_or_none_and_each_gap_is_named() {
        let gaps = |filled| missing(filled).into_iter().map(|it| it.0).collect::<Vec<_>>();
        assert!(gaps([false; 3]).is_empty());
        assert!(gaps([true; 3]).is_empty());
        assert_eq!(gaps([true, false, false]), ["first_number", "first_said_by"]);
        assert_eq!(gaps([false, true, true]), ["first_whom"]);
    }
}
