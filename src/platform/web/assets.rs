//! The files pages need, inside the program, under names that change with their content.

use crate::platform::error::{Error, Result};
use axum::{
    extract::Path,
    http::{HeaderValue, header},
    response::{IntoResponse, Response},
};
use rust_embed::RustEmbed;

#[derive(RustEmbed)]
#[folder = "$CARGO_MANIFEST_DIR/static"]
#[include = "*.css"]
#[include = "*.js"]
#[include = "fonts/*.woff2"]
#[include = "favicon.svg"]
#[include = "*.png"]
struct Static;

/// A file's name with its content's mark, so that a browser may keep it for a year.
pub fn marked(name: &str) -> String {
    let Some(file) = Static::get(name) else { return name.to_owned() };
    let mark = hex::encode(&file.metadata.sha256_hash()[..6]);
    match name.rsplit_once('.') {
        Some((stem, ending)) => format!("{stem}.{mark}.{ending}"),
        None => name.to_owned(),
    }
}

/// The stylesheet's name.
pub fn stylesheet() -> String {
    marked("style.css")
}

/// Serves `name`: with its mark it may be kept for a year, without it for a day.
pub async fn serve(Path(asked): Path<String>) -> Result<Response> {
    let (file, keep) = match (Static::get(&asked), Static::get(&unmarked(&asked))) {
        (Some(file), _) => (file, "public, max-age=86400"),
        (None, Some(file)) => (file, "public, max-age=31536000, immutable"),
        (None, None) => return Err(Error::NotFound),
    };
    let kind = HeaderValue::from_static(kind(&asked));
    let keep = HeaderValue::from_static(keep);
    let headers = [(header::CONTENT_TYPE, kind), (header::CACHE_CONTROL, keep)];
    Ok((headers, file.data.into_owned()).into_response())
}

fn unmarked(name: &str) -> String {
    let parts: Vec<&str> = name.split('.').collect();
    match parts.as_slice() {
        [stem @ .., _mark, ending] if !stem.is_empty() => format!("{}.{ending}", stem.join(".")),
        _ => name.to_owned(),
    }
}

fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("png") => "image/png",
        Some("svg") => "image/svg+xml",
        Some("woff2") => "font/woff2",
        _ => "application/octet-stream",
    }
}
