//! The words of papers: read off in the background, and what they propose when a paper is filed.
//!
//! Nothing is filed by itself. A proposal fills the fields of the form and says why; who presses "File it"
//! has said so. What was filed is what the next proposal is learned from.

mod again;
pub mod job;
pub mod propose;
pub mod unread;

use crate::{
    across::today::needs::Need,
    platform::{auth::area::Papers, db::View, error::Result, house::House, ocr::Ocr, web::urls},
    record::papers::{store, text::store as texts},
};
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/papers/words", get(unread::show))
        .route("/p/{person}/papers/{paper}/read-again", post(again::read_again))
}

/// For those who decide: papers wait to be read, and a program for it is not there.
pub async fn needs(view: &View<Papers>, ocr: &Ocr) -> Result<Option<Need>> {
    let Some(program) = ocr.missing() else { return Ok(None) };
    let papers = [store::waiting(view).await?, store::filed(view).await?].concat();
    let wait = texts::of(view, &papers).await?.values().any(|it| !it.is_whole());
    let says = format!("The words of papers are not read: {program} is not on the server");
    Ok(wait.then(|| Need { says, to: urls::paper_words() }))
}
