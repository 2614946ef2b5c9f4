//! Which rows are found, and which two names count as one.

use super::*;
use crate::base::{clock::Instant, quantity::Quantity, text::Line};
use crate::record::{
    allergies::model::{Account, Nature},
    conditions::{model::Entry as Told, wish::WantsTold},
    medicines::{
        ingredients::model::Entry,
        model::{Label, Supply},
    },
};
use time::macros::date;

fn line(text: &str) -> Line {
    Line::from(text.to_owned())
}

fn medicine(name: &str, purpose: Option<&str>) -> Medicine {
    let label = Label {
        name: line(name),
        strength: None,
        form: None,
        dose: None,
        route: None,
        times: None,
        purpose: purpose.map(line),
        prescriber: None,
        started_on: None,
        as_needed: false,
        label_limit: None,
        supply: Supply::Prescription,
        source: None,
    };
    Medicine { id: 7.into(), ..Medicine::new(1.into(), label) }
}

fn allergy(substance: &str) -> Allergy {
    let nature = Nature::Allergy;
    let account =
        Account { substance: line(substance), nature, reaction: None, since: None, source: None };
    Allergy { id: 3.into(), ..Allergy::new(1.into(), account) }
}

fn ingredient(name: &str) -> Ingredient {
    let entry = Entry {
        name: line(name),
        amount: None,
        per: Quantity::ONE,
        counted: line("tablet"),
        most: None,
    };
    Ingredient::new(7.into(), entry, (1.into(), Instant::from_unix(0)))
}

fn condition(name: &str) -> Condition {
    let entry = Told {
        name: line(name),
        since: None,
        followed_by: None,
        note: None,
        source: None,
        who_may_know: None,
        wants_told: WantsTold::NotAsked,
        told_on: None,
        told_by: None,
    };
    Condition::new(1.into(), entry)
}

fn not_borne(substance: &str, name: &str, inside: Option<&str>, pairs: &[(&str, &str)]) -> usize {
    let written = Written {
        allergies: vec![allergy(substance)],
        medicines: vec![medicine(name, Some("pain"))],
        ingredients: inside.map(ingredient).into_iter().collect(),
        pairs: Pairs::of(pairs.iter().copied()),
        ..Written::default()
    };
    written.rows().len()
}

#[test]
fn a_substance_is_found_as_whole_words_or_by_a_pair() {
    for (substance, name, inside, found) in [
        ("Penicillin", "penicillin V potassium", None, 1),
        ("PENICILLIN", "Penicillin", None, 1),
        ("codeine, morphine", "Codeine", None, 1),
        ("Codeine", "Cough syrup", Some("Codeine phosphate"), 1),
        ("Penicillin", "Penicillins", None, 0),
        ("Iron", "Irone", None, 0),
        ("sulfa", "Sulfasalazine", None, 0),
        ("'", "\"", None, 0),
    ] {
        assert_eq!(not_borne(substance, name, inside, &[]), found, "{substance}, {name}");
    }
    assert_eq!(not_borne("Paracetamol", "Acetaminophen", None, &[]), 0);
    let pair = [("acetaminophen", "Paracetamol")];
    assert_eq!(not_borne("Paracetamol", "Acetaminophen", None, &pair), 1);
    assert_eq!(not_borne("Paracetamol", "Night rest", Some("Acetaminophen"), &pair), 1);
}

#[test]
fn a_medicine_for_what_is_over_and_one_for_nothing() {
    let over = condition("Pneumonia");
    let over = over.over(date!(2026 - 11 - 01), line("Dr Oyelaran"), date!(2026 - 11 - 25));
    let over = over.expect("over");
    let mut written = Written {
        medicines: vec![medicine("Doxycycline", Some("pneumonia")), medicine("Melatonin", None)],
        conditions: vec![over],
        ..Written::default()
    };
    let told: Vec<_> = written.rows().iter().map(Row::headline).collect();
    assert_eq!(
        told,
        [
            "Doxycycline is on the list of medicines, for Pneumonia; Pneumonia is marked as over since 1 November 2026, said by Dr Oyelaran",
            "Melatonin is on the list of medicines; What it is for is not written down",
        ]
    );
    // It came back: then the two agree.
    written.conditions.push(condition("Pneumonia"));
    assert_eq!(written.rows().len(), 1);
    // A part of the words is another purpose.
    written.medicines[0].purpose = Some(line("after pneumonia"));
    written.conditions.pop();
    assert_eq!(written.rows().len(), 1);
}
