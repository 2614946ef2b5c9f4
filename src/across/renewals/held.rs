//! What is there already that answers an expected paper: one function for each place where something is
//! kept. A line of `expected.json` names by `fits` what answers it.

use crate::{
    base::day,
    platform::{
        auth::area::{Clinical, Directives, Papers},
        db::View,
        error::Result,
        web::urls::{self, Address},
    },
    record::{
        coverage::{
            cards::{model::Card, store as cards},
            model::Cover,
            store as covers,
        },
        directives::{model::Directive, store as directives},
        medicines::store as medicines,
        operations::{model::Operation, store as operations},
        papers::{model::Paper, store as papers},
        renewals::{model::Renewal, store as renewals},
        statements::{
            model::{Answer, Question},
            store as statements,
        },
    },
};

/// Something that is kept, by what it fits.
pub struct Held {
    pub fits: String,
    pub says: String,
    pub to: Address,
}

/// Everything that the reader sees: another place is a line here.
pub async fn all(view: &View<Papers>) -> Result<Vec<Held>> {
    let mut all = own_entries(view).await?;
    all.extend(filed(view).await?);
    all.extend(covered(view).await?);
    all.extend(carded(view).await?);
    if let Some(view) = view.area::<Directives>() {
        all.extend(directed(&view).await?);
    }
    if let Some(view) = view.area::<Clinical>() {
        all.extend(listed_medicines(&view).await?);
        all.extend(implant_cards(&view).await?);
    }
    Ok(all)
}

/// What the family wrote down to be renewed is there.
async fn own_entries(view: &View<Papers>) -> Result<Vec<Held>> {
    let all = renewals::list(view).await?.into_iter().filter(|it| !it.struck);
    let held = |it: Renewal| {
        let (fits, to) = (format!("renewal/{}", it.rule), urls::renewal(it.id));
        Some(Held { fits, says: it.title?.to_string(), to })
    };
    Ok(all.filter_map(held).collect())
}

/// Filed papers, by their kind.
async fn filed(view: &View<Papers>) -> Result<Vec<Held>> {
    let all = papers::filed(view).await?.into_iter().filter(|it| it.stands());
    let held = |it: Paper| {
        let (says, to) = (it.title(), urls::paper(it.id));
        Some(Held { fits: format!("paper/{}", it.kind?), says, to })
    };
    Ok(all.filter_map(held).collect())
}

async fn covered(view: &View<Papers>) -> Result<Vec<Held>> {
    let all = covers::list(view).await?.into_iter().filter(|it| !it.struck);
    let held = |it: Cover| {
        let (says, to) = (it.title(), urls::cover(it.id));
        Held { fits: format!("cover/{}", it.kind), says, to }
    };
    Ok(all.map(held).collect())
}

async fn carded(view: &View<Papers>) -> Result<Vec<Held>> {
    let all = cards::standing(view).await?.into_iter();
    let held = |it: Card| {
        let (says, to) = (it.title.to_string(), urls::card(it.id));
        Held { fits: format!("card/{}", it.kind), says, to }
    };
    Ok(all.map(held).collect())
}

/// Directives in force, as far as the family knows; or the word that there are none.
async fn directed(view: &View<Directives>) -> Result<Vec<Held>> {
    let all = directives::list(view).await?.into_iter().filter(Directive::is_in_force);
    let held = |it: Directive| Held {
        fits: format!("directive/{}", it.kind),
        says: it.title(),
        to: urls::directive(it.id),
    };
    let mut held: Vec<Held> = all.map(held).collect();
    let none = directives::answer(view).await?;
    if let Some((by, on)) = none.said_by.zip(none.said_on) {
        let says = format!("No directives, said by {by} on {}", day::words(on));
        held.push(Held { fits: "directive/none".into(), says, to: urls::directives() });
    }
    Ok(held)
}

async fn listed_medicines(view: &View<Clinical>) -> Result<Vec<Held>> {
    let count = medicines::current(view).await?.len();
    let says = if count == 1 { "1 medicine".into() } else { format!("{count} medicines") };
    let held = Held { fits: "medicines".into(), says, to: urls::medicines() };
    Ok((count > 0).then_some(held).into_iter().collect())
}

/// Operations with the number on the implant's card.
async fn implant_cards(view: &View<Clinical>) -> Result<Vec<Held>> {
    let all = operations::list(view).await?.into_iter();
    let with = all.filter(|it| !it.struck && it.implant_card.is_some());
    let held = |it: Operation| Held {
        fits: "implant card".into(),
        says: format!("{}, with the number on the card", it.name),
        to: urls::operation(it.id),
    };
    Ok(with.map(held).collect())
}

/// Whether an implant is stated, or listed with an operation, as far as the reader sees that.
pub async fn has_implant(view: &View<Papers>) -> Result<bool> {
    let Some(view) = view.area::<Clinical>() else { return Ok(false) };
    let stated = statements::find(&view, Question::Implant).await?.answer == Answer::Yes;
    let all = operations::list(&view).await?;
    Ok(stated || all.iter().any(|it| !it.struck && it.implant.is_some()))
}
