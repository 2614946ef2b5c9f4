//! What of a data folder belongs to the record, and which paths may stand in a backup.
//!
//! A path is spelled with `/`, from the data folder on. The database itself is not among the
//! files that are found: a snapshot of it takes its place. The same rule holds both ways: what
//! a backup would not take is refused at a restore, so that nobody can slip in, say, a
//! write-ahead log that SQLite would play back into the database.

use super::{Trouble, at};
use std::{fs, path::Path};

pub const DATABASE: &str = "kinsheaf.db";

/// Everything else at the top of the folder that tells nothing of the record: empty locks, the
/// mail that a demo writes, and what a file system keeps for itself.
const OTHERS: [&str; 3] = ["serving.lock", "mail", "lost+found"];

/// Whether a file at this path is taken along. Beside the database lie its own logs, the
/// databases kept from before an update, and half-made ones; `.part` is still being written.
pub fn belongs(path: &str) -> bool {
    let top = path.split('/').next().unwrap_or(path);
    let beside = top.starts_with(DATABASE) && path != DATABASE;
    !beside && !OTHERS.contains(&top) && !path.ends_with(".part")
}

/// Whether a path stays in the folder that it is joined to, on every system.
pub fn stays_within(path: &str) -> bool {
    let plain = !path.contains(['\\', ':', '\0']);
    plain && path.split('/').all(|part| !matches!(part, "" | "." | ".."))
}

/// The files of a data folder that belong, beside the database, in order.
pub fn files(folder: &Path) -> Result<Vec<String>, Trouble> {
    let (mut found, mut open) = (Vec::new(), vec![String::new()]);
    while let Some(below) = open.pop() {
        let here = folder.join(&below);
        for entry in fs::read_dir(&here).map_err(at(&here))? {
            let entry = entry.map_err(at(&here))?;
            let name = entry.file_name();
            let name = name.to_str().ok_or(Trouble::Odd(name.display().to_string()))?;
            let path = if below.is_empty() { name.into() } else { format!("{below}/{name}") };
            if path == DATABASE || !belongs(&path) {
                continue;
            }
            let kind = entry.file_type().map_err(at(&here))?;
            match (kind.is_dir(), kind.is_file() && stays_within(&path)) {
                (true, _) => open.push(path),
                (_, true) => found.push(path),
                // Left out in silence, a link to another disk would be missed only at a restore.
                _ => return Err(Trouble::Odd(path)),
            }
        }
    }
    found.sort();
    Ok(found)
}

#[cfg(test)]
mod tests {
    use super::*;
    use tempfile::TempDir;

    #[test]
    fn the_record_belongs_and_the_machinery_around_it_does_not() {
        for path in ["kinsheaf.db", "secret.key", "papers/ab/cd12", "papers/mail", "made-by-demo"] {
            assert!(belongs(path), "{path}");
        }
        for path in [
            "kinsheaf.db-wal",
            "kinsheaf.db-shm",
            "kinsheaf.db-journal",
            "kinsheaf.db.before-7",
            "kinsheaf.db.next",
            "kinsheaf.db.next-journal",
            "kinsheaf.db.backup",
            "kinsheaf.db/x",
            "serving.lock",
            "mail/1.eml",
            "lost+found/1",
            "papers/ab/cd12.part",
        ] {
            assert!(!belongs(path), "{path}");
        }
    }

    #[test]
    fn no_path_leaves_the_folder() {
        for path in ["kinsheaf.db", "papers/ab/cd12", "a/..b/c..", "papers/Ottoline's card.pdf"] {
            assert!(stays_within(path), "{path}");
        }
        for path in [
            "",
            "/",
            "/etc/passwd",
            "..",
            "../a",
            "a/../../b",
            "a/..",
            "./a",
            "a//b",
            "a/",
            "..\\a",
            "C:/a",
            "a\0b",
        ] {
            assert!(!stays_within(path), "{path:?}");
        }
    }

    #[test]
    fn files_are_found_in_order_and_links_are_refused() {
        let folder = TempDir::new().expect("a folder");
        let put = |path: &str| {
            let file = folder.path().join(path);
            fs::create_dir_all(file.parent().expect("a parent")).expect("a folder");
            fs::write(file, path).expect("a file");
        };
        for path in ["papers/b", "papers/a", "kinsheaf.db", "kinsheaf.db-wal", "secret.key"] {
            put(path);
        }
        let found = files(folder.path()).expect("found");
        assert_eq!(found, ["papers/a", "papers/b", "secret.key"]);
        std::os::unix::fs::symlink("/", folder.path().join("papers/c")).expect("a link");
        let refused = files(folder.path()).expect_err("refused");
        assert!(matches!(&refused, Trouble::Odd(path) if path == "papers/c"), "{refused}");
    }
}
