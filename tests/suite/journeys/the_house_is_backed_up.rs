//! The one who runs the server backs the house up while the family works, and restores it; what
//! is not whole, not as it was made, or not for this program becomes no folder at all.

use crate::support::{
    Family,
    archive::{Archive, backed_up},
    server::{Server, add_medicine, kinsheaf, ran, said},
};
use kinsheaf::platform::{
    backup::{self, Unsound},
    db::latest,
};
use sqlx::{AssertSqlSafe, Connection, SqliteConnection, sqlite::SqliteConnectOptions};
use std::{
    collections::BTreeSet,
    fs,
    os::unix::fs::PermissionsExt,
    path::{Path, PathBuf},
    process::Output,
    sync::atomic::{AtomicBool, Ordering},
    time::Duration,
};
use tempfile::TempDir;

/// What a restored house begins without.
const LEFT_BEHIND: [&str; 4] = ["session", "link", "form_key", "outbox"];

#[track_caller]
fn ends(output: &Output, code: i32, words: &str) {
    let said = said(output);
    assert_eq!(output.status.code(), Some(code), "{said}");
    assert!(said.contains(words), "{words:?} is not in {said}");
}

fn text(path: &Path) -> String {
    path.display().to_string()
}

fn back_up(data: &Path, file: &Path) -> Output {
    ran(&["backup", &text(file)], &[("KINSHEAF_DATA", &text(data))])
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).expect("a folder");
    let mut names: Vec<_> = entries
        .map(|it| it.expect("an entry").file_name().into_string().expect("a name"))
        .collect();
    names.sort();
    names
}

/// Every row of every table, as text, with the table's name before it.
async fn rows(folder: &Path) -> BTreeSet<String> {
    let options = SqliteConnectOptions::new().filename(folder.join("kinsheaf.db"));
    let mut db = SqliteConnection::connect_with(&options).await.expect("a database");
    let tables = "select name from sqlite_master where type = 'table' and name not like 'sqlite_%'";
    let tables: Vec<String> = sqlx::query_scalar(tables).fetch_all(&mut db).await.expect("tables");
    let mut rows = BTreeSet::new();
    // The index of the words of pages is left out, and built anew when a restored house is opened.
    let index = |it: &str| it.starts_with("page_") && it != "page_text";
    for table in tables.iter().filter(|it| !it.starts_with("_sqlx") && !index(it)) {
        let columns = format!("select name from pragma_table_info('{table}')");
        let columns: Vec<String> =
            sqlx::query_scalar(AssertSqlSafe(columns)).fetch_all(&mut db).await.expect("columns");
        let all = columns.iter().map(|it| format!("quote({it})")).collect::<Vec<_>>();
        let question = format!("select '{table} ' || {} from {table}", all.join(" || ',' || "));
        let found: Vec<String> =
            sqlx::query_scalar(AssertSqlSafe(question)).fetch_all(&mut db).await.expect("rows");
        rows.extend(found);
    }
    rows
}

fn of<'a>(rows: &'a BTreeSet<String>, table: &str) -> Vec<&'a String> {
    rows.iter().filter(|it| it.split(' ').next() == Some(table)).collect()
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_backup_made_while_the_family_writes_is_one_moment_of_it() {
    let family = Family::new().await;
    family.house.pass(time::OffsetDateTime::now_utc() - family.house.now().utc());
    let ines = family.browser("Ines").await;
    let cookie = format!("kinsheaf={}", ines.cookie("kinsheaf").expect("signed in"));
    family.house.house.db.close().await;
    let (data, place) = (family.house.folder().to_owned(), TempDir::new().expect("a folder"));
    let server = Server::start(&data);
    let before: Vec<String> = (0..20).map(|it| format!("Before{it}z")).collect();
    assert!(before.iter().all(|it| add_medicine(server.address, &cookie, it)));

    let (stop, at) = (AtomicBool::new(false), server.address);
    let write = |writer: usize| {
        let mut kept = 0;
        while !stop.load(Ordering::SeqCst) {
            assert!(add_medicine(at, &cookie, &format!("During{writer}x{kept}z")));
            kept += 1;
        }
        kept
    };
    let backups: Vec<PathBuf> = (0..4).map(|it| place.path().join(format!("{it}.zip"))).collect();
    let written: usize = std::thread::scope(|scope| {
        let writers: Vec<_> = (0..3).map(|writer| scope.spawn(move || write(writer))).collect();
        for file in &backups {
            ends(&back_up(&data, file), 0, "newest mark");
        }
        std::thread::sleep(Duration::from_millis(50));
        stop.store(true, Ordering::SeqCst);
        writers.into_iter().map(|it| it.join().expect("a writer")).sum()
    });
    let live = rows(&data).await;
    assert_eq!(of(&live, "medicine").len(), 20 + written);
    let mut meanwhile = BTreeSet::new();
    for file in &backups {
        let folder = file.with_extension("d");
        let restored = ran(&["restore", &text(file), "--data", &text(&folder)], &[]);
        ends(&restored, 0, "Everyone signs in anew.");
        let settings = [("KINSHEAF_DATA", &*text(&folder))];
        ends(&ran(&["verify"], &settings), 0, "Record 1:");
        let kept = rows(&folder).await;
        assert!(kept.is_subset(&live), "{:?}", kept.difference(&live).next());
        let (names, count) = (of(&kept, "medicine"), of(&kept, "medicine").len());
        assert!(before.iter().all(|it| names.iter().any(|row| row.contains(it.as_str()))));
        for table in LEFT_BEHIND {
            assert!(of(&kept, table).is_empty(), "{table} came along");
        }
        meanwhile.insert(count);
    }
    assert!(of(&live, "session").len() + of(&live, "form_key").len() > 0);
    let most = 20 + written;
    assert!(meanwhile.iter().any(|it| (21..most).contains(it)), "{meanwhile:?} of {most}");
}

