//! A layer: when a save makes it so that a substance is not borne and yet taken, its answer leads
//! to both, instead of to the page of what was saved.
//!
//! The rows are read before and after, as the one who saves may see them, and only for forms of
//! allergies, medicines and second lists. Nothing is refused: what was saved stays saved.

use super::{read::substances, rows::Row};
use crate::platform::{
    auth::{
        area::{Clinical, Essentials, Role},
        grant::{Grant, See},
    },
    error::Result,
    house::House,
    web::{answer::Answer, urls},
};
use axum::{
    extract::{FromRequestParts, Request, State},
    http::{Method, request::Parts},
    middleware::Next,
    response::Response,
};

pub async fn at_once(State(house): State<House>, request: Request, next: Next) -> Response {
    if *request.method() != Method::POST || area(request.uri().path()).is_none() {
        return next.run(request).await;
    }
    let (parts, body) = request.into_parts();
    let mut again = parts.clone();
    let before = keys(&mut again, &house).await;
    let mut response = next.run(Request::from_parts(parts, body)).await;
    if let Some(answer) = response.extensions_mut().get_mut::<Answer>() {
        let after = keys(&mut again, &house).await;
        let new: Vec<_> = after.into_iter().filter(|it| !before.contains(it)).collect();
        if !new.is_empty() {
            answer.leads_to(urls::disagreements_of(&new));
        }
    }
    response
}

/// Through which area a form is kept that can make it so: asked for as the form's own handler
/// asks, so that nobody is refused what she did not ask for.
fn area(path: &str) -> Option<Own> {
    let below = path.strip_prefix("/p/")?.split_once('/')?.1;
    match below.split('/').next()? {
        "medicines" if below.starts_with("medicines/given") => None,
        "medicines" | "reconciliation" => Some(Own::Clinical),
        "allergies" => Some(Own::Essentials),
        _ => None,
    }
}

enum Own {
    Clinical,
    Essentials,
}

/// The names of the rows as they stand; none for whom the page is not there.
async fn keys(parts: &mut Parts, house: &House) -> Vec<String> {
    let read = async {
        let view = match area(parts.uri.path()) {
            Some(Own::Clinical) => {
                let grant = Grant::<See<Clinical>>::from_request_parts(parts, house).await?;
                (grant.role() != Role::Aide).then_some(grant.view().await?)
            }
            Some(Own::Essentials) => {
                let grant = Grant::<See<Essentials>>::from_request_parts(parts, house).await?;
                let view = grant.view().await?;
                view.area::<Clinical>().filter(|_| grant.role() != Role::Aide)
            }
            None => None,
        };
        let Some(view) = view else { return Ok(Vec::new()) };
        Result::Ok(substances(&view).await?.not_borne().iter().map(Row::key).collect())
    };
    read.await.unwrap_or_default()
}
