//! Two people edit the same thing: the second sees both versions, with her typing kept.

use crate::support::Family;

#[tokio::test]
async fn the_second_sees_both_versions_and_decides() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/medicines/add"))
        .await
        .fill("Name", "Furosemide")
        .fill("Dose", "1 tablet");
    ines.press("Add this medicine").await.answers(200);

    ines.press("Edit").await;
    bram.open(&family.at("/medicines/1/edit")).await.fill("Dose", "2 tablets");
    bram.press("Save").await.answers(200);
    ines.fill("Dose", "half a tablet").fill("What for", "swollen legs").press("Save").await;

    ines.answers(409).sees("Someone changed this meanwhile").sees("Bram saved it");
    ines.sees("In the record now 2 tablets");
    assert_eq!(ines.value("Dose"), "half a tablet");
    assert_eq!(ines.value("What for"), "swollen legs");
    ines.press("Save").await.answers(200).sees("half a tablet").sees("swollen legs");
    ines.press("Its history").await.sees("2 tablets").sees("half a tablet");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_stop_on_a_page_that_has_grown_old_is_asked_again() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Furosemide");
    ines.press("Add this medicine").await.press("Stop").await;
    bram.open(&family.at("/medicines/1/edit")).await.fill("Dose", "2 tablets").press("Save").await;
    ines.fill("Why", "the pulse").fill("Who said so", "the clinic");
    ines.press("Stop").await.answers(409);
    assert_eq!(ines.value("Who said so"), "the clinic");
    ines.press("Stop").await.answers(200).sees("stopped from");
    family.house.is_sound().await;
}
