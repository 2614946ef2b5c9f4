//! A fresh data folder, a clock that stands still until it is moved, and the whole app.

use axum::Router;
use kinsheaf::{
    app,
    base::clock::{Clock, Instant},
    cli::story::{self, StoryClock, Told},
    platform::{
        auth::{doors::Operator, password::Hasher, throttle::Throttle},
        config::Config,
        db::Db,
        files::Files,
        house::{House, Parts},
        mail::Carrier,
        ocr::Ocr,
        pdf::Press,
        words::Shelves,
    },
};
use sqlx::{Connection, SqliteConnection, sqlite::SqliteConnectOptions};
use std::{
    path::Path,
    sync::{
        Arc,
        atomic::{AtomicI64, Ordering},
    },
};
use tempfile::TempDir;
use time::Duration;

/// Wednesday 25 November 2026, 15:12 UTC: 9:12 am in Duluth.
pub const NOW: i64 = 1_795_619_520;

pub struct TestHouse {
    folder: TempDir,
    seconds: Arc<AtomicI64>,
    pub house: House,
    pub app: Router,
}

impl TestHouse {
    pub async fn new() -> TestHouse {
        TestHouse::at("http://127.0.0.1:8317").await
    }

    /// A house reached at this base address.
    pub async fn at(base: &str) -> TestHouse {
        TestHouse::open(TempDir::new().expect("a folder"), base, NOW).await
    }

    /// The same folder and clock, opened anew.
    pub async fn over(closed: TestHouse) -> TestHouse {
        let now = closed.seconds.load(Ordering::SeqCst);
        TestHouse::open(closed.folder, "http://127.0.0.1:8317", now).await
    }

    /// A house in which the invented family's record was told, so many years of it and a month.
    pub async fn told(years: u8, now: i64) -> (TestHouse, Told) {
        let folder = TempDir::new().expect("a folder");
        let clock = StoryClock::new(Instant::from_unix(now));
        let db = Db::open(folder.path(), clock.clock()).await.expect("a database");
        let told =
            story::tell((&db, &Files::under(folder.path())), &clock, years).await.expect("a story");
        db.close().await;
        (TestHouse::open(folder, "http://127.0.0.1:8317", now).await, told)
    }

    async fn open(folder: TempDir, base: &str, now: i64) -> TestHouse {
        let seconds = Arc::new(AtomicI64::new(now));
        let ticking = seconds.clone();
        let clock = Clock::new(move || Instant::from_unix(ticking.load(Ordering::SeqCst)));
        let (data, base) = (folder.path().display().to_string(), base.to_owned());
        let env = move |name: &str| match name {
            "KINSHEAF_DATA" => Some(data.clone()),
            "KINSHEAF_BASE_URL" => Some(base.clone()),
            _ => None,
        };
        let config = Config::read(env, |_| unreachable!("no files")).expect("settings");
        let files = Files::under(folder.path());
        let db = Db::open(folder.path(), clock.clone()).await.expect("a database");
        let house = House::new(Parts {
            db,
            files,
            clock,
            config,
            hasher: Hasher::new(),
            throttle: Throttle::new(),
            press: Press::new(),
            ocr: Ocr::on(folder.path().join("programs")),
            constraints: app::constraints(),
            shelves: Shelves::default(),
            carrier: Carrier::into_files(folder.path()),
            mails: true,
            demo: false,
        });
        let app = app::app(house.clone());
        TestHouse { folder, seconds, house, app }
    }

    pub fn folder(&self) -> &Path {
        self.folder.path()
    }

    /// The path below which everything is: empty where the house has its host to itself.
    pub fn base(&self) -> &str {
        self.house.config.base().path()
    }

    pub fn now(&self) -> Instant {
        self.house.clock.now()
    }

    /// Moves the clock, back or forth.
    pub fn pass(&self, span: Duration) {
        self.seconds.fetch_add(span.whole_seconds(), Ordering::SeqCst);
    }

    pub fn operator(&self) -> Operator {
        Operator::new(self.house.db.clone())
    }

    /// Another program with the database open.
    pub async fn outside(&self) -> SqliteConnection {
        let options = SqliteConnectOptions::new().filename(self.folder().join("kinsheaf.db"));
        SqliteConnection::connect_with(&options).await.expect("the database")
    }

    /// The mail that waits to be sent: recipient and text.
    pub async fn outbox(&self) -> Vec<(String, String)> {
        let mut db = self.outside().await;
        let rows = sqlx::query_as("select recipient, body from outbox order by id");
        rows.fetch_all(&mut db).await.expect("the outbox")
    }

    /// Every history verifies, and every row stands as its history says. Each journey ends so.
    pub async fn is_sound(&self) {
        let operator = self.operator();
        for chain in operator.chains().await.expect("chains") {
            let report = operator.verify(chain, None).await.expect("a report");
            assert!(report.sound(), "history {chain}: {:?}", report.faults);
        }
    }
}
