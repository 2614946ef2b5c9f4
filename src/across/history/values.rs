//! A recorded value as it is read: days and moments in words, yes and no, nothing.

use crate::base::{clock::Instant, day, quantity::Quantity, zone::Zone};
use serde_json::Value;

/// Amounts are recorded in thousandths.
const AMOUNTS: [&str; 5] = ["amount", "least_hours", "most_a_day", "per", "most"];

/// The words for what a field held.
pub fn of_field(field: &str, json: Option<&str>, zone: &Zone) -> Option<String> {
    let number = json.filter(|_| AMOUNTS.contains(&field)).and_then(|it| it.parse().ok());
    match number {
        Some(thousandths) => Some(Quantity::thousandths(thousandths).to_string()),
        None => words(json, zone),
    }
}

/// The words for a recorded JSON text. `None`: nothing was written down.
pub fn words(json: Option<&str>, zone: &Zone) -> Option<String> {
    let value = serde_json::from_str(json?).ok()?;
    match value {
        Value::Null => None,
        Value::Bool(true) => Some("yes".into()),
        Value::Bool(false) => Some("no".into()),
        Value::String(text) => Some(text_words(&text, zone)),
        other => Some(other.to_string()),
    }
}

fn text_words(text: &str, zone: &Zone) -> String {
    if let Some(day) = day::iso(text) {
        return day::words(day);
    }
    match Instant::parse(text) {
        Some(at) => zone.in_words(at),
        None => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_read_as_people_say_them() {
        let zone = Zone::parse("America/Chicago").unwrap();
        let read = |json| words(Some(json), &zone);
        assert_eq!(read(r#""2026-03-09""#).as_deref(), Some("9 March 2026"));
        assert_eq!(read(r#""2026-03-08T08:30:55Z""#).as_deref(), Some("Sun 8 Mar 2026, 3:30 am"));
        assert_eq!(read("true").as_deref(), Some("yes"));
        assert_eq!(read(r#""2.5 mg""#).as_deref(), Some("2.5 mg"));
        assert_eq!(of_field("amount", Some("1500"), &zone).as_deref(), Some("1.5"));
        assert_eq!(of_field("every", Some("1500"), &zone).as_deref(), Some("1500"));
        assert_eq!(read("null"), None);
        assert_eq!(words(None, &zone), None);
    }
}
