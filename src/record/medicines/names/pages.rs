//! Completing a name that is being typed: for whoever is signed in. Nothing of a record is read,
//! and what was typed is kept nowhere.

use super::store;
use crate::platform::{auth::doors::Account, error::Result};
use axum::{Json, extract::Query};

#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Begun {
    start: String,
}

/// So many letters at least: one letter begins thousands of names.
const LEAST: usize = 2;

pub async fn complete(account: Account, Query(begun): Query<Begun>) -> Result<Json<Vec<String>>> {
    let start = begun.start.trim();
    if !(LEAST..=60).contains(&start.chars().count()) {
        return Ok(Json(Vec::new()));
    }
    Ok(Json(store::beginning(&account.view().await?, start).await?))
}
