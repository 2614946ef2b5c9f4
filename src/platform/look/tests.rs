//! Pictures made here: lines of grey on white, taken in other light, turned, cut short, and far too large.

use super::*;
use image::{ExtendedColorType, ImageEncoder, Luma, codecs::jpeg::JpegEncoder};

/// A page with these lines, each so many hundredths of its width long, as bright as that.
fn page(lines: &[u32], bright: u8) -> GrayImage {
    GrayImage::from_fn(600, 800, |x, y| {
        let line = (y / 30).checked_sub(2).and_then(|at| lines.get(at as usize));
        let inked = line.is_some_and(|it| y % 30 < 14 && x > 60 && x < 60 + it * 5);
        Luma([if inked { bright / 5 } else { bright }])
    })
}

const LETTER: [u32; 9] = [40, 10, 90, 80, 95, 30, 5, 85, 60];
const OTHER: [u32; 9] = [10, 95, 5, 20, 60, 90, 90, 10, 90];

fn jpeg(it: &GrayImage, exif: Option<u8>) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = JpegEncoder::new_with_quality(&mut bytes, 70);
    if let Some(mark) = exif {
        // One entry, the orientation (TIFF 6.0, tag 274), as a short.
        let head = b"II*\0\x08\0\0\0\x01\0\x12\x01\x03\0\x01\0\0\0".to_vec();
        let exif = [head, vec![mark, 0, 0, 0, 0, 0, 0, 0]].concat();
        encoder.set_exif_metadata(exif).expect("kept");
    }
    let (wide, high) = it.dimensions();
    encoder.write_image(it, wide, high, ExtendedColorType::L8).expect("a JPEG");
    bytes
}

fn look(bytes: Vec<u8>) -> Result<Look, Unseen> {
    of(ImageReader::new(Cursor::new(bytes)))
}

fn seen(bytes: Vec<u8>) -> Look {
    look(bytes).expect("seen")
}

#[test]
fn the_same_page_is_near_in_other_light_and_size_and_another_is_far() {
    let whole = page(&LETTER, 240);
    let first = seen(jpeg(&whole, None));
    let darker = seen(jpeg(&page(&LETTER, 150), None));
    let smaller = imageops::resize(&whole, 330, 440, imageops::FilterType::Triangle);
    let other = seen(jpeg(&page(&OTHER, 240), None));
    assert!(first.distance(&darker) < 20, "{}", first.distance(&darker));
    assert!(first.distance(&seen(jpeg(&smaller, None))) < 20);
    assert!(first.distance(&other) > 60, "{}", first.distance(&other));
    assert_eq!((first.distance(&first), first.distance(&other)), (0, other.distance(&first)));
}

#[test]
fn a_page_on_its_side_is_near_whether_the_phone_says_so_or_not() {
    let first = seen(jpeg(&page(&LETTER, 240), None));
    let turned: [(u8, GrayImage); 3] = [
        (8, imageops::rotate90(&page(&LETTER, 240))),
        (3, imageops::rotate180(&page(&LETTER, 240))),
        (6, imageops::rotate270(&page(&LETTER, 240))),
    ];
    for (mark, aside) in turned {
        let marked = seen(jpeg(&aside, Some(mark)));
        let silent = seen(jpeg(&aside, None));
        assert!(first.distance(&silent) < 20, "{mark}: {}", first.distance(&silent));
        // It is laid upright before: not one of the other ways is the nearest.
        let upright: u32 =
            first.0[0].iter().zip(&marked.0[0]).map(|(a, b)| (a ^ b).count_ones()).sum();
        assert!(upright < 20, "{mark}: {upright}");
    }
}

#[test]
fn a_look_is_kept_as_text() {
    let it = seen(jpeg(&page(&LETTER, 240), None));
    let text = it.to_string();
    assert_eq!((text.len(), text.parse()), (256, Ok(it)));
    assert!("12ab".parse::<Look>().is_err() && "x".repeat(256).parse::<Look>().is_err());
}

/// The head of a PNG and no more.
fn head(wide: u32, high: u32) -> Vec<u8> {
    let mut named = b"IHDR".to_vec();
    named.extend([wide.to_be_bytes(), high.to_be_bytes()].concat());
    named.extend([8, 0, 0, 0, 0]);
    let mut bytes = b"\x89PNG\r\n\x1a\n\0\0\0\r".to_vec();
    let step = |crc: u32, _| if crc & 1 == 1 { 0xedb8_8320 ^ crc >> 1 } else { crc >> 1 };
    let crc = !named.iter().fold(!0, |crc, it| (0..8).fold(crc ^ u32::from(*it), step));
    bytes.extend(&named);
    bytes.extend(crc.to_be_bytes());
    // A table of no bytes, so that a reader gets as far as asking for the dots.
    bytes.extend(b"\0\0\0\0IDAT\x35\xaf\x06\x1e\0\0\0\0IEND\xae\x42\x60\x82");
    bytes
}

#[test]
fn what_is_far_too_large_is_not_unpacked_and_what_is_damaged_is_told() {
    assert_eq!(look(head(30_000, 30_000)), Err(Unseen::TooLarge));
    assert_eq!(look(head(19_000, 19_000)), Err(Unseen::TooLarge));
    assert_eq!(look(head(500, 60_000)), Err(Unseen::TooLarge));
    assert_eq!(look(head(300, 300)), Err(Unseen::Broken));
    for bytes in [Vec::new(), b"not a picture".to_vec(), b"\x89PNG\r\n\x1a\n".to_vec()] {
        assert_eq!(look(bytes), Err(Unseen::Broken));
    }
    // Cut short, a JPEG may still be made out in part; it never does harm.
    let whole = jpeg(&page(&LETTER, 240), None);
    for end in [whole.len() / 2, 400, 20, 3] {
        let cut = look(whole[..end].to_vec());
        assert!(cut.is_ok() || cut.is_err_and(|it| it != Unseen::TooLarge), "{end}");
    }
    assert_eq!(look(jpeg(&GrayImage::from_pixel(600, 800, Luma([230])), None)), Err(Unseen::Blank));
}

#[tokio::test]
async fn a_file_that_is_not_there_has_no_look() {
    assert_eq!(of_file(PathBuf::from("/nowhere/at/all")).await, Err(Unseen::Broken));
    assert!(of_bytes(jpeg(&page(&OTHER, 240), None)).await.is_ok());
}
