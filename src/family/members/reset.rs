//! A forgotten password: a link by mail, or one made at the command line.

use super::{
    form::{Chosen, Forgot},
    model::Member,
    store,
};
use crate::base::{ids::MemberId, reach::Email};
use crate::platform::{
    auth::{
        doors::{Operator, Visitor},
        links::{self, Purpose},
    },
    db::{Db, Done},
    error::{Error, Result},
    web::{form::Form, page::Page, typed::Typed, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Path;
use time::Duration;

#[derive(Template, WebTemplate)]
#[template(path = "members/forgot.html")]
pub struct ForgotPage {
    page: Page,
    typed: Typed,
    mails: bool,
}

pub async fn forgotten(visitor: Visitor, typed: Typed) -> ForgotPage {
    ForgotPage { page: visitor.page("A new password"), typed, mails: visitor.house.mails }
}

/// The mail that carries the link.
#[derive(Template)]
#[template(path = "mail/reset.txt")]
struct ResetMail<'a> {
    name: &'a str,
    link: &'a str,
}

/// Says the same whether the address is known or not.
pub async fn forgot(visitor: Visitor, form: Form<Forgot>) -> Done {
    let email = form.parse()?.email;
    visitor.may_try(&email).await?;
    let member = store::by_email(&visitor.view().await?, &email).await?;
    let mut write = match &member {
        Some(member) => visitor.write_as(member.id).await?,
        None => visitor.write_as(MemberId::default()).await?,
    };
    if let Some(member) = member.filter(|_| visitor.house.mails) {
        let token = links::prepare(&write, Purpose::Reset, member.id, Duration::hours(1)).await?;
        let link = visitor.house.config.base().absolute(&format!("/sign-in/reset/{token}"));
        let body = ResetMail { name: member.name.as_str(), link: &link }.render();
        let body = body.map_err(|e| Error::Internal(e.into()))?;
        let base = visitor.house.config.base();
        write.mail(base, &member.email, ("A new password for Kinsheaf", &body)).await?;
        write.did("reset link made", "member", member.id.into()).await?;
    }
    let says = "If someone signs in here with that address, a link is on its way to it. It works for one hour.";
    write.commit().await?.then(urls::sign_in()).saying(says)
}

/// Makes a link at the command line: told in the history, and to the member at her next sign-in.
pub async fn link(db: &Db, email: &Email) -> Result<(Member, String)> {
    let operator = Operator::new(db.clone());
    let member = store::by_email(&operator.view().await?, email).await?.ok_or(Error::NotFound)?;
    let mut write = operator.write().await?;
    let token = links::prepare(&write, Purpose::Reset, member.id, Duration::hours(24)).await?;
    write.did("reset link made", "member", member.id.into()).await?;
    write.commit().await?;
    Ok((member, token))
}

#[derive(Template, WebTemplate)]
#[template(path = "members/reset.html")]
pub struct ResetPage {
    page: Page,
    typed: Typed,
    email: Email,
}

pub async fn form(visitor: Visitor, Path(token): Path<String>, typed: Typed) -> Result<ResetPage> {
    let link = links::find(&visitor.house.db, Purpose::Reset, &token).await?;
    let member = link.member.ok_or(Error::Spent)?;
    let email = store::find(&visitor.view().await?, member).await?.email;
    Ok(ResetPage { page: visitor.page("Choose a new password"), typed, email })
}

/// Keeps the new password and ends every session: whoever was in is out.
pub async fn choose(visitor: Visitor, Path(token): Path<String>, form: Form<Chosen>) -> Done {
    let typed = form.parse()?.password;
    let link = links::find(&visitor.house.db, Purpose::Reset, &token).await?;
    let id = link.member.ok_or(Error::Spent)?;
    let before = store::find(&visitor.view().await?, id).await?;
    let phc = visitor.house.hasher.hash(before.accepts(&typed, "password")?).await;
    let mut write = visitor.write_as(id).await?;
    link.use_up(&write).await?;
    store::save(&mut write, &before, &before.with_password(phc)).await?;
    write.did("reset", "member", id.into()).await?;
    write.end_sessions(id).await?;
    write
        .commit()
        .await?
        .then(urls::sign_in())
        .saying("Your new password is kept. Sign in with it.")
}
