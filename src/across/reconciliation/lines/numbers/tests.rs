//! For any number and any unit, in any place of a line: what is understood is what was written, or
//! the line is not understood. The values are reckoned here by themselves, in billionths.
//!
//! ISMP's list of error-prone notations has ".5 mg" (read as 5), "5.0 mg" (read as 50) and a name
//! that runs into its number; the Joint Commission's "Do Not Use" list has the first two.

use super::super::{Understood, understood};
use crate::across::reconciliation::{
    matching::{Ours, Pairs, lay},
    settled::Class,
};
use proptest::{prelude::*, sample::select};

const NAMES: [&str; 5] =
    ["Digoxin", "Warfarin", "Metoprolol succinate ER", "Vitamin D3", "Insulin glargine"];
const UNITS: [&str; 9] = ["mg", "mcg", "g", "mL", "units", "mEq", "%", "mg/mL", "frobs"];

/// A number with its value in billionths: whole part, part behind the point, and how it is written.
fn number() -> impl Strategy<Value = (String, u128)> {
    (prop_oneof![Just(0_u128), 1..100_u128, 1..20_000_u128], "[0-9]{0,5}", any::<(bool, bool)>())
        .prop_filter_map("a zero", |(whole, rest, (naked, commas))| {
            let value = whole * 1_000_000_000 + format!("{rest:0<9}").parse::<u128>().ok()?;
            let front = match (whole, commas) {
                (0, _) if naked && !rest.is_empty() => String::new(),
                (1000.., true) => format!("{},{:03}", whole / 1000, whole % 1000),
                _ => whole.to_string(),
            };
            let written = if rest.is_empty() { front } else { format!("{front}.{rest}") };
            (value > 0).then_some((written, value))
        })
}

/// The value of the first number of a text, in billionths.
fn value(text: &str) -> Option<u128> {
    let number: String = text
        .chars()
        .take_while(|it| it.is_ascii_digit() || ".,".contains(*it))
        .filter(|it| *it != ',')
        .collect();
    let (whole, rest) = number.split_once('.').unwrap_or((&number, ""));
    Some(whole.parse::<u128>().ok()? * 1_000_000_000 + format!("{rest:0<9}").parse::<u128>().ok()?)
}

/// Every line in which a number can be written: as the strength, and as how much is taken.
fn lines(name: &str, number: &str, unit: &str) -> Vec<String> {
    vec![
        format!("{name} {number} {unit}"),
        format!("{name} {number} {unit} tablet, 1 tablet daily"),
        format!("- {name}: {number} {unit} tablet daily"),
        format!("7. {name} tablet {number} {unit}"),
        format!("{name}\t{number} {unit}\ttablet"),
        format!("{name}, {number} {unit}, once daily"),
        format!("{name} {number}{unit} tablet"),
        format!("{name} ({number} {unit})"),
        format!("{name} tablet, take {number} {unit} daily"),
        format!("{name} - {number} {unit}."),
    ]
}

fn shown(it: &Understood) -> String {
    [Some(&it.name), it.strength.as_ref(), it.form.as_ref(), it.directions.as_ref()]
        .into_iter()
        .flatten()
        .map(String::as_str)
        .collect::<Vec<_>>()
        .join(" ; ")
}

/// Every number that was understood, with its value.
fn values(it: &Understood) -> Vec<u128> {
    let text = shown(it);
    let starts = text.char_indices().filter(|(at, letter)| {
        let before = text[..*at].chars().last();
        letter.is_ascii_digit()
            && !before.is_some_and(|it| it.is_alphanumeric() || ".,".contains(it))
    });
    starts.filter_map(|(at, _)| value(&text[at..])).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2_000))]

    #[test]
    fn a_number_keeps_its_value_and_is_shown_with_its_zero(
        (written, worth) in number(), unit in select(&UNITS[..]), name in select(&NAMES[..]),
    ) {
        for line in lines(name, &written, unit) {
            let it = understood(&line);
            let glued_strange = unit == "frobs" && line.contains(&format!("{written}frobs"));
            prop_assert!(it.unclear.is_none() || glued_strange, "{line}: {:?}", it.unclear);
            prop_assert!(it.unclear.is_some() || values(&it).contains(&worth), "{line}: {}", shown(&it));
            let text = shown(&it);
            prop_assert!(!text.contains(" .") && !text.starts_with('.'), "{line}: {text}");
        }
    }

    #[test]
    fn a_damaged_number_is_refused(
        (written, _) in number(), unit in select(&UNITS[..8]), name in select(&NAMES[..]),
        at in any::<prop::sample::Index>(), how in 0..7_usize,
    ) {
        let inner = at.index(written.len().max(2) - 1) + 1;
        prop_assume!(inner < written.len());
        let (one, other) = written.split_at(inner);
        let damaged = match how {
            0 => format!("{one} {other}"),
            1 => format!("{one}\u{a0}{other}"),
            2 => format!("{one}\u{2009}{other}"),
            3 => format!("{one}\u{b7}{other}"),
            4 => format!("{one}\u{200b}{other}"),
            5 => format!("{one}O{other}"),
            _ => format!("{one}..{other}"),
        };
        for line in lines(name, &damaged, unit) {
            let it = understood(&line);
            prop_assert!(it.unclear.is_some(), "{line}: {}", shown(&it));
            prop_assert_eq!(it.strength.or(it.directions), None, "{}", line);
        }
    }

    #[test]
    fn the_comparison_says_the_same_only_of_the_same_value(
        (theirs, worth) in number(), (ours, ours_worth) in number(), alike in any::<bool>(), unit in select(&UNITS[..]),
    ) {
        // Often the two differ only by their point, as where one was lost.
        let (ours, ours_worth) = match alike {
            true => (theirs.trim_start_matches(['0', '.']).to_owned(), value(theirs.trim_start_matches(['0', '.'])).unwrap_or(0)),
            false => (ours, ours_worth),
        };
        let how = |number: &str| format!("{number} {unit} daily");
        let said = Ours { name: "Digoxin".into(), strength: Some(format!("{ours} {unit}")), said: vec![how(&ours)], ..Ours::default() };
        let line = format!("Digoxin {theirs} {unit}, {}", how(&theirs));
        let rows = lay(&[understood(&line)], &[said], &Pairs::default());
        prop_assert!(rows[0].class != Class::Same || worth == ours_worth, "{line} beside {ours}");
    }

    #[test]
    fn nothing_pasted_loses_a_number(text in "([A-Za-z]{1,6}|[0-9.,½/]{1,5}|mg|mL|tablet|daily|-|;|  ){0,10}") {
        let it = understood(&text);
        let mut numbers = [crate::base::number::all(&shown(&it)), crate::base::number::all(&text)];
        numbers.iter_mut().for_each(|it| it.sort());
        prop_assert!(it.unclear.is_some() || it.stopped || numbers[0] == numbers[1], "{text}: {}", shown(&it));
    }
}

