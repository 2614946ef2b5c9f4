//! How the person usually is, as the emergency sheet says it: short, own words first.
//!
//! What is missing is shown as missing once, as one line, and not line by line.

use crate::record::baseline::{
    daily,
    model::{Baseline, usually_is},
};
use serde::Serialize;

#[derive(Serialize)]
pub struct Usual {
    pub title: String,
    /// Empty: not written down.
    pub items: Vec<Item>,
    pub said: Option<String>,
    pub stamp: Option<String>,
}

#[derive(Serialize)]
pub struct Item {
    pub what: String,
    pub text: String,
    /// Who wrote the own words down, if not the person.
    pub by: Option<String>,
}

impl Usual {
    pub fn of(it: &Baseline, name: &str, stamp: String) -> Usual {
        let title = usually_is(name);
        if it.is_empty() {
            return Usual { title, items: Vec::new(), said: None, stamp: None };
        }
        let item = |what: &str, text: Option<String>| {
            Some(Item { what: what.to_owned(), text: text?, by: None })
        };
        let own = it.own_words.as_ref().map(|words| Item {
            what: format!("In {name}’s own words"),
            text: words.to_string(),
            by: it.own_words_by.as_ref().map(|by| format!("written down by {by}")),
        });
        let with = it.with_the_person().into_iter();
        let with = with.filter_map(|(what, note)| Some(format!("{what}: {}", note?)));
        let with = with.collect::<Vec<_>>().join("\n");
        let items = [
            own,
            item("Usual thinking", it.thinking.as_ref().map(ToString::to_string)),
            item("Usual mood", it.mood.as_ref().map(ToString::to_string)),
            item("Not the usual self", it.not_usual.as_ref().map(ToString::to_string)),
            item("Walking aid", it.walking_aid.as_ref().map(ToString::to_string)),
            item("Daily activities", daily::sentence(&it.daily())),
            item(&format!("How to be with {name}"), (!with.is_empty()).then_some(with)),
        ];
        let items = items.into_iter().flatten().collect();
        Usual { title, items, said: it.said(), stamp: Some(stamp) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::text::{Line, Note};

    #[test]
    fn nothing_asked_has_no_lines_and_own_words_come_first() {
        let unasked = Baseline::not_asked(1.into());
        let of = |it: &Baseline| Usual::of(it, "Ottoline", "not checked yet".into());
        assert!(of(&unasked).items.is_empty() && of(&unasked).stamp.is_none());
        let told = Baseline {
            own_words: Some(Note::from("Window open.".to_owned())),
            own_words_by: Some(Line::from("Ines".to_owned())),
            walking_aid: Some(Line::from("stick".to_owned())),
            voice: Some(Note::from("slow".to_owned())),
            names: Some(Note::from("Otti".to_owned())),
            ..unasked
        };
        let items = of(&told).items;
        let whats: Vec<_> = items.iter().map(|it| it.what.as_str()).collect();
        assert_eq!(whats, ["In Ottoline’s own words", "Walking aid", "How to be with Ottoline"]);
        assert_eq!(items[2].text, "Voice: slow\nNames: Otti");
        assert_eq!(items[0].by.as_deref(), Some("written down by Ines"));
    }
}
