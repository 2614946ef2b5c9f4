//! The visit that is chosen for an observation.

use crate::base::{day, ids::AppointmentId};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// One time of an appointment, by the day that names it.
pub type Visit = (AppointmentId, Date);

/// On the sheet of which visit, or of none.
pub struct Ticked {
    pub visit: Option<Visit>,
    pub version: i64,
}

/// What is said at the field where the visit is on no list.
pub const GONE: &str = "Choose a visit from the list.";

impl FromForm for Ticked {
    fn read(form: &mut Reader) -> Result<Ticked, FormErrors> {
        let typed = form.raw("visit").to_owned();
        let visit = read(&typed);
        if visit.is_none() && !typed.is_empty() {
            form.wrong("visit", GONE);
        }
        let version = form.version();
        form.finish(|| Some(Ticked { visit, version }))
    }
}

/// As the form sends it: `7/2026-12-01`.
pub fn sent(visit: Visit) -> String {
    format!("{}/{}", visit.0, visit.1)
}

fn read(sent: &str) -> Option<Visit> {
    let (id, on) = sent.split_once('/')?;
    Some((id.parse().ok()?, day::iso(on)?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_visit_is_read_back_as_it_is_sent() {
        let visit = (7.into(), time::macros::date!(2026 - 12 - 01));
        assert_eq!(read(&sent(visit)), Some(visit));
        for odd in ["", "7", "7/", "x/2026-12-01", "7/2026-02-31"] {
            assert_eq!(read(odd), None, "{odd}");
        }
    }
}
