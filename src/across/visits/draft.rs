//! Keeping what is typed: by the script of the page a few seconds after typing pauses, or by the
//! press "Keep as a draft"; and throwing it away.
//!
//! None of it carries the form's key into the write: that belongs to the save.

use super::{
    form::Typing,
    meeting::{self, Met},
};
use crate::{
    base::ids::{AppointmentId, DraftId},
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::Done,
        error::{Error, Result},
        web::{
            form::{Form, Press},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::visits::drafts::{
        model::{Draft, Sent},
        store,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{Json, http::StatusCode};
use time::Date;

type Changing = Grant<Change<Clinical>>;

impl Typing {
    pub fn of(self, meeting: Option<(AppointmentId, Date)>) -> Typing {
        Typing { sent: Sent { meeting, ..self.sent }, ..self }
    }
}

/// The press: the page comes again with what is kept.
pub async fn keep(grant: &Changing, sent: &Sent) -> Done {
    let write = grant.note().await?;
    if sent.fields.is_empty() {
        return write.commit().await?.then(urls::visits()).saying("Nothing is typed yet");
    }
    let draft = store::keep(&write, sent).await?;
    let line = "Kept as a draft: only you see it, on each of your devices";
    write.commit().await?.then(urls::visit_draft(draft.id)).saying(line)
}

/// What the script of the page is told.
#[derive(serde::Serialize)]
pub struct Kept {
    says: String,
    version: i64,
}

type Told = Result<(StatusCode, Json<Kept>)>;

pub async fn typed(grant: Changing, form: Form<Typing>) -> Told {
    told(&grant, &form.parse()?.sent).await
}

pub async fn typed_of(
    grant: Changing,
    At(id): At<AppointmentId>,
    meeting::Day(on): meeting::Day,
    form: Form<Typing>,
) -> Told {
    let met = Met::find(&grant.view().await?, (id, on)).await?;
    told(&grant, &form.parse()?.of(Some(met.key())).sent).await
}

async fn told(grant: &Changing, sent: &Sent) -> Told {
    let write = grant.note().await?;
    if sent.fields.is_empty() {
        return Ok((StatusCode::OK, Json(Kept { says: String::new(), version: sent.version })));
    }
    let draft = match store::keep(&write, sent).await {
        Ok(draft) => draft,
        Err(Error::Stale) => return Ok((StatusCode::CONFLICT, Json(elsewhere()))),
        Err(e) => return Err(e),
    };
    write.commit().await?;
    let says = format!("kept at {}", grant.page("").clock(&draft.kept_at));
    Ok((StatusCode::OK, Json(Kept { says, version: draft.version })))
}

fn elsewhere() -> Kept {
    let says = "not kept: another device of yours kept this note meanwhile. Press “Keep as a draft” to see both";
    Kept { says: says.to_owned(), version: 0 }
}

#[derive(Template, WebTemplate)]
#[template(path = "visits/throw_away.html")]
pub struct ThrowPage {
    page: Page,
    typed: Typed,
    draft: Draft,
}

pub async fn throwing(grant: Changing, At(id): At<DraftId>, typed: Typed) -> Result<ThrowPage> {
    let draft = store::find(&grant.view().await?, id).await?;
    Ok(ThrowPage { page: grant.page("Throw the draft away"), typed, draft })
}

/// Only as it was shown: what was typed since is not thrown away.
pub async fn throw_away(grant: Changing, At(id): At<DraftId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let draft = store::find(&write, id).await?;
    if draft.version != press.version {
        return Err(Error::Stale);
    }
    store::end(&write, &draft).await?;
    write.commit().await?.then(urls::visits()).saying("The draft is thrown away")
}
