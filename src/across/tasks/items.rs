//! What a task can be about: the items that a note can be about, the questions that wait, the
//! appointments that stand, what was refused at the pharmacy counter, what is to be renewed, and papers.

use crate::{
    across::{
        coverage::titles::Medicines,
        happenings::items::{self, Choice, Group},
        renewals::titles as renewals,
    },
    base::{day, text::Line},
    platform::{
        auth::area::{Clinical, Papers, Tasks},
        db::View,
        error::Result,
    },
    record::{
        appointments::store as appointments,
        coverage::refusals::store as refusals,
        papers::{model::Paper, store as papers},
        questions::store::{self as questions, Wanted},
    },
};
use std::cmp::Reverse;

/// So many papers are offered: the newest of those that stand, and the one that is chosen.
const PAPERS: usize = 40;

/// All of them, with what is `chosen` already.
pub async fn all<A>(view: &View<A>, chosen: &str) -> Result<Vec<Group>> {
    let mut groups = items::all(view).await?;
    if let Some(view) = view.area::<Clinical>() {
        let all = questions::list(&view, &Wanted::default()).await?.into_iter();
        let waiting = all.filter(|it| it.waits());
        let choice = |id: i64| Choice { kind: "question".to_owned(), item: id };
        let items: Vec<_> = waiting.map(|it| (choice(it.id.into()), it.title())).collect();
        if !items.is_empty() {
            groups.push(Group { label: "Questions", items });
        }
    }
    if let Some(view) = view.area::<Papers>() {
        let medicines = Medicines::read(&view).await?;
        let standing = refusals::standing(&view).await?.into_iter();
        let choice = |id: i64| Choice { kind: "refusal".to_owned(), item: id };
        let items: Vec<_> =
            standing.map(|it| (choice(it.id.into()), medicines.title(&it))).collect();
        if !items.is_empty() {
            groups.push(Group { label: "Refused at the counter", items });
        }
    }
    if let Some(view) = view.area::<Tasks>() {
        let all = appointments::list(&view).await?.into_iter();
        let open = all.filter(|it| it.status.is_open());
        let choice = |id: i64| Choice { kind: "appointment".to_owned(), item: id };
        let title = |title: &Line, on| format!("{title}, {}", day::short_words(on));
        let items: Vec<_> =
            open.map(|it| (choice(it.id.into()), title(&it.title, it.on_day))).collect();
        if !items.is_empty() {
            groups.push(Group { label: "Appointments", items });
        }
    }
    if let Some(view) = view.area::<Papers>() {
        let all = renewals::standing(&view).await?.into_iter();
        let choice = |id: i64| Choice { kind: "renewal".to_owned(), item: id };
        let items: Vec<_> = all.map(|(id, title)| (choice(id.into()), title)).collect();
        if !items.is_empty() {
            groups.push(Group { label: "To be renewed", items });
        }
        let items = filed(&view, chosen).await?;
        if !items.is_empty() {
            groups.push(Group { label: "Papers", items });
        }
    }
    Ok(groups)
}

async fn filed(view: &View<Papers>, chosen: &str) -> Result<Vec<(Choice, String)>> {
    let mut all = papers::filed(view).await?;
    all.retain(Paper::stands);
    all.sort_by_key(|it| Reverse((it.dated_on.or(it.filed_at.map(|at| at.utc().date())), it.id)));
    let choice = |it: &Paper| Choice { kind: "paper".to_owned(), item: it.id.into() };
    let offered = |(at, it): (usize, &Paper)| {
        let choice = choice(it);
        (at < PAPERS || choice.to_string() == chosen).then(|| (choice, it.title()))
    };
    Ok(all.iter().enumerate().filter_map(offered).collect())
}

/// Whether it is listed now; what was chosen may have left the list since.
pub async fn has<A>(view: &View<A>, kind: &str, item: i64) -> Result<bool> {
    let mut listed =
        all(view, &format!("{kind}/{item}")).await?.into_iter().flat_map(|it| it.items);
    Ok(listed.any(|(it, _)| it.kind == kind && it.item == item))
}
