//! The days of a journey: what they take of each medicine, and what runs out before they are over.
//!
//! Amounts, not advice: what is taken along, and how much more, is for the family to say.

use super::{
    lasts::Lasts,
    standing::{self, Standing},
};
use crate::base::{day, ids::MedicineId};
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

/// From which day to which, as it was typed; a week from today where nothing was.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    from: String,
    until: String,
}

impl Asked {
    fn days(&self, today: Date) -> std::result::Result<(Date, Date), &'static str> {
        if self.from.is_empty() && self.until.is_empty() {
            return Ok((today, today + Duration::days(6)));
        }
        let unread = "Enter both days, like 9 Mar 2026.";
        let read = |typed: &str| day::parse(typed).ok_or(unread);
        match (read(&self.from)?, read(&self.until)?) {
            (from, until) if until < from => Err("The last day is before the first."),
            (from, until) if until - from > Duration::days(366) => Err("At most a year."),
            both => Ok(both),
        }
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/stock/away.html")]
pub struct AwayPage {
    page: Page,
    from: String,
    until: String,
    wrong: Option<&'static str>,
    /// "from 3 March 2026 to 9 March 2026, 7 days"
    span: String,
    rows: Vec<Row>,
}

struct Row {
    medicine: MedicineId,
    title: String,
    /// "7 tablets", where the steps tell it.
    takes: Option<String>,
    says: String,
    runs_out: bool,
}

pub async fn away(grant: Grant<See<Clinical>>, Query(asked): Query<Asked>) -> Result<AwayPage> {
    let (view, today) = (grant.view().await?, grant.today());
    let page = grant.page("Runs out while away");
    let (from, until) = match asked.days(today) {
        Ok(both) => both,
        Err(wrong) => {
            let Asked { from, until } = asked;
            let (wrong, span, rows) = (Some(wrong), String::new(), Vec::new());
            return Ok(AwayPage { page, from, until, wrong, span, rows });
        }
    };
    let all = standing::all(&view, today).await?;
    let rows = all.iter().map(|it| Row::of(it, (from, until), today)).collect();
    let count = (until - from).whole_days() + 1;
    let days = if count == 1 { "day" } else { "days" };
    let (from, until) = (day::words(from), day::words(until));
    let span = format!("from {from} to {until}, {count} {days}");
    Ok(AwayPage { page, from, until, wrong: None, span, rows })
}

impl Row {
    fn of(standing: &Standing, (from, until): (Date, Date), today: Date) -> Row {
        let written = &standing.written;
        let takes = written.taken(from, until).filter(|it| !it.quantity().is_zero());
        let runs_out = matches!(standing.lasts, Lasts::Until { out, .. } if out <= until);
        Row {
            medicine: standing.id(),
            title: standing.title(),
            takes: takes.map(|it| it.to_string()),
            says: standing.words(today),
            runs_out,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    #[test]
    fn a_journey_has_a_first_and_a_last_day() {
        let today = date!(2026 - 11 - 25);
        let days =
            |from: &str, until: &str| Asked { from: from.into(), until: until.into() }.days(today);
        assert_eq!(days("", ""), Ok((today, date!(2026 - 12 - 01))));
        let both = (date!(2026 - 12 - 20), date!(2026 - 12 - 27));
        assert_eq!(days("20 Dec 2026", "2026-12-27"), Ok(both));
        assert_eq!(days("27 Dec 2026", "20 Dec 2026"), Err("The last day is before the first."));
        assert_eq!(days("20 Dec 2026", ""), Err("Enter both days, like 9 Mar 2026."));
        assert_eq!(days("1 Jan 2026", "1 Jan 2199"), Err("At most a year."));
    }
}
