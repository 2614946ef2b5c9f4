//! Which papers are not there yet: what is expected for this person by what was said of her, with what
//! follows and the one next step; each answered by someone on a day, and taken back. No score anywhere.

use crate::support::{Browser, Family, html};

async fn answered(browser: &mut Browser, family: &Family, (name, answer): (&str, &str)) {
    browser.open(&family.at(&format!("/renewals/missing/{name}"))).await.tick(answer);
    browser.fill("Said by", "Ottoline").fill("On which day", "25 Nov 2026");
    browser.press("Save").await.answers(200).sees("said by Ottoline on 25 November 2026");
}

/// The papers below a heading, in their order.
fn under(browser: &Browser, heading: &str) -> Vec<String> {
    let page = browser.page();
    let groups = html::select(&page, "section.group");
    let is = |it: &scraper::ElementRef| html::text(*it).trim_start().starts_with(heading);
    let group = groups.into_iter().find(is);
    let Some(group) = group else { return Vec::new() };
    let titles = scraper::Selector::parse("h3").expect("a selector");
    group.select(&titles).map(|it| html::text(it).trim().to_owned()).collect()
}

const MISSING: &str = "Not there yet";

#[tokio::test]
async fn what_is_expected_follows_what_was_said_and_what_is_there_leaves_the_list() {
    let family = Family::new().await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/renewals")).await.press("Papers that are not there yet").await;
    let always = [
        "Power of attorney for health care, or a word that there is none",
        "List of medicines",
        "Insurance card",
        "Identity card",
        "Insurance policies (life, long-term care)",
        "Funeral contract",
    ];
    assert_eq!(under(&bram, MISSING), always);
    bram.sees("If Ottoline Varga cannot speak").sees("common practice, no source");
    bram.sees("Laws differ by state").does_not_see("%").does_not_see(" of 6");
    // What was said of her adds what is for her; a no adds nothing.
    answered(&mut bram, &family, ("veteran", "yes")).await;
    answered(&mut bram, &family, ("driver", "no")).await;
    answered(&mut bram, &family, ("medicare", "Medicare Advantage")).await;
    let found = under(&bram, MISSING);
    assert!(found.iter().any(|it| it == "Military discharge paper (DD 214)"), "{found:?}");
    assert!(!found.iter().any(|it| it == "Driver’s license"), "{found:?}");
    bram.sees("The Medicare plan’s notice of what changes");
    // An implant that is listed asks for its card, before the cards of less weight.
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/operations/add")).await.fill("What was done", "Hip replaced");
    ines.fill("What was put in", "hip joint").press("Add this operation").await.answers(200);
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Warfarin");
    ines.press("Add this medicine").await.answers(200);
    ines.open(&family.at("/renewals/missing")).await;
    let found = under(&ines, MISSING);
    assert_eq!(found[1], "Implant card", "{found:?}");
    assert!(!found.iter().any(|it| it == "List of medicines"), "{found:?}");
    assert!(under(&ines, "There, or answered").iter().any(|it| it == "List of medicines"));
    family.house.is_sound().await;
}

#[tokio::test]
async fn an_answer_says_by_whom_and_when_and_is_taken_back() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/renewals/missing")).await.press("Answer : Funeral contract").await;
    ines.press("Save").await.answers(422).sees("Choose one of these.");
    answered(&mut ines, &family, ("funeral-contract", "would rather not")).await;
    assert!(!under(&ines, MISSING).iter().any(|it| it == "Funeral contract"));
    answered(&mut ines, &family, ("policy", "it does not apply")).await;
    answered(&mut ines, &family, ("identity-card", "it is there")).await;
    assert_eq!(under(&ines, MISSING).len(), 3);
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/history")).await.sees("“Funeral contract”");
    bram.open(&family.at("/renewals/missing")).await;
    bram.press("Change or take back : Funeral contract")
        .await
        .tick("not asked")
        .press("Save")
        .await;
    bram.answers(200);
    assert!(under(&bram, MISSING).iter().any(|it| it == "Funeral contract"));
    ines.open(&family.at("/renewals/missing/shoe-size")).await.answers(404);
    // An answer that is none of this question's is refused.
    ines.open(&family.at("/renewals/missing/veteran")).await.tick("yes");
    ines.fill("Said by", "Emeric").fill("On which day", "25 Nov 2026");
    let (_, to, mut form) = ines.pressed("Save");
    form.iter_mut().filter(|it| it.0 == "answer").for_each(|it| it.1 = "would rather not".into());
    ines.send(&to, &form).await.answers(422).sees("Choose one of these.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn who_does_not_see_the_medicines_is_told_nothing_of_them() {
    let family = Family::new().await;
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/statements/implant")).await.tick("yes").fill("Which one", "valve");
    ottoline.fill("Said by", "Dr Lind").fill("On which day", "25 Nov 2026").press("Save").await;
    ottoline.answers(200).open(&family.at("/renewals/missing")).await.sees("Implant card");
    ottoline
        .open(&family.at("/family/3/areas"))
        .await
        .fill("clinical", "nothing")
        .press("Save")
        .await;
    let mut bram = family.browser("Bram").await;
    bram.open(&family.at("/renewals/missing")).await.answers(200).does_not_see("Implant card");
    bram.does_not_see("List of medicines");
    family.house.is_sound().await;
}
