//! The house's own walls, read from its source: imports go one way, a table has one owner, every
//! query stays in its record and leaves out what is hidden, files stay small.

mod owners;

use owners::OWNERS;
use std::{
    fs,
    path::{Path, PathBuf},
};

fn files(folder: &str, ending: &str) -> Vec<(String, String)> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut found = Vec::new();
    let mut open = vec![root.join(folder)];
    while let Some(path) = open.pop() {
        match path.is_dir() {
            true => open.extend(children(&path)),
            false if path.extension().is_some_and(|it| it == ending) => {
                let name = path.strip_prefix(root).expect("below").display().to_string();
                found.push((name, fs::read_to_string(&path).expect("a file")));
            }
            false => {}
        }
    }
    found.sort();
    found
}

fn children(path: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(path).expect("a folder");
    entries.map(|it| it.expect("an entry").path()).collect()
}

fn sources() -> Vec<(String, String)> {
    let found = files("src", "rs");
    assert!(found.len() > 40, "the sources were not found");
    found
}

/// Each layer, and the layers it may speak of.
const LAYERS: [(&str, &[&str]); 8] = [
    ("src/base/", &["base"]),
    ("src/platform/", &["base", "platform"]),
    ("src/record/", &["base", "platform"]),
    ("src/family/", &["base", "platform"]),
    ("src/across/", &["base", "platform", "record", "family", "across"]),
    ("src/app.rs", &["base", "platform", "record", "family", "across"]),
    ("src/cli/", &["base", "platform", "record", "family", "across", "app", "cli"]),
    ("src/main.rs", &["cli"]),
];
const ALL: [&str; 7] = ["base", "platform", "record", "family", "across", "app", "cli"];

/// The top-level names a source speaks of: `crate::x::`, and `x::` inside `use crate::{..}`.
fn speaks_of(source: &str) -> Vec<&'static str> {
    let mut text = source.to_owned();
    for import in source.split("use crate::{").skip(1) {
        let mut depth = 1;
        let mut top = String::new();
        for letter in import.chars() {
            match letter {
                '{' => depth += 1,
                '}' => depth -= 1,
                _ if depth == 1 => top.push(letter),
                _ => {}
            }
            if depth == 0 {
                break;
            }
        }
        for name in top.split(',') {
            text.push_str(&format!("\ncrate::{}", name.trim()));
        }
    }
    ALL.into_iter().filter(|it| mentions(&text, it)).collect()
}

fn mentions(text: &str, layer: &str) -> bool {
    text.match_indices(&format!("crate::{layer}")).any(|(at, found)| {
        let next = text[at + found.len()..].chars().next();
        !next.is_some_and(|it| it.is_alphanumeric() || it == '_')
    })
}

#[test]
fn imports_go_one_way() {
    for (name, source) in sources() {
        let Some((_, may)) = LAYERS.iter().find(|(prefix, _)| name.starts_with(prefix)) else {
            assert_eq!(name, "src/lib.rs", "no layer");
            continue;
        };
        for layer in speaks_of(&source) {
            assert!(may.contains(&layer), "{name} speaks of {layer}");
        }
    }
}

#[test]
fn a_capability_knows_no_sibling() {
    for (name, source) in sources() {
        let parts: Vec<&str> = name.split('/').collect();
        if !matches!(parts[1], "record" | "family") || parts.len() < 4 {
            continue;
        }
        for other in ["record", "family"] {
            for at in source.split(&format!("crate::{other}::")).skip(1) {
                assert!(at.starts_with(parts[2]), "{name} speaks of a sibling: {}", &at[..20]);
            }
        }
    }
}

#[test]
fn base_is_pure_and_the_clock_is_read_in_one_place() {
    for (name, source) in sources() {
        if name.starts_with("src/base/") {
            let code = source.replace("sqlx::Type", "");
            for foreign in ["axum", "sqlx::", "tokio", "std::fs", "std::env"] {
                assert!(!code.contains(foreign), "{name} speaks of {foreign}");
            }
        }
        for reading in ["now_utc(", "now_local(", "SystemTime::now"] {
            let may = name == "src/cli/mod.rs";
            assert!(may || !source.contains(reading), "{name} reads the clock");
        }
    }
}

