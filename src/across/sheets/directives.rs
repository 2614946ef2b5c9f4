//! The register of the directives on screen and on paper: what is in force as far as the family
//! knows, where the originals are, the agents with their phones, who has a copy.
//!
//! What is voided or superseded stands on no sheet: a paper lies about, and would be taken for one
//! that holds.

use super::{emergency::DirectiveItem, give::give, medicines::Head};
use crate::{
    across::directives::{Seeing, ground::Ground},
    base::day,
    platform::{
        auth::area::{Directives, Essentials},
        db::View,
        error::Result,
        house::House,
        pdf::Sheet,
        web::{page::Page, urls},
    },
    record::{
        directives::{copies::DirectiveCopy, model::Directive},
        people::{paper::Paper, store as people},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    Router,
    response::Response,
    routing::{get, post},
};
use serde::Serialize;

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/sheets/directives", get(register))
        .route("/p/{person}/sheets/directives/print", post(print_register))
}

#[derive(Serialize)]
struct Facts {
    paper: &'static str,
    lang: &'static str,
    title: &'static str,
    person: Head,
    sentence: String,
    notices: Vec<String>,
    items: Vec<Item>,
}

/// One directive that is in force.
#[derive(Serialize)]
struct Item {
    head: String,
    lines: Vec<String>,
}

impl Facts {
    /// As the reader may see them, in one snapshot.
    async fn read(view: &View<Directives>) -> Result<Facts> {
        let (ground, whose) = (Ground::read(view).await?, view.whose().await?);
        // Letter, where the reader does not see what was chosen.
        let paper = match view.area::<Essentials>() {
            Some(view) => people::find(&view).await?.paper,
            None => Paper::UsLetter,
        };
        let standing = ground.standing();
        let disagree = standing.pairs.iter().filter_map(|it| standing.sentence(it));
        let amiss = standing.troubles.iter().map(|it| ground.trouble(it));
        let notices = disagree.chain(amiss).collect();
        let items = standing.in_force.iter().map(|it| Item::of(it, &ground)).collect();
        Ok(Facts {
            paper: paper.code(),
            lang: "en",
            title: "Register of the directives",
            person: Head {
                name: whose.name,
                born: day::words(whose.born),
                died: whose.died.map(day::words),
                calls: Vec::new(),
            },
            sentence: ground.asked().sentence(),
            notices,
            items,
        })
    }
}

impl Item {
    fn of(it: &Directive, ground: &Ground) -> Item {
        let shown = DirectiveItem::of(it, ground);
        let missing = || "not written down".to_owned();
        let mut lines = vec![format!("Original: {}", shown.original.unwrap_or_else(missing))];
        if shown.no_agent {
            lines.push("Agent: not written down".to_owned());
        }
        for one in shown.agents {
            let phones: Vec<_> = one.phones.iter().map(ToString::to_string).collect();
            let said = [one.name].into_iter().chain(phones).chain(one.amiss);
            lines.push(format!("{}: {}", one.what, said.collect::<Vec<_>>().join(", ")));
        }
        let signed_before = [("Witnesses", &it.witnesses), ("Notary", &it.notary)];
        let signed_before = signed_before.into_iter();
        lines.extend(
            signed_before.filter_map(|(what, who)| Some(format!("{what}: {}", who.as_ref()?))),
        );
        lines.extend(it.starts_so().map(|it| format!("Its power starts: {it}")));
        lines.extend(it.reviewed_so().map(|it| format!("Looked at again: {it}")));
        let copy = |copy: &DirectiveCopy| format!("{} ({})", ground.holder(copy), copy.given_day());
        let copies: Vec<_> = ground.copies_of(it.id).map(copy).collect();
        lines.push(match copies.as_slice() {
            [] => "Copies given: none is written down".to_owned(),
            some => format!("Copies given: {}", some.join("; ")),
        });
        let of = shown.form_of.map(|it| format!(", form of {it}")).unwrap_or_default();
        Item { head: format!("{}{of}", it.title()), lines }
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "sheets/directives.html")]
struct RegisterPage {
    page: Page,
    facts: Facts,
}

async fn register(grant: Seeing) -> Result<RegisterPage> {
    let facts = Facts::read(&grant.view().await?).await?;
    Ok(RegisterPage { page: grant.page(facts.title), facts })
}

async fn print_register(grant: Seeing) -> Result<Response> {
    let facts = Facts::read(&grant.view().await?).await?;
    give(&grant, (Sheet::Directives, "inline"), &facts).await
}
