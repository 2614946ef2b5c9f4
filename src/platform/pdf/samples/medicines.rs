//! Data for the sheets of the medicines: on an ordinary day, with one medicine, with sixty, and
//! with text that tries to break the page. The card gets all of it on a few square inches.

use super::Sheet;
use serde_json::{Value, json};

pub fn all() -> Vec<(&'static str, Sheet, Value)> {
    use Sheet::{ChangeSlip, Day, MedicineList, WalletCard, Week};
    vec![
        ("list", MedicineList, list(7)),
        ("list-one", MedicineList, none_known(list(1))),
        ("list-sixty", MedicineList, list(60)),
        ("list-hostile", MedicineList, hostile(list(3))),
        ("wallet", WalletCard, wallet(7)),
        ("wallet-one", WalletCard, wallet_alone()),
        ("wallet-sixty", WalletCard, on_a4(wallet(60))),
        ("wallet-hostile", WalletCard, hostile_card()),
        ("week", Week, week(7)),
        ("week-sixty", Week, on_a4(week(60))),
        ("day", Day, day(7)),
        ("day-sixty", Day, day(60)),
        ("day-hostile", Day, hostile(day(2))),
        ("slip", ChangeSlip, slip(3)),
        ("slip-one", ChangeSlip, slip(1)),
        ("slip-sixty", ChangeSlip, on_a4(slip(60))),
        ("slip-hostile", ChangeSlip, hostile(slip(2))),
    ]
}

const NAMES: [(&str, &str, &str, &str); 7] = [
    ("Metoprolol succinate", "50 mg", "extended-release tablet", "heart rate"),
    ("Lisinopril", "10 mg", "tablet", "blood pressure"),
    ("Apixaban", "5 mg", "tablet", "atrial fibrillation: to prevent clots"),
    ("Levothyroxine", "75 mcg", "tablet", "underactive thyroid"),
    ("Atorvastatin", "20 mg", "tablet", "cholesterol"),
    ("Furosemide", "20 mg", "tablet", "swelling of the legs"),
    ("Prednisone", "5 mg", "tablet", "joint pain"),
];

/// The name and strength of the medicine at a place: the first seven are ordinary ones.
fn named(n: usize) -> (String, String, String, String) {
    match NAMES.get(n) {
        Some((name, strength, form, purpose)) => {
            ((*name).into(), (*strength).into(), (*form).into(), (*purpose).into())
        }
        None => (
            format!("Inventin {n}"),
            format!("{n} mg"),
            "tablet".into(),
            format!("invented reason {n}"),
        ),
    }
}

fn title(n: usize) -> String {
    let (name, strength, form, _) = named(n);
    format!("{name} {strength} {form}")
}

/// What every sheet carries.
pub fn sheet(title: &str) -> Value {
    json!({
        "paper": "us-letter", "lang": "en", "printed_on": "2026-11-25", "title": title,
        "person": {
            "name": "Ottoline Varga", "born": "9 March 1944", "died": null,
            "calls": [
                "Phone first: Lakehead Hospice, nurse line, 218-555-0140 (said by Runa Holm on 3 Nov)",
                "In an emergency call 911"
            ]
        },
        "print": {"code": "K7Q-4MZD", "by": "Ines Varga", "at": "Wed 25 Nov 2026, 9:35 am, Chicago time", "head": "0f3a 99b1 c204 7e5d"}
    })
}

fn joined(mut base: Value, more: Value) -> Value {
    if let (Value::Object(base), Value::Object(more)) = (&mut base, more) {
        base.extend(more);
    }
    base
}

fn on_a4(mut data: Value) -> Value {
    data["paper"] = "a4".into();
    data
}

fn allergies() -> Value {
    json!({
        "sentence": "2 allergies or intolerances",
        "stamp": "checked 20 Nov 2026 by Ines, against the clinic's printed list",
        "items": [
            {"substance": "Penicillin", "kind": "allergy", "reaction": "throat swelling, hives", "since": "1971", "source": "hospital letter of 2009"},
            {"substance": "Codeine", "kind": "intolerance", "reaction": null, "since": null, "source": null}
        ]
    })
}

fn none_known(mut data: Value) -> Value {
    data["allergies"] = json!({"sentence": "No known allergies, said by Emeric on 20 November 2026", "stamp": null, "items": []});
    data["stopped"]["items"] = json!([]);
    data["stopped"]["sentence"] = "None is written down as stopped in the last 90 days.".into();
    data
}

