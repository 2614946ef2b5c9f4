//! The routes of the house, read from its sources: what a router holds cannot be asked of it.

use std::{collections::BTreeSet, fs, path::Path};

/// The routes as the sources name them.
pub fn all() -> BTreeSet<(String, String)> {
    let mut found = BTreeSet::new();
    let mut open = vec![Path::new(env!("CARGO_MANIFEST_DIR")).join("src")];
    while let Some(path) = open.pop() {
        if path.is_dir() {
            open.extend(
                fs::read_dir(&path).expect("a folder").map(|it| it.expect("an entry").path()),
            );
        } else if path.extension().is_some_and(|it| it == "rs") {
            routes_of(&fs::read_to_string(&path).expect("a file"), &mut found);
        }
    }
    found
}

fn routes_of(source: &str, found: &mut BTreeSet<(String, String)>) {
    let each = source.split("let each = \"").nth(1).and_then(|it| it.split('"').next());
    for call in source.split(".route(").skip(1) {
        let call = call.split(".route(").next().unwrap_or(call);
        let call = call.split(".fallback").next().unwrap_or(call);
        let call = call.split("\n}").next().unwrap_or(call).trim_start();
        let quoted = call.split('"').nth(1).unwrap_or_default();
        let path = match call {
            it if it.starts_with("each") => each.unwrap_or_default().to_owned(),
            it if it.starts_with("&step(") => format!("{}/{quoted}", each.unwrap_or_default()),
            _ => quoted.to_owned(),
        };
        let verbs =
            [("get(", "GET"), ("post(", "POST"), ("patch(", "PATCH"), ("delete(", "DELETE")];
        for (verb, method) in verbs {
            if call.contains(verb) {
                found.insert((method.to_owned(), path.clone()));
            }
        }
    }
}
