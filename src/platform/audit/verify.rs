//! Reading a chain anew: does every entry still hold what it held when it was written?
//!
//! Finds an edited, deleted, reordered or inserted entry, and a changed value. A cut tail is
//! found only against a hash kept elsewhere: every printed sheet carries one, and `--head`
//! takes it.

use super::{Link, RESTORED_UNSOUND, digest, fold};
use crate::base::{clock::Instant, ids::PersonId};
use crate::platform::error::Result;
use sqlx::SqliteConnection;
use std::fmt;

/// How many entries are in memory at a time.
pub(super) const PIECE: i64 = 500;

/// What a look through one chain found.
#[derive(Debug, Default)]
pub struct Report {
    pub entries: i64,
    pub head: String,
    pub faults: Vec<Fault>,
    /// When this house was restored from a backup that was not sound, and what was wrong with it.
    pub restored: Vec<(Instant, Vec<String>)>,
}

impl Report {
    pub fn sound(&self) -> bool {
        self.faults.is_empty()
    }
}

/// Something that is not as it was written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Fault {
    /// An entry is missing or out of order before this place.
    Gap { seq: i64 },
    /// An entry does not follow from the one before.
    Broken { seq: i64 },
    /// An entry's own content was changed.
    Edited { seq: i64 },
    /// A value that the entry tells of was changed.
    Value { seq: i64, field: String },
    /// The kept hash is nowhere in the chain: entries were cut off, or it is from another record.
    HeadUnknown,
    /// A row does not stand as its history says.
    Row { kind: String, item: i64, field: String },
    /// A row that belongs to this record is in another one, or in none.
    Moved { kind: String, item: i64 },
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::Gap { seq } => {
                write!(f, "an entry is missing or out of order before entry {seq}")
            }
            Fault::Broken { seq } => write!(f, "entry {seq} does not follow from the one before"),
            Fault::Edited { seq } => write!(f, "entry {seq} was changed after it was written"),
            Fault::Value { seq, field } => {
                write!(f, "a value of entry {seq} was changed after it was written: {field}")
            }
            Fault::HeadUnknown => f.write_str("the mark is not in this history"),
            Fault::Row { kind, item, field } if field.is_empty() => {
                write!(f, "{kind} {item} came or went without an entry")
            }
            Fault::Row { kind, item, field } => {
                write!(f, "{kind} {item} was changed without an entry: {field}")
            }
            Fault::Moved { kind, item } => {
                write!(f, "{kind} {item} was moved to another record without an entry")
            }
        }
    }
}

/// Every chain there must be: the house's, and one for each person. A person whose whole history
/// is gone is among them, and a history whose person is gone.
pub(in crate::platform) async fn chains(tx: &mut SqliteConnection) -> Result<Vec<PersonId>> {
    let found = sqlx::query_scalar!(
        r#"select chain as "chain!: i64" from (
            select 0 as chain union select id from person union select chain from history
        ) order by chain"#
    );
    let found = found.fetch_all(tx).await?;
    Ok(found.into_iter().map(PersonId::from).collect())
}

/// How many entries a chain has.
pub(in crate::platform) async fn length(tx: &mut SqliteConnection, chain: PersonId) -> Result<i64> {
    let found = sqlx::query_scalar!(
        r#"select coalesce(max(seq), 0) as "length!: i64" from history where chain = ?"#,
        chain
    );
    Ok(found.fetch_one(tx).await?)
}

impl Report {
    /// Verifies the chain of one person (zero: the house) within one snapshot. `head` may be
    /// the whole of a hash kept elsewhere, or its first 12 digits or more.
    pub(in crate::platform) async fn read(
        tx: &mut SqliteConnection,
        chain: PersonId,
        head: Option<&str>,
    ) -> Result<Report> {
        let mut report = Report::default();
        report.walk(tx, chain, head).await?;
        report.faults.extend(fold::compare(tx, chain).await?);
        report.restored = restored(tx).await?;
        Ok(report)
    }

