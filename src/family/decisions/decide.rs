//! Writing down what was decided, and putting that right.

use super::{
    form::Decided,
    model::Decision,
    pages::{Changing, Told},
    right::Right,
    store,
};
use crate::base::ids::{DecisionId, MemberId};
use crate::platform::{
    auth::area::Clinical,
    db::{Done, View},
    error::{Error, Result},
    web::{
        form::{Choice, Form, FormErrors},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "decisions/decide.html")]
pub struct DecidePage {
    page: Page,
    typed: Typed,
    kept: Decision,
    /// Each member, and whether she was heard.
    members: Vec<(MemberId, String, bool)>,
}

impl DecidePage {
    fn name(&self) -> &str {
        self.page.person.as_ref().map_or("", |it| &it.name)
    }

    fn rights(&self) -> impl Iterator<Item = &'static str> {
        Right::ALL.iter().map(|it| it.words())
    }
}

/// One that is to be decided, or that was and stands.
async fn standing(view: &View<Clinical>, id: DecisionId) -> Result<Decision> {
    let found = store::find(view, id).await?;
    if found.stands() { Ok(found) } else { Err(Error::NotFound) }
}

pub async fn deciding(
    _: Told,
    grant: Changing,
    At(id): At<DecisionId>,
    typed: Typed,
) -> Result<DecidePage> {
    let view = grant.view().await?;
    let kept = standing(&view, id).await?;
    let heard = kept.heard_ids();
    let members = store::members(&view).await?.into_iter();
    let members = members.map(|(id, name)| (id, name, heard.contains(&id))).collect();
    let right = kept.by_right.map(Choice::words).unwrap_or_default();
    let mut typed = typed.over(&kept).with("by_right", right);
    if kept.is_open() {
        typed = typed.with_day("decided_on", grant.today());
    }
    let title = if kept.is_open() { "What was decided?" } else { "Put the decision right" };
    Ok(DecidePage { page: grant.page(title), typed, kept, members })
}

pub async fn decide(_: Told, grant: Changing, At(id): At<DecisionId>, form: Form<Decided>) -> Done {
    let Decided { outcome, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = standing(&write, id).await?.opened_at(version)?;
    let members = store::members(&write).await?;
    let before_heard = before.heard_ids();
    let known = |it: &MemberId| before_heard.contains(it) || members.iter().any(|(id, _)| id == it);
    if !outcome.heard.iter().all(known) {
        return Err(FormErrors::at("heard", "Choose from the members of this record.").into());
    }
    let after = before.decided(outcome, grant.today())?;
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::decision(id)).saying("The decision is written down")
}
