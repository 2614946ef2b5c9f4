//! `kinsheaf restore`: what is in a backup becomes a data folder, or nothing does.

use super::{Outcome, backup::told, system_clock};
use crate::platform::backup::{self, Unsound};
use std::{path::Path, process::ExitCode};

pub async fn restore(file: &Path, folder: &Path, even_if_unsound: bool) -> Outcome {
    let unsound = match even_if_unsound {
        true => Unsound::Restored(system_clock()),
        false => Unsound::Refused,
    };
    let restored = backup::restore(file, folder, unsound).await?;
    println!("{}", told(&restored));
    println!("Restored into {}. Everyone signs in anew.", folder.display());
    let faults = restored.look.faults();
    if !faults.is_empty() {
        eprintln!(
            "\nWARNING: THIS RECORD IS NOT SOUND. It was restored because of --even-if-unsound.\n  {}\nCheck these against paper before anyone relies on them. The history tells of this restore, `kinsheaf verify` goes on to report what is listed here, and a backup of this record needs --even-if-unsound again.",
            faults.join("\n  ")
        );
    }
    Ok(ExitCode::SUCCESS)
}
