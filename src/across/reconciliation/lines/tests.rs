//! Lines as they stand on discharge lists, printouts and bottles. Invented lists; how labels are
//! written is common practice, no source.

use super::*;
use proptest::prelude::*;

/// "name | strength | form | how taken", with "STOP" where the line says so.
fn told(line: &str) -> String {
    let it = understood(line);
    let part = |it: Option<String>| it.unwrap_or_else(|| "-".into());
    let stop = if it.stopped { " STOP" } else { "" };
    format!(
        "{} | {} | {} | {}{stop}",
        it.name,
        part(it.strength),
        part(it.form),
        part(it.directions)
    )
}

#[test]
fn the_parts_of_a_line() {
    for (line, parts) in [
        (
            "Furosemide 40 mg tablet, 1 tablet in the morning",
            "Furosemide | 40 mg | tablet | 1 tablet in the morning",
        ),
        (
            "furosemide 40mg tabs take 1 tablet daily",
            "furosemide | 40mg | tabs | take 1 tablet daily",
        ),
        (
            "METOPROLOL SUCCINATE ER 50 MG TABLET - once daily",
            "METOPROLOL SUCCINATE | 50 MG | ER TABLET | once daily",
        ),
        ("Levothyroxine 88 mcg", "Levothyroxine | 88 mcg | - | -"),
        (
            "Latanoprost 0.005 % eye drops 1 drop in each eye at bedtime",
            "Latanoprost | 0.005 % | eye drops | 1 drop in each eye at bedtime",
        ),
        (
            "Vitamin D3 25 mcg capsule with breakfast",
            "Vitamin D3 | 25 mcg | capsule | with breakfast",
        ),
        ("Vitamin B 12 1,000 mcg tablet", "Vitamin B 12 | 1,000 mcg | tablet | -"),
        ("5-HTP 100 mg capsule", "5-HTP | 100 mg | capsule | -"),
        ("Coenzyme Q10 100 mg softgel daily", "Coenzyme Q10 | 100 mg | softgel | daily"),
        ("Furosemide tablet 40 mg 1 daily", "Furosemide | 40 mg | tablet | 1 daily"),
        ("Aspirin daily", "Aspirin | - | - | daily"),
        ("Acetaminophen as needed for pain", "Acetaminophen | - | - | as needed for pain"),
        ("Warfarin 1 tablet in the evening", "Warfarin | - | - | 1 tablet in the evening"),
        ("Furosemide (Lasix) 20 mg tablet", "Furosemide (Lasix) | 20 mg | tablet | -"),
        ("Furosemide (20 mg) tablet, (1 daily)", "Furosemide | 20 mg | tablet | (1 daily)"),
        ("Warfarin ½ tablet daily", "Warfarin | - | - | ½ tablet daily"),
        (
            "Digoxin .125 mg tablet, .5 tablet daily",
            "Digoxin | 0.125 mg | tablet | 0.5 tablet daily",
        ),
    ] {
        assert_eq!(told(line), parts, "{line}");
    }
}

#[test]
fn combinations_and_liquids_keep_every_strength() {
    for (line, strength) in [
        ("Carbidopa-levodopa 25/100 mg tablet", "25/100 mg"),
        ("Carbidopa-levodopa 25 mg/100 mg tablet", "25 mg/100 mg"),
        ("Carbidopa-levodopa 25 mg / 100 mg tablet", "25 mg / 100 mg"),
        ("Carbidopa-levodopa 25-100 mg tablet", "25-100 mg"),
        ("Acetaminophen 160 mg/5 mL suspension, 10 mL at night", "160 mg/5 mL"),
        ("Insulin glargine 100 units/mL pen, at bedtime", "100 units/mL"),
        ("Heparin 5,000 units injection", "5,000 units"),
    ] {
        assert_eq!(understood(line).strength.as_deref(), Some(strength), "{line}");
    }
}

#[test]
fn an_unknown_unit_is_kept_as_it_stands() {
    let it = understood("Quillamine 300 frobs tablet, once daily");
    assert_eq!((it.name.as_str(), it.strength.as_deref()), ("Quillamine", Some("300 frobs")));
    assert_eq!(
        (it.form.as_deref(), it.directions.as_deref()),
        (Some("tablet"), Some("once daily"))
    );
}

#[test]
fn bullets_numbers_boxes_and_tabs_fall_away() {
    for line in [
        "- Furosemide 40 mg tablet, once daily",
        "• Furosemide 40 mg tablet, once daily",
        "12. Furosemide 40 mg tablet, once daily",
        "3) Furosemide 40 mg tablet, once daily",
        "[ ] Furosemide 40 mg tablet, once daily",
        "\t1.\t Furosemide 40 mg tablet, once daily  ",
        "Furosemide\t40 mg\ttablet\tonce daily",
        "Furosemide | 40 mg | tablet | once daily",
    ] {
        assert_eq!(told(line), "Furosemide | 40 mg | tablet | once daily", "{line}");
    }
}

#[test]
fn stopped_is_what_the_line_says_plainly() {
    for line in [
        "STOP Lisinopril 10 mg tablet",
        "STOP: Lisinopril 10 mg tablet",
        "Stop taking Lisinopril 10 mg tablet",
        "Lisinopril 10 mg tablet STOPPED",
        "Lisinopril 10 mg tablet - stopped",
        "Lisinopril 10 mg tablet (discontinued)",
        "Lisinopril 10 mg tablet, stopped on 24 Nov",
        "- Lisinopril 10 mg tablet – STOP TAKING",
    ] {
        let it = understood(line);
        assert!(it.stopped, "{line}");
        assert_eq!(
            (it.name.as_str(), it.form.as_deref()),
            ("Lisinopril", Some("tablet")),
            "{line}"
        );
    }
    for line in [
        "Amoxicillin 500 mg capsule, 1 capsule three times a day, stop after 7 days",
        "Prednisone 5 mg tablet, do not stop",
        "Warfarin 2.5 mg tablet, one daily until stopped by the clinic",
    ] {
        assert!(!understood(line).stopped, "{line}");
    }
}

#[test]
fn a_list_is_read_line_by_line() {
    assert_eq!(read("").map(|it| it.len()), Ok(0));
    assert_eq!(read(" \n\t\n").map(|it| it.len()), Ok(0));
    let read_back = read("Warfarin 2.5 mg\r\n\n  • Furosemide\t40 mg\n").expect("read");
    let words: Vec<_> = read_back.iter().map(|it| it.0.as_str()).collect();
    assert_eq!(words, ["Warfarin 2.5 mg", "• Furosemide 40 mg"], "a line's own words");
    let long = |count: usize| "Warfarin 2.5 mg\n".repeat(count);
    assert_eq!(read(&long(MOST)).map(|it| it.len()), Ok(MOST));
    assert_eq!(read(&long(MOST + 1)).map_err(|it| it.line), Err(MOST + 1));
    let control = read("Warfarin\nFuro\u{7}semide").map_err(|it| it.line);
    assert_eq!(control, Err(2));
}

proptest! {
    #[test]
    fn nothing_pasted_breaks_it_and_no_line_is_lost(text in "\\PC{0,80}") {
        let it = understood(&text);
        prop_assert!(!it.name.is_empty() || text.trim().is_empty() || it.stopped || text.trim().len() < 4);
        let _ = read(&text);
    }
}
