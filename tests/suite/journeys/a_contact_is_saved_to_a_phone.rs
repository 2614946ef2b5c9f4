//! A contact, or all of them, as vCards for a phone: what a phone is for, and nothing hidden or
//! noted beside. That other programs read them is looked at by `tests/outside/vcards.py`.

use crate::support::{Browser, Family};
use axum::http::header;

async fn with_two() -> (Family, Browser) {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Dr Adaeze Oyelaran");
    ines.fill("Kind", "doctor")
        .fill("Who this is", "family doctor")
        .fill("Phone", "+1 218 555 0120");
    ines.fill("Hours", "Mon-Fri 8-17").fill("How to phone", "ask about the warfarin");
    ines.press("Add this contact").await.answers(200);
    ines.open(&family.at("/contacts/add")).await.fill("Name", "Harbor Street Pharmacy");
    ines.fill("Kind", "pharmacy").fill("Phone", "218-555-0131");
    ines.press("Add this contact").await.answers(200);
    (family, ines)
}

fn card(browser: &Browser) -> String {
    String::from_utf8(browser.body.clone()).expect("UTF-8").replace("\r\n ", "")
}

#[track_caller]
fn is_a_file(browser: &Browser, name: &str) {
    let text = |name| browser.headers.get(name).and_then(|it| it.to_str().ok()).unwrap_or_default();
    assert_eq!(text(header::CONTENT_TYPE), "text/vcard; charset=utf-8");
    let named = format!("attachment; filename=\"{name}\"");
    assert_eq!(text(header::CONTENT_DISPOSITION), named);
}

#[tokio::test]
async fn one_is_saved_from_its_page() {
    let (family, mut ines) = with_two().await;
    ines.open(&family.at("/contacts/1")).await.press("Save to this phone's contacts").await;
    ines.answers(200);
    is_a_file(&ines, "contact-1.vcf");
    let card = card(&ines);
    for line in [
        "BEGIN:VCARD\r\nVERSION:4.0\r\n",
        "\r\nFN:Dr Adaeze Oyelaran\r\n",
        "\r\nTEL;VALUE=uri;TYPE=voice;PREF=1:tel:+12185550120\r\n",
        "\r\nNOTE:family doctor\\nanswers Mon–Fri 8 am–5 pm\\, Chicago time\r\n",
        "\r\nREV:20261125T151200Z\r\n",
    ] {
        assert!(card.contains(line), "{line:?} is not in {card}");
    }
    assert!(!card.contains("warfarin"), "{card}");
}

#[tokio::test]
async fn all_are_saved_but_those_struck_or_hidden() {
    let (family, mut ines) = with_two().await;
    let names = |browser: &Browser| -> Vec<String> {
        let card = card(browser);
        card.split("\r\n").filter_map(|it| it.strip_prefix("FN:")).map(str::to_owned).collect()
    };
    ines.open(&family.at("/contacts")).await.press("Save all to this phone's contacts").await;
    is_a_file(&ines, "contacts.vcf");
    assert_eq!(names(&ines), ["Dr Adaeze Oyelaran", "Harbor Street Pharmacy"]);

    ines.open(&family.at("/visibility/contact/1")).await.tick("Delia").press("Save").await;
    let mut delia = family.browser("Delia").await;
    delia.get(&family.at("/contacts/cards.vcf")).await.answers(200);
    assert_eq!(names(&delia), ["Harbor Street Pharmacy"]);
    delia.get(&family.at("/contacts/1/card.vcf")).await.answers(404);

    ines.open(&family.at("/contacts/2/strike")).await.fill("Why it leaves the list", "moved");
    ines.press("Strike").await.answers(200).does_not_see("Save to this phone's contacts");
    ines.get(&family.at("/contacts/2/card.vcf")).await.answers(404);
    ines.get(&family.at("/contacts/cards.vcf")).await.answers(200);
    assert_eq!(names(&ines), ["Dr Adaeze Oyelaran"]);
    family.house.is_sound().await;
}
