//! Data for the sheet of what is kept: on a good day, with nothing in it, and with far too much.

use serde_json::{Value, json};

pub fn all() -> [(&'static str, Value); 3] {
    [("kept", ordinary()), ("kept-empty", empty()), ("kept-hostile", hostile())]
}

pub fn ordinary() -> Value {
    json!({
        "paper": "us-letter", "lang": "en", "printed_on": "2026-11-25",
        "title": "What is kept about Ottoline Varga, and who sees it",
        "person": {"name": "Ottoline Varga", "born": "9 March 1944"},
        "opening": [
            "This record is about you, Ottoline Varga. It is yours.",
            "You may ask for a change at any time.",
            "You do not sign in yourself. Ines can write down what you are asked and what you answer."
        ],
        "kept": [
            {"title": "Who you are", "lines": ["Your name, birth date, address, language."]},
            {"title": "Medicines", "lines": ["2 medicines: Warfarin 2.5 mg, Furosemide 40 mg.", "Also kept: 1 that you took before."]}
        ],
        "sharers": [
            {"name": "Ines", "role": "steward: keeps this record in order", "lines": ["Sees and changes: who shares this record."]},
            {"name": "Bram", "role": "relative: one of your family or friends", "lines": ["Sees nothing now: the place is paused since 3 November 2026."]}
        ],
        "invited": ["Halvard Lind, as reader. Invited by Ines. The invitation works until 2 December 2026."],
        "hidden": [{
            "what": "Sertraline is hidden from Bram.", "decided": "Ines decided this for you on 3 November 2026.",
            "answered": ["“Who should not see Sertraline?” You said: hide Sertraline from Bram."]
        }],
        "hidden_notes": ["If something is hidden from Ines, it is not on it."],
        "answers": [
            {"question": "May Bram see the history?", "said": "no", "own_words": "Not yet.\nLater, perhaps.", "asked": "asked by Ines, by phone, on 3 November 2026"},
            {"question": "May we keep this record?", "said": "yes", "own_words": null, "asked": "asked by Ines, in person, on 1 November 2026"}
        ],
        "print": {"code": "K7Q-4MZD", "by": "Ines Varga", "at": "Wed 25 Nov 2026, 9:35 am Duluth", "head": "0f3a 99b1 c204 7e5d"}
    })
}

fn empty() -> Value {
    let mut data = ordinary();
    data["paper"] = "a4".into();
    for list in ["kept", "sharers", "invited", "hidden", "answers"] {
        data[list] = json!([]);
    }
    data
}

fn hostile() -> Value {
    let mut data = ordinary();
    let long: String = (1..=250).map(|n| format!("word {n} ")).collect();
    data["person"]["name"] = "Ottoline Wilhelmina ".repeat(8).trim_end().into();
    data["title"] = format!(
        "What is kept about {}, and who sees it",
        data["person"]["name"].as_str().unwrap_or_default()
    )
    .into();
    data["kept"][1]["lines"] = json!([long.trim_end(), "Unbroken".repeat(37)]);
    data["sharers"][0]["name"] = "Unbroken".repeat(37).into();
    data["answers"][0]["question"] = "💊 *not bold* #panic() $x$ <b> \\ @who".into();
    data["answers"][0]["own_words"] = format!("שלום\n{}", long.trim_end()).into();
    data["print"]["by"] = "Ines ".repeat(60).trim_end().into();
    data
}
