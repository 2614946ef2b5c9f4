//! Reading the form that carries a pile of papers. Each file is written to the disk as it comes; what
//! cannot be kept is let go with its own reason, and the others go on.
//!
//! Only the form of a tray is read so, and only for those who may change papers: for anyone else nothing
//! is read at all, and the handler answers. What arrived stands beside the fields and not among them, so
//! that no form can name a file it did not bring.

use super::{
    form::Fields,
    uploads::{CUT, text, trouble},
};
use crate::{
    base::{
        ids::{MemberId, PersonId},
        text::Line,
    },
    platform::{
        auth::{area::AreaName, grant},
        error::{Error, Result},
        files::{
            arriving::Arrival,
            is_full,
            paper::{MOST_BYTES, Unfit},
            sending::{Sending, Whose},
        },
        house::House,
    },
};
use axum::{
    extract::{
        DefaultBodyLimit, FromRequest, FromRequestParts, Multipart, Request, multipart::Field,
    },
    http::{StatusCode, request::Parts},
};
use std::{convert::Infallible, io, sync::Arc};

/// All of a pile, and the files in it: past the first nothing is kept, past the second not the rest.
const MOST: usize = 600 * 1024 * 1024;
pub const MOST_FILES: usize = 60;

/// One file of a pile: the name it was sent with, cleaned, and what came of it.
#[derive(Debug)]
pub struct Sent {
    pub name: Option<Line>,
    pub file: std::result::Result<Arrival, Unfit>,
    /// Where it came in pieces before.
    pub sending: Option<Sending>,
}

/// A pile, as far as it was read.
#[derive(Clone, Debug, Default)]
pub struct Arrived(Arc<Vec<Sent>>);

impl Arrived {
    pub fn files(&self) -> &[Sent] {
        &self.0
    }

    /// What came in pieces has been told of: of those that were not settled nothing stays behind.
    pub async fn is_told(&self) {
        for sending in self.0.iter().filter_map(|it| it.sending.as_ref()) {
            if let Err(e) = sending.remove().await {
                tracing::warn!(error = %e, "what came in pieces was not removed, and is in a day");
            }
        }
    }
}

impl<S: Send + Sync> FromRequestParts<S> for Arrived {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> std::result::Result<Self, Infallible> {
        Ok(parts.extensions.get::<Arrived>().cloned().unwrap_or_default())
    }
}

/// Whose tray an address adds to, if it is such an address.
pub(super) fn tray_of(house: &House, path: &str) -> Option<PersonId> {
    let below = path.strip_prefix(house.config.base().path())?;
    below.strip_prefix("/p/")?.strip_suffix("/papers/tray/add")?.parse().ok()
}

pub(super) async fn read(
    house: &House,
    mut request: Request,
    (person, member): (PersonId, MemberId),
) -> Result<(Fields, Arrived)> {
    if !grant::may_change(house, person, member, AreaName::Papers).await? {
        return Ok((Fields::default(), Arrived::default()));
    }
    DefaultBodyLimit::max(MOST).apply(&mut request);
    let mut form = Multipart::from_request(request, &()).await.map_err(|_| CUT)?;
    let (mut fields, mut files) = (Vec::new(), Vec::new());
    while let Some(mut part) = form.next_field().await.map_err(trouble).map_err(in_full)? {
        match part.file_name().map(str::to_owned) {
            None => {
                let name = part.name().unwrap_or_default().to_owned();
                fields.push((name, text(&mut part).await?));
            }
            Some(name) => {
                let more = files.len() < MOST_FILES;
                files.extend(one(house, &mut part, &name, more).await.map_err(in_full)?);
            }
        }
    }
    for (_, it) in fields.iter().filter(|it| it.0 == IN_PIECES) {
        let more = files.len() < MOST_FILES;
        files.push(before(house, (person, member), it, more).await?);
    }
    Ok((Fields::of(fields), Arrived(Arc::new(files))))
}

/// The field that names a file which came in pieces: its token, how many bytes it has, its own name.
const IN_PIECES: &str = "in_pieces";

