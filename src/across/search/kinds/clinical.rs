//! The leaves of what the clinical pages hold.

use crate::{
    across::search::leaves::{beyond, joined, opt},
    base::zone::Zone,
    platform::{auth::area::Clinical, db::View, error::Result, words::Leaf},
    record::{
        conditions::{model::Condition, store as conditions},
        medicines::{model::Medicine, store as medicines},
        operations::{model::Operation, store as operations},
        questions::{model::Question, store as questions},
        visits::{
            model::{Visit, What},
            store as visits,
        },
    },
};

pub async fn medicines(view: &View<Clinical>) -> Result<Vec<Leaf>> {
    let leaf = |it: &Medicine| Leaf {
        kind: "medicine",
        item: it.id.into(),
        title: it.title(),
        text: joined([
            opt(&it.dose),
            opt(&it.route),
            opt(&it.times),
            opt(&it.purpose),
            opt(&it.prescriber),
            opt(&it.label_limit),
            opt(&it.status_reason),
            opt(&it.source),
        ]),
        day: it.status_since.or(it.started_on),
        ..Leaf::default()
    };
    Ok(medicines::list(view).await?.iter().map(leaf).collect())
}

pub async fn conditions(view: &View<Clinical>) -> Result<Vec<Leaf>> {
    let leaf = |it: &Condition| Leaf {
        kind: "condition",
        item: it.id.into(),
        title: it.name.to_string(),
        text: joined([
            opt(&it.since),
            opt(&it.followed_by),
            opt(&it.note),
            opt(&it.who_may_know),
            opt(&it.told_by),
            opt(&it.over_said_by),
            opt(&it.source),
        ]),
        day: it.over_on,
        ..Leaf::default()
    };
    Ok(conditions::list(view).await?.iter().map(leaf).collect())
}

pub async fn operations(view: &View<Clinical>) -> Result<Vec<Leaf>> {
    let leaf = |it: &Operation| Leaf {
        kind: "operation",
        item: it.id.into(),
        title: it.name.to_string(),
        text: joined([
            opt(&it.done_when),
            opt(&it.done_where),
            opt(&it.implant),
            opt(&it.implant_card),
            opt(&it.note),
            opt(&it.source),
        ]),
        ..Leaf::default()
    };
    Ok(operations::list(view).await?.iter().map(leaf).collect())
}

pub async fn questions(view: &View<Clinical>, zone: &Zone) -> Result<Vec<Leaf>> {
    let all = questions::list(view, &questions::Wanted::default()).await?;
    let leaf = |it: &Question| Leaf {
        kind: "question",
        item: it.id.into(),
        title: it.title(),
        text: joined([
            beyond(&it.title(), Some(it.words.as_str())),
            opt(&it.clinician),
            opt(&it.answer),
            opt(&it.answered_by),
            opt(&it.let_go_reason),
        ]),
        day: it.answered_on.or(it.asked_on).or(Some(zone.day(it.entered_at))),
        ..Leaf::default()
    };
    Ok(all.iter().map(leaf).collect())
}

/// The note, with the tests and the follow-ups that came of it. What was said of questions and of
/// medicines stands at those, and is hidden with them.
pub async fn visits(view: &View<Clinical>) -> Result<Vec<Leaf>> {
    let mut items = visits::items(view, None).await?;
    items.retain(|it| matches!(it.what, What::Test | What::FollowUp));
    let leaf = |it: &Visit| {
        let came = items.iter().filter(|item| item.visit_id == it.id);
        let came = came.flat_map(|item| [opt(&item.words), opt(&item.place)]);
        let own = [opt(&it.others), opt(&it.said), opt(&it.decisions)];
        Leaf {
            kind: "visit",
            item: it.id.into(),
            title: it.title(),
            text: joined(own.into_iter().chain(came)),
            day: Some(it.held_on),
            ..Leaf::default()
        }
    };
    Ok(visits::list(view).await?.iter().map(leaf).collect())
}
