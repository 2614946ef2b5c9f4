//! Amounts of a substance, and which of them may be added. Weights (mcg, mg, g) turn into each
//! other exactly; anything else is added only to the same unit. Nothing is rounded: what does not
//! come out to a thousandth is not told.
//!
//! Weights are reckoned in thousandths of a microgram (SI Brochure, 9th edition: the prefixes).

use crate::base::quantity::Quantity;
use std::{cmp::Ordering, fmt};

/// "500 mg"
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Measured {
    pub amount: Quantity,
    pub unit: String,
}

/// More than any sum of a day: what is above was mistyped somewhere.
const MOST: i128 = 1_000_000_000_000;

impl Measured {
    pub fn new(amount: Quantity, unit: &str) -> Measured {
        Measured { amount, unit: spelled(unit) }
    }

    /// The amount in so many counted pieces, where it stands in `per` of them. `None` where it
    /// does not come out.
    pub fn in_pieces(&self, pieces: Quantity, per: Quantity) -> Option<Measured> {
        let whole = i128::from(self.amount.in_thousandths()) * i128::from(pieces.in_thousandths());
        let per = i128::from(per.in_thousandths());
        let even = per > 0 && whole % per == 0 && whole / per <= MOST;
        let amount = even.then(|| thousandths(whole / per)).flatten()?;
        Some(Measured { amount, unit: self.unit.clone() })
    }

    /// Which is less; `None` where the two are not of one measure.
    pub fn compared(&self, other: &Measured) -> Option<Ordering> {
        match (self.weight(), other.weight()) {
            (Some(one), Some(other)) => Some(one.cmp(&other)),
            (None, None) if self.unit == other.unit => Some(self.amount.cmp(&other.amount)),
            _ => None,
        }
    }

    fn weight(&self) -> Option<i128> {
        Some(i128::from(self.amount.in_thousandths()) * weight_of(&self.unit)?)
    }
}

impl fmt::Display for Measured {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}\u{a0}{}", self.amount, self.unit)
    }
}

fn thousandths(count: i128) -> Option<Quantity> {
    i64::try_from(count).ok().map(Quantity::thousandths)
}

/// In thousandths of a microgram, for a thousandth of the unit.
fn weight_of(unit: &str) -> Option<i128> {
    match unit {
        "mcg" => Some(1),
        "mg" => Some(1_000),
        "g" => Some(1_000_000),
        _ => None,
    }
}

/// One spelling of a unit: "MG", "milligrams" and "mg" are the same. What is not known stays as
/// it was typed, in small letters.
fn spelled(unit: &str) -> String {
    let lower = unit.trim().to_lowercase();
    match lower.as_str() {
        "µg" | "μg" | "ug" | "microgram" | "micrograms" => "mcg",
        "milligram" | "milligrams" => "mg",
        "gm" | "gram" | "grams" => "g",
        "ml" | "milliliter" | "milliliters" => "mL",
        "unit" => "units",
        other => other,
    }
    .to_owned()
}

/// The sum of each measure among these: the weights first, then each other unit by itself.
pub fn sums(all: &[Measured]) -> Vec<Measured> {
    let mut sums = Vec::from_iter(weights(all));
    for it in all.iter().filter(|it| it.weight().is_none()) {
        match sums.iter_mut().find(|sum| sum.unit == it.unit) {
            Some(sum) => sum.amount = sum.amount + it.amount,
            None => sums.push(it.clone()),
        }
    }
    sums
}

/// In the unit that all have; else in mg, or in mcg where mg does not come out.
fn weights(all: &[Measured]) -> Option<Measured> {
    let of_weight: Vec<_> = all.iter().filter_map(|it| Some((it, it.weight()?))).collect();
    let (first, _) = of_weight.first()?;
    let sum: i128 = of_weight.iter().map(|(_, weight)| weight).sum();
    let one_unit = of_weight.iter().all(|(it, _)| it.unit == first.unit);
    let unit = match one_unit {
        true => first.unit.as_str(),
        false if sum % 1_000 == 0 => "mg",
        false => "mcg",
    };
    let amount = thousandths(sum / weight_of(unit)?)?;
    Some(Measured { amount, unit: unit.to_owned() })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn measured(typed: &str) -> Measured {
        let (amount, unit) = typed.split_once(' ').expect("an amount and a unit");
        Measured::new(Quantity::parse(amount).expect("a number").expect("some"), unit)
    }

    fn summed(all: &[&str]) -> String {
        let all: Vec<_> = all.iter().map(|it| measured(it)).collect();
        let sums = sums(&all).into_iter().map(|it| it.to_string().replace('\u{a0}', " "));
        sums.collect::<Vec<_>>().join(" and ")
    }

    #[test]
    fn weights_turn_into_each_other_exactly() {
        assert_eq!(summed(&["500 mg", "1 g"]), "1,500 mg");
        assert_eq!(summed(&["0.125 mg", "62.5 mcg"]), "187.5 mcg");
        assert_eq!(summed(&["500 mg", "325 mg"]), "825 mg");
        assert_eq!(summed(&["1 g", "0.5 g"]), "1.5 g");
        assert_eq!(summed(&["75 µg", "25 ug"]), "100 mcg");
    }

    #[test]
    fn what_is_no_weight_is_added_only_to_its_own_unit() {
        assert_eq!(summed(&["400 units", "1,000 Units", "5 mL"]), "1,400 units and 5 mL");
        assert_eq!(summed(&["400 IU", "400 units"]), "400 iu and 400 units");
        assert_eq!(measured("5 mL").compared(&measured("5 mg")), None);
        assert_eq!(measured("1 g").compared(&measured("1,000 mg")), Some(Ordering::Equal));
    }

    #[test]
    fn a_liquid_is_reckoned_by_what_stands_in_so_much_of_it() {
        let whole = |it: i64| Quantity::whole(it);
        let of = |pieces, per| measured("160 mg").in_pieces(whole(pieces), whole(per));
        assert_eq!(of(40, 5), Some(measured("1,280 mg")));
        assert_eq!(of(1, 3), None, "a third of it does not come out");
        assert_eq!(of(1, 0), None);
    }
}
