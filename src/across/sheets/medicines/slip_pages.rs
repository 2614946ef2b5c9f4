//! The change slip on screen, and its print: of one change, of those a contact has not been told, or
//! of all since a day.

use super::slip::{Facts, Which};
use crate::{
    across::sheets::{asked, give::give},
    base::{
        day,
        ids::{ContactId, TurnId},
    },
    platform::{
        auth::{
            area::Clinical,
            grant::{Grant, See},
        },
        error::Result,
        house::House,
        pdf::Sheet,
        web::{page::Page, urls},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    Router,
    extract::Query,
    response::Response,
    routing::{get, post},
};
use time::Duration;

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/sheets/changes", get(slip))
        .route("/p/{person}/sheets/changes/print", post(print_slip))
}

type Seeing = Grant<See<Clinical>>;

#[derive(Default, serde::Deserialize)]
#[serde(default)]
struct Asked {
    since: String,
    contact: String,
    turn: String,
}

impl Asked {
    /// A month back where no day is named, or none that can be read.
    fn which(&self, grant: &Seeing) -> Result<Which> {
        Ok(Which {
            turn: asked::id::<TurnId>(&self.turn)?,
            contact: asked::id::<ContactId>(&self.contact)?,
            since: day::parse(&self.since).unwrap_or(grant.today() - Duration::days(30)),
        })
    }

    /// The same, as an address asks it.
    fn query(&self) -> String {
        asked::query([("since", &self.since), ("contact", &self.contact), ("turn", &self.turn)])
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "sheets/slip.html")]
struct SlipPage {
    page: Page,
    facts: Facts,
    /// Where the paper is.
    print: String,
}

async fn slip(grant: Seeing, Query(asked): Query<Asked>) -> Result<SlipPage> {
    let which = asked.which(&grant)?;
    let facts = Facts::read(&grant.view().await?, &which).await?;
    let page = grant.page(facts.title);
    // The day is said again as it was understood.
    let asked = Asked { since: which.since.to_string(), ..asked };
    let print = format!("{}?{}", page.at(urls::sheets().and("changes/print")), asked.query());
    Ok(SlipPage { page, facts, print })
}

async fn print_slip(grant: Seeing, Query(asked): Query<Asked>) -> Result<Response> {
    let facts = Facts::read(&grant.view().await?, &asked.which(&grant)?).await?;
    give(&grant, (Sheet::ChangeSlip, "inline"), &facts).await
}
