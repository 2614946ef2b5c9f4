//! Roles change, areas are lowered, places are paused and end: who may, what follows at once, and
//! what happens when two do it at the same time.

use crate::support::Family;

#[tokio::test]
async fn a_relative_without_directives_and_with_less_of_the_rest() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Warfarin");
    ines.press("Add this medicine").await.answers(200);
    ines.open(&family.at("/family")).await.press("Bram").await.press("Areas").await;
    ines.fill("directives", "nothing").press("Save").await.answers(200).sees("Bram has the areas");
    ines.open(&family.at("/family")).await.sees("relative, without directives");
    ines.open(&family.at("/history")).await.sees("Ines lowered directives for Bram to nothing");

    ines.open(&family.at("/family/3/areas")).await.fill("clinical", "see only");
    ines.fill("history", "nothing").press("Save").await.answers(200);
    bram.open(&family.at("/medicines")).await.sees("Warfarin").does_not_see("Add a medicine");
    bram.open(&family.at("/medicines/1/edit")).await.answers(403);
    bram.open(&family.at("/history")).await.answers(404);
    bram.open(&family.at("")).await.does_not_see("History");

    // The medicines are closed; the emergency sheet, on screen and paper, is whole all the same.
    ines.open(&family.at("/family/3/areas")).await.fill("clinical", "nothing").press("Save").await;
    bram.open(&family.at("/medicines")).await.answers(404);
    bram.open(&family.at("")).await.does_not_see("Medicines");
    bram.open(&family.at("/sheets/emergency")).await.sees("Warfarin");
    bram.press("Print or save").await.answers(200);
    // What is hidden item by item stays hidden there.
    ines.open(&family.at("/visibility/medicine/1")).await.tick("Bram").press("Save").await;
    bram.open(&family.at("/sheets/emergency")).await.does_not_see("Warfarin");

    ines.open(&family.at("/family/3/areas"))
        .await
        .fill("essentials", "nothing")
        .press("Save")
        .await;
    bram.open(&family.at("/sheets/emergency")).await.answers(404);
    bram.open("/").await.sees("Ottoline Varga").does_not_see("Emergency sheet");
    bram.press("Ottoline Varga").await.answers(200).does_not_see("Emergency sheet");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_paused_and_an_ended_place_see_nothing_at_once_and_lose_nothing_silently() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    bram.open(&family.at("/medicines/add")).await.fill("Name", "Warfarin");
    ines.open(&family.at("/family/3")).await.press("Pause").await.press("Pause this place").await;
    ines.sees("Bram is paused").sees("This place is paused since");
    bram.press("Add this medicine").await.answers(404);
    bram.sees("Your place in this record is paused").sees("your browser's back button");
    bram.open("/").await.answers(200).does_not_see("Ottoline");
    ines.open(&family.at("/family")).await.sees("paused since");
    ines.press("Bram").await.press("Take back the pause").await.press("Take back the pause").await;
    bram.open(&family.at("/medicines/add")).await.answers(200).fill("Name", "Warfarin");
    ines.open(&family.at("/family/3/remove")).await.press("End this place").await.answers(200);
    ines.sees("Places that have ended 1").sees("was relative, until");
    bram.press("Add this medicine").await.answers(404).sees("Your place in this record has ended");
    ines.open(&family.at("/family/3")).await.answers(404);
    ines.open(&family.at("/medicines")).await.does_not_see("Warfarin");
    ines.open(&family.at("/history")).await.sees("Ines paused Bram's place");
    ines.sees("Ines took back the pause of Bram's place").sees("Ines ended Bram's place");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_person_and_stewards_decide_and_the_last_steward_stays() {
    let family = Family::new().await;
    let (mut ines, mut ottoline) = (family.browser("Ines").await, family.browser("Ottoline").await);
    let last = "This is the last steward who can decide here.";
    for browser in [&mut ines, &mut ottoline] {
        for (step, press) in [("pause", "Pause this place"), ("remove", "End this place")] {
            browser.open(&family.at(&format!("/family/2/{step}"))).await.press(press).await;
            browser.answers(422).sees(last);
        }
        browser.open(&family.at("/family/2/role")).await.tick("aide").press("Save").await;
        browser.answers(422).sees(last);
    }
    // The person's place is hers: not offered, and refused where it is tried all the same.
    ines.open(&family.at("/family/1")).await.sees("Nobody else changes it").does_not_see("Pause");
    ines.open(&family.at("/family/1/remove")).await.press("End this place").await;
    ines.answers(422).sees("The person's own place is not changed by anyone else");
    // Nobody but these two, and nobody makes a member the person.
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/family/4")).await.answers(200).does_not_see("End this place");
    bram.open(&family.at("/family/3/role")).await.answers(403);
    ines.open(&family.at("/family/3/role")).await;
    let (_, address, mut form) = ines.pressed("Save");
    form.iter_mut().filter(|it| it.0 == "role").for_each(|it| it.1 = "person".into());
    ines.send(&address, &form).await.answers(422).sees("Choose one of these.");
    // With a second steward the first may go.
    ottoline.open(&family.at("/family/3/role")).await.tick("steward").press("Save").await;
    ottoline.answers(200).open(&family.at("/history")).await;
    ottoline.sees("Ottoline changed the role of Bram from relative to steward");
    ines.open(&family.at("/family/2/remove")).await.press("End this place").await.answers(200);
    ines.sees("Ines no longer shares this record").sees("You have no place in a record now");
    family.house.is_sound().await;
}