fn item(n: usize) -> Value {
    let (name, strength, form, purpose) = named(n);
    json!({
        "name": name, "strength": strength, "form": form, "purpose": if n % 5 == 4 { Value::Null } else { purpose.into() },
        "dose": "1 tablet", "times": if n % 7 == 3 { Value::Null } else { "every morning and at bedtime".into() }, "route": "by mouth",
        "plain": if n % 4 == 1 { json!([]) } else { json!(["1 tablet in the morning and 1 tablet at bedtime"]) },
        "as_needed": n % 9 == 8, "limit": if n % 9 == 8 { json!("no more than 6 tablets in 24 hours") } else { Value::Null },
        "supply": if n % 6 == 5 { "over the counter" } else { "prescription" }, "prescriber": "Dr. Signe Aune", "started": "3 March 2026",
        "held_since": null, "reason": null, "turns": null, "stamp": if n % 8 == 7 { json!("not checked yet") } else { Value::Null }
    })
}

/// A list of so many medicines, a tenth of them on hold.
pub fn list(count: usize) -> Value {
    let held = if count > 1 { 1 + count / 10 } else { 0 };
    let mut taking: Vec<Value> = (0..count - held).map(item).collect();
    if count > 1 {
        taking[0]["plain"] = json!([
            "4 tablets in the morning, from 20 November 2026 to 26 November 2026",
            "2 tablets in the morning, from 27 November 2026 to 3 December 2026"
        ]);
    }
    let on_hold = |n| {
        let mut item = item(n);
        item["held_since"] = "21 November 2026".into();
        item["turns"] =
            "on hold, said Dr. Signe Aune; to resume on 27 November 2026, said Dr. Signe Aune"
                .into();
        item["reason"] =
            "Dr. Signe Aune: low blood pressure; to be looked at again on 27 Nov".into();
        item
    };
    let on_hold: Vec<Value> = (count - held..count).map(on_hold).collect();
    joined(
        sheet("Medicine list"),
        json!({
            "allergies": allergies(),
            "medicines": {"sentence": format!("{} {}, {held} on hold", taking.len(), if taking.len() == 1 { "medicine" } else { "medicines" }), "stamp": "checked 20 Nov 2026 by Ines, against the bottles", "taking": taking, "held": on_hold},
            "stopped": {
                "title": "Stopped in the last 90 days, so that it is not started again by mistake", "sentence": null,
                "items": [{"title": "Amlodipine 5 mg tablet", "since": "2 October 2026", "reason": "swollen ankles, Dr. Signe Aune"}]
            }
        }),
    )
}

pub fn wallet(count: usize) -> Value {
    let often = ["morning", "morning and bedtime", "every 8 hours", "as needed"];
    let line = |n: usize| {
        let (name, strength, ..) = named(n);
        format!("{name} {strength}: {}", often[n % 4])
    };
    let items: Vec<String> = (0..count).map(line).collect();
    joined(
        sheet("Wallet card"),
        json!({
            "allergies": {"sentence": "2 allergies or intolerances", "items": ["Penicillin (throat swelling, hives)", "Codeine (vomiting)"]},
            "statements": [{"subject": "Blood thinner", "sentence": "Yes: apixaban"}, {"subject": "Implant or device", "sentence": "Yes: left hip joint"}],
            "first": {"whom": "Ines Varga, daughter", "number": "218-555-0101"},
            "medicines": {"sentence": format!("{count} {}, 0 on hold", if count == 1 { "medicine" } else { "medicines" }), "items": items},
            "sources": ["Allergies: checked 20 Nov 2026 by Ines, against the clinic's printed list", "Medicines: not checked yet"]
        }),
    )
}

fn wallet_alone() -> Value {
    let mut data = wallet(1);
    data["allergies"] = json!({"sentence": "Not asked yet", "items": []});
    data["statements"][0]["sentence"] = "Not asked yet".into();
    data["statements"][1]["sentence"] = "None".into();
    data["first"] = Value::Null;
    data
}

fn hostile_card() -> Value {
    let mut data = hostile(wallet(20));
    let long = "Unbroken".repeat(37);
    let many: Vec<String> = (1..30).map(|n| format!("Substance {n} (swelling {n})")).collect();
    data["allergies"]["items"] = json!(many);
    data["statements"][0]["sentence"] = format!("Yes: {long}").into();
    data["first"]["whom"] = long.clone().into();
    data["medicines"]["items"][2] = format!("{long}: morning").into();
    data
}

