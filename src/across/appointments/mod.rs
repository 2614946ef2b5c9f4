//! Appointments beside the contacts and the members: the calendar, one appointment, one of a series, and what is done to
//! them. The appointments themselves are `record/appointments`.
//!
//! When, where, with whom and who goes along is seen by all who see the tasks; what it is for, how to prepare and the
//! referral only by those who see the clinical pages. An aide books and changes nothing; she may go along herself, and
//! say how it stands where she does.

mod acts;
mod choices;
mod clash;
mod edit;
mod form;
mod list;
pub mod needs;
mod one;
mod part;
pub mod row;
mod show;

use crate::platform::{
    auth::{
        area::{Role, Tasks},
        grant::{Change, Grant},
    },
    error::{Error, Result},
    house::House,
};
use axum::{Router, routing::get};

type Changing = Grant<Change<Tasks>>;

pub fn routes() -> Router<House> {
    let each = "/p/{person}/appointments/{appointment}";
    let step = |step: &str| format!("{each}/{step}");
    Router::new()
        .route("/p/{person}/appointments", get(list::coming))
        .route("/p/{person}/appointments/past", get(list::past))
        .route("/p/{person}/appointments/add", get(edit::blank).post(edit::add))
        .route(each, get(show::show))
        .route(&step("edit"), get(edit::edit).post(edit::save))
        .route(&step("cancel"), get(acts::cancelling).post(acts::cancel))
        .route(&step("strike"), get(acts::striking).post(acts::strike))
        .route(&step("bring-back"), get(acts::bringing_back).post(acts::bring_back))
        .route(&step("on/{day}"), get(show::one))
        .route(&step("on/{day}/go"), get(one::going).post(one::go))
        .route(&step("on/{day}/escort"), get(one::escorting).post(one::escort))
        .route(&step("on/{day}/move"), get(one::moving).post(one::move_it))
        .route(&step("on/{day}/stands"), get(one::standing).post(one::stand))
        .route(&step("on/{day}/cancel"), get(one::cancelling).post(one::cancel))
        .route(&step("on/{day}/settle"), get(one::settling).post(one::settle))
        .route(&step("on/{day}/later"), get(part::parting).post(part::part))
}

/// Books and changes: not an aide.
fn books(grant: &Changing) -> Result<()> {
    if grant.role() == Role::Aide { Err(Error::Forbidden) } else { Ok(()) }
}
