//! What a phone needs to keep the house on its home screen: the manifest, the script that keeps
//! the shell, and the page for when there is no network.
//!
//! The shell is the look and nothing else. No page of a record is kept on a phone by itself: what
//! she wants to have without a network she keeps as a file, the emergency sheet.

use super::{
    assets,
    page::Page,
    urls::{self, Address},
};
use crate::platform::{
    audit::sha256,
    auth::doors::Visitor,
    error::{Error, Result},
    house::House,
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    Router,
    extract::State,
    http::header::CONTENT_TYPE,
    response::{IntoResponse, Response},
    routing::get,
};
use serde_json::json;

/// The files of the shell that pages name by their content's mark.
const MARKED: [&str; 4] = ["style.css", "register.js", "icon-192.png", "icon-512.png"];
/// Those that are named as they are: the stylesheet asks for the fonts, a browser for the icon.
const PLAIN: [&str; 3] = [
    "favicon.svg",
    "fonts/AtkinsonHyperlegibleNext-Regular.woff2",
    "fonts/AtkinsonHyperlegibleNext-Bold.woff2",
];
/// As in the stylesheet: the aubergine and the ground of the light scheme.
const THEME: &str = "#55204f";
const GROUND: &str = "#eaebe8";

pub fn routes() -> Router<House> {
    Router::new()
        .route("/manifest.webmanifest", get(manifest))
        .route("/sw.js", get(worker))
        .route("/offline", get(offline))
}

/// W3C, Web Application Manifest (2024 draft, from memory): members and their types.
async fn manifest(State(house): State<House>) -> Response {
    let at = |address: Address| address.path(house.config.base().path(), 0.into());
    let icon = |name: &str, kind: &str, sizes: &str, purpose: &str| {
        let src = at(urls::asset(&assets::marked(name)));
        json!({ "src": src, "type": kind, "sizes": sizes, "purpose": purpose })
    };
    let manifest = json!({
        "id": at(urls::records()),
        "name": "Kinsheaf",
        "short_name": "Kinsheaf",
        "lang": "en",
        "dir": "ltr",
        "start_url": at(urls::records()),
        "scope": at(urls::records()),
        "display": "standalone",
        "theme_color": THEME,
        "background_color": GROUND,
        "icons": [
            icon("favicon.svg", "image/svg+xml", "any", "any"),
            icon("icon-192.png", "image/png", "192x192", "any maskable"),
            icon("icon-512.png", "image/png", "512x512", "any maskable"),
        ],
    });
    ([(CONTENT_TYPE, "application/manifest+json")], manifest.to_string()).into_response()
}

/// The script, with its lists as JSON.
#[derive(Template)]
#[template(path = "install/sw.js", escape = "none")]
struct Worker {
    /// The beginning of the names of its caches: another house may share the host.
    prefix: String,
    mark: String,
    offline: String,
    shell: String,
}

async fn worker(State(house): State<House>) -> Result<Response> {
    let base = house.config.base().path();
    let shell = shell(base);
    // A changed file has another name, but for the plain ones and the page itself.
    let plain = PLAIN.map(assets::marked).join(" ");
    let page = include_str!("../../../templates/install/offline.html");
    let mark = sha256(format!("{} {plain} {page}", shell.join(" ")));
    let worker = Worker {
        prefix: json!(format!("kinsheaf shell of {base}/ ")).to_string(),
        mark: json!(mark[..12]).to_string(),
        offline: json!(urls::offline().path(base, 0.into())).to_string(),
        shell: json!(shell).to_string(),
    };
    let script = worker.render().map_err(|e| Error::Internal(e.into()))?;
    Ok(([(CONTENT_TYPE, "text/javascript; charset=utf-8")], script).into_response())
}

/// Every address that is kept.
fn shell(base: &str) -> Vec<String> {
    let files = MARKED.map(assets::marked).into_iter().chain(PLAIN.map(str::to_owned));
    let files = files.map(|name| urls::asset(&name));
    let all = files.chain([urls::offline()]);
    all.map(|it| it.path(base, 0.into())).collect()
}

#[derive(Template, WebTemplate)]
#[template(path = "install/offline.html")]
struct OfflinePage {
    page: Page,
}

async fn offline(visitor: Visitor) -> OfflinePage {
    OfflinePage { page: visitor.page("No network") }
}
