//! The manifest: what a backup says of itself, and each file with its size and SHA-256.
//!
//! It is read before anything else is believed. The format is looked at first, since a newer
//! program may have changed all the rest.

use super::{
    Trouble,
    contents::{DATABASE, belongs, stays_within},
};
use crate::{base::clock::Instant, platform::db};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;

/// The format that this program writes, and the newest that it reads.
pub const FORMAT: u32 = 1;

#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Manifest {
    pub format: u32,
    /// The version of the program that made the backup.
    pub program: String,
    /// The version of the database in it.
    pub database: i64,
    pub made_at: Instant,
    pub files: Vec<Listed>,
}

/// One file: its path from the data folder on, its size in bytes, its sum as hex.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Listed {
    pub path: String,
    pub size: u64,
    pub sha256: String,
}

/// The one field that every format has.
#[derive(Deserialize)]
struct Edition {
    format: u32,
}

impl Manifest {
    /// What this program, now, writes above these files.
    pub fn of(made_at: Instant, files: Vec<Listed>) -> Manifest {
        let program = env!("CARGO_PKG_VERSION").to_owned();
        Manifest { format: FORMAT, program, database: db::latest(), made_at, files }
    }

    pub fn text(&self) -> String {
        serde_json::to_string_pretty(self).expect("text, numbers and lists can be written")
    }

    /// Reads a manifest and demands that this program can restore what it lists.
    pub fn read(text: &[u8]) -> Result<Manifest, Trouble> {
        let unreadable = |_| Trouble::Altered("its manifest cannot be read".into());
        let Edition { format } = serde_json::from_slice(text).map_err(unreadable)?;
        if format > FORMAT {
            let knows =
                format!("its format is {format}, and this one knows formats up to {FORMAT}");
            return Err(Trouble::Newer(knows));
        }
        let manifest: Manifest = serde_json::from_slice(text).map_err(unreadable)?;
        manifest.demand_known_database()?;
        manifest.demand_paths()?;
        Ok(manifest)
    }

    fn demand_known_database(&self) -> Result<(), Trouble> {
        let (has, knows) = (self.database, db::latest());
        match has > knows {
            true => Err(Trouble::Newer(format!(
                "its database is at version {has}, and this one knows versions up to {knows}"
            ))),
            false => Ok(()),
        }
    }

    /// Each path once, inside the folder, and one that a backup takes; the database among them.
    fn demand_paths(&self) -> Result<(), Trouble> {
        let mut seen = BTreeSet::new();
        for Listed { path, .. } in &self.files {
            let wrong = match () {
                () if !stays_within(path) => "leaves the data folder",
                () if !belongs(path) => "is not a file that a backup takes",
                () if !seen.insert(path.as_str()) => "is listed twice",
                () => continue,
            };
            return Err(Trouble::Altered(format!("{path:?} {wrong}")));
        }
        match seen.contains(DATABASE) {
            true => Ok(()),
            false => Err(Trouble::Altered("there is no database in it".into())),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn listed(path: &str) -> Listed {
        Listed { path: path.into(), size: 3, sha256: "00".into() }
    }

    fn with(paths: &[&str]) -> Manifest {
        Manifest::of(Instant::from_unix(1_795_619_520), paths.iter().map(|it| listed(it)).collect())
    }

    #[test]
    fn a_manifest_reads_as_it_was_written() {
        let written = with(&["kinsheaf.db", "papers/a"]);
        assert!(written.text().contains("\"made_at\": \"2026-11-25T15:12:00Z\""));
        assert_eq!(Manifest::read(written.text().as_bytes()).expect("read"), written);
    }

    #[test]
    fn what_a_newer_program_made_is_refused_whatever_else_it_says() {
        for text in [
            Manifest { format: FORMAT + 1, ..with(&["kinsheaf.db"]) }.text(),
            format!(r#"{{"format": {}, "boxes": []}}"#, FORMAT + 1),
            Manifest { database: db::latest() + 1, ..with(&["kinsheaf.db"]) }.text(),
        ] {
            let refused = Manifest::read(text.as_bytes()).expect_err("refused");
            assert!(matches!(refused, Trouble::Newer(_)), "{refused}");
        }
        let older = Manifest { database: 1, ..with(&["kinsheaf.db"]) };
        assert!(Manifest::read(older.text().as_bytes()).is_ok());
    }

    #[test]
    fn paths_that_no_backup_has_are_refused() {
        for (paths, words) in [
            (&["kinsheaf.db", "../a"][..], "leaves the data folder"),
            (&["kinsheaf.db", "/etc/passwd"], "leaves the data folder"),
            (&["kinsheaf.db", "kinsheaf.db-wal"], "not a file that a backup takes"),
            (&["kinsheaf.db", "a", "a"], "listed twice"),
            (&["papers/a"], "no database"),
            (&[], "no database"),
        ] {
            let refused = Manifest::read(with(paths).text().as_bytes()).expect_err("refused");
            let altered = matches!(&refused, Trouble::Altered(it) if it.contains(words));
            assert!(altered, "{paths:?}: {refused}");
        }
    }

    #[test]
    fn what_is_no_manifest_is_refused() {
        let extra = with(&["kinsheaf.db"]).text().replacen('{', "{\"more\": 1,", 1);
        for text in ["", "{}", "[]", r#"{"format": 1}"#, &extra] {
            let refused = Manifest::read(text.as_bytes()).expect_err("refused");
            assert!(matches!(refused, Trouble::Altered(_)), "{text}: {refused}");
        }
    }
}
