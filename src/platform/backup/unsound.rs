//! A record that was restored although it is not sound: the history of the house tells so from then
//! on, with what was found wrong, so that nobody takes it for one that is whole.

use super::{Manifest, Trouble};
use crate::{
    base::{change::Difference, clock::Clock},
    platform::{audit::RESTORED_UNSOUND, auth::doors::Operator, db::Db},
};
use std::path::Path;

/// As many faults as are told in the history; all of them are told at the command line.
const MOST: usize = 100;

/// Writes the entry into the unpacked database, which is brought up to this version for it.
pub(super) async fn tell(
    folder: &Path,
    clock: Clock,
    manifest: &Manifest,
    faults: &[String],
) -> Result<(), Trouble> {
    let db = Db::open(folder, clock).await?;
    let mut write = Operator::new(db.clone()).write().await?;
    let new = |field, value| Difference { field, old: None, new: Some(value) };
    let told = vec![
        new("made_at", manifest.made_at.to_string().into()),
        new("count", faults.len().into()),
        new("faults", faults.iter().take(MOST).cloned().collect::<Vec<_>>().into()),
    ];
    write.did_with(RESTORED_UNSOUND, "house", 0, told).await?;
    write.commit().await?;
    db.close().await;
    Ok(())
}
