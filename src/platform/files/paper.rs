//! What a file must be to be kept as a paper: a JPEG, PNG or WebP that says how large it is, or a whole
//! PDF without a password.
//!
//! Told by the bytes, never by the name. Nothing is unpacked: the size of a picture is read from its
//! head, and of a PDF only its end and the place that the end names (ISO 32000-1:2008, 7.5.4 and 7.5.5;
//! 7.6.1 for `Encrypt`; section numbers from memory). Each kind of refusal has a sentence of its own.

use imagesize::ImageType;
use std::io::{self, BufRead, Read, Seek, SeekFrom};

use super::MOST_PIXELS;

/// The largest file that is taken: a scan of some hundred pages (common practice, no source).
pub const MOST_BYTES: u64 = 80 * 1024 * 1024;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Media {
    Jpeg,
    Png,
    Webp,
    Pdf,
}

impl Media {
    pub fn content_type(self) -> &'static str {
        match self {
            Media::Jpeg => "image/jpeg",
            Media::Png => "image/png",
            Media::Webp => "image/webp",
            Media::Pdf => "application/pdf",
        }
    }

    pub fn ending(self) -> &'static str {
        match self {
            Media::Jpeg => "jpg",
            Media::Png => "png",
            Media::Webp => "webp",
            Media::Pdf => "pdf",
        }
    }

    pub fn words(self) -> &'static str {
        match self {
            Media::Jpeg => "JPEG",
            Media::Png => "PNG",
            Media::Webp => "WebP",
            Media::Pdf => "PDF",
        }
    }
}

/// Why a file is not kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unfit {
    Empty,
    TooLarge,
    TooMany,
    Lost,
    DiskFull,
    Heic,
    OtherPicture,
    Drawing,
    WebPage,
    Archive,
    WordFile,
    Unknown,
    BrokenPicture,
    TooManyPixels,
    BrokenPdf,
    Locked,
}

impl Unfit {
    pub fn says(self) -> &'static str {
        match self {
            Unfit::Empty => "It is empty. Send it again from where it came from.",
            Unfit::TooLarge => "It is larger than 80 MB. Scan it with fewer dots, or in parts.",
            Unfit::TooMany => "It is past the 60th of this pile. Send the rest as the next pile.",
            Unfit::Lost => "It did not arrive whole. Send it again.",
            Unfit::DiskFull => {
                "The disk of the server is full, and nothing of it was kept. Tell the one who runs the server, and send it again."
            }
            Unfit::Heic => {
                "It is a HEIC picture, which many browsers cannot show. Save it as JPEG, and send that."
            }
            Unfit::OtherPicture => {
                "It is a kind of picture that not every browser shows. Save it as JPEG or PNG."
            }
            Unfit::Drawing => {
                "It is an SVG drawing, which can carry a program. Print it into a PDF, and send that."
            }
            Unfit::WebPage => {
                "It is a web page, which can carry a program. Print it into a PDF, and send that."
            }
            Unfit::Archive => {
                "It is a zip, or a document that is packed like one. Unpack it, or save the document as a PDF."
            }
            Unfit::WordFile => "It is a document of a word processor. Save it as a PDF.",
            Unfit::Unknown => {
                "Whatever its name says, it is neither a JPEG, a PNG, a WebP nor a PDF."
            }
            Unfit::BrokenPicture => {
                "The picture cannot be read: it may be cut short. Take or save it once more."
            }
            Unfit::TooManyPixels => {
                "It has more than 120 megapixels, which could stop the phone that shows it. Save it smaller."
            }
            Unfit::BrokenPdf => {
                "The PDF is cut short: its end is missing. Save or fetch it once more."
            }
            Unfit::Locked => "This PDF has a password: save it without one.",
        }
    }
}

/// What was found, or why it is not kept.
pub type Looked<T = Media> = Result<T, Unfit>;

/// What a file is, of so many bytes.
pub fn look(from: &mut (impl BufRead + Seek), size: u64) -> io::Result<Looked> {
    if size == 0 {
        return Ok(Err(Unfit::Empty));
    }
    let mut head = Vec::new();
    from.seek(SeekFrom::Start(0))?;
    from.by_ref().take(1024).read_to_end(&mut head)?;
    if head.starts_with(b"%PDF-") {
        return pdf(from, size);
    }
    let media = match imagesize::image_type(&head) {
        Ok(ImageType::Jpeg) => Media::Jpeg,
        Ok(ImageType::Png) => Media::Png,
        Ok(ImageType::Webp) => Media::Webp,
        _ => return Ok(Err(foreign(&head))),
    };
    from.seek(SeekFrom::Start(0))?;
    Ok(match imagesize::reader_size(from) {
        Ok(it) if it.width == 0 || it.height == 0 => Err(Unfit::BrokenPicture),
        Ok(it) if it.width.saturating_mul(it.height) > MOST_PIXELS => Err(Unfit::TooManyPixels),
        Ok(_) => Ok(media),
        Err(_) => Err(Unfit::BrokenPicture),
    })
}

