//! A file on its way in pieces, so that a lost connection costs one piece and not the whole file. How much
//! of it lies on the disk is how far it has come, after a restart too.
//!
//! It lies in a folder of the one who sends it into this record, under the hash of a token that only she
//! was told: so nobody else comes to it, and nothing on the disk opens it. Its ending keeps it out of
//! backups. What nobody goes on with is gone after a day.

use super::{
    Files,
    arriving::Arrival,
    paper::{MOST_BYTES, look},
};
use crate::{
    base::{
        clock::Instant,
        ids::{MemberId, PersonId},
    },
    platform::{audit::sha256, random},
};
use sha2::{Digest, Sha256};
use std::{
    fs::{self, File, TryLockError},
    io::{self, BufReader, Read},
    path::{Path, PathBuf},
    time::{Duration, SystemTime},
};
use tokio::io::AsyncWriteExt;

const FOLDER: &str = "sending";
/// So many of one member may be under way into one record, as in one pile.
const MOST: usize = 60;
/// Untouched for so long, it is given up.
const KEPT: Duration = Duration::from_secs(24 * 60 * 60);

/// Who sends, into which record.
pub type Whose = (PersonId, MemberId);

#[derive(Clone, Debug)]
pub struct Sending {
    place: PathBuf,
}

/// Opened for one piece: no other is written meanwhile.
pub struct Piece {
    to: tokio::fs::File,
    bytes: u64,
}

impl Files {
    /// The token of a new one; nothing where too many are under way.
    pub async fn begin(&self, whose: Whose) -> io::Result<Option<String>> {
        let (folder, token) = (self.sender(whose), random::hex(32));
        tokio::fs::create_dir_all(&folder).await?;
        if fs::read_dir(&folder)?.count() >= MOST {
            return Ok(None);
        }
        tokio::fs::File::create_new(folder.join(name(&token))).await?;
        Ok(Some(token))
    }

    /// The one with this token, if it is hers and still there.
    pub async fn sending(&self, whose: Whose, token: &str) -> io::Result<Option<Sending>> {
        let place = self.sender(whose).join(name(token));
        Ok(tokio::fs::try_exists(&place).await?.then_some(Sending { place }))
    }

    fn sender(&self, (person, member): Whose) -> PathBuf {
        self.folder.join(FOLDER).join(format!("{person}-{member}"))
    }

    /// Gives up what nobody has gone on with for a day.
    pub fn give_up_old(&self, now: Instant) -> io::Result<()> {
        let now: SystemTime = now.utc().into();
        for sender in inside(&self.folder.join(FOLDER))? {
            for file in inside(&sender)? {
                let touched = fs::metadata(&file)?.modified()?;
                if now.duration_since(touched).is_ok_and(|it| it > KEPT) {
                    fs::remove_file(&file)?;
                }
            }
        }
        Ok(())
    }
}

fn inside(folder: &Path) -> io::Result<Vec<PathBuf>> {
    match fs::read_dir(folder) {
        Err(e) if e.kind() == io::ErrorKind::NotFound => Ok(Vec::new()),
        entries => entries?.map(|it| Ok(it?.path())).collect(),
    }
}

fn name(token: &str) -> String {
    format!("{}.part", sha256(token.as_bytes()))
}

impl Sending {
    /// How far it has come.
    pub async fn bytes(&self) -> io::Result<u64> {
        Ok(tokio::fs::metadata(&self.place).await?.len())
    }

    /// For the next piece; nothing while another is being written.
    pub async fn open(&self) -> io::Result<Option<Piece>> {
        let file = fs::OpenOptions::new().append(true).open(&self.place)?;
        match file.try_lock() {
            Ok(()) => {}
            Err(TryLockError::WouldBlock) => return Ok(None),
            Err(TryLockError::Error(e)) => return Err(e),
        }
        let bytes = file.metadata()?.len();
        Ok(Some(Piece { to: tokio::fs::File::from_std(file), bytes }))
    }

    /// All of it has come: summed, and looked at. It stays where it is until it is settled or removed.
    pub async fn whole(&self) -> io::Result<super::paper::Looked<Arrival>> {
        let place = self.place.clone();
        let whole = tokio::task::spawn_blocking(move || whole(place)).await;
        whole.map_err(io::Error::other)?
    }

    pub async fn remove(&self) -> io::Result<()> {
        match tokio::fs::remove_file(&self.place).await {
            Err(e) if e.kind() == io::ErrorKind::NotFound => Ok(()),
            removed => removed,
        }
    }
}

fn whole(place: PathBuf) -> io::Result<super::paper::Looked<Arrival>> {
    let mut from = BufReader::with_capacity(1 << 16, File::open(&place)?);
    let (mut sum, mut bytes, mut buffer) = (Sha256::new(), 0, vec![0; 1 << 16]);
    loop {
        let read = from.read(&mut buffer)?;
        if read == 0 {
            break;
        }
        sum.update(&buffer[..read]);
        bytes += read as u64;
    }
    let media = look(&mut from, bytes)?;
    Ok(media.map(|media| Arrival::sent(place, hex::encode(sum.finalize()), (media, bytes))))
}

impl Piece {
    /// Where it begins, and after each push where it goes on.
    pub fn at(&self) -> u64 {
        self.bytes
    }

    /// Whether so many more are too many for one file.
    pub fn is_past(&self, more: u64) -> bool {
        self.bytes + more > MOST_BYTES
    }

    pub async fn push(&mut self, bytes: &[u8]) -> io::Result<()> {
        self.to.write_all(bytes).await?;
        self.bytes += bytes.len() as u64;
        Ok(())
    }

    /// What has come of it is on the disk.
    pub async fn end(mut self) -> io::Result<u64> {
        self.to.flush().await?;
        self.to.sync_all().await?;
        Ok(self.to.metadata().await?.len())
    }
}

#[cfg(test)]
mod tests;
