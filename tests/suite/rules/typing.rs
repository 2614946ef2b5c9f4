//! Whatever is typed into any form: an answer that helps, what was typed still there, nothing
//! lost, and never a failure of the program.

mod carried;
mod coverage;
mod directives;
mod papers;
mod renewals;

use crate::support::{Browser, Family, html};

/// What people (and others) type. Each with a name for the report.
fn hostile() -> Vec<(&'static str, String)> {
    vec![
        ("empty", String::new()),
        ("blanks", " \t ".into()),
        ("10,000 characters", "a".repeat(10_000)),
        ("emoji", "👩‍👩‍👧 💊".into()),
        ("right to left", "שלום עולם".into()),
        ("bidi override", "abc\u{202e}cba".into()),
        ("control", "a\u{7}b\u{1b}[0m".into()),
        ("nul", "a\0b".into()),
        ("markup", "<script>alert(1)</script>\"'><b>".into()),
        ("template", "{{ 7 * 7 }} {% x %} ${x}".into()),
        ("sql", "'); drop table medicine; --".into()),
        ("no such day", "31 Feb 2026".into()),
        ("far year", "20026-01-01".into()),
        ("tomorrow's tomorrow", "2199-12-31".into()),
        ("long ago", "1 Jan 0001".into()),
        ("number", "-9223372036854775809".into()),
    ]
}

/// The pages with a form, in the record.
const FORMS: &[&str] = &[
    "/edit",
    "/mail",
    "/check",
    "/died",
    "/died/take-back",
    "/medicines/add",
    "/medicines/given/slots/2026-11-25/morning",
    "/medicines/given/as-needed/1",
    "/medicines/given/1/edit",
    "/medicines/given/1/strike",
    "/medicines/given/keeping",
    "/medicines/1/edit",
    "/medicines/1/hold",
    "/medicines/1/stop",
    "/medicines/1/change",
    "/changes/1/tell",
    "/changes/tell/1",
    "/changes/1/resume-on",
    "/medicines/1/check",
    "/medicines/1/strike",
    "/medicines/check",
    "/medicines/1/steps/add",
    "/medicines/1/steps/1/edit",
    "/medicines/1/ingredients/add",
    "/medicines/1/ingredients/1/edit",
    "/medicines/1/stock/fills/add",
    "/medicines/1/stock/fills/1/edit",
    "/medicines/1/stock/counts/add",
    "/medicines/supply/days",
    "/allergies/add",
    "/allergies/1/edit",
    "/allergies/answer",
    "/contacts/add",
    "/contacts/1/edit",
    "/conditions/add",
    "/conditions/1/edit",
    "/conditions/1/over",
    "/conditions/1/check",
    "/conditions/1/strike",
    "/operations/add",
    "/operations/1/edit",
    "/operations/1/strike",
    "/statements/blood-thinner",
    "/usual/edit",
    "/usual/check",
    "/happenings/add",
    "/happenings/1/edit",
    "/happenings/1/place",
    "/happenings/1/strike",
    "/noticed/add",
    "/noticed/1/edit",
    "/noticed/1/visit",
    "/noticed/1/strike",
    "/decisions/add",
    "/decisions/1/edit",
    "/decisions/1/decide",
    "/decisions/1/look-again",
    "/decisions/1/withdraw",
    "/questions/add",
    "/questions/1/edit",
    "/questions/1/hand",
    "/questions/1/ask",
    "/questions/1/answer",
    "/questions/1/let-go",
    "/appointments/add",
    "/appointments/1/edit",
    "/appointments/1/on/2026-11-25/escort",
    "/appointments/1/on/2026-11-25/move",
    "/appointments/1/on/2026-11-25/stands",
    "/appointments/1/on/2026-11-25/cancel",
    "/appointments/1/on/2026-11-25/later",
    "/appointments/1/cancel",
    "/appointments/1/strike",
    "/tasks/add",
    "/tasks/1/edit",
    "/tasks/1/offer",
    "/tasks/1/wait",
    "/tasks/1/put-off",
    "/tasks/1/finish",
    "/tasks/2/strike",
    "/questions/with/1/starters",
    "/visits/1/edit",
    "/visits/1/strike",
    "/reconciliation/add",
    "/reconciliation/1",
    "/reconciliation/1/lines/add",
    "/reconciliation/1/lines/1",
    "/reconciliation/1/strike",
    "/visibility/medicine/1",
    "/family/invite",
    "/family/3/role",
    "/family/3/areas",
    "/family/3/asked",
    "/family/answers/add",
    "/family/answers/1/again",
    "/family/answers/1/strike",
    "/visibility/medicine/1/asked",
];

