//! What can be typed about a decision.

use super::{
    model::{Asked, Outcome},
    right::Right,
};
use crate::base::{
    ids::{DecisionId, MemberId},
    text::{Line, Note},
};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// What is to be decided, and what is known so far.
pub struct Put {
    pub matter: Line,
    pub background: Option<Note>,
    pub version: i64,
}

impl FromForm for Put {
    fn read(form: &mut Reader) -> Result<Put, FormErrors> {
        let matter = form.needed_line("matter", "Enter what is to be decided.");
        let (background, version) = (form.note("background"), form.version());
        form.finish(|| Some(Put { matter: matter?, background, version }))
    }
}

/// What was decided.
pub struct Decided {
    pub outcome: Outcome,
    pub version: i64,
}

impl FromForm for Decided {
    fn read(form: &mut Reader) -> Result<Decided, FormErrors> {
        let decided = form.needed_note("decided", "Write what was decided.");
        let reasons = form.needed_note("reasons", "Write why.");
        let heard: Result<Vec<MemberId>, _> =
            form.every("heard").iter().map(|it| it.parse()).collect();
        if heard.is_err() {
            form.wrong("heard", "Choose from the members of this record.");
        }
        let (heard_others, asked) = (form.line("heard_others"), asked(form));
        let decider = form.needed_line("decider", "Enter who decides.");
        let right = form.choice::<Right>("by_right");
        let right_words = match right {
            Some(Right::Other) => form.needed_line("right_words", "Enter which right that is."),
            _ => None,
        };
        let on = form.needed_day("decided_on", "Enter the day, like 9 Mar 2026.");
        let (look_again_on, version) = (form.day("look_again_on"), form.version());
        form.finish(|| {
            let (decided, reasons, heard) = (decided?, reasons?, heard.ok()?);
            let (asked, decider, right, on) = (asked?, decider?, right?, on?);
            let outcome = Outcome {
                decided,
                reasons,
                heard,
                heard_others,
                asked,
                decider,
                right,
                right_words,
                on,
                look_again_on,
            };
            Some(Decided { outcome, version })
        })
    }
}

/// What the person said, or why she was not asked: one of the two.
fn asked(form: &mut Reader) -> Option<Asked> {
    let (words, because) = (form.note("her_words"), form.line("not_asked"));
    match (words, because) {
        (Some(words), None) => Some(Asked::Said(words)),
        (None, Some(because)) => Some(Asked::Not(because)),
        (None, None) => {
            let says = "Write what the person said of it, or below why there was no asking.";
            form.wrong("her_words", says);
            None
        }
        (Some(_), Some(_)) => {
            let says = "Above stands what the person said. Leave this empty, or the other.";
            form.wrong("not_asked", says);
            None
        }
    }
}

/// Looked at again: until when it stays as it is.
pub struct Left {
    pub until: Option<Date>,
    pub version: i64,
}

impl FromForm for Left {
    fn read(form: &mut Reader) -> Result<Left, FormErrors> {
        let (until, version) = (form.day("look_again_on"), form.version());
        form.finish(|| Some(Left { until, version }))
    }
}

/// Which other decision stands in its place.
pub struct Replaced {
    pub by: DecisionId,
    pub version: i64,
}

impl FromForm for Replaced {
    fn read(form: &mut Reader) -> Result<Replaced, FormErrors> {
        let by = form.raw("replaced_by").parse().ok();
        if by.is_none() {
            form.wrong("replaced_by", "Choose the decision that stands in its place.");
        }
        let version = form.version();
        form.finish(|| Some(Replaced { by: by?, version }))
    }
}

/// Why it need not be decided, or does not hold any more.
pub struct Withdrawn {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Withdrawn {
    fn read(form: &mut Reader) -> Result<Withdrawn, FormErrors> {
        let reason = form.needed_line("reason", "Enter why it is withdrawn.");
        let version = form.version();
        form.finish(|| Some(Withdrawn { reason: reason?, version }))
    }
}
