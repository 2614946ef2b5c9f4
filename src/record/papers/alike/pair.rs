//! What someone said of two papers that look alike: that they are two, or that they are the same one. It
//! holds for all of the family, so that nobody is asked twice, and can be taken back.

use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{MemberId, PaperId, PaperPairId, PersonId},
};
use crate::platform::web::form::Choice;

#[derive(Clone, Debug, PartialEq)]
pub struct PaperPair {
    pub id: PaperPairId,
    pub person_id: PersonId,
    /// The one that came first.
    pub first_id: PaperId,
    pub second_id: PaperId,
    pub answer: Answer,
    pub said_by: MemberId,
    pub said_at: Instant,
    pub version: i64,
}

audited!(PaperPair as "paper_pair" {
    first_id: "", second_id: "", answer: "answer", said_by: "", said_at: "",
} skip { id, person_id, version });

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Answer {
    #[serde(rename = "two papers")]
    #[sqlx(rename = "two papers")]
    Two,
    #[serde(rename = "the same paper")]
    #[sqlx(rename = "the same paper")]
    Same,
    /// Taken back: it is asked again.
    #[serde(rename = "not said")]
    #[sqlx(rename = "not said")]
    NotSaid,
}

impl Choice for Answer {
    const ALL: &'static [Answer] = &[Answer::Two, Answer::Same, Answer::NotSaid];

    fn words(self) -> &'static str {
        match self {
            Answer::Two => "two papers",
            Answer::Same => "the same paper",
            Answer::NotSaid => "not said",
        }
    }
}

impl PaperPair {
    pub fn said(
        person_id: PersonId,
        (a, b): (PaperId, PaperId),
        answer: Answer,
        (said_by, said_at): (MemberId, Instant),
    ) -> PaperPair {
        let id = PaperPairId::default();
        let (first_id, second_id) = (a.min(b), a.max(b));
        PaperPair { id, person_id, first_id, second_id, answer, said_by, said_at, version: 1 }
    }

    /// Said anew by someone.
    pub fn again(&self, answer: Answer, (said_by, said_at): (MemberId, Instant)) -> PaperPair {
        PaperPair { answer, said_by, said_at, ..self.clone() }
    }

    /// The other of the two, where it is about this one.
    pub fn other(&self, than: PaperId) -> Option<PaperId> {
        match (self.first_id, self.second_id) {
            (first, second) if first == than => Some(second),
            (first, second) if second == than => Some(first),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_papers_are_one_pair_whichever_is_named_first() {
        let by = (MemberId::from(2), Instant::from_unix(0));
        let said = |ids| PaperPair::said(1.into(), ids, Answer::Two, by);
        assert_eq!(said((7.into(), 4.into())), said((4.into(), 7.into())));
        let it = said((7.into(), 4.into()));
        assert_eq!((it.other(4.into()), it.other(7.into())), (Some(7.into()), Some(4.into())));
        assert_eq!(it.other(5.into()), None);
        let by = (MemberId::from(3), Instant::from_unix(9));
        let again = it.again(Answer::NotSaid, by);
        assert_eq!(
            (again.answer, again.said_by, again.first_id),
            (Answer::NotSaid, by.0, it.first_id)
        );
    }
}
