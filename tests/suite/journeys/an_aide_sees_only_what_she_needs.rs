//! The aide, and whoever may only read: the essentials, the medicines, the sheet; nothing of the
//! family, nothing to change; and what they asked for beyond that, the person can read.

use crate::support::{
    Browser, Family,
    crawl::{Visit, everywhere},
    html,
};
use time::Duration;

async fn written_down() -> Family {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for (page, label, value, press) in [
        ("/medicines/add", "Name", "Warfarin", "Add this medicine"),
        ("/allergies/add", "To what", "Penicillin", "Add to the list"),
        ("/contacts/add", "Name", "Emeric", "Add this contact"),
    ] {
        ines.open(&family.at(page)).await.fill(label, value);
        match label {
            "To what" => ines.tick("allergy"),
            _ if page.starts_with("/contacts") => ines.fill("Phone", "218-555-0111"),
            _ => &mut ines,
        };
        ines.press(press).await.answers(200);
    }
    family
}

/// Steps in an address that lead to a form or to what is not theirs.
const NOT_THEIRS: [&str; 17] = [
    "add",
    "edit",
    "check",
    "answer",
    "order",
    "hold",
    "stop",
    "over",
    "blood-thinner",
    "implant",
    "strike",
    "bring-back",
    "earlier",
    "later",
    "history",
    "family",
    "visibility",
];

/// Below what an aide has for herself: her tasks, and what she carries.
fn is_own(family: &Family, address: &str) -> bool {
    ["/tasks", "/carried"].iter().any(|it| address.starts_with(&family.at(it)))
}

fn leads_beyond(family: &Family, visit: &Visit, aide: bool) -> Vec<String> {
    let own = |it: &str| it.starts_with(&family.at(""));
    // An aide writes in the log: the notes are hers to make and to put right.
    let log = |it: &str| {
        ["/happenings", "/noticed", "/medicines/given"].iter().any(|own| it.starts_with(&family.at(own)))
            // So are tasks of her own, and what she carries.
            || aide && is_own(family, it)
    };
    let beyond =
        |it: &String| own(it) && !log(it) && it.split('/').any(|step| NOT_THEIRS.contains(&step));
    visit.leads_to().into_iter().filter(beyond).collect()
}

#[tokio::test]
async fn no_page_offers_them_what_is_not_theirs() {
    let family = written_down().await;
    for name in ["Delia", "Rosalind"] {
        let mut browser = family.browser(name).await;
        let visits = everywhere(&mut browser, "/").await;
        let seen: Vec<_> = visits.iter().map(|it| it.address.as_str()).collect();
        for rest in ["", "/medicines/1", "/allergies/1", "/contacts/1", "/sheets/emergency"] {
            assert!(seen.contains(&family.at(rest).as_str()), "{name} misses {rest}: {seen:?}");
        }
        for visit in &visits {
            assert_eq!(visit.status, 200, "{name} at {}", visit.address);
            assert_eq!(
                leads_beyond(&family, visit, name == "Delia"),
                [""; 0],
                "{name} at {}",
                visit.address
            );
            let page = visit.page();
            let buttons: Vec<_> = html::select(&page, "main form[method='post'] button")
                .into_iter()
                .map(html::text)
                .collect();
            let log = name == "Delia"
                && (visit.address.contains("/happenings/") || is_own(&family, &visit.address));
            let own = visit.address.starts_with("/me") || log;
            let theirs = |it: &String| {
                ["Print or save", "Keep on this phone"].contains(&it.as_str())
                    || (it == "Keep it" && name == "Delia")
            };
            assert!(own || buttons.iter().all(theirs), "{name}: {buttons:?}");
        }
    }
    // A steward's pages do lead there, so the look above is a true one.
    let visits = everywhere(&mut family.browser("Ines").await, "/").await;
    assert!(visits.iter().any(|it| !leads_beyond(&family, it, false).is_empty()));
    family.house.is_sound().await;
}

#[tokio::test]
async fn forms_are_refused_and_what_they_do_not_see_is_not_there() {
    let family = written_down().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/1/edit")).await.fill("Dose", "9 tablets");
    let (_, address, form) = ines.pressed("Save");
    for name in ["Delia", "Rosalind"] {
        let mut browser = family.browser(name).await;
        browser.send(&address, &form).await.answers(403).sees("Not yours to change");
        for rest in ["/edit", "/medicines/add", "/allergies/1/edit", "/contacts/order"] {
            browser.open(&family.at(rest)).await.answers(403).sees("Nothing was changed.");
        }
        for rest in ["/history", "/history/medicine/1", "/family", "/visibility/medicine/1"] {
            browser.open(&family.at(rest)).await.answers(404).sees("Not found");
        }
        browser.open(&family.at("/medicines/1")).await.does_not_see("9 tablets");
    }
    family.house.is_sound().await;
}

async fn told(person: &mut Browser, family: &Family, words: &str) -> usize {
    person.open(&family.at("/history")).await.answers(200);
    person.text().matches(words).count()
}

#[tokio::test]
async fn what_was_asked_for_and_refused_is_told_to_the_person_once_an_hour() {
    let family = written_down().await;
    let mut ottoline = family.browser("Ottoline").await;
    let mut delia = family.browser("Delia").await;
    let history = "Delia asked for the history, and was refused";
    assert_eq!(told(&mut ottoline, &family, history).await, 0);
    for _ in 0..3 {
        delia.open(&family.at("/history")).await.answers(404);
        delia.open(&family.at("/medicines/1/edit")).await.answers(403);
    }
    delia.open(&family.at("/edit")).await.answers(403);
    delia.open(&family.at("/family")).await.answers(404);
    for area in ["the history", "the clinical pages", "the essentials", "the family's list"] {
        let words = format!("Delia asked for {area}, and was refused");
        assert_eq!(told(&mut ottoline, &family, &words).await, 1, "{words}");
    }
    family.house.pass(Duration::minutes(59));
    delia.open(&family.at("/history")).await.answers(404);
    assert_eq!(told(&mut ottoline, &family, history).await, 1);
    family.house.pass(Duration::minutes(2));
    delia.open(&family.at("/history")).await.answers(404);
    assert_eq!(told(&mut ottoline, &family, history).await, 2);
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_person_sees_all_of_it_and_may_change_it() {
    let family = written_down().await;
    let mut ottoline = family.browser("Ottoline").await;
    let visits = everywhere(&mut ottoline, "/").await;
    let wrong = visits.iter().filter(|it| it.status != 200).map(|it| it.address.as_str());
    assert_eq!(wrong.collect::<Vec<_>>(), [""; 0]);
    let seen: Vec<_> = visits.iter().map(|it| it.address.as_str()).collect();
    for rest in ["/edit", "/history", "/history/medicine/1", "/family", "/visibility/contact/1"] {
        assert!(seen.contains(&family.at(rest).as_str()), "she misses {rest}: {seen:?}");
    }
    family.house.is_sound().await;
}
