//! A note that one member is typing: the form as it stands, kept so that a dead battery loses
//! nothing, on whichever of her devices she goes on.
//!
//! Each form is a page of its own (`page`) and counts what it sends. A page goes on with what it kept
//! itself; what another page kept since is never overwritten in silence.

use crate::base::{
    clock::Instant,
    ids::{AppointmentId, ContactId, DraftId, MemberId, PersonId},
};
use time::Date;

#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    pub id: DraftId,
    pub person_id: PersonId,
    pub member_id: MemberId,
    pub appointment_id: Option<AppointmentId>,
    pub occurrence_on: Option<Date>,
    pub token: String,
    pub page: String,
    pub count: i64,
    pub fields: String,
    pub kept_at: Instant,
    pub version: i64,
}

/// What one page sends: which draft it means, and what it knows of it.
#[derive(Clone, Debug)]
pub struct Sent {
    pub meeting: Option<(AppointmentId, Date)>,
    /// The draft's own mark: the page that began it made it.
    pub token: String,
    pub page: String,
    pub count: i64,
    /// The version it was shown with; zero where there was none.
    pub version: i64,
    /// The fields of the form, as a form sends them.
    pub fields: String,
}

/// What becomes of a draft that a page sends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    Begin,
    Replace,
    /// The page itself has sent something newer already.
    Pass,
    /// Another page has kept something that this one has not seen.
    Conflict,
}

impl Sent {
    pub fn onto(&self, kept: Option<&Draft>) -> Step {
        match kept {
            None => Step::Begin,
            Some(kept) if kept.page == self.page => match self.count < kept.count {
                true => Step::Pass,
                false => Step::Replace,
            },
            Some(kept) if kept.version == self.version => Step::Replace,
            Some(_) => Step::Conflict,
        }
    }

    /// Whether a page that saves the note knows the draft as it stands. Where it was shown one
    /// and there is none any more, it was saved or thrown away elsewhere.
    pub fn knows(&self, kept: Option<&Draft>) -> bool {
        match kept {
            None => self.version == 0,
            Some(kept) => kept.page == self.page || kept.version == self.version,
        }
    }
}

impl Draft {
    pub fn meeting(&self) -> Option<(AppointmentId, Date)> {
        self.appointment_id.zip(self.occurrence_on)
    }

    /// The fields in order, each with its value.
    pub fn pairs(&self) -> Vec<(String, String)> {
        form_urlencoded::parse(self.fields.as_bytes()).into_owned().collect()
    }

    /// What stands in one of its fields.
    pub fn field(&self, name: &str) -> Option<String> {
        let found = self.pairs().into_iter().find(|(it, _)| it == name);
        found.map(|it| it.1.trim().to_owned()).filter(|it| !it.is_empty())
    }

    /// The contact that is chosen in it.
    pub fn contact(&self) -> Option<ContactId> {
        self.field("contact_id")?.parse().ok()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sent(page: &str, count: i64, version: i64) -> Sent {
        let (token, fields) = ("t".to_owned(), "said=Walk".to_owned());
        Sent { meeting: None, token, page: page.to_owned(), count, version, fields }
    }

    fn kept(page: &str, count: i64, version: i64) -> Draft {
        Draft {
            id: 1.into(),
            person_id: 1.into(),
            member_id: 2.into(),
            appointment_id: None,
            occurrence_on: None,
            token: "t".to_owned(),
            page: page.to_owned(),
            count,
            fields: "contact_id=4&said=+Walk+&decisions=".to_owned(),
            kept_at: Instant::from_unix(0),
            version,
        }
    }

    #[test]
    fn a_page_goes_on_with_its_own_and_never_over_anothers() {
        assert_eq!(sent("a", 1, 0).onto(None), Step::Begin);
        assert_eq!(
            sent("a", 3, 0).onto(Some(&kept("a", 2, 9))),
            Step::Replace,
            "an answer was lost"
        );
        assert_eq!(sent("a", 2, 9).onto(Some(&kept("a", 3, 9))), Step::Pass, "it came late");
        assert_eq!(
            sent("b", 1, 9).onto(Some(&kept("a", 7, 9))),
            Step::Replace,
            "it was shown that"
        );
        assert_eq!(sent("b", 1, 8).onto(Some(&kept("a", 7, 9))), Step::Conflict);
        assert_eq!(sent("b", 1, 0).onto(Some(&kept("a", 7, 1))), Step::Conflict);
    }

    #[test]
    fn who_saves_knows_the_draft_that_she_ends() {
        assert!(sent("a", 1, 0).knows(None));
        assert!(!sent("a", 1, 3).knows(None), "it was saved or thrown away elsewhere");
        assert!(sent("a", 1, 0).knows(Some(&kept("a", 1, 2))));
        assert!(!sent("b", 1, 1).knows(Some(&kept("a", 1, 2))));
    }

    #[test]
    fn its_fields_read_back() {
        let it = kept("a", 1, 1);
        assert_eq!(it.field("said").as_deref(), Some("Walk"));
        assert_eq!((it.field("decisions"), it.contact()), (None, Some(4.into())));
    }
}
