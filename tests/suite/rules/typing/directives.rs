//! The forms of the directives, in an order in which each page is still there when it is asked.

use crate::support::{Browser, Family};

pub const FORMS: &[&str] = &[
    "/directives/add",
    "/directives/1/edit",
    "/directives/2/sign",
    "/directives/1/void",
    "/directives/1/supersede",
    "/directives/1/differs",
    "/directives/1/review",
    "/directives/1/copies/add",
    "/directives/copies/1/told",
    "/directives/copies/1/strike",
    "/directives/events/add",
    "/directives/1/aside/1",
    "/directives/events/1/strike",
    "/directives/1/strike",
];

/// One in force and one draft, a copy of the first, and something that happened.
pub async fn written(ines: &mut Browser, family: &Family) {
    for how in ["in force, as far as the family knows", "nothing signed yet: a draft"] {
        ines.open(&family.at("/directives/add")).await.tick("living will").tick(how);
        ines.press("Add this directive").await.answers(200);
    }
    ines.open(&family.at("/directives/1/copies/add")).await.fill("Or in words", "the clinic");
    ines.press("Write it down").await.answers(200);
    ines.open(&family.at("/directives/events/add")).await.tick("a decline");
    ines.fill("On which day", "2 Nov 2026").press("Write it down").await.answers(200);
}