#[tokio::test]
async fn nobody_raises_herself_or_takes_back_what_was_lowered_for_her() {
    let family = Family::new().await;
    let (mut ines, mut ottoline) = (family.browser("Ines").await, family.browser("Ottoline").await);
    ottoline.open(&family.at("/family/2/areas")).await.fill("money", "nothing");
    ottoline.press("Save").await.answers(200);
    ines.open(&family.at("/family/2/areas")).await.fill("money", "as the role has it");
    ines.press("Save").await.answers(422).sees("Nobody raises her own place.");
    // Nor by way of someone else: she gives nobody what she has not.
    ines.open(&family.at("/family/4/role")).await.tick("relative").press("Save").await;
    ines.answers(422).sees("more than your own place reaches");
    ines.open(&family.at("/family/invite")).await.does_not_see("does not decide who shares it");
    ottoline.open(&family.at("/family/2/areas")).await.fill("money", "as the role has it");
    ottoline.press("Save").await.answers(200).open(&family.at("/history")).await;
    ottoline.sees("Ottoline gave back money to Ines");
    family.house.is_sound().await;
}

#[tokio::test]
async fn of_two_who_decide_at_once_the_second_sees_both_versions() {
    let family = Family::new().await;
    let (mut ines, mut ottoline) = (family.browser("Ines").await, family.browser("Ottoline").await);
    ines.open(&family.at("/family/4/role")).await.tick("relative");
    ottoline
        .open(&family.at("/family/4/role"))
        .await
        .tick("reader")
        .press("Save")
        .await
        .answers(200);
    ines.press("Save").await.answers(409).sees("Someone changed this meanwhile");
    ines.sees("In the record now reader");
    assert_eq!(ines.value("relative"), "relative");
    ines.press("Save").await.answers(200).sees("Delia now shares this record as relative");

    // Two stewards change each other: the second is no steward any more.
    ottoline
        .open(&family.at("/family/3/role"))
        .await
        .tick("steward")
        .press("Save")
        .await
        .answers(200);
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/family/2/role")).await.tick("aide");
    ines.open(&family.at("/family/3/role")).await.tick("aide");
    tokio::join!(bram.press("Save"), ines.press("Save"));
    let mut answers = [bram.status.as_u16(), ines.status.as_u16()];
    answers.sort_unstable();
    assert_eq!(answers[0], 200, "{answers:?}");
    assert!(matches!(answers[1], 403 | 404), "{answers:?}");
    family.house.is_sound().await;
}
