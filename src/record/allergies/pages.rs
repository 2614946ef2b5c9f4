//! The list of allergies with its three states, the answer where nothing is listed, one allergy,
//! and its form.

use super::{
    answer::Answer,
    form::{Answered, Told},
    model::{Allergy, Nature},
    state::State,
    store,
};
use crate::base::ids::AllergyId;
use crate::platform::{
    audit::Touch,
    auth::{
        area::{Essentials, History, Members},
        grant::{Change, Grant, See},
    },
    db::Done,
    error::Result,
    web::{
        form::{Choice, Form},
        page::Page,
        path::At,
        stamp::Stamp,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Essentials>>;

#[derive(Template, WebTemplate)]
#[template(path = "allergies/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    state: State,
    rows: Vec<Row>,
    stamp: Stamp,
    /// Who wrote the answer down, where nothing is listed.
    touch: Option<Touch>,
}

/// One line of the list.
struct Row {
    allergy: Allergy,
    stamp: Stamp,
}

pub async fn list(grant: Grant<See<Essentials>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (page, names) = (grant.page("Allergies"), view.names().await?);
    let state = store::state(&view).await?;
    let answer = store::answer(&view).await?;
    let touch = view.last_change("allergy_answer", answer.id.into()).await?;
    let stamp = Stamp::of_list(&page, &names, state.listed().iter().map(Allergy::check));
    let row =
        |it: &Allergy| Row { stamp: Stamp::of(&page, &names, it.check()), allergy: it.clone() };
    let rows = state.listed().iter().map(row).collect();
    let may_change = grant.may::<Change<Essentials>>();
    Ok(ListPage { page, may_change, state, rows, stamp, touch })
}

#[derive(Template, WebTemplate)]
#[template(path = "allergies/answer.html")]
pub struct AnswerPage {
    page: Page,
    typed: Typed,
    version: i64,
    listed: usize,
    touch: Option<Touch>,
}

impl AnswerPage {
    fn answers(&self) -> impl Iterator<Item = &'static str> {
        Answer::ALL.iter().map(|it| it.words())
    }
}

pub async fn asking(grant: Changing, typed: Typed) -> Result<AnswerPage> {
    let view = grant.view().await?;
    let (kept, listed) = (store::answer(&view).await?, store::list(&view).await?.len());
    let touch = view.last_change("allergy_answer", kept.id.into()).await?;
    // Proposed, not preset: without the name and the day it is not kept.
    let answer = if typed.stale() { kept.answer } else { Answer::NoneKnown };
    let typed = typed.over(&kept).with("answer", answer);
    let page = grant.page("No known allergies?");
    Ok(AnswerPage { page, typed, version: kept.version, listed, touch })
}

pub async fn answer(grant: Changing, form: Form<Answered>) -> Done {
    let Answered { none_known, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::answer(&write).await?.opened_at(version)?;
    let listed = store::list(&write).await?.len();
    let after = match none_known {
        Some(said) => before.none_known(said, listed, grant.today())?,
        None => before.retracted(),
    };
    store::save_answer(&mut write, &before, &after).await?;
    let line = format!("Written down: {}", after.answer);
    write.commit().await?.then(urls::allergies()).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "allergies/show.html")]
pub struct ShowPage {
    page: Page,
    allergy: Allergy,
    stamp: Stamp,
    touch: Option<Touch>,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Essentials>>, At(id): At<AllergyId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let (allergy, names) = (store::find(&view, id).await?, view.names().await?);
    let touch = view.last_change("allergy", id.into()).await?;
    let page = grant.page(allergy.substance.as_str());
    Ok(ShowPage {
        stamp: Stamp::of(&page, &names, allergy.check()),
        may_change: grant.may::<Change<Essentials>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        page,
        allergy,
        touch,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "allergies/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    /// None: one is being added.
    kept: Option<Allergy>,
    touch: Option<Touch>,
}

impl EditPage {
    fn natures(&self) -> impl Iterator<Item = &'static str> {
        Nature::ALL.iter().map(|it| it.words())
    }
}

pub async fn blank(grant: Changing, typed: Typed) -> Result<EditPage> {
    let page = grant.page("Add an allergy or intolerance");
    Ok(EditPage { page, typed, kept: None, touch: None })
}

pub async fn add(grant: Changing, form: Form<Told>) -> Done {
    let account = form.parse()?.account;
    let mut write = grant.write().await?;
    let new = Allergy::new(write.person(), account);
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::allergy(id)).saying(format!("Added {}", new.substance))
}

pub async fn edit(grant: Changing, At(id): At<AllergyId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let allergy = store::find(&view, id).await?;
    let touch = view.last_change("allergy", id.into()).await?;
    let page = grant.page(format!("Edit {}", allergy.substance));
    Ok(EditPage { page, typed: typed.over(&allergy), kept: Some(allergy), touch })
}

pub async fn save(grant: Changing, At(id): At<AllergyId>, form: Form<Told>) -> Done {
    let Told { account, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.edited(account);
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::allergy(id)).saying(format!("Saved {}", after.substance))
}
