//! One item kept from one member's eyes.

use crate::audited;
use crate::base::ids::{HiddenId, MemberId, PersonId};
use crate::platform::auth::area::Role;

#[derive(Clone, Debug, PartialEq)]
pub struct Hidden {
    pub id: HiddenId,
    pub person_id: PersonId,
    pub member_id: MemberId,
    /// The table of the item.
    pub kind: String,
    pub item: i64,
    /// Decided by a steward for the person.
    pub on_behalf: bool,
    /// Whether it is hidden now. The row stays when it is shown again.
    pub standing: bool,
    pub version: i64,
}

audited!(Hidden as "hidden" {
    member_id: "", kind: "", item: "", on_behalf: "", standing: "",
} skip { id, person_id, version });

impl Hidden {
    pub fn new(person_id: PersonId, member_id: MemberId, (kind, item): (&str, i64)) -> Hidden {
        let id = HiddenId::default();
        let kind = kind.to_owned();
        Hidden {
            id,
            person_id,
            member_id,
            kind,
            item,
            on_behalf: false,
            standing: false,
            version: 1,
        }
    }

    /// Hidden or shown again, as decided in this role.
    pub fn decided(&self, standing: bool, by: Role) -> Hidden {
        if self.standing == standing {
            return self.clone();
        }
        Hidden { standing, on_behalf: by != Role::Person, ..self.clone() }
    }
}

/// Whether an item can be hidden from a member in this role, by the one who decides.
pub fn can_hide_from(role: Role, is_oneself: bool) -> bool {
    role != Role::Person && !is_oneself
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_steward_decides_on_behalf_and_nothing_is_hidden_from_the_person() {
        let hidden = Hidden::new(1.into(), 2.into(), ("medicine", 3));
        assert!(!hidden.decided(true, Role::Person).on_behalf);
        assert!(hidden.decided(true, Role::Steward).on_behalf);
        assert_eq!(hidden.decided(false, Role::Steward), hidden);
        assert!(!can_hide_from(Role::Person, false));
        assert!(!can_hide_from(Role::Steward, true));
        assert!(can_hide_from(Role::Steward, false));
    }
}
