//! The calls about a refusal: written down, and struck where that was a mistake.

use super::{
    refusals::{Changing, Told},
    titles::Medicines,
};
use crate::{
    base::ids::{RefusalCallId, RefusalId},
    platform::{
        db::Done,
        error::Result,
        web::{form::Form, page::Page, path::At, typed::Typed, urls},
    },
    record::coverage::{
        actions::ActPage,
        form::Mistake,
        refusals::{calls::Call, form::Called, model::Refusal, store},
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "coverage/call.html")]
pub struct CallPage {
    page: Page,
    typed: Typed,
    kept: Refusal,
    title: String,
}

pub async fn blank(
    _: Told,
    grant: Changing,
    At(id): At<RefusalId>,
    typed: Typed,
) -> Result<CallPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let title = Medicines::read(&view).await?.title(&kept);
    let now = grant.zone().clock_words(grant.now());
    let typed = typed.with_day("called_on", grant.today()).with("called_time", now);
    Ok(CallPage { page: grant.page("Write down a call"), typed, kept, title })
}

pub async fn add(_: Told, grant: Changing, At(id): At<RefusalId>, form: Form<Called>) -> Done {
    let told = form.parse()?.told;
    let mut write = grant.write().await?;
    store::find(&write, id).await?;
    let by = (write.member(), write.at(), grant.today());
    let new = Call::new(write.person(), id, told, by)?;
    store::add_call(&mut write, &new).await?;
    write.commit().await?.then(urls::refusal(id)).saying("The call is written down")
}

pub async fn striking(
    _: Told,
    grant: Changing,
    (At(of), At(id)): (At<RefusalId>, At<RefusalCallId>),
    typed: Typed,
) -> Result<ActPage> {
    let kept = store::call(&grant.view().await?, of, id).await?;
    let title = format!("the call with {}", kept.with_whom);
    let page = grant.page(format!("Strike {title}"));
    Ok(ActPage::strikes(page, typed, (title, urls::refusal(of), kept.version)))
}

pub async fn strike(
    _: Told,
    grant: Changing,
    (At(of), At(id)): (At<RefusalId>, At<RefusalCallId>),
    form: Form<Mistake>,
) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::call(&write, of, id).await?.opened_at(version)?;
    store::save_call(&mut write, &before, &before.struck(reason)).await?;
    write.commit().await?.then(urls::refusal(of)).saying("Struck; the history keeps it")
}
