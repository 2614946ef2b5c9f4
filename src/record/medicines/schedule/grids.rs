//! The pages of a day and of a week, from any day on.

use super::super::{
    store as medicines,
    turns::{standing, store as turns},
};
use super::{
    day::{self, Beside, Day},
    store,
};
use crate::base::day as calendar;
use crate::platform::{
    auth::{
        area::Clinical,
        grant::{Grant, See},
    },
    error::Result,
    web::{page::Page, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;
use time::{Date, Duration};

/// Which day; today where none is named, or none that can be read.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    on: String,
}

impl Asked {
    pub fn day(&self, today: Date) -> Date {
        calendar::parse(&self.on).unwrap_or(today)
    }

    /// What was typed and is no day: the page says so, and does not pass today off for it.
    pub fn unread(&self) -> Option<String> {
        let no_day = !self.on.trim().is_empty() && calendar::parse(&self.on).is_none();
        no_day.then(|| self.on.clone())
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/day.html")]
pub struct DayPage {
    page: Page,
    day: Day,
    words: String,
    beside: Vec<Beside>,
    /// What is to be held or stopped by these days.
    plans: Vec<String>,
    before: Date,
    after: Date,
}

pub async fn day(grant: Grant<See<Clinical>>, Query(asked): Query<Asked>) -> Result<DayPage> {
    let view = grant.view().await?;
    let (medicines, steps) = (medicines::current(&view).await?, store::list(&view).await?);
    let date = asked.day(grant.today());
    Ok(DayPage {
        page: grant.page("What is taken in a day"),
        words: calendar::short_words(date),
        beside: day::beside(&medicines, &steps, &[date]),
        plans: standing::plans(&medicines, &turns::standing(&view).await?, date),
        day: day::day(&medicines, &steps, date),
        before: date - Duration::days(1),
        after: date + Duration::days(1),
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/week.html")]
pub struct WeekPage {
    page: Page,
    days: Vec<Day>,
    beside: Vec<Beside>,
    /// What is to be held or stopped by these days.
    plans: Vec<String>,
    before: Date,
    after: Date,
}

impl WeekPage {
    fn words(&self, date: &Date) -> String {
        calendar::short_words(*date)
    }
}

pub async fn week(grant: Grant<See<Clinical>>, Query(asked): Query<Asked>) -> Result<WeekPage> {
    let view = grant.view().await?;
    let (medicines, steps) = (medicines::current(&view).await?, store::list(&view).await?);
    let from = asked.day(grant.today());
    let days = day::week(&medicines, &steps, from);
    let dates: Vec<Date> = days.iter().map(|it| it.date).collect();
    Ok(WeekPage {
        page: grant.page("A week for the pill box"),
        beside: day::beside(&medicines, &steps, &dates),
        plans: standing::plans(
            &medicines,
            &turns::standing(&view).await?,
            from + Duration::days(6),
        ),
        days,
        before: from - Duration::days(7),
        after: from + Duration::days(7),
    })
}
