//! Who sees a task and who can have it: an aide her own alone, nobody one about what is hidden from
//! her; and what becomes of the tasks of one who is paused.

use crate::support::{Browser, Family, html};

async fn add(browser: &mut Browser, family: &Family, (title, about): (&str, &str)) {
    browser.open(&family.at("/tasks/add")).await.fill("What is to be done", title);
    browser.fill("What it is about", about).press("Keep the task").await.answers(200);
}

/// The names in the list of those who can be asked.
fn can_be_asked(browser: &Browser) -> Vec<String> {
    let page = browser.page();
    let options = html::select(&page, "#offered_to option");
    options.into_iter().map(html::text).filter(|it| it != "choose").collect()
}

#[tokio::test]
async fn an_aide_sees_only_what_is_hers_and_a_reader_changes_nothing() {
    let family = Family::new().await;
    let (mut ines, mut delia) = (family.browser("Ines").await, family.browser("Delia").await);
    add(&mut ines, &family, ("Phone the insurer", "")).await;
    delia.open(&family.at("/tasks")).await.does_not_see("Phone the insurer");
    delia.open(&family.at("/today")).await.does_not_see("Phone the insurer");
    delia.get(&family.at("/tasks/1")).await.answers(404);
    delia.get(&family.at("/tasks/1/take")).await.answers(404);
    add(&mut delia, &family, ("Bring a new mop", "")).await;
    ines.open(&family.at("/tasks")).await.sees("Bring a new mop");

    // She was asked: then it is there, until she says no.
    ines.open(&family.at("/tasks/1/offer")).await.fill("Whom do you ask", "4");
    ines.press("Ask someone to take it").await.answers(200);
    delia.open(&family.at("/today")).await.press("Ines asks you to take: Phone the insurer").await;
    delia.press("No, I can not").await.fill("Why", "not on my days").press("No, I can not").await;
    delia.answers(200).sees("You said no").does_not_see("Phone the insurer");
    delia.get(&family.at("/tasks/1")).await.answers(404);
    ines.open(&family.at("/tasks/1")).await.sees("Delia: not on my days");

    let mut rosalind = family.browser("Rosalind").await;
    rosalind.open(&family.at("/tasks")).await.sees("Phone the insurer").does_not_see("I take it");
    rosalind.open(&family.at("/tasks/1")).await.answers(200).does_not_see("It is done");
    rosalind.open(&family.at("/today")).await.does_not_see("Phone the insurer");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_task_is_hidden_with_what_it_is_about() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Sertraline");
    ines.press("Add this medicine").await.answers(200);
    ines.open(&family.at("/questions/add?about=medicine/1")).await;
    ines.fill("The question", "With food?").press("Keep the question").await.answers(200);
    add(&mut ines, &family, ("Fetch the sertraline", "medicine/1")).await;
    add(&mut ines, &family, ("Ask about sertraline", "question/1")).await;
    ines.open(&family.at("/medicines/1")).await.press("Tasks about it").await;
    ines.sees("Fetch the sertraline").does_not_see("Ask about sertraline");
    for task in ["1", "2"] {
        bram.open(&family.at(&format!("/tasks/{task}/take"))).await.press("I take it").await;
        bram.answers(200);
    }
    for item in ["medicine/1", "question/1", "task/1"] {
        let page = family.at(&format!("/visibility/{item}"));
        ines.open(&page).await.tick("Bram").press("Save").await.answers(200);
        let gone: &[&str] = match item {
            "medicine/1" => &["1", "2"],
            "question/1" => &["2"],
            _ => &["1"],
        };
        for task in gone {
            let words = if *task == "1" { "Fetch the sert" } else { "Ask about sert" };
            for page in ["/tasks", "/today", "/history", "/tasks/closed"] {
                bram.open(&family.at(page)).await.answers(200).does_not_see(words);
            }
            for page in ["", "/edit", "/finish", "/offer"] {
                bram.get(&family.at(&format!("/tasks/{task}{page}"))).await.answers(404);
            }
            bram.send(&family.at(&format!("/tasks/{task}/give-back")), &[]).await.answers(404);
            bram.get(&family.at(&format!("/history/task/{task}"))).await.answers(404);
        }
        ines.open(&page).await.untick("Bram").press("Save").await.answers(200);
        bram.open(&family.at("/tasks/1")).await.answers(200);
    }
    // For the others it is open while it is hidden from who has it; he is not asked to take it.
    let page = family.at("/visibility/medicine/1");
    ines.open(&page).await.tick("Bram").press("Save").await.answers(200);
    ines.open(&family.at("/tasks/1")).await.sees("was with Bram, whose place does not reach it");
    ines.open(&family.at("/tasks/1/offer")).await;
    assert_eq!(can_be_asked(&ines), ["Ottoline", "Ines", "Delia"]);
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_tasks_of_one_who_is_paused_are_open_again_and_nothing_is_lost() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    add(&mut ines, &family, ("Phone the insurer", "")).await;
    bram.open(&family.at("/tasks")).await.press("I take it : Phone the insurer").await.answers(200);
    bram.press("It waits").await.fill("On whom or what it waits", "their letter");
    bram.fill("When to ask again", "9 Dec 2026").press("It waits").await.answers(200);
    ines.open(&family.at("/family/3/pause")).await.press("Pause this place").await.answers(200);
    ines.open(&family.at("/today")).await.sees("Nobody has it: Phone the insurer");
    ines.open(&family.at("/tasks")).await.sees("was with Bram, whose place is paused");
    // It comes back with him, unless someone took it meanwhile.
    ines.open(&family.at("/family/3/resume")).await.press("Take back the pause").await.answers(200);
    ines.open(&family.at("/tasks/1")).await.does_not_see("was with Bram");
    ines.open(&family.at("/family/3/remove")).await.press("End this place").await.answers(200);
    ines.open(&family.at("/tasks")).await.sees("was with Bram, who has left");
    ines.press("I take it : Phone the insurer").await.answers(200);
    ines.sees("their letter; ask again on Wed 9 Dec 2026");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_task_about_an_appointment_is_hidden_with_whom_it_is_with() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Dr Lind");
    ines.fill("Phone", "218-555-0122").press("Add this contact").await.answers(200);
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Eye test");
    ines.fill("Clinician or service", "1").fill("Day", "8 Dec 2026").fill("Time", "2 pm");
    ines.press("Keep this appointment").await.answers(200).press("Tasks about it").await;
    ines.press("Make it a task").await;
    assert_eq!(ines.value("What it is about"), "appointment/1");
    ines.fill("What is to be done", "Order the ride").fill("By which day", "26 Nov 2026");
    ines.press("Keep the task").await.answers(200).sees("Eye test");
    bram.open(&family.at("/today")).await.sees("best done · Order the ride nobody has it");
    ines.open(&family.at("/visibility/contact/1")).await.tick("Bram").press("Save").await;
    for page in ["/today", "/tasks", "/history"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("Order the ride");
    }
    bram.get(&family.at("/tasks/1")).await.answers(404);
    ines.open(&family.at("/tasks/1/offer")).await;
    assert_eq!(can_be_asked(&ines), ["Ottoline", "Ines", "Delia"]);
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_task_about_a_note_is_not_offered_to_one_for_whom_the_note_is_not_there() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Dr Lind");
    ines.fill("Phone", "218-555-0122").press("Add this contact").await.answers(200);
    ines.open(&family.at("/visits/add")).await.fill("On which day", "24 Nov 2026");
    ines.fill("With whom", "1").fill("What is to be done of follow-up 1", "Fetch the stockings");
    ines.press("Save the note").await.answers(200);
    ines.open(&family.at("/tasks/1/offer")).await;
    assert!(can_be_asked(&ines).contains(&"Bram".to_owned()));
    ines.open(&family.at("/visibility/contact/1")).await.tick("Bram").press("Save").await;
    ines.open(&family.at("/tasks/1/offer")).await;
    assert!(!can_be_asked(&ines).contains(&"Bram".to_owned()));
    family.browser("Bram").await.get(&family.at("/tasks/1")).await.answers(404);
    family.house.is_sound().await;
}

