//! A view: one snapshot of one record, as one member may see it.
//!
//! The area is part of the type, so a function of the clinical store cannot be called with a
//! view of the members. `area` gives the same snapshot under another area, or nothing where
//! her place does not reach: panels on a joint page simply are not there.

use super::{Question, Scope};
use crate::base::ids::{MemberId, PersonId};
use crate::platform::{
    auth::{
        area::{Area, AreaName, Clinical, Essentials, Tasks},
        policy::{self, Level, Reach},
    },
    db::Entry,
    error::{Error, Result},
};
use sqlx::{
    FromRow, Sqlite, Transaction,
    query::QueryScalar,
    sqlite::{SqliteArguments, SqliteRow},
};
use std::{marker::PhantomData, sync::Arc};
use tokio::sync::Mutex;

pub struct View<A> {
    pub(super) open: Arc<Mutex<Option<Open>>>,
    pub(super) scope: Scope,
    area: PhantomData<fn() -> A>,
}

/// The transaction, shared by the views and writes of one request.
pub(super) struct Open {
    pub tx: Transaction<'static, Sqlite>,
    pub entries: Vec<Entry>,
}

impl<A> View<A> {
    pub(super) async fn begin(tx: Transaction<'static, Sqlite>, scope: Scope) -> Result<Self> {
        let open = Open { tx, entries: Vec::new() };
        Ok(View::of(Arc::new(Mutex::new(Some(open))), scope))
    }

    pub(super) fn of(open: Arc<Mutex<Option<Open>>>, scope: Scope) -> Self {
        View { open, scope, area: PhantomData }
    }

    /// The person whose record this is. Every query names it.
    pub fn person(&self) -> PersonId {
        self.scope.person
    }

    /// The member who looks. Every query of items leaves out what is hidden from her.
    pub fn member(&self) -> MemberId {
        self.scope.member
    }

    pub async fn all<T, F>(&self, question: Question<'_, F>) -> Result<Vec<T>>
    where
        F: FnMut(SqliteRow) -> sqlx::Result<T> + Send,
        T: Send + Unpin,
    {
        let mut open = self.open.lock().await;
        Ok(question.fetch_all(&mut *open.as_mut().ok_or(Error::Closed)?.tx).await?)
    }

    pub async fn maybe<T, F>(&self, question: Question<'_, F>) -> Result<Option<T>>
    where
        F: FnMut(SqliteRow) -> sqlx::Result<T> + Send,
        T: Send + Unpin,
    {
        let mut open = self.open.lock().await;
        Ok(question.fetch_optional(&mut *open.as_mut().ok_or(Error::Closed)?.tx).await?)
    }

    /// The one row, or "not found".
    pub async fn one<T, F>(&self, question: Question<'_, F>) -> Result<T>
    where
        F: FnMut(SqliteRow) -> sqlx::Result<T> + Send,
        T: Send + Unpin,
    {
        self.maybe(question).await?.ok_or(Error::NotFound)
    }

    pub async fn values<T>(
        &self,
        question: QueryScalar<'_, Sqlite, T, SqliteArguments>,
    ) -> Result<Vec<T>>
    where
        (T,): for<'r> FromRow<'r, SqliteRow>,
        T: Send + Unpin,
    {
        let mut open = self.open.lock().await;
        Ok(question.fetch_all(&mut *open.as_mut().ok_or(Error::Closed)?.tx).await?)
    }

    /// The newest hash of this record's history, as it stands in this snapshot.
    pub async fn head(&self) -> Result<String> {
        let chain = self.person();
        let head = self.values(sqlx::query_scalar!(
            "select hash from history where chain = ? order by seq desc limit 1",
            chain
        ));
        Ok(head.await?.pop().unwrap_or_default())
    }

    pub(in crate::platform) fn reach(&self) -> Option<Reach> {
        self.scope.reach
    }

    /// Whether the one who looks is the person or a steward; the house's own doors are as they are.
    pub fn decides(&self) -> bool {
        self.reach().is_none_or(|it| it.role.decides())
    }

    /// Whether the place sees an area that what is read here leans on.
    pub fn sees_area(&self, area: AreaName) -> bool {
        policy::allows(self.reach(), area, Level::See)
    }

    /// Whether the place may also change this area.
    pub fn may_change(&self) -> bool
    where
        A: Area,
    {
        policy::allows(self.reach(), A::NAME, Level::Change)
    }

    /// The same snapshot under another area; `None` where the place does not reach.
    pub fn area<B: Area>(&self) -> Option<View<B>> {
        let sees = policy::allows(self.reach(), B::NAME, Level::See);
        sees.then(|| View::of(self.open.clone(), self.scope))
    }
}

impl<A> View<A> {
    /// The same snapshot in another record: only for the house's own doors.
    pub(in crate::platform) fn moved<B: Area>(
        &self,
        person: PersonId,
        member: MemberId,
    ) -> Result<View<B>> {
        if self.reach().is_some() {
            return Err(Error::Forbidden);
        }
        let scope = Scope { person, member, reach: None };
        Ok(View::of(self.open.clone(), scope))
    }
}

impl View<Tasks> {
    /// Whether of the tasks only her own are there for her.
    pub fn own_only(&self) -> bool {
        policy::own_tasks_only(self.reach())
    }
}

impl View<Clinical> {
    /// Whether what was, a stopped medicine or a condition that is over, is not there for her.
    pub fn current_only(&self) -> bool {
        policy::current_only(self.reach())
    }
}

impl View<Essentials> {
    /// What the emergency sheet needs of another area. The essentials hold the whole sheet: a
    /// sheet with the medicines left out, for a member whose clinical area was lowered, would
    /// mislead whoever reads it. Only sheets ask by this door; hidden items stay hidden.
    pub fn for_sheet<B: Area>(&self) -> View<B> {
        View::of(self.open.clone(), self.scope)
    }

    /// The same of an area that may be closed to a member on purpose: nothing where it was lowered
    /// to nothing for her, also on the sheet. A role that has none of the area reads it there.
    pub fn for_sheet_unless_closed<B: Area>(&self) -> Option<View<B>> {
        let lowered = self.reach().and_then(|it| it.lowered.level(B::NAME));
        (lowered != Some(Level::None)).then(|| self.for_sheet())
    }
}
