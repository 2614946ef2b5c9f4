//! What a directive is, and what may happen to it. Its text stays on the paper.

use super::kind::{Kind, Starts, State};
use crate::audited;
use crate::base::{
    day,
    ids::{ContactId, DirectiveId, PersonId},
    text::{Line, Note},
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Directive {
    pub id: DirectiveId,
    pub person_id: PersonId,
    pub kind: Kind,
    /// The state whose form it is, or elsewhere in words.
    pub form_of: Option<Line>,
    pub signed_on: Option<Date>,
    /// Names as typed.
    pub witnesses: Option<Line>,
    pub notary: Option<Line>,
    pub agent_id: Option<ContactId>,
    pub alternate_id: Option<ContactId>,
    pub second_alternate_id: Option<ContactId>,
    pub starts: Starts,
    pub starts_words: Option<Line>,
    /// Where the original is, and who holds it.
    pub kept_where: Option<Line>,
    pub holder_id: Option<ContactId>,
    pub note: Option<Note>,
    /// Read off which paper, or said by whom.
    pub source: Option<Line>,
    pub state: State,
    pub superseded_by: Option<DirectiveId>,
    pub voided_on: Option<Date>,
    pub voided_by: Option<Line>,
    pub voided_how: Option<Line>,
    pub reviewed_on: Option<Date>,
    pub reviewed_by: Option<Line>,
    pub reviewed_why: Option<Line>,
    /// Marked by the family: in which point it says something else than that one.
    pub differs_from: Option<DirectiveId>,
    pub differs_in: Option<Line>,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Directive as "directive" {
    kind: "kind", form_of: "form of", signed_on: "day of signing", witnesses: "witnesses",
    notary: "notary", agent_id: "", alternate_id: "", second_alternate_id: "", starts: "start",
    starts_words: "start in the words of the paper", kept_where: "place of the original",
    holder_id: "", note: "note", source: "source", state: "", superseded_by: "", voided_on: "",
    voided_by: "", voided_how: "", reviewed_on: "", reviewed_by: "", reviewed_why: "",
    differs_from: "", differs_in: "", struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// What is typed about a directive when it is added or edited.
#[derive(Clone, Debug)]
pub struct Entry {
    pub kind: Kind,
    pub form_of: Option<Line>,
    pub signed_on: Option<Date>,
    pub witnesses: Option<Line>,
    pub notary: Option<Line>,
    /// The agent, then the alternates.
    pub named: [Option<ContactId>; 3],
    pub starts: Starts,
    pub starts_words: Option<Line>,
    pub kept_where: Option<Line>,
    pub holder_id: Option<ContactId>,
    pub note: Option<Note>,
    pub source: Option<Line>,
}

/// That it does not hold any more: when, by whom, how.
pub struct Voiding {
    pub on: Date,
    pub by: Line,
    pub how: Line,
}

/// That it was looked at again: when, by whom, why.
pub struct Review {
    pub on: Date,
    pub by: Line,
    pub why: Line,
}

impl Directive {
    /// As it is written down for the first time: in force as far as the family knows, or a draft.
    pub fn new(person_id: PersonId, entry: Entry, state: State) -> Directive {
        let [agent_id, alternate_id, second_alternate_id] = entry.named;
        Directive {
            id: DirectiveId::default(),
            person_id,
            kind: entry.kind,
            form_of: entry.form_of,
            signed_on: entry.signed_on,
            witnesses: entry.witnesses,
            notary: entry.notary,
            agent_id,
            alternate_id,
            second_alternate_id,
            starts: entry.starts,
            starts_words: entry.starts_words,
            kept_where: entry.kept_where,
            holder_id: entry.holder_id,
            note: entry.note,
            source: entry.source,
            state,
            superseded_by: None,
            voided_on: None,
            voided_by: None,
            voided_how: None,
            reviewed_on: None,
            reviewed_by: None,
            reviewed_why: None,
            differs_from: None,
            differs_in: None,
            struck: false,
            struck_reason: None,
            version: 1,
        }
    }

    /// As typed anew, or what is wrong with it.
    pub fn edited(&self, entry: Entry, today: Date) -> Result<Directive> {
        let typed = Directive::new(self.person_id, entry, self.state).sound(today)?;
        Ok(Directive {
            id: self.id,
            superseded_by: self.superseded_by,
            voided_on: self.voided_on,
            voided_by: self.voided_by.clone(),
            voided_how: self.voided_how.clone(),
            reviewed_on: self.reviewed_on,
            reviewed_by: self.reviewed_by.clone(),
            reviewed_why: self.reviewed_why.clone(),
            differs_from: self.differs_from,
            differs_in: self.differs_in.clone(),
            struck: self.struck,
            struck_reason: self.struck_reason.clone(),
            version: self.version,
            ..typed
        })
    }

    /// A draft has no day of signing, and no day of signing is to come.
    pub fn sound(self, today: Date) -> Result<Directive> {
        if let Some(on) = self.signed_on {
            if self.state == State::Draft {
                let says =
                    "A draft has no day of signing. Leave it empty, or say that it is in force.";
                return Err(FormErrors::at("signed_on", says).into());
            }
            FormErrors::unless_come("signed_on", on, today)?;
        }
        Ok(self)
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Directive> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// A draft that was signed.
    pub fn signed(&self, on: Date, today: Date) -> Result<Directive> {
        let signed = Directive { signed_on: Some(on), state: State::InForce, ..self.clone() };
        signed.sound(today)
    }

    pub fn voided(&self, it: Voiding, today: Date) -> Result<Directive> {
        FormErrors::unless_come("voided_on", it.on, today)?;
        let (voided_on, voided_by, voided_how) = (Some(it.on), Some(it.by), Some(it.how));
        let state = State::Void;
        Ok(Directive { state, voided_on, voided_by, voided_how, ..self.clone() })
    }

    pub fn superseded(&self, by: DirectiveId) -> Directive {
        Directive { state: State::Superseded, superseded_by: Some(by), ..self.clone() }
    }

    /// In force again: it was written down as over by mistake.
    pub fn stands_again(&self) -> Directive {
        Directive {
            state: State::InForce,
            superseded_by: None,
            voided_on: None,
            voided_by: None,
            voided_how: None,
            ..self.clone()
        }
    }

    pub fn reviewed(&self, it: Review, today: Date) -> Result<Directive> {
        FormErrors::unless_come("reviewed_on", it.on, today)?;
        let (reviewed_on, reviewed_by, reviewed_why) = (Some(it.on), Some(it.by), Some(it.why));
        Ok(Directive { reviewed_on, reviewed_by, reviewed_why, ..self.clone() })
    }

    /// Marked as saying something else than another, or (`None`) the mark taken off.
    pub fn differing(&self, from: Option<(DirectiveId, Line)>) -> Directive {
        let (differs_from, differs_in) = from.unzip();
        Directive { differs_from, differs_in, ..self.clone() }
    }

    /// Taken from the list because it was entered by mistake.
    pub fn struck(&self, reason: Line) -> Directive {
        Directive { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Directive {
        Directive { struck: false, struck_reason: None, ..self.clone() }
    }

    pub fn is_in_force(&self) -> bool {
        !self.struck && self.state == State::InForce
    }

    pub fn is_draft(&self) -> bool {
        !self.struck && self.state == State::Draft
    }

    pub fn is_over(&self) -> bool {
        !self.struck && self.state.is_over()
    }

    /// The agent and the alternates in their order, each with what she is in it.
    pub fn named(&self) -> impl Iterator<Item = (&'static str, ContactId)> {
        let of = [
            ("agent", self.agent_id),
            ("alternate agent", self.alternate_id),
            ("second alternate agent", self.second_alternate_id),
        ];
        of.into_iter().filter_map(|(what, id)| Some((what, id?)))
    }

    /// Whether it speaks of this contact: as agent, as alternate, as who holds the original.
    pub fn speaks_of(&self, contact: ContactId) -> bool {
        self.holder_id == Some(contact) || self.named().any(|(_, id)| id == contact)
    }

    pub fn signed_day(&self) -> Option<String> {
        self.signed_on.map(day::words)
    }

    /// "Living will of 3 May 2022"
    pub fn title(&self) -> String {
        match (self.signed_day(), self.state) {
            (Some(on), _) => format!("{} of {on}", self.kind.title()),
            (None, State::Draft) => format!("{}, a draft", self.kind.title()),
            (None, _) => format!("{}, day of signing not known", self.kind.title()),
        }
    }

    /// When its power starts, in words.
    pub fn starts_so(&self) -> Option<String> {
        match (self.starts, &self.starts_words) {
            (Starts::NotSaid, _) => None,
            (_, Some(words)) => Some(format!("as the paper says: {words}")),
            (starts, None) => Some(starts.to_string()),
        }
    }

    /// "voided on 3 May 2022 by Ottoline: torn up"
    pub fn voided_so(&self) -> Option<String> {
        let (on, by) = (day::words(self.voided_on?), self.voided_by.as_ref()?);
        Some(format!("voided on {on} by {by}: {}", self.voided_how.as_ref()?))
    }

    /// "3 May 2022 by Ines: a move"
    pub fn reviewed_so(&self) -> Option<String> {
        let (on, by) = (day::words(self.reviewed_on?), self.reviewed_by.as_ref()?);
        Some(format!("{on} by {by}: {}", self.reviewed_why.as_ref()?))
    }
}

#[cfg(test)]
pub mod tests;
