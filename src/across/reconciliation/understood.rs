//! The lines of a list with how each was understood, put right by hand where it was not.

use super::{
    form::{OneMore, PutRight},
    model::{ListLine, SecondList},
    pages::shown,
    settled_store, store,
};
use crate::{
    base::ids::{ListLineId, SecondListId},
    platform::{
        audit::Touch,
        auth::{
            area::Clinical,
            grant::{Change, Grant, See},
        },
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
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "reconciliation/lines.html")]
pub struct LinesPage {
    page: Page,
    list: SecondList,
    lines: Vec<ListLine>,
    may_change: bool,
}

pub async fn lines(grant: Grant<See<Clinical>>, At(id): At<SecondListId>) -> Result<LinesPage> {
    shown(grant.role())?;
    let view = grant.view().await?;
    let list = store::find(&view, id).await?;
    let lines = store::lines(&view, &list).await?;
    let page = grant.page(format!("The lines of the {}", list.title()));
    Ok(LinesPage {
        page,
        may_change: grant.may::<Change<Clinical>>() && list.is_open(),
        list,
        lines,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "reconciliation/line.html")]
pub struct LinePage {
    page: Page,
    typed: Typed,
    list: SecondList,
    /// None: one more line is being written.
    kept: Option<ListLine>,
    touch: Option<Touch>,
}

pub async fn blank(
    grant: Grant<Change<Clinical>>,
    At(id): At<SecondListId>,
    typed: Typed,
) -> Result<LinePage> {
    let list = store::find(&grant.view().await?, id).await?;
    Ok(LinePage { page: grant.page("One more line"), typed, list, kept: None, touch: None })
}

pub async fn add(
    grant: Grant<Change<Clinical>>,
    At(id): At<SecondListId>,
    form: Form<OneMore>,
) -> Done {
    let OneMore { words, understood } = form.parse()?;
    let mut write = grant.write().await?;
    let list = open(&write, id, "words").await?;
    store::add_line(&mut write, &ListLine::new(&list, words, understood)).await?;
    write.commit().await?.then(urls::second_list(id).and("lines")).saying("Kept one more line")
}

async fn open(view: &View<Clinical>, id: SecondListId, field: &'static str) -> Result<SecondList> {
    let list = store::find(view, id).await?;
    match list.is_open() {
        true => Ok(list),
        false => Err(FormErrors::at(field, "This list is not open any more.").into()),
    }
}

async fn find(view: &View<Clinical>, list: &SecondList, id: ListLineId) -> Result<ListLine> {
    let lines = store::lines(view, list).await?.into_iter();
    lines.into_iter().find(|it| it.id == id).ok_or(Error::NotFound)
}

pub async fn edit(
    grant: Grant<Change<Clinical>>,
    At(id): At<SecondListId>,
    At(line): At<ListLineId>,
    typed: Typed,
) -> Result<LinePage> {
    let view = grant.view().await?;
    let list = store::find(&view, id).await?;
    let kept = find(&view, &list, line).await?;
    let touch = view.last_change("second_list_line", line.into()).await?;
    let page = grant.page("Put the line right");
    Ok(LinePage { page, typed: typed.over(&kept), list, kept: Some(kept), touch })
}

pub async fn save(
    grant: Grant<Change<Clinical>>,
    At(id): At<SecondListId>,
    At(line): At<ListLineId>,
    form: Form<PutRight>,
) -> Done {
    let right = form.parse()?;
    let mut write = grant.write().await?;
    let list = open(&write, id, "name").await?;
    let before = find(&write, &list, line).await?.opened_at(right.version)?;
    let rows = settled_store::rows(&write, Some(id)).await?;
    if rows.iter().any(|it| it.line_id == Some(line) && !it.taken_back) {
        let says = "This line is settled, so it stays as it was compared.";
        return Err(FormErrors::at("name", says).into());
    }
    let PutRight { name, strength, form, directions, stopped, left_out, .. } = right;
    // Whoever saves it has looked at the paper: what they typed is what it says.
    let unclear = None;
    let after =
        ListLine { name, strength, form, directions, stopped, left_out, unclear, ..before.clone() };
    store::save_line(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::second_list(id).and("lines")).saying("Saved the line")
}
