//! The history as it is kept: entries chained by SHA-256, one chain a record.
//!
//! What is chained is the digest of each changed value with its own random salt, so a value can
//! be blanked by a lawful erasure while the chain still verifies. `verify` reads a chain anew;
//! `fold` compares what the history says with the rows as they stand.

mod fold;
pub mod past;
pub mod read;
mod touch;
mod verify;

use crate::base::{change::Difference, clock::Instant};
use crate::platform::{
    db::{Door, Entry},
    error::Result,
};
use serde_json::{Value, json};
use sha2::{Digest, Sha256};
use sqlx::SqliteConnection;
pub use touch::{Names, Touch};
pub use verify::{Fault, Report};
pub(in crate::platform) use verify::{chains, length};

/// What the history of the house tells where a backup was restored although it was not sound.
pub const RESTORED_UNSOUND: &str = "restored though not sound";

/// Appends one entry, in the transaction of the change it tells of.
pub(in crate::platform) async fn append(
    tx: &mut SqliteConnection,
    entry: &Entry,
    door: Door,
    at: Instant,
) -> Result<()> {
    let last = sqlx::query!(
        "select seq, hash from history where chain = ? order by seq desc limit 1",
        entry.chain
    )
    .fetch_optional(&mut *tx)
    .await?;
    let (last_seq, previous) = last.map_or((0, String::new()), |it| (it.seq, it.hash));
    let values: Vec<Kept> = entry.differences.iter().map(Kept::of).collect();
    let link = Link {
        chain: entry.chain.into(),
        seq: last_seq + 1,
        at: at.to_string(),
        actor: entry.actor.into(),
        door: door.name(),
        area: entry.area.name(),
        action: entry.action,
        kind: entry.kind,
        item: entry.item,
        previous: &previous,
    };
    let digests: Vec<&str> = values.iter().map(|it| it.digest.as_str()).collect();
    let hash = link.hash(&digests);
    let history = sqlx::query!(
        "insert into history (chain, seq, at, actor, door, area, action, kind, item, previous, hash)
        values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
        link.chain, link.seq, link.at, link.actor, link.door, link.area, link.action, link.kind,
        link.item, link.previous, hash
    )
    .execute(&mut *tx)
    .await?
    .last_insert_rowid();
    for (difference, kept) in entry.differences.iter().zip(&values) {
        sqlx::query!(
            "insert into history_value (history_id, field, old, new, salt, digest)
            values (?, ?, ?, ?, ?, ?)",
            history,
            difference.field,
            kept.old,
            kept.new,
            kept.salt,
            kept.digest
        )
        .execute(&mut *tx)
        .await?;
    }
    Ok(())
}

/// One link of a chain: everything of an entry but its values.
struct Link<'a> {
    chain: i64,
    seq: i64,
    at: String,
    actor: i64,
    door: &'a str,
    area: &'a str,
    action: &'a str,
    kind: &'a str,
    item: i64,
    previous: &'a str,
}

impl Link<'_> {
    /// SHA-256, as hex, of the canonical JSON (RFC 8785) of the link with its digests.
    fn hash(&self, digests: &[&str]) -> String {
        sha256(canonical(&json!({
            "chain": self.chain, "seq": self.seq, "at": self.at, "actor": self.actor,
            "door": self.door, "area": self.area, "action": self.action, "kind": self.kind,
            "item": self.item, "previous": self.previous, "digests": digests,
        })))
    }
}

/// One value as it is stored.
struct Kept {
    old: Option<String>,
    new: Option<String>,
    salt: String,
    digest: String,
}

impl Kept {
    fn of(difference: &Difference) -> Kept {
        let text = |value: &Option<Value>| value.as_ref().map(canonical);
        let (old, new) = (text(&difference.old), text(&difference.new));
        let salt = crate::platform::random::hex(16);
        let digest = digest(&salt, difference.field, old.as_deref(), new.as_deref());
        Kept { old, new, salt, digest }
    }
}

fn digest(salt: &str, field: &str, old: Option<&str>, new: Option<&str>) -> String {
    sha256(canonical(&json!([salt, field, old, new])))
}

/// RFC 8785 for what occurs here: text keys, whole numbers below 2^53, text. `serde_json` sorts
/// the keys and escapes as the standard asks (a test stands guard).
pub fn canonical(value: &Value) -> String {
    value.to_string()
}

pub fn sha256(of: impl AsRef<[u8]>) -> String {
    hex::encode(Sha256::digest(of))
}

/// A UUID of our own making (version 8, IETF RFC 9562 (2024), section 5.8) from what never changes: a
/// card or an appointment stays itself in other programs.
pub fn steady_uuid(of: &str) -> String {
    let hash = sha256(of);
    let digits = |from: usize, to: usize| &hash[from..to];
    format!(
        "{}-{}-8{}-8{}-{}",
        digits(0, 8),
        digits(8, 12),
        digits(12, 15),
        digits(15, 18),
        digits(18, 30)
    )
}

/// The first 16 digits of a hash in groups of four: short enough to print on every sheet.
pub fn mark(hash: &str) -> String {
    let digits: Vec<char> = hash.chars().take(16).collect();
    digits.chunks(4).map(String::from_iter).collect::<Vec<_>>().join(" ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn canonical_json_sorts_keys_and_escapes_as_rfc_8785_asks() {
        // RFC 8785 (2020) §3.2.3 sorts keys; §3.2.2.2 escapes only what JSON demands.
        let value: Value =
            serde_json::from_str(r#"{"b":1,"a":"\u20ac\u000a/é","A":null}"#).unwrap();
        assert_eq!(canonical(&value), "{\"A\":null,\"a\":\"€\\n/é\",\"b\":1}");
    }

    #[test]
    fn sha256_gives_the_published_value() {
        // NIST FIPS 180-4 example "abc" (value from memory, and the same in `sha256sum`).
        assert_eq!(
            sha256("abc"),
            "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
        );
    }
}
