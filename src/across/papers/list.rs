//! What is filed, by kind or by date. What a newer version replaced stands apart, and is found too.

use super::{
    Seeing,
    row::{Row, Senders},
};
use crate::{
    platform::{
        auth::{area::Papers, grant::Change},
        error::Result,
        web::{form::Choice, page::Page, urls},
    },
    record::papers::{kind::Kind, lapse::Lapse, store},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

#[derive(Template, WebTemplate)]
#[template(path = "papers/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    by_date: bool,
    /// The one kind that is asked for.
    only: Option<Kind>,
    waiting: usize,
    /// Those that have lapsed or will soon, first.
    lapsing: Vec<Row>,
    groups: Vec<Group>,
    replaced: Vec<Row>,
    part: Part,
}

/// Papers under one heading, the first of so many.
pub struct Group {
    name: String,
    kind: Option<Kind>,
    rows: Vec<Row>,
    of: usize,
}

/// So many of each kind on the page of all kinds, and so many on a page of one kind or by date.
const FEW: usize = 10;
const PART: usize = 50;

/// In which order, of which kind, and which part of it, the first being 1.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    by: String,
    kind: String,
    part: String,
}

/// Which part of a long list is shown.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Part {
    number: usize,
    of: usize,
}

impl Part {
    /// The one that was asked for, or the nearest there is.
    fn asked(typed: &str, many: usize) -> Part {
        let of = many.div_ceil(PART).max(1);
        Part { number: typed.trim().parse().unwrap_or(1).clamp(1, of), of }
    }

    fn taken<T>(self, all: Vec<T>) -> Vec<T> {
        all.into_iter().skip((self.number - 1) * PART).take(PART).collect()
    }

    fn earlier(self) -> Option<usize> {
        (self.number > 1).then(|| self.number - 1)
    }

    fn later(self) -> Option<usize> {
        (self.number < self.of).then(|| self.number + 1)
    }
}

pub async fn list(grant: Seeing, Query(asked): Query<Asked>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (page, senders) = (grant.page("Papers"), Senders::read(&view).await?);
    let only = Kind::ALL.iter().copied().find(|it| it.words() == asked.kind);
    let mut all = store::filed(&view).await?;
    all.retain(|it| only.is_none_or(|kind| it.kind == Some(kind)));
    let lapsing = all.iter().filter(|it| it.lapse(grant.today()).is_some()).cloned();
    let mut lapsing: Vec<_> = lapsing.collect();
    lapsing.sort_by_key(|it| (it.lapse(grant.today()) == Some(Lapse::Over), it.expires_on));
    let row = |it| Row::of(it, &senders, &page);
    let lapsing = lapsing.into_iter().map(row).collect();
    let (standing, replaced): (Vec<_>, Vec<_>) = all.into_iter().partition(|it| it.stands());
    let by_date = only.is_some() || asked.by == "date";
    let standing: Vec<Row> = standing.into_iter().map(row).collect();
    let part = Part::asked(&asked.part, if by_date { standing.len() } else { 0 });
    Ok(ListPage {
        may_change: grant.may::<Change<Papers>>(),
        waiting: store::waiting(&view).await?.len(),
        groups: if by_date { by_year(standing, part, &page) } else { by_kind(standing) },
        replaced: replaced.into_iter().map(row).collect(),
        lapsing,
        by_date: by_date && only.is_none(),
        only,
        part,
        page,
    })
}

impl ListPage {
    fn of_kind(&self, kind: &Kind) -> String {
        format!("{}?kind={}", self.page.at(urls::papers()), kind.words().replace(' ', "%20"))
    }

    /// The part before or after, of what is asked for now.
    fn to(&self, part: &usize) -> String {
        match self.only {
            Some(kind) => format!("{}&part={part}", self.of_kind(&kind)),
            None => format!("{}?by=date&part={part}", self.page.at(urls::papers())),
        }
    }
}

/// Under each kind by title, the first few.
fn by_kind(mut rows: Vec<Row>) -> Vec<Group> {
    rows.sort_by_key(|it| it.paper.title().to_lowercase());
    let empty = |kind: &Kind| Group {
        name: capital(kind.words()),
        kind: Some(*kind),
        rows: Vec::new(),
        of: 0,
    };
    let mut groups: Vec<Group> = Kind::ALL.iter().map(empty).collect();
    for row in rows {
        let at = Kind::ALL.iter().position(|it| row.paper.kind == Some(*it));
        let group = &mut groups[at.unwrap_or(Kind::ALL.len() - 1)];
        group.of += 1;
        if group.of <= FEW {
            group.rows.push(row);
        }
    }
    groups.retain(|it| it.of > 0);
    groups
}

/// Under each year by the date on the paper, the newest first; one without a date by the day it was
/// filed.
fn by_year(mut rows: Vec<Row>, part: Part, page: &Page) -> Vec<Group> {
    let day =
        |it: &Row| it.paper.dated_on.or_else(|| it.paper.filed_at.map(|at| page.local().day(at)));
    rows.sort_by_key(|it| std::cmp::Reverse((day(it), it.paper.id)));
    let year = |it: &Row| day(it).map(|it| it.year().to_string()).unwrap_or_default();
    let years: Vec<String> = rows.iter().map(year).collect();
    let mut groups: Vec<Group> = Vec::new();
    for (name, row) in part.taken(years.iter().zip(rows).collect()) {
        match groups.last_mut() {
            Some(last) if last.name == *name => last.rows.push(row),
            _ => groups.push(Group {
                name: name.clone(),
                kind: None,
                rows: vec![row],
                of: years.iter().filter(|it| *it == name).count(),
            }),
        }
    }
    groups
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map(|it| it.to_uppercase().chain(letters).collect()).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_paper_is_in_one_part_and_no_part_is_beyond_the_last() {
        for many in [0, 1, PART, PART + 1, 4 * PART - 1] {
            let of = Part::asked("", many).of;
            let parts = (1..=of).map(|it| Part::asked(&it.to_string(), many));
            let all: Vec<usize> = parts.flat_map(|it| it.taken((0..many).collect())).collect();
            assert_eq!(all, (0..many).collect::<Vec<_>>(), "{many}");
        }
        let last = Part::asked("99999", PART + 1);
        assert_eq!((last.number, last.earlier(), last.later()), (2, Some(1), None));
        for typed in ["", "0", "-1", "x", "184467440737095516160"] {
            let first = Part::asked(typed, PART + 1);
            assert_eq!((first.number, first.earlier(), first.later()), (1, None, Some(2)));
        }
    }
}
