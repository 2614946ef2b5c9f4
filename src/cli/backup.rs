//! `kinsheaf backup`: everything in one file, beside a running server.

use super::{Outcome, system_clock, verify};
use crate::platform::{
    backup::{self, Kept},
    config::Config,
};
use std::{path::Path, process::ExitCode};

pub async fn backup(config: Config, file: &Path) -> Outcome {
    let made = backup::make(config.data(), file, system_clock().now()).await?;
    println!("{}", told(&made));
    println!("Kept in {}. It is not encrypted: whoever has it can read it.", file.display());
    let faults = made.look.faults();
    if faults.is_empty() {
        return Ok(ExitCode::SUCCESS);
    }
    Err(format!(
        "The record is not sound, so `restore` will refuse this backup unless it is told --even-if-unsound. Keep the earlier ones, and run `kinsheaf verify`.\n  {}",
        faults.join("\n  ")
    )
    .into())
}

/// What is in a backup: how many files, and each history with its newest mark.
pub(super) fn told(kept: &Kept) -> String {
    let manifest = &kept.manifest;
    let bytes: u64 = manifest.files.iter().map(|it| it.size).sum();
    let (files, at) = (manifest.files.len(), manifest.made_at);
    let things = if files == 1 { "file" } else { "files" };
    let first = format!("Backup of {at}: {files} {things}, {bytes} bytes.");
    let chains = kept.look.chains.iter().map(|(chain, report)| {
        let (name, entries, mark) = (verify::name(*chain), report.entries, &report.head);
        format!("{name}: {entries} entries; newest mark {mark}")
    });
    std::iter::once(first).chain(chains).collect::<Vec<_>>().join("\n")
}
