//! Photos that members send, kept in the data folder under the SHA-256 of their bytes.
//!
//! A photo is written beside its place, synced and renamed: it is there whole or not at all, and
//! the same photo twice is one file. What a browser could not show as a picture is not kept.
//! Nothing here knows whose it is: a row of the record names the sum, and the row is asked first.
//! Papers lie beside them, under the same rule: `arriving` writes them as they come, `sending`
//! piece by piece, `paper` says what is one.

pub mod arriving;
pub mod paper;
pub mod sending;

use crate::platform::{
    audit::sha256,
    error::{Error, Result},
};
use axum::body::Bytes;
use imagesize::ImageType;
use std::{
    fs::{self, File},
    io::{self, Write},
    path::{Path, PathBuf},
};

/// The largest photo that is taken: more than a phone's camera makes (common practice, no source).
pub const MOST_BYTES: usize = 20 * 1024 * 1024;
/// The largest picture, in pixels: one that unpacks to gigabytes would stop the phone that shows it.
const MOST_PIXELS: usize = 120_000_000;

/// Why something sent is not kept as a photo.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unfit {
    NoPhoto,
    TooLarge,
}

impl Unfit {
    pub fn says(self) -> &'static str {
        match self {
            Unfit::NoPhoto => "This is not a photo that can be kept. Choose a JPEG, PNG or WebP.",
            Unfit::TooLarge => "This photo is too large: at most 20 MB and 120 megapixels.",
        }
    }
}

/// A photo as it is handed out again.
pub struct Photo {
    pub media: &'static str,
    pub bytes: Vec<u8>,
}

pub struct Files {
    folder: PathBuf,
}

impl Files {
    pub fn under(data: &Path) -> Files {
        Files { folder: data.join("files") }
    }

    /// Keeps a photo, and gives its sum.
    pub async fn keep(&self, bytes: Bytes) -> Result<std::result::Result<String, Unfit>> {
        if let Err(unfit) = look(&bytes) {
            return Ok(Err(unfit));
        }
        let sum = sha256(&bytes);
        let place = self.place(&sum);
        let kept = tokio::task::spawn_blocking(move || write(&place, &bytes)).await;
        kept.map_err(|e| Error::Internal(e.into()))?.map_err(trouble)?;
        Ok(Ok(sum))
    }

    /// The photo with this sum, as it was sent.
    pub async fn open(&self, sum: &str) -> Result<Photo> {
        let bytes = match tokio::fs::read(self.place(sum)).await {
            Err(e) if e.kind() == io::ErrorKind::NotFound => return Err(Error::NotFound),
            read => read.map_err(trouble)?,
        };
        let media = look(&bytes).map_err(|_| Error::NotFound)?;
        Ok(Photo { media, bytes })
    }

    /// Whether a photo with this sum is kept: a form may name one that was sent before.
    pub async fn has(&self, sum: &str) -> bool {
        is_sum(sum) && tokio::fs::try_exists(self.place(sum)).await.unwrap_or(false)
    }

    /// Where it lies, for a program that reads it.
    pub fn lies(&self, sum: &str) -> PathBuf {
        self.place(sum)
    }

    fn place(&self, sum: &str) -> PathBuf {
        self.folder.join(sum.get(..2).unwrap_or("-")).join(sum)
    }
}

fn is_sum(text: &str) -> bool {
    text.len() == 64 && text.bytes().all(|it| matches!(it, b'0'..=b'9' | b'a'..=b'f'))
}

/// The media type of a photo, if it is one that can be kept.
fn look(bytes: &[u8]) -> std::result::Result<&'static str, Unfit> {
    let media = match imagesize::image_type(bytes) {
        Ok(ImageType::Jpeg) => "image/jpeg",
        Ok(ImageType::Png) => "image/png",
        Ok(ImageType::Webp) => "image/webp",
        _ => return Err(Unfit::NoPhoto),
    };
    let size = imagesize::blob_size(bytes).map_err(|_| Unfit::NoPhoto)?;
    let pixels = size.width.saturating_mul(size.height);
    match bytes.len() <= MOST_BYTES && pixels <= MOST_PIXELS {
        true if pixels == 0 => Err(Unfit::NoPhoto),
        true => Ok(media),
        false => Err(Unfit::TooLarge),
    }
}

fn write(place: &Path, bytes: &[u8]) -> io::Result<()> {
    if place.exists() {
        return Ok(());
    }
    let folder = place.parent().unwrap_or(place);
    fs::create_dir_all(folder)?;
    // The name of what is not whole yet: a backup leaves it out.
    let mut file = tempfile::Builder::new().suffix(".part").tempfile_in(folder)?;
    file.write_all(bytes)?;
    file.as_file().sync_all()?;
    file.persist(place).map_err(|e| e.error)?;
    File::open(folder)?.sync_all()
}

/// A full disk is told as such; nothing was kept.
fn trouble(e: io::Error) -> Error {
    if is_full(&e) {
        tracing::error!(error = %e, "the disk is full");
        return Error::Busy;
    }
    Error::Internal(e.into())
}

/// Whether the disk has no room, or none for us.
pub fn is_full(e: &io::Error) -> bool {
    matches!(e.kind(), io::ErrorKind::StorageFull | io::ErrorKind::QuotaExceeded)
}

#[cfg(test)]
pub(in crate::platform) mod tests {
    use super::*;

    /// The first bytes of a PNG of this size: signature and IHDR (ISO/IEC 15948, 5.2 and 11.2.2).
    pub fn png(width: u32, height: u32) -> Vec<u8> {
        let mut bytes = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec();
        bytes.extend(width.to_be_bytes());
        bytes.extend(height.to_be_bytes());
        bytes.extend([8, 2, 0, 0, 0, 0, 0, 0, 0]);
        bytes
    }

    #[test]
    fn only_a_picture_of_a_known_kind_and_size_is_a_photo() {
        assert_eq!(look(&png(640, 480)), Ok("image/png"));
        assert_eq!(look(&png(0, 480)), Err(Unfit::NoPhoto));
        assert_eq!(look(&png(65_000, 65_000)), Err(Unfit::TooLarge));
        for other in ["", "<svg xmlns='http://www.w3.org/2000/svg'/>", "%PDF-1.7", "GIF89a......"] {
            assert_eq!(look(other.as_bytes()), Err(Unfit::NoPhoto), "{other}");
        }
        let mut large = png(640, 480);
        large.resize(MOST_BYTES + 1, 0);
        assert_eq!(look(&large), Err(Unfit::TooLarge));
    }

    #[tokio::test]
    async fn a_photo_is_kept_once_and_read_back_whole() {
        let data = tempfile::tempdir().expect("a folder");
        let files = Files::under(data.path());
        let photo = Bytes::from(png(640, 480));
        let sum = files.keep(photo.clone()).await.expect("kept").expect("a photo");
        assert_eq!(files.keep(photo.clone()).await.expect("kept"), Ok(sum.clone()));
        assert!(files.has(&sum).await);
        assert_eq!(files.open(&sum).await.expect("there").bytes, photo);
        let inside = fs::read_dir(data.path().join("files").join(&sum[..2])).expect("a folder");
        assert_eq!(inside.count(), 1);
        assert!(!files.has("../../kinsheaf.db").await && !files.has(&"0".repeat(64)).await);
    }
}
