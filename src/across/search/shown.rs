//! What is shown of a hit: its title and a part of its text, with the words that were asked for
//! marked, its kind, its day, its page.

use super::{find::Hit, kinds, store, words};
use crate::{
    base::day,
    platform::{
        db::View,
        error::Result,
        web::urls::Address,
        words::{Shelf, json},
    },
};
use std::collections::HashMap;

/// A text in pieces: whether a piece was asked for. A template escapes each.
pub type Marked = Vec<(bool, String)>;

pub struct Shown {
    pub title: Marked,
    pub text: Marked,
    pub kind: &'static str,
    pub page: Option<i64>,
    pub day: Option<String>,
    pub address: Address,
}

/// These hits, in their order.
pub async fn shown<A>(
    view: &View<A>,
    shelf: &Shelf,
    (asked, hits): (&[words::Word], &[Hit]),
) -> Result<Vec<Shown>> {
    if hits.is_empty() {
        return Ok(Vec::new());
    }
    let question = words::any(asked);
    let pages: Vec<i64> = hits.iter().filter_map(|it| it.page.map(|(id, _)| id)).collect();
    let how = (Shelf::MARKS, Shelf::WORDS);
    let pages = store::excerpts(view, &question, how, &json(&pages)).await?;
    let pages: HashMap<i64, String> = pages.into_iter().collect();
    let leaves: Vec<i64> = hits.iter().filter_map(|it| i64::try_from(it.leaf).ok()).collect();
    let leaves = shelf.excerpts(&question, &leaves).await?;
    let one = |hit: &Hit| {
        let leaf = &shelf.leaves[hit.leaf];
        // A paper of which only a page was found has nothing to mark in its title.
        let own = leaves.iter().find(|it| usize::try_from(it.id) == Ok(hit.leaf));
        let title = own.map_or(leaf.title.clone(), |it| it.title.clone());
        let text = match hit.page {
            Some((id, _)) => pages.get(&id).cloned().unwrap_or_default(),
            None => own.map(|it| it.text.clone()).unwrap_or_default(),
        };
        Shown {
            title: pieces(&title),
            text: pieces(&text),
            kind: kinds::name(leaf.kind),
            page: hit.page.map(|(_, place)| place),
            day: leaf.day.map(day::words),
            address: kinds::address(leaf),
        }
    };
    Ok(hits.iter().map(one).collect())
}

/// A text of our own making between marks; a mark that stood in it before at worst marks too much.
fn pieces(text: &str) -> Marked {
    let [begins, ends] = Shelf::MARKS;
    let mut pieces = Vec::new();
    for (at, part) in text.split(begins).enumerate() {
        let (marked, rest) = match at {
            0 => ("", part),
            _ => part.split_once(ends).unwrap_or((part, "")),
        };
        pieces.push((true, marked.to_owned()));
        pieces.push((false, rest.replace(ends, "")));
    }
    pieces.retain(|(_, text)| !text.is_empty());
    pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_cut_at_its_marks_whatever_it_holds() {
        let of = |text: &str| {
            let pieces = pieces(text).into_iter();
            pieces.map(|(is, it)| if is { format!("[{it}]") } else { it }).collect::<String>()
        };
        assert_eq!(of("takes \u{2}Warfarin\u{3} daily"), "takes [Warfarin] daily");
        assert_eq!(of("\u{2}a\u{3}\u{2}b\u{3}"), "[a][b]");
        assert_eq!(of("odd \u{3} \u{2}never ended"), "odd  [never ended]");
        assert_eq!(of(""), "");
    }
}
