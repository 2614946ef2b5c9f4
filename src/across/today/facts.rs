//! What Today looks at, each list read once: what stands now, and nothing of what is over.

use crate::{
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
            model::Medicine,
            stock::standing::{self as supply, Standing},
            store as medicines,
            turns::{
                model::Turn,
                store::{self as turns, Wanted},
            },
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
}

impl Facts {
    pub async fn read(view: &View<Essentials>, today: Date) -> Result<Facts> {
        let treated = match view.area::<Clinical>() {
            Some(view) => Some(Treated::read(&view, today).await?),
            None => None,
        };
        Ok(Facts {
            person: people::find(view).await?,
            usual: baseline::find(view).await?,
            allergies: allergies::state(view).await?,
            contacts: contacts::list(view).await?,
            treated,
        })
    }
}

impl Treated {
    async fn read(view: &View<Clinical>, today: Date) -> Result<Treated> {
        let medicines = medicines::current(view).await?;
        Ok(Treated {
            supply: supply::of(view, medicines.clone(), today).await?,
            medicines,
            turns: turns::list(view, &Wanted { standing: true, ..Wanted::default() }).await?,
            conditions: conditions::standing(view).await?,
            operations: operations::list(view).await?,
            statements: statements::list(view).await?,
            questions: questions::list(view, &questions::Wanted::default()).await?,
        })
    }
}
