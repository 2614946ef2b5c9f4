//! What stands beside a sum: the lowest limit that someone typed from a label in the house, with
//! whose label it is; only where no label's was typed, the general adult figure for self-care.
//!
//! The general figures are in `general.json`, each with its source. They are shown and compared
//! with nothing: whether a sum is right is not said anywhere.

use crate::{
    base::quantity::Quantity,
    record::medicines::{
        ingredients::{measure::Measured, model::Ingredient},
        model::Medicine,
    },
};
use std::cmp::Ordering;

/// A limit for 24 hours, and whose it is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Limit {
    pub most: Measured,
    pub whose: String,
}

#[derive(Default, serde::Deserialize)]
struct Figures {
    as_of: String,
    figures: Vec<Figure>,
}

#[derive(serde::Deserialize)]
struct Figure {
    names: Vec<String>,
    most: i64,
    unit: String,
    source: String,
}

/// The limits to show beside an ingredient of these names.
pub fn beside(names: &[String], labels: &[(&Medicine, &Ingredient)]) -> Vec<Limit> {
    let typed = lowest(labels);
    if typed.is_empty() { Vec::from_iter(general(names)) } else { typed }
}

/// Of each measure the lowest: a limit in mg and one in mL are two.
fn lowest(labels: &[(&Medicine, &Ingredient)]) -> Vec<Limit> {
    let mut lowest: Vec<Limit> = Vec::new();
    for (medicine, ingredient) in labels {
        let Some(most) = ingredient.label_most() else { continue };
        let limit = Limit { most, whose: format!("label of {}", medicine.title()) };
        let same = lowest.iter_mut().find(|it| it.most.compared(&limit.most).is_some());
        match same {
            Some(it) if limit.most.compared(&it.most) == Some(Ordering::Less) => *it = limit,
            Some(_) => {}
            None => lowest.push(limit),
        }
    }
    lowest
}

fn general(names: &[String]) -> Option<Limit> {
    let all = figures();
    let is = |it: &&Figure| {
        it.names.iter().any(|known| names.iter().any(|name| name.eq_ignore_ascii_case(known)))
    };
    let figure = all.figures.iter().find(is)?;
    Some(Limit {
        most: Measured::new(Quantity::whole(figure.most), &figure.unit),
        whose: format!(
            "general adult figure, self-care, from {}, as of {}",
            figure.source, all.as_of
        ),
    })
}

/// A test reads the file whole; it is built into the program.
fn figures() -> Figures {
    serde_json::from_str(include_str!("general.json")).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(name: &str) -> String {
        let limit = general(&[name.to_owned()]);
        limit.map_or_else(String::new, |it| {
            format!("{}; {}", it.most, it.whose).replace('\u{a0}', " ")
        })
    }

    /// 21 CFR 201.326 and the product labels: acetaminophen 4,000 mg, ibuprofen 1,200, naproxen
    /// sodium 660, aspirin 325 mg x 12 = 3,900.
    #[test]
    fn the_general_figures_are_those_of_their_sources() {
        let acetaminophen =
            "4,000 mg; general adult figure, self-care, from 21 CFR 201.326, as of 2026-11-25";
        assert_eq!(told("Acetaminophen"), acetaminophen);
        assert!(told("IBUPROFEN").starts_with("1,200 mg; general adult figure"));
        assert!(told("Naproxen sodium").starts_with("660 mg; "));
        assert!(told("aspirin").starts_with("3,900 mg; "));
        let twelve = Measured::new(Quantity::whole(325), "mg");
        let twelve = twelve.in_pieces(Quantity::whole(12), Quantity::ONE).expect("comes out");
        assert!(told("aspirin").starts_with(&twelve.to_string().replace('\u{a0}', " ")));
        assert_eq!(told("Naproxen"), "", "the figure is of the sodium salt");
        assert_eq!(told("Warfarin"), "");
    }
}
