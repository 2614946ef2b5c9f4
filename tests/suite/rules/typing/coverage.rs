//! The forms of coverage, cards and what was refused at the counter, and one of each to fill them
//! with.

use crate::support::{Browser, Family, html};

pub const FORMS: &[&str] = &[
    "/coverage/add",
    "/coverage/1/edit",
    "/coverage/1/numbers",
    "/coverage/1/strike",
    "/coverage/cards/add",
    "/coverage/cards/1/edit",
    "/coverage/cards/1/photograph",
    "/coverage/cards/1/same",
    "/coverage/cards/1/strike",
    "/coverage/refusals/add",
    "/coverage/refusals/1/edit",
    "/coverage/refusals/1/statement",
    "/coverage/refusals/1/decision",
    "/coverage/refusals/1/move",
    "/coverage/refusals/1/calls/add",
    "/coverage/refusals/1/calls/1/strike",
    "/coverage/refusals/2/settle",
    "/coverage/refusals/1/strike",
];

pub async fn kept(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/coverage/add")).await.fill("Who pays", "Brindlewood Mutual");
    ines.tick("a Medicare drug plan").press("Add this cover").await.answers(200);
    ines.open(&family.at("/coverage/cards/add")).await.fill("What the card is called", "Plan");
    ines.attach("Photo of the front", &html::photo()).press("Keep the card").await.answers(200);
    for _ in 0..2 {
        ines.open(&family.at("/coverage/refusals/add")).await.fill("Which medicine", "1");
        ines.fill("What the refusal says", "Not on the list").tick("the plan");
        ines.press("Keep it").await.answers(200);
    }
    ines.open(&family.at("/coverage/refusals/1/calls/add")).await.fill("With whom", "Mr Aldous");
    ines.fill("What was said", "In writing").press("Write it down").await.answers(200);
}
