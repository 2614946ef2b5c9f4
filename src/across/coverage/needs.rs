//! What of the coverage needs someone, for Today: a refusal with whose move it is and since when, and
//! the new card of a new year. Only for those who may do something about it.

use super::titles::Medicines;
use crate::{
    across::today::needs::Need,
    platform::{
        auth::area::Papers,
        db::View,
        error::Result,
        web::{page::Page, urls},
    },
    record::coverage::{
        cards::store as cards,
        model::Cover,
        refusals::{due::due, model::Refusal, store as refusals},
        store as covers,
    },
};

pub async fn needs(view: &View<Papers>, page: &Page) -> Result<Vec<Need>> {
    let (medicines, covers) = (Medicines::read(view).await?, covers::list(view).await?);
    let mut needs = Vec::new();
    for it in refusals::standing(view).await? {
        let says = format!("Refused at the counter: {}: {}", medicines.of(&it), it.move_words());
        let says = format!("{says}{}", waits_until(&it, &covers, page));
        needs.push(Need { says, to: urls::refusal(it.id) });
    }
    for it in cards::standing(view).await? {
        let cover = covers.iter().find(|cover| Some(cover.id) == it.cover_id);
        if it.asks_for_new(cover, page.today()) {
            let says = format!("Photograph the new one: {}", it.title);
            needs.push(Need { says, to: urls::card(it.id).and("photograph") });
        }
    }
    Ok(needs)
}

/// "; its answer is due Mon 9 Mar 2026, 5:10 pm", while the plan has a statement and no answer came.
fn waits_until(it: &Refusal, covers: &[Cover], page: &Page) -> String {
    let cover = covers.iter().find(|cover| Some(cover.id) == it.cover_id);
    let waits = cover.zip(it.statement_at).filter(|_| it.decision.is_none());
    let due = waits.and_then(|(cover, at)| due(cover.kind, at, it.expedited));
    due.map(|it| format!("; its answer is due {}", page.when(&it))).unwrap_or_default()
}
