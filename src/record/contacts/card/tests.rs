//! Cards, ordinary and hostile. With KINSHEAF_CARDS set, each is written there beside what it was
//! made from, for `tests/outside/vcards.py`.

use super::super::{
    hours::Hours,
    kind::Kind,
    model::{Contact, Entry},
};
use super::*;
use crate::base::ids::PersonId;
use crate::base::{
    text::{Email, Line, Note},
    zone::Zone,
};
use serde_json::{Value, json};
use std::{env, fs, path::Path};

const HOUSE: &str = "https://care.example.org";

fn line(text: impl Into<String>) -> Line {
    Line::from(text.into())
}

fn phone(typed: &str) -> Phone {
    Phone::parse(typed).expect(typed)
}

fn doctor() -> Entry {
    Entry {
        kind: Kind::Doctor,
        who: Some(line("family doctor, since 2011")),
        organization: Some(line("Lakeside Family Practice")),
        other_phone: Some(phone("218-555-0121 x7")),
        email: Some(Email::from("desk@example.org".to_owned())),
        address: Some(Note::from("12 Invented Street, Suite 4\nDuluth, Minnesota".to_owned())),
        zone: Zone::parse("America/Chicago"),
        hours: Hours::parse("Mon-Fri 8-17").ok(),
        note: Some(line("asks about the heart: this must not leave the record")),
        ..Entry::new(line("Dr Adaeze Oyelaran"), Some(phone("+1 (218) 555-0120 ext. 4")))
    }
}

/// Each with a name; the hostile ones are in every field that takes text.
fn samples() -> Vec<(&'static str, Entry)> {
    let hostile = |text: &str| Entry {
        who: Some(line(text)),
        organization: Some(line(text)),
        address: Some(Note::from(format!("{text}\n\n{text}"))),
        ..Entry::new(line(text), Some(phone("+44 20 7946 0000")))
    };
    let place = Entry {
        kind: Kind::Pharmacy,
        ..Entry::new(line("Harbor Street Pharmacy"), Some(phone("218-555-0131")))
    };
    let mail = Entry {
        email: Some(Email::from("juno@example.org".to_owned())),
        ..Entry::new(line("Juno"), None)
    };
    vec![
        ("doctor", doctor()),
        ("place", place),
        ("mail-only", mail),
        ("marks", hostile("a,b;c\\d\\\\n\\n:\"e\"=^n'f\\.")),
        ("backslash-last", hostile("a;b\\")),
        ("injected", hostile("Ines\\nTEL:911 END:VCARD BEGIN:VCARD")),
        ("long", hostile(&"Wilhelmina ".repeat(27))),
        ("unbroken", hostile(&"W".repeat(300))),
        ("emoji", hostile(&"👩\u{200d}👩\u{200d}👧 💊".repeat(30))),
        ("arabic", hostile(&"مرحبا يا أوتيلي؛ ".repeat(18))),
        ("accents", hostile(&"Ágota Őry, űr; ".repeat(20))),
    ]
}

fn contact(entry: Entry, id: i64) -> Contact {
    Contact { id: id.into(), ..Contact::new(PersonId::from(1), entry, id) }
}

fn text(contact: &Contact) -> String {
    let revised = Instant::parse("2026-11-25T15:12:00Z").expect("a moment");
    let hours = contact.hours.as_ref().map(|it| format!("{it}, Chicago time"));
    Card { contact, house: HOUSE, revised, hours }.text()
}

