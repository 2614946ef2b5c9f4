//! A print: which sheet, by whom, when, of which facts. Its code stands on the paper, so that it
//! can be told later from which state of the record the paper came.

use super::emergency::Facts;
use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{MemberId, PrintId},
};
use crate::platform::{
    audit::{canonical, sha256},
    random,
};

#[derive(Clone, Debug)]
pub struct Print {
    pub id: PrintId,
    pub member_id: MemberId,
    pub sheet: String,
    pub code: String,
    pub printed_at: Instant,
    /// SHA-256 of the facts on it.
    pub facts: String,
    /// The newest hash of the history before the print.
    pub head: String,
}

audited!(Print as "print" {
    sheet: "", code: "", printed_at: "", facts: "", head: "", member_id: "",
} skip { id });

impl Print {
    pub fn new(member_id: MemberId, printed_at: Instant, facts: &Facts, head: String) -> Print {
        Print {
            id: PrintId::default(),
            member_id,
            sheet: facts.title.to_lowercase(),
            code: random::code(),
            printed_at,
            facts: hash(facts),
            head,
        }
    }
}

/// The hash of a sheet's facts: equal for two prints exactly when they say the same.
pub fn hash(facts: &Facts) -> String {
    let value = serde_json::to_value(facts).expect("facts are text");
    sha256(canonical(&value))
}
