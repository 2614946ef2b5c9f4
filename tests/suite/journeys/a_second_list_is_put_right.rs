//! A second list's lines are put right by hand, left out and added; a list is struck; and what is
//! hidden from a member is not told to her by another list either.

use super::a_second_list_is_laid_beside::{key, taken_in, write};
use crate::support::{Browser, Family};

#[tokio::test]
async fn a_line_is_put_right_left_out_and_added_and_a_list_is_struck() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/reconciliation/add")).await.press("Take it in").await.answers(422);
    ines.sees("Paste the list here, or write one medicine on each line.");
    ines.fill("Whose list it is", "the clinic").fill("The day that stands on it", "26 Nov 2026");
    ines.fill("The list", "Your medicines:\nFurosemid 40 mg").press("Take it in").await;
    ines.answers(422).sees("This day has not come yet.");
    ines.fill("The day that stands on it", "25 Nov 2026").press("Take it in").await.answers(200);
    ines.press("Put it right : Your medicines:").await.tick("Leave this line out");
    ines.press("Save").await.answers(200).sees("left out: it names no medicine");
    ines.press("Put it right : Furosemid 40 mg").await.fill("Name", "Furosemide");
    ines.press("Save").await.answers(200).press("One more line").await;
    ines.fill("The line", "• Warfarin 5 mg tablet (discontinued)").press("Add this line").await;
    ines.answers(200).sees("the list says stopped").press("Lay it beside the record").await;
    ines.sees("2 to settle").sees("It is not among ours either");
    let (_, address, mut form) = ines.pressed("Write what is chosen");
    form.push((key(&ines, "Warfarin 5 mg tablet"), "accept".into()));
    ines.send(&address, &form).await.answers(422).sees("Choose one of what stands beside the row.");
    write(&mut ines, &[("Furosemide 40 mg", "accept")], &[]).await;
    ines.sees("One row is settled");
    // What was compared stays as it was compared, and is taken back before the list is struck.
    ines.open(&family.at("/reconciliation/1/lines/2"))
        .await
        .fill("Name", "Other")
        .press("Save")
        .await;
    ines.answers(422).sees("This line is settled");
    ines.open(&family.at("/reconciliation/1/strike")).await;
    ines.fill("What was wrong with it", "it is Emeric's").press("Strike").await.answers(422);
    ines.open(&family.at("/reconciliation/1/take-back")).await.press("Take it all back").await;
    ines.press("Entered by mistake").await.fill("What was wrong with it", "it is Emeric's");
    ines.press("Strike").await.answers(200).sees("struck: it is Emeric's");
    ines.press("Bring back").await.press("Bring back").await.answers(200).sees("2 to settle");
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_hidden_is_not_told_by_another_list_either() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Sertraline");
    ines.press("Add this medicine").await.answers(200);
    taken_in(&mut ines, &family, "sertraline 50 mg tablet\nWarfarin 5 mg tablet").await;
    ines.open(&family.at("/visibility/medicine/1")).await.tick("Bram").press("Save").await;
    let everywhere = ["/reconciliation/1", "/reconciliation/1/lines", "/history", "/questions"];
    let nowhere = async |bram: &mut Browser| {
        for page in everywhere {
            bram.open(&family.at(page)).await.answers(200).does_not_see("ertraline");
        }
        bram.get(&family.at("/reconciliation/1/lines/1")).await.answers(404);
    };
    nowhere(&mut bram).await;
    bram.open(&family.at("/reconciliation/1")).await.sees("1 to settle").sees("Warfarin");
    ines.open(&family.at("/reconciliation/1")).await;
    write(&mut ines, &[("sertraline 50 mg tablet", "ask")], &[]).await;
    nowhere(&mut bram).await;
    family.browser("Delia").await.get(&family.at("/reconciliation/1")).await.answers(404);
    family.house.is_sound().await;
}
