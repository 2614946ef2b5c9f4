//! "Relative, without directives": a member for whom the area was lowered to nothing sees no trace of
//! them on any page, sheet or print; and one directive that is hidden from him, nor a contact.

use crate::support::{Browser, Family, crawl::everywhere, html};

async fn written(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Juno").fill("Phone", "617-555-0103");
    ines.press("Add this contact").await.answers(200);
    for (kind, place) in
        [("power of attorney for health care", "the blue folder"), ("living will", "the bank")]
    {
        ines.open(&family.at("/directives/add")).await.tick(kind).fill("Agent", "1");
        ines.fill("Whose form it is", "Minnesota").fill("Where the original is", place);
        ines.press("Add this directive").await.answers(200);
        ines.press("Someone has a copy").await.fill("Or in words", "the glove box");
        ines.press("Write it down").await.answers(200);
    }
    ines.open(&family.at("/directives/events/add")).await.tick("a decline");
    ines.fill("On which day", "2 Nov 2026").press("Write it down").await.answers(200);
    ines.open(&family.at("/sheets/directives")).await.press("Print or save").await.answers(200);
    ines.open(&family.at("/sheets/emergency")).await.press("Print or save").await.answers(200);
    // Asked for by the aide, and refused.
    family.browser("Delia").await.get(&family.at("/directives")).await.answers(404);
}

async fn lowered(family: &Family, words: &str) {
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/family/3/areas")).await.fill("directives", words);
    ottoline.press("Save").await.answers(200);
}

/// Words that only come from the directives.
const TRACES: [&str; 8] = [
    "blue folder",
    "Living will",
    "ower of attorney",
    "glove box",
    "ook at it again",
    "egister of",
    "asked for the directives",
    "Copy for information",
];

#[tokio::test]
async fn a_lowered_relative_sees_no_trace_on_any_page() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    written(&mut ines, &family).await;
    let mut bram = family.browser("Bram").await;
    // He sees them before: so the words below are the right ones.
    let seen = text_of(&mut bram).await;
    for trace in TRACES {
        assert!(seen.contains(trace), "{trace:?} is nowhere, so it proves nothing");
    }
    lowered(&family, "nothing").await;
    let mut bram = family.browser("Bram").await;
    for page in ["/directives", "/directives/1", "/directives/events", "/sheets/directives"] {
        bram.get(&family.at(page)).await.answers(404);
    }
    bram.get(&family.at("/history/directive/1")).await;
    bram.does_not_see("attorney").does_not_see("blue folder");
    let seen = text_of(&mut bram).await;
    for trace in TRACES {
        assert!(!seen.contains(trace), "{trace:?} is there");
    }
    // Not even that there is more on the paper of someone else.
    bram.open(&family.at("/sheets")).await.does_not_see("the record has changed since");
    bram.open(&family.at("/sheets/emergency")).await.answers(200);
    let page = bram.page();
    let heads: Vec<_> = html::select(&page, "main h2").into_iter().map(html::text).collect();
    assert!(heads.iter().any(|it| it == "Medicines"), "{heads:?}");
    assert!(heads.iter().all(|it| it != "Directives"), "{heads:?}");
    assert!(html::select(&page, "nav a").into_iter().all(|it| html::text(it) != "Directives"));
    let whole = print_of(&mut ines, &family).await;
    let less = print_of(&mut bram, &family).await;
    assert!(whole > less + 500, "his paper has the lines as well: {whole} and {less} bytes");
    lowered(&family, "as the role has it").await;
    bram.open(&family.at("/sheets/emergency")).await.sees("blue folder");
    family.house.is_sound().await;
}

/// How long the paper of the emergency sheet is that this member prints.
async fn print_of(browser: &mut Browser, family: &Family) -> usize {
    browser.open(&family.at("/sheets/emergency")).await.press("Print or save").await.answers(200);
    assert!(browser.body.starts_with(b"%PDF-1."));
    browser.body.len()
}

/// All that he finds by following every link.
async fn text_of(browser: &mut Browser) -> String {
    let pages = everywhere(browser, "/").await;
    let pages = pages.iter().filter(|it| it.is_html());
    pages.map(|it| html::page_text(&it.page())).collect()
}

#[tokio::test]
async fn what_is_hidden_is_named_nowhere() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    written(&mut ines, &family).await;
    let mut bram = family.browser("Bram").await;
    ines.open(&family.at("/directives/2")).await.press("Who sees this").await.tick("Bram");
    ines.press("Save").await.answers(200);
    for page in ["/directives", "/directives/events", "/sheets/directives", "/sheets/emergency"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("iving will");
        bram.does_not_see("the bank").sees("ower of attorney");
    }
    for page in ["/today", "/history", "/sheets"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("iving will");
    }
    bram.get(&family.at("/directives/2")).await.answers(404);
    // The agent is a contact: hidden from him, she is not named, and not forgotten either.
    ines.open(&family.at("/contacts/1")).await.press("Who sees this").await.tick("Bram");
    ines.press("Save").await.answers(200);
    for page in ["/directives", "/directives/1", "/sheets/directives", "/sheets/emergency"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("Juno");
        bram.does_not_see("617-555-0103").sees("someone who is not shown to you");
    }
    bram.open(&family.at("/history")).await.does_not_see("Juno");
    family.house.is_sound().await;
}
