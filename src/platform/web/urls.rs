//! Every address of the house, by name. An address of a record leaves the person open; the page
//! or the answer that uses it fills her in, so a link can never lead into another record.

mod appointments;
mod carried;
mod coverage;
mod directives;
mod medicines;
mod papers;
mod renewals;
mod search;
mod sheets;
mod tasks;
mod visits;

use crate::base::ids::{
    AllergyId, AnswerId, ConditionId, ContactId, DecisionId, HappeningId, InvitationId,
    MembershipId, ObservationId, OperationId, PersonId, QuestionId, SecondListId, SessionId,
};

pub use appointments::*;
pub use carried::*;
pub use coverage::*;
pub use directives::*;
pub use medicines::*;
pub use papers::*;
pub use renewals::*;
pub use search::*;
pub use sheets::*;
pub use tasks::*;
pub use visits::*;

/// Somewhere in the house, or somewhere in the record at hand.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Address {
    House(String),
    Record(String),
}

impl Address {
    /// The whole path, below the base path the server is reached at.
    pub fn path(&self, base: &str, person: PersonId) -> String {
        match self {
            Address::House(rest) => format!("{base}{rest}"),
            Address::Record(rest) => format!("{base}/p/{person}{rest}"),
        }
    }

    /// A step further: `medicine(7).and("stop")`.
    pub fn and(&self, step: &str) -> Address {
        match self {
            Address::House(rest) => Address::House(format!("{rest}/{step}")),
            Address::Record(rest) => Address::Record(format!("{rest}/{step}")),
        }
    }
}

fn house(rest: &str) -> Address {
    Address::House(rest.into())
}

fn record(rest: impl Into<String>) -> Address {
    Address::Record(rest.into())
}

/// The records a member shares.
pub fn records() -> Address {
    house("/")
}

pub fn sign_in() -> Address {
    house("/sign-in")
}

pub fn forgot() -> Address {
    house("/sign-in/forgot")
}

pub fn sign_out() -> Address {
    house("/sign-out")
}

pub fn me() -> Address {
    house("/me")
}

/// What is mailed to the member, and when.
pub fn mail() -> Address {
    me().and("mail")
}

/// Where a link leads that stops a kind of mail.
pub fn mail_stop(token: &str) -> Address {
    Address::House(format!("/mail/stop/{token}"))
}

/// What is mailed to her about one person's record.
pub fn mail_about(person: impl Into<PersonId>) -> Address {
    let person = person.into();
    Address::House(format!("/me/mail/{person}"))
}

/// How the mail about this record fares.
pub fn reminders() -> Address {
    record("/reminders")
}

/// One of the member's own devices.
pub fn session(id: impl Into<SessionId>) -> Address {
    let id = id.into();
    Address::House(format!("/me/devices/{id}"))
}

pub fn asset(name: &str) -> Address {
    Address::House(format!("/static/{name}"))
}

/// What a phone reads to put the house on its home screen.
pub fn manifest() -> Address {
    house("/manifest.webmanifest")
}

/// The script that keeps the shell; it reaches whatever lies below its own address.
pub fn worker() -> Address {
    house("/sw.js")
}

/// What a phone shows when there is no network.
pub fn offline() -> Address {
    house("/offline")
}

/// One person's record, from outside it.
pub fn record_of(person: impl Into<PersonId>) -> Address {
    let person = person.into();
    Address::House(format!("/p/{person}"))
}

/// The emergency sheet of one person, from outside her record.
pub fn emergency_of(person: impl Into<PersonId>) -> Address {
    record_of(person).and("sheets/emergency")
}

pub fn person() -> Address {
    record("")
}

/// What stands first when the record is opened.
pub fn today() -> Address {
    record("/today")
}

/// What stands first in one person's record, from outside it.
pub fn today_of(person: impl Into<PersonId>) -> Address {
    record_of(person).and("today")
}

pub fn happenings() -> Address {
    record("/happenings")
}

pub fn happening(id: impl Into<HappeningId>) -> Address {
    let id = id.into();
    record(format!("/happenings/{id}"))
}

