//! The secret address of a member's calendar: of which records, since when; ended when she takes it back.

use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{FeedId, MemberId, PersonId},
};

#[derive(Clone, Debug, PartialEq)]
pub struct Feed {
    pub id: FeedId,
    pub member_id: MemberId,
    /// Of this record alone; `None`: of all that she shares.
    pub record_id: Option<PersonId>,
    pub made_at: Instant,
    pub ended_at: Option<Instant>,
    /// Whether anything opens it: a backup holds no secret.
    pub has_secret: bool,
    pub version: i64,
}

audited!(Feed as "feed" {
    member_id: "", record_id: "", made_at: "", ended_at: "",
} skip { id, has_secret, version });

impl Feed {
    pub fn new(member_id: MemberId, record_id: Option<PersonId>, made_at: Instant) -> Feed {
        Feed {
            id: FeedId::default(),
            member_id,
            record_id,
            made_at,
            ended_at: None,
            has_secret: true,
            version: 1,
        }
    }

    pub fn ended(&self, at: Instant) -> Feed {
        Feed { ended_at: Some(at), ..self.clone() }
    }

    /// Whether it is of this record.
    pub fn is_of(&self, record: PersonId) -> bool {
        self.record_id.is_none_or(|it| it == record)
    }
}
