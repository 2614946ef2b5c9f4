//! Size and SHA-256 of what passes through on its way to somewhere else.

use sha2::{Digest, Sha256};
use std::io::{self, Read, Write};

/// Copies all of it, and gives how many bytes there were and their sum as hex.
pub fn copy(from: &mut impl Read, to: impl Write) -> io::Result<(u64, String)> {
    let mut summing = Summing { to, hash: Sha256::new() };
    let size = io::copy(from, &mut summing)?;
    Ok((size, hex::encode(summing.hash.finalize())))
}

struct Summing<W> {
    to: W,
    hash: Sha256,
}

impl<W: Write> Write for Summing<W> {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        let written = self.to.write(bytes)?;
        self.hash.update(&bytes[..written]);
        Ok(written)
    }

    fn flush(&mut self) -> io::Result<()> {
        self.to.flush()
    }
}
