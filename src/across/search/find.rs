//! What was asked for, best first: every word must stand there, in the leaf or on the page (a page
//! is found by the title of its paper too).
//!
//! Best is all words whole in the title, then their beginnings there, then whole words anywhere, then
//! the rest; among equal ones the newest day comes first. None of that depends on how often a word
//! stands elsewhere, as the usual weights do: so nothing of what is hidden moves a line.

use super::{asked::Asked, forgive, words::Word};
use crate::platform::{
    db::View,
    error::Result,
    words::{Sheet, Shelf},
};
use std::cmp::Reverse;
use time::Date;

/// So many words are looked for; more are passed over, and it is said.
pub const WORDS: usize = 8;
/// So many are shown on one page.
pub const PAGE: usize = 20;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Hit {
    pub leaf: usize,
    /// The id of a page's text and which page of the paper it is.
    pub page: Option<(i64, i64)>,
    grade: u8,
    day: Option<Date>,
}

#[derive(Default)]
pub struct Found {
    pub words: Vec<Word>,
    /// Those that were asked for and passed over.
    pub passed_over: Vec<String>,
    /// All of them, best first.
    pub hits: Vec<Hit>,
}

impl Found {
    /// Counted from 0.
    pub fn last_page(&self) -> usize {
        self.hits.len().saturating_sub(1) / PAGE
    }

    /// Those of one page.
    pub fn on_page(&self, page: usize) -> &[Hit] {
        self.hits.chunks(PAGE).nth(page).unwrap_or_default()
    }

    /// The words that stand nowhere, and for which none is shown.
    pub fn nowhere(&self) -> Vec<&str> {
        self.words.iter().filter(|it| it.is_nowhere()).map(|it| it.text.as_str()).collect()
    }
}

pub async fn find<A>(view: &View<A>, shelf: &Shelf, asked: &Asked) -> Result<Found> {
    let mut found = Found::default();
    for text in shelf.words_of(&asked.words()).await? {
        if found.words.iter().any(|it| it.text == text || it.typed.as_ref() == Some(&text)) {
            continue;
        }
        if found.words.len() == WORDS {
            found.passed_over.push(text);
            continue;
        }
        let word = Word::look(view, shelf, &text).await?;
        let forgiven = match word.is_nowhere() {
            true => forgive::forgiven(view, shelf, &text).await?,
            false => None,
        };
        found.words.push(forgiven.unwrap_or(word));
    }
    found.hits = hits(shelf, &found.words, asked);
    Ok(found)
}

fn hits(shelf: &Shelf, words: &[Word], asked: &Asked) -> Vec<Hit> {
    let Some(first) = words.first() else { return Vec::new() };
    let leaves = first.leaves.begun.iter().filter_map(|id| leaf(words, *id));
    let mut pages: Vec<i64> = words.iter().flat_map(|it| it.pages.begun.iter().copied()).collect();
    pages.sort_unstable();
    pages.dedup();
    let pages = shelf.pages.among(&pages).filter_map(|it| page(words, it));
    let mut all: Vec<Hit> = leaves.chain(pages).collect();
    for hit in &mut all {
        hit.day = shelf.leaves[hit.leaf].day;
    }
    let (from, to) = (asked.first_day(), asked.last_day());
    all.retain(|hit| {
        let of_kind = asked.kind.is_empty() || shelf.leaves[hit.leaf].kind == asked.kind;
        // What has no day is not among those of certain days.
        of_kind
            && from.is_none_or(|from| hit.day.is_some_and(|day| day >= from))
            && to.is_none_or(|to| hit.day.is_some_and(|day| day <= to))
    });
    let place = |it: &Hit| it.page.map_or(0, |(_, place)| place);
    all.sort_by_key(|it| (it.grade, Reverse(it.day), it.leaf, place(it)));
    all
}

fn has(sorted: &[i64], id: i64) -> bool {
    sorted.binary_search(&id).is_ok()
}

fn leaf(words: &[Word], id: i64) -> Option<Hit> {
    let all = |stands: fn(&Word) -> &Vec<i64>| words.iter().all(|it| has(stands(it), id));
    if !all(|it| &it.leaves.begun) {
        return None;
    }
    let grade = if all(|it| &it.titles.whole) {
        0
    } else if all(|it| &it.titles.begun) {
        1
    } else if all(|it| &it.leaves.whole) {
        2
    } else {
        3
    };
    Some(Hit { leaf: usize::try_from(id).ok()?, page: None, grade, day: None })
}

fn page(words: &[Word], (id, sheet): (i64, Sheet)) -> Option<Hit> {
    let title = i64::try_from(sheet.leaf).ok()?;
    let begun = |it: &Word| has(&it.pages.begun, id) || has(&it.titles.begun, title);
    let whole = |it: &Word| has(&it.pages.whole, id) || has(&it.titles.whole, title);
    let grade = if words.iter().all(whole) { 2 } else { 3 };
    let hit = Hit { leaf: sheet.leaf, page: Some((id, sheet.place)), grade, day: None };
    words.iter().all(begun).then_some(hit)
}

#[cfg(test)]
mod tests;
