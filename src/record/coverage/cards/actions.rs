//! What is done to a card: said to stay the same, struck, brought back. Each has a page that posts
//! to itself.

use super::{
    super::{actions::ActPage, form::Mistake, pages::Changing},
    model::Card,
    store,
};
use crate::base::ids::CardId;
use crate::platform::{
    db::Done,
    error::Result,
    web::{
        form::{Form, Press},
        path::At,
        typed::Typed,
        urls::{self, Address},
    },
};

fn shown(it: &Card) -> (String, Address, i64) {
    (it.title.to_string(), urls::card(it.id), it.version)
}

pub async fn staying(grant: Changing, At(id): At<CardId>, typed: Typed) -> Result<ActPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    let (title, back, version) = shown(&kept);
    let explains = "The card that is photographed is the one that counts this year. Look at the card itself, or ask the plan.";
    let verb = "It stays the same";
    let page = grant.page(format!("{verb}: {title}"));
    Ok(ActPage { page, typed, title, back, version, asks_reason: false, verb, explains })
}

pub async fn stay(grant: Changing, At(id): At<CardId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    let year = grant.today().year();
    store::save(&mut write, &before, &before.stays_for(year)).await?;
    let says = format!("Noted: it is the same card in {year}");
    write.commit().await?.then(urls::card(id)).saying(says)
}

pub async fn striking(grant: Changing, At(id): At<CardId>, typed: Typed) -> Result<ActPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    Ok(ActPage::strikes(grant.page(format!("Strike {}", kept.title)), typed, shown(&kept)))
}

pub async fn strike(grant: Changing, At(id): At<CardId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    store::save(&mut write, &before, &before.struck(reason)).await?;
    write.commit().await?.then(urls::cards()).saying("Struck; its history keeps it")
}

pub async fn bringing_back(grant: Changing, At(id): At<CardId>, typed: Typed) -> Result<ActPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    Ok(ActPage::brings_back(grant.page(format!("Bring back {}", kept.title)), typed, shown(&kept)))
}

pub async fn bring_back(grant: Changing, At(id): At<CardId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    store::save(&mut write, &before, &before.brought_back()).await?;
    write.commit().await?.then(urls::card(id)).saying("It stands again")
}
