//! Where words stand, for a page that asks by itself: the same as the search finds, on one page.

use super::{asked::Asked, find, kinds, shelf};
use crate::platform::{
    auth::{
        area::Essentials,
        grant::{Grant, See},
    },
    db::View,
    error::Result,
    web::urls::Address,
};

/// A thing in which the words stand.
pub struct Stands {
    pub title: String,
    pub kind: &'static str,
    /// Which page of a paper.
    pub page: Option<i64>,
    pub to: Address,
}

/// The first of them, and how many there are.
#[derive(Default)]
pub struct Standing {
    pub first: Vec<Stands>,
    pub all: usize,
}

/// So many are named.
const MOST: usize = 50;

/// Where all of these words stand exactly, but for the thing itself that asks.
pub async fn standing(
    grant: &Grant<See<Essentials>>,
    view: &View<Essentials>,
    words: &str,
    (kind, item): (&str, i64),
) -> Result<Standing> {
    let shelf = shelf::of(grant, view).await?;
    let asked = Asked { q: words.to_owned(), ..Asked::default() };
    let found = find::find(view, &shelf, &asked).await?;
    // A word that was shown for another one is not the number that was asked for.
    if found.words.iter().any(|it| it.typed.is_some()) {
        return Ok(Standing::default());
    }
    let hits: Vec<_> = found
        .hits
        .iter()
        .map(|hit| (hit, &shelf.leaves[hit.leaf]))
        .filter(|(_, leaf)| (leaf.kind, leaf.item) != (kind, item))
        .collect();
    let first = hits.iter().take(MOST).map(|(hit, leaf)| Stands {
        title: leaf.title.clone(),
        kind: kinds::name(leaf.kind),
        page: hit.page.map(|(_, place)| place),
        to: kinds::address(leaf),
    });
    Ok(Standing { first: first.collect(), all: hits.len() })
}
