//! Data for the sheet before a visit: on an ordinary day, with nothing to say, with sixty of each,
//! and with text that tries to break the page.

use super::{Sheet, medicines::sheet, ordinary};
use serde_json::{Value, json};

pub fn all() -> Vec<(&'static str, Sheet, Value)> {
    vec![
        ("visit", Sheet::Visit, visit(2)),
        ("visit-empty", Sheet::Visit, empty()),
        ("visit-sixty", Sheet::Visit, on_a4(visit(60))),
        ("visit-hostile", Sheet::Visit, hostile()),
        ("directives", Sheet::Directives, register(2)),
        ("directives-empty", Sheet::Directives, register(0)),
        ("directives-hostile", Sheet::Directives, hostile_register()),
    ]
}

/// So many of everything.
pub fn visit(count: usize) -> Value {
    let numbers = || 1..=count;
    let turned = |n| {
        item(
            format!("Inventin {n} mg tablet"),
            &[
                format!("taken differently from {n} November 2026"),
                format!("now: {n} tablets, in the morning"),
                format!("said Dr. Signe Aune by phone: reason {n}"),
            ],
        )
    };
    let ill = |n| item(format!("Invented condition {n}"), &[format!("since spring, the {n}.")]);
    let seen = |n| {
        item(
            format!("Fri 20 Nov 2026: a fall, time {n}"),
            &[
                format!("Slid off the edge of the bed, the {n}. time."),
                "beside the bed; got up: alone; hit the head: no; hurt: no".to_owned(),
                "noticed by Delia".to_owned(),
                format!("Ottoline Varga says: It was the stocking {n}."),
            ],
        )
    };
    let asks = |n| json!({"words": format!("Which of the two bottles is the right one, {n}?"), "says": "Bram will ask"});
    let open = |n| {
        item(format!("Send the letter of the hospital, {n}"), &[format!("was due {n} days ago")])
    };
    let mut data = sheet("Before the visit");
    let more = json!({
        "lines": ["Mon 30 Nov 2026, 9:30 am, Chicago time", "With Dr. Signe Aune, 4 Invented Square, Duluth", "Bram goes along"],
        "since": "Since the visit with Dr. Signe Aune on 3 August 2026",
        "parts": [
            part("Medicines that changed", numbers().map(turned).collect()),
            part("New conditions and operations", numbers().map(ill).collect()),
            part("Falls, and what else was noticed", numbers().map(seen).collect())
        ],
        "questions": {"title": "Questions", "sentence": null, "items": numbers().map(asks).collect::<Vec<_>>()},
        "overdue": part("Still open from before", numbers().map(open).collect()),
        "allergies": ordinary()["allergies"],
        "medicines": "Medicines: 7 medicines, 1 on hold (checked 20 Nov 2026 by Ines, against the bottles). The medicine list has each of them: print it as well."
    });
    for (name, value) in more.as_object().expect("an object") {
        data[name] = value.clone();
    }
    data
}

fn part(title: &str, items: Vec<Value>) -> Value {
    json!({"title": title, "sentence": null, "notice": null, "items": items})
}

fn item(head: String, lines: &[String]) -> Value {
    json!({"head": head, "lines": lines})
}

fn empty() -> Value {
    let mut data = visit(0);
    for part in data["parts"].as_array_mut().expect("parts") {
        part["sentence"] = "Nothing of this is written down.".into();
    }
    data["lines"] = json!([]);
    data["since"] = "Since 26 October 2026; no visit there is written down".into();
    data["questions"]["sentence"] = "No question is written down.".into();
    data["overdue"]["sentence"] = "Nothing is overdue that this record knows of.".into();
    data["allergies"] = json!({"sentence": "Allergies: not asked", "stamp": null, "items": []});
    data["person"]["calls"] = json!([]);
    data
}

/// The register of the directives with so many in force.
fn register(count: usize) -> Value {
    let one = |n| {
        item(
            format!("Power of attorney for health care of {n} May 2022, form of Minnesota"),
            &[
                format!("Original: blue folder {n} in the hall"),
                "agent: Ines Varga, 218-555-0101, 218-555-0102".to_owned(),
                "Copies given: Dr. Signe Aune (on 4 May 2022); the hospital (on 4 May 2022)"
                    .to_owned(),
            ],
        )
    };
    let mut data = sheet("Register of the directives");
    data["person"]["calls"] = json!([]);
    data["sentence"] = format!("{count} in force, as far as the family knows").into();
    data["notices"] = json!([]);
    data["items"] = (1..=count).map(one).collect();
    data
}

fn hostile_register() -> Value {
    let mut data = register(2);
    data["notices"] = json!(["Unbroken".repeat(37), "Two papers disagree: *not bold* #panic()"]);
    data["items"][0]["head"] = "Unbroken".repeat(37).into();
    data["items"][1]["lines"][0] = "💊 $x$ <b> \\ @who ?אקמול".into();
    on_a4(data)
}

fn on_a4(mut data: Value) -> Value {
    data["paper"] = "a4".into();
    data
}

fn hostile() -> Value {
    let mut data = visit(2);
    let long = "Unbroken".repeat(37);
    let note: String = (1..=600).map(|n| format!("word{n} ")).collect();
    data["person"]["name"] = "Ottoline Wilhelmina ".repeat(8).trim_end().into();
    data["lines"][1] = format!("With {long}").into();
    data["parts"][0]["items"][0]["head"] = long.clone().into();
    data["parts"][0]["items"][1]["lines"][2] = "💊 *not bold* #panic() $x$ <b> \\ @who".into();
    data["parts"][1]["notice"] =
        "Ask the family before you tell Ottoline Varga of a diagnosis.".into();
    data["parts"][2]["items"][0]["lines"][0] = note.trim_end().into();
    data["questions"]["items"][0]["words"] = note.trim_end().into();
    data["questions"]["items"][1]["words"] = "?אקמול 500".into();
    data["overdue"]["items"][0]["head"] = long.into();
    data
}
