//! The clinical blocks of the emergency sheet beside the medicines: what was stated, the
//! conditions that stand, the operations.
//!
//! How much of a condition the person wants to be told does not stand beside its name: the sheet
//! lies about on counters. One line asks to speak with the family first.

use super::Stamps;
use crate::{
    across::statements::beside,
    base::text::Line,
    record::{
        conditions::model::Condition,
        operations::model::Operation,
        statements::{model::Statement, state::State},
    },
};
use serde::Serialize;

#[derive(Serialize)]
pub struct StatementItem {
    pub subject: &'static str,
    pub sentence: String,
    pub said: Option<String>,
    /// Where the list of operations does not say the same.
    pub beside: Option<String>,
}

#[derive(Serialize)]
pub struct Conditions {
    /// How many stand, so that a lost page is noticed; or that none is written down.
    pub sentence: String,
    pub stamp: Option<String>,
    pub ask_first: Option<String>,
    pub items: Vec<ConditionItem>,
}

#[derive(Serialize)]
pub struct ConditionItem {
    pub name: Line,
    pub since: Option<Line>,
    pub followed_by: Option<Line>,
    /// Where it differs from the block's.
    pub stamp: Option<String>,
}

#[derive(Serialize)]
pub struct Operations {
    pub sentence: String,
    pub stamp: Option<String>,
    pub items: Vec<OperationItem>,
}

#[derive(Serialize)]
pub struct OperationItem {
    pub name: Line,
    pub done_when: Option<Line>,
    pub done_where: Option<Line>,
    pub put_in: Option<String>,
    /// Where it differs from the block's.
    pub stamp: Option<String>,
}

pub fn statements(all: &[Statement], operations: &[Operation]) -> Vec<StatementItem> {
    let item = |it: &Statement| {
        let (state, subject) = (State::of(it), it.question.subject());
        let (sentence, said) = (state.sentence(), state.said());
        StatementItem { subject, sentence, said, beside: beside(it, operations) }
    };
    all.iter().map(item).collect()
}

impl Conditions {
    /// What is over is not on the sheet, but counts where it asks for care.
    pub(super) fn of(listed: &[Condition], name: &Line, stamps: &Stamps) -> Conditions {
        let standing: Vec<&Condition> = listed.iter().filter(|it| it.is_standing()).collect();
        let block = stamps.block(standing.iter().map(|it| it.check()));
        let item = |it: &&Condition| ConditionItem {
            name: it.name.clone(),
            since: it.since.clone(),
            followed_by: it.followed_by.clone(),
            stamp: block.mark(stamps.of(it.check())),
        };
        let care = listed.iter().any(|it| it.wants_told.asks_for_care());
        Conditions {
            sentence: match standing.len() {
                0 => "No condition is written down. That does not mean that there is none.".into(),
                1 => "1 condition".into(),
                many => format!("{many} conditions"),
            },
            stamp: block.stamp.clone(),
            // Our own wording; that the family is asked first is common practice, no source.
            ask_first: care
                .then(|| format!("Ask the family before you tell {name} of a diagnosis.")),
            items: standing.iter().map(item).collect(),
        }
    }
}

impl Operations {
    pub(super) fn of(listed: &[Operation], stamps: &Stamps) -> Operations {
        let block = stamps.block(listed.iter().map(Operation::check));
        let item = |it: &Operation| OperationItem {
            name: it.name.clone(),
            done_when: it.done_when.clone(),
            done_where: it.done_where.clone(),
            put_in: it.put_in(),
            stamp: block.mark(stamps.of(it.check())),
        };
        Operations {
            sentence: match listed.len() {
                0 => "No operation is written down. That does not mean that there was none.".into(),
                1 => "1 operation".into(),
                many => format!("{many} operations"),
            },
            stamp: block.stamp.clone(),
            items: listed.iter().map(item).collect(),
        }
    }
}
