//! The seal: the SHA-256 of every byte of the archive before it, as the comment of the zip.
//!
//! A zip has places that no sum of a file covers: names, times, lengths, its directory. With the
//! seal a single changed byte anywhere is found. It finds accidents; it is not a signature, and
//! who can write a backup anew can seal it anew.

use super::sum;
use std::{
    fs::File,
    io::{self, Read, Seek, SeekFrom, Write},
};

/// A SHA-256 as hex.
const LENGTH: u64 = 64;

/// What holds the place until the archive is whole.
pub fn blank() -> String {
    "-".repeat(LENGTH as usize)
}

/// Seals an archive whose comment is `blank`.
pub fn put(file: &mut File) -> io::Result<()> {
    let sum = sum_before(file)?;
    file.seek(SeekFrom::End(-(LENGTH as i64)))?;
    file.write_all(sum.as_bytes())
}

/// Whether every byte is as it was when the seal was put.
pub fn holds(file: &mut File) -> io::Result<bool> {
    let sum = sum_before(file)?;
    let mut kept = Vec::new();
    file.seek(SeekFrom::End(-(LENGTH as i64)))?;
    file.read_to_end(&mut kept)?;
    Ok(kept == sum.as_bytes())
}

/// Whether a zip with a seal ends here: the fixed 22 bytes of its end record, then the seal.
/// APPNOTE.TXT (PKWARE, 6.3.10, 2022) §4.3.16: signature first, length of the comment last.
pub fn is_at_the_end(file: &mut File) -> io::Result<bool> {
    const RECORD: u64 = 22;
    if file.metadata()?.len() < RECORD + LENGTH {
        return Ok(false);
    }
    let mut record = [0; RECORD as usize];
    file.seek(SeekFrom::End(-((RECORD + LENGTH) as i64)))?;
    file.read_exact(&mut record)?;
    Ok(record.starts_with(b"PK\x05\x06") && record.ends_with(&(LENGTH as u16).to_le_bytes()))
}

fn sum_before(file: &mut File) -> io::Result<String> {
    let before = file.metadata()?.len().saturating_sub(LENGTH);
    file.rewind()?;
    Ok(sum::copy(&mut (&*file).take(before), io::sink())?.1)
}
