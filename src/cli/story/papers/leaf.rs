//! Papers of the invented family, made of a few lines: a PDF of one page, and a picture that looks like a
//! page from afar. Small, and whole: any program opens them.

/// A page of US Letter with a line of text each (ISO 32000-1:2008, annex H, from memory).
pub fn pdf(lines: &[&str]) -> Vec<u8> {
    let escaped = |it: &&str| it.replace('\\', "\\\\").replace('(', "\\(").replace(')', "\\)");
    let lines: Vec<_> = lines.iter().map(|it| format!("({}) Tj T*", escaped(it))).collect();
    let text = format!("BT /F1 14 Tf 22 TL 72 700 Td {} ET", lines.join(" "));
    let objects = [
        "<< /Type /Catalog /Pages 2 0 R >>".to_owned(),
        "<< /Type /Pages /Kids [3 0 R] /Count 1 >>".to_owned(),
        "<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 5 0 R /Resources << /Font << /F1 4 0 R >> >> >>".to_owned(),
        "<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>".to_owned(),
        format!("<< /Length {} >>\nstream\n{text}\nendstream", text.len()),
    ];
    let (mut file, mut table) = ("%PDF-1.4\n".to_owned(), "0000000000 65535 f \n".to_owned());
    for (number, object) in (1..).zip(&objects) {
        table.push_str(&format!("{:010} 00000 n \n", file.len()));
        file.push_str(&format!("{number} 0 obj\n{object}\nendobj\n"));
    }
    let (at, count) = (file.len(), objects.len() + 1);
    file.push_str(&format!("xref\n0 {count}\n{table}trailer\n<< /Size {count} /Root 1 0 R >>\n"));
    file.push_str(&format!("startxref\n{at}\n%%EOF\n"));
    file.into_bytes()
}

const WIDE: usize = 312;
const HIGH: usize = 440;

/// A white page with bars where its lines would be, each so many hundredths of its width long: PNG, one
/// bit a dot (ISO/IEC 15948), packed without being made smaller (RFC 1951, 3.2.4).
pub fn picture(bars: &[usize]) -> Vec<u8> {
    let mut dots = Vec::new();
    for row in 0..HIGH {
        let bar =
            (row / 14).checked_sub(3).and_then(|line| bars.get(line)).filter(|_| row % 14 < 7);
        let inked = bar.map_or(0, |percent| (WIDE / 8 - 8) * percent / 100);
        dots.push(0);
        dots.extend((0..WIDE / 8).map(|at| if (4..4 + inked).contains(&at) { 0 } else { 0xff }));
    }
    let size = u16::try_from(dots.len()).unwrap_or(u16::MAX);
    let mut packed = vec![0x78, 0x01, 0x01];
    packed.extend(size.to_le_bytes());
    packed.extend((!size).to_le_bytes());
    packed.extend(&dots[..usize::from(size)]);
    packed.extend(adler(&dots[..usize::from(size)]).to_be_bytes());
    let mut head = Vec::new();
    head.extend((WIDE as u32).to_be_bytes());
    head.extend((HIGH as u32).to_be_bytes());
    head.extend([1, 0, 0, 0, 0]);
    let mut file = b"\x89PNG\r\n\x1a\n".to_vec();
    for (kind, data) in [(b"IHDR", head), (b"IDAT", packed), (b"IEND", Vec::new())] {
        let named: Vec<u8> = kind.iter().copied().chain(data).collect();
        file.extend((named.len() as u32 - 4).to_be_bytes());
        file.extend(&named);
        file.extend(crc(&named).to_be_bytes());
    }
    file
}

/// RFC 1950, section 8.2.
fn adler(bytes: &[u8]) -> u32 {
    let (a, b) = bytes.iter().fold((1, 0), |(a, b), it| {
        let a = (a + u32::from(*it)) % 65_521;
        (a, (b + a) % 65_521)
    });
    b << 16 | a
}

/// ISO/IEC 15948, annex D.
fn crc(bytes: &[u8]) -> u32 {
    let step = |crc: u32, _| if crc & 1 == 1 { 0xedb8_8320 ^ crc >> 1 } else { crc >> 1 };
    !bytes.iter().fold(!0, |crc, it| (0..8).fold(crc ^ u32::from(*it), step))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::platform::files::paper::{Media, look};
    use std::io::Cursor;

    #[test]
    fn what_is_made_is_taken_for_a_paper() {
        for (bytes, media) in
            [(pdf(&["Paid (in full)"]), Media::Pdf), (picture(&[80, 40]), Media::Png)]
        {
            assert_eq!(
                look(&mut Cursor::new(&bytes), bytes.len() as u64).expect("read"),
                Ok(media)
            );
        }
    }

    #[test]
    fn the_sums_are_the_published_ones() {
        // RFC 1950's Adler-32 of "Wikipedia" and the CRC-32 of "123456789": both from memory, and the
        // same in Python's zlib.
        assert_eq!(adler(b"Wikipedia"), 0x11e6_0398);
        assert_eq!(crc(b"123456789"), 0xcbf4_3926);
    }
}
