//! An item that is hidden from a member is not there for her: not in lists, counts, by its id,
//! on sheets, or in the history; and that it was hidden is not told to her either.

use crate::support::Family;

#[tokio::test]
async fn what_is_hidden_from_bram_is_traceless_for_him() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    for name in ["Sertraline", "Warfarin"] {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name);
        ines.press("Add this medicine").await.answers(200);
    }
    ines.open(&family.at("/medicines/1")).await.press("Who sees this").await;
    ines.sees("on behalf of the person").tick("Bram").press("Save").await.answers(200);

    bram.open(&family.at("/medicines")).await.sees("Taking 1").does_not_see("Sertraline");
    bram.open(&family.at("/medicines/1")).await.answers(404);
    bram.open(&family.at("/medicines/1/edit")).await.answers(404);
    bram.open(&family.at("/history/medicine/1")).await.answers(404);
    bram.open(&family.at("/history")).await.does_not_see("Sertraline").does_not_see("hid");
    bram.open(&family.at("/sheets/emergency")).await.sees("Warfarin").does_not_see("Sertraline");

    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/history")).await;
    ottoline.sees("Ines hid Sertraline from Bram, on Ottoline Varga's behalf");
    ottoline.open(&family.at("/medicines/1")).await.press("Who sees this").await;
    ottoline.untick("Bram").press("Save").await.answers(200);
    bram.open(&family.at("/medicines/1")).await.answers(200);
    bram.open(&family.at("/history")).await.sees("Sertraline").does_not_see("hid");
    ottoline.open(&family.at("/history")).await.sees("Ottoline showed again Sertraline to Bram");
    family.house.is_sound().await;
}

#[tokio::test]
async fn nothing_is_hidden_from_the_person_nor_by_a_relative() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Warfarin");
    ines.press("Add this medicine").await.press("Who sees this").await;
    ines.does_not_see("Ottoline person");
    let (_, address, mut form) = ines.pressed("Save");
    form.push(("hide".into(), "1".into()));
    ines.send(&address, &form).await.answers(303);
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/medicines/1")).await.answers(200);
    bram.open(&family.at("/visibility/medicine/1")).await.answers(403);
    ines.open(&family.at("/visibility/medicine/99")).await.answers(404);
    ines.open(&family.at("/visibility/member/1")).await.answers(404);
}
