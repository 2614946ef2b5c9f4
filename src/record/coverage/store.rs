//! All the SQL of covers. One that is hidden from the reader is not there.

use super::{kind::Kind, model::Cover};
use crate::base::{
    change::Change,
    ids::CoverId,
    text::{Line, Phone},
};
use crate::platform::{
    auth::area::Papers,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Every cover there ever was, in the order they were written down.
pub async fn list(view: &View<Papers>) -> Result<Vec<Cover>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Cover,
        r#"select id, person_id, payer as "payer: Line", plan as "plan: Line",
            kind as "kind: Kind", calendar_year as "calendar_year: bool",
            member_number as "member_number: Line", group_number as "group_number: Line",
            rx_bin as "rx_bin: Line", rx_pcn as "rx_pcn: Line", rx_group as "rx_group: Line",
            phone as "phone: Phone", hours as "hours: Line", talks as "talks: Line",
            talks_until as "talks_until: Date", from_on as "from_on: Date",
            until_on as "until_on: Date", struck as "struck: bool",
            struck_reason as "struck_reason: Line", version
        from cover
        where person_id = ?1
            and id not in (select item from hidden where kind = 'cover' and member_id = ?2 and standing)
        order by id"#,
        person,
        member
    ))
    .await
}

pub async fn find(view: &View<Papers>, id: CoverId) -> Result<Cover> {
    let found = list(view).await?.into_iter().find(|it| it.id == id);
    found.ok_or(Error::NotFound)
}

pub async fn add(write: &mut Write<Papers>, new: &Cover) -> Result<CoverId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into cover (person_id, payer, plan, kind, calendar_year, member_number,
                group_number, rx_bin, rx_pcn, rx_group, phone, hours, talks, talks_until, from_on,
                until_on, struck, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.payer,
            new.plan,
            new.kind,
            new.calendar_year,
            new.member_number,
            new.group_number,
            new.rx_bin,
            new.rx_pcn,
            new.rx_group,
            new.phone,
            new.hours,
            new.talks,
            new.talks_until,
            new.from_on,
            new.until_on,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Papers>, old: &Cover, new: &Cover) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update cover set payer = ?, plan = ?, kind = ?, calendar_year = ?, member_number = ?,
                group_number = ?, rx_bin = ?, rx_pcn = ?, rx_group = ?, phone = ?, hours = ?,
                talks = ?, talks_until = ?, from_on = ?, until_on = ?, struck = ?,
                struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.payer,
            new.plan,
            new.kind,
            new.calendar_year,
            new.member_number,
            new.group_number,
            new.rx_bin,
            new.rx_pcn,
            new.rx_group,
            new.phone,
            new.hours,
            new.talks,
            new.talks_until,
            new.from_on,
            new.until_on,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// What each is called, for the history.
pub async fn titles(view: &View<Papers>) -> Result<Vec<(CoverId, String)>> {
    Ok(list(view).await?.into_iter().map(|it| (it.id, it.title())).collect())
}
