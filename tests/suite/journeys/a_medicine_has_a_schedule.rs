//! When and how much: a label in numbers, a taper in steps, the day and the pill box laid out.

use crate::support::{Browser, Family};

async fn add(ines: &mut Browser, family: &Family, name: &str) {
    ines.open(&family.at("/medicines/add")).await.fill("Name", name).fill("Strength", "5 mg");
    ines.fill("Dose", "1 tablet").fill("When", "twice a day");
    ines.press("Add this medicine").await.answers(200);
}

const OFTEN: &str = "every day, or every so many days";

#[tokio::test]
async fn a_label_is_said_in_numbers_and_laid_out_in_a_day() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    add(&mut ines, &family, "Warfarin").await;
    ines.open(&family.at("/medicines/day")).await.sees("Nothing is laid out for this day.");
    ines.sees("Warfarin 5 mg not laid out yet. The label: 1 tablet, twice a day");
    ines.open(&family.at("/medicines/1")).await.press("When and how much").await;
    ines.sees("The label says: 1 tablet, twice a day").press("Save").await.answers(422);
    ines.sees("Write how much is taken, at one time at least.");
    ines.fill("morning", "1,5").press("Save").await.answers(422);
    ines.sees("Write the number with a point, like 1.5.");
    ines.tick(OFTEN).fill("morning", "1").fill("bedtime", "1/2").fill("Counted in", "tablet");
    ines.press("Save").await.answers(200);
    ines.sees("1 tablet in the morning and 0.5 tablet at bedtime");
    ines.open(&family.at("/medicines/day")).await.sees("morning 6–9 am Warfarin 5 mg 1 tablet");
    ines.sees("bedtime 9–11 pm Warfarin 5 mg 0.5 tablet").does_not_see("Not laid out here");
    // An aide sees the day; it is what she is there for.
    let mut delia = family.browser("Delia").await;
    delia
        .open(&family.at("/medicines"))
        .await
        .press("The day")
        .await
        .sees("Warfarin 5 mg 1 tablet");
    delia.open(&family.at("/medicines")).await.press("A week for the pill box").await.answers(200);
    assert_eq!(delia.text().matches("1 tablet Warfarin").count(), 7);
    ines.open(&family.at("/history")).await.sees("Ines added when and how much of Warfarin");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_taper_is_dated_steps_that_do_not_overlap() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    add(&mut ines, &family, "Prednisone").await;
    ines.open(&family.at("/medicines/1/steps/add")).await.tick(OFTEN).fill("morning", "4");
    ines.fill("From which day", "20 Nov 2026").fill("Until which day, this one too", "19 Nov 2026");
    ines.press("Save").await.answers(422).sees("This is before the first day.");
    ines.fill("Until which day, this one too", "26 Nov 2026").press("Save").await.answers(200);
    ines.sees("from 20 November 2026 to 26 November 2026").press("Another step").await;
    assert_eq!(ines.value("From which day"), "27 November 2026");
    ines.fill("From which day", "26 Nov 2026")
        .fill("morning", "2")
        .press("Save")
        .await
        .answers(422);
    ines.sees("This lies over the step from 20 November 2026 to 26 November 2026.");
    ines.fill("From which day", "27 Nov 2026").press("Save").await.answers(200);
    ines.open(&family.at("/medicines/day?on=2026-11-26")).await.sees("4 tablets");
    ines.open(&family.at("/medicines/day?on=2026-11-27")).await.sees("2 tablets");
    ines.open(&family.at("/medicines/1/steps/2/strike")).await.press("Strike").await.answers(200);
    ines.open(&family.at("/medicines/day?on=2026-11-27")).await.sees("no step of its schedule");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_schedule_of_a_hidden_medicine_is_hidden_with_it() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    add(&mut ines, &family, "Sertraline").await;
    ines.open(&family.at("/medicines/1/steps/add")).await.tick(OFTEN).fill("morning", "1");
    ines.press("Save").await.answers(200);
    ines.open(&family.at("/visibility/medicine/1")).await.tick("Bram").press("Save").await;
    let mut bram = family.browser("Bram").await;
    for page in ["/medicines/day", "/medicines/week", "/history", "/today"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("Sertraline");
        bram.does_not_see("when and how much of");
    }
    bram.get(&family.at("/medicines/1/steps/1/edit")).await.answers(404);
    family.house.is_sound().await;
}
