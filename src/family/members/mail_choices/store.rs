//! All the SQL of what members want mailed.

use super::{
    model::{HowOften, Leads, MailChoice, Whose},
    quiet::{QuietHours, WallTime},
};
use crate::base::{
    change::Change,
    ids::{MemberId, PersonId},
};
use crate::platform::{
    auth::area::{Own, Role},
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_as};

/// Every choice that was made.
pub async fn all(view: &View<Own>) -> Result<Vec<MailChoice>> {
    view.all(query_as!(
        MailChoice,
        r#"select id, record_id, member_id, appointments as "appointments: Whose",
            leads as "leads: Leads", tasks as "tasks: Whose", supply as "supply: bool",
            renewal as "renewal: bool", trouble as "trouble: bool", digest as "digest: HowOften", version
        from mail_choice order by id"#
    ))
    .await
}

/// What a member chose about a record, or what is usual for her role.
pub async fn find(
    view: &View<Own>,
    (record, member): (PersonId, MemberId),
    role: Role,
) -> Result<MailChoice> {
    let chosen = view.maybe(query_as!(
        MailChoice,
        r#"select id, record_id, member_id, appointments as "appointments: Whose",
            leads as "leads: Leads", tasks as "tasks: Whose", supply as "supply: bool",
            renewal as "renewal: bool", trouble as "trouble: bool", digest as "digest: HowOften", version
        from mail_choice where record_id = ? and member_id = ?"#,
        record,
        member
    ));
    Ok(chosen.await?.unwrap_or_else(|| MailChoice::usual(record, member, role)))
}

pub async fn save(write: &mut Write<Own>, old: &MailChoice, new: &MailChoice) -> Result<()> {
    let saved = match old.version {
        0 => {
            let added = query!(
                "insert into mail_choice (record_id, member_id, appointments, leads, tasks, supply,
                    renewal, trouble, digest)
                values (?, ?, ?, ?, ?, ?, ?, ?, ?)",
                new.record_id,
                new.member_id,
                new.appointments,
                new.leads,
                new.tasks,
                new.supply,
                new.renewal,
                new.trouble,
                new.digest
            );
            write.apply(Change::Added(new), added).await
        }
        _ => {
            let edited = query!(
                "update mail_choice set appointments = ?, leads = ?, tasks = ?, supply = ?,
                    renewal = ?, trouble = ?, digest = ?, version = version + 1
                where id = ? and version = ?",
                new.appointments,
                new.leads,
                new.tasks,
                new.supply,
                new.renewal,
                new.trouble,
                new.digest,
                old.id,
                old.version
            );
            write.apply(Change::Edited(old, new), edited).await
        }
    };
    saved.map(|_| ())
}

pub async fn all_quiet(view: &View<Own>) -> Result<Vec<QuietHours>> {
    view.all(query_as!(
        QuietHours,
        r#"select id, member_id, starts as "starts: WallTime", ends as "ends: WallTime", version
        from quiet_hours order by id"#
    ))
    .await
}

pub async fn quiet(view: &View<Own>, member: MemberId) -> Result<QuietHours> {
    let chosen = view.maybe(query_as!(
        QuietHours,
        r#"select id, member_id, starts as "starts: WallTime", ends as "ends: WallTime", version
        from quiet_hours where member_id = ?"#,
        member
    ));
    Ok(chosen.await?.unwrap_or_else(|| QuietHours::usual(member)))
}

pub async fn save_quiet(write: &mut Write<Own>, old: &QuietHours, new: &QuietHours) -> Result<()> {
    let saved = match old.version {
        0 => {
            let added = query!(
                "insert into quiet_hours (member_id, starts, ends) values (?, ?, ?)",
                new.member_id,
                new.starts,
                new.ends
            );
            write.apply(Change::Added(new), added).await
        }
        _ => {
            let edited = query!(
                "update quiet_hours set starts = ?, ends = ?, version = version + 1
                where id = ? and version = ?",
                new.starts,
                new.ends,
                old.id,
                old.version
            );
            write.apply(Change::Edited(old, new), edited).await
        }
    };
    saved.map(|_| ())
}