/// A task stays hers when its medicine is not taken any more: but an aide is shown nothing of what was.
#[tokio::test]
async fn a_task_of_an_aide_does_not_name_what_is_not_taken_any_more() {
    let family = Family::new().await;
    let (mut ines, mut delia) = (family.browser("Ines").await, family.browser("Delia").await);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Sertraline");
    ines.press("Add this medicine").await.answers(200);
    add(&mut delia, &family, ("Bring the empty bottle back", "medicine/1")).await;
    delia.open(&family.at("/tasks/1")).await.sees("Sertraline");
    ines.open(&family.at("/medicines/1/stop")).await.fill("Why", "dizzy");
    ines.fill("Who said so", "Dr Lind").press("Stop").await.answers(200);
    for page in ["/tasks", "/tasks/1", "/tasks/add", "/today", "/changes", "/visits"] {
        delia.open(&family.at(page)).await.answers(200);
        assert!(!delia.text().contains("Sertraline"), "{page}: {}", delia.text());
    }
    delia.open(&family.at("/tasks/1")).await.sees("Bring the empty bottle back");
    for gone in ["/medicines/1", "/medicines/1/stock", "/changes/1"] {
        delia.open(&family.at(gone)).await.answers(404);
    }
    ines.open(&family.at("/tasks/1")).await.sees("Sertraline");
    family.house.is_sound().await;
}
