//! `kinsheaf restore`: what is in a backup becomes a data folder, or nothing does.

use super::{Outcome, backup::told};
use crate::platform::backup;
use std::{path::Path, process::ExitCode};

pub async fn restore(file: &Path, folder: &Path) -> Outcome {
    let restored = backup::restore(file, folder).await?;
    println!("{}", told(&restored));
    println!("Restored into {}. Everyone signs in anew.", folder.display());
    Ok(ExitCode::SUCCESS)
}
