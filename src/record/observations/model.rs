//! What an observation is, and who may do what with it.

use super::{
    fall::{Fall, GotUp, Known},
    subject::Subject,
};
use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{AppointmentId, MemberId, ObservationId, PersonId},
    text::{Line, Note, first_words},
};
use crate::platform::{
    auth::{area::Role, voice::Voice},
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Observation {
    pub id: ObservationId,
    pub person_id: PersonId,
    pub about: Subject,
    pub seen_on: Date,
    /// The time of day, in words.
    pub seen_time: Option<Line>,
    pub words: Note,
    /// Of a fall, and only of one: see [`Fall`].
    pub fall_where: Option<Line>,
    pub fall_up: Option<GotUp>,
    pub fall_head: Option<Known>,
    pub fall_hurt: Option<Known>,
    pub noted_by: MemberId,
    pub noted_at: Instant,
    /// When it got the words it has.
    pub worded_at: Instant,
    /// What the person says of it herself.
    pub answer: Option<Note>,
    pub answered_at: Option<Instant>,
    /// Who entered it, and whether that was for a person who does not sign in.
    pub answer_by: Option<MemberId>,
    pub answer_for_her: Option<bool>,
    /// Kept from the family: see the table of the module.
    pub clinician_only: bool,
    pub on_behalf: bool,
    /// The visit on whose sheet it stands, by the day it was first to be on.
    pub appointment_id: Option<AppointmentId>,
    pub occurrence_on: Option<Date>,
    /// The person took it off: only she puts it on a sheet again.
    pub off_sheets: bool,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Observation as "observation" {
    about: "what it is about", seen_on: "day", seen_time: "time of day", words: "words",
    fall_where: "where", fall_up: "how she got up", fall_head: "hit the head",
    fall_hurt: "hurt", noted_by: "", noted_at: "", worded_at: "",
    answer: "answer", answered_at: "", answer_by: "", answer_for_her: "",
    clinician_only: "", on_behalf: "", appointment_id: "", occurrence_on: "", off_sheets: "",
    struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// What was seen, and when.
#[derive(Clone, Debug)]
pub struct Seen {
    pub about: Subject,
    pub on: Date,
    pub time: Option<Line>,
    pub words: Note,
    pub fall: Option<Fall>,
}

/// A title is the first words, up to so many letters.
const TITLE: usize = 60;

impl Observation {
    pub fn new(
        person_id: PersonId,
        seen: Seen,
        (by, at): (MemberId, Instant),
        today: Date,
    ) -> Result<Observation> {
        let it = Observation {
            id: ObservationId::default(),
            person_id,
            about: seen.about,
            seen_on: seen.on,
            seen_time: None,
            words: seen.words.clone(),
            fall_where: None,
            fall_up: None,
            fall_head: None,
            fall_hurt: None,
            noted_by: by,
            noted_at: at,
            worded_at: at,
            answer: None,
            answered_at: None,
            answer_by: None,
            answer_for_her: None,
            clinician_only: false,
            on_behalf: false,
            appointment_id: None,
            occurrence_on: None,
            off_sheets: false,
            struck: false,
            struck_reason: None,
            version: 1,
        };
        it.put_right(seen, (by, at), today)
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Observation> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Put right by the one who noticed it. What the person answered stays beside it.
    pub fn put_right(
        &self,
        seen: Seen,
        (by, at): (MemberId, Instant),
        today: Date,
    ) -> Result<Observation> {
        if !self.is_of(by) {
            return Err(Error::Forbidden);
        }
        FormErrors::unless_come("seen_on", seen.on, today)?;
        let fall = seen.fall.as_ref();
        let after = Observation {
            about: seen.about,
            seen_on: seen.on,
            seen_time: seen.time.clone(),
            words: seen.words.clone(),
            fall_where: fall.and_then(|it| it.place.clone()),
            fall_up: fall.map(|it| it.up),
            fall_head: fall.map(|it| it.head),
            fall_hurt: fall.map(|it| it.hurt),
            ..self.clone()
        };
        let worded_at = if after == *self { self.worded_at } else { at };
        Ok(Observation { worded_at, ..after })
    }

    pub fn fall(&self) -> Option<Fall> {
        let (up, head, hurt) = (self.fall_up?, self.fall_head?, self.fall_hurt?);
        Some(Fall { place: self.fall_where.clone(), up, head, hurt })
    }

    pub fn hit_the_head(&self) -> bool {
        self.fall_head == Some(Known::Yes)
    }

    pub fn is_of(&self, member: MemberId) -> bool {
        self.noted_by == member
    }

    /// Whether a member may strike it: her own, or as one who decides.
    pub fn may_be_struck_by(&self, member: MemberId, role: Role) -> bool {
        self.is_of(member) || role.decides()
    }

    /// Whether she may show it to the family again: the person, or who noticed it, for a person
    /// who does not sign in. Nobody else sees it.
    pub fn may_be_shown_by(&self, member: MemberId, role: Role, voice: &Voice) -> bool {
        role == Role::Person || !voice.signs_in && self.is_of(member)
    }

    /// In the person's own words, as she enters them or someone for her; none: taken away again.
    pub fn answered(
        &self,
        answer: Option<Note>,
        (by, at): (MemberId, Instant),
        role: Role,
    ) -> Result<Observation> {
        if answer == self.answer {
            return match answer {
                Some(_) => Ok(self.clone()),
                None => Err(FormErrors::at("answer", "Write the answer.").into()),
            };
        }
        let said = answer.is_some();
        Ok(Observation {
            answer,
            answered_at: said.then_some(at),
            answer_by: said.then_some(by),
            answer_for_her: said.then_some(role != Role::Person),
            ..self.clone()
        })
    }

    /// Whether the words are newer than what was answered to them.
    pub fn is_reworded(&self) -> bool {
        self.answered_at.is_some_and(|it| it < self.worded_at)
    }

    pub fn kept_for_clinician(&self, role: Role) -> Observation {
        let on_behalf = role != Role::Person;
        Observation { clinician_only: true, on_behalf, ..self.clone() }
    }

    pub fn shown_to_family(&self) -> Observation {
        Observation { clinician_only: false, on_behalf: false, ..self.clone() }
    }

    /// The visit whose sheet has it.
    pub fn visit(&self) -> Option<(AppointmentId, Date)> {
        self.appointment_id.zip(self.occurrence_on)
    }

    /// On the sheet of a visit, or on none. What the person took off, she alone puts back.
    pub fn ticked(&self, visit: Option<(AppointmentId, Date)>, role: Role) -> Result<Observation> {
        let hers = role == Role::Person;
        if self.off_sheets && visit.is_some() && !hers {
            return Err(FormErrors::at("visit", OFF).into());
        }
        let (appointment_id, occurrence_on) = visit.unzip();
        let off_sheets = visit.is_none() && (hers || self.off_sheets);
        Ok(Observation { appointment_id, occurrence_on, off_sheets, ..self.clone() })
    }

    pub fn struck(&self, reason: Line) -> Observation {
        Observation { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Observation {
        Observation { struck: false, struck_reason: None, ..self.clone() }
    }

    /// Its first words, for lists and the history.
    pub fn title(&self) -> String {
        title(self.words.as_str())
    }
}

/// What is said where the person took it off the sheets.
pub const OFF: &str =
    "It was taken off the sheets by the one it is about, and only she puts it on one again.";

/// Whether a member answers for the person, or keeps something for the clinician: she herself, or
/// one who decides, where she does not sign in.
pub fn may_speak(role: Role, voice: &Voice) -> bool {
    role == Role::Person || voice.is_spoken_for() && role.decides()
}

/// The first words of a text.
pub fn title(words: &str) -> String {
    first_words(words, TITLE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    const TODAY: Date = date!(2026 - 11 - 25);

    fn at(seconds: i64) -> Instant {
        Instant::from_unix(seconds)
    }

    fn seen(words: &str) -> Seen {
        let words = Note::from(words.to_owned());
        Seen { about: Subject::Eating, on: TODAY, time: None, words, fall: None }
    }

    fn noticed() -> Observation {
        let seen = seen("Ate half a slice of toast");
        Observation::new(1.into(), seen, (2.into(), at(0)), TODAY).expect("kept")
    }

    fn voice(signs_in: bool, has_died: bool) -> Voice {
        Voice { signs_in, has_died, deciders: Vec::new() }
    }

    fn note(text: &str) -> Option<Note> {
        Some(Note::from(text.to_owned()))
    }

    #[test]
    fn it_is_of_a_day_that_has_come_and_its_words_are_the_observers() {
        let tomorrow = Seen { on: date!(2026 - 11 - 26), ..seen("x") };
        assert!(Observation::new(1.into(), tomorrow, (2.into(), at(0)), TODAY).is_err());
        assert!(noticed().put_right(seen("Ate it all"), (3.into(), at(9)), TODAY).is_err());
        let right = noticed().put_right(seen("Ate it all"), (2.into(), at(9)), TODAY);
        assert_eq!(right.expect("put right").worded_at, at(9));
        let same = noticed().put_right(seen("Ate half a slice of toast"), (2.into(), at(9)), TODAY);
        assert_eq!(same.expect("the same").worded_at, at(0));
    }

    #[test]
    fn what_was_a_fall_loses_what_belongs_to_one() {
        let fall = Fall { place: None, up: GotUp::Alone, head: Known::Yes, hurt: Known::No };
        let fell = Seen { about: Subject::Fall, fall: Some(fall.clone()), ..seen("Slipped") };
        let fell = noticed().put_right(fell, (2.into(), at(9)), TODAY).expect("a fall");
        assert!(fell.hit_the_head());
        assert_eq!(fell.fall(), Some(fall));
        let not = fell.put_right(seen("Sat down hard"), (2.into(), at(9)), TODAY).expect("none");
        assert_eq!(not.fall(), None);
        assert!(!not.hit_the_head());
    }

    #[test]
    fn only_the_person_speaks_where_she_signs_in_and_nobody_for_the_dead() {
        let may = |role, signs_in, died| may_speak(role, &voice(signs_in, died));
        assert!(may(Role::Person, true, false) && !may(Role::Steward, true, false));
        assert!(may(Role::Steward, false, false) && !may(Role::Relative, false, false));
        assert!(!may(Role::Steward, false, true));
        let shown = |member: i64, role, signs_in| {
            noticed().may_be_shown_by(member.into(), role, &voice(signs_in, false))
        };
        assert!(shown(1, Role::Person, true) && !shown(2, Role::Aide, true));
        assert!(shown(2, Role::Aide, false) && !shown(3, Role::Steward, false));
    }

    #[test]
    fn an_answer_says_who_entered_it_and_can_be_taken_away() {
        assert!(noticed().answered(None, (1.into(), at(5)), Role::Person).is_err());
        let hers = noticed().answered(note("I was not hungry"), (1.into(), at(5)), Role::Person);
        let hers = hers.expect("answered");
        assert_eq!((hers.answer_by, hers.answer_for_her), (Some(1.into()), Some(false)));
        assert!(!hers.is_reworded());
        let later = hers.put_right(seen("Ate nothing"), (2.into(), at(9)), TODAY).expect("right");
        assert!(later.is_reworded());
        assert_eq!(hers.answered(None, (1.into(), at(7)), Role::Person).unwrap(), noticed());
        let entered = noticed().answered(note("No"), (3.into(), at(5)), Role::Steward).unwrap();
        assert_eq!(entered.answer_for_her, Some(true));
    }

    #[test]
    fn what_she_took_off_the_sheets_only_she_puts_back() {
        let visit = Some((7.into(), TODAY));
        let ticked = noticed().ticked(visit, Role::Aide).expect("ticked");
        assert_eq!(ticked.visit(), visit);
        assert!(!ticked.ticked(None, Role::Steward).unwrap().off_sheets);
        let off = ticked.ticked(None, Role::Person).expect("taken off");
        assert!(off.visit().is_none() && off.ticked(visit, Role::Steward).is_err());
        assert!(off.ticked(None, Role::Steward).unwrap().off_sheets);
        let again = off.ticked(visit, Role::Person).expect("put back");
        assert!(again.visit() == visit && !again.off_sheets);
    }
}
