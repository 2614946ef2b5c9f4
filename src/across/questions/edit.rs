//! Writing a question down, and putting its words right. What it is about is chosen from what is
//! listed now.

use super::made::keep;
use crate::{
    across::happenings::items::{self, GONE, Group},
    base::ids::QuestionId,
    platform::{
        audit::Touch,
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::{Done, View},
        error::Result,
        web::{
            form::{Choice, Form, FormErrors},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::questions::{
        form::Worded,
        model::{Question, Whom, Wording},
        store,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "questions/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    /// None: one is being written down.
    kept: Option<Question>,
    groups: Vec<Group>,
    touch: Option<Touch>,
}

impl EditPage {
    fn whoms(&self) -> impl Iterator<Item = &'static str> {
        Whom::ALL.iter().map(|it| it.words())
    }
}

/// What the page that led here was about.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    about: String,
}

pub async fn blank(grant: Changing, Query(asked): Query<Asked>, typed: Typed) -> Result<EditPage> {
    let groups = items::all(&grant.view().await?).await?;
    let typed = typed.with("about", asked.about).with("for_whom", Whom::Pharmacist.words());
    Ok(EditPage {
        page: grant.page("Write down a question"),
        typed,
        kept: None,
        groups,
        touch: None,
    })
}

pub async fn add(grant: Changing, form: Form<Worded>) -> Done {
    let wording = form.parse()?.wording;
    let write = grant.write().await?;
    known(&write, &wording).await?;
    let by = (write.member(), write.at());
    let new = Question::new(write.person(), wording, by);
    keep(write, &new).await
}

/// What it is about must be on the list that she sees.
async fn known(view: &View<Clinical>, wording: &Wording) -> Result<()> {
    let Some((kind, item)) = &wording.about else { return Ok(()) };
    match items::title(view, kind, *item).await? {
        Some(_) => Ok(()),
        None => Err(FormErrors::at("about", GONE).into()),
    }
}

pub async fn edit(grant: Changing, At(id): At<QuestionId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let touch = view.last_change("question", id.into()).await?;
    let groups = items::all(&view).await?;
    let about = kept.about().map(|(kind, item)| format!("{kind}/{item}")).unwrap_or_default();
    let typed = typed.over(&kept).with("about", about).with("for_whom", kept.for_whom);
    let page = grant.page("Put the question right");
    Ok(EditPage { page, typed, kept: Some(kept), groups, touch })
}

pub async fn save(grant: Changing, At(id): At<QuestionId>, form: Form<Worded>) -> Done {
    let Worded { wording, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    // What it was about may have left the list since: it stays about that.
    if before.about() != wording.about.as_ref().map(|(kind, item)| (kind.as_str(), *item)) {
        known(&write, &wording).await?;
    }
    store::save(&mut write, &before, &before.reworded(wording)).await?;
    write.commit().await?.then(urls::question(id)).saying("Saved the question")
}
