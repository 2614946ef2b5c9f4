//! The link in a reminder that stops its kind: a page with a button, without a sign-in. Opening it
//! changes nothing, since mail programs open links by themselves.
//!
//! A mail program may press for her (RFC 8058): it posts `List-Unsubscribe=One-Click` and is
//! answered at the same address, not sent on (section 3.1).

use super::{form::Stopping, kind::Kind, store};
use crate::base::ids::{MemberId, PersonId};
use crate::platform::{
    auth::{
        area::{Essentials, Members, Own},
        doors::Visitor,
    },
    db::{View, Write},
    error::{Error, Result},
    web::{form::Form, page::Page, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    extract::Path,
    http::StatusCode,
    response::{IntoResponse, Response},
};

#[derive(Template, WebTemplate)]
#[template(path = "mail_choices/stop.html")]
pub struct StopPage {
    page: Page,
    /// "tasks that are due"
    about: &'static str,
    /// The person's first name.
    whose: String,
    /// Whether such mail has stopped already.
    stopped: bool,
}

/// Whose mail, about which record, of which kind.
struct Named {
    member: MemberId,
    record: PersonId,
    kind: Kind,
}

async fn named(view: &View<Own>, token: &str) -> Result<Named> {
    let gone = Error::Told {
        status: StatusCode::GONE,
        head: "This link is not known here any more",
        says: "Nothing was changed. Sign in, open your settings, and choose under “What is mailed to you” what you want to get.",
    };
    let found = view.stopped_by(token).await?;
    let found = found.and_then(|(member, record, kind)| {
        Some(Named { member, record, kind: Kind::named(&kind)? })
    });
    found.ok_or(gone)
}

/// The choice as it stands. The role matters only where nothing was chosen.
async fn standing(view: &View<Own>, it: &Named) -> Result<super::model::MailChoice> {
    let members = view.in_record::<Members>(it.record, it.member)?;
    let place = super::super::places::store::of_member(&members, it.member).await?;
    let role = place.ok_or(Error::NotFound)?.role;
    store::find(view, (it.record, it.member), role).await
}

pub async fn form(visitor: Visitor, Path(token): Path<String>) -> Result<StopPage> {
    let view = visitor.view().await?;
    let it = named(&view, &token).await?;
    let whose = view.in_record::<Essentials>(it.record, it.member)?.whose().await?.name;
    let whose = whose.split_whitespace().next().unwrap_or(&whose).to_owned();
    let stopped = !standing(&view, &it).await?.wants(it.kind);
    let (page, about) = (visitor.page("Stop such mail"), it.kind.about());
    Ok(StopPage { page, about, whose, stopped })
}

pub async fn stop(
    visitor: Visitor,
    Path(token): Path<String>,
    form: Form<Stopping>,
) -> Result<Response> {
    let Stopping { one_click } = form.parse()?;
    let it = named(&visitor.view().await?, &token).await?;
    let mut write = visitor.write_as(it.member).await?;
    stop_in(&mut write, &it).await?;
    let kept = write.commit().await?;
    if one_click {
        return Ok("Such mail has stopped.\n".into_response());
    }
    let says = format!("You get no more mail about {}", it.kind.about());
    Ok(kept.then(urls::mail_stop(&token)).saying(says)?.into_response())
}

/// Keeps the choice, and takes back what waits.
async fn stop_in(write: &mut Write<Own>, it: &Named) -> Result<()> {
    let before = standing(write, it).await?;
    store::save(write, &before, &before.without(it.kind)).await?;
    write.withdraw(it.kind.name(), it.member, it.record).await.map(|_| ())
}
