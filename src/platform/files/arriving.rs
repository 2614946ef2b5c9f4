//! A paper on its way into the data folder: written beside the others as it comes, never held whole in
//! memory.
//!
//! It has its place only when someone settles it, inside the write that makes its row. Let go before
//! that, it is gone: nothing of a pile that was refused stays behind, and what a crash leaves is cleared
//! away at the next start.

use super::{
    Files,
    paper::{Looked, Media, look},
    trouble,
};
use crate::platform::error::{Error, Result};
use sha2::{Digest, Sha256};
use std::{
    fs::{self, File},
    io::{self, BufReader},
    path::PathBuf,
};
use tempfile::TempPath;
use tokio::io::AsyncWriteExt;

pub struct Arriving {
    place: TempPath,
    to: tokio::fs::File,
    sum: Sha256,
    bytes: u64,
}

/// A whole file of a kind that is kept.
#[derive(Debug)]
pub struct Arrival {
    place: PathBuf,
    /// Let go, it goes with it.
    _own: Option<TempPath>,
    pub sum: String,
    pub media: Media,
    pub bytes: i64,
}

const FOLDER: &str = "arriving";

impl Files {
    pub async fn arrive(&self) -> io::Result<Arriving> {
        let folder = self.folder.join(FOLDER);
        tokio::fs::create_dir_all(&folder).await?;
        // The ending of what is not whole yet: a backup leaves it out.
        let file = tempfile::Builder::new().suffix(".part").tempfile_in(folder)?;
        let (to, place) = file.into_parts();
        Ok(Arriving { place, to: tokio::fs::File::from_std(to), sum: Sha256::new(), bytes: 0 })
    }

    /// Gives it its place, where the same file may be already.
    pub async fn settle(&self, arrival: &Arrival) -> Result<()> {
        let (from, to) = (arrival.place.clone(), self.place(&arrival.sum));
        let settled = tokio::task::spawn_blocking(move || rename(from, to)).await;
        settled.map_err(|e| Error::Internal(e.into()))?.map_err(trouble)
    }

    /// A file, to be handed out as it is read.
    pub async fn stream(&self, sum: &str) -> Result<tokio::fs::File> {
        match tokio::fs::File::open(self.place(sum)).await {
            Err(e) if e.kind() == io::ErrorKind::NotFound => Err(Error::NotFound),
            opened => opened.map_err(trouble),
        }
    }

    /// Clears away what a crash left on its way: when nobody else writes yet.
    pub fn clear_away(&self) {
        let folder = self.folder.join(FOLDER);
        if let Err(e) = fs::remove_dir_all(&folder)
            && e.kind() != io::ErrorKind::NotFound
        {
            tracing::warn!(error = %e, "what had not arrived whole was not cleared away");
        }
    }
}

impl Arrival {
    /// Of what was sent in pieces: it stays where it lies, whether or not it is settled.
    pub(super) fn sent(place: PathBuf, sum: String, (media, bytes): (Media, u64)) -> Arrival {
        let bytes = i64::try_from(bytes).unwrap_or(i64::MAX);
        Arrival { place, _own: None, sum, media, bytes }
    }
}

fn rename(from: PathBuf, to: PathBuf) -> io::Result<()> {
    if to.exists() {
        return Ok(());
    }
    let folder = to.parent().unwrap_or(&to);
    fs::create_dir_all(folder)?;
    fs::rename(from, &to)?;
    File::open(folder)?.sync_all()
}

impl Arriving {
    pub async fn push(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.sum.update(bytes);
        self.bytes += bytes.len() as u64;
        self.to.write_all(bytes).await
    }

    /// How much of it has come.
    pub fn bytes(&self) -> u64 {
        self.bytes
    }

    /// The whole of it is there: on the disk, and looked at.
    pub async fn end(mut self) -> io::Result<Looked<Arrival>> {
        self.to.flush().await?;
        self.to.sync_all().await?;
        let (path, bytes) = (self.place.to_path_buf(), self.bytes);
        let looking = move || look(&mut BufReader::new(File::open(path)?), bytes);
        let looked = tokio::task::spawn_blocking(looking).await.map_err(io::Error::other)??;
        let (sum, bytes) =
            (hex::encode(self.sum.finalize()), i64::try_from(bytes).unwrap_or(i64::MAX));
        let (place, own) = (self.place.to_path_buf(), Some(self.place));
        Ok(looked.map(|media| Arrival { place, _own: own, sum, media, bytes }))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::platform::files::tests::png;

    fn inside(data: &std::path::Path, folder: &str) -> usize {
        fs::read_dir(data.join("files").join(folder)).map_or(0, Iterator::count)
    }

    #[tokio::test]
    async fn a_paper_is_kept_when_it_is_settled_and_gone_when_it_is_let_go() {
        let data = tempfile::tempdir().expect("a folder");
        let files = Files::under(data.path());
        let photo = png(640, 480);
        for settles in [false, true, true] {
            let mut arriving = files.arrive().await.expect("room");
            for chunk in photo.chunks(7) {
                arriving.push(chunk).await.expect("written");
            }
            let arrival = arriving.end().await.expect("looked at").expect("a picture");
            assert_eq!(arrival.sum, crate::platform::audit::sha256(&photo));
            assert_eq!((arrival.media, arrival.bytes), (Media::Png, photo.len() as i64));
            if settles {
                files.settle(&arrival).await.expect("settled");
            }
            drop(arrival);
            assert_eq!(inside(data.path(), FOLDER), 0);
        }
        let sum = crate::platform::audit::sha256(&photo);
        assert_eq!(inside(data.path(), &sum[..2]), 1);
        assert_eq!(
            files.stream(&sum).await.expect("there").metadata().await.expect("read").len(),
            33
        );
        assert!(files.stream(&"0".repeat(64)).await.is_err());
    }

    #[tokio::test]
    async fn what_a_crash_left_is_cleared_away() {
        let data = tempfile::tempdir().expect("a folder");
        let files = Files::under(data.path());
        files.clear_away();
        let mut arriving = files.arrive().await.expect("room");
        arriving.push(b"half").await.expect("written");
        std::mem::forget(arriving.place);
        assert_eq!(inside(data.path(), FOLDER), 1);
        files.clear_away();
        assert_eq!(inside(data.path(), FOLDER), 0);
    }
}
