//! Sheets: one page of the record for one audience, the same on screen and on paper.
//!
//! The facts of a sheet are gathered once; the screen and the press both show them, in the same
//! order with the same words. Each print leaves a row and an entry in the history; a print that
//! cannot be noted (a full disk) is printed all the same, and says so.

mod asked;
mod cards;
mod directives;
mod emergency;
mod give;
mod kept;
mod medicines;
mod pages;
pub mod print;
mod stamps;
pub mod store;
mod usual;
mod visit;

use crate::platform::{
    auth::area::{Essentials, Notes},
    db::{View, Write},
    error::{Error, Result},
    house::House,
    pdf::Sheet,
};
use axum::{
    Router,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/sheets", get(pages::list))
        .route("/p/{person}/sheets/emergency", get(pages::emergency))
        .route("/p/{person}/sheets/emergency/print", post(pages::print_emergency))
        .route("/p/{person}/sheets/emergency/keep", post(pages::keep_emergency))
        .route("/p/{person}/sheets/kept", get(pages::kept))
        .route("/p/{person}/sheets/kept/print", post(pages::print_kept))
        .merge(cards::routes())
        .merge(directives::routes())
        .merge(medicines::pages::routes())
        .merge(visit::pages::routes())
}

/// Notes a print of the emergency sheet as the record stands within this write, without the
/// paper: for a history that is told.
pub async fn emergency_printed(write: &mut Write<Notes>, today: time::Date) -> Result<()> {
    let view: &View<Notes> = write;
    let view = view.area::<Essentials>().ok_or(Error::Forbidden)?;
    let facts = emergency::Facts::read(&view, today).await?;
    let (by, head) = ((write.member(), write.at()), write.head().await?);
    let print = print::Print::new(by, Sheet::Emergency, &facts, head);
    store::add(write, &print).await
}
