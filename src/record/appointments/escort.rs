//! Who goes along: a member, one of the contacts, nobody because she goes alone; or nobody yet.

use crate::base::ids::{ContactId, MemberId};

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Escort {
    /// Nobody has said that she will.
    #[default]
    Nobody,
    Member(MemberId),
    Contact(ContactId),
    /// It was said that the person goes alone.
    Alone,
}

impl Escort {
    pub fn of(member: Option<MemberId>, contact: Option<ContactId>, alone: bool) -> Escort {
        match (member, contact) {
            (Some(member), _) => Escort::Member(member),
            (None, Some(contact)) => Escort::Contact(contact),
            (None, None) if alone => Escort::Alone,
            (None, None) => Escort::Nobody,
        }
    }

    /// As it is kept: a member, a contact, or alone.
    pub fn columns(self) -> (Option<MemberId>, Option<ContactId>, bool) {
        match self {
            Escort::Nobody => (None, None, false),
            Escort::Member(member) => (Some(member), None, false),
            Escort::Contact(contact) => (None, Some(contact), false),
            Escort::Alone => (None, None, true),
        }
    }

    /// Its name in a form: "member/3", "contact/7", "alone", or nothing.
    pub fn name(self) -> String {
        match self {
            Escort::Nobody => String::new(),
            Escort::Member(member) => format!("member/{member}"),
            Escort::Contact(contact) => format!("contact/{contact}"),
            Escort::Alone => "alone".into(),
        }
    }

    pub fn named(name: &str) -> Option<Escort> {
        match name.split_once('/') {
            None if name.is_empty() => Some(Escort::Nobody),
            None if name == "alone" => Some(Escort::Alone),
            Some(("member", id)) => Some(Escort::Member(id.parse().ok()?)),
            Some(("contact", id)) => Some(Escort::Contact(id.parse().ok()?)),
            _ => None,
        }
    }

    pub fn is_member(self, member: MemberId) -> bool {
        self == Escort::Member(member)
    }
}
