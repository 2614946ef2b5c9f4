//! The forms of what is to be renewed, and of papers that are not there yet.

use crate::support::{Browser, Family};

pub const FORMS: &[&str] = &[
    "/renewals/add",
    "/renewals/own/1/edit",
    "/renewals/own/1/begin",
    "/renewals/own/1/renewed",
    "/renewals/own/1/let-lapse",
    "/renewals/own/2/strike",
    "/renewals/missing/funeral-contract",
    "/renewals/missing/medicare",
];

/// Two entries of the family's own: one of them is struck.
pub async fn kept(ines: &mut Browser, family: &Family) {
    for _ in 0..2 {
        ines.open(&family.at("/renewals/add")).await.fill("What it is", "Passport");
        ines.fill("Its last day", "15 Jan 2027").press("Write it down").await.answers(200);
    }
}
