//! Layers that every request passes: only our own forms are taken, pages are not stored, and
//! what cannot be shown gets its page.

use super::{
    asked::{self, FLASH},
    refusal::{self, SignedOut, Sorry},
};
use crate::platform::{error::Error, house::House};
use axum::{
    extract::{Request, State},
    http::{HeaderMap, HeaderValue, Method, StatusCode, header},
    middleware::Next,
    response::{IntoResponse, Redirect, Response},
};
use axum_extra::extract::cookie::CookieJar;

/// Nothing from elsewhere, no frames, no inline scripts or styles.
const CSP: &str = "default-src 'none'; style-src 'self'; font-src 'self'; img-src 'self'; script-src 'self'; manifest-src 'self'; connect-src 'self'; form-action 'self'; frame-ancestors 'none'; base-uri 'none'";

/// Refuses a changing request that another site's page sent.
pub async fn own_forms(State(house): State<House>, request: Request, next: Next) -> Response {
    let safe = matches!(*request.method(), Method::GET | Method::HEAD);
    if !safe && !from_here(request.headers(), &house.config.base().origin()) {
        return Error::Foreign.into_response();
    }
    next.run(request).await
}

/// `Sec-Fetch-Site` where the browser sends it; else `Origin` must be ours. A client that sends
/// neither is no browser, and carries no one's cookies without meaning to.
fn from_here(headers: &HeaderMap, ours: &str) -> bool {
    let text = |name: &str| headers.get(name).map(|it| it.to_str().unwrap_or("-"));
    match (text("sec-fetch-site"), text("origin")) {
        (Some(site), _) => matches!(site, "same-origin" | "none"),
        (None, Some(origin)) => {
            let host = text("host").unwrap_or("-");
            origin == ours || origin.split_once("://").is_some_and(|(_, rest)| rest == host)
        }
        (None, None) => true,
    }
}

/// Thirty seconds at most for any answer. A photo on its way through a hospital's network has ten
/// minutes.
pub async fn in_time(request: Request, next: Next) -> Response {
    let kind = request.headers().get(header::CONTENT_TYPE).and_then(|it| it.to_str().ok());
    let carries = kind.is_some_and(|it| it.starts_with("multipart/form-data"));
    let most = std::time::Duration::from_secs(if carries { 600 } else { 30 });
    let answer = tokio::time::timeout(most, next.run(request)).await;
    answer.unwrap_or_else(|_| StatusCode::SERVICE_UNAVAILABLE.into_response())
}

/// Sets what every answer carries, and turns marks into pages.
pub async fn finish(State(house): State<House>, request: Request, next: Next) -> Response {
    let jar = CookieJar::from_headers(request.headers());
    let base = house.config.base();
    // The way back after sign-in is counted from the base, as every address of ours.
    let path = request.uri().path();
    let path = path.strip_prefix(base.path()).unwrap_or(path).to_owned();
    let (flash, get) = (jar.get(FLASH).is_some(), request.method() == Method::GET);
    let mut response = next.run(request).await;
    if response.extensions().get::<SignedOut>().is_some() {
        let next = if get { format!("?next={}", encoded(&path)) } else { String::new() };
        response = Redirect::to(&format!("{}/sign-in{next}", base.path())).into_response();
    } else if let Some(sorry) = sorry(&response) {
        let page = refusal::render(&sorry, base.path());
        let plain = std::mem::replace(&mut response, page);
        for name in [header::RETRY_AFTER, header::ALLOW] {
            let kept = plain.headers().get(&name).cloned();
            kept.map(|it| response.headers_mut().insert(name, it));
        }
    }
    let shown = response.status() != StatusCode::SEE_OTHER && is_html(&response);
    let headers = response.headers_mut();
    if flash
        && shown
        && let Ok(gone) = asked::gone(base, FLASH.into()).to_string().parse()
    {
        headers.append(header::SET_COOKIE, gone);
    }
    protect(headers, base.is_https());
    response
}

/// What to say in place of this answer, if it is none that a person can read. An address that
/// cannot be read (odd bytes, a word for a number) has nothing at it.
fn sorry(response: &Response) -> Option<Sorry> {
    let status = match response.status() {
        StatusCode::METHOD_NOT_ALLOWED => StatusCode::METHOD_NOT_ALLOWED,
        StatusCode::BAD_REQUEST => StatusCode::NOT_FOUND,
        // Also what took too long, which answers without a word.
        StatusCode::SERVICE_UNAVAILABLE => StatusCode::SERVICE_UNAVAILABLE,
        _ => return response.extensions().get().cloned(),
    };
    refusal::page(status).extensions().get().cloned()
}

fn protect(headers: &mut HeaderMap, https: bool) {
    let mut set = |name: &'static str, value: &'static str| {
        headers.entry(name).or_insert(HeaderValue::from_static(value));
    };
    set("content-security-policy", CSP);
    set("x-content-type-options", "nosniff");
    set("referrer-policy", "same-origin");
    set("cross-origin-opener-policy", "same-origin");
    set("cross-origin-resource-policy", "same-origin");
    set("permissions-policy", "camera=(), microphone=(), geolocation=()");
    set("cache-control", "no-store");
    if https {
        set("strict-transport-security", "max-age=31536000");
    }
}

fn is_html(response: &Response) -> bool {
    let kind = response.headers().get(header::CONTENT_TYPE).and_then(|it| it.to_str().ok());
    kind.is_some_and(|it| it.starts_with("text/html"))
}

fn encoded(path: &str) -> String {
    percent_encoding::utf8_percent_encode(path, percent_encoding::NON_ALPHANUMERIC).to_string()
}

/// A mistake in the program ends in a page, and in the log.
pub fn panicked(cause: Box<dyn std::any::Any + Send>) -> Response {
    let text = cause.downcast_ref::<String>().map(String::as_str);
    let text = text.or(cause.downcast_ref::<&str>().copied()).unwrap_or("a panic");
    refusal::internal(text.into())
}

/// One line of log for each request: method, path, answer, time. Never a body, never a query.
pub async fn logged(request: Request, next: Next) -> Response {
    let id = crate::platform::random::hex(4);
    let span = tracing::info_span!("request", id);
    let (method, path) = (request.method().clone(), shown_path(request.uri().path()));
    let began = std::time::Instant::now();
    let response = tracing::Instrument::instrument(next.run(request), span.clone()).await;
    let (status, took) = (response.status().as_u16(), began.elapsed().as_micros());
    span.in_scope(|| tracing::info!(%method, path, status, micros = took, "answered"));
    response
}

/// The path without the secret of a link.
fn shown_path(path: &str) -> String {
    let parts = path.split('/');
    let shown = parts.map(|it| if it.len() >= 32 { "…" } else { it });
    shown.collect::<Vec<_>>().join("/")
}
