//! The sheet before a visit on screen, and its print. It is asked for by an appointment and its day,
//! or by a contact; a day from which on changes are told may be typed.

use super::{Facts, Reader, Which};
use crate::{
    across::{
        observations::tick,
        sheets::{asked, give::give},
    },
    base::day,
    platform::{
        auth::{
            area::Clinical,
            grant::{Grant, See},
        },
        db::View,
        error::{Error, Result},
        house::House,
        pdf::Sheet,
        web::{
            page::Page,
            urls::{self, Address},
        },
    },
    record::appointments::meeting::Meeting,
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    Router,
    extract::Query,
    response::Response,
    routing::{get, post},
};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/sheets/visit", get(visit))
        .route("/p/{person}/sheets/visit/print", post(print_visit))
}

type Seeing = Grant<See<Clinical>>;

#[derive(Default, serde::Deserialize)]
#[serde(default)]
struct Asked {
    appointment: String,
    on: String,
    contact: String,
    since: String,
}

impl Asked {
    fn which(&self) -> Result<Which> {
        let visit = match asked::id(&self.appointment)? {
            Some(appointment) => Some((appointment, day::iso(&self.on).ok_or(Error::NotFound)?)),
            None => None,
        };
        let contact = asked::id(&self.contact)?;
        Ok(Which { visit, contact, since: day::parse(self.since.trim()) })
    }

    /// What was typed and is no day.
    fn unread(&self) -> Option<String> {
        let typed = self.since.trim();
        (!typed.is_empty() && day::parse(typed).is_none()).then(|| typed.to_owned())
    }

    /// The same, as an address asks it.
    fn query(&self, since: Option<time::Date>) -> String {
        let since = since.map(|it| it.to_string()).unwrap_or_default();
        asked::query([
            ("appointment", &self.appointment),
            ("on", &self.on),
            ("contact", &self.contact),
            ("since", &since),
        ])
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "sheets/visit.html")]
struct VisitPage {
    page: Page,
    facts: Facts,
    asked: Asked,
    unread: Option<String>,
    /// Where no visit is chosen: those to come.
    coming: Vec<(String, Address)>,
    /// Where the paper is.
    print: String,
}

async fn facts(grant: &Seeing, view: &View<Clinical>, which: &Which) -> Result<Facts> {
    let name = view.names().await?.of(grant.member()).to_owned();
    let reader = Reader { name, today: grant.today() };
    Facts::read(view, which, &reader).await
}

async fn visit(grant: Seeing, Query(asked): Query<Asked>) -> Result<VisitPage> {
    let (which, view) = (asked.which()?, grant.view().await?);
    let facts = facts(&grant, &view, &which).await?;
    let page = grant.page(facts.title);
    let (unread, query) = (asked.unread(), asked.query(which.since));
    let print = format!("{}?{query}", page.at(urls::visit_sheet().and("print")));
    let coming = match which.visit.is_some() || which.contact.is_some() {
        true => Vec::new(),
        false => tick::coming(&view, grant.now()).await?,
    };
    let line = |it: &Meeting| (tick::words(it, &page), urls::visit_sheet_of(it.id(), it.on));
    let coming = coming.iter().map(line).collect();
    Ok(VisitPage { page, facts, asked, unread, coming, print })
}

async fn print_visit(grant: Seeing, Query(asked): Query<Asked>) -> Result<Response> {
    let facts = facts(&grant, &grant.view().await?, &asked.which()?).await?;
    give(&grant, (Sheet::Visit, "inline"), &facts).await
}
