//! The decisions there are, one of them, and what is put up to be decided.

use super::{form::Put, model::Decision, right::State, store};
use crate::base::ids::DecisionId;
use crate::platform::{
    auth::{
        area::{Clinical, History, Members},
        grant::{Change, Grant, See},
    },
    db::Done,
    error::Result,
    web::{form::Form, page::Page, path::At, typed::Typed, urls},
};
use askama::Template;
use askama_web::WebTemplate;

pub type Changing = Grant<Change<Clinical>>;
/// Asked first: for whom decisions are there at all.
pub type Told = Grant<See<Members>>;

#[derive(Template, WebTemplate)]
#[template(path = "decisions/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    open: Vec<Decision>,
    decided: Vec<Decision>,
    /// Replaced or withdrawn.
    past: Vec<Decision>,
}

pub async fn list(_: Told, grant: Grant<See<Clinical>>) -> Result<ListPage> {
    let all = store::list(&grant.view().await?).await?.into_iter();
    let (open, rest): (Vec<_>, Vec<_>) = all.partition(Decision::is_open);
    let (mut decided, past): (Vec<_>, Vec<_>) = rest.into_iter().partition(Decision::is_decided);
    decided.sort_by_key(|it| std::cmp::Reverse((it.decided_on, it.id)));
    let may_change = grant.may::<Change<Clinical>>();
    Ok(ListPage { page: grant.page("Decisions"), may_change, open, decided, past })
}

#[derive(Template, WebTemplate)]
#[template(path = "decisions/show.html")]
pub struct ShowPage {
    page: Page,
    kept: Decision,
    entered_by: String,
    heard: Option<String>,
    /// The one in its place, where the reader sees it.
    instead: Option<Decision>,
    due: bool,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
}

impl ShowPage {
    fn name(&self) -> &str {
        self.page.person.as_ref().map_or("", |it| &it.name)
    }
}

pub async fn show(
    _: Told,
    grant: Grant<See<Clinical>>,
    At(id): At<DecisionId>,
) -> Result<ShowPage> {
    let view = grant.view().await?;
    let (kept, names) = (store::find(&view, id).await?, view.names().await?);
    let all = store::list(&view).await?.into_iter();
    let instead = kept.replaced_by.and_then(|by| all.into_iter().find(|it| it.id == by));
    Ok(ShowPage {
        page: grant.page(kept.matter.to_string()),
        entered_by: names.of(kept.entered_by).to_owned(),
        heard: kept.heard_names(&names),
        instead,
        due: kept.is_due(grant.today()),
        may_change: grant.may::<Change<Clinical>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        kept,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "decisions/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    kept: Option<Decision>,
}

pub async fn blank(_: Told, grant: Changing, typed: Typed) -> EditPage {
    EditPage { page: grant.page("What is to be decided?"), typed, kept: None }
}

pub async fn add(_: Told, grant: Changing, form: Form<Put>) -> Done {
    let Put { matter, background, .. } = form.parse()?;
    let mut write = grant.write().await?;
    let place = store::last_place(&write).await? + 1;
    let by = (write.member(), write.at());
    let new = Decision::new(write.person(), (matter, background), by, place);
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::decision(id)).saying("It stands among the open ones")
}

pub async fn edit(
    _: Told,
    grant: Changing,
    At(id): At<DecisionId>,
    typed: Typed,
) -> Result<EditPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    let page = grant.page("Put the words right");
    Ok(EditPage { page, typed: typed.over(&kept), kept: Some(kept) })
}

pub async fn save(_: Told, grant: Changing, At(id): At<DecisionId>, form: Form<Put>) -> Done {
    let Put { matter, background, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    store::save(&mut write, &before, &before.reworded((matter, background))).await?;
    write.commit().await?.then(urls::decision(id)).saying("Saved")
}
