//! Handing out a page, byte for byte as it was sent, under a name of our own.
//!
//! Whatever a file holds, it runs nothing here: it is what its first bytes said when it came, nothing
//! guesses another kind, a PDF is saved and not shown in the page, and what a browser does show stands in
//! a sandbox without rights. That it was opened goes into the history.

use super::{page_store, store};
use crate::base::ids::{PaperId, PaperPageId};
use crate::platform::{
    auth::{
        area::Papers,
        grant::{Grant, See},
    },
    error::Result,
    web::path::At,
};
use axum::{
    body::Body,
    http::header,
    response::{IntoResponse, Response},
};
use tokio_util::io::ReaderStream;

/// No script, no form, no frame, no origin.
const SANDBOX: &str = "sandbox; default-src 'none'; frame-ancestors 'none'; base-uri 'none'";

pub async fn page(
    grant: Grant<See<Papers>>,
    At(id): At<PaperId>,
    At(page): At<PaperPageId>,
) -> Result<Response> {
    let view = grant.view().await?;
    let paper = store::find(&view, id).await?;
    let page = page_store::find(&view, &paper, page).await?;
    drop(view);
    let file = grant.house().files.stream(&page.file).await?;
    grant.opened("paper", paper.id).await;
    let how = if page.is_picture() { "inline" } else { "attachment" };
    let headers = [
        (header::CONTENT_TYPE, page.media.content_type().to_owned()),
        (header::CONTENT_DISPOSITION, format!("{how}; filename=\"{}\"", page.file_name())),
        (header::CONTENT_SECURITY_POLICY, SANDBOX.to_owned()),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff".to_owned()),
    ];
    Ok((headers, Body::from_stream(ReaderStream::new(file))).into_response())
}
