//! Data for the sheet of cards: a few, none, many, and with text that tries to break the page.

use super::{Sheet, medicines::sheet};
use serde_json::{Value, json};

pub fn all() -> Vec<(&'static str, Sheet, Value)> {
    let hostile = "A plan with a name that goes on and on ".repeat(4) + &"x".repeat(120);
    vec![
        ("cards", Sheet::Cards, cards(2, "Harbor Drug Plan")),
        ("cards-none", Sheet::Cards, cards(0, "")),
        ("cards-a4", Sheet::Cards, on_a4(cards(5, "Harbor Drug Plan"))),
        (
            "cards-hostile",
            Sheet::Cards,
            cards(2, &format!("{hostile} #image(\"/etc/passwd\") שלום")),
        ),
    ]
}

/// So many cards without photos, and a cover that has no card.
pub fn cards(count: usize, title: &str) -> Value {
    let lines = |n: usize| {
        json!([
            format!("Brindlewood Mutual {n}, {title}"),
            format!("member number: 0AA0-AA0-AA0{n}"),
            "pharmacy BIN: 004336",
            "customer line: 218-555-0190"
        ])
    };
    let card = |n| json!({"title": format!("{title} {n}"), "lines": lines(n), "front": null, "back": null, "is_card": true});
    let mut all: Vec<Value> = (1..=count).map(card).collect();
    if count > 0 {
        all.push(json!({"title": "Supplement", "lines": lines(9), "front": null, "back": null, "is_card": false}));
    }
    let mut data = sheet("Cards");
    // Whom to call does not stand on it.
    data["person"] = json!({"name": data["person"]["name"], "born": data["person"]["born"]});
    data["sentence"] = "As they were on 25 November 2026.".into();
    data["cards"] = all.into();
    data["unset"] = false.into();
    data
}

fn on_a4(mut data: Value) -> Value {
    data["paper"] = "a4".into();
    data
}
