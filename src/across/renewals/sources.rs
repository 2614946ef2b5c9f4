//! Where something with a last day is kept, beside the family's own entries: one function for each
//! place. Each gives only what the reader sees there.

use crate::{
    base::day,
    platform::{
        auth::area::{Clinical, Papers},
        db::View,
        error::Result,
        web::urls::{self, Address},
    },
    record::{
        coverage::{
            cards::{model::Card, store as cards},
            store as covers,
        },
        medicines::{
            stock::{life::Life, store as stock},
            store as medicines,
        },
        papers::{kind::Kind, model::Paper, store as papers},
        renewals::{expected::Fact, known, rule::Rule, word::Answer, word_store as words},
    },
};
use std::collections::HashMap;
use time::{Date, Month};

/// Something that is kept elsewhere and has a last day.
pub struct Found {
    pub kind: &'static str,
    pub item: i64,
    pub title: String,
    pub last: Date,
    pub rule: Rule,
    /// Where it is kept.
    pub to: Address,
}

/// A window that comes every year: its number is its last day, 20261207.
pub const WINDOW: &str = "window";

/// Everything from every place: another place is a line here, and its titles below.
pub async fn all(view: &View<Papers>, today: Date) -> Result<Vec<Found>> {
    let mut found = prescriptions(view).await?;
    found.extend(filed(view).await?);
    found.extend(covered(view).await?);
    found.extend(carded(view).await?);
    found.extend(windows(view, today).await?);
    Ok(found)
}

/// What each thing is called that something was said of, as the reader sees it.
pub async fn titles(view: &View<Papers>) -> Result<HashMap<(String, i64), String>> {
    let mut all = HashMap::new();
    let mut put = |kind: &str, id: i64, title: String| all.insert((kind.to_owned(), id), title);
    if let Some(view) = view.area::<Clinical>() {
        for (id, title) in medicines::titles(&view).await? {
            put("medicine", id.into(), title);
        }
    }
    for (id, title) in papers::titles(view).await? {
        put("paper", id.into(), title);
    }
    for (id, title) in covers::titles(view).await? {
        put("cover", id.into(), title.clone());
        put(TALKS, id.into(), talks_title(&title));
    }
    for (id, title) in cards::titles(view).await? {
        put("card", id.into(), title);
    }
    Ok(all)
}

/// Filed papers with a last day.
async fn filed(view: &View<Papers>) -> Result<Vec<Found>> {
    let all = papers::filed(view).await?.into_iter().filter(|it| it.stands());
    let found = |it: Paper| {
        let (last, rule) = (it.expires_on?, it.kind.map_or(Rule::Other, rule_of));
        let to = urls::paper(it.id);
        Some(Found { kind: "paper", item: it.id.into(), title: it.title(), last, rule, to })
    };
    Ok(all.filter_map(found).collect())
}

/// The rule of a kind of paper; an identity card may be any of several, so the issuer says.
fn rule_of(kind: Kind) -> Rule {
    match kind {
        Kind::MedicalOrder => Rule::OrderReview,
        Kind::Directive => Rule::DirectiveReview,
        Kind::Release => Rule::Release,
        Kind::Policy => Rule::Policy,
        Kind::Warranty => Rule::Warranty,
        _ => Rule::Other,
    }
}

/// That someone may talk to who pays, until a day: kept with the cover.
const TALKS: &str = "talks";

fn talks_title(cover: &str) -> String {
    format!("Who may talk to {cover}")
}

/// Covers with a last day, and until when someone may talk to who pays.
async fn covered(view: &View<Papers>) -> Result<Vec<Found>> {
    let mut found = Vec::new();
    for it in covers::list(view).await?.into_iter().filter(|it| !it.struck) {
        let (item, to) = (it.id.into(), urls::cover(it.id));
        if let Some(last) = it.until_on {
            let (title, to) = (it.title(), to.clone());
            found.push(Found { kind: "cover", item, title, last, rule: Rule::Policy, to });
        }
        if let Some(last) = it.talks_until {
            let title = talks_title(&it.title());
            found.push(Found { kind: TALKS, item, title, last, rule: Rule::Release, to });
        }
    }
    Ok(found)
}

/// Photographed cards with a last day.
async fn carded(view: &View<Papers>) -> Result<Vec<Found>> {
    let all = cards::standing(view).await?.into_iter();
    let found = |it: Card| {
        let (title, last, to) = (it.title.to_string(), it.expires_on?, urls::card(it.id));
        Some(Found { kind: "card", item: it.id.into(), title, last, rule: Rule::Other, to })
    };
    Ok(all.filter_map(found).collect())
}

/// The last day on which the newest fill's prescription can be filled.
async fn prescriptions(view: &View<Papers>) -> Result<Vec<Found>> {
    let Some(view) = view.area::<Clinical>() else { return Ok(Vec::new()) };
    let fills = stock::fills(&view, None).await?;
    let mut found = Vec::new();
    for it in medicines::current(&view).await? {
        let own = fills.iter().filter(|fill| fill.medicine_id == it.id);
        let newest = own.max_by_key(|fill| (fill.filled_on, fill.id));
        if let Some(last) = newest.and_then(|it| Life::of(it).last_fill) {
            found.push(Found {
                kind: "medicine",
                item: it.id.into(),
                title: format!("Prescription of {}", it.title()),
                last,
                rule: Rule::Prescription,
                to: urls::stock(it.id),
            });
        }
    }
    Ok(found)
}

/// The yearly windows of the Medicare that she has, by what was said.
async fn windows(view: &View<Papers>, today: Date) -> Result<Vec<Found>> {
    let said = words::find(view, Fact::Medicare.name()).await?.answer;
    let rules: &[Rule] = match said {
        Answer::Original => &[Rule::OpenEnrollment],
        Answer::Advantage => &[Rule::OpenEnrollment, Rule::AdvantageSwitch],
        _ => &[],
    };
    let window = |rule: &Rule| {
        let (_, last) = known::next_window(*rule, today)?;
        Some(Found {
            kind: WINDOW,
            item: number(last),
            title: window_title(*rule, last),
            last,
            rule: *rule,
            to: urls::missing_paper(Fact::Medicare.name()),
        })
    };
    Ok(rules.iter().filter_map(window).collect())
}

fn window_title(rule: Rule, last: Date) -> String {
    format!("{rule}, until {}", day::words(last))
}

/// A window that something was said of, in another year too.
pub fn window_named(number: i64, rule: Rule) -> Option<String> {
    Some(window_title(rule, last_of(number)?))
}

fn number(last: Date) -> i64 {
    i64::from(last.year()) * 10_000 + i64::from(last.month() as u8) * 100 + i64::from(last.day())
}

fn last_of(number: i64) -> Option<Date> {
    let part = |it: i64| u8::try_from(it % 100).ok();
    let month = Month::try_from(part(number / 100)?).ok()?;
    Date::from_calendar_date(i32::try_from(number / 10_000).ok()?, month, part(number)?).ok()
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    #[test]
    fn a_window_is_named_by_its_last_day() {
        let last = date!(2026 - 12 - 07);
        assert_eq!((number(last), last_of(20_261_207)), (20_261_207, Some(last)));
        let title = "Medicare open enrollment, until 7 December 2026";
        let named = window_named(20_261_207, Rule::OpenEnrollment);
        assert_eq!(named.as_deref(), Some(title));
        for odd in [0, -1, 20_261_399, 20_260_231, i64::MAX] {
            assert_eq!(last_of(odd), None, "{odd}");
        }
    }
}
