//! The page of the search: the line, what was found, and what can be asked.

use super::{
    asked::Asked,
    find::{self, Found, PAGE},
    kinds, shelf,
    shown::{self, Shown},
};
use crate::platform::{
    auth::{
        area::Essentials,
        grant::{Grant, See},
    },
    error::Result,
    web::{page::Page, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

#[derive(Template, WebTemplate)]
#[template(path = "search/show.html")]
pub struct SearchPage {
    page: Page,
    asked: Asked,
    /// What she may ask for: each kind that she has anything of, with its name.
    kinds: Vec<(&'static str, &'static str)>,
    found: Found,
    shown: Vec<Shown>,
}

impl SearchPage {
    /// "1 to 20 of 45"
    fn counted(&self) -> String {
        let (all, from) = (self.found.hits.len(), self.asked.page() * PAGE);
        match all {
            1 => "One thing was found.".to_owned(),
            all if all <= PAGE => format!("{all} things were found."),
            all => format!("{} to {} of {all}", from + 1, from + self.shown.len()),
        }
    }

    fn most(&self) -> usize {
        find::WORDS
    }

    fn earlier(&self) -> Option<String> {
        let page = self.asked.page();
        (page > 0).then(|| self.asked.on_page(page - 1))
    }

    fn further(&self) -> Option<String> {
        let page = self.asked.page();
        (page < self.found.last_page()).then(|| self.asked.on_page(page + 1))
    }
}

pub async fn show(grant: Grant<See<Essentials>>, Query(asked): Query<Asked>) -> Result<SearchPage> {
    let view = grant.view().await?;
    let shelf = shelf::of(&grant, &view).await?;
    let found = find::find(&view, &shelf, &asked).await?;
    let asked = Asked { page: (asked.page().min(found.last_page()) + 1).to_string(), ..asked };
    let hits = found.on_page(asked.page());
    let shown = shown::shown(&view, &shelf, (&found.words, hits)).await?;
    let kinds = kinds::on(&shelf.leaves);
    Ok(SearchPage { page: grant.page("Search"), asked, kinds, found, shown })
}