#[tokio::test]
async fn everything_that_belongs_comes_back_and_nothing_else() {
    let (data, _place, file) = backed_up().await;
    let path = data.folder();
    fs::write(path.join("kinsheaf.db.before-6"), "from before").expect("a file");
    fs::write(path.join("kinsheaf.db.next"), "half made").expect("a file");
    fs::write(path.join("kinsheaf.db.backup"), "left by an interrupted one").expect("a file");
    fs::write(path.join("serving.lock"), "").expect("a file");
    let second = file.with_file_name("second.zip");
    fs::write(file.with_file_name("second.zip.part"), "interrupted").expect("a file");
    ends(&back_up(path, &second), 0, "Backup of ");
    assert!(!path.join("kinsheaf.db.backup").exists());
    assert_eq!(fs::metadata(&second).expect("a file").permissions().mode() & 0o777, 0o600);
    assert!(!file.with_file_name("second.zip.part").exists());
    let archive = Archive::read(&second);
    let inside =
        ["manifest.json", "data/kinsheaf.db", "data/papers/ab/card.pdf", "data/secret.key"];
    assert_eq!(archive.names(), inside);
    let manifest = archive.manifest();
    assert_eq!((&manifest["format"], &manifest["database"]), (&1.into(), &latest().into()));
    assert_eq!(manifest["program"], env!("CARGO_PKG_VERSION"));

    // Into a folder that is there and empty, spelled as people spell it.
    let folder = second.with_file_name("restored");
    fs::create_dir(&folder).expect("a folder");
    backup::restore(&second, &folder.join("../restored/"), Unsound::Refused)
        .await
        .expect("restored");
    assert_eq!(names(&folder), ["kinsheaf.db", "papers", "secret.key"]);
    let kept = fs::read(folder.join("papers/ab/card.pdf")).expect("a file");
    assert_eq!(kept, fs::read(path.join("papers/ab/card.pdf")).expect("a file"));
    assert_eq!(fs::metadata(&folder).expect("a folder").permissions().mode() & 0o777, 0o700);
    let key = fs::metadata(folder.join("secret.key")).expect("a file");
    assert_eq!(key.permissions().mode() & 0o777, 0o600);
    let (live, kept) = (rows(path).await, rows(&folder).await);
    let moved: Vec<_> = live.difference(&kept).collect();
    let left = |row: &&&String| LEFT_BEHIND.contains(&row.split(' ').next().expect("a table"));
    assert!(kept.is_subset(&live) && !moved.is_empty());
    assert_eq!(moved.iter().filter(left).count(), moved.len(), "{moved:?}");
}

#[tokio::test]
async fn nothing_is_overwritten_and_an_end_midway_leaves_no_backup() {
    let (data, place, file) = backed_up().await;
    let path = data.folder();
    let whole = fs::read(&file).expect("a file");
    ends(&back_up(path, &file), 1, "is there already and is left as it is.");
    assert!(fs::read(&file).expect("a file") == whole);
    ends(&back_up(path, &path.join("papers/own.zip")), 1, "would lie in the data folder");
    ends(&back_up(path, &place.path().join("gone/own.zip")), 1, "No such file");
    let empty = TempDir::new().expect("a folder");
    ends(&back_up(empty.path(), &place.path().join("x.zip")), 1, "There is no database at");
    assert!(names(empty.path()).is_empty());
    std::os::unix::fs::symlink("/", path.join("papers/elsewhere")).expect("a link");
    ends(&back_up(path, &place.path().join("x.zip")), 1, "papers/elsewhere in the data folder");
    fs::remove_file(path.join("papers/elsewhere")).expect("removed");

    // No file may grow beyond a size that the database still fits in, as on a disk that is full.
    let noise: Vec<u8> =
        (0..4_000_000u32).map(|it| (it.wrapping_mul(it ^ 0x9e37) >> 7) as u8).collect();
    fs::write(path.join("papers/long"), noise).expect("a file");
    let (program, full) = (kinsheaf(&[], &[]), place.path().join("full.zip"));
    for (ignoring, code) in [("trap '' XFSZ;", Some(1)), ("", None)] {
        let line = format!("{ignoring} ulimit -f 2000; exec \"$0\" backup \"$1\"");
        let mut limited = std::process::Command::new("sh");
        limited.args(["-c", &line]).arg(program.get_program()).arg(&full);
        let output = limited.env_clear().env("KINSHEAF_DATA", path).output().expect("ran");
        assert_eq!(output.status.code(), code, "{}", said(&output));
        assert!(!full.exists() && (code.is_none() || !full.with_extension("zip.part").exists()));
    }
    ends(&back_up(path, &full), 0, "Kept in");
    assert!(!names(path).contains(&"kinsheaf.db.backup".to_owned()));
}
