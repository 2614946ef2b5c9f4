//! A contact is named in a directive, a paper, an appointment, a question; her number stands in notes. Her page says where; when
//! her number is changed the next page says where the old one still stands. What a reader does not see names her nowhere.

use crate::support::{Browser, Family, html};

/// Dr Lind, contact 1, in five places; the number in a sixth.
async fn written(family: &Family) -> Browser {
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Dr Lind").fill("Kind", "doctor");
    ines.fill("Phone", "218-555-0122").press("Add this contact").await.answers(200);
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Eye test");
    ines.fill("Clinician or service", "1").fill("Day", "8 Dec 2026").fill("Time", "2 pm");
    ines.press("Keep this appointment").await.answers(200);
    ines.open(&family.at("/questions/add?contact=1")).await.fill("The question", "May she swim?");
    ines.press("Keep the question").await.answers(200);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Warfarin");
    ines.fill("Prescriber", "Dr Lind").press("Add this medicine").await.answers(200);
    ines.open(&family.at("/tasks/add")).await.fill("What is to be done", "Ask for the form");
    ines.fill("Why, and what helps", "phone 218-555-0122 after ten");
    ines.press("Keep the task").await.answers(200);
    ines
}

fn listed(browser: &Browser) -> Vec<String> {
    let page = browser.page();
    html::select(&page, "main .rows h3").into_iter().map(html::text).collect()
}

#[tokio::test]
async fn a_changed_number_shows_every_place_where_the_old_one_stands() {
    let family = Family::new().await;
    let mut ines = written(&family).await;
    ines.open(&family.at("/contacts/1")).await.press("Where it stands").await.answers(200);
    let places = listed(&ines);
    for there in ["Eye test", "May she swim?", "Warfarin", "Ask for the form"] {
        assert!(places.iter().any(|it| it == there), "{there} is not among {places:?}");
    }
    assert!(!places.contains(&"Dr Lind".to_owned()), "she herself is no place of hers");
    // Saved with the number as it was: there is nothing to look for.
    ines.open(&family.at("/contacts/1/edit")).await.fill("Phone", "(218) 555 0122");
    ines.press("Save").await.answers(200).does_not_see("was taken away");
    ines.open(&family.at("/contacts/1/edit")).await.fill("Phone", "218-555-0155");
    ines.press("Save").await.answers(200).sees("Saved Dr Lind");
    ines.sees("The number 218-555-0122 was taken away from Dr Lind");
    assert_eq!(listed(&ines), ["Ask for the form"]);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_reader_is_told_of_no_place_that_she_does_not_see() {
    let family = Family::new().await;
    let mut ines = written(&family).await;
    ines.open(&family.at("/visibility/medicine/1")).await.tick("Bram").press("Save").await;
    ines.open(&family.at("/visibility/task/1")).await.tick("Bram").press("Save").await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/contacts/1/places")).await.answers(200).sees("Eye test");
    bram.does_not_see("Warfarin").does_not_see("Ask for the form");
    bram.open(&family.at("/contacts/1/places/218-555-0122")).await.answers(200);
    bram.sees("It stands nowhere else that you see here.");
    ines.open(&family.at("/visibility/contact/1")).await.tick("Bram").press("Save").await;
    bram.get(&family.at("/contacts/1/places")).await.answers(404);
    bram.get(&family.at("/contacts/1/places/218-555-0122")).await.answers(404);
    family.house.is_sound().await;
}
