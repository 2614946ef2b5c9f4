//! What a paper can be about, and which papers are about one thing: the directive whose scan it is, the visit
//! or the appointment that it belongs to.
//!
//! Both sides go through what the reader sees. What a paper is about and she does not see is not named to
//! her, and stays when she saves the paper: so it leaves no trace, and is not lost.

use crate::{
    across::{
        happenings::items::{Choice, Group},
        history::titles::{Thing, Titles},
    },
    base::day,
    platform::{
        auth::area::{Clinical, Directives, Papers, Tasks},
        db::View,
        error::Result,
        web::form::FormErrors,
    },
    record::{
        appointments::store as appointments,
        papers::{
            model::{Filing, Paper, about},
            store,
        },
        visits::store as visits,
    },
};
use time::Date;

/// So many visits, and so many appointments, are offered: those nearest to the day.
const NEAREST: usize = 12;
const KINDS: [&str; 3] = ["visit", "appointment", "directive"];

/// What can be chosen for a paper of this day.
pub async fn choices(view: &View<Papers>, near: Date) -> Result<Vec<Group>> {
    let mut groups = Vec::new();
    let mut group = |label, items: Vec<(Choice, String)>| {
        if !items.is_empty() {
            groups.push(Group { label, items });
        }
    };
    if let Some(view) = view.area::<Clinical>() {
        let all = visits::list(&view).await?.into_iter().filter(|it| !it.struck);
        let all = all.map(|it| (it.held_on, choice("visit", it.id), it.title()));
        group("Notes of visits", nearest(all, near));
    }
    if let Some(view) = view.area::<Tasks>() {
        let all = appointments::list(&view).await?.into_iter().filter(|it| !it.struck);
        let title = |title: &dyn std::fmt::Display, on| format!("{title}, {}", day::words(on));
        let all =
            all.map(|it| (it.on_day, choice("appointment", it.id), title(&it.title, it.on_day)));
        group("Appointments", nearest(all, near));
    }
    if let Some(view) = view.area::<Directives>() {
        let all = crate::record::directives::store::list(&view).await?.into_iter();
        let all = all.filter(|it| !it.struck);
        group("Directives", all.map(|it| (choice("directive", it.id), it.title())).collect());
    }
    Ok(groups)
}

fn choice(kind: &str, item: impl Into<i64>) -> Choice {
    Choice { kind: kind.to_owned(), item: item.into() }
}

fn nearest(all: impl Iterator<Item = (Date, Choice, String)>, near: Date) -> Vec<(Choice, String)> {
    let mut all: Vec<_> = all.collect();
    all.sort_by_key(|(on, ..)| ((*on - near).abs(), *on));
    all.truncate(NEAREST);
    all.into_iter().map(|(_, choice, title)| (choice, title)).collect()
}

/// What it is about, where the reader sees that.
pub async fn of(view: &View<Papers>, paper: &Paper) -> Result<Option<Thing>> {
    let Some((kind, item)) = paper.about() else { return Ok(None) };
    Ok(Titles::read(view, &[]).await?.thing(kind, item))
}

/// As typed, of what she sees; what she does not see stays what it is about.
pub async fn settled(view: &View<Papers>, filing: Filing, before: &Paper) -> Result<Filing> {
    if filing.about == before.about {
        return Ok(filing);
    }
    let titles = Titles::read(view, &[]).await?;
    let is_seen = |kept: &str| {
        let of = about(kept).filter(|(kind, _)| KINDS.contains(kind));
        of.is_some_and(|(kind, item)| titles.thing(kind, item).is_some())
    };
    match (&filing.about, &before.about) {
        (Some(chosen), _) if !is_seen(chosen) => {
            Err(FormErrors::at("about", "Choose from the list, or nothing.").into())
        }
        (None, Some(kept)) if !is_seen(kept) => {
            Ok(Filing { about: before.about.clone(), ..filing })
        }
        _ => Ok(filing),
    }
}

/// The filed papers about one thing, as far as the reader sees papers; the newest first.
pub async fn papers<A>(view: &View<A>, thing: (&str, i64)) -> Result<Vec<Paper>> {
    let Some(view) = view.area::<Papers>() else { return Ok(Vec::new()) };
    let mut all = store::filed(&view).await?;
    all.retain(|it| it.about() == Some(thing));
    all.sort_by_key(|it| std::cmp::Reverse((it.dated_on, it.filed_at)));
    Ok(all)
}
