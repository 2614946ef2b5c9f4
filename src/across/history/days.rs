//! Entries as sentences, gathered by the day they happened on where the person is.

use super::{
    kinds::Titles,
    sentences::{Sentence, Words},
};
use crate::base::{day, zone::Zone};
use crate::platform::{
    audit::read::{PAGE, Wanted},
    auth::area::History,
    db::View,
    error::Result,
};
use time::Date;

/// What was asked for, in words.
pub struct Told {
    pub days: Vec<Day>,
    pub entries: usize,
    /// The oldest of them.
    pub oldest: Option<i64>,
    /// Whether there may be older ones that were asked for too.
    pub goes_on: bool,
}

/// The sentences of one day, newest first.
pub struct Day {
    pub name: String,
    pub sentences: Vec<Sentence>,
}

/// The kinds that are about an item of another kind.
const LEANING: [&str; 11] = [
    "happening",
    "step",
    "fill",
    "stock_count",
    "pause",
    "question",
    "second_list_line",
    "settled_row",
    "same_ingredient",
    "given",
    "log_keeping",
];

pub async fn tell(view: &View<History>, wanted: &Wanted, zone: &Zone, today: Date) -> Result<Told> {
    let mut entries = view.history(wanted).await?;
    let endless = entries.iter().filter(|it| matches!(it.kind.as_str(), "print" | "given"));
    let titles = Titles::read(view, &endless.map(|it| it.item).collect::<Vec<_>>()).await?;
    let names = view.names().await?;
    let goes_on = entries.len() >= wanted.most.unwrap_or(PAGE);
    let oldest = entries.last().map(|it| it.id);
    // What leans on an item that is hidden from the reader is not there for her either.
    let leans = |kind: &str| LEANING.contains(&kind);
    entries.retain(|it| !leans(&it.kind) || titles.of(&it.kind, it.item).is_some());
    let words = Words { names: &names, titles: &titles, zone };
    let sentences = entries.iter().map(|it| words.tell(it)).collect();
    Ok(Told { days: by_day(sentences, zone, today), entries: entries.len(), oldest, goes_on })
}

fn by_day(sentences: Vec<Sentence>, zone: &Zone, today: Date) -> Vec<Day> {
    let mut days: Vec<(Date, Day)> = Vec::new();
    for sentence in sentences {
        let date = zone.day(sentence.at);
        if days.last().is_none_or(|(last, _)| *last != date) {
            let name = format!("{}, {}", day::short_words(date), day::ago(date, today));
            days.push((date, Day { name, sentences: Vec::new() }));
        }
        if let Some((_, day)) = days.last_mut() {
            match day.sentences.last_mut() {
                Some(last) if last.goes_on_in(&sentence) => last.things.extend(sentence.things),
                _ => day.sentences.push(sentence),
            }
        }
    }
    days.into_iter().map(|(_, day)| day).collect()
}