/// What was noticed, day by day.
pub fn observations() -> Address {
    record("/noticed")
}

pub fn observation(id: impl Into<ObservationId>) -> Address {
    let id = id.into();
    record(format!("/noticed/{id}"))
}

/// What was noted about one item.
pub fn happenings_about(kind: &str, item: impl Into<i64>) -> Address {
    let item = item.into();
    record(format!("/happenings/about/{kind}/{item}"))
}

pub fn questions() -> Address {
    record("/questions")
}

pub fn question(id: impl Into<QuestionId>) -> Address {
    let id = id.into();
    record(format!("/questions/{id}"))
}

/// The questions about one item.
pub fn questions_about(kind: &str, item: impl Into<i64>) -> Address {
    let item = item.into();
    record(format!("/questions/about/{kind}/{item}"))
}

/// Other lists of medicines, laid beside the record.
pub fn second_lists() -> Address {
    record("/reconciliation")
}

pub fn second_list(id: impl Into<SecondListId>) -> Address {
    let id = id.into();
    record(format!("/reconciliation/{id}"))
}

/// What mail may say of this record.
pub fn person_mail() -> Address {
    record("/mail")
}

/// Where a death is entered.
pub fn person_died() -> Address {
    record("/died")
}

pub fn allergies() -> Address {
    record("/allergies")
}

pub fn allergy(id: impl Into<AllergyId>) -> Address {
    let id = id.into();
    record(format!("/allergies/{id}"))
}

pub fn contacts() -> Address {
    record("/contacts")
}

pub fn contact(id: impl Into<ContactId>) -> Address {
    let id = id.into();
    record(format!("/contacts/{id}"))
}

/// Where a contact stands in the record.
pub fn contact_places(id: impl Into<ContactId>) -> Address {
    contact(id).and("places")
}

pub fn conditions() -> Address {
    record("/conditions")
}

pub fn condition(id: impl Into<ConditionId>) -> Address {
    let id = id.into();
    record(format!("/conditions/{id}"))
}

pub fn operations() -> Address {
    record("/operations")
}

pub fn operation(id: impl Into<OperationId>) -> Address {
    let id = id.into();
    record(format!("/operations/{id}"))
}

/// What was said of a blood thinner and of implants.
pub fn statements() -> Address {
    record("/statements")
}

/// How the person usually is.
pub fn usual() -> Address {
    record("/usual")
}

pub fn family() -> Address {
    record("/family")
}

/// A member's place in the record.
pub fn place(id: impl Into<MembershipId>) -> Address {
    let id = id.into();
    record(format!("/family/{id}"))
}

pub fn invite() -> Address {
    family().and("invite")
}

/// What the person answered about her own record.
pub fn answers() -> Address {
    family().and("answers")
}

pub fn answer(id: impl Into<AnswerId>) -> Address {
    let id = id.into();
    record(format!("/family/answers/{id}"))
}

/// An invitation into this record.
pub fn invitation(id: impl Into<InvitationId>) -> Address {
    let id = id.into();
    record(format!("/family/invitations/{id}"))
}

/// Where the link of an invitation leads.
pub fn join(token: &str) -> Address {
    house("/join").and(token)
}

/// Starting another record.
pub fn another_record() -> Address {
    house("/records/add")
}

pub fn history() -> Address {
    record("/history")
}

/// The life of one item.
pub fn history_of(kind: &str, item: impl Into<i64>) -> Address {
    record(format!("/history/{kind}/{}", item.into()))
}

/// Who sees one item.
pub fn visibility(kind: &str, item: impl Into<i64>) -> Address {
    record(format!("/visibility/{kind}/{}", item.into()))
}

/// What is to be decided for the person, and what was.
pub fn decisions() -> Address {
    record("/decisions")
}

pub fn decision(id: impl Into<DecisionId>) -> Address {
    let id = id.into();
    record(format!("/decisions/{id}"))
}

/// The open decisions, for the family to go through.
pub fn family_meeting() -> Address {
    decisions().and("meeting")
}
