//! The words of a PDF: those that stand in it as text, and of pages that are pictures what tesseract
//! makes out at 300 dots an inch, which is what its makers ask for ("Improving the quality of the
//! output", tesseract's manual: "at least 300 dpi"; from memory).

use super::{Desk, MOST_PAGES, PAPER, Text, Unread, clean};

/// A page with fewer letters than this is a picture with at most a stamp of its scanner on it.
const FEW: usize = 25;

pub(super) fn read(desk: &Desk) -> Result<Text, Unread> {
    // One more than is read, to see whether there is one.
    let last = (MOST_PAGES + 1).to_string();
    desk.run("pdftotext", &["-q", "-enc", "UTF-8", "-layout", "-l", &last, PAPER, "read.txt"])?;
    let all = desk.text("read.txt")?;
    // Every page ends with a form feed, an empty one as well.
    let mut pages: Vec<&str> = all.split('\u{c}').collect();
    pages.pop();
    let goes_on = pages.len() > MOST_PAGES;
    pages.truncate(MOST_PAGES);
    let (mut words, mut recognized) = (Vec::new(), false);
    for (number, page) in (1..).zip(&pages) {
        let letters = page.chars().filter(|it| it.is_alphanumeric()).count();
        if letters >= FEW {
            words.push(clean::text(page));
            continue;
        }
        recognized = true;
        words.push(clean::text(&picture(desk, number)?));
    }
    // A form feed between two pages, so that each is found by itself.
    let words = words.join("\n\u{c}\n").trim_end().to_owned();
    Ok(Text { words, pages: pages.len() as i64, goes_on, recognized })
}

fn picture(desk: &Desk, number: usize) -> Result<String, Unread> {
    let number = number.to_string();
    let which = ["-f", &number, "-l", &number, "-r", "300", "-gray", "-png", "-singlefile"];
    desk.run("pdftoppm", &[&["-q"], &which[..], &[PAPER, "page"]].concat())?;
    desk.picture("page.png")
}

/// So large that its lines can be told apart, in dots of its longer side.
const SMALL: &str = "800";
/// More than a picture of that size can take, in bytes.
const MOST_DRAWN: u64 = 8 * 1024 * 1024;

pub(super) fn first_page(desk: &Desk) -> Result<Vec<u8>, Unread> {
    let which = ["-q", "-f", "1", "-l", "1", "-scale-to", SMALL, "-gray", "-png", "-singlefile"];
    desk.run("pdftoppm", &[&which[..], &[PAPER, "first"]].concat())?;
    desk.bytes("first.png", MOST_DRAWN)
}
