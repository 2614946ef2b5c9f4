//! Own settings: name, phone, zone, password, and the devices that are signed in.

use super::{
    form::{Changed, Settings},
    model::Member,
    store,
};
use crate::base::{ids::SessionId, zone::Zone};
use crate::platform::{
    auth::{
        doors::Account,
        session::{self, Device},
    },
    db::Done,
    error::{Error, Result},
    web::{
        form::{Form, FormErrors},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "members/me.html")]
pub struct MePage {
    page: Page,
    member: Member,
    devices: Vec<Device>,
    this: SessionId,
}

pub async fn show(account: Account) -> Result<MePage> {
    let member = store::find(&account.view().await?, account.member()).await?;
    let devices = session::list(&account.house.db, account.member()).await?;
    Ok(MePage {
        page: account.page("Your settings"),
        member,
        devices,
        this: account.signed.session,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "members/me_edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    version: i64,
    zone: Zone,
}

impl EditPage {
    /// A kept name that is no longer known stands among them: it is not changed unasked, and
    /// saving says that another is to be chosen.
    fn zones(&self) -> Vec<String> {
        let lost = Some(self.zone.clone()).filter(|it| !it.is_known());
        lost.into_iter().chain(Zone::names()).map(|it| it.name().to_owned()).collect()
    }
}

pub async fn edit(account: Account, typed: Typed) -> Result<EditPage> {
    let member = store::find(&account.view().await?, account.member()).await?;
    let (page, version) = (account.page("Edit your settings"), member.version);
    Ok(EditPage { page, typed: typed.over(&member), version, zone: member.zone })
}

pub async fn save(account: Account, form: Form<Settings>) -> Done {
    let Settings { name, phone, zone, version } = form.parse()?;
    let mut write = account.write().await?;
    let before = store::find(&write, account.member()).await?;
    if before.version != version {
        return Err(Error::Stale);
    }
    let after = Member { name, phone, zone, ..before.clone() };
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::me()).saying("Saved")
}

#[derive(Template, WebTemplate)]
#[template(path = "members/password.html")]
pub struct PasswordPage {
    page: Page,
    typed: Typed,
    email: String,
}

pub async fn password(account: Account, typed: Typed) -> Result<PasswordPage> {
    let member = store::find(&account.view().await?, account.member()).await?;
    let (page, email) = (account.page("Choose a new password"), member.email.to_string());
    Ok(PasswordPage { page, typed, email })
}

/// Keeps the new password and ends the member's other sessions.
pub async fn change_password(account: Account, form: Form<Changed>) -> Done {
    let Changed { present, password } = form.parse()?;
    let before = store::find(&account.view().await?, account.member()).await?;
    account.may_try(&before.email)?;
    if !account.house.hasher.matches(&present, before.password.as_deref()).await {
        return Err(FormErrors::at("present", "This is not your present password.").into());
    }
    let phc = account.house.hasher.hash(before.accepts(&password, "password")?).await;
    let mut write = account.write().await?;
    store::save(&mut write, &before, &before.with_password(phc)).await?;
    let kept = write.commit().await?;
    session::end_others(&account.house.db, account.member(), account.signed.session).await?;
    kept.then(urls::me()).saying("Your new password is kept. Your other devices are signed out.")
}

pub async fn end_session(account: Account, At(id): At<SessionId>) -> Done {
    let mut write = account.write().await?;
    write.did("ended a session", "member", account.member().into()).await?;
    let kept = write.commit().await?;
    if !session::end(&account.house.db, account.member(), id).await? {
        return Err(Error::NotFound);
    }
    kept.then(urls::me()).saying("That device is signed out")
}
