//! A program killed while it reads a paper: the paper still waits in the queue, and is read at the next
//! start. The clock here is the machine's.

use crate::journeys::a_pile_is_sorted::put_in;
use crate::support::{
    Family, TestHouse,
    paper::picture,
    reader::{self, stands},
    server::Server,
};
use std::time::{Duration, Instant};

const PATIENCE: Duration = Duration::from_secs(60);

async fn until(is: impl AsyncFn() -> bool) {
    let began = Instant::now();
    while !is().await {
        assert!(began.elapsed() < PATIENCE, "it did not come");
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
}

async fn state(house: &TestHouse) -> Vec<(String, i64)> {
    let rows = sqlx::query_as("select state, tries from paper_text order by id");
    rows.fetch_all(&mut house.outside().await).await.expect("the queue")
}

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn a_paper_that_was_being_read_at_a_kill_is_read_again() {
    let family = Family::new().await;
    family.house.pass(time::OffsetDateTime::now_utc() - family.house.now().utc());
    let mut ines = family.browser("Ines").await;
    put_in(&mut ines, &family, &[("a.png", picture(1)), ("b.png", picture(2))]).await;
    let (folder, programs) = (family.house.folder().to_owned(), reader::folder(&family.house));
    family.house.house.db.close().await;
    reader::installed(&programs);
    reader::program(&programs, "tesseract", r#"echo $$ >> "$0.begun"; exec sleep 15"#);
    let path = programs.display().to_string();
    let begun = programs.join("tesseract.begun");
    for round in 1..=2 {
        let mut server = Server::with(&["serve"], &folder, &[("PATH", path.as_str())]);
        until(async || {
            std::fs::read_to_string(&begun).unwrap_or_default().lines().count() >= 2 * round
        })
        .await;
        server.kill();
        assert_eq!(
            state(&family.house).await,
            [("waiting".to_owned(), 0), ("waiting".to_owned(), 0)]
        );
    }
    reader::installed(&programs);
    for width in [1, 2] {
        stands(&programs, &picture(width), "What stands there");
    }
    let _server = Server::with(&["serve"], &folder, &[("PATH", path.as_str())]);
    until(async || state(&family.house).await.iter().all(|it| it == &("read".to_owned(), 1))).await;
}
