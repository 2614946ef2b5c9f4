//! The history by day, one item's life, and its verification.

use super::{
    days::{self, Day},
    kinds,
    titles::Titles,
};
use crate::base::{clock::Instant, day, ids::MemberId, zone::Zone};
use crate::platform::{
    audit::{Report, read::Wanted},
    auth::{
        area::{AreaName, History},
        grant::{Grant, See},
    },
    error::{Error, Result},
    web::{page::Page, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::{Path, Query};

#[derive(Template, WebTemplate)]
#[template(path = "history/list.html")]
pub struct ListPage {
    page: Page,
    days: Vec<Day>,
    members: Vec<(MemberId, String)>,
    filter: Filter,
    earlier: Option<i64>,
}

impl ListPage {
    fn areas(&self) -> Vec<&'static str> {
        AreaName::ALL.iter().map(|it| it.name()).collect()
    }

    /// The query of the page with the entries before this one.
    fn query(&self, before: &i64) -> String {
        let mut query = form_urlencoded::Serializer::new(String::new());
        query.append_pair("member", &self.filter.member).append_pair("area", &self.filter.area);
        query.append_pair("before", &before.to_string()).finish()
    }
}

/// What the reader asked for, as it was sent.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Filter {
    member: String,
    area: String,
    before: String,
}

impl Filter {
    fn wanted(&self) -> Wanted {
        Wanted {
            actor: self.member.parse().ok(),
            area: Some(self.area.clone()).filter(|it| !it.is_empty()),
            before: self.before.parse().ok(),
            ..Wanted::default()
        }
    }
}

pub async fn list(grant: Grant<See<History>>, Query(filter): Query<Filter>) -> Result<ListPage> {
    let view = grant.view().await?;
    let told = days::tell(&view, &filter.wanted(), grant.zone(), grant.today()).await?;
    let earlier = told.oldest.filter(|_| told.goes_on);
    let members = view.members().await?;
    Ok(ListPage { page: grant.page("History"), days: told.days, members, filter, earlier })
}

#[derive(Template, WebTemplate)]
#[template(path = "history/life.html")]
pub struct LifePage {
    page: Page,
    title: String,
    back: String,
    days: Vec<Day>,
}

/// The life of one item. One that is hidden from the reader, or of another record, is not there.
pub async fn life(
    grant: Grant<See<History>>,
    Path((_, kind, item)): Path<(String, String, i64)>,
) -> Result<LifePage> {
    let view = grant.view().await?;
    let titles = Titles::read(&view, &[item]).await?;
    let title = titles.of(&kind, item).ok_or(Error::NotFound)?.to_owned();
    let wanted = Wanted { kind: Some(kind.clone()), item: Some(item), ..Wanted::default() };
    let days = days::tell(&view, &wanted, grant.zone(), grant.today()).await?.days;
    let page = grant.page(format!("History of {title}"));
    let back = page.at(kinds::page(&kind, item).unwrap_or_else(urls::history));
    Ok(LifePage { page, title, back, days })
}

#[derive(Template, WebTemplate)]
#[template(path = "history/verify.html")]
pub struct VerifyPage {
    page: Page,
    zone: Zone,
    report: Option<Report>,
}

impl VerifyPage {
    /// The first digits of the newest mark, in groups, as a sheet prints them.
    fn mark(&self, report: &Report) -> String {
        crate::platform::audit::mark(&report.head)
    }

    /// When the server was restored from a backup that was not sound, as days.
    fn restored(&self, report: &Report) -> Vec<String> {
        let day = |at: &Instant| day::words(self.zone.day(*at));
        report.restored.iter().map(|it| day(&it.0)).collect()
    }
}

pub async fn unverified(grant: Grant<See<History>>) -> VerifyPage {
    let (page, zone) = (grant.page("Verify the history"), grant.zone().clone());
    VerifyPage { page, zone, report: None }
}

pub async fn verify(grant: Grant<See<History>>) -> Result<VerifyPage> {
    let report = Some(grant.verify().await?);
    Ok(VerifyPage { report, ..unverified(grant).await })
}
