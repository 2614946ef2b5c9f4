//! What a happening is, and the rules for it.

use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{HappeningId, MemberId, PersonId},
    text::{Line, Note, first_words},
};
use crate::platform::{
    auth::area::Role,
    error::{Error, Result},
    web::form::FormErrors,
};

/// Where a happening belongs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Place {
    /// Nobody has said yet.
    Waiting,
    /// It is about an item of the record.
    About,
    /// It needs no other place.
    Alone,
}

#[derive(Clone, Debug, PartialEq)]
pub struct Happening {
    pub id: HappeningId,
    pub person_id: PersonId,
    pub words: Option<Note>,
    /// The sum of the photo, among the house's files.
    pub photo: Option<String>,
    /// When, in words, if not at the moment it was noted.
    pub happened: Option<Line>,
    pub noted_by: MemberId,
    pub noted_at: Instant,
    pub place: Place,
    pub about_kind: Option<String>,
    pub about_item: Option<i64>,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Happening as "happening" {
    words: "words", photo: "", happened: "when it happened", noted_by: "", noted_at: "",
    place: "", about_kind: "", about_item: "", struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// What is noted.
#[derive(Clone, Debug)]
pub struct Noted {
    pub words: Option<Note>,
    pub photo: Option<String>,
    pub happened: Option<Line>,
}

/// A title is the first words, up to so many letters.
const TITLE: usize = 60;

impl Happening {
    pub fn new(person_id: PersonId, noted: Noted, (by, at): (MemberId, Instant)) -> Result<Self> {
        let it = Happening {
            id: HappeningId::default(),
            person_id,
            words: noted.words,
            photo: noted.photo,
            happened: noted.happened,
            noted_by: by,
            noted_at: at,
            place: Place::Waiting,
            about_kind: None,
            about_item: None,
            struck: false,
            struck_reason: None,
            version: 1,
        };
        it.says_something()
    }

    fn says_something(self) -> Result<Self> {
        match self.words.is_none() && self.photo.is_none() {
            true => Err(FormErrors::at("words", "Write a few words, or choose a photo.").into()),
            false => Ok(self),
        }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Self> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Put right by the one who noted it. The photo stays.
    pub fn put_right(&self, noted: Noted, by: MemberId) -> Result<Self> {
        if !self.is_of(by) {
            return Err(Error::Forbidden);
        }
        let Noted { words, happened, .. } = noted;
        Happening { words, happened, ..self.clone() }.says_something()
    }

    pub fn is_of(&self, member: MemberId) -> bool {
        self.noted_by == member
    }

    /// Whether a member may strike it: her own, or as one who decides.
    pub fn may_be_struck_by(&self, member: MemberId, role: Role) -> bool {
        self.is_of(member) || role.decides()
    }

    /// Given its place: at an item, or (`None`) on its own.
    pub fn placed(&self, at: Option<(&str, i64)>) -> Self {
        Happening {
            place: if at.is_some() { Place::About } else { Place::Alone },
            about_kind: at.map(|(kind, _)| kind.to_owned()),
            about_item: at.map(|(_, item)| item),
            ..self.clone()
        }
    }

    pub fn about(&self) -> Option<(&str, i64)> {
        Some((self.about_kind.as_deref()?, self.about_item?))
    }

    pub fn waits(&self) -> bool {
        self.place == Place::Waiting && !self.struck
    }

    pub fn struck(&self, reason: Line) -> Self {
        Happening { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Self {
        Happening { struck: false, struck_reason: None, ..self.clone() }
    }

    /// Its first words, for lists and the history.
    pub fn title(&self) -> String {
        title(self.words.as_ref().map(Note::as_str))
    }
}

/// The first words of a text; a photo alone is called one.
pub fn title(words: Option<&str>) -> String {
    match words.filter(|it| !it.is_empty()) {
        Some(words) => first_words(words, TITLE),
        None => "a photo".into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn noted(words: Option<&str>, photo: Option<&str>) -> Noted {
        let words = words.map(|it| Note::from(it.to_owned()));
        Noted { words, photo: photo.map(str::to_owned), happened: None }
    }

    fn by(member: i64) -> (MemberId, Instant) {
        (member.into(), Instant::from_unix(0))
    }

    #[test]
    fn words_or_a_photo_are_needed() {
        let new = |words, photo| Happening::new(1.into(), noted(words, photo), by(2));
        assert!(new(Some("Slept well"), None).is_ok());
        assert!(new(None, Some("ab")).is_ok());
        assert!(new(None, None).is_err());
        let photo = new(None, Some("ab")).expect("kept");
        assert!(photo.put_right(noted(None, None), 2.into()).is_ok(), "the photo stays");
    }

    #[test]
    fn the_words_are_put_right_by_their_witness_alone() {
        let it = Happening::new(1.into(), noted(Some("Fell"), None), by(2)).expect("kept");
        assert!(it.put_right(noted(Some("Nearly fell"), None), 2.into()).is_ok());
        assert!(it.put_right(noted(Some("Nothing"), None), 3.into()).is_err());
        assert!(it.may_be_struck_by(2.into(), Role::Aide));
        assert!(!it.may_be_struck_by(3.into(), Role::Relative));
        assert!(it.may_be_struck_by(3.into(), Role::Person));
    }

    #[test]
    fn it_waits_until_it_has_a_place_or_is_struck() {
        let it = Happening::new(1.into(), noted(Some("Fell"), None), by(2)).expect("kept");
        assert!(it.waits());
        assert!(!it.placed(None).waits() && !it.struck(Line::from("twice".to_owned())).waits());
        assert_eq!(it.placed(Some(("medicine", 7))).about(), Some(("medicine", 7)));
        assert_eq!(it.placed(Some(("medicine", 7))).placed(None).about(), None);
    }

    #[test]
    fn a_title_ends_at_a_word() {
        assert_eq!(title(Some("Slept well\nand long")), "Slept well");
        assert_eq!(title(None), "a photo");
        let long = "She got up twice in the night, the second time she did not know which room";
        assert_eq!(
            title(Some(long)),
            "She got up twice in the night, the second time she did not …"
        );
        assert_eq!(title(Some(&"x".repeat(80))).chars().count(), 62);
    }
}