#[test]
fn what_cannot_be_read_for_sure_is_told_with_its_words() {
    for (line, says) in [
        ("Warfarin 1 0 mg tablet", "\"1 0\" may be one number or two"),
        ("Warfarin 1 0mg tablet", "\"1 0mg\" may be one number or two"),
        ("Warfarin 0 .5 mg", "\"0 .5\" may be one number or two"),
        ("Warfarin . 5 mg", "\". 5\" may be one number or two"),
        ("2. 5 mg Warfarin", "\"2. 5\" may be one number or two"),
        ("Vitamin K 1 0 mg", "\"1 0\" may be one number or two"),
        ("every 4 6 hours", "\"4 6\" may be one number or two"),
        ("Warfarin 5. mg", "\"5. mg\" has nothing behind its point"),
        ("Warfarin 1,5 mg", "\"1,5\" cannot be read for sure"),
        ("Warfarin 1O mg", "\"1O\" cannot be read for sure"),
        ("Warfarin l0 mg", "\"l0 mg\" has no number that can be read"),
        ("Warfarin O.5 mg", "\"O.5\" runs a name and a number together"),
        ("Warfarin l mg", "\"l mg\" has no number that can be read"),
        ("Warfarin 0\u{b7}5 mg", "has a mark in it that may be a point or a digit"),
        ("Warfarin 0’5 mg", "\"0’5\" cannot be read for sure"),
        ("Digoxin.125 mg", "\"Digoxin.125\" runs a name and a number together"),
        ("Inderal40 mg", "\"Inderal40\" runs a name and a number together"),
        ("Warfarin 5mg2 tablet", "\"5mg2\" cannot be read for sure"),
        ("Warfarin mg tablet", "\"Warfarin mg\" has no number that can be read"),
        ("Warfarin 0 mg tablet", "\"0 mg\" has no number that can be read"),
        ("Warfarin 1e3 mg", "\"1e3\" cannot be read for sure"),
        ("Warfarin ５ mg", "has a mark in it that may be a point or a digit"),
    ] {
        let it = understood(line);
        let why = it.unclear.clone().unwrap_or_else(|| panic!("{line}: {}", shown(&it)));
        assert!(why.contains(says), "{line}: {why}");
    }
}

#[test]
fn a_name_with_a_number_a_date_and_a_fraction_are_read() {
    for line in [
        "Vitamin B 12 1,000 mcg tablet",
        "Omega 3 1000 mg capsule",
        "Vitamin B12 1000mcg tablet",
        "10. 5-HTP 100 mg capsule",
        "3. Eye drops, 1 drop in each eye",
        "Coenzyme Q10 100 mg softgel",
        "Insulin NPH 70/30 100 units/mL, 10 units at 8:30am",
        "Penicillin G 500 mg tablet",
        "Furosemide 20 mg tablet, take 1 1/2 tablets every 12 hours from Nov 24 2026",
        "Furosemide 20 mg tablet, 1½ tablets on 11/24/2026, 24.11.2026 and 2026-11-24",
        "Acetaminophen 160 mg/5 mL suspension, 2.5 mL every 4-6 hours, at most 5 doses in 24 hours",
        "Carbidopa-levodopa 25 mg/100 mg tablet",
        "Fentanyl 25 mcg/hr patch every 72hrs",
        "Aspirin EC 81mg tab 1 daily x7d",
        "Alendronate 70 mg tablet, once a week on the 1st day, 2x100mg",
        "Insulin 1 million units, give one unit per mL",
        "Warfarin -5 mg tablet. Take 1. Next visit Dec 3.",
        "Tylenol #3, 1 tablet",
    ] {
        let it = understood(line);
        assert_eq!(it.unclear, None, "{line}: {}", shown(&it));
    }
}
