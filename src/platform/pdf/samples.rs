//! Data for sheets, ordinary and hostile: the invented family on a good day, with nothing entered, with far too much,
//! and with text that tries to break the page. Used by the tests beside this file and, written out with their PDFs, by
//! `tests/outside/sheets.py`.

pub mod cards;
pub mod kept;
pub mod medicines;
pub mod visit;

use super::Sheet;
use serde_json::{Value, json};

/// Every sheet there is, with the data of each sample.
pub fn sheets() -> Vec<(&'static str, Sheet, Value)> {
    let emergency = all().into_iter().map(|(name, data)| (name, Sheet::Emergency, data));
    let kept = kept::all().into_iter().map(|(name, data)| (name, Sheet::Kept, data));
    emergency.chain(kept).chain(medicines::all()).chain(visit::all()).chain(cards::all()).collect()
}

pub fn all() -> [(&'static str, Value); 5] {
    [
        ("ordinary", ordinary()),
        ("empty", empty()),
        ("long", long(120)),
        ("hostile", hostile()),
        ("a4", a4()),
    ]
}

pub fn ordinary() -> Value {
    let taking = [
        medicine(
            "Metoprolol succinate",
            "50 mg",
            "extended-release tablet",
            "in the morning",
            Some("heart rate"),
        ),
        medicine("Lisinopril", "10 mg", "tablet", "in the morning", Some("blood pressure")),
        medicine(
            "Apixaban",
            "5 mg",
            "tablet",
            "in the morning and at bedtime",
            Some("atrial fibrillation: to prevent clots"),
        ),
        medicine(
            "Levothyroxine",
            "75 mcg",
            "tablet",
            "in the morning, before food",
            Some("underactive thyroid"),
        ),
        medicine("Atorvastatin", "20 mg", "tablet", "at bedtime", None),
        over_the_counter(),
        supplement(),
    ];
    let held = [held(
        medicine("Furosemide", "20 mg", "tablet", "in the morning", Some("swelling of the legs")),
        "21 Nov 2026",
        "Dr. Signe Aune: low blood pressure; to be looked at again on 27 Nov",
    )];
    json!({
        "paper": "us-letter", "lang": "en", "title": "Emergency sheet", "printed_on": "2026-11-25",
        "person": person(),
        "allergies": {
            "sentence": "2 allergies or intolerances",
            "stamp": "checked 20 Nov 2026 by Ines, against the clinic's printed list",
            "items": [
                {"substance": "Penicillin", "kind": "allergy", "reaction": "throat swelling, hives", "since": "1971", "source": "Ottoline; hospital letter of 2009"},
                {"substance": "Codeine", "kind": "intolerance", "reaction": "vomiting", "since": null, "source": null}
            ]
        },
        "statements": [
            {"subject": "Blood thinner", "sentence": "Yes: apixaban", "said": "said by Dr Adaeze Oyelaran on 3 November 2026", "beside": null},
            {"subject": "Implant or device", "sentence": "None", "said": "said by Emeric on 20 November 2026", "beside": "Stated: none, by Emeric; an operation with an implant is listed."}
        ],
        "directives": {"sentence": "2 in force, as far as the family knows", "caution": "Copy for information, not an order.",
            "disagree": ["Two papers disagree: show both to the clinician. Do-not-resuscitate order of 3 May 2022 and Living will of 3 May 2022: marked by the family: heart"],
            "items": [
                {"kind": "Do-not-resuscitate order", "signed": "3 May 2022", "form_of": "Minnesota", "original": "on the fridge", "no_agent": false, "agents": []},
                {"kind": "Power of attorney for health care", "signed": null, "form_of": null, "original": null, "no_agent": false, "agents": [
                    {"what": "agent", "name": "Ines Varga", "phones": ["218-555-0101", "218-555-0102"], "amiss": null},
                    {"what": "alternate agent", "name": "Juno Varga", "phones": [], "amiss": "struck from the contacts"}
                ]}
            ]
        },
        "medicines": {"stamp": "checked 20 Nov 2026 by Ines, against the bottles", "taking": taking, "held": held},
        "conditions": conditions(), "operations": operations(),
        "usual": usual(),
        "contacts": {"stamp": "checked 3 Nov 2026 by Bram, by calling each number", "items": [
            {"name": "Ines Varga", "who": "daughter, lives in Duluth; health care agent", "numbers": ["218-555-0101", "218-555-0102"], "note": "Has the key. Ten minutes away."},
            {"name": "Bram Varga", "who": "son, Portland, Oregon", "numbers": ["503-555-0110"], "hours": "Mon–Fri 11 am–8 pm, Chicago time", "note": "Two hours behind Duluth."},
            {"name": "Juno Varga", "who": "daughter, Boston", "numbers": ["617-555-0120"], "note": null}
        ], "without": "2 contacts have no number: see the record."},
        "print": {"code": "K7Q-4MZD", "by": "Ines Varga", "at": "Wed 25 Nov 2026, 9:35 am Duluth", "head": "0f3a 99b1 c204 7e5d"}
    })
}

fn conditions() -> Value {
    json!({
        "sentence": "2 conditions", "stamp": "checked 20 Nov 2026 by Ines, against the visit summary",
        "ask_first": "Ask the family before you tell Ottoline Varga of a diagnosis.",
        "items": [
            {"name": "Atrial fibrillation", "since": "2019", "followed_by": "Dr Adaeze Oyelaran", "stamp": null},
            {"name": "Hypothyroidism", "since": null, "followed_by": null, "stamp": "not checked by anyone"}
        ]
    })
}

fn operations() -> Value {
    json!({
        "sentence": "2 operations", "stamp": "checked 21 Nov 2026 by Juno, against the implant's card",
        "items": [
            {"name": "Left hip replaced", "done_when": "autumn 2017", "done_where": "Lakeshore Hospital, Dr Petra Lindqvist", "put_in": "hip joint, card H-2017-0042", "stamp": null},
            {"name": "Cataract, right eye", "done_when": null, "done_where": null, "put_in": null, "stamp": "checked 1 Nov 2026 by Bram, against his memory"}
        ]
    })
}

fn person() -> Value {
    json!({
        "name": "Ottoline Varga", "born": "9 March 1944", "age": "82",
        "address": "114 Invented Street, Duluth, Minnesota; side door, key with Ines", "language": "English, Hungarian",
        "needs": [
            {"what": "Hearing", "text": "aid in the left ear; speak to her left side"},
            {"what": "Vision", "text": "reads large print with glasses"},
            {"what": "Mobility", "text": "walks with a frame; two steps at the side door"}
        ],
        "emergency_number": "911", "poison_line": "1-800-222-1222", "phone_first": null
    })
}

fn usual() -> Value {
    json!({
        "title": "How Ottoline Varga usually is",
        "items": [
            {"what": "In Ottoline Varga’s own words", "text": "I can wait, but tell me what for.\nLeave the hearing aid in.", "by": "written down by Ines"},
            {"what": "Usual thinking", "text": "clear; knows the day and everyone's name", "by": null},
            {"what": "Not the usual self", "text": "answers in Hungarian only, picks at the sheet", "by": null},
            {"what": "Daily activities", "text": "with help: bathing (Delia helps with the back); alone: dressing, toileting, transferring, continence, feeding", "by": null}
        ],
        "said": "said by Emeric on 3 November 2026",
        "stamp": "checked 20 Nov 2026 by Ines, against Emeric"
    })
}

fn medicine(name: &str, strength: &str, form: &str, times: &str, purpose: Option<&str>) -> Value {
    json!({
        "name": name, "strength": strength, "form": form, "route": "by mouth", "dose": "1 tablet", "times": times,
        "purpose": purpose, "as_needed": false, "limit": null, "supply": "prescription", "prescriber": "Dr. Signe Aune", "stamp": null
    })
}

fn over_the_counter() -> Value {
    json!({
        "name": "Acetaminophen", "strength": "500 mg", "form": "tablet", "route": "by mouth", "dose": "1 or 2 tablets", "times": "every 6 hours",
        "purpose": "knee pain", "as_needed": true, "limit": "no more than 6 tablets in 24 hours", "supply": "over the counter", "prescriber": null,
        "stamp": "read off the box 18 Nov 2026 by Delia"
    })
}

fn supplement() -> Value {
    json!({
        "name": "Vitamin D3", "strength": "1,000 units", "form": "capsule", "route": null, "dose": "1 capsule", "times": null,
        "purpose": null, "as_needed": false, "limit": null, "supply": "supplement", "prescriber": null, "stamp": null
    })
}

fn held(mut medicine: Value, since: &str, reason: &str) -> Value {
    medicine["since"] = since.into();
    medicine["reason"] = reason.into();
    medicine
}

pub fn empty() -> Value {
    let mut data = ordinary();
    data["person"] = json!({"name": "Emeric Varga", "born": "2 November 1941", "age": "85", "emergency_number": "911"});
    data["allergies"] = json!({"sentence": "Allergies: not asked", "stamp": null, "items": []});
    data["statements"] = json!([
        {"subject": "Blood thinner", "sentence": "Not asked yet", "said": null, "beside": null},
        {"subject": "Implant or device", "sentence": "Not asked yet", "said": null, "beside": null}
    ]);
    data["medicines"] = json!({"stamp": null, "taking": [], "held": []});
    data["conditions"] = json!({"sentence": "No condition is written down. That does not mean that there is none.", "stamp": null, "ask_first": null, "items": []});
    data["operations"] = json!({"sentence": "No operation is written down. That does not mean that there was none.", "stamp": null, "items": []});
    data["usual"] =
        json!({"title": "How Emeric Varga usually is", "items": [], "said": null, "stamp": null});
    data["contacts"] = json!({"stamp": null, "items": []});
    data
}

/// `count` medicines, each with its own name and directions, a tenth of them on hold.
pub fn long(count: usize) -> Value {
    let mut data = ordinary();
    let number = |n: usize| {
        let mut item = medicine(
            &format!("Inventin {n}"),
            &format!("{n} mg"),
            "tablet",
            &format!("at bedtime, place {n}"),
            Some(&format!("purpose {n}")),
        );
        item["stamp"] = format!("checked against bottle {n}").into();
        item
    };
    data["medicines"]["taking"] = (1..=count - count / 10).map(number).collect();
    data["medicines"]["held"] = (count - count / 10 + 1..=count)
        .map(|n| held(number(n), &format!("day {n}"), &format!("reason {n}")))
        .collect();
    data
}

pub fn hostile() -> Value {
    let mut data = ordinary();
    let note: String = (1..=250)
        .map(|n| format!("note {n}\n").replace('\n', if n % 40 == 0 { "\n" } else { " " }))
        .collect();
    let mut names = [
        medicine(
            &"Unbroken".repeat(38),
            "5 mg",
            "tablet",
            "in the morning",
            Some("a 304-character name without a space"),
        ),
        medicine(
            &"M".repeat(24),
            &"W".repeat(40),
            "tablet",
            "at bedtime",
            Some(&"purpose/with/slashes".repeat(6)),
        ),
        medicine("אקמול", "500 mg", "טבליה", "בבוקר", Some("כאב (ברך) 2")),
        medicine("باراسيتامول", "500 mg", "قرص", "في الصباح", Some("ألم")),
        medicine(
            "💊 *not bold* #panic() $x$ <b> \\ @who",
            "1 mg",
            "_under_",
            "`raw` [x] // gone /* gone */",
            Some("王明 👩‍⚕️ e\u{301} \u{0} \u{feff}\t'quoted' -- \"so\""),
        ),
    ];
    names[0]["times"] = note.trim_end().into();
    data["medicines"]["taking"] = names.to_vec().into();
    data["contacts"]["items"][1]["note"] = note.trim_end().into();
    data["contacts"]["items"][1]["hours"] = "Unbroken".repeat(37).into();
    data["statements"][0]["sentence"] = format!("Yes: {}", "Unbroken".repeat(37)).into();
    data["conditions"]["items"][0]["name"] = "Unbroken".repeat(37).into();
    data["operations"]["items"][0]["put_in"] = "W".repeat(300).into();
    data["usual"]["items"][0]["text"] = note.trim_end().into();
    data["usual"]["items"][1]["text"] = "Unbroken".repeat(37).into();
    data["allergies"]["items"][1]["reaction"] = note.trim_end().into();
    data["person"]["name"] = "Ottoline Wilhelmina ".repeat(8).trim_end().into();
    data["print"]["by"] = "Ines ".repeat(60).trim_end().into();
    data["person"]["phone_first"] = phone_first();
    data
}

fn phone_first() -> Value {
    json!({"whom": "Lakehead Hospice, nurse line", "number": "218-555-0140", "said_by": "Runa Holm, hospice nurse, 3 Nov 2026"})
}

pub fn a4() -> Value {
    let mut data = ordinary();
    data["paper"] = "a4".into();
    data["person"]["died"] = "3 November 2026".into();
    data["person"]["phone_first"] = phone_first();
    data["allergies"] = json!({"sentence": "No known allergies, said by Ottoline on 20 Nov 2026", "stamp": "checked 20 Nov 2026 by Ines, by asking", "items": []});
    data
}
