//! How the person usually is, and the rules for writing it down.

use super::daily::{ACTIVITIES, Daily, Manner};
use crate::audited;
use crate::base::{
    check::Check,
    clock::Instant,
    day,
    ids::{BaselineId, MemberId, PersonId},
    text::{Line, Note},
};
use crate::platform::{
    auth::area::Role,
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

/// One for each person.
#[derive(Clone, Debug, PartialEq)]
pub struct Baseline {
    pub id: BaselineId,
    pub person_id: PersonId,
    pub own_words: Option<Note>,
    /// Who wrote the own words down, if not the person.
    pub own_words_by: Option<Line>,
    pub thinking: Option<Line>,
    pub mood: Option<Line>,
    /// What it looks like when it is not the usual self.
    pub not_usual: Option<Note>,
    pub voice: Option<Note>,
    pub light: Option<Note>,
    pub touch: Option<Note>,
    pub names: Option<Note>,
    pub walking_aid: Option<Line>,
    pub bathing: Manner,
    pub bathing_words: Option<Line>,
    pub dressing: Manner,
    pub dressing_words: Option<Line>,
    pub toileting: Manner,
    pub toileting_words: Option<Line>,
    pub transferring: Manner,
    pub transferring_words: Option<Line>,
    pub continence: Manner,
    pub continence_words: Option<Line>,
    pub feeding: Manner,
    pub feeding_words: Option<Line>,
    pub said_by: Option<Line>,
    pub said_on: Option<Date>,
    pub checked_at: Option<Instant>,
    pub checked_by: Option<MemberId>,
    pub checked_against: Option<Line>,
    pub version: i64,
}

audited!(Baseline as "baseline" {
    own_words: "own words", own_words_by: "who wrote the own words down",
    thinking: "usual thinking", mood: "usual mood", not_usual: "signs of not being the usual self",
    voice: "voice to use", light: "light", touch: "touch", names: "names",
    walking_aid: "walking aid",
    bathing: "bathing", bathing_words: "words on bathing",
    dressing: "dressing", dressing_words: "words on dressing",
    toileting: "toileting", toileting_words: "words on toileting",
    transferring: "transferring", transferring_words: "words on transferring",
    continence: "continence", continence_words: "words on continence",
    feeding: "feeding", feeding_words: "words on feeding",
    said_by: "said by", said_on: "said on",
    checked_at: "", checked_by: "", checked_against: "checked against",
} skip { id, person_id, version });

/// What it is called, on its page and wherever it is named.
pub fn usually_is(name: &str) -> String {
    format!("How {name} usually is")
}

impl Baseline {
    /// Where nobody has written anything down.
    pub fn not_asked(person_id: PersonId) -> Baseline {
        Baseline {
            id: BaselineId::default(),
            person_id,
            own_words: None,
            own_words_by: None,
            thinking: None,
            mood: None,
            not_usual: None,
            voice: None,
            light: None,
            touch: None,
            names: None,
            walking_aid: None,
            bathing: Manner::NotAsked,
            bathing_words: None,
            dressing: Manner::NotAsked,
            dressing_words: None,
            toileting: Manner::NotAsked,
            toileting_words: None,
            transferring: Manner::NotAsked,
            transferring_words: None,
            continence: Manner::NotAsked,
            continence_words: None,
            feeding: Manner::NotAsked,
            feeding_words: None,
            said_by: None,
            said_on: None,
            checked_at: None,
            checked_by: None,
            checked_against: None,
            version: 0,
        }
    }

    /// As typed anew by a member in this role, which has not been checked. The same again changes
    /// nothing, and leaves the check.
    pub fn written(&self, typed: Baseline, by: Role, today: Date) -> Result<Baseline> {
        if typed.said_on.is_some_and(|it| it > today) {
            return Err(FormErrors::at("said_on", "This day has not come yet.").into());
        }
        if self.version == 0 && typed.is_empty() {
            let says = "Nothing was filled in. One line is enough to begin with.";
            return Err(FormErrors::at("own_words", says).into());
        }
        self.scribed(&typed, by)?;
        let after = Baseline {
            id: self.id,
            person_id: self.person_id,
            checked_at: self.checked_at,
            checked_by: self.checked_by,
            checked_against: self.checked_against.clone(),
            version: self.version,
            ..typed
        };
        if after == *self {
            return Ok(after);
        }
        Ok(Baseline { checked_at: None, checked_by: None, checked_against: None, ..after })
    }

    /// Own words that someone else types are never taken for the person's own writing.
    fn scribed(&self, typed: &Baseline, by: Role) -> Result<()> {
        let unchanged = (&self.own_words, &self.own_words_by) == (&typed.own_words, &None);
        if typed.own_words.is_none() && typed.own_words_by.is_some() {
            let says = "Enter the words themselves, or leave this empty.";
            return Err(FormErrors::at("own_words_by", says).into());
        }
        let needs = typed.own_words.is_some() && by != Role::Person && !unchanged;
        if needs && typed.own_words_by.is_none() {
            let says =
                "Enter who wrote these words down, since it is not the person who types them here.";
            return Err(FormErrors::at("own_words_by", says).into());
        }
        Ok(())
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Baseline> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    pub fn checked(&self, check: Check) -> Baseline {
        Baseline {
            checked_at: Some(check.at),
            checked_by: Some(check.by),
            checked_against: Some(check.against),
            ..self.clone()
        }
    }

    pub fn check(&self) -> Option<Check> {
        Check::of(self.checked_at, self.checked_by, self.checked_against.as_ref())
    }

    /// "said by Ines on 3 November 2026"
    pub fn said(&self) -> Option<String> {
        let (by, on) = (self.said_by.as_ref()?, self.said_on?);
        Some(format!("said by {by} on {}", day::words(on)))
    }

    /// Whether nothing is known yet, whoever was named as having said it.
    pub fn is_empty(&self) -> bool {
        let (said_by, said_on) = (self.said_by.clone(), self.said_on);
        let unasked = Baseline { said_by, said_on, ..Baseline::not_asked(self.person_id) };
        let (checked_at, checked_by) = (self.checked_at, self.checked_by);
        let (checked_against, id) = (self.checked_against.clone(), self.id);
        let version = self.version;
        *self == Baseline { id, checked_at, checked_by, checked_against, version, ..unasked }
    }

    /// The six activities, in the order of their list.
    pub fn daily(&self) -> [Daily<'_>; 6] {
        let done = [
            (self.bathing, &self.bathing_words),
            (self.dressing, &self.dressing_words),
            (self.toileting, &self.toileting_words),
            (self.transferring, &self.transferring_words),
            (self.continence, &self.continence_words),
            (self.feeding, &self.feeding_words),
        ];
        let mut names = ACTIVITIES.iter().map(|it| it.name);
        done.map(|(manner, words)| Daily {
            name: names.next().unwrap_or_default(),
            manner,
            words: words.as_ref(),
        })
    }

    /// How to be with the person: what it is about, and what is kept of it.
    pub fn with_the_person(&self) -> [(&'static str, Option<&Note>); 4] {
        [
            ("Voice", self.voice.as_ref()),
            ("Light", self.light.as_ref()),
            ("Touch", self.touch.as_ref()),
            ("Names", self.names.as_ref()),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    const TODAY: Date = date!(2026 - 11 - 25);

    fn line(text: &str) -> Option<Line> {
        Some(Line::from(text.to_owned()))
    }

    fn words(text: &str) -> Option<Note> {
        Some(Note::from(text.to_owned()))
    }

    fn unasked() -> Baseline {
        Baseline::not_asked(PersonId::from(1))
    }

    fn thinks() -> Baseline {
        Baseline {
            thinking: line("clear"),
            said_by: line("Ines"),
            said_on: Some(TODAY),
            ..unasked()
        }
    }

    #[test]
    fn it_begins_with_at_least_one_thing_and_may_be_emptied_again() {
        let only_said = Baseline { said_by: line("Ines"), said_on: Some(TODAY), ..unasked() };
        assert!(unasked().written(only_said.clone(), Role::Steward, TODAY).is_err());
        let kept = Baseline { version: 1, ..thinks() };
        let after = kept.written(only_said, Role::Steward, TODAY).unwrap();
        assert!(after.is_empty() && !kept.is_empty());
        let fed = Baseline { feeding: Manner::Alone, ..unasked() };
        assert!(!fed.is_empty());
    }

    #[test]
    fn it_is_not_said_on_a_day_to_come() {
        let tomorrow = Baseline { said_on: Some(date!(2026 - 11 - 26)), ..thinks() };
        assert!(unasked().written(tomorrow, Role::Steward, TODAY).is_err());
        assert!(unasked().written(thinks(), Role::Steward, TODAY).is_ok());
    }

    #[test]
    fn own_words_say_who_wrote_them_down_unless_the_person_did() {
        let own = Baseline { own_words: words("I like the window open."), ..thinks() };
        assert!(unasked().written(own.clone(), Role::Steward, TODAY).is_err());
        assert!(unasked().written(own.clone(), Role::Person, TODAY).is_ok());
        let scribed = Baseline { own_words_by: line("Ines"), ..own.clone() };
        assert!(unasked().written(scribed.clone(), Role::Steward, TODAY).is_ok());
        // Beside words the person wrote, others may change the rest; the scribe stays named.
        let other = Baseline { mood: line("cheerful"), ..own.clone() };
        assert!(own.written(other, Role::Relative, TODAY).is_ok());
        assert!(scribed.written(own, Role::Relative, TODAY).is_err());
        let nothing_said = Baseline { own_words_by: line("Ines"), ..thinks() };
        assert!(unasked().written(nothing_said, Role::Person, TODAY).is_err());
    }

    #[test]
    fn an_edit_takes_the_check_off_and_the_same_again_leaves_it() {
        let check = Check {
            at: Instant::from_unix(0),
            by: MemberId::from(1),
            against: Line::from("Emeric".to_owned()),
        };
        let kept = Baseline { id: 7.into(), version: 3, ..thinks().checked(check) };
        assert_eq!(kept.written(thinks(), Role::Steward, TODAY).unwrap(), kept);
        let edited = Baseline { mood: line("cheerful"), ..thinks() };
        let after = kept.written(edited, Role::Steward, TODAY).unwrap();
        assert_eq!((after.check(), after.id, after.version), (None, kept.id, 3));
    }
}