async fn family() -> Family {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/add")).await.fill("Name", "Warfarin");
    ines.press("Add this medicine").await.answers(200);
    ines.open(&family.at("/medicines/1/steps/add")).await.fill("morning", "1");
    ines.press("Save").await.answers(200);
    ines.open(&family.at("/medicines/1/hold")).await.fill("Who said so", "Dr Lind");
    ines.fill("Why", "an operation").fill("From which day", "3 Dec 2026");
    ines.press("Hold").await.answers(200);
    ines.open(&family.at("/medicines/1/ingredients/add")).await.fill("Ingredient", "Warfarin");
    ines.press("Save").await.answers(200);
    for page in ["fills/add", "counts/add"] {
        let page = family.at(&format!("/medicines/1/stock/{page}"));
        ines.open(&page).await.fill("How many", "30").press("Save").await.answers(200);
    }
    ines.open(&family.at("/medicines/given/keeping")).await.tick("Warfarin");
    ines.press("Save").await.press("All of the morning given").await.answers(200);
    ines.open(&family.at("/allergies/add")).await.fill("To what", "Penicillin");
    ines.tick("allergy");
    ines.press("Add to the list").await.answers(200);
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Ines").fill("Phone", "218-555-0101");
    ines.press("Add this contact").await.answers(200);
    ines.open(&family.at("/conditions/add")).await.fill("Name", "Osteoporosis");
    ines.press("Add this condition").await.answers(200);
    ines.open(&family.at("/operations/add")).await.fill("What was done", "Hip replaced");
    ines.press("Add this operation").await.answers(200);
    ines.open(&family.at("/happenings/add")).await.fill("In a few words", "Slept badly");
    ines.press("Keep it").await.answers(200);
    ines.open(&family.at("/noticed/add")).await.fill("What you saw", "Held on to the wall");
    ines.tick("mood").press("Keep it").await.answers(200);
    ines.open(&family.at("/decisions/add")).await.fill("What is to be decided", "Whether it moves");
    ines.press("Put it up").await.press("Decide").await.fill("What was decided", "It moves");
    ines.fill("Why", "The stairs").fill("The person was not asked, because", "asleep");
    ines.fill("Who decides", "Ines").tick("by agreement of the family");
    ines.press("Write it down").await.answers(200);
    directives::written(&mut ines, &family).await;
    ines.open(&family.at("/questions/add")).await.fill("The question", "With food?");
    ines.press("Keep the question").await.answers(200);
    ines.open(&family.at("/appointments/add")).await.fill("What it is", "Therapy");
    ines.fill("Day", "18 Nov 2026").fill("Time", "2 pm");
    ines.tick("every so many weeks, on these days")
        .press("Keep this appointment")
        .await
        .answers(200);
    for _ in 0..2 {
        ines.open(&family.at("/tasks/add")).await.fill("What is to be done", "Renew the placard");
        ines.press("Keep the task").await.answers(200);
    }
    renewals::kept(&mut ines, &family).await;
    papers::filed(&mut ines, &family).await;
    ines.open(&family.at("/carried/add")).await.fill("How many hours", "2").press("Keep it").await;
    ines.open(&family.at("/visits/add")).await.fill("Or by name", "Dr Lind");
    ines.press("Save the note").await.answers(200);
    ines.open(&family.at("/reconciliation/add")).await.fill("Whose list it is", "the clinic");
    ines.fill("The list", "Warfarin 5 mg tablet").tick("a clinic's printout");
    ines.press("Take it in").await.answers(200);
    coverage::kept(&mut ines, &family).await;
    ines.open(&family.at("/usual/edit")).await.fill("Usual mood", "calm").fill("Said by", "Emeric");
    ines.press("Save").await.answers(200);
    ines.open(&family.at("/family/answers/add")).await.fill("The question", "May we keep this?");
    ines.tick("yes").tick("in person").press("Keep this answer").await.answers(200);
    family
}

