//! Copies: to whom one was given, and that its holder was told that it does not hold any more.

use super::{Changing, ground::Ground};
use crate::{
    base::ids::{ContactId, DirectiveCopyId, DirectiveId},
    platform::{
        auth::area::Directives,
        db::{Done, View},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::directives::{
        copies::{DirectiveCopy, Holder},
        copy_store as store,
        form::{Because, Given, Heard},
        model::Directive,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "directives/copy.html")]
pub struct CopyPage {
    page: Page,
    typed: Typed,
    of: Directive,
    contacts: Vec<(ContactId, String)>,
}

pub async fn giving(grant: Changing, At(id): At<DirectiveId>, typed: Typed) -> Result<CopyPage> {
    let ground = Ground::read(&grant.view().await?).await?;
    let (of, contacts) = (ground.find(id)?.clone(), ground.choices(None));
    let page = grant.page(format!("Who has a copy: {}", of.title()));
    Ok(CopyPage { page, typed, of, contacts })
}

pub async fn give(grant: Changing, At(id): At<DirectiveId>, form: Form<Given>) -> Done {
    let Given { holder, on } = form.parse()?;
    let mut write = grant.write().await?;
    let ground = Ground::read(&write).await?;
    let of = ground.find(id)?;
    if let Holder::Contact(contact) = holder
        && ground.choices(None).iter().all(|(it, _)| *it != contact)
    {
        let says = "This contact is not on the list any more.";
        return Err(FormErrors::at("contact_id", says).into());
    }
    let new = DirectiveCopy::new(write.person(), of.id, holder, on, grant.today())?;
    store::add(&mut write, &new).await?;
    let line = format!("Written down: {} has a copy", ground.holder(&new));
    write.commit().await?.then(urls::directive(id)).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "directives/copy_act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    kept: DirectiveCopy,
    of: Directive,
    holder: String,
    /// Else it is struck.
    tells: bool,
}

async fn act(grant: &Changing, id: DirectiveCopyId, typed: Typed, tells: bool) -> Result<ActPage> {
    let ground = Ground::read(&grant.view().await?).await?;
    let kept = found(&ground, id)?.clone();
    let (of, holder) = (ground.find(kept.directive_id)?.clone(), ground.holder(&kept));
    let verb = if tells { "Was told" } else { "Strike the copy" };
    let page = grant.page(format!("{verb}: {holder}"));
    Ok(ActPage { page, typed, kept, of, holder, tells })
}

fn found(ground: &Ground, id: DirectiveCopyId) -> Result<&DirectiveCopy> {
    ground.copies.iter().find(|it| it.id == id).ok_or(Error::NotFound)
}

pub async fn telling(
    grant: Changing,
    At(id): At<DirectiveCopyId>,
    typed: Typed,
) -> Result<ActPage> {
    let typed = typed.with_day("told_on", grant.today());
    act(&grant, id, typed, true).await
}

pub async fn tell(grant: Changing, At(id): At<DirectiveCopyId>, form: Form<Heard>) -> Done {
    let Heard { on, how, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.told(on, how, grant.today())?;
    store::save(&mut write, &before, &after).await?;
    let line = said(&write, &after).await?;
    write
        .commit()
        .await?
        .then(urls::directive(after.directive_id))
        .saying(format!("{line} was told"))
}

async fn said(view: &View<Directives>, it: &DirectiveCopy) -> Result<String> {
    Ok(Ground::read(view).await?.holder(it))
}

pub async fn striking(
    grant: Changing,
    At(id): At<DirectiveCopyId>,
    typed: Typed,
) -> Result<ActPage> {
    act(&grant, id, typed, false).await
}

pub async fn strike(grant: Changing, At(id): At<DirectiveCopyId>, form: Form<Because>) -> Done {
    let Because { reason, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    store::save(&mut write, &before, &before.struck(reason)).await?;
    write.commit().await?.then(urls::directive(before.directive_id)).saying("The copy is struck")
}
