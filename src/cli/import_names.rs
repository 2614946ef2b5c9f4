//! `kinsheaf import-names FILE`: brings in names of medicines from RxNorm's RXNCONSO.RRF, in place
//! of those of an earlier import. All of it or nothing; one line at a time is held in memory.

use super::{Outcome, database};
use crate::{
    platform::{auth::doors::Operator, config::Config},
    record::medicines::names::{rrf, store},
};
use std::{
    error::Error,
    fs::File,
    io::{BufRead, BufReader},
    path::Path,
    process::ExitCode,
};

/// How many lines there were, and what became of them.
#[derive(Debug, Default, PartialEq, Eq)]
pub struct Counts {
    pub read: usize,
    pub kept: usize,
}

pub async fn import_names(config: Config, file: &Path) -> Outcome {
    let lines = BufReader::new(File::open(file).map_err(|e| format!("{}: {e}", file.display()))?);
    let db = database(&config).await?;
    let imported = import(&Operator::new(db.clone()), lines).await;
    db.close().await;
    let Counts { read, kept } = imported.map_err(|e| format!("{}: {e}", file.display()))?;
    println!("Read {read} lines, kept {kept}, skipped {}.", read - kept);
    Ok(ExitCode::SUCCESS)
}

/// Reads and keeps in one transaction. The first line that is none of such a file ends it.
pub async fn import(
    operator: &Operator,
    mut lines: impl BufRead,
) -> Result<Counts, Box<dyn Error + Send + Sync>> {
    let write = operator.write().await?;
    store::clear(&write).await?;
    let (mut counts, mut line) = (Counts::default(), Vec::new());
    loop {
        line.clear();
        if lines.read_until(b'\n', &mut line)? == 0 {
            break;
        }
        counts.read += 1;
        let at = counts.read;
        let text = std::str::from_utf8(&line).map_err(|_| format!("line {at}: not UTF-8"))?;
        let entry = rrf::entry(text.trim_end_matches(['\n', '\r']));
        let entry = entry.map_err(|e| format!("line {at}: {e}"))?;
        counts.kept += usize::from(store::keep(&write, &entry).await?);
    }
    if counts.kept == 0 {
        return Err("there is no name in it; nothing was changed".into());
    }
    write.commit().await?;
    Ok(counts)
}
