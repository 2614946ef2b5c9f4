//! A member, and her place in a record.

use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{MemberId, MembershipId, PersonId},
    reach::{Email, Phone},
    text::Line,
    zone::Zone,
};
use crate::platform::{
    auth::{
        area::{AreaName, Role},
        lowered::Lowered,
        password,
        policy::{self, Level, Reach},
    },
    error::Result,
    web::form::FormErrors,
};
use serde::Serialize;

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

/// Whether a place stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum State {
    Standing,
    /// Until it is taken back: she sees nothing of the record, and gets no mail about it.
    Paused,
    Ended,
}

#[derive(Clone, Debug, PartialEq)]
pub struct Membership {
    pub id: MembershipId,
    pub person_id: PersonId,
    pub member_id: MemberId,
    pub role: Role,
    pub state: State,
    /// When the state last turned.
    pub turned_at: Option<Instant>,
    pub lowered: Lowered,
    /// The version of it that was decided for a person who does not sign in: the newest such.
    pub on_behalf: Option<i64>,
    pub version: i64,
}

audited!(Membership as "membership" {
    member_id: "", role: "role", state: "", turned_at: "", lowered: "areas lowered",
    on_behalf: "",
} skip { id, person_id, version });

impl Membership {
    pub fn new(person_id: PersonId, member_id: MemberId, role: Role) -> Membership {
        Membership {
            id: MembershipId::default(),
            person_id,
            member_id,
            role,
            state: State::Standing,
            turned_at: None,
            lowered: Lowered::default(),
            on_behalf: None,
            version: 1,
        }
    }

    pub fn reach(&self) -> Reach {
        Reach { role: self.role, lowered: self.lowered }
    }

    /// Whether she decides who shares the record: her place stands, and reaches so far.
    pub fn decides(&self) -> bool {
        let reaches = policy::level(self.reach(), AreaName::Members) == Level::Change;
        self.state == State::Standing && reaches
    }

    /// Marked as decided for the person, where it differs from what it was before.
    pub fn on_behalf_if(&self, for_her: bool, before: &Membership) -> Membership {
        let on_behalf = match for_her && self != before {
            true => Some(before.version + 1),
            false => self.on_behalf,
        };
        Membership { on_behalf, ..self.clone() }
    }

    /// A steward who can act as one.
    pub fn is_steward(&self) -> bool {
        self.role == Role::Steward && self.decides()
    }

    pub fn in_role(&self, role: Role) -> Membership {
        Membership { role, ..self.clone() }
    }

    pub fn lowered(&self, lowered: Lowered) -> Membership {
        Membership { lowered, ..self.clone() }
    }

    pub fn turned(&self, state: State, at: Instant) -> Membership {
        Membership { state, turned_at: Some(at), ..self.clone() }
    }

    /// An ended place that is filled anew: in the role of the invitation, nothing lowered.
    pub fn filled_again(&self, role: Role, at: Instant) -> Membership {
        self.turned(State::Standing, at).in_role(role).lowered(Lowered::default())
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

/// "relative, without directives": a role, and what is lowered.
pub fn place_words(role: Role, lowered: Lowered) -> String {
    let lowered = lowered.each().map(|(area, words)| match words {
        "nothing" => format!(", without {}", area.name()),
        _ => format!(", {} to see only", area.name()),
    });
    format!("{}{}", role.name(), lowered.collect::<String>())
}
