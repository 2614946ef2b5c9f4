//! Every address of the house, by name. An address of a record leaves the person open; the page
//! or the answer that uses it fills her in, so a link can never lead into another record.

use crate::base::ids::{
    AllergyId, AnswerId, ConditionId, ContactId, CountId, FillId, GivenId, HappeningId,
    IngredientId, InvitationId, MedicineId, MembershipId, OperationId, PersonId, QuestionId,
    SecondListId, SessionId, StepId, TurnId,
};
use std::borrow::Borrow;
use time::Date;

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

/// Where a death is entered.
pub fn person_died() -> Address {
    record("/died")
}

pub fn medicines() -> Address {
    record("/medicines")
}

pub fn medicine(id: impl Into<MedicineId>) -> Address {
    let id = id.into();
    record(format!("/medicines/{id}"))
}

/// A step of a medicine's schedule.
pub fn step(medicine: impl Into<MedicineId>, id: impl Into<StepId>) -> Address {
    medicine_steps(medicine).and(&id.into().to_string())
}

/// What changed among the medicines, and who was told of it.
pub fn turns() -> Address {
    record("/changes")
}

pub fn turn(id: impl Into<TurnId>) -> Address {
    record(format!("/changes/{}", id.into()))
}

/// What one of the contacts has not been told.
pub fn tell_contact(id: impl Into<ContactId>) -> Address {
    record(format!("/changes/tell/{}", id.into()))
}

/// What is in a medicine, by its label.
pub fn ingredient(medicine: impl Into<MedicineId>, id: impl Into<IngredientId>) -> Address {
    self::medicine(medicine).and(&format!("ingredients/{}", id.into()))
}

/// Each ingredient that stands in several medicines.
pub fn same_in_several() -> Address {
    record("/ingredients")
}

/// What is written down in one place and not so in another.
pub fn disagreements() -> Address {
    record("/disagreements")
}

/// The same, with what a save has just made so in front.
pub fn disagreements_of(rows: &[String]) -> Address {
    record(format!("/disagreements?new={}", rows.join("+")))
}

/// How long what is in the house lasts, of all medicines.
pub fn supply() -> Address {
    medicines().and("supply")
}

/// The supply of one medicine.
pub fn stock(medicine: impl Into<MedicineId>) -> Address {
    self::medicine(medicine).and("stock")
}

pub fn fill(medicine: impl Into<MedicineId>, id: impl Into<FillId>) -> Address {
    stock(medicine).and(&format!("fills/{}", id.into()))
}

pub fn count(medicine: impl Into<MedicineId>, id: impl Into<CountId>) -> Address {
    stock(medicine).and(&format!("counts/{}", id.into()))
}

pub fn medicine_steps(medicine: impl Into<MedicineId>) -> Address {
    self::medicine(medicine).and("steps")
}

/// The log of doses, of today.
pub fn given() -> Address {
    record("/medicines/given")
}

/// The log of doses, of a day.
pub fn given_on(day: impl Borrow<Date>) -> Address {
    record(format!("/medicines/given?on={}", day.borrow()))
}

/// Where a family says for which medicines it keeps the log.
pub fn log_keeping() -> Address {
    given().and("keeping")
}

/// All that is due at one time of one day, by its name in the schedule.
pub fn given_slot(day: impl Borrow<Date>, time: &str) -> Address {
    record(format!("/medicines/given/slots/{}/{time}", day.borrow()))
}

/// A dose that is as needed, or at a time of its own.
pub fn given_as_needed(medicine: impl Into<MedicineId>) -> Address {
    let medicine = medicine.into();
    record(format!("/medicines/given/as-needed/{medicine}"))
}

/// One dose as it was entered.
pub fn given_entry(id: impl Into<GivenId>) -> Address {
    let id = id.into();
    record(format!("/medicines/given/{id}"))
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

pub fn sheets() -> Address {
    record("/sheets")
}

pub fn emergency_sheet() -> Address {
    record("/sheets/emergency")
}

/// What is kept about the person, and who sees it.
pub fn kept_sheet() -> Address {
    record("/sheets/kept")
}

/// Every medicine on one sheet.
pub fn medicine_sheet() -> Address {
    record("/sheets/medicines")
}

pub fn wallet_card() -> Address {
    record("/sheets/wallet")
}

/// A week for the pill box on paper, from a day on.
pub fn week_sheet(from: impl Borrow<Date>) -> Address {
    record(format!("/sheets/week?on={}", from.borrow()))
}

pub fn week_print(from: impl Borrow<Date>) -> Address {
    record(format!("/sheets/week/print?on={}", from.borrow()))
}

/// A day on paper.
pub fn day_sheet(on: impl Borrow<Date>) -> Address {
    record(format!("/sheets/day?on={}", on.borrow()))
}

pub fn day_print(on: impl Borrow<Date>) -> Address {
    record(format!("/sheets/day/print?on={}", on.borrow()))
}
