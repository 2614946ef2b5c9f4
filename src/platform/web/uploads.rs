//! Reading a form that carries a photo. The photo is kept at once, and stands among the fields as
//! its sum: a form that is shown again has not lost it, and a handler reads it like any field.
//!
//! What is no photo, or too large, is let go while the rest of the form is read, so that the
//! words typed beside it come back with a line that says so.

use super::form::{Fields, UNFIT};
use crate::platform::{
    error::{Error, Result},
    files::{MOST_BYTES, Unfit},
    house::House,
};
use axum::{
    body::Bytes,
    extract::{
        DefaultBodyLimit, FromRequest, Multipart, Request,
        multipart::{Field, MultipartError},
    },
    http::StatusCode,
};

/// All of a form: past this, not even the words are read.
const MOST: usize = 3 * MOST_BYTES;

pub(super) async fn read(house: &House, mut request: Request) -> Result<Fields> {
    DefaultBodyLimit::max(MOST).apply(&mut request);
    let mut form = Multipart::from_request(request, &()).await.map_err(|_| CUT)?;
    let mut fields = Vec::new();
    while let Some(mut part) = form.next_field().await.map_err(trouble)? {
        let name = part.name().unwrap_or_default().to_owned();
        match part.file_name() {
            None => fields.push((name, text(&mut part).await?)),
            // The browser sends an empty part where no file was chosen.
            Some(_) => match photo(house, &mut part).await? {
                Some(Ok(sum)) => fields.push((name, sum)),
                Some(Err(unfit)) => fields.push((format!("{name}{UNFIT}"), unfit.says().into())),
                None => {}
            },
        }
    }
    Ok(Fields::of(fields))
}

pub(super) async fn text(part: &mut Field<'_>) -> Result<String> {
    let bytes = whole(part, super::ask_again::MOST).await?.ok_or(Error::TooLarge)?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

async fn photo(
    house: &House,
    part: &mut Field<'_>,
) -> Result<Option<std::result::Result<String, Unfit>>> {
    Ok(match whole(part, MOST_BYTES).await? {
        Some(bytes) if bytes.is_empty() => None,
        Some(bytes) => Some(house.files.keep(bytes).await?),
        None => Some(Err(Unfit::TooLarge)),
    })
}

/// A part's bytes, or nothing where there are more than `most`: those are read, and let go.
async fn whole(part: &mut Field<'_>, most: usize) -> Result<Option<Bytes>> {
    let (mut bytes, mut fits) = (Vec::new(), true);
    while let Some(chunk) = part.chunk().await.map_err(trouble)? {
        fits = fits && bytes.len() + chunk.len() <= most;
        if fits {
            bytes.extend_from_slice(&chunk);
        }
    }
    Ok(fits.then(|| bytes.into()))
}

pub(super) fn trouble(e: MultipartError) -> Error {
    if e.status() == StatusCode::PAYLOAD_TOO_LARGE { Error::TooLarge } else { CUT }
}

pub(super) const CUT: Error = Error::Told {
    status: StatusCode::UNPROCESSABLE_ENTITY,
    head: "This did not arrive whole",
    says: "The connection broke while the form was being sent, so nothing was kept. Your browser's back button shows the page with your words: send it again.",
};
