//! All the SQL of what is to be renewed.
//!
//! One that is hidden from the reader is not there, nor one about something that is; what else leaves
//! a thing out for her is known where the thing is kept (`across/renewals/sources`).

use super::{model::Renewal, rule::Rule};
use crate::base::{
    change::Change,
    ids::{MemberId, RenewalId},
    text::{Line, Note},
};
use crate::platform::{
    auth::{
        area::{AreaName, Papers, Role},
        lowered::Lowered,
        policy::{self, Level, Reach},
    },
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};
use time::Date;

/// Every one there ever was.
pub async fn list(view: &View<Papers>) -> Result<Vec<Renewal>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Renewal,
        r#"select id, person_id, about_kind, about_item, title as "title: Line",
            rule as "rule: Rule", last_on as "last_on: Date", every_months, issuer_days, form_days,
            note as "note: Note", held_on as "held_on: Date", renewer_id as "renewer_id: MemberId",
            renewing_since as "renewing_since: Date", lapsed_on as "lapsed_on: Date",
            lapsed_reason as "lapsed_reason: Line", struck as "struck: bool",
            struck_reason as "struck_reason: Line", version
        from renewal r
        where person_id = ?1
            and id not in (select item from hidden where kind = 'renewal' and member_id = ?2 and standing)
            and not exists (select 1 from hidden x where x.kind = r.about_kind
                and x.item = r.about_item and x.member_id = ?2 and x.standing)
        order by id"#,
        person,
        member
    ))
    .await
}

pub async fn add(write: &mut Write<Papers>, new: &Renewal) -> Result<RenewalId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into renewal (person_id, about_kind, about_item, title, rule, last_on,
                every_months, issuer_days, form_days, note, held_on, renewer_id, renewing_since,
                lapsed_on, lapsed_reason, struck, struck_reason)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.about_kind,
            new.about_item,
            new.title,
            new.rule,
            new.last_on,
            new.every_months,
            new.issuer_days,
            new.form_days,
            new.note,
            new.held_on,
            new.renewer_id,
            new.renewing_since,
            new.lapsed_on,
            new.lapsed_reason,
            new.struck,
            new.struck_reason
        ),
    );
    Ok(added.await?.into())
}

/// Keeps what was done; the first word about something kept elsewhere is added.
pub async fn save(write: &mut Write<Papers>, old: &Renewal, new: &Renewal) -> Result<()> {
    if old.version == 0 {
        return if old == new { Ok(()) } else { add(write, new).await.map(|_| ()) };
    }
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update renewal set title = ?, rule = ?, last_on = ?, every_months = ?, issuer_days = ?,
                form_days = ?, note = ?, held_on = ?, renewer_id = ?, renewing_since = ?,
                lapsed_on = ?, lapsed_reason = ?, struck = ?, struck_reason = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.title,
            new.rule,
            new.last_on,
            new.every_months,
            new.issuer_days,
            new.form_days,
            new.note,
            new.held_on,
            new.renewer_id,
            new.renewing_since,
            new.lapsed_on,
            new.lapsed_reason,
            new.struck,
            new.struck_reason,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Who can renew it: whose place stands and may change papers, and from whom it is not hidden.
pub async fn hands(view: &View<Papers>, of: &Renewal) -> Result<Vec<(MemberId, String)>> {
    let person = view.person();
    let found = view.all(query!(
        r#"select m.id as "id: MemberId", m.name, s.role as "role: Role", s.lowered
        from membership s join member m on m.id = s.member_id
        where s.person_id = ?1 and s.state = 'standing'
            and not exists (select 1 from hidden x where x.person_id = ?1 and x.member_id = m.id
                and x.standing and (x.kind = 'renewal' and x.item = ?2
                    or x.kind = ?3 and x.item = ?4))
        order by s.id"#,
        person,
        of.id,
        of.about_kind,
        of.about_item
    ));
    let may = |role: Role, lowered: String| {
        let reach = Reach { role, lowered: Lowered::from(lowered) };
        policy::level(reach, AreaName::Papers) == Level::Change
    };
    let all = found.await?.into_iter().filter(|it| may(it.role, it.lowered.clone()));
    Ok(all.map(|it| (it.id, it.name)).collect())
}
