//! A small picture made in code, as a PNG: for a card of the demo, and for tests that need a whole
//! one.
//!
//! Written by hand after ISO/IEC 15948 (PNG) with the bytes stored and not squeezed (RFC 1951, 3.2.4),
//! so that no crate is needed for it.

pub type Colour = [u8; 3];

pub struct Picture {
    size: (u32, u32),
    points: Vec<Colour>,
}

impl Picture {
    /// All of one colour.
    pub fn plain(size: (u32, u32), colour: Colour) -> Picture {
        let points = vec![colour; (size.0 * size.1) as usize];
        Picture { size, points }
    }

    /// With a rectangle in it: its left upper corner, its size, its colour.
    pub fn with(
        mut self,
        (left, top): (u32, u32),
        (wide, high): (u32, u32),
        colour: Colour,
    ) -> Picture {
        for y in top..(top + high).min(self.size.1) {
            for x in left..(left + wide).min(self.size.0) {
                self.points[(y * self.size.0 + x) as usize] = colour;
            }
        }
        self
    }

    /// Its bytes, as a file has them.
    pub fn png(&self) -> Vec<u8> {
        let (wide, high) = self.size;
        let mut head = Vec::from(wide.to_be_bytes());
        head.extend(high.to_be_bytes());
        // Eight bits, three colours, the one way to squeeze, no filter, line by line.
        head.extend([8, 2, 0, 0, 0]);
        let mut lines = Vec::new();
        for line in self.points.chunks(wide as usize) {
            lines.push(0);
            lines.extend(line.iter().flatten());
        }
        let mut png = b"\x89PNG\r\n\x1a\n".to_vec();
        chunk(&mut png, b"IHDR", &head);
        chunk(&mut png, b"IDAT", &stored(&lines));
        chunk(&mut png, b"IEND", &[]);
        png
    }
}

fn chunk(png: &mut Vec<u8>, name: &[u8; 4], body: &[u8]) {
    png.extend(u32::try_from(body.len()).unwrap_or(u32::MAX).to_be_bytes());
    let from = png.len();
    png.extend(name);
    png.extend(body);
    let sum = crc(&png[from..]);
    png.extend(sum.to_be_bytes());
}

/// As a stream of zlib (RFC 1950) of blocks that are stored as they are.
fn stored(bytes: &[u8]) -> Vec<u8> {
    let mut out = vec![0x78, 0x01];
    let mut blocks = bytes.chunks(0xffff).peekable();
    while let Some(block) = blocks.next() {
        let size = u16::try_from(block.len()).unwrap_or(u16::MAX);
        out.push(u8::from(blocks.peek().is_none()));
        out.extend(size.to_le_bytes());
        out.extend((!size).to_le_bytes());
        out.extend(block);
    }
    out.extend(adler(bytes).to_be_bytes());
    out
}

/// The sum at the end of a stream of zlib (RFC 1950, section 8.2).
fn adler(bytes: &[u8]) -> u32 {
    let (mut a, mut b) = (1_u32, 0_u32);
    for byte in bytes {
        a = (a + u32::from(*byte)) % 65_521;
        b = (b + a) % 65_521;
    }
    (b << 16) | a
}

/// The sum at the end of a chunk (ISO/IEC 15948, annex D).
fn crc(bytes: &[u8]) -> u32 {
    let step = |sum: u32, byte: &u8| {
        (0..8).fold(sum ^ u32::from(*byte), |it, _| {
            if it & 1 == 1 { 0xedb8_8320 ^ (it >> 1) } else { it >> 1 }
        })
    };
    !bytes.iter().fold(u32::MAX, step)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The check values that both sums are published with: of "123456789" and of "Wikipedia" (from
    /// memory).
    #[test]
    fn the_sums_are_those_of_the_standards() {
        assert_eq!(crc(b"123456789"), 0xcbf4_3926);
        assert_eq!(adler(b"Wikipedia"), 0x11e6_0398);
    }

    #[test]
    fn it_is_a_picture_of_its_size() {
        let png = Picture::plain((300, 200), [9, 9, 9]).with((10, 10), (900, 20), [1, 2, 3]).png();
        assert!(png.starts_with(b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\x01\x2c\0\0\0\xc8"));
        assert!(png.ends_with(b"\0\0\0\0IEND\xae\x42\x60\x82"));
    }
}
