//! What is kept of what lies in a drawer: directives, papers, cards and covers, and what is to be
//! renewed, by their titles.

use super::holdings::{counted, list};
use crate::{
    across::directives::ground::Ground,
    platform::{
        auth::area::{Directives, Papers},
        db::View,
        error::Result,
    },
    record::{
        coverage::{cards::store as cards, refusals::store as refusals, store as covers},
        papers::store as papers,
        renewals::{store as renewals, word_store as paper_words},
    },
};

/// Which are in force as far as the family knows, and how many copies are written down.
pub(super) async fn directives(view: &View<Directives>) -> Result<Vec<String>> {
    let ground = Ground::read(view).await?;
    let titles: Vec<_> = ground.standing().in_force.iter().map(|it| it.title()).collect();
    let mut lines = vec![counted(&ground.asked().sentence(), titles)];
    let copies = ground.copies.iter().filter(|it| !it.struck).count();
    if copies > 0 {
        let noun = if copies == 1 { "person" } else { "people or places" };
        lines.push(format!("Also kept: {copies} {noun} with a copy. Their text is not kept here."));
    }
    Ok(lines)
}

/// Those that stand by their titles; what waits is counted.
pub(super) async fn filed(view: &View<Papers>) -> Result<Vec<String>> {
    let all = papers::filed(view).await?.into_iter().filter(|it| it.stands());
    let mut lines = vec![list("paper", all.map(|it| it.title()).collect())];
    let waiting = papers::waiting(view).await?.len();
    if waiting > 0 {
        lines.push(format!("Also kept: {waiting} in the tray, which nobody has filed yet."));
    }
    Ok(lines)
}

pub(super) async fn paid(view: &View<Papers>) -> Result<Vec<String>> {
    let cards = cards::standing(view).await?.into_iter().map(|it| it.title.to_string());
    let covers = covers::list(view).await?.into_iter().filter(|it| !it.struck);
    let refused = refusals::list(view).await?.len();
    let mut lines =
        vec![list("card", cards.collect()), list("cover", covers.map(|it| it.title()).collect())];
    if refused > 0 {
        let noun = if refused == 1 { "prescription that was" } else { "prescriptions that were" };
        lines.push(format!("Also kept: {refused} {noun} refused at the pharmacy counter."));
    }
    Ok(lines)
}

/// Entries of the family's own by their titles; what was said of papers is counted.
pub(super) async fn to_renew(view: &View<Papers>) -> Result<Vec<String>> {
    let all = renewals::list(view).await?.into_iter().filter(|it| !it.struck);
    let titles: Vec<_> = all.filter_map(|it| Some(it.title?.to_string())).collect();
    let mut lines = vec![match titles.is_empty() {
        true => "Nothing is written down.".to_owned(),
        false => counted("Written down", titles),
    }];
    let said = paper_words::list(view).await?.iter().filter(|it| it.said_by.is_some()).count();
    if said > 0 {
        let noun = if said == 1 { "answer" } else { "answers" };
        lines.push(format!("Also kept: {said} {noun} about which papers you have."));
    }
    Ok(lines)
}
