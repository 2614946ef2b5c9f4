//! Giving the paper of a sheet: noted in the history, set by the press.
//!
//! A print that cannot be noted (a full disk) is given all the same, and says so.

use super::{print::Print, store};
use crate::platform::{
    audit::mark,
    auth::grant::{Grant, Leave},
    error::{Error, Result},
    pdf::Sheet,
};
use axum::{
    http::header,
    response::{IntoResponse, Response},
};
use serde::Serialize;
use serde_json::{Value, json};

/// The paper with these facts, in the name of the member who asks for it: to be looked at (inline),
/// or as a file (attachment). Her view of the facts is to be closed by then: setting takes a while.
pub async fn give<L: Leave>(
    grant: &Grant<L>,
    (sheet, disposition): (Sheet, &str),
    facts: &impl Serialize,
) -> Result<Response> {
    let data = noted(grant, sheet, facts).await?;
    let rendered = grant.house().press.render(sheet, data).await;
    let pdf = rendered.map_err(|e| Error::Internal(e.into()))?;
    paper(grant, (sheet, disposition), pdf)
}

/// The facts as the press wants them, with the print noted.
pub(super) async fn noted<L: Leave>(
    grant: &Grant<L>,
    sheet: Sheet,
    facts: &impl Serialize,
) -> Result<Value> {
    let by = grant.view().await?.names().await?.of(grant.member()).to_owned();
    let (code, head) = match note(grant, sheet, facts).await {
        Ok(print) => (print.code, mark(&print.head)),
        Err(e) => {
            tracing::error!(error = %e, "a print could not be noted");
            ("not noted".to_owned(), "not noted".to_owned())
        }
    };
    let at = format!("{}, {} time", grant.zone().in_words(grant.now()), grant.zone().place());
    let mut data = serde_json::to_value(facts).map_err(|e| Error::Internal(e.into()))?;
    data["printed_on"] = json!(grant.today());
    data["print"] = json!({ "code": code, "by": by, "at": at, "head": head });
    Ok(data)
}

/// A finished paper, under a name of our own.
pub(super) fn paper<L: Leave>(
    grant: &Grant<L>,
    (sheet, disposition): (Sheet, &str),
    pdf: Vec<u8>,
) -> Result<Response> {
    let name = format!("{}-{}.pdf", sheet.name().replace(' ', "-"), grant.today());
    let kind = (header::CONTENT_TYPE, "application/pdf".to_owned());
    let named = (header::CONTENT_DISPOSITION, format!("{disposition}; filename=\"{name}\""));
    Ok(([kind, named], pdf).into_response())
}

async fn note<L: Leave>(grant: &Grant<L>, sheet: Sheet, facts: &impl Serialize) -> Result<Print> {
    let mut write = grant.note().await?;
    let by = (write.member(), write.at());
    let print = Print::new(by, sheet, facts, write.head().await?);
    store::add(&mut write, &print).await?;
    write.commit().await?;
    Ok(print)
}