/// What the card must say, in the words of the one who typed it.
fn source(it: &Contact) -> Value {
    let name = it.name.as_str();
    let organization = it.organization.as_ref().map(Line::as_str);
    let numbers = it.phones().map(|phone| match phone.dial() {
        dial if dial.starts_with('+') => format!("tel:{dial}"),
        _ => phone.to_string(),
    });
    let hours = it.hours.as_ref().map(|it| format!("answers {it}, Chicago time"));
    let note: Vec<String> = it.who.iter().map(ToString::to_string).chain(hours).collect();
    json!({
        "fn": name, "kind": if it.kind.is_place() { "org" } else { "individual" },
        "n": (!it.kind.is_place()).then_some(name),
        "org": organization.or(it.kind.is_place().then_some(name)),
        "tel": numbers.collect::<Vec<_>>(), "email": it.email, "adr": it.address,
        "tz": it.zone.as_ref().map(Zone::name), "note": (!note.is_empty()).then(|| note.join("\n")),
        "categories": it.kind.said(), "rev": "20261125T151200Z",
    })
}

#[test]
fn a_card_says_what_a_phone_is_for_and_nothing_that_was_noted() {
    let card = text(&contact(doctor(), 3));
    let whole = card.replace("\r\n ", "");
    let lines: Vec<&str> = whole.split("\r\n").collect();
    assert_eq!(
        lines,
        [
            "BEGIN:VCARD",
            "VERSION:4.0",
            lines[2],
            "REV:20261125T151200Z",
            "FN:Dr Adaeze Oyelaran",
            "KIND:individual",
            "N:;Dr Adaeze Oyelaran;;;",
            "ORG:Lakeside Family Practice",
            "CATEGORIES:doctor",
            "TEL;VALUE=uri;TYPE=voice;PREF=1:tel:+12185550120;ext=4",
            "TEL;VALUE=text;TYPE=voice;PREF=2:218-555-0121 x7",
            "EMAIL:desk@example.org",
            "ADR:;;12 Invented Street\\, Suite 4\\nDuluth\\, Minnesota;;;;",
            "TZ:America/Chicago",
            "NOTE:family doctor\\, since 2011\\nanswers Mon–Fri 8 am–5 pm\\, Chicago time",
            "END:VCARD",
            "",
        ]
    );
    assert!(!whole.contains("heart"));
}

#[test]
fn a_card_stays_itself_and_is_no_other() {
    let uid = |contact: &Contact| {
        let card = text(contact);
        card.lines().find(|it| it.starts_with("UID:urn:uuid:")).expect("a uid").to_owned()
    };
    let (one, other) = (contact(doctor(), 3), contact(doctor(), 4));
    let renamed = Contact { name: line("Someone"), version: 9, ..one.clone() };
    assert_eq!(uid(&one), uid(&renamed));
    assert_ne!(uid(&one), uid(&other));
    // 8-4-4-4-12 with version 8 and its variant: RFC 9562, sections 4 and 5.8.
    let parts: Vec<usize> = uid(&one)["UID:urn:uuid:".len()..].split('-').map(str::len).collect();
    assert_eq!(parts, [8, 4, 4, 4, 12]);
}

#[test]
fn lines_are_folded_between_letters_and_no_text_breaks_out() {
    for (name, entry) in samples() {
        let card = text(&contact(entry, 1));
        for line in card.split("\r\n") {
            assert!(line.len() <= 75 && !line.contains(['\r', '\n']), "{name}: {line:?}");
        }
        assert_eq!(card.replace("\r\n ", "").matches("\r\nEND:VCARD").count(), 1, "{name}");
    }
}

#[test]
fn the_cards_are_written_for_other_readers() {
    let Some(folder) = env::var_os("KINSHEAF_CARDS") else { return };
    let folder = Path::new(&folder);
    fs::create_dir_all(folder).expect("a folder");
    let (mut cards, mut sources) = (String::new(), Vec::new());
    for (id, (name, entry)) in (1..).zip(samples()) {
        let contact = contact(entry, id);
        let (card, source) = (text(&contact), source(&contact));
        fs::write(folder.join(format!("{name}.vcf")), &card).expect("a card");
        fs::write(folder.join(format!("{name}.json")), json!([source]).to_string()).expect("json");
        cards.push_str(&card);
        sources.push(source);
    }
    fs::write(folder.join("all.vcf"), cards).expect("the cards");
    fs::write(folder.join("all.json"), Value::from(sources).to_string()).expect("json");
}
