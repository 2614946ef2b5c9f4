//! The rows of one kind as they stood at a moment that is past, played from the history's entries.
//! What is hidden from the reader now was never there for her.

use crate::base::clock::Instant;
use crate::platform::{auth::area::History, db::View, error::Result};
use serde_json::Value;
use std::collections::BTreeMap;

/// The fields of a row, as JSON.
pub type Fields = BTreeMap<String, Value>;

impl View<History> {
    /// Each row that stood after everything up to this moment.
    pub async fn stood(&self, kind: &str, at: Instant) -> Result<BTreeMap<i64, Fields>> {
        let (person, member) = (self.person(), self.member());
        let values = self.all(sqlx::query!(
            r#"select h.item, h.action, v.field as "field?", v.new, v.salt
            from history h left join history_value v on v.history_id = h.id
            where h.chain = ?1 and h.kind = ?2 and h.at <= ?3
                and h.action in ('added', 'edited', 'removed')
                and not exists (select 1 from hidden x where x.member_id = ?4 and x.standing
                    and x.person_id = ?1 and x.kind = h.kind and x.item = h.item)
            order by h.id, v.id"#,
            person,
            kind,
            at,
            member
        ));
        let mut rows = BTreeMap::<i64, Fields>::new();
        for it in values.await? {
            if it.action == "removed" {
                rows.remove(&it.item);
                continue;
            }
            let row = rows.entry(it.item).or_default();
            let Some(field) = it.field else { continue };
            let kept = it.new.filter(|_| it.salt.is_some());
            match kept.and_then(|json| serde_json::from_str(&json).ok()) {
                Some(value) => row.insert(field, value),
                None => row.remove(&field),
            };
        }
        Ok(rows)
    }
}
