//! What comes together of an ingredient, with the figures of named sources.

use super::*;
use crate::base::{
    clock::Instant,
    ids::{MedicineId, StepId},
    quantity::Quantity,
    text::Line,
};
use crate::record::medicines::{
    ingredients::model::Entry,
    model::{Label, Status, Supply},
    schedule::{model::Rhythm, repeat::Weekdays, times::Times},
};
use time::macros::date;

const TODAY: Date = date!(2026 - 11 - 25);

fn line(text: &str) -> Line {
    Line::from(text.to_owned())
}

fn medicine(id: i64, name: &str) -> Medicine {
    let label = Label {
        name: line(name),
        strength: None,
        form: None,
        dose: Some(line("as the label says")),
        route: None,
        times: None,
        purpose: None,
        prescriber: None,
        started_on: None,
        as_needed: false,
        label_limit: None,
        supply: Supply::OverTheCounter,
        source: None,
    };
    Medicine { id: id.into(), ..Medicine::new(1.into(), label) }
}

fn step(medicine: i64, times: &str, unit: &str) -> Step {
    Step {
        id: StepId::default(),
        person_id: 1.into(),
        medicine_id: medicine.into(),
        from_on: date!(2026 - 11 - 01),
        until_on: None,
        rhythm: Rhythm::Days,
        every: 1,
        weekdays: Weekdays::default(),
        times: Times::from(times.to_owned()),
        unit: line(unit),
        least_hours: None,
        most_a_day: None,
        struck: false,
        version: 1,
    }
}

/// "500 mg", in one tablet.
fn ingredient(medicine: i64, name: &str, amount: &str, most: Option<&str>) -> Ingredient {
    let read = |text: &str| {
        let (number, unit) = text.split_once(' ').expect("a number and a unit");
        (Quantity::parse(number).expect("a number").expect("some"), line(unit))
    };
    let entry = Entry {
        name: line(name),
        amount: Some(read(amount)),
        per: Quantity::ONE,
        counted: line("tablet"),
        most: most.map(read),
    };
    Ingredient::new(MedicineId::from(medicine), entry, (1.into(), Instant::from_unix(0)))
}

fn written(ingredients: Vec<Ingredient>, steps: Vec<Step>) -> Written {
    let medicines = vec![medicine(1, "Plain tablets"), medicine(2, "Cold and sleep")];
    Written { medicines, steps, ingredients, pairs: Pairs::default() }
}

/// What the page tells of the ingredient that stands first.
fn told(written: &Written) -> String {
    let together = written.together(TODAY);
    let first = &together[0];
    let limits = first.limits.iter().map(|it| format!("{}, {}", it.most, it.whose));
    let parts = [
        format!("{} in {}", first.names.join("/"), first.medicines()),
        first.sum().unwrap_or_else(|| "no sum".into()),
        first.apart().map(|it| format!("apart {it}")).unwrap_or_default(),
        format!("out {}", first.left_out().join(", ")),
        limits.collect::<Vec<_>>().join(" "),
    ];
    parts.join("; ").replace('\u{a0}', " ")
}

fn two(first: &str, second: &str, most: Option<&str>) -> Written {
    written(
        vec![
            ingredient(1, "Acetaminophen", first, most),
            ingredient(2, "acetaminophen", second, None),
        ],
        vec![step(1, "morning 2, evening 2", "tablet"), step(2, "bedtime 2", "tablet")],
    )
}

/// 21 CFR 201.326: 4,000 mg. What comes to it and what comes to 1 mg more read the same but for
/// the figure: nothing here says which is which.
#[test]
fn four_thousand_and_one_more_read_alike() {
    let at = told(&two("500 mg", "1,000 mg", None));
    let above = told(&two("500 mg", "1,000.5 mg", None));
    assert_eq!(
        at,
        "Acetaminophen in 2; 4,000 mg; ; out ; 4,000 mg, general adult figure, self-care, from 21 CFR 201.326, as of 2026-11-25"
    );
    assert_eq!(above, at.replacen("4,000 mg", "4,001 mg", 1));
}

#[test]
fn the_lowest_limit_of_a_label_in_the_house_stands_for_the_general_figure() {
    let one = told(&two("500 mg", "325 mg", Some("3 g")));
    assert!(one.ends_with("; 2,650 mg; ; out ; 3 g, label of Plain tablets"), "{one}");
    let mut both = two("500 mg", "325 mg", Some("3 g"));
    both.ingredients[1].most = Some(Quantity::whole(2_600));
    both.ingredients[1].most_unit = Some(line("mg"));
    assert!(told(&both).ends_with("2,600 mg, label of Cold and sleep"), "{}", told(&both));
}

#[test]
fn names_confirmed_as_a_pair_are_joined() {
    let mut apart = two("500 mg", "500 mg", None);
    apart.ingredients[1].name = line("Paracetamol");
    assert_eq!(apart.together(TODAY).len(), 2);
    let pairs = Pairs::of([("paracetamol", "Acetaminophen")]);
    let joined = Written { pairs, ..apart };
    assert!(told(&joined).starts_with("Acetaminophen/Paracetamol in 2; 3,000 mg"));
    // A third that is a pair with each of two joins them, whatever the order.
    let bridge = Written {
        medicines: [1, 2, 3].map(|it| medicine(it, ["A", "B", "C"][it as usize - 1])).into(),
        steps: Vec::new(),
        ingredients: Vec::new(),
        pairs: Pairs::of([("A", "C"), ("B", "C")]),
    };
    assert_eq!(bridge.together(TODAY).len(), 1);
}

#[test]
fn what_is_not_said_in_numbers_is_named_and_not_added() {
    let mut some = two("500 mg", "500 mg", None);
    some.steps.pop();
    assert!(told(&some).contains("; 2,000 mg; ; out Cold and sleep; "), "{}", told(&some));
    let said = some.together(TODAY)[0].taken[1].unsaid.join(" | ");
    assert_eq!(said, "not said in numbers: as the label says");
    // Counted in something else than the label says.
    some.steps.push(step(2, "bedtime 10", "mL"));
    let said = some.together(TODAY)[0].taken[1].unsaid.join(" | ");
    assert_eq!(said, "10 mL a day, but the label says 500 mg in 1 tablet");
    // No ingredient written down: there by its own name.
    let nameless = Written {
        medicines: vec![medicine(1, "Ibuprofen"), medicine(2, "ibuprofen")],
        ..written(
            vec![ingredient(1, "Ibuprofen", "200 mg", None)],
            vec![step(1, "noon 1", "tablet")],
        )
    };
    let told = told(&nameless);
    assert!(told.starts_with("Ibuprofen in 2; 200 mg; ; out ibuprofen; 1,200 mg"), "{told}");
}

#[test]
fn other_measures_stand_beside_the_sum_and_what_is_on_hold_apart() {
    let mut mixed = two("500 mg", "20 mL", None);
    assert!(told(&mixed).contains("; 2,000 mg; apart 40 mL; "), "{}", told(&mixed));
    mixed.medicines[1].status = Status::OnHold;
    let told = told(&mixed);
    assert!(told.starts_with("Acetaminophen in 2; 2,000 mg; ; "), "{told}");
    let together = mixed.together(TODAY);
    assert_eq!((together[0].held.len(), together[0].taken_in()), (1, 1));
}
