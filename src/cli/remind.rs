//! `kinsheaf remind`: what would be mailed to whom at a moment, and why; without `--dry-run` it is
//! put into the outbox as well, from which a running server sends it.

use super::{Outcome, database, print, system_clock};
use crate::{across::reminders, base::clock::Instant, platform::config::Config};

pub async fn remind(config: Config, at: Option<String>, dry_run: bool) -> Outcome {
    let now = match &at {
        Some(typed) => Instant::parse(typed)
            .ok_or("--at takes a moment with its offset, such as 2026-12-01T15:00:00Z.")?,
        None => system_clock().now(),
    };
    let db = database(&config).await?;
    let found = match dry_run {
        true => reminders::due(&db, now).await,
        false => reminders::plan(&db, config.base(), now).await,
    };
    db.close().await;
    let found = found.map_err(|e| format!("What is due could not be looked at: {e:?}"))?;
    for it in &found {
        println!("{}", it.in_words(now));
    }
    let (count, s) = (found.len(), if found.len() == 1 { "" } else { "s" });
    Ok(print(&match dry_run {
        true => format!("{count} reminder{s} would go at {now}. Nothing was written."),
        false => format!("{count} reminder{s} put into the outbox, due at {now}."),
    }))
}
