//! The reader's shelf, as the record stands now: laid anew when anything has changed since.

use super::{kinds, store};
use crate::platform::{
    auth::{
        area::{Essentials, Papers},
        grant::{Grant, See},
    },
    db::View,
    error::Result,
    words::{Key, Leaf, Sheet, Sheets, Shelf},
};
use std::{collections::HashMap, sync::Arc};

/// Read in one snapshot with the newest entry of the history: every change of a row, of a place and
/// of who sees what has one.
pub async fn of(grant: &Grant<See<Essentials>>, view: &View<Essentials>) -> Result<Arc<Shelf>> {
    let (head, mark) = (view.head().await?, store::mark(view).await?);
    let stands = format!("{head} {mark} {:?}", grant.reach());
    let key = Key { person: view.person(), member: view.member(), stands };
    let shelves = &grant.house().shelves;
    if let Some(shelf) = shelves.of(&key) {
        return Ok(shelf);
    }
    let leaves = kinds::all(view, grant.zone()).await?;
    let pages = match view.area::<Papers>() {
        Some(view) => sheets(&leaves, store::pages(&view).await?),
        None => Sheets::default(),
    };
    let shelf = Arc::new(Shelf::laid(leaves, pages, shelves.known(mark)).await?);
    shelves.keep(key, shelf.clone());
    Ok(shelf)
}

/// Which leaf each page belongs to; a page whose paper is not among the leaves is not there.
fn sheets(leaves: &[Leaf], pages: Vec<store::Page>) -> Sheets {
    let papers = leaves.iter().enumerate().filter(|(_, it)| it.kind == "paper");
    let papers: HashMap<i64, usize> = papers.map(|(at, it)| (it.item, at)).collect();
    let sheet = |page: store::Page| {
        let leaf = *papers.get(&page.paper)?;
        Some((page.id, Sheet { leaf, place: page.place }))
    };
    pages.into_iter().filter_map(sheet).collect()
}