    /// Piece by piece: a history of many years is never in memory whole.
    async fn walk(
        &mut self,
        tx: &mut SqliteConnection,
        chain: PersonId,
        head: Option<&str>,
    ) -> Result<()> {
        let (mut head_seen, mut last) = (false, i64::MIN);
        loop {
            let entries = sqlx::query!(
                "select id, chain, seq, at, actor, door, area, action, kind, item, previous, hash
                from history where chain = ? and id > ? order by id limit ?",
                chain,
                last,
                PIECE
            )
            .fetch_all(&mut *tx)
            .await?;
            let Some(end) = entries.last().map(|it| it.id) else { break };
            let mut digests = Digests::read(tx, chain, (last, end)).await?;
            last = end;
            for it in entries {
                let values = digests.of(it.id);
                let link = Link {
                    chain: it.chain,
                    seq: it.seq,
                    at: it.at,
                    actor: it.actor,
                    door: &it.door,
                    area: &it.area,
                    action: &it.action,
                    kind: &it.kind,
                    item: it.item,
                    previous: &it.previous,
                };
                self.follow(&link, &values, it.hash);
                head_seen |= head.is_some_and(|head| self.head.starts_with(head));
            }
        }
        if head.is_some() && !head_seen {
            self.faults.push(Fault::HeadUnknown);
        }
        Ok(())
    }

    /// Whether this link goes on from the one before, and is what its hash says.
    fn follow(&mut self, link: &Link<'_>, values: &Values, hash: String) {
        let seq = link.seq;
        if seq != self.entries + 1 {
            self.faults.push(Fault::Gap { seq });
        }
        if link.previous != self.head {
            self.faults.push(Fault::Broken { seq });
        }
        let wrong = values.wrong.iter().cloned();
        self.faults.extend(wrong.map(|field| Fault::Value { seq, field }));
        let listed: Vec<&str> = values.digests.iter().map(String::as_str).collect();
        if link.hash(&listed) != hash {
            self.faults.push(Fault::Edited { seq });
        }
        self.entries = seq;
        self.head = hash;
    }
}

/// Told by the house's own chain, for every record in it.
async fn restored(tx: &mut SqliteConnection) -> Result<Vec<(Instant, Vec<String>)>> {
    let told = sqlx::query!(
        r#"select h.at as "at: Instant", v.new from history h
            join history_value v on v.history_id = h.id and v.field = 'faults'
        where h.chain = 0 and h.kind = 'house' and h.action = ? order by h.id"#,
        RESTORED_UNSOUND
    );
    let faults = |new: Option<String>| serde_json::from_str(&new.unwrap_or_default());
    let told = told.fetch_all(tx).await?.into_iter();
    Ok(told.map(|it| (it.at, faults(it.new).unwrap_or_default())).collect())
}

/// The values of a piece of a chain, entry by entry.
struct Digests(std::collections::HashMap<i64, Values>);

#[derive(Default)]
struct Values {
    digests: Vec<String>,
    wrong: Vec<String>,
}

impl Digests {
    /// Of the entries after the first of these ids and up to the second.
    async fn read(
        tx: &mut SqliteConnection,
        chain: PersonId,
        (after, end): (i64, i64),
    ) -> Result<Digests> {
        let rows = sqlx::query!(
            "select v.history_id, v.field, v.old, v.new, v.salt, v.digest
            from history_value v join history h on h.id = v.history_id
            where h.chain = ? and v.history_id > ? and v.history_id <= ? order by v.id",
            chain,
            after,
            end
        )
        .fetch_all(tx)
        .await?;
        let mut of: std::collections::HashMap<i64, Values> = Default::default();
        for it in rows {
            let values = of.entry(it.history_id).or_default();
            // Without its salt a value was blanked by a lawful erasure: its digest stays.
            let told =
                it.salt.map(|salt| digest(&salt, &it.field, it.old.as_deref(), it.new.as_deref()));
            if told.is_some_and(|told| told != it.digest) {
                values.wrong.push(it.field);
            }
            values.digests.push(it.digest);
        }
        Ok(Digests(of))
    }

    fn of(&mut self, history: i64) -> Values {
        self.0.remove(&history).unwrap_or_default()
    }
}
