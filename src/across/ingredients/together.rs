//! Which ingredient stands in which medicines, and what comes together of it in a day, as the
//! schedule and the labels say.
//!
//! Names are the same in any letters, or where someone confirmed the pair. A medicine whose
//! ingredients nobody wrote down stands here by its own name, and outside every sum. What is on
//! hold stands apart. Nothing is judged: a sum, a limit, whose it is.

use super::limits::{self, Limit};
use crate::{
    across::reconciliation::Pairs,
    record::medicines::{
        ingredients::{
            daily::Daily,
            measure::{Measured, sums},
            model::Ingredient,
        },
        model::Medicine,
        schedule::model::Step,
    },
};
use time::Date;

/// What is read from the record.
pub struct Written {
    pub medicines: Vec<Medicine>,
    pub steps: Vec<Step>,
    pub ingredients: Vec<Ingredient>,
    pub pairs: Pairs,
}

/// One ingredient, wherever it stands.
pub struct Together {
    /// As it is written in each, every spelling once.
    pub names: Vec<String>,
    pub taken: Vec<Product>,
    pub held: Vec<Product>,
    /// What could be added, by measure: the first is the sum, what follows stands beside it.
    pub sums: Vec<Measured>,
    pub limits: Vec<Limit>,
}

/// One medicine with the ingredient in it.
pub struct Product {
    pub medicine: Medicine,
    /// None: nobody wrote down what is in it.
    pub ingredient: Option<Ingredient>,
    /// "6 tablets a day, 500 mg in 1 tablet", and what that comes to.
    pub parts: Vec<(String, Measured)>,
    /// Why it is not in the sum, or not wholly.
    pub unsaid: Vec<String>,
}

impl Written {
    /// Every ingredient of what is taken or on hold, the one in most medicines first.
    pub fn together(&self, today: Date) -> Vec<Together> {
        let mut groups: Vec<Vec<Product>> = Vec::new();
        for product in self.medicines.iter().flat_map(|it| self.products(it, today)) {
            let (same, others): (Vec<_>, Vec<_>) = groups.into_iter().partition(|group| {
                group.iter().any(|it| self.pairs.same(it.name(), product.name()))
            });
            groups = others;
            groups.push(same.into_iter().flatten().chain([product]).collect());
        }
        let mut all: Vec<_> = groups.into_iter().map(Together::of).collect();
        all.sort_by_key(|it| (usize::MAX - it.medicines(), it.name().to_lowercase()));
        all
    }

    fn products(&self, medicine: &Medicine, today: Date) -> Vec<Product> {
        let mine = self.ingredients.iter().filter(|it| it.medicine_id == medicine.id);
        let steps = self.steps.iter().filter(|it| it.medicine_id == medicine.id).cloned();
        let daily = Daily::of(medicine, &steps.collect::<Vec<_>>(), today);
        let mut all: Vec<_> = mine.map(|it| Product::of(medicine, it, &daily)).collect();
        if all.is_empty() {
            let unsaid = vec!["what is in it is not written down".to_owned()];
            let medicine = medicine.clone();
            all.push(Product { medicine, ingredient: None, parts: Vec::new(), unsaid });
        }
        all
    }
}

impl Product {
    fn of(medicine: &Medicine, ingredient: &Ingredient, daily: &Daily) -> Product {
        let (mut parts, mut unsaid) = (Vec::new(), Vec::new());
        match (ingredient.measured(), ingredient.words()) {
            (Some(each), Some(words)) => {
                for part in &daily.parts {
                    let same = ingredient.is_counted_in(&part.unit);
                    let comes_to = same.then(|| each.in_pieces(part.pieces, ingredient.per));
                    match comes_to {
                        Some(Some(sum)) => parts.push((format!("{}, {words}", part.words()), sum)),
                        Some(None) => unsaid
                            .push(format!("{}, {words}: does not come out even", part.words())),
                        None => {
                            unsaid.push(format!("{}, but the label says {words}", part.words()))
                        }
                    }
                }
            }
            _ => unsaid.push("how much of it is in this one is not written down".to_owned()),
        }
        unsaid.extend(daily.unsaid.iter().map(|it| format!("not said in numbers: {it}")));
        let ingredient = Some(ingredient.clone());
        Product { medicine: medicine.clone(), ingredient, parts, unsaid }
    }

    pub fn name(&self) -> &str {
        let name = self.ingredient.as_ref().map_or(&self.medicine.name, |it| &it.name);
        name.as_str()
    }
}

impl Together {
    fn of(products: Vec<Product>) -> Together {
        let mut names: Vec<String> = Vec::new();
        for product in &products {
            if !names.iter().any(|it| it.eq_ignore_ascii_case(product.name())) {
                names.push(product.name().to_owned());
            }
        }
        let labels: Vec<_> = (products.iter())
            .filter_map(|it| Some((&it.medicine, it.ingredient.as_ref()?)))
            .collect();
        let limits = limits::beside(&names, &labels);
        let (held, taken): (Vec<_>, Vec<_>) =
            products.into_iter().partition(|it| it.medicine.is_on_hold());
        let parts = taken.iter().flat_map(|it| &it.parts).map(|(_, sum)| sum.clone());
        let sums = sums(&parts.collect::<Vec<_>>());
        Together { names, taken, held, sums, limits }
    }

    pub fn name(&self) -> &str {
        self.names.first().map_or("", String::as_str)
    }

    /// In how many medicines it stands, those on hold too.
    pub fn medicines(&self) -> usize {
        distinct(self.taken.iter().chain(&self.held))
    }

    /// In how many that are taken now.
    pub fn taken_in(&self) -> usize {
        distinct(self.taken.iter())
    }

    /// Whether it is worth a line where it stands in one only.
    pub fn has_limit(&self) -> bool {
        !self.limits.is_empty()
    }

    /// "4,000 mg"
    pub fn sum(&self) -> Option<String> {
        self.sums.first().map(Measured::to_string)
    }

    /// "5 mL": what is of another measure, and was not added to the sum.
    pub fn apart(&self) -> Option<String> {
        let rest = self.sums.get(1..).unwrap_or_default();
        let rest: Vec<_> = rest.iter().map(Measured::to_string).collect();
        (!rest.is_empty()).then(|| rest.join(" and "))
    }

    /// The medicines that are not in the sum, or not wholly.
    pub fn left_out(&self) -> Vec<String> {
        let out = self.taken.iter().filter(|it| !it.unsaid.is_empty());
        out.map(|it| it.medicine.title()).collect()
    }
}

fn distinct<'a>(products: impl Iterator<Item = &'a Product>) -> usize {
    products.map(|it| it.medicine.id).collect::<std::collections::HashSet<_>>().len()
}

#[cfg(test)]
mod tests;
