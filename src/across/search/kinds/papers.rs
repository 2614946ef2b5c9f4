//! The leaves of what lies in a drawer: papers, in the tray and filed, covers, cards, refusals at the
//! counter, what is to be renewed, and directives.
//!
//! The words on a paper's pages belong to its leaf: a page counts only where its paper has one.

use crate::{
    across::{
        coverage::titles::Medicines,
        renewals::titles as renewals,
        search::leaves::{called, joined, opt},
    },
    platform::{
        auth::area::{Directives, Papers},
        db::View,
        error::Result,
        words::Leaf,
    },
    record::{
        coverage::{
            cards::{model::Card, store as cards},
            model::Cover,
            refusals::{model::Refusal, store as refusals},
            store as covers,
        },
        directives::{model::Directive, store as directives},
        papers::{model::Paper, store as papers},
        renewals::store as entries,
    },
};

pub async fn papers(view: &View<Papers>) -> Result<Vec<Leaf>> {
    let leaf = |it: &Paper| Leaf {
        kind: "paper",
        item: it.id.into(),
        title: it.title(),
        text: joined([
            it.kind.map(|kind| kind.to_string()),
            opt(&it.from_name),
            opt(&it.original_where),
            opt(&it.note),
        ]),
        day: it.dated_on,
        ..Leaf::default()
    };
    let all = [papers::filed(view).await?, papers::waiting(view).await?].concat();
    Ok(all.iter().filter(|it| !it.struck).map(leaf).collect())
}

/// Without its numbers: they are masked wherever they stand.
pub async fn covers(view: &View<Papers>) -> Result<Vec<Leaf>> {
    let leaf = |it: &Cover| Leaf {
        kind: "cover",
        item: it.id.into(),
        title: it.title(),
        text: joined([Some(it.kind.to_string()), opt(&it.phone), opt(&it.hours), opt(&it.talks)]),
        also: called([it.phone.as_ref()]),
        day: None,
    };
    Ok(covers::list(view).await?.iter().filter(|it| !it.struck).map(leaf).collect())
}

pub async fn cards(view: &View<Papers>) -> Result<Vec<Leaf>> {
    let leaf = |it: &Card| Leaf {
        kind: "card",
        item: it.id.into(),
        title: it.title.to_string(),
        text: it.kind.to_string(),
        ..Leaf::default()
    };
    Ok(cards::standing(view).await?.iter().map(leaf).collect())
}

pub async fn refusals(view: &View<Papers>) -> Result<Vec<Leaf>> {
    let medicines = Medicines::read(view).await?;
    let leaf = |it: &Refusal| Leaf {
        kind: "refusal",
        item: it.id.into(),
        title: medicines.title(it),
        text: joined([
            opt(&it.pharmacy),
            opt(&Some(it.words.clone())),
            opt(&it.code),
            opt(&it.decision_words),
            opt(&it.next_step),
        ]),
        day: Some(it.refused_on),
        ..Leaf::default()
    };
    Ok(refusals::list(view).await?.iter().filter(|it| !it.struck).map(leaf).collect())
}

pub async fn renewals(view: &View<Papers>) -> Result<Vec<Leaf>> {
    let titles = renewals::standing(view).await?;
    let entries = entries::list(view).await?;
    let leaf = |(id, title): (crate::base::ids::RenewalId, String)| {
        let entry = entries.iter().find(|it| it.id == id)?;
        let (text, day) = (joined([opt(&entry.note)]), entry.last_on);
        Some(Leaf { kind: "renewal", item: id.into(), title, text, day, ..Leaf::default() })
    };
    Ok(titles.into_iter().filter_map(leaf).collect())
}

pub async fn directives(view: &View<Directives>) -> Result<Vec<Leaf>> {
    let leaf = |it: &Directive| Leaf {
        kind: "directive",
        item: it.id.into(),
        title: it.title(),
        text: joined([
            opt(&it.form_of),
            opt(&it.kept_where),
            opt(&it.witnesses),
            opt(&it.notary),
            opt(&it.note),
            opt(&it.source),
        ]),
        day: it.signed_on,
        ..Leaf::default()
    };
    Ok(directives::list(view).await?.iter().filter(|it| !it.struck).map(leaf).collect())
}
