//! What a paper is, and what may become of it: it waits, is filed, is replaced by a newer version, is
//! joined to another whose page it was, is struck as a mistake.

use super::kind::{Kind, Original};
use crate::audited;
use crate::base::{
    clock::Instant,
    day,
    ids::{ContactId, MemberId, PaperId, PersonId},
    text::{Line, Note},
};
use crate::platform::{
    error::{Error, Result},
    web::form::FormErrors,
};
use time::Date;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum State {
    /// In the tray.
    Waiting,
    Filed,
    /// Its pages are another paper's now.
    Joined,
}

#[derive(Clone, Debug, PartialEq)]
pub struct Paper {
    pub id: PaperId,
    pub person_id: PersonId,
    pub state: State,
    /// The name that the file had where it came from, cleaned.
    pub sent_as: Option<Line>,
    pub sent_by: MemberId,
    pub sent_at: Instant,
    pub kind: Option<Kind>,
    pub title: Option<Line>,
    pub dated_on: Option<Date>,
    pub contact_id: Option<ContactId>,
    pub from_name: Option<Line>,
    pub original: Option<Original>,
    pub original_where: Option<Line>,
    /// Only stewards and the person see it.
    pub stewards_only: bool,
    /// The last day on which it holds.
    pub expires_on: Option<Date>,
    pub note: Option<Note>,
    /// The directive whose scan it is, the visit or the appointment that it belongs to: `visit/7`.
    pub about: Option<String>,
    pub filed_by: Option<MemberId>,
    pub filed_at: Option<Instant>,
    pub joined_to: Option<PaperId>,
    pub replaced_by: Option<PaperId>,
    pub struck: bool,
    pub struck_reason: Option<Line>,
    pub version: i64,
}

audited!(Paper as "paper" {
    state: "", sent_as: "", sent_by: "", sent_at: "", kind: "kind", title: "title",
    dated_on: "date on the paper", contact_id: "", from_name: "sender", original: "original",
    original_where: "place of the original", stewards_only: "mark for stewards only",
    expires_on: "last day", note: "note", about: "", filed_by: "", filed_at: "", joined_to: "",
    replaced_by: "", struck: "struck", struck_reason: "reason",
} skip { id, person_id, version });

/// What is said of a paper when it is filed, or put right later.
#[derive(Clone, Debug)]
pub struct Filing {
    pub kind: Kind,
    pub title: Line,
    pub dated_on: Option<Date>,
    pub contact_id: Option<ContactId>,
    pub from_name: Option<Line>,
    pub original: Option<Original>,
    pub original_where: Option<Line>,
    pub stewards_only: bool,
    pub expires_on: Option<Date>,
    pub note: Option<Note>,
    pub about: Option<String>,
}

impl Filing {
    fn sound(self, today: Date) -> std::result::Result<Filing, FormErrors> {
        if let Some(on) = self.dated_on {
            FormErrors::unless_come("dated_on", on, today)?;
        }
        if self.expires_on.is_some_and(|last| self.dated_on.is_some_and(|on| last < on)) {
            return Err(FormErrors::at("expires_on", "This is before the date on the paper."));
        }
        if self.contact_id.is_some() && self.from_name.is_some() {
            return Err(FormErrors::at("from_name", "Choose a contact or enter a name, not both."));
        }
        if self.original == Some(Original::Elsewhere) && self.original_where.is_none() {
            return Err(FormErrors::at("original_where", "Say where the original is."));
        }
        Ok(self)
    }
}

impl Paper {
    pub fn arrived(
        person_id: PersonId,
        sent_as: Option<Line>,
        (sent_by, sent_at): (MemberId, Instant),
    ) -> Paper {
        Paper {
            id: PaperId::default(),
            person_id,
            state: State::Waiting,
            sent_as,
            sent_by,
            sent_at,
            kind: None,
            title: None,
            dated_on: None,
            contact_id: None,
            from_name: None,
            original: None,
            original_where: None,
            stewards_only: false,
            expires_on: None,
            note: None,
            about: None,
            filed_by: None,
            filed_at: None,
            joined_to: None,
            replaced_by: None,
            struck: false,
            struck_reason: None,
            version: 1,
        }
    }

    /// As it was when the form was opened, or `Stale`.
    pub fn opened_at(self, version: i64) -> Result<Self> {
        if self.version == version { Ok(self) } else { Err(Error::Stale) }
    }

    /// Filed out of the tray; one that is filed already is put right, and stays filed by whom it was.
    pub fn filed(
        &self,
        filing: Filing,
        (by, at): (MemberId, Instant),
        today: Date,
    ) -> Result<Self> {
        if self.state == State::Joined || self.struck {
            return Err(Error::NotFound);
        }
        let it = filing.sound(today)?;
        Ok(Paper {
            state: State::Filed,
            kind: Some(it.kind),
            title: Some(it.title),
            dated_on: it.dated_on,
            contact_id: it.contact_id,
            from_name: it.from_name,
            original: it.original,
            original_where: it.original_where,
            stewards_only: it.stewards_only,
            expires_on: it.expires_on,
            note: it.note,
            about: it.about,
            filed_by: self.filed_by.or(Some(by)),
            filed_at: self.filed_at.or(Some(at)),
            ..self.clone()
        })
    }

