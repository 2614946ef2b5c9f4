//! Reading the history as one member may read it.
//!
//! Entries of the record at hand, and of the house where they are about a member of it (sign-ins,
//! links for a new password) or about the whole house (that it was restored from a bad backup). What is hidden from the reader, and that it was hidden, is not
//! there; nor is an area her place does not reach.

use crate::base::{clock::Instant, ids::MemberId};
use crate::platform::{
    auth::{
        area::{AreaName, History},
        policy::{self, Level},
    },
    db::View,
    error::Result,
};
use std::collections::HashMap;

/// Which entries are wanted. Empty: all of them, the newest first.
#[derive(Clone, Debug, Default)]
pub struct Wanted {
    pub actor: Option<MemberId>,
    pub area: Option<String>,
    pub kind: Option<String>,
    pub item: Option<i64>,
    /// Only entries older than this one.
    pub before: Option<i64>,
    /// Only entries newer than this one.
    pub after: Option<i64>,
    pub not_by: Option<MemberId>,
    /// Only what changed something: no print, no sign-in, no reading.
    pub changes_only: bool,
    /// At most so many; a page of them where it is not said.
    pub most: Option<usize>,
}

/// How many entries one page shows.
pub const PAGE: usize = 100;

/// One entry as it was recorded.
#[derive(Debug)]
pub struct Recorded {
    pub id: i64,
    pub at: Instant,
    pub actor: MemberId,
    pub door: String,
    pub area: String,
    pub action: String,
    pub kind: String,
    pub item: i64,
    pub values: Vec<Difference>,
}

/// One field's difference, as JSON texts.
#[derive(Debug)]
pub struct Difference {
    pub field: String,
    pub old: Option<String>,
    pub new: Option<String>,
    pub erased: bool,
}

/// How many are looked at in one go, for a page of those the reader may see.
const STRIDE: usize = PAGE + 20;

impl View<History> {
    /// At most a page of entries, newest first. Only so much of the history is read as the page
    /// needs, however long it is.
    pub async fn history(&self, wanted: &Wanted) -> Result<Vec<Recorded>> {
        let (mut page, mut wanted) = (Vec::new(), wanted.clone());
        let most = wanted.most.unwrap_or(PAGE);
        loop {
            let ids = self.newest(&wanted).await?;
            let entries = self.shown(&ids, &wanted).await?.into_iter();
            page.extend(entries.filter(|it| self.sees(it)));
            if page.len() >= most || ids.len() < STRIDE {
                break;
            }
            wanted.before = ids.last().copied();
        }
        page.truncate(most);
        let mut values = self.values_of(&page).await?;
        for entry in &mut page {
            entry.values = values.remove(&entry.id).unwrap_or_default();
        }
        Ok(page)
    }

    /// Members are of the house; every reader of the history may know of their sign-ins. What the
    /// person answered is for her and for those who decide.
    fn sees(&self, entry: &Recorded) -> bool {
        let name = AreaName::ALL.into_iter().find(|it| it.name() == entry.area);
        let needs = if entry.kind == "answer" { Level::Change } else { Level::See };
        name.is_none_or(|it| policy::allows(self.reach(), it, needs))
    }

