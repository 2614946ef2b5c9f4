//! The leaves of the person herself: what is known of her, how she usually is, and what was stated
//! of her blood thinner and implant.

use crate::{
    across::search::leaves::{called, joined, opt},
    platform::{
        auth::area::{Clinical, Essentials},
        db::View,
        error::Result,
        words::Leaf,
    },
    record::{
        baseline::{
            daily::{self, Daily, Manner},
            model::{Baseline, usually_is},
            store as baseline,
        },
        people::{model::Person, store as people},
        statements::{
            model::{Answer, Statement},
            store as statements,
        },
    },
};

pub async fn person(view: &View<Essentials>) -> Result<Vec<Leaf>> {
    let person = people::find(view).await?;
    let mut leaves = vec![about(&person)];
    let usual = baseline::find(view).await?;
    if !usual.is_empty() {
        leaves.push(usually(&person, &usual));
    }
    Ok(leaves)
}

fn about(it: &Person) -> Leaf {
    Leaf {
        kind: "person",
        item: it.id.into(),
        title: it.name.to_string(),
        text: joined([
            opt(&it.address),
            opt(&it.language),
            opt(&it.hearing),
            opt(&it.vision),
            opt(&it.mobility),
            opt(&it.first_whom),
            opt(&it.first_number),
            opt(&it.poison_line),
            opt(&it.source),
        ]),
        also: called([it.first_number.as_ref(), it.poison_line.as_ref()]),
        ..Leaf::default()
    }
}

fn usually(person: &Person, it: &Baseline) -> Leaf {
    let with_her = it.with_the_person().into_iter();
    let with_her = with_her.map(|(what, words)| Some(format!("{what}: {}", words?)));
    // The line of a sheet names what was not asked too; there is nothing in it to be found.
    let asked = |it: &Daily| it.manner != Manner::NotAsked || it.words.is_some();
    let daily: Vec<Daily> = it.daily().into_iter().filter(asked).collect();
    let own = [opt(&it.own_words), opt(&it.thinking), opt(&it.mood), opt(&it.not_usual)];
    let rest = [daily::sentence(&daily), opt(&it.walking_aid), opt(&it.said_by)];
    Leaf {
        kind: "baseline",
        item: it.id.into(),
        title: usually_is(person.name.as_str()),
        text: joined(own.into_iter().chain(with_her).chain(rest)),
        day: it.said_on,
        ..Leaf::default()
    }
}

/// What was answered; "not asked" is nothing to be found.
pub async fn statements(view: &View<Clinical>) -> Result<Vec<Leaf>> {
    let leaf = |it: &Statement| Leaf {
        kind: "statement",
        item: it.id.into(),
        title: it.question.subject().to_owned(),
        text: joined([Some(it.answer.to_string()), opt(&it.which), opt(&it.said_by)]),
        day: it.said_on,
        ..Leaf::default()
    };
    let all = statements::list(view).await?;
    Ok(all.iter().filter(|it| it.answer != Answer::NotAsked).map(leaf).collect())
}
