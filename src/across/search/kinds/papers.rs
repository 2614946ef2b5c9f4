//! The leaves of papers: each paper whose pages have been read, as far as the reader sees it. A page
//! counts only where its paper has a leaf.

use crate::{
    across::search::store,
    platform::{auth::area::Papers, db::View, error::Result, words::Leaf},
};

pub async fn papers(view: &View<Papers>) -> Result<Vec<Leaf>> {
    let mut papers: Vec<i64> = store::pages(view).await?.iter().map(|it| it.paper).collect();
    papers.dedup();
    let leaf = |paper: i64| Leaf {
        kind: "paper",
        item: paper,
        title: format!("Paper {paper}"),
        ..Leaf::default()
    };
    Ok(papers.into_iter().map(leaf).collect())
}
