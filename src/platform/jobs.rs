//! Work of the house's own, in the same process: once at the start and then every minute, until
//! the program is told to stop.
//!
//! A job that fails says so in the log and is tried again a minute later. A minute that was missed
//! (the machine slept) is not made up for: a job looks at what has become due since it last looked.

use super::error::Result;
use std::{future::Future, time::Duration};
use tokio::{sync::watch, time::MissedTickBehavior};

const EVERY: Duration = Duration::from_secs(60);

pub async fn every_minute<F: Future<Output = Result<()>>>(
    name: &'static str,
    mut stop: watch::Receiver<bool>,
    mut work: impl FnMut() -> F,
) {
    let mut tick = tokio::time::interval(EVERY);
    tick.set_missed_tick_behavior(MissedTickBehavior::Skip);
    loop {
        tokio::select! {
            _ = tick.tick() => {}
            _ = stop.changed() => return,
        }
        if let Err(e) = work().await {
            tracing::error!(error = ?e, name, "a job failed, and is tried again in a minute");
        }
    }
}
