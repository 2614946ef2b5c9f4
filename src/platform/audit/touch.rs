//! Small looks at the history that any page may take: who is who, and who touched this last.

use crate::base::{clock::Instant, ids::MemberId};
use crate::platform::{db::View, error::Result};
use std::collections::HashMap;

/// The names of everyone who signs in here, for stamps and sentences.
pub struct Names(HashMap<MemberId, String>);

impl Names {
    pub fn of(&self, member: MemberId) -> &str {
        self.0.get(&member).map_or("someone", String::as_str)
    }
}

/// The last change of one item: by whom, when.
#[derive(Debug)]
pub struct Touch {
    pub by: String,
    pub at: Instant,
    pub added: bool,
}

impl<A> View<A> {
    pub async fn names(&self) -> Result<Names> {
        let all = self.all(sqlx::query!("select id, name from member")).await?;
        Ok(Names(all.into_iter().map(|it| (it.id.into(), it.name)).collect()))
    }

    /// The members of this record, by name: for choosing one.
    pub async fn members(&self) -> Result<Vec<(MemberId, String)>> {
        let person = self.person();
        let all = self.all(sqlx::query!(
            "select m.id, m.name from member m join membership s on s.member_id = m.id
            where s.person_id = ? order by s.id",
            person
        ));
        Ok(all.await?.into_iter().map(|it| (it.id.into(), it.name)).collect())
    }

    /// Which items of a kind were written down since a moment, the hidden ones too: only to be laid
    /// beside what the reader sees.
    pub async fn added_since(&self, kind: &str, since: Instant) -> Result<Vec<i64>> {
        let chain = self.person();
        self.values(sqlx::query_scalar!(
            r#"select item as "item!: i64" from history
            where chain = ? and kind = ? and action = 'added' and at >= ?"#,
            chain,
            kind,
            since
        ))
        .await
    }

    pub async fn last_change(&self, kind: &str, item: i64) -> Result<Option<Touch>> {
        let chain = self.person();
        let found = self.maybe(sqlx::query!(
            r#"select coalesce(m.name, 'the server') as "name!: String", h.at as "at: Instant", h.action
            from history h left join member m on m.id = h.actor
            where h.chain = ? and h.kind = ? and h.item = ? and h.action in ('added', 'edited')
            order by h.id desc limit 1"#,
            chain,
            kind,
            item
        ));
        let touch = found.await?;
        Ok(touch.map(|it| Touch { by: it.name, at: it.at, added: it.action == "added" }))
    }

    /// Whether this reader did the same with this item since a moment: what is opened again and
    /// again at one desk is noted once.
    pub async fn did_since(
        &self,
        (action, kind, item): (&str, &str, i64),
        since: Instant,
    ) -> Result<bool> {
        let (chain, actor) = (self.person(), self.member());
        let found = self.values(sqlx::query_scalar!(
            r#"select id as "id!: i64" from history
            where chain = ? and kind = ? and item = ? and actor = ? and action = ? and at > ?
            limit 1"#,
            chain,
            kind,
            item,
            actor,
            action,
            since
        ));
        Ok(!found.await?.is_empty())
    }

    /// When each item of a kind was last changed.
    pub async fn last_changes(&self, kind: &str) -> Result<Vec<(i64, Instant)>> {
        let chain = self.person();
        let all = self.all(sqlx::query!(
            r#"select item as "item!", max(at) as "at!: Instant" from history
            where chain = ? and kind = ? and action in ('added', 'edited') group by item"#,
            chain,
            kind
        ));
        Ok(all.await?.into_iter().map(|it| (it.item, it.at)).collect())
    }
}
