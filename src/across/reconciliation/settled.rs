//! What was decided on each row of the comparison, with both sides as they stood; and which two
//! names someone of the family confirmed to be of one ingredient.

use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{
        ListLineId, MedicineId, MemberId, PersonId, QuestionId, SameIngredientId, SecondListId,
        SettledRowId, TurnId,
    },
    text::Line,
};

/// How a row of the comparison stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Class {
    #[serde(rename = "same")]
    #[sqlx(rename = "same")]
    Same,
    #[serde(rename = "changed")]
    #[sqlx(rename = "changed")]
    Changed,
    /// Only on the list.
    #[serde(rename = "new")]
    #[sqlx(rename = "new")]
    New,
    /// The list says so.
    #[serde(rename = "stopped")]
    #[sqlx(rename = "stopped")]
    Stopped,
    /// In the record, and the list is silent.
    #[serde(rename = "not mentioned")]
    #[sqlx(rename = "not mentioned")]
    NotMentioned,
    #[serde(rename = "possibly the same")]
    #[sqlx(rename = "possibly the same")]
    PossiblyTheSame,
    /// A line whose number cannot be read for sure: never accepted.
    #[serde(rename = "not understood")]
    #[sqlx(rename = "not understood")]
    NotUnderstood,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Decision {
    Accepted,
    Kept,
    Asked,
}

/// What accepting wrote into the record.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Wrote {
    Nothing,
    Added,
    Relabelled,
    Stopped,
}

/// One row that was decided, with both sides as they stood.
#[derive(Clone, Debug, PartialEq)]
pub struct SettledRow {
    pub id: SettledRowId,
    pub person_id: PersonId,
    pub list_id: SecondListId,
    pub line_id: Option<ListLineId>,
    pub medicine_id: Option<MedicineId>,
    pub class: Class,
    pub decision: Decision,
    pub wrote: Wrote,
    pub ours: Option<Line>,
    pub differs: Option<Line>,
    pub question_id: Option<QuestionId>,
    /// What accepting wrote, as a turn of the medicine.
    pub turn_id: Option<TurnId>,
    /// The medicine as it was, where it was written to.
    pub before: Option<String>,
    pub after_version: Option<i64>,
    pub taken_back: bool,
    pub version: i64,
}

audited!(SettledRow as "settled_row" {
    list_id: "", line_id: "", medicine_id: "", class: "", decision: "", wrote: "", ours: "",
    differs: "", question_id: "", turn_id: "", before: "", after_version: "", taken_back: "",
} skip { id, person_id, version });

/// Two names of one ingredient, as someone confirmed.
#[derive(Clone, Debug, PartialEq)]
pub struct SameIngredient {
    pub id: SameIngredientId,
    pub person_id: PersonId,
    pub name: Line,
    pub other_name: Line,
    pub confirmed_by: MemberId,
    pub confirmed_at: Instant,
    pub standing: bool,
    pub version: i64,
}

audited!(SameIngredient as "same_ingredient" {
    name: "", other_name: "", confirmed_by: "", confirmed_at: "", standing: "",
} skip { id, person_id, version });

impl SameIngredient {
    pub fn title(&self) -> String {
        format!("{} and {}", self.name, self.other_name)
    }
}

impl SettledRow {
    /// Whether it wrote into the record, and that still stands.
    pub fn stands_written(&self) -> bool {
        self.wrote != Wrote::Nothing && !self.taken_back
    }

    pub fn stood_back(&self) -> SettledRow {
        SettledRow { taken_back: true, ..self.clone() }
    }

    /// What was done, in words.
    pub fn done(&self) -> &'static str {
        match (self.decision, self.wrote) {
            (Decision::Asked, _) => "asked",
            (Decision::Kept, _) if self.class == Class::Same => "they agree",
            (Decision::Kept, _) => "kept as the record has it",
            (_, Wrote::Added) => "accepted: added to the record",
            (_, Wrote::Relabelled) => "accepted: the label was changed",
            (_, Wrote::Stopped) => "accepted: stopped in the record",
            (_, Wrote::Nothing) => "accepted",
        }
    }
}

impl Class {
    /// The classes, in the order in which they stand on the page: what differs in front.
    pub const ORDER: [Class; 7] = [
        Class::NotUnderstood,
        Class::Changed,
        Class::PossiblyTheSame,
        Class::New,
        Class::Stopped,
        Class::NotMentioned,
        Class::Same,
    ];

    pub fn heading(self) -> &'static str {
        match self {
            Class::Same => "The same in both",
            Class::Changed => "Changed",
            Class::New => "Only on the list",
            Class::Stopped => "The list says stopped",
            Class::NotMentioned => "In the record, not mentioned on the list",
            Class::PossiblyTheSame => "Possibly the same ingredient",
            Class::NotUnderstood => "Not understood",
        }
    }

    pub fn explains(self) -> &'static str {
        match self {
            Class::Same => "Nothing differs. Say so, and the row is settled.",
            Class::Changed => "Both have it, and they differ in what stands below.",
            Class::New => "The record does not have it.",
            Class::Stopped => "The list itself says that it was stopped.",
            Class::NotMentioned => "The list says nothing about it. That is no stop: ask.",
            Class::PossiblyTheSame => {
                "Two names that may mean one ingredient. Only you, or the pharmacist, can say."
            }
            Class::NotUnderstood => {
                "A number in these lines cannot be read for sure, so nothing of them can be accepted. Edit the line as the paper has it, or ask."
            }
        }
    }
}
