//! Something happens, and exactly the directives that it touches are to be looked at again, on Today
//! as well, until each was reviewed or put aside with a reason. The triggers are those of the ABA
//! Commission on Law and Aging: decade, death, divorce, diagnosis, decline, a move to another state.

use crate::support::{Browser, Family};

async fn written(ines: &mut Browser, family: &Family) {
    for (name, phone) in [("Emeric Varga", "218-555-0110"), ("Juno Varga", "617-555-0103")] {
        ines.open(&family.at("/contacts/add")).await.fill("Name", name).fill("Phone", phone);
        ines.press("Add this contact").await.answers(200);
    }
    for (kind, agent) in [("living will", ""), ("power of attorney for health care", "1")] {
        ines.open(&family.at("/directives/add")).await.tick(kind);
        ines.fill("Signed on", "3 May 2024").fill("Agent", agent);
        ines.press("Add this directive").await.answers(200);
    }
}

async fn happened(ines: &mut Browser, family: &Family, (what, whose): (&str, &str), says: &str) {
    ines.open(&family.at("/directives/events/add")).await.tick(what);
    ines.fill("To someone else", whose).fill("On which day", "2 Nov 2026");
    ines.press("Write it down").await.answers(200).sees(says);
}

const WILL: &str = "Look at it again: Living will of 3 May 2024";
const POWER: &str = "Look at it again: Power of attorney for health care of 3 May 2024";

#[tokio::test]
async fn a_move_touches_all_and_a_death_those_that_name_the_dead() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    written(&mut ines, &family).await;
    bram.open(&family.at("/today")).await.does_not_see("Look at it again");

    ines.open(&family.at("/directives/events/add")).await.tick("a death");
    ines.fill("On which day", "2 Nov 2026").press("Write it down").await.answers(422);
    ines.sees("Choose who died, of the contacts.");
    let touched = "1 directive is to be looked at again.";
    happened(&mut ines, &family, ("a death", "1"), touched).await;
    bram.open(&family.at("/today")).await.sees(POWER).does_not_see(WILL);
    bram.sees("after a death (Emeric Varga) on 2 November 2026");
    let amiss = "the agent, Emeric Varga, died on 2 November 2026";
    bram.sees(amiss).open(&family.at("/directives")).await.sees(amiss);
    bram.open(&family.at("/sheets/emergency")).await.sees("died on 2 November 2026");
    happened(&mut ines, &family, ("a death", "2"), "No directive is touched by it.").await;
    let touched = "2 directives are to be looked at again.";
    happened(&mut ines, &family, ("a move to another state", ""), touched).await;
    bram.open(&family.at("/today")).await.sees(WILL);

    // The one is reviewed, the other put aside with a reason; the death still touches that one.
    ines.open(&family.at("/directives/1")).await.press("Looked at again").await;
    ines.fill("By whom", "Ottoline and Ines").fill("Why, and what came of it", "it stays");
    ines.press("Looked at again").await.answers(200);
    ines.sees("25 November 2026 by Ottoline and Ines: it stays");
    bram.open(&family.at("/today")).await.does_not_see(WILL).sees(POWER);
    ines.open(&family.at("/directives/2/aside/3")).await.press("Put aside").await.answers(422);
    ines.fill("Why it need not be looked at", "the lawyer says that it holds there");
    ines.press("Put aside").await.answers(200);
    ines.sees("After a move to another state on 2 November 2026: the lawyer says");
    bram.open(&family.at("/today")).await.sees(POWER).does_not_see("after a move");
    ines.press("Look at it after all").await.answers(200);
    bram.open(&family.at("/today")).await.sees("after a move to another state");
    bram.get(&family.at("/directives/2/aside/3")).await.answers(403);

    // Struck, an event asks nothing more; and nobody has died by it.
    for event in ["1", "3"] {
        ines.open(&family.at(&format!("/directives/events/{event}/strike"))).await;
        ines.fill("What was wrong with the entry", "someone else's").press("Strike").await;
    }
    bram.open(&family.at("/today")).await.does_not_see("Look at it again").does_not_see(amiss);
    bram.open(&family.at("/history")).await.sees("Ines put aside").sees("Ines looked again at");
    bram.sees("Ines wrote down what happened: a move to another state on 2 November 2026");
    family.house.is_sound().await;
}

/// Ottoline, born 9 March 1944, was 80 on 9 March 2024, after the signing.
#[tokio::test]
async fn a_new_decade_is_told_and_a_later_directive_is_not_touched() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for (kind, on) in [("living will", "3 May 2022"), ("organ donation", "10 Nov 2026")] {
        ines.open(&family.at("/directives/add")).await.tick(kind).fill("Signed on", on);
        ines.press("Add this directive").await.answers(200);
    }
    ines.open(&family.at("/directives")).await.sees("life began on 9 March 2024");
    ines.open(&family.at("/directives/events/add")).await.tick("a new decade of life");
    ines.fill("On which day", "9 Mar 2024").press("Write it down").await.answers(200);
    ines.sees("1 directive is to be looked at again.").sees("Living will of 3 May 2022");
    ines.does_not_see("Organ donation of");
    ines.open(&family.at("/directives")).await.does_not_see("life began on");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_condition_that_began_since_is_asked_about_and_a_hidden_one_is_not() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/directives/add")).await.tick("living will");
    ines.fill("Signed on", "3 May 2022").press("Add this directive").await.answers(200);
    for (name, since) in [("Arthritis", "2019"), ("Heart failure", "4 Feb 2025"), ("Gout", "2023")]
    {
        ines.open(&family.at("/conditions/add")).await.fill("Name", name).fill("Since when", since);
        ines.press("Add this condition").await.answers(200);
    }
    ines.open(&family.at("/visibility/condition/3")).await.tick("Bram").press("Save").await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/directives")).await.sees("Heart failure, since 4 Feb 2025");
    bram.does_not_see("Gout").does_not_see("write it down");
    ines.open(&family.at("/directives")).await.sees("Gout, since 2023").does_not_see("Arthritis");
    ines.press("write it down : Heart failure, since 4 Feb 2025").await.answers(200);
    assert_eq!(ines.value("On which day"), "4 February 2025");
    assert_eq!(ines.value("In a few words"), "Heart failure");
    ines.press("Write it down").await.answers(200).sees("1 directive is to be looked at again.");
    // A diagnosis since then was written down: of the other one nobody is asked any more either.
    ines.open(&family.at("/directives")).await.does_not_see("Among the conditions stands");
    ines.sees("after a new diagnosis");
    family.house.is_sound().await;
}

#[tokio::test]
async fn before_signing_only_what_has_a_source_is_said() {
    let family = Family::new().await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/directives/signing")).await.sees("Ask your state’s form.");
    // Directions to the New Jersey POLST form; polst.org.
    bram.sees("New Jersey: portable medical order")
        .sees("A section that is left blank implies full");
    bram.does_not_see("Minnesota");
    let mut ines = family.browser("Ines").await;
    for (state, says) in [("New Jersey", true), ("Minnesota", false)] {
        ines.open(&family.at("/directives/add")).await.fill("Whose form it is", state);
        ines.tick("portable medical order (POLST-type)").press("Add this directive").await;
        let seen = ines.answers(200).text().contains("the word VOID, signed and dated");
        assert_eq!(seen, says, "{state}");
    }
    family.house.is_sound().await;
}
