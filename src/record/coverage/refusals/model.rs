//! What a refusal is, and what may happen to it.

use super::mover::{Decision, Mover};
use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{CoverId, MedicineId, MemberId, PersonId, RefusalId},
    text::{Line, Note},
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Refusal {
    pub id: RefusalId,
    pub person_id: PersonId,
    pub medicine_id: MedicineId,
    pub cover_id: Option<CoverId>,
    pub refused_on: Date,
    pub pharmacy: Option<Line>,
    /// The words and the code on the refusal.
    pub words: Note,
    pub code: Option<Line>,
    /// Who must act next, and since when.
    pub mover: Mover,
    pub mover_since: Date,
    /// When the plan received the prescriber's statement.
    pub statement_at: Option<Instant>,
    pub expedited: bool,
    pub decision: Option<Decision>,
    pub decided_on: Option<Date>,
    pub decision_words: Option<Note>,
    /// The next step as the notice says it, and the date that is printed there.
    pub next_step: Option<Line>,
    pub next_by: Option<Date>,
    pub settled_on: Option<Date>,
    pub settled_how: Option<Line>,
    pub entered_by: MemberId,
    pub entered_at: Instant,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Refusal as "refusal" {
    medicine_id: "", cover_id: "", refused_on: "day of the refusal", pharmacy: "pharmacy",
    words: "words of the refusal", code: "code of the refusal", mover: "who must act next",
    mover_since: "since when it is their move", statement_at: "when the plan had the statement",
    expedited: "expedited", decision: "what the plan decided", decided_on: "day of the decision",
    decision_words: "words of the decision", next_step: "next step by the notice",
    next_by: "date printed on the notice", settled_on: "settled", settled_how: "how it was settled",
    entered_by: "", entered_at: "", struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// What was said at the counter.
#[derive(Clone, Debug)]
pub struct Said {
    pub medicine_id: MedicineId,
    pub cover_id: Option<CoverId>,
    pub refused_on: Date,
    pub pharmacy: Option<Line>,
    pub words: Note,
    pub code: Option<Line>,
}

/// What the plan's letter says.
#[derive(Clone, Debug)]
pub struct Answered {
    pub decision: Decision,
    pub on: Date,
    pub words: Option<Note>,
    pub next_step: Option<Line>,
    pub next_by: Option<Date>,
}

impl Refusal {
    pub fn new(
        person_id: PersonId,
        said: Said,
        mover: Mover,
        (entered_by, entered_at, today): (MemberId, Instant, Date),
    ) -> Result<Refusal> {
        FormErrors::unless_come("refused_on", said.refused_on, today)?;
        Ok(Refusal {
            id: RefusalId::default(),
            person_id,
            medicine_id: said.medicine_id,
            cover_id: said.cover_id,
            refused_on: said.refused_on,
            pharmacy: said.pharmacy,
            words: said.words,
            code: said.code,
            mover,
            mover_since: said.refused_on,
            statement_at: None,
            expedited: false,
            decision: None,
            decided_on: None,
            decision_words: None,
            next_step: None,
            next_by: None,
            settled_on: None,
            settled_how: None,
            entered_by,
            entered_at,
            struck: false,
            struck_reason: None,
            version: 1,
        })
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Refusal> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// The words put right.
    pub fn reworded(&self, said: Said, today: Date) -> Result<Refusal> {
        FormErrors::unless_come("refused_on", said.refused_on, today)?;
        // Whose move it was from the first day on moves along with that day.
        let first = self.mover_since == self.refused_on;
        let mover_since = if first { said.refused_on } else { self.mover_since };
        let Said { medicine_id, cover_id, refused_on, pharmacy, words, code } = said;
        let kept = self.clone();
        Ok(Refusal {
            medicine_id,
            cover_id,
            refused_on,
            pharmacy,
            words,
            code,
            mover_since,
            ..kept
        })
    }

    /// Somebody else's move, from a day on that has come.
    pub fn moved(&self, mover: Mover, since: Date, today: Date) -> Result<Refusal> {
        FormErrors::unless_come("mover_since", since, today)?;
        Ok(Refusal { mover, mover_since: since, ..self.clone() })
    }

    /// The plan has the prescriber's statement: from then on it is the plan's move.
    pub fn stated(
        &self,
        (at, on): (Instant, Date),
        expedited: bool,
        now: Instant,
    ) -> Result<Refusal> {
        if at > now {
            let says = "This moment has not come yet.";
            return Err(FormErrors::at("statement_day", says).into());
        }
        let waits = self.decision.is_none();
        let mover = if waits { Mover::Plan } else { self.mover };
        let mover_since = if waits { on } else { self.mover_since };
        Ok(Refusal { statement_at: Some(at), expedited, mover, mover_since, ..self.clone() })
    }

    pub fn decided(&self, answered: Answered, mover: Mover, today: Date) -> Result<Refusal> {
        FormErrors::unless_come("decided_on", answered.on, today)?;
        Ok(Refusal {
            decision: Some(answered.decision),
            decided_on: Some(answered.on),
            decision_words: answered.words,
            next_step: answered.next_step,
            next_by: answered.next_by,
            mover,
            mover_since: answered.on,
            ..self.clone()
        })
    }

    /// Nothing more is to be done: how it ended, as someone says.
    pub fn settled(&self, how: Line, on: Date, today: Date) -> Result<Refusal> {
        FormErrors::unless_come("settled_on", on, today)?;
        Ok(Refusal { settled_on: Some(on), settled_how: Some(how), ..self.clone() })
    }

    pub fn struck(&self, reason: Line) -> Refusal {
        Refusal { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    /// It stands again: what was struck, or what was taken for settled.
    pub fn brought_back(&self) -> Refusal {
        let it = self.clone();
        Refusal { struck: false, struck_reason: None, settled_on: None, settled_how: None, ..it }
    }

    pub fn stands(&self) -> bool {
        !self.struck && self.settled_on.is_none()
    }

    /// "the plan’s move since Mon 23 Nov 2026"
    pub fn move_words(&self) -> String {
        format!("{}’s move since {}", self.mover, day::short_words(self.mover_since))
    }

    /// "Latanoprost, refused Mon 23 Nov 2026"
    pub fn title(&self, medicine: &str) -> String {
        format!("{medicine}, refused {}", day::short_words(self.refused_on))
    }

    pub fn refused_day(&self) -> String {
        day::words(self.refused_on)
    }

    pub fn decided_day(&self) -> Option<String> {
        self.decided_on.map(day::words)
    }

    pub fn next_day(&self) -> Option<String> {
        self.next_by.map(day::short_words)
    }

    pub fn settled_day(&self) -> Option<String> {
        self.settled_on.map(day::words)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    const TODAY: Date = date!(2026 - 11 - 25);

    fn said(on: Date) -> Said {
        Said {
            medicine_id: 1.into(),
            cover_id: None,
            refused_on: on,
            pharmacy: None,
            words: Note::from("Prior authorization required".to_owned()),
            code: None,
        }
    }

    fn refusal() -> Refusal {
        let by = (2.into(), Instant::from_unix(0), TODAY);
        Refusal::new(1.into(), said(date!(2026 - 11 - 23)), Mover::Prescriber, by).expect("one")
    }

    #[test]
    fn it_says_whose_move_it_is_and_since_when() {
        assert_eq!(refusal().move_words(), "the prescriber’s move since Mon 23 Nov 2026");
        let at = Instant::from_unix(1_764_000_000);
        let stated = refusal().stated((at, date!(2026 - 11 - 24)), false, at).expect("stated");
        assert_eq!(stated.move_words(), "the plan’s move since Tue 24 Nov 2026");
        let late = at.plus(time::Duration::seconds(1));
        assert!(refusal().stated((late, TODAY), false, at).is_err(), "a moment to come");
        let moved = stated.moved(Mover::Family, TODAY, TODAY).expect("moved");
        assert_eq!(moved.move_words(), "the family’s move since Wed 25 Nov 2026");
        assert!(moved.moved(Mover::Plan, date!(2026 - 11 - 26), TODAY).is_err());
    }

    /// The date of the next step is the one that is printed: without it there is none.
    #[test]
    fn the_next_date_is_never_derived() {
        let answered = Answered {
            decision: Decision::NotCovered,
            on: TODAY,
            words: None,
            next_step: None,
            next_by: None,
        };
        let decided = refusal().decided(answered, Mover::Family, TODAY).expect("decided");
        assert_eq!((decided.next_by, decided.mover), (None, Mover::Family));
        // What came late is still written down, and whose move it is stays.
        let late = decided.stated((Instant::from_unix(0), TODAY), true, Instant::from_unix(9));
        assert_eq!(late.expect("stated").mover, Mover::Family);
    }

    #[test]
    fn it_stands_until_it_is_settled_or_struck() {
        let it = refusal();
        let how = || Line::from("filled on Tuesday".to_owned());
        assert!(it.stands() && !it.settled(how(), TODAY, TODAY).expect("settled").stands());
        assert!(it.settled(how(), date!(2026 - 11 - 26), TODAY).is_err());
        assert!(!it.struck(how()).stands());
        assert_eq!(it.settled(how(), TODAY, TODAY).expect("settled").brought_back(), it);
    }

    #[test]
    fn the_first_move_goes_along_with_the_day_that_is_put_right() {
        let right = refusal().reworded(said(date!(2026 - 11 - 20)), TODAY).expect("right");
        assert_eq!(right.mover_since, date!(2026 - 11 - 20));
        let moved = refusal().moved(Mover::Plan, date!(2026 - 11 - 24), TODAY).expect("moved");
        let right = moved.reworded(said(date!(2026 - 11 - 20)), TODAY).expect("right");
        assert_eq!(right.mover_since, date!(2026 - 11 - 24));
        assert!(refusal().reworded(said(date!(2026 - 11 - 26)), TODAY).is_err());
    }
}
