//! The list of operations, one operation, and its form.

use super::{form::Entered, model::Operation, store};
use crate::base::ids::OperationId;
use crate::platform::{
    audit::Touch,
    auth::{
        area::{Clinical, History, Members},
        grant::{Change, Grant, See},
    },
    db::Done,
    error::Result,
    web::{form::Form, page::Page, path::At, stamp::Stamp, typed::Typed, urls},
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "operations/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    rows: Vec<Row>,
    stamp: Stamp,
}

/// One line of the list.
struct Row {
    operation: Operation,
    stamp: Stamp,
}

pub async fn list(grant: Grant<See<Clinical>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (page, names) = (grant.page("Operations and implants"), view.names().await?);
    let listed = store::list(&view).await?;
    let stamp = Stamp::of_list(&page, &names, listed.iter().map(Operation::check));
    let row = |operation: Operation| Row {
        stamp: Stamp::of(&page, &names, operation.check()),
        operation,
    };
    let rows = listed.into_iter().map(row).collect();
    let may_change = grant.may::<Change<Clinical>>();
    Ok(ListPage { page, may_change, rows, stamp })
}

#[derive(Template, WebTemplate)]
#[template(path = "operations/show.html")]
pub struct ShowPage {
    page: Page,
    operation: Operation,
    stamp: Stamp,
    touch: Option<Touch>,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Clinical>>, At(id): At<OperationId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let operation = store::find(&view, id).await?;
    let names = view.names().await?;
    let touch = view.last_change("operation", id.into()).await?;
    let page = grant.page(operation.name.as_str());
    Ok(ShowPage {
        stamp: Stamp::of(&page, &names, operation.check()),
        may_change: grant.may::<Change<Clinical>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        page,
        operation,
        touch,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "operations/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    /// None: one is being added.
    kept: Option<Operation>,
    touch: Option<Touch>,
}

pub async fn blank(grant: Changing, typed: Typed) -> Result<EditPage> {
    let page = grant.page("Add an operation");
    Ok(EditPage { page, typed, kept: None, touch: None })
}

pub async fn add(grant: Changing, form: Form<Entered>) -> Done {
    let entry = form.parse()?.entry;
    let mut write = grant.write().await?;
    let new = Operation::new(write.person(), entry);
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::operation(id)).saying(format!("Added {}", new.name))
}

pub async fn edit(grant: Changing, At(id): At<OperationId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let operation = store::find(&view, id).await?;
    let touch = view.last_change("operation", id.into()).await?;
    let page = grant.page(format!("Edit {}", operation.name));
    Ok(EditPage { page, typed: typed.over(&operation), kept: Some(operation), touch })
}

pub async fn save(grant: Changing, At(id): At<OperationId>, form: Form<Entered>) -> Done {
    let Entered { entry, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.edited(entry);
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::operation(id)).saying(format!("Saved {}", after.name))
}
