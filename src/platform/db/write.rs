//! A write: an actor, one record, one transaction, and the history of what it does.
//!
//! `apply` is the only way to change a row, and records the change in the same transaction.
//! `commit` gives [`Committed`], the only thing that the answer to a POST can be made from, so
//! a forgotten commit does not compile. A write that is not committed is undone.

use super::{Db, Scope, Statement, View, view::Open, watch};
use crate::base::{
    change::{Audited, Change, Difference},
    check::Check,
    clock::Instant,
    ids::{MemberId, PersonId},
    text::Line,
};
use crate::platform::{
    audit,
    auth::{
        area::{Area, AreaName},
        policy::{self, Level},
    },
    error::{Error, Result},
    web::form::FormKey,
};
use std::ops::Deref;

/// Through which door an entry came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Door {
    Member,
    Visitor,
    System,
    Operator,
}

impl Door {
    pub fn name(self) -> &'static str {
        match self {
            Door::Member => "member",
            Door::Visitor => "visitor",
            Door::System => "system",
            Door::Operator => "operator",
        }
    }
}

/// One entry of the history, before it is chained.
pub(in crate::platform) struct Entry {
    pub chain: PersonId,
    pub actor: MemberId,
    pub area: AreaName,
    pub action: &'static str,
    pub kind: &'static str,
    pub item: i64,
    pub differences: Vec<Difference>,
    /// Made by `apply`: it accounts for a touched row.
    pub change: bool,
}

/// What one write has beside its scope.
#[derive(Clone)]
struct Hand {
    door: Door,
    at: Instant,
    key: Option<FormKey>,
    /// The area its entries belong to.
    area: AreaName,
}

#[must_use = "a write that is not committed is undone"]
pub struct Write<A> {
    view: View<A>,
    hand: Hand,
}

impl<A> Deref for Write<A> {
    type Target = View<A>;
    fn deref(&self) -> &View<A> {
        &self.view
    }
}

impl Db {
    /// Begins a write. A form that was already kept is answered as it was then.
    pub(in crate::platform) async fn write<A: Area>(
        &self,
        scope: Scope,
        door: Door,
        key: Option<FormKey>,
    ) -> Result<Write<A>> {
        let mut tx = self.writer.begin_with("begin immediate").await?;
        if let Some(key) = &key {
            let kept = sqlx::query_scalar!("select at from form_key where key = ?", key.0)
                .fetch_optional(&mut *tx)
                .await?;
            if kept.is_some() {
                return Err(Error::Repeated);
            }
        }
        let view = View::begin(tx, scope).await?;
        Ok(Write { view, hand: Hand { door, at: self.now(), key, area: A::NAME } })
    }
}

impl<A: Area> Write<A> {
    /// Entries of this write belong to the area that was looked at.
    pub(in crate::platform) fn about(mut self, area: AreaName) -> Self {
        self.hand.area = area;
        self
    }

    /// The moment of this write: one for all its rows.
    pub fn at(&self) -> Instant {
        self.hand.at
    }

    /// A check by the one who writes, at the moment of this write.
    pub fn check(&self, against: Line) -> Check {
        Check { at: self.at(), by: self.member(), against }
    }

    /// The same transaction under another area; `Forbidden` where the place may not change it.
    pub fn area<B: Area>(&self) -> Result<Write<B>> {
        if !policy::allows(self.reach(), B::NAME, Level::Change) {
            return Err(Error::Forbidden);
        }
        Ok(Write {
            view: View::of(self.open.clone(), self.scope),
            hand: Hand { area: B::NAME, ..self.hand.clone() },
        })
    }

    /// The same transaction in another record: only for the house's own doors.
    pub(in crate::platform) fn moved<B: Area>(
        &self,
        person: PersonId,
        member: MemberId,
    ) -> Result<Write<B>> {
        let view = self.view.moved(person, member)?;
        Ok(Write { view, hand: Hand { area: B::NAME, ..self.hand.clone() } })
    }

    /// Runs the statement and records the change. Gives the item's id.
    /// An edit that changes nothing runs nothing; a row that has moved on is `Stale`.
    pub async fn apply<T: Audited>(
        &mut self,
        change: Change<'_, T>,
        statement: Statement<'_>,
    ) -> Result<i64> {
        let differences = change.differences();
        if differences.is_empty() {
            return Ok(change.item());
        }
        let mut open = self.view.open.lock().await;
        let open = open.as_mut().ok_or(Error::Closed)?;
        let done = statement.execute(&mut *open.tx).await?;
        if done.rows_affected() != 1 {
            return Err(Error::Stale);
        }
        let item = match change {
            Change::Added(_) => done.last_insert_rowid(),
            _ => change.item(),
        };
        // A person's own row begins her chain: her id is not known before.
        let chain = if T::KIND == "person" { PersonId::from(item) } else { self.view.scope.person };
        open.entries.push(Entry {
            chain,
            actor: self.view.scope.member,
            area: self.hand.area,
            action: change.action(),
            kind: T::KIND,
            item,
            differences,
            change: true,
        });
        Ok(item)
    }

    /// Records something done that changes no row: an opening, a print, a sign-in.
    pub async fn did(&mut self, action: &'static str, kind: &'static str, item: i64) -> Result<()> {
        self.did_with(action, kind, item, Vec::new()).await
    }

    /// The same, with values that belong to what was done.
    pub async fn did_with(
        &mut self,
        action: &'static str,
        kind: &'static str,
        item: i64,
        differences: Vec<Difference>,
    ) -> Result<()> {
        let mut open = self.view.open.lock().await;
        open.as_mut().ok_or(Error::Closed)?.entries.push(Entry {
            chain: self.view.scope.person,
            actor: self.view.scope.member,
            area: self.hand.area,
            action,
            kind,
            item,
            differences,
            change: false,
        });
        Ok(())
    }

    /// Runs a statement on machinery: links, outgoing mail, names of medicines. The watch refuses
    /// anything else.
    pub async fn machinery(&self, statement: Statement<'_>) -> Result<u64> {
        let mut open = self.view.open.lock().await;
        let done = statement.execute(&mut *open.as_mut().ok_or(Error::Closed)?.tx).await?;
        Ok(done.rows_affected())
    }

    /// Keeps everything, with its history, or nothing.
    pub async fn commit(self) -> Result<Committed> {
        let Open { mut tx, entries } = self.view.open.lock().await.take().ok_or(Error::Closed)?;
        watch::account_for(&mut tx, &entries).await?;
        for entry in &entries {
            audit::append(&mut tx, entry, self.hand.door, self.hand.at).await?;
        }
        if let Some(FormKey(key)) = &self.hand.key {
            let at = self.hand.at;
            sqlx::query!("insert into form_key (key, at) values (?, ?)", key, at)
                .execute(&mut *tx)
                .await?;
            let stale = at.minus(time::Duration::days(7));
            sqlx::query!("delete from form_key where at < ?", stale).execute(&mut *tx).await?;
        }
        tx.commit().await?;
        Ok(Committed { person: self.view.scope.person })
    }
}

/// Proof that a write was kept.
pub struct Committed {
    pub(in crate::platform) person: PersonId,
}

/// What a handler of a POST gives.
pub type Done = Result<crate::platform::web::answer::Answer>;