/// `count` medicines in the morning and at bedtime, one of them changing within the week.
pub fn week(count: usize) -> Value {
    let row = |n: usize| {
        let cell = |day: usize| match (n, day) {
            (0, 0..=1) => json!({"count": "4", "begins": false}),
            (0, _) => json!({"count": "2", "begins": day == 2}),
            (1, _) if day != 4 => json!({"count": null, "begins": false}),
            _ => json!({"count": if n == 2 { "0.5" } else { "1" }, "begins": false}),
        };
        json!({"title": title(n), "units": "tablets", "cells": (0..7).map(cell).collect::<Vec<_>>()})
    };
    let morning: Vec<Value> = (0..count).map(row).collect();
    let bedtime: Vec<Value> = (2..count.min(5)).map(row).collect();
    joined(
        sheet("A week for the pill box"),
        json!({
            "span": "Wed 25 Nov 2026 to Tue 1 Dec 2026",
            "days": ["Wed 25", "Thu 26", "Fri 27", "Sat 28", "Sun 29", "Mon 30", "Tue 1"],
            "sentence": format!("{count} medicines, 1 on hold"), "stamp": "checked 20 Nov 2026 by Ines, against the bottles",
            "changes": ["Metoprolol succinate 50 mg extended-release tablet: from Fri 27 Nov 2026 2 tablets in the morning"],
            "slots": [
                {"name": "morning", "window": "6–9 am", "rows": morning},
                {"name": "2:30 pm", "window": null, "rows": [row(5)]},
                {"name": "bedtime", "window": "9–11 pm", "rows": bedtime}
            ],
            "beside": [
                {"title": "Acetaminophen 500 mg tablet", "says": "1 tablet as needed; label says wait at least 6 hours between"},
                {"title": "Furosemide 20 mg tablet", "says": "on hold: low blood pressure"}
            ]
        }),
    )
}

/// So many changes: taken differently, put on hold, newly started in the place of another.
pub fn slip(count: usize) -> Value {
    let change = |n: usize| {
        let (_, _, _, purpose) = named(n);
        let (what, before, other, resume) = match n % 3 {
            0 => (
                "taken differently from 23 November 2026",
                json!("25 mg tablet: 1 tablet, in the morning"),
                Value::Null,
                Value::Null,
            ),
            1 => (
                "to be put on hold from 3 December 2026",
                Value::Null,
                Value::Null,
                json!("to resume on 10 December 2026, said Dr. Signe Aune"),
            ),
            _ => (
                "started from 20 November 2026",
                Value::Null,
                json!("Amlodipine 5 mg tablet"),
                Value::Null,
            ),
        };
        json!({
            "medicine": title(n), "what": what, "before": before, "now": "50 mg tablet: 1 tablet, in the morning, by mouth",
            "purpose": if n % 4 == 3 { Value::Null } else { purpose.into() }, "in_place_of": other, "resume": resume,
            "said_by": "Dr. Signe Aune by phone", "reason": "swollen ankles, pulse below 50"
        })
    };
    joined(
        sheet("Changes of the medicines"),
        json!({
            "for_whom": if count == 1 { Value::Null } else { json!("Harbor Street Pharmacy") },
            "sentence": format!("{count} {} since 26 October 2026", if count == 1 { "change" } else { "changes" }),
            "items": (0..count).map(change).collect::<Vec<_>>()
        }),
    )
}

pub fn day(count: usize) -> Value {
    let line = |n: usize| {
        let (time, window) = match n * 4 / count {
            0 => ("morning", json!("6–9 am")),
            1 => ("noon", json!("11 am–1 pm")),
            2 => ("2:30 pm", Value::Null),
            _ => ("bedtime", json!("9–11 pm")),
        };
        json!({"time": time, "window": window, "amount": "1 tablet", "title": title(n)})
    };
    joined(
        sheet("What is taken in a day"),
        json!({
            "day": "Wed 25 Nov 2026", "sentence": format!("{count} medicines, 1 on hold"), "stamp": "not checked yet",
            "changes": [], "lines": (0..count).map(line).collect::<Vec<_>>(),
            "beside": [{"title": "Furosemide 20 mg tablet", "says": "on hold: low blood pressure"}]
        }),
    )
}

/// Hostile names and texts wherever this sheet has a place for them.
fn hostile(mut data: Value) -> Value {
    let long = "Unbroken".repeat(37);
    data["person"]["name"] = "Ottoline Wilhelmina ".repeat(8).trim_end().into();
    data["print"]["by"] = "Ines ".repeat(60).trim_end().into();
    if let Some(items) = data.pointer_mut("/medicines/taking").and_then(Value::as_array_mut) {
        items[0]["name"] = long.clone().into();
        items[0]["plain"] = json!(["W".repeat(200)]);
        items[1]["name"] = "💊 *not bold* #panic() $x$ <b> \\ @who".into();
        items[1]["dose"] =
            (1..=250).map(|n| format!("word{n} ")).collect::<String>().trim_end().into();
    }
    if let Some(lines) = data["lines"].as_array_mut() {
        lines[0]["title"] = long.into();
        lines[1]["title"] = "אקמול 500".into();
    }
    data
}
