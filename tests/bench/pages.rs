//! How long pages take on the server: `cargo bench --bench pages`. In process, through the whole
//! app with all its layers, against a record of 30 medicines; 1,000 requests each, one after the
//! other, after 50 that are not counted. Prints the median, the 95th percentile and the slowest.
//! A figure to look at, not a test: nothing fails here.

#[path = "../suite/support/mod.rs"]
#[allow(dead_code)]
mod support;

use std::time::{Duration, Instant};
use support::Family;

#[tokio::main]
async fn main() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for number in 1..=30 {
        ines.open(&family.at("/medicines/add")).await;
        ines.fill("Name", &format!("Medicine {number}")).fill("Strength", "20 mg");
        ines.fill("Dose", "1 tablet").fill("When", "in the morning").fill("What for", "the heart");
        ines.press("Add this medicine").await.answers(200);
    }
    for (name, path, times) in [
        ("medicine list, 30 lines", "/medicines", 1000),
        ("emergency sheet on screen", "/sheets/emergency", 1000),
        ("history, newest entries", "/history", 1000),
    ] {
        let mut took = Vec::new();
        for round in 0..times + 50 {
            let began = Instant::now();
            ines.get(&family.at(path)).await.answers(200);
            if round >= 50 {
                took.push(began.elapsed());
            }
        }
        report(name, took);
    }
    let mut took = Vec::new();
    for _ in 0..20 {
        let began = Instant::now();
        ines.send(&family.at("/sheets/emergency/print"), &[]).await.answers(200);
        took.push(began.elapsed());
    }
    report("emergency sheet as PDF, print noted", took);
}

fn report(name: &str, mut took: Vec<Duration>) {
    took.sort_unstable();
    let at = |part: usize| took[(took.len() - 1) * part / 100].as_secs_f64() * 1000.0;
    println!(
        "{name}: median {:.2} ms, 95 % {:.2} ms, slowest {:.2} ms ({} times)",
        at(50),
        at(95),
        at(100),
        took.len()
    );
}
