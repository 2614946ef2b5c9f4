//! How far a member has confirmed having read: up to which entry of the history. It goes forward
//! only, and never past what there is.

use crate::audited;
use crate::base::{
    change::Change,
    ids::{MemberId, PersonId, ReadMarkId},
};
use crate::platform::{
    auth::area::{History, Notes},
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as, query_scalar};

#[derive(Clone, Debug, PartialEq)]
pub struct ReadMark {
    pub id: ReadMarkId,
    pub person_id: PersonId,
    pub member_id: MemberId,
    /// The newest entry that stood on the page when it was confirmed.
    pub upto: i64,
    pub version: i64,
}

audited!(ReadMark as "read_mark" {
    member_id: "", upto: "",
} skip { id, person_id, version });

impl ReadMark {
    fn none(person_id: PersonId, member_id: MemberId) -> ReadMark {
        ReadMark { id: ReadMarkId::default(), person_id, member_id, upto: 0, version: 0 }
    }

    fn up_to(&self, entry: i64, newest: i64) -> ReadMark {
        ReadMark { upto: self.upto.max(entry.min(newest)), ..self.clone() }
    }
}

/// How far this reader has confirmed; zero where she never has.
pub async fn mark(view: &View<History>) -> Result<i64> {
    Ok(find(view).await?.upto)
}

async fn find<A>(view: &View<A>) -> Result<ReadMark> {
    let (person, member) = (view.person(), view.member());
    let found = view.maybe(query_as!(
        ReadMark,
        "select id, person_id, member_id, upto, version from read_mark
        where person_id = ? and member_id = ?",
        person,
        member
    ));
    Ok(found.await?.unwrap_or_else(|| ReadMark::none(person, member)))
}

/// The newest entry there is.
pub async fn newest<A>(view: &View<A>) -> Result<i64> {
    let newest = view.values(query_scalar!(r#"select coalesce(max(id), 0) as "id!" from history"#));
    Ok(newest.await?.pop().unwrap_or(0))
}

pub async fn confirm(write: &mut Write<Notes>, upto: i64) -> Result<()> {
    let (before, newest) = (find(write).await?, newest(write).await?);
    let after = before.up_to(upto, newest);
    let (person, member) = (write.person(), write.member());
    if before.version == 0 {
        let added = query!(
            "insert into read_mark (person_id, member_id, upto) values (?, ?, ?)",
            person,
            member,
            after.upto
        );
        return write.apply(Change::Added(&after), added).await.map(|_| ());
    }
    let saved = query!(
        "update read_mark set upto = ?, version = version + 1
        where person_id = ? and id = ? and version = ?",
        after.upto,
        person,
        before.id,
        before.version
    );
    write.apply(Change::Edited(&before, &after), saved).await.map(|_| ())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reading_goes_forward_and_not_past_what_there_is() {
        let mark = ReadMark::none(1.into(), 2.into()).up_to(40, 50);
        assert_eq!(mark.upto, 40);
        assert_eq!(mark.up_to(30, 50).upto, 40);
        assert_eq!(mark.up_to(70, 50).upto, 50);
    }
}
