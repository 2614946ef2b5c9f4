//! Where two things that are written down do not agree: a substance that is not borne and one that
//! is taken, a medicine and what it is for, a birth date on a paper and the one in the record.
//!
//! A row is found by names alone, letter for letter but for capitals, or by a pair that someone
//! confirmed. It holds both sides and no word on which is right.

use crate::{
    across::reconciliation::{Pairs, model::SecondList},
    base::day,
    record::{
        allergies::model::{Allergy, Nature},
        conditions::model::Condition,
        medicines::{ingredients::model::Ingredient, model::Medicine},
    },
};
use time::Date;

/// What is read of the record, as far as the reader sees it.
#[derive(Default)]
pub struct Written {
    pub allergies: Vec<Allergy>,
    /// Taken and on hold.
    pub medicines: Vec<Medicine>,
    pub ingredients: Vec<Ingredient>,
    /// Those that are over too.
    pub conditions: Vec<Condition>,
    pub lists: Vec<SecondList>,
    pub born: Option<Date>,
    pub pairs: Pairs,
}

#[derive(Clone, Debug, PartialEq)]
pub enum Row {
    /// By the medicine's own name, or by an ingredient of it.
    NotBorne {
        allergy: Allergy,
        medicine: Medicine,
        ingredient: Option<Ingredient>,
    },
    ForWhatIsOver {
        medicine: Medicine,
        condition: Condition,
    },
    BornOtherwise {
        list: SecondList,
        paper: Date,
        record: Date,
    },
    ForNothing {
        medicine: Medicine,
    },
}

impl Written {
    /// All rows, those that somebody is to ask about in front.
    pub fn rows(&self) -> Vec<Row> {
        let mut rows = self.not_borne();
        rows.extend(self.for_what_is_over());
        rows.extend(self.born_otherwise());
        let silent = self.medicines.iter().filter(|it| it.purpose.is_none());
        rows.extend(silent.map(|it| Row::ForNothing { medicine: it.clone() }));
        rows
    }

    pub fn not_borne(&self) -> Vec<Row> {
        let mut rows = Vec::new();
        for (allergy, medicine) in
            self.allergies.iter().flat_map(|it| self.medicines.iter().map(move |of| (it, of)))
        {
            let names = |name: &str| self.names(allergy.substance.as_str(), name);
            let mut inside = self.ingredients.iter().filter(|it| it.medicine_id == medicine.id);
            let ingredient = inside.find(|it| names(it.name.as_str())).cloned();
            if ingredient.is_some() || names(medicine.name.as_str()) {
                let (allergy, medicine) = (allergy.clone(), medicine.clone());
                rows.push(Row::NotBorne { allergy, medicine, ingredient });
            }
        }
        rows
    }

    /// The same name, the one as whole words in the other, or a confirmed pair.
    fn names(&self, substance: &str, name: &str) -> bool {
        let (one, other) = (words(substance), words(name));
        self.pairs.same(substance, name) && !one.is_empty()
            || stands_in(&one, &other)
            || stands_in(&other, &one)
    }

    fn for_what_is_over(&self) -> Vec<Row> {
        let same = |it: &Condition, purpose: &str| words(it.name.as_str()) == words(purpose);
        let row = |medicine: &Medicine| {
            let purpose = medicine.purpose.as_ref()?.as_str();
            let of: Vec<_> = self.conditions.iter().filter(|it| same(it, purpose)).collect();
            let stands = of.iter().any(|it| it.is_standing());
            let condition = of.into_iter().find(|it| !it.is_standing()).filter(|_| !stands)?;
            Some(Row::ForWhatIsOver { medicine: medicine.clone(), condition: condition.clone() })
        };
        self.medicines.iter().filter_map(row).collect()
    }

    fn born_otherwise(&self) -> Vec<Row> {
        let row = |list: &SecondList| {
            let (paper, record) = (list.born?, self.born?);
            let differs = paper != record && !list.is_struck();
            differs.then(|| Row::BornOtherwise { list: list.clone(), paper, record })
        };
        self.lists.iter().filter_map(row).collect()
    }
}

