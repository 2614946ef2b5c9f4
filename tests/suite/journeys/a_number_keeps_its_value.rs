//! A number of another list keeps its value or is refused: a point at the front is no mark to be
//! thrown away, and a number that was parted is nobody's to guess. ISMP's list of error-prone
//! notations has ".5 mg", which has been read as 5 mg.

use super::a_second_list_is_laid_beside::{key, taken_in, write};
use crate::support::Family;

const LIST: &str = "\
Quillamine .1 mg tablet, 1 tablet daily
Brenolol 10 mg tablet, .5 tablet daily
Warfarin 1 0 mg tablet, 1 tablet in the evening
Sertraline 50 mg tablet, 1 tablet in the morning";

#[tokio::test]
async fn a_tenth_stays_a_tenth_and_a_parted_number_is_never_accepted() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for [name, strength, dose, when] in [
        ["Quillamine", "1 mg", "1 tablet", "daily"],
        ["Brenolol", "10 mg", "5 tablet", "daily"],
        ["Warfarin", "10 mg", "1 tablet", "in the evening"],
        ["Sertraline", "50 mg", "1 tablet", "in the morning"],
    ] {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name).fill("Strength", strength);
        ines.fill("Form", "tablet").fill("Dose", dose).fill("When", when);
        ines.press("Add this medicine").await.answers(200);
    }
    taken_in(&mut ines, &family, LIST).await;
    ines.sees("0.1 mg").sees("written \".1 mg\": usually means 0.1 mg").sees("0.5 tablet daily");
    ines.sees("not understood").sees("\"1 0\" may be one number or two");
    ines.press("Lay it beside the record").await;
    ines.sees("strength 1 mg in the record, 0.1 mg on the list");
    ines.sees("how taken 5 tablet, daily in the record, 0.5 tablet daily on the list");
    ines.sees("Not understood 1").sees("Changed 2").sees("The same in both 1");

    // It cannot be accepted, however the form is sent.
    let (_, address, mut form) = ines.pressed("Write what is chosen");
    form.push((key(&ines, "Warfarin"), "accept".into()));
    ines.send(&address, &form).await.answers(422).sees("Choose one of what stands beside the row.");
    ines.open(&family.at("/medicines/3")).await.sees("Warfarin 10 mg tablet");

    // Whoever edits it types a number that can be read.
    ines.open(&family.at("/reconciliation/1")).await;
    ines.press("Edit the line : Warfarin 1 0 mg tablet, 1 tablet in the evening").await;
    ines.fill("Strength", "1 0 mg").press("Save").await.answers(422);
    ines.sees("\"1 0\" may be one number or two");
    ines.fill("Strength", "5 mg").fill("Form", "tablet").press("Save").await.answers(200);
    ines.does_not_see("not understood").press("Lay it beside the record").await;
    ines.sees("strength 10 mg in the record, 5 mg on the list").sees("Changed 3");

    // What is accepted has its zero.
    write(&mut ines, &[("Quillamine 0.1 mg tablet", "accept")], &[]).await;
    ines.open(&family.at("/medicines/1")).await.sees("Quillamine 0.1 mg tablet");
    family.house.is_sound().await;
}
