//! An ingredient of one product: what its label says is in so much of it, and at most in 24 hours.

use super::super::{model::Medicine, schedule::directions::counted, stock::same_unit};
use super::measure::Measured;
use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{IngredientId, MedicineId, MemberId, PersonId},
    quantity::Quantity,
    text::Line,
};
use crate::platform::error::{Error, Result};

#[derive(Clone, Debug, PartialEq)]
pub struct Ingredient {
    pub id: IngredientId,
    pub person_id: PersonId,
    pub medicine_id: MedicineId,
    pub name: Line,
    /// How much of it, with its unit: both or none.
    pub amount: Option<Quantity>,
    pub unit: Option<Line>,
    /// In how much of the product, and what is counted there: 1 tablet, 5 mL.
    pub per: Quantity,
    pub counted: Line,
    /// The label's most of this ingredient in 24 hours: both or none.
    pub most: Option<Quantity>,
    pub most_unit: Option<Line>,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    /// Entered by mistake.
    pub struck: bool,
    pub version: i64,
}

audited!(Ingredient as "ingredient" {
    medicine_id: "", name: "name", amount: "amount", unit: "unit", per: "in how much",
    counted: "counted in", most: "label's most in 24 hours", most_unit: "unit of the most",
    entered_by: "", entered_at: "", struck: "struck",
} skip { id, person_id, version });

/// What is typed about an ingredient.
#[derive(Clone, Debug)]
pub struct Entry {
    pub name: Line,
    pub amount: Option<(Quantity, Line)>,
    pub per: Quantity,
    pub counted: Line,
    pub most: Option<(Quantity, Line)>,
}

impl Ingredient {
    pub fn new(medicine_id: MedicineId, entry: Entry, (by, at): (MemberId, Instant)) -> Ingredient {
        let ((amount, unit), (most, most_unit)) = (entry.amount.unzip(), entry.most.unzip());
        Ingredient {
            id: IngredientId::default(),
            person_id: PersonId::default(),
            medicine_id,
            name: entry.name,
            amount,
            unit,
            per: entry.per,
            counted: entry.counted,
            most,
            most_unit,
            entered_by: by,
            entered_at: at,
            struck: false,
            version: 1,
        }
    }

    /// The ingredient it was, as it is typed now.
    pub fn edited(&self, entry: Entry) -> Ingredient {
        let by = (self.entered_by, self.entered_at);
        Ingredient {
            id: self.id,
            person_id: self.person_id,
            struck: self.struck,
            version: self.version,
            ..Ingredient::new(self.medicine_id, entry, by)
        }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Ingredient> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn struck(&self) -> Ingredient {
        Ingredient { struck: true, ..self.clone() }
    }

    pub fn measured(&self) -> Option<Measured> {
        Some(Measured::new(self.amount?, self.unit.as_ref()?.as_str()))
    }

    pub fn label_most(&self) -> Option<Measured> {
        Some(Measured::new(self.most?, self.most_unit.as_ref()?.as_str()))
    }

    /// Whether the label counts the product as a schedule does.
    pub fn is_counted_in(&self, unit: &str) -> bool {
        same_unit(self.counted.as_str(), unit)
    }

    /// "500 mg in 1 tablet", in the words of the label.
    pub fn words(&self) -> Option<String> {
        let (amount, unit) = (self.amount?, self.unit.as_ref()?);
        Some(format!("{amount} {unit} in {}", counted(self.per, self.counted.as_str())))
    }

    /// "at most 4,000 mg in 24 hours"
    pub fn most_words(&self) -> Option<String> {
        let (most, unit) = (self.most?, self.most_unit.as_ref()?);
        Some(format!("at most {most} {unit} in 24 hours"))
    }
}

/// The amount that a strength says, where it says one and nothing else: "500 mg", but not
/// "25/100 mg" nor "160 mg/5 mL". Proposed in the form of a first ingredient.
pub fn plain_strength(medicine: &Medicine) -> Option<(Quantity, String)> {
    let said = medicine.strength.as_ref()?.as_str();
    let digits = |it: char| it.is_ascii_digit() || it == '.' || it == ',';
    let (number, unit) = said.split_at(said.find(|it| !digits(it))?);
    let unit = unit.trim();
    let amount = Quantity::parse(number).ok().flatten().filter(|it| !it.is_zero())?;
    let word = unit.chars().all(|it| it.is_alphabetic() || it == 'µ');
    (word && !unit.is_empty()).then(|| (amount, unit.to_owned()))
}

#[cfg(test)]
mod tests {
    use super::super::super::model::{Label, Supply};
    use super::*;

    fn of(strength: &str) -> Option<String> {
        let label = Label {
            name: Line::from("Something".to_owned()),
            strength: Some(Line::from(strength.to_owned())),
            form: None,
            dose: None,
            route: None,
            times: None,
            purpose: None,
            prescriber: None,
            started_on: None,
            as_needed: false,
            label_limit: None,
            supply: Supply::Prescription,
            source: None,
        };
        let plain = plain_strength(&Medicine::new(1.into(), label));
        plain.map(|(amount, unit)| format!("{amount} {unit}"))
    }

    #[test]
    fn only_a_plain_strength_is_proposed() {
        assert_eq!(of("500 mg").as_deref(), Some("500 mg"));
        assert_eq!(of("2.5mg").as_deref(), Some("2.5 mg"));
        assert_eq!(of("75 µg").as_deref(), Some("75 µg"));
        for unclear in ["25/100 mg", "160 mg/5 mL", "5 mg and 10 mg", "0.005 %", "strong", "5"] {
            assert_eq!(of(unclear), None, "{unclear}");
        }
    }
}
