//! The sheets there are, the emergency sheet on screen, and its print.

use super::{
    emergency::Facts,
    print::{self, Print},
    store,
};
use crate::platform::{
    audit::mark,
    auth::{
        area::Essentials,
        grant::{Grant, See},
    },
    error::{Error, Result},
    pdf::Sheet,
    web::{page::Page, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    http::header,
    response::{IntoResponse, Response},
};
use serde_json::json;

#[derive(Template, WebTemplate)]
#[template(path = "sheets/list.html")]
pub struct ListPage {
    page: Page,
    prints: Vec<Row>,
}

/// An earlier print, and whether it still says what the record says to this reader.
struct Row {
    print: Print,
    by: String,
    current: bool,
}

pub async fn list(grant: Grant<See<Essentials>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (names, prints) = (view.names().await?, store::list(&view).await?);
    let now = print::hash(&Facts::read(&view, grant.today()).await?);
    let row = |print: Print| Row {
        by: names.of(print.member_id).to_owned(),
        current: print.facts == now,
        print,
    };
    Ok(ListPage { page: grant.page("Sheets"), prints: prints.into_iter().map(row).collect() })
}

#[derive(Template, WebTemplate)]
#[template(path = "sheets/emergency.html")]
pub struct EmergencyPage {
    page: Page,
    facts: Facts,
}

pub async fn emergency(grant: Grant<See<Essentials>>) -> Result<EmergencyPage> {
    let facts = Facts::read(&grant.view().await?, grant.today()).await?;
    Ok(EmergencyPage { page: grant.page("Emergency sheet"), facts })
}

/// The paper, to be looked at and printed.
pub async fn print_emergency(grant: Grant<See<Essentials>>) -> Result<Response> {
    paper(grant, "inline").await
}

/// The same as a file, for when there is no network.
pub async fn keep_emergency(grant: Grant<See<Essentials>>) -> Result<Response> {
    paper(grant, "attachment").await
}

/// Gives the paper. If the print cannot be noted it is given all the same, and says so.
async fn paper(grant: Grant<See<Essentials>>, disposition: &str) -> Result<Response> {
    let view = grant.view().await?;
    let facts = Facts::read(&view, grant.today()).await?;
    let by = view.names().await?.of(grant.member()).to_owned();
    drop(view);
    let (code, head) = match note(&grant, &facts).await {
        Ok(print) => (print.code, mark(&print.head)),
        Err(e) => {
            tracing::error!(error = %e, "a print could not be noted");
            ("not noted".to_owned(), "not noted".to_owned())
        }
    };
    let at = format!("{}, {} time", grant.zone().in_words(grant.now()), grant.zone().place());
    let name = format!("emergency-sheet-{}.pdf", grant.today());
    let mut data = serde_json::to_value(&facts).map_err(|e| Error::Internal(e.into()))?;
    data["printed_on"] = json!(grant.today());
    data["print"] = json!({ "code": code, "by": by, "at": at, "head": head });
    let rendered = grant.house().press.render(Sheet::Emergency, data).await;
    let pdf = rendered.map_err(|e| Error::Internal(e.into()))?;
    let kind = (header::CONTENT_TYPE, "application/pdf".to_owned());
    let named = (header::CONTENT_DISPOSITION, format!("{disposition}; filename=\"{name}\""));
    Ok(([kind, named], pdf).into_response())
}

async fn note(grant: &Grant<See<Essentials>>, facts: &Facts) -> Result<Print> {
    let mut write = grant.note().await?;
    let print = Print::new(write.member(), write.at(), facts, write.head().await?);
    store::add(&mut write, &print).await?;
    write.commit().await?;
    Ok(print)
}
