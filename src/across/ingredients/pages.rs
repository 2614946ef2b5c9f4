//! The page of ingredients that stand in several medicines, and of those with a limit in one.

use super::{
    question::asked,
    together::{Together, Written},
};
use crate::{
    across::reconciliation::{self, settled_store as pairs},
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant, See},
        },
        db::View,
        error::Result,
        web::{page::Page, urls},
    },
    record::{
        medicines::{
            ingredients::store as ingredients, model::Medicine, schedule::store as schedule,
            store as medicines,
        },
        questions::{
            model::Question,
            store::{self as questions, Wanted},
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "ingredients/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    several: Vec<Row>,
    single: Vec<Row>,
    /// Those whose ingredients nobody wrote down.
    unread: Vec<Medicine>,
}

/// An ingredient with the question that stands about it.
struct Row {
    together: Together,
    asked: Option<Question>,
}

pub async fn list(grant: Grant<See<Clinical>>) -> Result<ListPage> {
    reconciliation::shown(grant.role())?;
    let view = grant.view().await?;
    let all = read(&view).await?.together(grant.today());
    let questions = questions::list(&view, &Wanted::default()).await?;
    let row = |together: Together| Row { asked: asked(&together, &questions).cloned(), together };
    let unread = all.iter().flat_map(|it| it.taken.iter().chain(&it.held));
    let unread = unread.filter(|it| it.ingredient.is_none()).map(|it| it.medicine.clone());
    let unread = unread.collect();
    let (several, single): (Vec<_>, Vec<_>) =
        all.into_iter().map(row).partition(|it| it.together.medicines() > 1);
    let single = single.into_iter().filter(|it| it.together.has_limit()).collect();
    let page = grant.page("The same ingredient in several");
    Ok(ListPage { page, may_change: grant.may::<Change<Clinical>>(), several, single, unread })
}

/// What is taken and on hold, with its ingredients, its schedule, and the names confirmed as one.
pub async fn read(view: &View<Clinical>) -> Result<Written> {
    Ok(Written {
        medicines: medicines::current(view).await?,
        steps: schedule::list(view).await?,
        ingredients: ingredients::list(view).await?,
        pairs: pairs::confirmed(view).await?,
    })
}
