//! A member, and her place in a record.

use crate::audited;
use crate::base::{
    ids::{MemberId, MembershipId, PersonId},
    reach::{Email, Phone},
    text::Line,
    zone::Zone,
};
use crate::platform::{
    auth::{area::Role, password},
    error::Result,
    web::form::FormErrors,
};

#[derive(Clone, Debug, PartialEq)]
pub struct Member {
    pub id: MemberId,
    pub name: Line,
    pub email: Email,
    pub phone: Option<Phone>,
    pub zone: Zone,
    /// Argon2id, as a PHC string.
    pub password: Option<String>,
    pub version: i64,
}

audited!(Member as "member" {
    name: "name", email: "e-mail address", phone: "phone", zone: "time zone",
} sealed { password: "password" } skip { id, version });

impl Member {
    pub fn new(name: Line, email: Email, zone: Zone) -> Member {
        let id = MemberId::default();
        Member { id, name, email, phone: None, zone, password: None, version: 1 }
    }

    /// Whether a typed password may be hers: `field` is where the form says so if not.
    pub fn accepts(&self, typed: &str, field: &'static str) -> Result<password::Password> {
        let about = [self.name.as_str(), self.email.as_str()];
        let accepted = password::accept(typed, &about);
        accepted.map_err(|e| FormErrors::at(field, e.to_string()).into())
    }

    pub fn with_password(&self, phc: String) -> Member {
        Member { password: Some(phc), ..self.clone() }
    }
}

#[derive(Clone, Debug, PartialEq)]
pub struct Membership {
    pub id: MembershipId,
    pub person_id: PersonId,
    pub member_id: MemberId,
    pub role: Role,
    pub version: i64,
}

audited!(Membership as "membership" { member_id: "", role: "role" } skip { id, person_id, version });

impl Membership {
    pub fn new(person_id: PersonId, member_id: MemberId, role: Role) -> Membership {
        Membership { id: MembershipId::default(), person_id, member_id, role, version: 1 }
    }
}

/// What a role reaches, in a few words.
pub fn role_words(role: Role) -> &'static str {
    match role {
        Role::Person => "the person herself: sees and decides everything",
        Role::Steward => "sees and changes the whole record, and decides who shares it",
        Role::Relative => "sees and changes the record; does not decide who shares it",
        Role::Aide => "sees the essentials and the medicines; changes nothing here",
        Role::Reader => "sees the essentials and the medicines; changes nothing",
    }
}
