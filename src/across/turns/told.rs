//! Who has been told of a turn, and which of those who treat the person have not, as far as is
//! written here. Whoever said so herself knows.

use crate::{
    base::ids::ContactId,
    record::{
        contacts::{kind::Kind, model::Contact},
        medicines::turns::model::{Telling, Turn},
    },
};

/// Whether she treats the person, or hands out or gives the medicines.
pub fn treats(contact: &Contact) -> bool {
    let kinds = [Kind::Doctor, Kind::Nurse, Kind::Aide, Kind::Pharmacy, Kind::Hospital];
    kinds.contains(&contact.kind)
}

/// Whether nobody has written down that this contact was told of this turn.
pub fn is_untold(contact: &Contact, turn: &Turn, tellings: &[Telling]) -> bool {
    let told = |it: &Telling| it.turn_id == turn.id && it.contact_id == Some(contact.id);
    !named(turn.said_by.as_str(), contact.name.as_str()) && !tellings.iter().any(told)
}

/// "Dr Oyelaran by phone" is Dr Oyelaran.
pub fn named(said_by: &str, name: &str) -> bool {
    let (by, name) = (said_by.to_lowercase(), name.to_lowercase());
    by.strip_prefix(&name).is_some_and(|it| !it.starts_with(char::is_alphanumeric))
}

/// What a contact has not been told, in the order of the turns.
pub fn untold<'a>(contact: &Contact, turns: &'a [Turn], tellings: &[Telling]) -> Vec<&'a Turn> {
    turns.iter().filter(|it| is_untold(contact, it, tellings)).collect()
}

/// The contacts who treat her, each with how many of these turns she has not been told.
pub fn count(
    contacts: &[Contact],
    turns: &[Turn],
    tellings: &[Telling],
) -> Vec<(ContactId, String, usize)> {
    let those = contacts.iter().filter(|it| treats(it));
    let row = |it: &Contact| (it.id, it.name.to_string(), untold(it, turns, tellings).len());
    those.map(row).filter(|(_, _, some)| *some > 0).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whoever_said_so_knows() {
        assert!(named("Dr Lind", "Dr Lind"));
        assert!(named("dr lind by phone", "Dr Lind"));
        assert!(named("Dr Lind, surgeon", "Dr Lind"));
        assert!(!named("Dr Lindqvist", "Dr Lind"));
        assert!(!named("the nurse at Dr Lind's", "Dr Lind"));
    }
}
