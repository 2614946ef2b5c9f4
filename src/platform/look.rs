//! What a picture looks like from afar: 256 bits that stay nearly the same when it is taken once more, in
//! other light, a little crooked, or smaller.
//!
//! The bits say which of the lowest 16 by 16 waves of the picture are stronger than the median of them
//! (a DCT, after Krawetz, "Looks Like It", and Zauner, "Implementation and Benchmarking of Perceptual
//! Image Hash Functions", 2010; both from memory). A phone lays a photo on its side and notes so beside it
//! (EXIF); some do not: so there are bits for each of the four ways, and the nearest count.
//!
//! What a member sends is trusted with nothing: it is unpacked within limits, and behind the pages.

use image::{
    DynamicImage, GrayImage, ImageDecoder, ImageError, ImageReader, Limits, imageops,
    metadata::Orientation,
};
use image_hasher::{HashAlg, Hasher, HasherConfig};
use std::{
    fmt,
    io::{BufRead, Cursor, Seek},
    path::PathBuf,
    str::FromStr,
};

/// How many bits there are for one way to lay it.
pub const BITS: u32 = 256;
const SIDE: u32 = 16;
const BYTES: usize = 32;
const WAYS: usize = 4;

/// The longest side, in dots.
const LONGEST: u32 = 20_000;
/// How much an unpacked picture may take, in bytes: a photo of 55 megapixels, more than most phones take
/// (common practice, no source).
const UNPACKED: u64 = 160 * 1024 * 1024;
/// The side to which it is brought first.
const SMALL: u32 = 256;
/// So far at least the darkest dot is from the lightest, of 255: else there is nothing on it.
const DIFFERS: u8 = 24;

/// A look, laid in each of the four ways.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Look([[u8; BYTES]; WAYS]);

/// Why a picture has no look.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unseen {
    TooLarge,
    Blank,
    Broken,
}

impl Unseen {
    pub fn says(self) -> &'static str {
        match self {
            Unseen::TooLarge => "its picture is too large to be compared",
            Unseen::Blank => "there is nothing on its picture",
            Unseen::Broken => "its picture is damaged",
        }
    }
}

impl Look {
    /// In how many of the bits they differ, laid as they are most alike.
    pub fn distance(&self, other: &Look) -> u32 {
        let apart = |a: &[u8; BYTES], b: &[u8; BYTES]| -> u32 {
            a.iter().zip(b).map(|(a, b)| (a ^ b).count_ones()).sum()
        };
        let turned = other.0.iter().map(|it| apart(&self.0[0], it));
        turned.chain(self.0.iter().map(|it| apart(&other.0[0], it))).min().unwrap_or(BITS)
    }
}

impl fmt::Display for Look {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|it| f.write_str(&hex::encode(it)))
    }
}

impl FromStr for Look {
    type Err = hex::FromHexError;

    fn from_str(text: &str) -> Result<Look, hex::FromHexError> {
        let mut all = [0; BYTES * WAYS];
        hex::decode_to_slice(text, &mut all)?;
        let mut ways = [[0; BYTES]; WAYS];
        ways.iter_mut().zip(all.chunks(BYTES)).for_each(|(way, it)| way.copy_from_slice(it));
        Ok(Look(ways))
    }
}

/// The look of a picture that lies in the house.
pub async fn of_file(file: PathBuf) -> Result<Look, Unseen> {
    behind(move || of(ImageReader::open(file).map_err(|_| Unseen::Broken)?)).await
}

/// The look of a picture at hand.
pub async fn of_bytes(bytes: Vec<u8>) -> Result<Look, Unseen> {
    behind(move || of(ImageReader::new(Cursor::new(bytes)))).await
}

async fn behind(
    look: impl FnOnce() -> Result<Look, Unseen> + Send + 'static,
) -> Result<Look, Unseen> {
    tokio::task::spawn_blocking(look).await.unwrap_or_else(|e| {
        tracing::error!(error = %e, "a picture could not be looked at");
        Err(Unseen::Broken)
    })
}

fn of<R: BufRead + Seek>(reader: ImageReader<R>) -> Result<Look, Unseen> {
    let mut reader = reader.with_guessed_format().map_err(|_| Unseen::Broken)?;
    reader.limits(limits());
    let mut decoder = reader.into_decoder().map_err(why)?;
    // Not every decoder counts what it unpacks into.
    if decoder.total_bytes() > UNPACKED {
        return Err(Unseen::TooLarge);
    }
    let lies = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    let whole = DynamicImage::from_decoder(decoder).map_err(why)?.into_luma8();
    let mut upright = DynamicImage::ImageLuma8(small(whole));
    upright.apply_orientation(lies);
    seen(&upright.into_luma8())
}

fn limits() -> Limits {
    let mut limits = Limits::default();
    limits.max_image_width = Some(LONGEST);
    limits.max_image_height = Some(LONGEST);
    limits.max_alloc = Some(UNPACKED);
    limits
}

fn why(e: ImageError) -> Unseen {
    if matches!(e, ImageError::Limits(_)) { Unseen::TooLarge } else { Unseen::Broken }
}

fn small(whole: GrayImage) -> GrayImage {
    match whole.width() > SMALL && whole.height() > SMALL {
        true => imageops::thumbnail(&whole, SMALL, SMALL),
        false => whole,
    }
}

fn seen(upright: &GrayImage) -> Result<Look, Unseen> {
    let dots = || upright.pixels().map(|it| it.0[0]);
    let (darkest, lightest) = (dots().min().unwrap_or(0), dots().max().unwrap_or(0));
    if lightest - darkest < DIFFERS {
        return Err(Unseen::Blank);
    }
    let hasher = hasher();
    let bits = |it: &GrayImage| {
        let mut way = [0; BYTES];
        way.copy_from_slice(hasher.hash_image(it).as_bytes());
        way
    };
    let ways = [imageops::rotate90(upright), imageops::rotate180(upright)];
    let last = imageops::rotate270(upright);
    Ok(Look([bits(upright), bits(&ways[0]), bits(&ways[1]), bits(&last)]))
}

fn hasher() -> Hasher<[u8; BYTES]> {
    let it = HasherConfig::with_bytes_type::<[u8; BYTES]>().hash_size(SIDE, SIDE);
    it.hash_alg(HashAlg::Median).preproc_dct().to_hasher()
}

#[cfg(test)]
mod tests;
