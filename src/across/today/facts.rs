//! What Today looks at, each list read once: what stands now, and nothing of what is over.

use crate::{
    across::{
        disagreements, ingredients as same,
        reconciliation::{settled_store as pairs, store as second_lists},
    },
    platform::{
        auth::area::{Clinical, Essentials},
        db::View,
        error::Result,
    },
    record::{
        allergies::{state::State, store as allergies},
        baseline::{model::Baseline, store as baseline},
        conditions::{model::Condition, store as conditions},
        contacts::{model::Contact, store as contacts},
        medicines::{
            ingredients::store as ingredients,
            model::Medicine,
            schedule::{model::Step, store as schedule},
            stock::standing::{self as supply, Standing},
            store as medicines,
            turns::{model::Turn, store as turns},
        },
        operations::{model::Operation, store as operations},
        people::{model::Person, store as people},
        questions::{model::Question, store as questions},
        statements::{model::Statement, store as statements},
    },
};
use time::Date;

pub struct Facts {
    pub person: Person,
    pub usual: Baseline,
    pub allergies: State,
    pub contacts: Vec<Contact>,
    /// As far as the reader's place reaches.
    pub treated: Option<Treated>,
}

/// What a clinician works with.
pub struct Treated {
    pub medicines: Vec<Medicine>,
    /// Holds, and what is planned.
    pub turns: Vec<Turn>,
    pub supply: Vec<Standing>,
    pub conditions: Vec<Condition>,
    pub operations: Vec<Operation>,
    pub statements: Vec<Statement>,
    pub questions: Vec<Question>,
    /// For those who may change it: they settle what does not agree.
    pub compared: Option<Compared>,
}

/// What is laid side by side.
pub struct Compared {
    pub disagreeing: disagreements::Written,
    pub same: same::Written,
}

impl Facts {
    pub async fn read(view: &View<Essentials>, today: Date) -> Result<Facts> {
        let person = people::find(view).await?;
        let allergies = allergies::state(view).await?;
        let treated = match view.area::<Clinical>() {
            Some(view) => Some(Treated::read(&view, (&person, &allergies), today).await?),
            None => None,
        };
        Ok(Facts {
            usual: baseline::find(view).await?,
            contacts: contacts::list(view).await?,
            person,
            allergies,
            treated,
        })
    }
}

impl Treated {
    async fn read(view: &View<Clinical>, known: (&Person, &State), today: Date) -> Result<Treated> {
        let (medicines, steps) = (medicines::current(view).await?, schedule::list(view).await?);
        let supply = supply::of(view, medicines.clone(), &steps, today).await?;
        let (conditions, compared) = match view.may_change() {
            true => {
                let all = conditions::list(view).await?;
                let standing = all.iter().filter(|it| it.is_standing()).cloned().collect();
                let lists = (medicines.clone(), steps, all);
                (standing, Some(Compared::read(view, known, lists).await?))
            }
            false => (conditions::standing(view).await?, None),
        };
        Ok(Treated {
            medicines,
            turns: turns::standing(view).await?,
            supply,
            conditions,
            operations: operations::list(view).await?,
            statements: statements::list(view).await?,
            questions: questions::list(view, &questions::Wanted::default()).await?,
            compared,
        })
    }
}

impl Compared {
    async fn read(
        view: &View<Clinical>,
        (person, allergies): (&Person, &State),
        (medicines, steps, conditions): (Vec<Medicine>, Vec<Step>, Vec<Condition>),
    ) -> Result<Compared> {
        let ingredients = ingredients::list(view).await?;
        let pairs = pairs::confirmed(view).await?;
        Ok(Compared {
            disagreeing: disagreements::Written {
                allergies: allergies.listed().to_vec(),
                medicines: medicines.clone(),
                ingredients: ingredients.clone(),
                conditions,
                lists: second_lists::list(view).await?,
                born: Some(person.born),
                pairs: pairs.clone(),
            },
            same: same::Written { medicines, steps, ingredients, pairs },
        })
    }
}