/// The form on the page that posts to the page itself.
fn own_form(browser: &Browser) -> Vec<(String, String)> {
    let page = browser.page();
    let forms = html::select(&page, "main form[method='post']");
    let own = forms.into_iter().find(|it| it.value().attr("action") == Some(browser.at.as_str()));
    html::standing(own.unwrap_or_else(|| panic!("no form at {}\n{}", browser.at, browser.text())))
}

#[tokio::test]
async fn every_form_bears_whatever_is_typed() {
    let family = family().await;
    let mut ines = family.browser("Ines").await;
    let pages = FORMS
        .iter()
        .chain(carried::FORMS)
        .chain(coverage::FORMS)
        .chain(directives::FORMS)
        .chain(papers::FORMS)
        .chain(renewals::FORMS)
        .map(|it| family.at(it))
        .chain(["/me/edit", "/me/mail/quiet", "/me/mail/1", "/records/add"].map(str::to_owned));
    for page in pages {
        for (name, value) in hostile() {
            ines.open(&page).await.answers(200);
            let mut form = own_form(&ines);
            let machinery = ["form_key", "version", "opened"];
            for (field, typed) in &mut form {
                if !machinery.contains(&field.as_str()) {
                    typed.clone_from(&value);
                }
            }
            ines.send(&page, &form).await;
            let status = ines.status.as_u16();
            assert!(matches!(status, 303 | 409 | 422), "{page} {name}: {status}\n{}", ines.text());
            if status == 422 {
                keeps_typing(&ines, &page, name, &value);
            } else {
                // Kept as it was typed: the page that shows it must bear it too.
                let to = ines.at.clone();
                ines.open(&to).await.answers(200);
            }
        }
    }
    ines.open(&family.at("/sheets/emergency")).await.answers(200);
    ines.open(&family.at("/history")).await.answers(200);
    family.house.is_sound().await;
}

#[track_caller]
fn keeps_typing(browser: &Browser, page: &str, name: &str, value: &str) {
    let page_html = browser.page();
    let wrong = html::select(&page_html, ".summary a").len();
    assert!(wrong > 0, "{page} {name}: nothing says what is wrong");
    let form = own_form(browser);
    let text = form
        .iter()
        .find(|(field, _)| matches!(field.as_str(), "name" | "reason" | "against" | "substance"));
    if let Some((field, kept)) = text {
        let typed = value.replace(['\0', '\r'], "");
        assert_eq!(kept.replace('\u{fffd}', ""), typed, "{page} {name}: {field} was lost");
    }
}

#[tokio::test]
async fn a_form_of_another_site_is_refused_and_a_too_large_one_too() {
    let family = family().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/1/edit")).await;
    let (_, address, form) = ines.pressed("Save");
    ines.send_from("cross-site", &address, &form).await.answers(403).sees("Not from here");
    let mut large = form.clone();
    large.push(("x".into(), "x".repeat(300_000)));
    ines.send(&address, &large).await.answers(413).sees("Too much at once");
    ines.send(&address, &form).await.answers(303);
}

#[tokio::test]
async fn an_unknown_choice_and_foreign_ids_are_refused() {
    let family = family().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/medicines/1/edit")).await;
    let (_, address, mut form) = ines.pressed("Save");
    form.iter_mut().filter(|(name, _)| name == "supply").for_each(|it| it.1 = "looted".into());
    ines.send(&address, &form).await.answers(422).sees("Choose one of these.");
    for id in ["0", "99", "-1", "x", "1e3", "99999999999999999999", "1%00"] {
        ines.get(&family.at(&format!("/medicines/{id}"))).await.answers(404);
        ines.get(&format!("/p/{id}/medicines")).await.answers(404);
    }
}

#[tokio::test]
async fn the_line_about_what_was_done_has_the_name_as_it_was_typed() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for name in ["Iron 5%20", "100% \"juice\"; é, <b>", "a+b=c&d", "👩‍👩‍👧 שלום"] {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name);
        ines.press("Add this medicine").await.answers(200).sees(&format!("Added {name}"));
        ines.open(&family.at("/medicines")).await.does_not_see("Added");
    }
    family.house.is_sound().await;
}
