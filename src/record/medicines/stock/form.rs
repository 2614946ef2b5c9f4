//! What can be typed about a supply: a fill, a count, the days a pharmacy needs.

use super::{
    Amount,
    model::{Class, Count, Fill},
};
use crate::base::{
    clock::Instant,
    ids::{CountId, FillId, MedicineId, MemberId, PersonId},
    quantity::Quantity,
    text::Line,
};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// More than is handed out at one time (common practice, no source): a slip of the finger.
const MOST: Quantity = Quantity::whole(10_000);

/// The fill as it was typed, and the version it was opened on.
pub struct Filled {
    pub entry: Entry,
    pub version: i64,
}

pub struct Entry {
    filled_on: Date,
    amount: Amount,
    label_days: Option<i64>,
    pharmacy: Option<Line>,
    pharmacy_days: Option<i64>,
    refills_left: Option<i64>,
    written_on: Option<Date>,
    expires_on: Option<Date>,
    class: Class,
    earliest_refill: Option<Date>,
}

impl Entry {
    pub fn of(self, medicine_id: MedicineId, (by, at): (MemberId, Instant)) -> Fill {
        Fill {
            id: FillId::default(),
            person_id: PersonId::default(),
            medicine_id,
            filled_on: self.filled_on,
            amount: self.amount,
            label_days: self.label_days,
            pharmacy: self.pharmacy,
            pharmacy_days: self.pharmacy_days,
            refills_left: self.refills_left,
            written_on: self.written_on,
            expires_on: self.expires_on,
            class: self.class,
            earliest_refill: self.earliest_refill,
            entered_by: by,
            entered_at: at,
            struck: false,
            version: 1,
        }
    }

    /// The fill it was, as it is typed now.
    pub fn over(self, before: &Fill) -> Fill {
        let typed = self.of(before.medicine_id, (before.entered_by, before.entered_at));
        Fill { id: before.id, person_id: before.person_id, version: before.version, ..typed }
    }
}

impl FromForm for Filled {
    fn read(form: &mut Reader) -> Result<Filled, FormErrors> {
        let filled_on =
            form.needed_day("filled_on", "Enter the day it was fetched, like 9 Mar 2026.");
        let amount = amount(form, false);
        let label_days = whole(form, "label_days", 1, 366);
        let (pharmacy, pharmacy_days) =
            (form.line("pharmacy"), whole(form, "pharmacy_days", 1, 30));
        let refills_left = whole(form, "refills_left", 0, 99);
        let (written_on, expires_on) = (form.day("written_on"), form.day("expires_on"));
        let (class, earliest_refill) = (form.choice::<Class>("class"), form.day("earliest_refill"));
        let version = form.version();
        form.finish(|| {
            let entry = Entry {
                filled_on: filled_on?,
                amount: amount?,
                label_days,
                pharmacy,
                pharmacy_days,
                refills_left,
                written_on,
                expires_on,
                class: class?,
                earliest_refill,
            };
            Some(Filled { entry, version })
        })
    }
}

/// How much, and what is counted. Nothing at all may be counted, but not fetched.
fn amount(form: &mut Reader, may_be_none: bool) -> Option<Amount> {
    let empty = form.raw("quantity").trim().is_empty();
    let quantity = form.quantity("quantity");
    let unit = form.needed_line("unit", "Write what is counted, like tablet, drop or mL.");
    let says = match quantity {
        None if empty => "Write how many.",
        Some(it) if it.is_zero() && !may_be_none => "Write how many, more than none.",
        Some(it) if it > MOST => "This is more than ten thousand: look at the label again.",
        _ => return Some(Amount::of(quantity?, unit?.as_str())),
    };
    form.wrong("quantity", says);
    None
}

/// A whole number; `None` where nothing was typed, or nothing that fits.
fn whole(form: &mut Reader, name: &'static str, least: i64, most: i64) -> Option<i64> {
    let typed = form.raw(name).trim().to_owned();
    let found = typed.parse::<i64>().ok().filter(|it| (least..=most).contains(it));
    if found.is_none() && !typed.is_empty() {
        form.wrong(name, format!("Write a whole number from {least} to {most}."));
    }
    found
}

pub struct Counted {
    counted_on: Date,
    amount: Amount,
}

impl Counted {
    pub fn of(self, medicine_id: MedicineId, (by, at): (MemberId, Instant)) -> Count {
        Count {
            id: CountId::default(),
            person_id: PersonId::default(),
            medicine_id,
            counted_on: self.counted_on,
            amount: self.amount,
            entered_by: by,
            entered_at: at,
            struck: false,
            version: 1,
        }
    }
}

impl FromForm for Counted {
    fn read(form: &mut Reader) -> Result<Counted, FormErrors> {
        let says = "Enter the day it was counted, like 9 Mar 2026.";
        let (counted_on, amount) = (form.needed_day("counted_on", says), amount(form, true));
        form.finish(|| Some(Counted { counted_on: counted_on?, amount: amount? }))
    }
}

/// Working days a pharmacy needs, where no fill says it.
pub struct Days {
    pub pharmacy_days: i64,
    pub version: i64,
}

impl FromForm for Days {
    fn read(form: &mut Reader) -> Result<Days, FormErrors> {
        if form.raw("pharmacy_days").trim().is_empty() {
            form.wrong("pharmacy_days", "Write a whole number from 1 to 30.");
        }
        let (days, version) = (whole(form, "pharmacy_days", 1, 30), form.version());
        form.finish(|| Some(Days { pharmacy_days: days?, version }))
    }
}
