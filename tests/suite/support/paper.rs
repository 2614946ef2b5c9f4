//! Files that are papers, as small as they can be.

use image::{GrayImage, ImageFormat, Luma};
use std::io::Cursor;

/// The head of a PNG (ISO/IEC 15948, 5.2 and 11.2.2): so many dots wide, and 480 high.
pub fn picture(width: u16) -> Vec<u8> {
    let mut bytes = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0".to_vec();
    bytes.extend(width.to_be_bytes());
    bytes.extend([0, 0, 1, 224, 8, 2, 0, 0, 0, 0, 0, 0, 0]);
    bytes
}

/// A PDF without a page (ISO 32000-1:2008, annex H.2, from memory), with these words in it and more in
/// its trailer.
pub fn pdf(words: &str, trailer: &str) -> Vec<u8> {
    let body = format!(
        "%PDF-1.7\n% {words}\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n2 0 obj\n<< /Type /Pages /Kids [] /Count 0 >>\nendobj\n"
    );
    let at = |object: &str| body.find(object).expect("an object");
    let table = format!(
        "xref\n0 3\n0000000000 65535 f \n{:010} 00000 n \n{:010} 00000 n \n",
        at("1 0 obj"),
        at("2 0 obj")
    );
    let end = body.len();
    format!("{body}{table}trailer\n<< /Size 3 /Root 1 0 R {trailer}>>\nstartxref\n{end}\n%%EOF\n")
        .into_bytes()
}

/// A photo of a page with lines of these lengths, in hundredths of its width, in light as bright as that.
pub fn photo(lines: &[u32], bright: u8) -> Vec<u8> {
    let page = GrayImage::from_fn(600, 800, |x, y| {
        let line = (y / 30).checked_sub(2).and_then(|at| lines.get(at as usize));
        let inked = line.is_some_and(|it| y % 30 < 14 && x > 60 && x < 60 + it * 5);
        Luma([if inked { bright / 5 } else { bright }])
    });
    let mut bytes = Vec::new();
    page.write_to(&mut Cursor::new(&mut bytes), ImageFormat::Jpeg).expect("a JPEG");
    bytes
}
