//! What can be typed about a cover.

use super::{
    kind::Kind,
    model::{Numbers, Terms},
};
use crate::base::text::Line;
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// A cover as it was typed, with its numbers where the form asks for them.
pub struct Typed {
    pub terms: Terms,
    pub numbers: Numbers,
    pub version: i64,
}

impl FromForm for Typed {
    fn read(form: &mut Reader) -> Result<Typed, FormErrors> {
        let payer = form.needed_line("payer", "Enter who pays: the insurer or the program.");
        let (plan, kind) = (form.line("plan"), form.choice::<Kind>("kind"));
        let (phone, hours) = (form.phone("phone"), form.line("hours"));
        let (talks, talks_until) = (form.line("talks"), form.day("talks_until"));
        let (from_on, until_on) = (form.day("from_on"), form.day("until_on"));
        let calendar_year = form.tick("calendar_year");
        let (numbers, version) = (numbers(form), form.version());
        form.finish(|| {
            let terms = Terms {
                payer: payer?,
                plan,
                kind: kind?,
                calendar_year,
                phone,
                hours,
                talks,
                talks_until,
                from_on,
                until_on,
            };
            Some(Typed { terms, numbers, version })
        })
    }
}

/// The numbers alone.
pub struct Numbered {
    pub numbers: Numbers,
    pub version: i64,
}

impl FromForm for Numbered {
    fn read(form: &mut Reader) -> Result<Numbered, FormErrors> {
        let (numbers, version) = (numbers(form), form.version());
        form.finish(|| Some(Numbered { numbers, version }))
    }
}

/// A BIN is what the standard of pharmacy claims routes by: six digits (from memory).
fn numbers(form: &mut Reader) -> Numbers {
    let rx_bin = form.line("rx_bin");
    let six = |it: &Line| it.as_str().len() == 6 && it.as_str().bytes().all(|b| b.is_ascii_digit());
    if rx_bin.as_ref().is_some_and(|it| !six(it)) {
        form.wrong("rx_bin", "A BIN has six digits, with its zeros in front, like 004336.");
    }
    Numbers {
        member_number: form.line("member_number"),
        group_number: form.line("group_number"),
        rx_bin,
        rx_pcn: form.line("rx_pcn"),
        rx_group: form.line("rx_group"),
    }
}

/// Struck: why.
pub struct Mistake {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Mistake {
    fn read(form: &mut Reader) -> Result<Mistake, FormErrors> {
        let reason = form.needed_line("reason", "Enter why it is struck.");
        let version = form.version();
        form.finish(|| Some(Mistake { reason: reason?, version }))
    }
}
