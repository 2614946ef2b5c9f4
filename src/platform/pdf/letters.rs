//! Which characters a sheet can print.
//!
//! PDF/UA-1 forbids text without a glyph, so one emoji would cost the whole sheet. Here every string is gone through
//! first: what no font can draw becomes □, and the data is told (`letters_missing`) so that the foot can say what the
//! mark means. A character and the marks above or below it must be found in one font together, since a cluster is never
//! drawn from two.

use serde_json::Value;
use typst::layout::Abs;
use typst::text::{Font, FontInstance, FontVariant, FontVariations, is_default_ignorable};
use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

const MISSING: char = '□';

/// The same data with every string printable, and `letters_missing` set to whether one had to be changed.
pub fn printable(fonts: &[Font], mut data: Value) -> Value {
    // Only an instance looks glyphs up; a font's own `coverage` also lists what is mapped to no glyph.
    let plain = |font: &Font| {
        font.clone().instantiate(FontVariant::default(), Abs::pt(12.0), &FontVariations::default())
    };
    let faces: Vec<FontInstance> = fonts.iter().map(plain).collect();
    let mut missing = false;
    walk(&mut data, &mut |text| {
        let (printed, lost) = spelled(&faces, text);
        missing |= lost;
        printed
    });
    if let Value::Object(keys) = &mut data {
        keys.insert("letters_missing".into(), missing.into());
    }
    data
}

fn walk(value: &mut Value, change: &mut impl FnMut(&str) -> String) {
    match value {
        Value::String(text) => *text = change(text),
        Value::Array(items) => items.iter_mut().for_each(|item| walk(item, change)),
        Value::Object(keys) => keys.values_mut().for_each(|item| walk(item, change)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

fn spelled(faces: &[FontInstance], text: &str) -> (String, bool) {
    let mut printed = String::with_capacity(text.len());
    let mut missing = false;
    let mut rest = text.nfc().filter_map(visible).peekable();
    while let Some(first) = rest.next() {
        let mut cluster = String::from(first);
        while let Some(mark) = rest.next_if(|c| is_combining_mark(*c) || is_default_ignorable(*c)) {
            cluster.push(mark);
        }
        if faces.iter().any(|face| draws(face, &cluster)) {
            printed.push_str(&cluster);
        } else {
            printed.push(MISSING);
            missing = true;
        }
    }
    (printed, missing)
}

/// Control characters have no look and may not stand in a PDF's text; a line break is kept.
fn visible(c: char) -> Option<char> {
    match c {
        '\n' => Some('\n'),
        '\u{feff}' => None,
        c if c.is_control() => Some(' '),
        c => Some(c),
    }
}

fn draws(face: &FontInstance, cluster: &str) -> bool {
    cluster.chars().all(|c| {
        c == '\n'
            || is_default_ignorable(c)
            || face.ttf().glyph_index(c).is_some_and(|glyph| glyph.0 != 0)
    })
}
