//! The cards, one of them large, and the form for what is said of it.

use super::{
    super::{model::Cover, noted::noted, pages::Changing, store as covers},
    form::{Added, Renamed, arrived},
    model::{Card, Named, Sort},
    store,
};
use crate::base::ids::{CardId, CoverId};
use crate::platform::{
    auth::{
        area::{History, Members, Papers},
        grant::{Change, Grant, See},
    },
    db::{Done, View},
    error::Result,
    web::{
        form::{Choice, Form, FormErrors},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

/// A card, and whether a new one of this year is to be photographed.
pub struct Row {
    pub card: Card,
    pub cover: Option<Cover>,
    pub asks: bool,
    pub expired: bool,
}

#[derive(Template, WebTemplate)]
#[template(path = "coverage/cards.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    rows: Vec<Row>,
    struck: Vec<Card>,
}

pub async fn list(grant: Grant<See<Papers>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let covers = covers::list(&view).await?;
    let (struck, standing): (Vec<_>, Vec<_>) =
        store::list(&view).await?.into_iter().partition(|it| it.struck);
    let today = grant.today();
    let row = |card: Card| {
        let cover = covers.iter().find(|it| Some(it.id) == card.cover_id).cloned();
        let asks = card.asks_for_new(cover.as_ref(), today);
        Row { asks, expired: card.has_expired(today), cover, card }
    };
    let rows = standing.into_iter().map(row).collect();
    let may_change = grant.may::<Change<Papers>>();
    Ok(ListPage { page: grant.page("Cards"), may_change, rows, struck })
}

#[derive(Template, WebTemplate)]
#[template(path = "coverage/card.html")]
pub struct ShowPage {
    page: Page,
    row: Row,
    by: String,
    noted: bool,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
}

/// A card, large; the history notes that it was opened.
pub async fn show(grant: Grant<See<Papers>>, At(id): At<CardId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let card = store::find(&view, id).await?;
    let covers = covers::list(&view).await?.into_iter();
    let cover = covers.into_iter().find(|it| Some(it.id) == card.cover_id);
    let today = grant.today();
    Ok(ShowPage {
        page: grant.page(card.title.to_string()),
        by: view.names().await?.of(card.photographed_by).to_owned(),
        noted: noted(&grant, &view, ("opened the card", "card", id.into())).await,
        may_change: grant.may::<Change<Papers>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        row: Row {
            asks: card.asks_for_new(cover.as_ref(), today),
            expired: card.has_expired(today),
            cover,
            card,
        },
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "coverage/card_edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    kept: Option<Card>,
    covers: Vec<(CoverId, String)>,
}

impl EditPage {
    fn sorts(&self) -> impl Iterator<Item = &'static str> {
        Sort::ALL.iter().map(|it| it.words())
    }

    fn is_of(&self, cover: &CoverId) -> bool {
        self.typed.value("cover_id") == cover.to_string()
    }
}

/// The covers that a card can belong to.
async fn listed(view: &View<Papers>, kept: Option<CoverId>) -> Result<Vec<(CoverId, String)>> {
    let all = covers::list(view).await?.into_iter();
    let all = all.filter(|it| !it.struck || Some(it.id) == kept);
    Ok(all.map(|it| (it.id, it.title())).collect())
}

async fn known(view: &View<Papers>, named: &Named, kept: Option<CoverId>) -> Result<()> {
    let listed = listed(view, kept).await?;
    match named.cover_id {
        Some(id) if !listed.iter().any(|it| it.0 == id) => {
            let says = "This cover is not on the list any more. Choose again.";
            Err(FormErrors::at("cover_id", says).into())
        }
        _ => Ok(()),
    }
}

pub async fn blank(grant: Changing, typed: Typed) -> Result<EditPage> {
    let covers = listed(&grant.view().await?, None).await?;
    let typed = typed.with("kind", Sort::Insurance.words());
    Ok(EditPage { page: grant.page("Add a card"), typed, kept: None, covers })
}

pub async fn add(grant: Changing, form: Form<Added>) -> Done {
    let Added { named, sides } = form.parse()?;
    let sides = arrived(&grant.house().files, sides).await?;
    let mut write = grant.write().await?;
    known(&write, &named, None).await?;
    let by = (write.member(), grant.today());
    let new = Card::new(write.person(), named, sides, by)?;
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::card(id)).saying(format!("Added the card {}", new.title))
}

pub async fn edit(grant: Changing, At(id): At<CardId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let covers = listed(&view, kept.cover_id).await?;
    let typed = typed.over(&kept).with("kind", kept.kind.words());
    let page = grant.page(format!("Put the words about {} right", kept.title));
    Ok(EditPage { page, typed, kept: Some(kept), covers })
}

pub async fn save(grant: Changing, At(id): At<CardId>, form: Form<Renamed>) -> Done {
    let Renamed { named, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    known(&write, &named, before.cover_id).await?;
    store::save(&mut write, &before, &before.renamed(named)?).await?;
    write.commit().await?.then(urls::card(id)).saying("Saved what is said of the card")
}
