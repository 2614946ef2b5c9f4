//! What may happen to a task: taken, given back, handed over, put off, waiting, done, let go.
//!
//! Each gives the task as it is afterwards, or says what is in the way. Who may do it is asked
//! before (`Task::may_be_moved_by`, `hands`); that someone else was faster is `Stale`.

use super::model::{Due, State, Task, Wording};
use crate::base::{
    clock::Instant,
    day,
    ids::MemberId,
    text::{Line, Note},
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

/// What is said of a task that is done.
#[derive(Clone, Debug)]
pub struct Finish {
    pub on: Date,
    pub proof: Option<Note>,
    pub photo: Option<String>,
}

impl Task {
    /// Taken by a member, where nobody has it, or (`gone`) who had it cannot do it any more.
    pub fn taken(&self, by: MemberId, gone: bool) -> Result<Task> {
        let free = self.owner_id.is_none_or(|it| it == by) || gone;
        if !free || !self.stands() {
            return Err(Error::Stale);
        }
        Ok(self.owned(by))
    }

    /// What it waits on goes with it to whoever has it next.
    fn owned(&self, by: MemberId) -> Task {
        let state = if self.is_waiting() { State::Waiting } else { State::Taken };
        Task { owner_id: Some(by), state, ..self.unoffered() }
    }

    /// With no offer standing, and none refused.
    fn unoffered(&self) -> Task {
        Task {
            offered_to: None,
            offered_by: None,
            declined_by: None,
            declined_why: None,
            ..self.clone()
        }
    }

    /// Nobody has it; nor does it wait on anyone then.
    pub fn given_back(&self) -> Result<Task> {
        let it = self.standing()?.unoffered().arrived();
        Ok(Task { state: State::Open, owner_id: None, ..it })
    }

    /// One that is still to be done; otherwise someone was faster.
    fn standing(&self) -> Result<&Task> {
        if self.stands() { Ok(self) } else { Err(Error::Stale) }
    }

    /// Offered to another: it stays where it is until she says yes.
    pub fn offered(&self, to: MemberId, by: MemberId) -> Result<Task> {
        if self.is_owned_by(to) {
            return Err(FormErrors::at("offered_to", "She has it already.").into());
        }
        let it = self.standing()?.unoffered();
        Ok(Task { offered_to: Some(to), offered_by: Some(by), ..it })
    }

    pub fn withdrawn(&self) -> Result<Task> {
        if self.offered_to.is_none() {
            return Err(Error::Stale);
        }
        Ok(self.standing()?.unoffered())
    }

    pub fn accepted(&self, by: MemberId) -> Result<Task> {
        if !self.is_offered_to(by) {
            return Err(Error::Stale);
        }
        Ok(self.owned(by))
    }

    pub fn declined(&self, by: MemberId, why: Line) -> Result<Task> {
        if !self.is_offered_to(by) {
            return Err(Error::Stale);
        }
        Ok(Task { declined_by: Some(by), declined_why: Some(why), ..self.unoffered() })
    }

    /// Nothing can be done until another has; it is with whoever says so, if nobody has it.
    pub fn waiting(&self, on: Line, until: Date, by: MemberId, today: Date) -> Result<Task> {
        if until < today {
            return Err(FormErrors::at("waiting_until", "This day has passed.").into());
        }
        let it = self.standing()?.clone();
        Ok(Task {
            state: State::Waiting,
            owner_id: it.owner_id.or(Some(by)),
            waiting_on: Some(on),
            waiting_until: Some(until),
            ..it
        })
    }

    /// It waits no longer.
    pub fn arrived(&self) -> Task {
        let state = if self.is_waiting() { State::Taken } else { self.state };
        Task { state, waiting_on: None, waiting_until: None, ..self.clone() }
    }

    /// Off the board until a day, on which it comes back by itself.
    pub fn put_off(&self, until: Date, reason: Option<Line>, today: Date) -> Result<Task> {
        let it = self.standing()?.clone();
        if until <= today {
            return Err(FormErrors::at("off_until", "Enter a day after today.").into());
        }
        if let Some(due) = it.due_on.filter(|due| it.firm && *due < until) {
            let says = format!(
                "It must be done by {}. Change that day first, if it can wait.",
                day::short_words(due)
            );
            return Err(FormErrors::at("off_until", says).into());
        }
        Ok(Task { off_until: Some(until), off_reason: reason, ..it })
    }

    pub fn back_now(&self) -> Task {
        Task { off_until: None, off_reason: None, ..self.clone() }
    }

    pub fn done(&self, finish: Finish, by: MemberId, today: Date) -> Result<Task> {
        FormErrors::unless_come("closed_on", finish.on, today)?;
        let it = self.standing()?.unoffered().arrived().back_now();
        Ok(Task {
            state: State::Done,
            closed_on: Some(finish.on),
            closed_by: Some(by),
            proof: finish.proof,
            photo: finish.photo,
            ..it
        })
    }

    pub fn let_go(&self, reason: Line, by: MemberId, today: Date) -> Result<Task> {
        let it = self.standing()?.unoffered().arrived().back_now();
        Ok(Task {
            state: State::LetGo,
            closed_on: Some(today),
            closed_by: Some(by),
            let_go_reason: Some(reason),
            ..it
        })
    }

    /// Still to be done after all, with whoever had it, where she still can (`gone`: she cannot).
    /// What showed that it was done stays in its history.
    pub fn opened_again(&self, gone: bool) -> Result<Task> {
        if !self.is_closed() {
            return Err(Error::Stale);
        }
        let owner_id = self.owner_id.filter(|_| !gone);
        Ok(Task {
            state: if owner_id.is_some() { State::Taken } else { State::Open },
            owner_id,
            closed_on: None,
            closed_by: None,
            proof: None,
            photo: None,
            let_go_reason: None,
            ..self.clone()
        })
    }

    pub fn struck(&self, reason: Line) -> Task {
        Task { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Task {
        Task { struck: false, struck_reason: None, ..self.clone() }
    }

    /// The next time of one that repeats, once it is done: with whoever had it (`stays`), or open.
    /// None where it does not repeat, or the next stands already.
    pub fn next(&self, stays: bool, (by, at): (MemberId, Instant)) -> Option<Task> {
        let (repeats, first) = (self.repeats()?, self.counted_from?);
        let closed = self.closed_on.filter(|_| self.is_done() && self.next_id.is_none())?;
        let on = repeats.after(first, closed.max(self.due_on?))?;
        let wording = Wording {
            title: self.title.clone(),
            why: self.why.clone(),
            due: Some(Due { on, firm: self.firm, repeats: Some(repeats) }),
            from_afar: self.from_afar,
            about: self.about_kind.clone().zip(self.about_item),
        };
        let next =
            Task { counted_from: Some(first), ..Task::new(self.person_id, wording, (by, at)) };
        Some(match self.owner_id.filter(|_| stays) {
            Some(owner) => next.owned(owner),
            None => next,
        })
    }
}

#[cfg(test)]
mod tests;
