//! Going everywhere a page leads: every link from a first page on, each page once.

use super::{Browser, html};
use axum::http::{HeaderMap, StatusCode, header};
use scraper::Html;
use std::collections::BTreeSet;

/// What a link led to.
pub struct Visit {
    pub address: String,
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub body: Vec<u8>,
}

impl Visit {
    pub fn page(&self) -> Html {
        Html::parse_document(&self.source())
    }

    pub fn source(&self) -> String {
        String::from_utf8_lossy(&self.body).into_owned()
    }

    pub fn is_html(&self) -> bool {
        let kind = self.headers.get(header::CONTENT_TYPE).and_then(|it| it.to_str().ok());
        kind.is_some_and(|it| it.starts_with("text/html"))
    }

    /// Where its links, forms, styles and pictures lead.
    pub fn leads_to(&self) -> Vec<String> {
        let page = self.page();
        let places = ["href", "src", "action"].into_iter().flat_map(|name| {
            let found = html::select(&page, &format!("[{name}]")).into_iter();
            found.filter_map(|it| it.value().attr(name)).map(str::to_owned).collect::<Vec<_>>()
        });
        places.collect()
    }

    /// Where pressing a link leads, or what the page loads: what is asked by GET.
    fn opens(&self) -> Vec<String> {
        let page = self.page();
        let found = html::select(&page, "a[href], link[href]").into_iter();
        let found = found.filter_map(|it| it.value().attr("href"));
        found.filter(|it| !it.starts_with('#') && !it.contains(':')).map(str::to_owned).collect()
    }
}

/// Everything that can be reached by links from `first` on.
pub async fn everywhere(browser: &mut Browser, first: &str) -> Vec<Visit> {
    let (mut seen, mut open) = (BTreeSet::from([first.to_owned()]), vec![first.to_owned()]);
    let mut visits = Vec::new();
    while let Some(address) = open.pop() {
        browser.get(&address).await;
        let visit = Visit {
            address,
            status: browser.status,
            headers: browser.headers.clone(),
            body: browser.body.clone(),
        };
        if visit.is_html() {
            open.extend(visit.opens().into_iter().filter(|it| seen.insert(it.clone())));
        }
        visits.push(visit);
        assert!(visits.len() < 500, "there is no end to it");
    }
    visits
}
