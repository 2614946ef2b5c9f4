//! Signing in and out.

use super::{form::SignIn, model::Member, store};
use crate::platform::{
    auth::{
        doors::{Account, Visitor},
        links::{self, Purpose},
    },
    db::Done,
    error::Error,
    web::{
        form::{Form, FormErrors},
        page::Page,
        typed::Typed,
        urls::{self, Address},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::{Path, Query};

#[derive(Template, WebTemplate)]
#[template(path = "members/sign_in.html")]
pub struct SignInPage {
    page: Page,
    typed: Typed,
}

/// Where the member was going.
#[derive(serde::Deserialize)]
pub struct Going {
    next: Option<String>,
}

pub async fn form(visitor: Visitor, Query(going): Query<Going>, typed: Typed) -> SignInPage {
    let typed = typed.with("next", going.next.unwrap_or_default());
    SignInPage { page: visitor.page("Sign in"), typed }
}

pub async fn enter(visitor: Visitor, form: Form<SignIn>) -> Done {
    let typed = form.parse()?;
    let attempt = visitor.may_try(&typed.email).await?;
    let member = store::by_email(&visitor.view().await?, &typed.email).await?;
    let kept = member.as_ref().and_then(|it| it.password.as_deref());
    if !visitor.house.hasher.matches(&typed.password, kept).await {
        return wrong(&visitor, member).await;
    }
    visitor.house.throttle.succeeded(&attempt);
    let to = typed.next.map_or_else(urls::records, Address::House);
    welcome(&visitor, &member.ok_or(Error::NotFound)?, typed.own_device, to).await
}

/// Wrong address or wrong password: told alike. A try at a member's account is in the history.
async fn wrong(visitor: &Visitor, member: Option<Member>) -> Done {
    if let Some(member) = member {
        let mut write = visitor.write_as(Default::default()).await?;
        write.did("sign-in failed", "member", member.id.into()).await?;
        write.commit().await?;
    }
    Err(FormErrors::at("password", "The address or the password is not right.").into())
}

async fn welcome(visitor: &Visitor, member: &Member, own_device: bool, to: Address) -> Done {
    let mut write = visitor.write_as(member.id).await?;
    let resets = store::resets_since_sign_in(&write, member.id).await?;
    write.did("signed in", "member", member.id.into()).await?;
    let answer = visitor.enter(write.commit().await?, member.id, own_device, to).await?;
    match resets.last() {
        Some(at) => answer.saying(format!(
            "Since you last signed in, a link to choose a new password was made or used for you: {}. If that was not you, tell the one who runs the server.",
            member.zone.in_words(*at)
        )),
        None => Ok(answer),
    }
}

/// In the demo a link signs in.
pub async fn enter_demo(visitor: Visitor, Path(token): Path<String>) -> Done {
    if !visitor.house.demo {
        return Err(Error::NotFound);
    }
    let link = links::find(&visitor.house.db, Purpose::Demo, &token).await?;
    let member = link.member.ok_or(Error::NotFound)?;
    let member = store::find(&visitor.view().await?, member).await?;
    welcome(&visitor, &member, false, urls::records()).await
}

pub async fn leave(account: Account) -> Done {
    let mut write = account.write().await?;
    write.did("signed out", "member", account.member().into()).await?;
    account.leave(write.commit().await?).await?.saying("You are signed out")
}
