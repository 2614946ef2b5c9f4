//! The wiring: every router, every layer, in the order a request meets them.

use crate::{
    across, family,
    platform::{
        error::{Error, Result},
        house::House,
        web::{ask_again::ask_again, assets, form::Constraint, guard, install},
    },
    record,
};
use axum::{
    Router,
    extract::State,
    middleware::{from_fn, from_fn_with_state},
    routing::get,
};
use tower_http::{catch_panic::CatchPanicLayer, compression::CompressionLayer};

/// Every capability's routes: one line each.
pub fn routes() -> Router<House> {
    Router::new()
        .merge(family::members::routes())
        .merge(family::decisions::routes())
        .merge(record::people::routes())
        .merge(record::medicines::routes())
        .merge(record::allergies::routes())
        .merge(record::contacts::routes())
        .merge(record::conditions::routes())
        .merge(record::operations::routes())
        .merge(record::statements::routes())
        .merge(record::baseline::routes())
        .merge(record::happenings::routes())
        .merge(record::coverage::routes())
        .merge(record::observations::routes())
        .merge(record::questions::routes())
        .merge(record::visits::routes())
        .merge(record::papers::routes())
        .merge(across::papers::routes())
        .merge(across::visits::routes())
        .merge(across::questions::routes())
        .merge(across::appointments::routes())
        .merge(across::calendar::routes())
        .merge(across::reconciliation::routes())
        .merge(across::reminders::routes())
        .merge(across::renewals::routes())
        .merge(across::ingredients::routes())
        .merge(across::disagreements::routes())
        .merge(across::directives::routes())
        .merge(across::named::routes())
        .merge(across::search::routes())
        .merge(across::setup::routes())
        .merge(across::sheets::routes())
        .merge(across::statements::routes())
        .merge(across::tasks::routes())
        .merge(across::carried::routes())
        .merge(across::coverage::routes())
        .merge(across::happenings::routes())
        .merge(across::observations::routes())
        .merge(across::today::routes())
        .merge(across::history::routes())
        .merge(across::turns::routes())
        .merge(across::visibility::routes())
        .merge(install::routes())
        .route("/static/{*name}", get(assets::serve))
        .route("/healthz", get(async || "well\n"))
        .route("/readyz", get(ready))
        .fallback(async || Error::NotFound)
}

/// What each capability says where the database refuses a value.
pub fn constraints() -> Vec<Constraint> {
    [
        &family::members::CONSTRAINTS[..],
        &record::people::CONSTRAINTS,
        &record::contacts::CONSTRAINTS,
        &record::medicines::given::CONSTRAINTS,
    ]
    .concat()
}

async fn ready(State(house): State<House>) -> Result<&'static str> {
    house.db.answers().await.map(|()| "ready\n")
}

/// The whole app below its base path. `ask_again` wraps the router from outside: it asks twice.
pub fn app(house: House) -> Router {
    let base = house.config.base().path().to_owned();
    let at_once = from_fn_with_state(house.clone(), across::disagreements::at_once);
    let routes = routes().layer(at_once).with_state(house.clone());
    let routes = match base.as_str() {
        "" => routes,
        base => Router::new().nest_service(base, routes).fallback(async || Error::NotFound),
    };
    Router::new()
        .fallback_service(routes)
        .layer(from_fn_with_state(house.clone(), ask_again))
        .layer(from_fn_with_state(house.clone(), guard::own_forms))
        .layer(CatchPanicLayer::custom(guard::panicked))
        .layer(from_fn(guard::in_time))
        .layer(from_fn_with_state(house, guard::finish))
        .layer(CompressionLayer::new())
        .layer(from_fn(guard::logged))
}
