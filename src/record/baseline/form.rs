//! What can be typed about how the person usually is.

use super::model::Baseline;
use crate::base::{ids::PersonId, text::Line};
use crate::platform::web::form::{FormErrors, FromForm, Reader};

/// All of it as typed, and the version that was opened.
pub struct Described {
    pub baseline: Baseline,
    pub version: i64,
}

impl FromForm for Described {
    fn read(form: &mut Reader) -> Result<Described, FormErrors> {
        let (own_words, own_words_by) = (form.note("own_words"), form.line("own_words_by"));
        let (thinking, mood) = (form.line("thinking"), form.line("mood"));
        let (not_usual, walking_aid) = (form.note("not_usual"), form.line("walking_aid"));
        let (voice, light) = (form.note("voice"), form.note("light"));
        let (touch, names) = (form.note("touch"), form.note("names"));
        let (bathing, bathing_words) = (form.choice("bathing"), form.line("bathing_words"));
        let (dressing, dressing_words) = (form.choice("dressing"), form.line("dressing_words"));
        let (toileting, toileting_words) = (form.choice("toileting"), form.line("toileting_words"));
        let transferring = form.choice("transferring");
        let transferring_words = form.line("transferring_words");
        let continence = form.choice("continence");
        let continence_words = form.line("continence_words");
        let (feeding, feeding_words) = (form.choice("feeding"), form.line("feeding_words"));
        let said_by = form.needed_line("said_by", "Enter who says so.");
        let said_on = form.needed_day("said_on", "Enter the day on which it was said.");
        let version = form.version();
        form.finish(|| {
            let baseline = Baseline {
                own_words,
                own_words_by,
                thinking,
                mood,
                not_usual,
                voice,
                light,
                touch,
                names,
                walking_aid,
                bathing: bathing?,
                bathing_words,
                dressing: dressing?,
                dressing_words,
                toileting: toileting?,
                toileting_words,
                transferring: transferring?,
                transferring_words,
                continence: continence?,
                continence_words,
                feeding: feeding?,
                feeding_words,
                said_by: Some(said_by?),
                said_on: Some(said_on?),
                ..Baseline::not_asked(PersonId::default())
            };
            Some(Described { baseline, version })
        })
    }
}

/// A check: compared with what.
pub struct Against {
    pub against: Line,
    pub version: i64,
}

impl FromForm for Against {
    fn read(form: &mut Reader) -> Result<Against, FormErrors> {
        let says = "Enter whom you asked, or what you compared it with.";
        let against = form.needed_line("against", says);
        let version = form.version();
        form.finish(|| Some(Against { against: against?, version }))
    }
}
