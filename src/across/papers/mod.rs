//! From the pile to the filed paper: several files put in the tray at once, one after the other filed,
//! pages joined, and every paper found again by kind and by date.
//!
//! The papers themselves are `record/papers`; here they meet the contacts they come from, the members who
//! sent and filed them, and the pile.

pub mod about;
pub mod alike;
mod arrival;
mod arrive;
mod file;
mod join;
mod list;
pub mod needs;
mod row;
mod sending;
mod show;
mod tray;
pub mod words;

use crate::platform::{
    auth::{
        area::Papers,
        grant::{Change, Grant, See},
    },
    house::House,
};
use axum::{
    Router,
    routing::{get, post},
};

type Seeing = Grant<See<Papers>>;
type Changing = Grant<Change<Papers>>;

pub fn routes() -> Router<House> {
    let each = "/p/{person}/papers/{paper}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/papers", get(list::list))
        .route("/p/{person}/papers/tray", get(tray::show))
        .route("/p/{person}/papers/tray/add", get(arrive::blank).post(arrive::add))
        .route("/p/{person}/papers/tray/sending", post(sending::begin))
        .route(
            "/p/{person}/papers/tray/sending/{token}",
            get(sending::stands).patch(sending::piece).delete(sending::give_up),
        )
        .route("/p/{person}/papers/tray/arrived/{arrival}", get(arrive::show))
        .route(each, get(show::show))
        .route(&step("file"), get(file::edit).post(file::file))
        .route(&step("join"), get(join::choose).post(join::join))
        .merge(words::routes())
        .merge(alike::routes())
}