    /// Its pages went to another paper.
    pub fn joined(&self, to: PaperId) -> Self {
        Paper { state: State::Joined, joined_to: Some(to), ..self.clone() }
    }

    pub fn replaced(&self, by: PaperId) -> Self {
        Paper { replaced_by: Some(by), ..self.clone() }
    }

    /// No other stands in its place after all.
    pub fn standing_again(&self) -> Self {
        Paper { replaced_by: None, ..self.clone() }
    }

    pub fn struck(&self, reason: Line) -> Self {
        Paper { struck: true, struck_reason: Some(reason), ..self.clone() }
    }

    pub fn brought_back(&self) -> Self {
        Paper { struck: false, struck_reason: None, ..self.clone() }
    }

    pub fn waits(&self) -> bool {
        self.state == State::Waiting && !self.struck
    }

    /// Filed, and neither replaced nor struck.
    pub fn stands(&self) -> bool {
        self.state == State::Filed && self.replaced_by.is_none() && !self.struck
    }

    pub fn is_filed(&self) -> bool {
        self.state == State::Filed
    }

    pub fn title(&self) -> String {
        title(self.title.as_ref(), self.sent_as.as_ref())
    }

    pub fn about(&self) -> Option<(&str, i64)> {
        about(self.about.as_deref()?)
    }

    pub fn dated(&self) -> Option<String> {
        self.dated_on.map(day::words)
    }

    pub fn expires(&self) -> Option<String> {
        self.expires_on.map(day::words)
    }

    /// "at home: the drawer with the glasses"
    pub fn original_words(&self) -> Option<String> {
        let place = self.original_where.as_ref();
        Some(match (self.original, place) {
            (Some(original), Some(place)) => format!("{original}: {place}"),
            (Some(original), None) => original.to_string(),
            (None, place) => place?.to_string(),
        })
    }
}

/// The kind of what a paper is about, and which one.
pub fn about(kept: &str) -> Option<(&str, i64)> {
    let (kind, item) = kept.split_once('/')?;
    Some((kind, item.parse().ok()?))
}

/// What a paper is called: its title, or the name it came with while it has none.
pub fn title(title: Option<&Line>, sent_as: Option<&Line>) -> String {
    match title.or(sent_as) {
        Some(it) => it.to_string(),
        None => "a paper without a name".into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    fn line(text: &str) -> Line {
        Line::from(text.to_owned())
    }

    fn card() -> Filing {
        Filing {
            kind: Kind::InsuranceCard,
            title: line("Medicare card"),
            dated_on: Some(date!(2026 - 01 - 01)),
            contact_id: None,
            from_name: None,
            original: Some(Original::Person),
            original_where: None,
            stewards_only: false,
            expires_on: None,
            note: None,
            about: None,
        }
    }

    fn filed(filing: Filing) -> Result<Paper> {
        let by = (MemberId::from(2), Instant::from_unix(0));
        let sent = Some(line("scan.pdf"));
        Paper::arrived(1.into(), sent, by).filed(filing, by, date!(2026 - 11 - 25))
    }

    #[test]
    fn it_waits_until_it_is_filed_and_stands_until_it_is_replaced_or_struck() {
        let by = (MemberId::from(2), Instant::from_unix(0));
        let waiting = Paper::arrived(1.into(), Some(line("scan.pdf")), by);
        assert!(waiting.waits() && !waiting.stands());
        assert_eq!(waiting.title(), "scan.pdf");
        let it = filed(card()).expect("filed");
        assert!(!it.waits() && it.stands());
        assert_eq!((it.title(), it.filed_by), ("Medicare card".into(), Some(2.into())));
        assert!(!it.replaced(7.into()).stands() && it.replaced(7.into()).standing_again().stands());
        assert!(!it.struck(line("twice")).stands());
        let later = (MemberId::from(3), Instant::from_unix(9));
        let again = it.filed(card(), later, date!(2026 - 11 - 26)).expect("put right");
        assert_eq!((again.filed_by, again.filed_at), (it.filed_by, it.filed_at));
        assert!(waiting.joined(7.into()).filed(card(), later, date!(2026 - 11 - 26)).is_err());
    }

    #[test]
    fn what_cannot_be_so_is_refused() {
        assert!(filed(Filing { dated_on: Some(date!(2026 - 11 - 26)), ..card() }).is_err());
        assert!(filed(Filing { expires_on: Some(date!(2025 - 12 - 31)), ..card() }).is_err());
        assert!(filed(Filing { original: Some(Original::Elsewhere), ..card() }).is_err());
        let both =
            Filing { contact_id: Some(4.into()), from_name: Some(line("Dr Lind")), ..card() };
        assert!(filed(both).is_err());
        let place = Some(line("the bank’s box"));
        let bank = Filing { original: Some(Original::Elsewhere), original_where: place, ..card() };
        let bank = filed(bank).expect("filed");
        assert_eq!(bank.original_words().as_deref(), Some("elsewhere: the bank’s box"));
    }
}
