//! A program killed in the middle of writing leaves a record that opens, a history that verifies,
//! and every change that was answered. `KINSHEAF_KILL_ROUNDS` says how often (10 here, 200 in
//! `tests/long`).

use crate::support::{
    Browser, Family, TestHouse,
    family::PASSWORD,
    server::{Server, add_medicine},
};
use std::{net::SocketAddr, time::Duration};

#[tokio::test(flavor = "multi_thread", worker_threads = 2)]
async fn what_was_answered_is_there_after_a_kill() {
    let rounds = std::env::var("KINSHEAF_KILL_ROUNDS").ok().and_then(|it| it.parse().ok());
    let family = Family::new().await;
    // The server's clock is the machine's: the session must be new by it.
    family.house.pass(time::OffsetDateTime::now_utc() - family.house.now().utc());
    let ines = family.browser("Ines").await;
    let cookie = format!("kinsheaf={}", ines.cookie("kinsheaf").expect("signed in"));
    family.house.house.db.close().await;
    let folder = family.house.folder().to_owned();
    let mut answered = Vec::new();
    for round in 0..rounds.unwrap_or(10) {
        let mut server = Server::start(&folder);
        let writers: Vec<_> = (0..3)
            .map(|writer| {
                let (cookie, at) = (cookie.clone(), server.address);
                std::thread::spawn(move || write_until_killed(at, &cookie, round, writer))
            })
            .collect();
        std::thread::sleep(Duration::from_millis(60 + 23 * (round % 9)));
        server.kill();
        for writer in writers {
            answered.extend(writer.join().expect("a writer"));
        }
    }
    assert!(!answered.is_empty(), "nothing was written");
    let house = TestHouse::over(family.house).await;
    house.is_sound().await;
    let mut ines = Browser::new(&house.app);
    ines.open("/sign-in").await.fill("E-mail", "ines@example.org").fill("Password", PASSWORD);
    ines.press("Sign in").await.answers(200).open("/p/1/medicines").await;
    let page = ines.text();
    for name in &answered {
        assert!(page.contains(name), "{name} was answered and is lost");
    }
    println!("{} answered changes over {} kills", answered.len(), rounds.unwrap_or(10));
}

/// Adds medicines until the server is gone; gives those it answered.
fn write_until_killed(at: SocketAddr, cookie: &str, round: u64, writer: u64) -> Vec<String> {
    let mut kept = Vec::new();
    for number in 0..1000 {
        let name = format!("M{round}x{writer}x{number}z");
        if !add_medicine(at, cookie, &name) {
            break;
        }
        kept.push(name);
    }
    kept
}