/// A table is named in SQL by its owner's store; others may read the few that are shared.
#[test]
fn a_table_has_one_owner() {
    for (name, source) in sources() {
        for (table, owner) in OWNERS {
            for verb in ["from", "into", "update", "join"] {
                let speaks = source.match_indices(&format!("{verb} {table}")).any(|(at, found)| {
                    let next = source[at + found.len()..].chars().next();
                    next.is_some_and(|it| it.is_whitespace() || it == '"')
                });
                // What a backup leaves out is forgotten there.
                let may = name.starts_with(owner) || name == "src/platform/db/snapshot.rs";
                assert!(!speaks || may, "{name} has SQL of {table}");
            }
        }
        // Shared for reading; changed by the owner alone.
        for (table, owner) in [
            ("member", "src/family/members/"),
            ("membership", "src/family/members/"),
            ("invitation", "src/family/members/"),
            ("answer", "src/family/members/answers/"),
            ("person", "src/record/people/"),
            ("hidden", "src/across/visibility/"),
        ] {
            for verb in ["insert into", "update", "delete from"] {
                // A backup forgets the links of invitations.
                let forgets = name == "src/platform/db/snapshot.rs" && table == "invitation";
                let changes = source.contains(&format!("\"{verb} {table} ")) && !forgets;
                assert!(!changes || name.starts_with(owner), "{name} changes {table}");
            }
        }
    }
}

/// The SQL texts of a source: what stands in quotes and begins with a verb.
fn statements(source: &str) -> Vec<String> {
    let texts = source.split('"').filter(|it| {
        ["select ", "insert into ", "update ", "delete from "]
            .iter()
            .any(|verb| it.starts_with(verb))
    });
    // A raw string holds quotes of its own: take all to its end.
    let raw = source.split("r#\"").skip(1).filter_map(|it| it.split("\"#").next());
    texts.chain(raw).map(str::to_owned).collect()
}

/// The kinds of items that can be hidden.
const HIDDEN: &str = "medicine allergy contact condition operation happening observation question \
    decision directive appointment task visit renewal paper cover card refusal";

#[test]
fn every_query_of_a_record_names_its_person_and_leaves_out_what_is_hidden() {
    let mut seen = 0;
    for (name, source) in sources() {
        let kept = name.starts_with("src/record/")
            || name.starts_with("src/family/tasks/")
            || name.starts_with("src/family/carried/")
            || name.starts_with("src/family/decisions/");
        let store = name.ends_with("/store.rs") && kept;
        if !store {
            continue;
        }
        for sql in
            statements(&source).iter().filter(|it| !it.contains(" as \"") || it.contains("from"))
        {
            if !sql.contains(" from ")
                && !sql.contains("update ")
                && !sql.contains("insert")
                && !sql.contains("\n        from")
            {
                continue;
            }
            seen += 1;
            // Names of medicines are nobody's record.
            let shared = name.contains("/people/") || name.contains("/medicines/names/");
            let own = shared || sql.contains("person_id");
            assert!(own, "{name}: a query that names no person: {sql}");
            for kind in HIDDEN.split(' ') {
                // The last place in an order counts the hidden too, and shows nothing.
                let counts = sql.contains("max(call_order)") || sql.contains("max(place)");
                let reads = sql.contains(&format!("from {kind}\n"))
                    || sql.contains(&format!("from {kind} "));
                let hides = sql.contains("hidden") && sql.contains(&format!("kind = '{kind}'"));
                assert!(
                    !reads || hides || counts,
                    "{name}: a query that shows what is hidden: {sql}"
                );
            }
        }
    }
    assert!(seen > 12, "the stores were not read: {seen}");
}

#[test]
fn the_only_redirects_are_the_platforms() {
    for (name, source) in sources() {
        let foreign = source.contains("Redirect") || source.contains("SEE_OTHER");
        assert!(!foreign || name.starts_with("src/platform/web/"), "{name} redirects by itself");
        let dynamic = source.contains("AssertSqlSafe");
        let may =
            ["src/platform/db/watch.rs", "src/platform/audit/fold.rs"].contains(&name.as_str());
        assert!(!dynamic || may, "{name} puts SQL together");
    }
}

/// The sheet's own door past a lowered area stays the sheets' own.
#[test]
fn only_sheets_take_what_the_sheet_holds() {
    for (name, source) in sources() {
        let may = name.starts_with("src/across/sheets/") || name == "src/platform/db/view.rs";
        assert!(may || !source.contains("for_sheet"), "{name} passes by a lowered area");
    }
}

#[test]
fn files_stay_small() {
    let mut lines = Vec::new();
    for (folder, ending, most) in [
        ("src", "rs", 400),
        ("tests", "rs", 300),
        ("tests", "mjs", 300),
        ("tests", "sh", 300),
        ("templates", "html", 200),
        ("templates", "typ", 300),
        ("migrations", "sql", 200),
    ] {
        for (name, source) in files(folder, ending) {
            let count = source.lines().count();
            assert!(count <= most, "{name} has {count} lines, at most {most}");
            if folder == "src" {
                lines.push(count);
            }
        }
    }
    lines.sort_unstable();
    let median = lines[lines.len() / 2];
    assert!(median <= 150, "the median of the sources is {median} lines");
}

#[test]
fn every_source_begins_by_saying_what_it_is_for() {
    for (name, source) in sources() {
        assert!(source.starts_with("//!"), "{name} does not say what it is for");
    }
}