/// One that came in pieces before the form. The token is known only to the one who sent it.
async fn before(house: &House, whose: Whose, told: &str, more: bool) -> Result<Sent> {
    let mut parts = told.splitn(3, ' ');
    let (token, bytes) = (parts.next().unwrap_or_default(), parts.next().unwrap_or_default());
    let name = cleaned(parts.next().unwrap_or_default());
    let bytes: u64 = bytes.parse().unwrap_or_default();
    let internal = |e: io::Error| Error::Internal(e.into());
    let sending = house.files.sending(whose, token).await.map_err(internal)?;
    let file = match &sending {
        _ if bytes > MOST_BYTES => Err(Unfit::TooLarge),
        _ if !more => Err(Unfit::TooMany),
        Some(it) if it.bytes().await.map_err(internal)? == bytes => {
            it.whole().await.map_err(internal)?
        }
        _ => Err(Unfit::Lost),
    };
    Ok(Sent { name, file, sending })
}

/// One file; nothing where none was chosen, which a browser sends as an empty one without a name.
async fn one(house: &House, part: &mut Field<'_>, name: &str, more: bool) -> Result<Option<Sent>> {
    let mut arriving = match more {
        true => begun(house.files.arrive().await)?,
        false => Err(Unfit::TooMany),
    };
    while let Some(chunk) = part.chunk().await.map_err(trouble)? {
        if let Ok(it) = &mut arriving {
            let pushed = it.push(&chunk).await;
            if it.bytes() > MOST_BYTES {
                arriving = Err(Unfit::TooLarge);
            } else if let Err(unfit) = begun(pushed)? {
                arriving = Err(unfit);
            }
        }
    }
    let file = match arriving {
        Ok(it) if it.bytes() == 0 && name.is_empty() => return Ok(None),
        Ok(it) => begun(it.end().await)?.and_then(|it| it),
        Err(unfit) => Err(unfit),
    };
    Ok(Some(Sent { name: cleaned(name), file, sending: None }))
}

/// A full disk is a reason to refuse this file; other trouble is the program's own.
fn begun<T>(done: io::Result<T>) -> Result<std::result::Result<T, Unfit>> {
    match done {
        Ok(it) => Ok(Ok(it)),
        Err(e) if is_full(&e) => {
            tracing::error!(error = %e, "the disk is full");
            Ok(Err(Unfit::DiskFull))
        }
        Err(e) => Err(Error::Internal(e.into())),
    }
}

fn in_full(e: Error) -> Error {
    match e {
        Error::TooLarge => Error::Told {
            status: StatusCode::PAYLOAD_TOO_LARGE,
            head: "Too much at once",
            says: "A pile may have 600 MB in all. Nothing of this one was kept: go back, and send it in smaller piles.",
        },
        other => other,
    }
}

/// So many letters of a name are kept.
const NAME: usize = 120;

/// The last part of a path, without what turns or hides text, cut where it is long.
pub fn cleaned(name: &str) -> Option<Line> {
    let last = name.rsplit(['/', '\\']).next().unwrap_or_default();
    let turns = |it: &char| {
        it.is_control()
            || matches!(it, '\u{61c}' | '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}')
    };
    let plain: String = last.chars().filter(|it| !turns(it)).take(NAME).collect();
    Line::parse(&plain).ok().flatten().filter(|it| !it.as_str().chars().all(|it| it == '.'))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn name(sent: &str) -> String {
        cleaned(sent).map(|it| it.to_string()).unwrap_or_default()
    }

    #[test]
    fn a_name_is_the_last_part_of_a_path_and_reads_as_it_is_stored() {
        assert_eq!(name("scan.pdf"), "scan.pdf");
        assert_eq!(name("../../etc/passwd"), "passwd");
        assert_eq!(name("C:\\Users\\Ines\\card.jpg"), "card.jpg");
        assert_eq!(name("card\u{202e}gpj.exe"), "cardgpj.exe");
        assert_eq!(name("\u{200f}שלום.pdf"), "שלום.pdf");
        assert_eq!(name(&"a".repeat(300)).len(), NAME);
        for nothing in ["", "..", "../..", "a/", "\u{202e}", "\u{0}"] {
            assert_eq!(cleaned(nothing), None, "{nothing:?}");
        }
    }

    proptest! {
        #[test]
        fn no_name_leads_anywhere(sent in any::<String>()) {
            let name = name(&sent);
            let plain = name.chars().all(|it| !"/\\\0\u{202e}".contains(it));
            prop_assert!(plain && name.chars().count() <= NAME);
        }
    }
}
