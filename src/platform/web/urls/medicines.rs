//! The addresses of the medicines, and of all that leans on one.

use super::{Address, record};
use crate::base::ids::{
    ContactId, CountId, FillId, GivenId, IngredientId, MedicineId, StepId, TurnId,
};
use std::borrow::Borrow;
use time::Date;

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
