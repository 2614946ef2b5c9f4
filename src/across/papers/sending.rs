//! Files that come in pieces, sent by the script of the form (`static/send.js`): how far each has come, and
//! the next piece of it. Without the script the form brings them whole.
//!
//! The words are those of the IETF draft on resumable uploads (draft-ietf-httpbis-resumable-upload, from
//! memory), as much of it as is needed: whether a file is whole follows from its length, which the form
//! says at the end (`platform/web/pile.rs`). Who may not change papers finds nothing here.

use super::Changing;
use crate::platform::{
    error::{Error, Result},
    files::{
        is_full,
        paper::{MOST_BYTES, Unfit},
        sending::{Piece, Sending, Whose},
    },
    web::urls,
};
use axum::{
    body::Body,
    extract::Path,
    http::{HeaderMap, HeaderName, StatusCode, header},
    response::{IntoResponse, Response},
};
use http_body_util::BodyExt;
use std::io;

const LENGTH: HeaderName = HeaderName::from_static("upload-length");
const OFFSET: HeaderName = HeaderName::from_static("upload-offset");

const TOO_MANY: &str = "60 files are on their way already. Wait until they have come, or until tomorrow: what nobody goes on with is given up after a day.";

/// What the script is told: how far it has come, or why it goes no further.
fn told(status: StatusCode, offset: Option<u64>, says: &'static str) -> Response {
    let mut answer = (status, says).into_response();
    if let Some(offset) = offset {
        answer.headers_mut().insert(OFFSET, offset.into());
    }
    answer
}

fn number(headers: &HeaderMap, name: HeaderName) -> Option<u64> {
    headers.get(name)?.to_str().ok()?.parse().ok()
}

fn whose(grant: &Changing) -> Whose {
    (grant.person(), grant.member())
}

fn trouble(e: io::Error) -> Result<Response> {
    if is_full(&e) {
        tracing::error!(error = %e, "the disk is full");
        return Ok(told(StatusCode::INSUFFICIENT_STORAGE, None, Unfit::DiskFull.says()));
    }
    Err(Error::Internal(e.into()))
}

/// A new one, of the length that is announced.
pub async fn begin(grant: Changing, headers: HeaderMap) -> Result<Response> {
    if number(&headers, LENGTH).is_some_and(|it| it > MOST_BYTES) {
        return Ok(told(StatusCode::PAYLOAD_TOO_LARGE, None, Unfit::TooLarge.says()));
    }
    match grant.house().files.begin(whose(&grant)).await {
        Ok(None) => Ok(told(StatusCode::TOO_MANY_REQUESTS, None, TOO_MANY)),
        Ok(Some(token)) => {
            let to = urls::sending(&token).path(grant.house().config.base().path(), grant.person());
            let answer = told(StatusCode::CREATED, Some(0), "");
            Ok(([(header::LOCATION, to)], answer).into_response())
        }
        Err(e) => trouble(e),
    }
}

async fn find(grant: &Changing, token: &str) -> Result<Sending> {
    let found = grant.house().files.sending(whose(grant), token).await;
    found.map_err(|e| Error::Internal(e.into()))?.ok_or(Error::NotFound)
}

/// How far it has come.
pub async fn stands(grant: Changing, Path((_, token)): Path<(String, String)>) -> Result<Response> {
    let bytes = find(&grant, &token).await?.bytes().await;
    Ok(told(StatusCode::NO_CONTENT, Some(bytes.map_err(|e| Error::Internal(e.into()))?), ""))
}

/// The next piece, from where it stands: from anywhere else it is told where that is.
pub async fn piece(
    grant: Changing,
    Path((_, token)): Path<(String, String)>,
    headers: HeaderMap,
    body: Body,
) -> Result<Response> {
    let sending = find(&grant, &token).await?;
    match sending.open().await {
        Ok(None) => Ok(told(StatusCode::CONFLICT, None, "")),
        Ok(Some(it)) if number(&headers, OFFSET) != Some(it.at()) => {
            Ok(told(StatusCode::CONFLICT, Some(it.at()), ""))
        }
        Ok(Some(it)) => take(it, body).await.or_else(trouble),
        Err(e) => trouble(e),
    }
}

/// What comes of a piece before the connection breaks is kept as well.
async fn take(mut piece: Piece, mut body: Body) -> io::Result<Response> {
    while let Some(Ok(frame)) = body.frame().await {
        let Ok(bytes) = frame.into_data() else { continue };
        if piece.is_past(bytes.len() as u64) {
            return Ok(told(StatusCode::PAYLOAD_TOO_LARGE, None, Unfit::TooLarge.says()));
        }
        piece.push(&bytes).await?;
    }
    Ok(told(StatusCode::NO_CONTENT, Some(piece.end().await?), ""))
}

/// She does not send it after all.
pub async fn give_up(
    grant: Changing,
    Path((_, token)): Path<(String, String)>,
) -> Result<Response> {
    let removed = find(&grant, &token).await?.remove().await;
    removed.map_err(|e| Error::Internal(e.into()))?;
    Ok(told(StatusCode::NO_CONTENT, None, ""))
}
