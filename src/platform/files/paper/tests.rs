//! What is taken for a paper, and what each other kind of file is told.

use super::*;
use crate::platform::files::tests::png;
use std::io::Cursor;

fn looked(bytes: &[u8]) -> Looked {
    look(&mut Cursor::new(bytes), bytes.len() as u64).expect("read")
}

/// The smallest PDF with a table, as ISO 32000-1:2008 has it in annex H.2 (from memory), and one more
/// line in its trailer.
fn with_table(more: &str) -> Vec<u8> {
    let body = "%PDF-1.7\n1 0 obj\n<< /Type /Catalog /Pages 2 0 R >>\nendobj\n2 0 obj\n<< /Type /Pages /Kids [] /Count 0 >>\nendobj\n";
    let table = "xref\n0 3\n0000000000 65535 f \n0000000009 00000 n \n0000000058 00000 n \n";
    let at = body.len();
    format!("{body}{table}trailer\n<< /Size 3 /Root 1 0 R {more}>>\nstartxref\n{at}\n%%EOF\n")
        .into_bytes()
}

/// The same with the table in a stream (7.5.8): its dictionary is the trailer.
fn with_stream(more: &str) -> Vec<u8> {
    let body = "%PDF-1.7\n1 0 obj\n<< /Type /Catalog >>\nendobj\n";
    let at = body.len();
    let stream = format!(
        "2 0 obj\n<< /Type /XRef /Size 3 /Root 1 0 R {more}/W [1 2 1] /Length 3 >>\nstream\n\x01\x02\x03\nendstream\nendobj\n"
    );
    format!("{body}{stream}startxref\n{at}\n%%EOF").into_bytes()
}

#[test]
fn pictures_and_a_whole_pdf_are_papers() {
    assert_eq!(looked(&png(640, 480)), Ok(Media::Png));
    assert_eq!(looked(&with_table("")), Ok(Media::Pdf));
    assert_eq!(looked(&with_stream("")), Ok(Media::Pdf));
    // JFIF head, and a frame of 8 by 16 (ITU-T T.81, B.2.2; from memory).
    let jpeg = b"\xff\xd8\xff\xe0\0\x10JFIF\0\x01\x01\0\0\x01\0\x01\0\0\xff\xc0\0\x0b\x08\0\x08\0\x10\x01\x01\x11\0";
    assert_eq!(looked(jpeg), Ok(Media::Jpeg));
}

#[test]
fn a_pdf_with_a_password_is_told_so_wherever_its_trailer_stands() {
    for bytes in
        [with_table("/Encrypt 9 0 R "), with_stream("/Encrypt 9 0 R "), with_table("/Encrypt<<>>")]
    {
        assert_eq!(looked(&bytes), Err(Unfit::Locked));
    }
    // What only looks like it does no harm.
    assert_eq!(looked(&with_table("/EncryptMetadata true ")), Ok(Media::Pdf));
    let mut speaks = with_table("");
    speaks.splice(9..9, *b"% of /Encrypt \n");
    assert_eq!(looked(&speaks), Err(Unfit::Locked), "its place is off, so its end is searched");
    // A table that says a place behind the end of the file.
    let far = String::from_utf8(with_table("/Encrypt 9 0 R ")).expect("text");
    let far = far.replace("startxref\n", "startxref\n9999");
    assert_eq!(looked(far.as_bytes()), Err(Unfit::Locked));
}

#[test]
fn a_pdf_that_is_cut_short_is_told_so() {
    let whole = with_table("");
    for cut in [8, 20, whole.len() / 2, whole.len() - 8] {
        assert_eq!(looked(&whole[..cut]), Err(Unfit::BrokenPdf), "{cut}");
    }
    assert_eq!(looked(b"%PDF-1.7\nstartxref\nx\n%%EOF"), Err(Unfit::BrokenPdf));
    let mut junk = whole;
    junk.extend([b'0'; 4000]);
    assert_eq!(looked(&junk), Err(Unfit::BrokenPdf));
}

#[test]
fn a_picture_says_how_large_it_is_and_is_not_too_large() {
    assert_eq!(looked(&png(65_000, 65_000)), Err(Unfit::TooManyPixels));
    assert_eq!(looked(&png(0, 480)), Err(Unfit::BrokenPicture));
    assert_eq!(looked(&png(640, 480)[..20]), Err(Unfit::BrokenPicture));
    assert_eq!(looked(b"\xff\xd8\xff\xe0\0\x10JFIF\0\x01\x01"), Err(Unfit::BrokenPicture));
}

#[test]
fn every_other_kind_is_told_by_its_bytes() {
    for (bytes, unfit) in [
        (&b""[..], Unfit::Empty),
        (b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", Unfit::Heic),
        (b"GIF89a......", Unfit::OtherPicture),
        (b"<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>", Unfit::Drawing),
        (b"<?xml version='1.0'?>\n<svg/>", Unfit::Drawing),
        (b"\xef\xbb\xbf <!DOCTYPE HTML><script>alert(1)</script>", Unfit::WebPage),
        (b"<html><body>%PDF-1.7 %%EOF", Unfit::WebPage),
        (b"PK\x03\x04\x14\0", Unfit::Archive),
        (b"\xd0\xcf\x11\xe0\xa1\xb1", Unfit::WordFile),
        (b"Only words, in a file that was named scan.pdf", Unfit::Unknown),
        (b"\xff\xfe\0\0", Unfit::Unknown),
        (b"%PD", Unfit::Unknown),
    ] {
        assert_eq!(looked(bytes), Err(unfit), "{}", String::from_utf8_lossy(bytes));
    }
}
