//! Writing a task down, and putting its words right. What it is about is chosen from what is
//! listed now.

use super::{items, seen};
use crate::{
    across::happenings::items::{GONE, Group},
    base::ids::TaskId,
    family::tasks::{
        form::Worded,
        model::{Task, Wording},
        repeats::Unit,
        store,
    },
    platform::{
        audit::Touch,
        auth::{
            area::Tasks,
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
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

type Changing = Grant<Change<Tasks>>;

#[derive(Template, WebTemplate)]
#[template(path = "tasks/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    /// None: one is being written down.
    kept: Option<Task>,
    groups: Vec<Group>,
    touch: Option<Touch>,
}

impl EditPage {
    fn units(&self) -> impl Iterator<Item = &'static str> {
        Unit::ALL.iter().map(|it| it.words())
    }
}

/// What the page that led here was about.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    about: String,
}

pub async fn blank(grant: Changing, Query(asked): Query<Asked>, typed: Typed) -> Result<EditPage> {
    let typed = typed.with("about", asked.about).with("unit", Unit::Weeks.words());
    let groups = items::all(&grant.view().await?, typed.value("about")).await?;
    let page = grant.page("Write down a task");
    Ok(EditPage { page, typed, kept: None, groups, touch: None })
}

pub async fn add(grant: Changing, form: Form<Worded>) -> Done {
    let wording = form.parse()?.wording;
    let mut write = grant.write().await?;
    known(&write, &wording).await?;
    let by = (write.member(), write.at());
    let new = Task::new(write.person(), wording, by);
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::task(id)).saying("Kept. Who takes it?")
}

/// What it is about must be on the list that she sees.
async fn known(view: &View<Tasks>, wording: &Wording) -> Result<()> {
    let Some((kind, item)) = &wording.about else { return Ok(()) };
    match items::has(view, kind, *item).await? {
        true => Ok(()),
        false => Err(FormErrors::at("about", GONE).into()),
    }
}

pub async fn edit(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let kept = seen::find(&view, id).await?;
    let touch = view.last_change("task", id.into()).await?;
    let about = kept.about().map(|(kind, item)| format!("{kind}/{item}")).unwrap_or_default();
    let unit = kept.unit.unwrap_or(Unit::Weeks).words();
    let typed = typed.over(&kept).with("about", about).with("unit", unit);
    let groups = items::all(&view, typed.value("about")).await?;
    let page = grant.page("Put the task right");
    Ok(EditPage { page, typed, kept: Some(kept), groups, touch })
}

pub async fn save(grant: Changing, At(id): At<TaskId>, form: Form<Worded>) -> Done {
    let Worded { wording, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = seen::find(&write, id).await?.opened_at(version)?;
    // What it was about may have left the list since: it stays about that.
    if before.about() != wording.about.as_ref().map(|(kind, item)| (kind.as_str(), *item)) {
        known(&write, &wording).await?;
    }
    store::save(&mut write, &before, &before.reworded(wording)).await?;
    write.commit().await?.then(urls::task(id)).saying("Saved the task")
}
