//! What can be typed: the answer, and who said so on which day.

use super::model::{Answer, Said};
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// What was said, or nothing where it is taken back.
pub struct Answered {
    pub said: Option<Said>,
    pub version: i64,
}

impl FromForm for Answered {
    fn read(form: &mut Reader) -> Result<Answered, FormErrors> {
        let (answer, version) = (form.choice("answer"), form.version());
        if answer == Some(Answer::NotAsked) {
            return Ok(Answered { said: None, version });
        }
        let yes = answer == Some(Answer::Yes);
        let which = match yes {
            true => form.needed_line("which", "Enter which one, like warfarin or pacemaker."),
            false => form.line("which"),
        };
        if answer == Some(Answer::No) && which.is_some() {
            form.wrong("which", "To \"none\" there is no which. Leave this empty, or answer yes.");
        }
        let by = form.needed_line("said_by", "Enter who said so.");
        let says = "Enter the day on which it was said, like 9 Mar 2026.";
        let on = form.needed_day("said_on", says);
        form.finish(|| {
            answer?;
            Some(Answered { said: Some(Said { which, by: by?, on: on? }), version })
        })
    }
}
