//! Entries as sentences, gathered by the day they happened on where the person is.

use super::{
    sentences::{Sentence, Words},
    titles::Titles,
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

/// The kinds whose entries are told without a name among the titles. Everything else has one there
/// as long as the reader may see it: also what is about an item of another kind, which goes with
/// that item when it is hidden. So a new kind that was forgotten is told to nobody.
const NAMELESS: [&str; 6] =
    ["allergy_answer", "house", "member", "membership", "read_mark", "supply_setting"];

/// The kinds that never end: of these only the titles of what is told are read.
const ENDLESS: [&str; 4] = ["print", "given", "turn", "telling"];

pub async fn tell(view: &View<History>, wanted: &Wanted, zone: &Zone, today: Date) -> Result<Told> {
    let mut entries = view.history(wanted).await?;
    let endless = entries.iter().filter(|it| ENDLESS.contains(&it.kind.as_str()));
    let titles = Titles::read(view, &endless.map(|it| it.item).collect::<Vec<_>>()).await?;
    let names = view.names().await?;
    let goes_on = entries.len() >= wanted.most.unwrap_or(PAGE);
    let oldest = entries.last().map(|it| it.id);
    entries.retain(|it| match it.kind.as_str() {
        // Of what is not there for the reader, it is not told that it was hidden from another.
        "hidden" => {
            titles.hidden(it.item).is_some_and(|row| titles.of(&row.kind, row.item).is_some())
        }
        kind => NAMELESS.contains(&kind) || titles.of(kind, it.item).is_some(),
    });
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