/// What it is instead, as far as its first bytes say.
fn foreign(head: &[u8]) -> Unfit {
    let brand = head.get(4..8).filter(|it| *it == b"ftyp").and_then(|_| head.get(8..12));
    let text = String::from_utf8_lossy(head).to_lowercase();
    let text = text.trim_start_matches(|it: char| it.is_whitespace() || it == '\u{feff}');
    let begins = |all: &[&[u8]]| all.iter().any(|it| head.starts_with(it));
    match brand {
        Some(b"heic" | b"heix" | b"heim" | b"heis" | b"hevc" | b"hevx" | b"mif1" | b"msf1") => {
            Unfit::Heic
        }
        Some(b"avif" | b"avis") => Unfit::OtherPicture,
        _ if begins(&[b"GIF8", b"BM", b"II*\0", b"MM\0*"]) => Unfit::OtherPicture,
        _ if begins(&[b"PK\x03\x04", b"PK\x05\x06"]) => Unfit::Archive,
        _ if begins(&[b"\xd0\xcf\x11\xe0", b"{\\rtf"]) => Unfit::WordFile,
        _ if text.starts_with('<') && text.contains("<svg") => Unfit::Drawing,
        _ if ["<!doctype html", "<html", "<head", "<body", "<script"]
            .iter()
            .any(|it| text.starts_with(it)) =>
        {
            Unfit::WebPage
        }
        _ => Unfit::Unknown,
    }
}

/// How much of the end is looked at for its marks: readers are to find `%%EOF` in the last 1024 bytes.
const TAIL: u64 = 2048;
/// How far the trailer may be from where the table of a PDF begins.
const WINDOW: u64 = 4 * 1024 * 1024;

fn pdf(from: &mut (impl BufRead + Seek), size: u64) -> io::Result<Looked> {
    let tail = window(from, size.saturating_sub(TAIL), TAIL)?;
    let Some(end) = last(&tail, b"%%EOF") else { return Ok(Err(Unfit::BrokenPdf)) };
    let Some(named) = last(&tail[..end], b"startxref") else {
        return Ok(Err(Unfit::BrokenPdf));
    };
    let number = String::from_utf8_lossy(&tail[named + b"startxref".len()..end]);
    let Ok(table) = number.trim().parse::<u64>() else { return Ok(Err(Unfit::BrokenPdf)) };
    let table = window(from, table.min(size), WINDOW)?;
    let locked = match trailer(&table) {
        Some(trailer) => names(trailer, b"/Encrypt"),
        // The place is a little off, as some scanners have it: the trailer is near the end then.
        None => names(&window(from, size.saturating_sub(65_536), 65_536)?, b"/Encrypt"),
    };
    Ok(if locked { Err(Unfit::Locked) } else { Ok(Media::Pdf) })
}

/// The dictionary behind a table, or the one that begins a stream with the table in it.
fn trailer(table: &[u8]) -> Option<&[u8]> {
    let start = table.iter().position(|it| !it.is_ascii_whitespace())?;
    let table = &table[start..];
    if table.starts_with(b"xref") {
        let trailer = &table[first(table, b"trailer")?..];
        return Some(&trailer[..first(trailer, b"startxref").unwrap_or(trailer.len())]);
    }
    let begins =
        table[0].is_ascii_digit() && first(&table[..table.len().min(40)], b"obj").is_some();
    begins.then(|| &table[..first(table, b"stream").unwrap_or(table.len())])
}

/// Whether a name stands there whole: `/EncryptMetadata` is another.
fn names(text: &[u8], name: &[u8]) -> bool {
    let ends = |it: Option<&u8>| it.is_none_or(|it| !it.is_ascii_alphanumeric());
    text.windows(name.len())
        .enumerate()
        .any(|(at, it)| it == name && ends(text.get(at + name.len())))
}

fn window(from: &mut (impl BufRead + Seek), at: u64, most: u64) -> io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    from.seek(SeekFrom::Start(at))?;
    from.by_ref().take(most).read_to_end(&mut bytes)?;
    Ok(bytes)
}

fn first(text: &[u8], wanted: &[u8]) -> Option<usize> {
    text.windows(wanted.len()).position(|it| it == wanted)
}

fn last(text: &[u8], wanted: &[u8]) -> Option<usize> {
    text.windows(wanted.len()).rposition(|it| it == wanted)
}

#[cfg(test)]
mod tests;
