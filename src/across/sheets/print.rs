//! A print: which sheet, by whom, when, of which facts. Its code stands on the paper, so that it
//! can be told later from which state of the record the paper came.

use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{MemberId, PrintId},
};
use crate::platform::{
    audit::{canonical, sha256},
    pdf::Sheet,
    random,
};
use serde::Serialize;

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
    /// By whom and when, of which sheet with which facts, after which state of the history.
    pub fn new(
        (member_id, printed_at): (MemberId, Instant),
        sheet: Sheet,
        facts: &impl Serialize,
        head: String,
    ) -> Print {
        Print {
            id: PrintId::default(),
            member_id,
            sheet: sheet.name().to_owned(),
            code: random::code(),
            printed_at,
            facts: hash(facts),
            head,
        }
    }
}

/// The hash of a sheet's facts: equal for two prints exactly when they say the same.
pub fn hash(facts: &impl Serialize) -> String {
    let value = serde_json::to_value(facts).expect("facts are text");
    sha256(canonical(&value))
}
