//! What can be typed about an observation.

use super::{fall::Fall, model::Seen, subject::Subject};
use crate::base::text::{Line, Note};
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// What was seen, and the version it was opened on.
pub struct Noticed {
    pub seen: Seen,
    pub version: i64,
}

impl FromForm for Noticed {
    fn read(form: &mut Reader) -> Result<Noticed, FormErrors> {
        let about = form.choice::<Subject>("about");
        let on = form.needed_day("seen_on", "Enter the day, like 9 Mar 2026.");
        let time = form.line("seen_time");
        let words = form.needed_note("words", "Write what was seen.");
        let fall = if about == Some(Subject::Fall) { fall(form).map(Some) } else { Some(None) };
        let version = form.version();
        form.finish(|| {
            let seen = Seen { about: about?, on: on?, time, words: words?, fall: fall? };
            Some(Noticed { seen, version })
        })
    }
}

/// Asked only where it is about a fall.
fn fall(form: &mut Reader) -> Option<Fall> {
    let place = form.line("fall_where");
    let (up, head) = (form.choice("fall_up"), form.choice("fall_head"));
    let hurt = form.choice("fall_hurt");
    Some(Fall { place, up: up?, head: head?, hurt: hurt? })
}

/// What the person says of it; nothing: her answer is taken away.
pub struct Answered {
    pub answer: Option<Note>,
    pub version: i64,
}

impl FromForm for Answered {
    fn read(form: &mut Reader) -> Result<Answered, FormErrors> {
        let (answer, version) = (form.note("answer"), form.version());
        form.finish(|| Some(Answered { answer, version }))
    }
}

/// Struck: why it was a mistake.
pub struct Mistake {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Mistake {
    fn read(form: &mut Reader) -> Result<Mistake, FormErrors> {
        let reason = form.needed_line("reason", "Enter what was wrong with it.");
        let version = form.version();
        form.finish(|| Some(Mistake { reason: reason?, version }))
    }
}
