//! The outermost layer: reads a form once, answers a kept form as it was answered, and shows a
//! page again with what was typed when it cannot be kept.
//!
//! A form posts to the address that shows it. So when a handler's answer carries errors, the
//! same address is asked by GET with [`Typed`]; `?` is all a handler needs. It must wrap the
//! router from outside: inside, the second request would meet the route already chosen.

use super::{
    answer::Answer,
    asked::{Asked, flash_cookie},
    form::{Fields, FormErrors, FormKey},
    pile,
    refusal::Refusal,
    typed::{Again, Typed},
    uploads,
};
use crate::{
    base::ids::PersonId,
    platform::{
        auth::session,
        error::{Error, Result},
        house::House,
    },
};
use axum::{
    body::{Body, to_bytes},
    extract::{FromRequestParts, Request, State},
    http::{HeaderValue, Method, StatusCode, header, request::Parts},
    middleware::Next,
    response::{IntoResponse, Response},
};

/// A form is text. 256 KiB is more than all its fields may hold, and leaves room to say at each
/// field that too much was typed there.
pub(super) const MOST: usize = 256 * 1024;

pub async fn ask_again(State(house): State<House>, request: Request, next: Next) -> Response {
    if request.method() != Method::POST {
        return finish(&house, None, next.run(request).await).await;
    }
    let (mut parts, body) = request.into_parts();
    let fields = match read(&house, &mut parts, body).await {
        Ok(fields) => fields,
        Err(e) => return e.into_response(),
    };
    let key = FormKey::of(&fields);
    parts.extensions.insert(fields.clone());
    let mut again = Request::new(Body::empty());
    *again.uri_mut() = parts.uri.clone();
    *again.headers_mut() = parts.headers.clone();
    again.headers_mut().remove(header::CONTENT_LENGTH);
    again.headers_mut().remove(header::CONTENT_TYPE);
    again.extensions_mut().clone_from(&parts.extensions);

    let response = next.clone().run(Request::from_parts(parts, Body::empty())).await;
    let (errors, stale) = match response.extensions().get::<Refusal>() {
        Some(Refusal::Errors(errors)) => (errors.clone(), false),
        Some(Refusal::Stale) => (FormErrors::default(), true),
        Some(Refusal::Constraint(message)) => match at_field(&house, message) {
            Some(errors) => (errors, false),
            None => return Error::Internal(message.clone().into()).into_response(),
        },
        Some(Refusal::Repeated) => return repeat(&house, key).await,
        None => return finish(&house, key, response).await,
    };
    again.extensions_mut().insert(Typed::again(Again { fields, errors, stale }));
    let mut page = next.run(again).await;
    if page.status() == StatusCode::OK {
        *page.status_mut() =
            if stale { StatusCode::CONFLICT } else { StatusCode::UNPROCESSABLE_ENTITY };
    }
    page
}

/// The fields of a form, of plain words or with a photo among them. Photos are taken from those
/// who are signed in only: they are written to the disk before any handler is asked.
async fn read(house: &House, parts: &mut Parts, body: Body) -> Result<Fields> {
    let kind = parts.headers.get(header::CONTENT_TYPE).and_then(|it| it.to_str().ok());
    if kind.is_some_and(|it| it.starts_with("multipart/form-data")) {
        let Ok(asked) = Asked::from_request_parts(parts, house).await;
        let signed = session::find(&house.db, house.config.base(), &asked).await?;
        let member = signed.ok_or(Error::SignedOut)?.member;
        let request = Request::from_parts(parts.clone(), body);
        let Some(person) = pile::tray_of(house, parts.uri.path()) else {
            return uploads::read(house, request).await;
        };
        let (fields, arrived) = pile::read(house, request, (person, member)).await?;
        parts.extensions.insert(arrived);
        return Ok(fields);
    }
    let bytes = to_bytes(body, MOST).await.map_err(|_| Error::TooLarge)?;
    Ok(if kind.is_none_or(is_form) { Fields::read(&bytes) } else { Fields::default() })
}

fn is_form(kind: &str) -> bool {
    kind.starts_with("application/x-www-form-urlencoded")
}

fn at_field(house: &House, message: &str) -> Option<FormErrors> {
    let known = house.constraints.iter().find(|it| message.ends_with(it.ends));
    known.map(|it| FormErrors::at(it.field, it.says))
}

/// Turns an [`Answer`] into the redirect, and remembers it under the form's key.
async fn finish(house: &House, key: Option<FormKey>, mut response: Response) -> Response {
    let Some(answer) = response.extensions_mut().remove::<Answer>() else { return response };
    let place = answer.to.path(house.config.base().path(), answer.person);
    let saying = in_record(house, answer.person, answer.saying.unwrap_or_default()).await;
    if let Some(FormKey(key)) = key {
        let remembered = sqlx::query!(
            "update form_key set place = ?, saying = ? where key = ?",
            place,
            saying,
            key
        );
        // Without it the same form, sent again, is still not kept twice: see `repeat`.
        if let Err(e) = remembered.execute(house.db.writer()).await {
            tracing::warn!(error = %e, "the answer to a form was not remembered");
        }
    }
    for cookie in answer.cookies {
        set(&mut response, &cookie.to_string());
    }
    go_on(house, &mut response, &place, &saying);
    response
}

/// The line with the name of the person in whose record it was done: who keeps two records in two
/// tabs must not take one for the other. It is the record of the write, whatever page shows it.
async fn in_record(house: &House, person: PersonId, saying: String) -> String {
    if saying.is_empty() || person == PersonId::default() {
        return saying;
    }
    let name = sqlx::query_scalar!("select name from person where id = ?", person);
    match name.fetch_optional(house.db.readers()).await {
        Ok(Some(name)) => format!("In the record of {name}: {saying}"),
        _ => saying,
    }
}

/// The answer the form got when it was kept.
async fn repeat(house: &House, key: Option<FormKey>) -> Response {
    let key = key.map(|it| it.0);
    let kept = sqlx::query!("select place, saying from form_key where key = ?", key)
        .fetch_optional(house.db.readers())
        .await;
    let (place, saying) = match kept {
        Ok(Some(it)) => (it.place, it.saying),
        _ => (None, None),
    };
    let place = place.unwrap_or_else(|| format!("{}/", house.config.base().path()));
    let saying = saying.unwrap_or_else(|| "This was kept already; nothing was done twice".into());
    let mut response = StatusCode::SEE_OTHER.into_response();
    go_on(house, &mut response, &place, &saying);
    response
}

fn go_on(house: &House, response: &mut Response, place: &str, saying: &str) {
    if let Ok(place) = HeaderValue::from_str(place) {
        response.headers_mut().insert(header::LOCATION, place);
    }
    if !saying.is_empty() {
        set(response, &flash_cookie(house.config.base(), saying).to_string());
    }
}

fn set(response: &mut Response, cookie: &str) {
    if let Ok(cookie) = HeaderValue::from_str(cookie) {
        response.headers_mut().append(header::SET_COOKIE, cookie);
    }
}