    /// The newest that are asked for, seen by this reader or not. Of the first four branches one
    /// runs, each along an index of its own; the last three bring the house's entries.
    async fn newest(&self, wanted: &Wanted) -> Result<Vec<i64>> {
        let person = self.person();
        let Wanted { actor, area, kind, item, .. } = wanted;
        let (before, after) = (wanted.before.unwrap_or(i64::MAX), wanted.after.unwrap_or(0));
        let stride = STRIDE as i64;
        self.values(sqlx::query_scalar!(
            r#"select id as "id!: i64" from history
            where ?3 is null and ?4 is null and ?5 is null and chain = ?1 and id < ?2 and id > ?8
            union all select id from history
            where ?3 is not null and chain = ?1 and actor = ?3 and (?4 is null or area = ?4) and id < ?2 and id > ?8
            union all select id from history
            where ?3 is null and ?4 is not null and chain = ?1 and area = ?4 and id < ?2 and id > ?8
            union all select id from history
            where ?5 is not null and chain = ?1 and kind = ?5 and item = ?6 and id < ?2 and id > ?8
            union all select id from history
            where ?3 is null and ?5 is null and (?4 is null or ?4 = 'house')
                and chain = 0 and kind = 'member' and id < ?2 and id > ?8
            union all select id from history
            where ?3 is not null and ?5 is null and (?4 is null or ?4 = 'house')
                and chain = 0 and actor = ?3 and kind = 'member' and id < ?2 and id > ?8
            union all select id from history
            where ?3 is null and ?5 is null and (?4 is null or ?4 = 'house')
                and chain = 0 and kind = 'house' and id < ?2 and id > ?8
            order by 1 desc limit ?7"#,
            person, before, actor, area, kind, item, stride, after
        ))
        .await
    }

    /// Those of these entries that the reader may see, newest first. The plus signs keep SQLite
    /// from walking a whole chain for them.
    async fn shown(&self, ids: &[i64], wanted: &Wanted) -> Result<Vec<Recorded>> {
        let (person, reader, ids) = (self.person(), self.member(), listed(ids));
        let Wanted { not_by, changes_only, .. } = wanted;
        let found = self.all(sqlx::query!(
            r#"select id as "id!: i64", at as "at: Instant", actor as "actor: MemberId", door, area, action, kind, item
            from history h
            where id in (select value from json_each(?3))
                and (+chain = ?1 or +chain = 0 and +kind = 'house' or +chain = 0 and +kind = 'member'
                    and item in (select member_id from membership s where s.person_id = ?1
                        and (s.state = 'standing' or h.at <= s.turned_at)))
                and not exists (select 1 from hidden x where x.member_id = ?2 and x.standing
                    and x.person_id = ?1 and x.kind = h.kind and x.item = h.item)
                and not (kind = 'hidden' and item in (select id from hidden where member_id = ?2))
                and not (kind = 'answer' and item in (select a.id from answer a
                    join hidden x on x.person_id = ?1 and x.kind = a.about_kind
                        and x.item = a.about_item
                    where a.person_id = ?1 and x.member_id = ?2 and x.standing))
                and (?4 is null or actor <> ?4)
                and (not ?5 or action in ('added', 'edited', 'removed') and kind not in ('print', 'read_mark', 'member'))
            order by id desc"#,
            person, reader, ids, not_by, changes_only
        ));
        let entry = |it: (i64, Instant, MemberId, String, String, String, String, i64)| Recorded {
            id: it.0,
            at: it.1,
            actor: it.2,
            door: it.3,
            area: it.4,
            action: it.5,
            kind: it.6,
            item: it.7,
            values: Vec::new(),
        };
        let found = found.await?.into_iter();
        Ok(found
            .map(|it| {
                entry((it.id, it.at, it.actor, it.door, it.area, it.action, it.kind, it.item))
            })
            .collect())
    }

    async fn values_of(&self, entries: &[Recorded]) -> Result<HashMap<i64, Vec<Difference>>> {
        let person = self.person();
        let ids = listed(&entries.iter().map(|it| it.id).collect::<Vec<_>>());
        let found = self.all(sqlx::query!(
            "select v.history_id, v.field, v.old, v.new, v.salt
            from history_value v join history h on h.id = v.history_id
            where v.history_id in (select value from json_each(?)) and +h.chain in (0, ?)
            order by v.id",
            ids,
            person
        ));
        let mut of: HashMap<i64, Vec<Difference>> = HashMap::new();
        for it in found.await? {
            let erased = it.salt.is_none();
            let difference = Difference { field: it.field, old: it.old, new: it.new, erased };
            of.entry(it.history_id).or_default().push(difference);
        }
        Ok(of)
    }
}

/// Numbers as a JSON list: SQLite reads it as rows.
fn listed(ids: &[i64]) -> String {
    serde_json::json!(ids).to_string()
}
