//! What a program read, made fit to keep: no controls, no marks that turn text round, no runs of blanks,
//! and not more than one empty line after another.

use unicode_normalization::UnicodeNormalization;

pub(super) fn text(read: &str) -> String {
    let mut lines: Vec<String> = Vec::new();
    for line in read.split(['\n', '\u{c}']) {
        let plain: String =
            line.nfc().map(|it| if it.is_whitespace() { ' ' } else { it }).collect();
        let plain: String = plain.chars().filter(|it| !is_unseen(*it)).collect();
        let line = spaced(&plain);
        if !line.is_empty() || lines.last().is_some_and(|it| !it.is_empty()) {
            lines.push(line);
        }
    }
    lines.join("\n").trim_end().to_owned()
}

/// Two blanks or more are a gap between columns: it stays as two.
fn spaced(line: &str) -> String {
    let parts = line.split("  ").map(str::trim).filter(|it| !it.is_empty());
    parts.collect::<Vec<_>>().join("  ")
}

fn is_unseen(one: char) -> bool {
    one.is_control()
        || matches!(one, '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}')
}

#[cfg(test)]
mod tests {
    use super::text;

    #[test]
    fn what_was_read_is_plain_lines() {
        assert_eq!(
            text("  Lakeshore   Clinic \n\n\n\nDear\tOttoline,\n\u{c}"),
            "Lakeshore  Clinic\n\nDear Ottoline,"
        );
        assert_eq!(text("a\u{202e}b\0c\u{ad}d"), "abcd");
        assert_eq!(text("cafe\u{301}"), "caf\u{e9}");
        assert_eq!(text("\u{c}\n \n"), "");
    }
}
