//! The page of the two answers.

use super::beside;
use crate::{
    platform::{
        audit::Touch,
        auth::{
            area::{Clinical, History},
            grant::{Change, Grant, See},
        },
        error::Result,
        web::{page::Page, urls},
    },
    record::{
        operations::store as operations,
        statements::{model::Statement, state::State, store},
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "statements/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    may_read_history: bool,
    rows: Vec<Row>,
}

/// One answer, and who wrote it down.
struct Row {
    statement: Statement,
    state: State,
    beside: Option<String>,
    touch: Option<Touch>,
}

pub async fn list(grant: Grant<See<Clinical>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let operations = operations::list(&view).await?;
    let mut rows = Vec::new();
    for statement in store::list(&view).await? {
        let touch = view.last_change("statement", statement.id.into()).await?;
        let (state, beside) = (State::of(&statement), beside(&statement, &operations));
        rows.push(Row { statement, state, beside, touch });
    }
    Ok(ListPage {
        page: grant.page("Blood thinner, implant or device"),
        may_change: grant.may::<Change<Clinical>>(),
        may_read_history: grant.may::<See<History>>(),
        rows,
    })
}