/// In small letters, without marks between them.
fn words(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    let words = lower.split(|it: char| !it.is_alphanumeric()).filter(|it| !it.is_empty());
    words.map(str::to_owned).collect()
}

fn stands_in(short: &[String], long: &[String]) -> bool {
    !short.is_empty() && long.windows(short.len()).any(|it| it == short)
}

impl Row {
    /// Its name on the page: the same two things, the same name.
    pub fn key(&self) -> String {
        match self {
            Row::NotBorne { allergy, medicine, .. } => {
                format!("allergy-{}-medicine-{}", allergy.id, medicine.id)
            }
            Row::ForWhatIsOver { medicine, condition } => {
                format!("condition-{}-medicine-{}", condition.id, medicine.id)
            }
            Row::BornOtherwise { list, .. } => format!("list-{}", list.id),
            Row::ForNothing { medicine } => format!("medicine-{}", medicine.id),
        }
    }

    /// Both sides in one line.
    pub fn headline(&self) -> String {
        let [one, other] = self.sides();
        format!("{one}; {other}")
    }

    pub fn sides(&self) -> [String; 2] {
        match self {
            Row::NotBorne { allergy, medicine, ingredient } => {
                let within = match ingredient {
                    Some(it) if !same_name(it, medicine) => format!(", with {} in it", it.name),
                    _ => String::new(),
                };
                let reaction = allergy.reaction.as_ref().map(|it| format!(": {it}"));
                let reaction = reaction.unwrap_or_default();
                [
                    format!("{} is listed as {}{reaction}", allergy.substance, noun(allergy)),
                    format!(
                        "{} is on the list of medicines ({}){within}",
                        medicine.title(),
                        medicine.status
                    ),
                ]
            }
            Row::ForWhatIsOver { medicine, condition } => {
                let since = condition.ended().map(|it| format!(" since {it}")).unwrap_or_default();
                let by = condition.over_said_by.as_ref().map(|it| format!(", said by {it}"));
                [
                    format!(
                        "{} is on the list of medicines, for {}",
                        medicine.title(),
                        condition.name
                    ),
                    format!(
                        "{} is marked as over{since}{}",
                        condition.name,
                        by.unwrap_or_default()
                    ),
                ]
            }
            Row::BornOtherwise { list, paper, record } => [
                format!("Born {}, as the {} says", day::words(*paper), list.title()),
                format!("Born {}, as the record says", day::words(*record)),
            ],
            Row::ForNothing { medicine } => [
                format!("{} is on the list of medicines", medicine.title()),
                "What it is for is not written down".to_owned(),
            ],
        }
    }

    /// What both sides name.
    pub fn names(&self) -> Vec<(&'static str, i64)> {
        match self {
            Row::NotBorne { allergy, medicine, .. } => {
                vec![("allergy", allergy.id.into()), ("medicine", medicine.id.into())]
            }
            Row::ForWhatIsOver { medicine, condition } => {
                vec![("condition", condition.id.into()), ("medicine", medicine.id.into())]
            }
            Row::BornOtherwise { .. } | Row::ForNothing { .. } => vec![self.about()],
        }
    }

    /// The item a question of it is about.
    pub fn about(&self) -> (&'static str, i64) {
        match self {
            Row::NotBorne { medicine, .. }
            | Row::ForWhatIsOver { medicine, .. }
            | Row::ForNothing { medicine } => ("medicine", medicine.id.into()),
            Row::BornOtherwise { list, .. } => ("second_list", list.id.into()),
        }
    }
}

fn noun(allergy: &Allergy) -> &'static str {
    match allergy.nature {
        Nature::Allergy => "an allergy",
        Nature::Intolerance => "an intolerance",
        Nature::NotKnownWhich => "an allergy or intolerance",
    }
}

fn same_name(ingredient: &Ingredient, medicine: &Medicine) -> bool {
    words(ingredient.name.as_str()) == words(medicine.name.as_str())
}

#[cfg(test)]
mod tests;
