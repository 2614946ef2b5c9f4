//! The cards on paper: both sides in their own size, and beside them the numbers in full. It is the
//! one place where they are.
//!
//! A photo that cannot be set (a broken file) does not cost the sheet: it is set again without photos
//! and says so.

use super::give::{noted, paper};
use crate::{
    base::day,
    platform::{
        auth::{
            area::{Essentials, Papers},
            grant::{Grant, See},
        },
        db::View,
        error::{Error, Result},
        files::Files,
        house::House,
        pdf::Sheet,
        web::{page::Page, urls},
    },
    record::{
        coverage::{
            cards::{model::Card, store as cards},
            model::Cover,
            store as covers,
        },
        people::{paper::Paper, store as people},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    Router,
    response::Response,
    routing::{get, post},
};
use serde::Serialize;
use time::Date;

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/coverage/cards/sheet", get(show))
        .route("/p/{person}/coverage/cards/sheet/print", post(print))
}

#[derive(Serialize)]
struct Facts {
    paper: &'static str,
    lang: &'static str,
    title: &'static str,
    person: Head,
    sentence: String,
    cards: Vec<Item>,
}

#[derive(Serialize)]
struct Head {
    name: String,
    born: String,
    died: Option<String>,
}

/// A card, or a cover of which there is none.
#[derive(Serialize)]
struct Item {
    title: String,
    lines: Vec<String>,
    /// Names of photos on the press's table.
    front: Option<String>,
    back: Option<String>,
    is_card: bool,
}

/// What is to be set, and the sums of its photos in order.
async fn read(view: &View<Papers>, today: Date) -> Result<(Facts, Vec<String>)> {
    let whose = view.whose().await?;
    let paper = match view.area::<Essentials>() {
        Some(view) => people::find(&view).await?.paper,
        None => Paper::UsLetter,
    };
    let covers = covers::list(view).await?;
    let cards = cards::standing(view).await?;
    let mut photos = Vec::new();
    let mut items = Vec::new();
    for card in &cards {
        let cover = covers.iter().find(|it| Some(it.id) == card.cover_id);
        items.push(Item::of_card(card, cover, &mut photos));
    }
    let shown = |it: &&Cover| cards.iter().any(|card| card.cover_id == Some(it.id));
    let others = covers.iter().filter(|it| it.holds_on(today) && !shown(it));
    items.extend(others.map(Item::of_cover));
    let head =
        Head { name: whose.name, born: day::words(whose.born), died: whose.died.map(day::words) };
    let sentence = format!(
        "As they were on {}. Numbers as they were written down: look at the card itself where it matters.",
        day::words(today)
    );
    let facts = Facts {
        paper: paper.code(),
        lang: "en",
        title: "Cards",
        person: head,
        sentence,
        cards: items,
    };
    Ok((facts, photos))
}

impl Item {
    fn of_card(card: &Card, cover: Option<&Cover>, photos: &mut Vec<String>) -> Item {
        let mut named = |sum: &String| {
            photos.push(sum.clone());
            format!("photo-{}", photos.len())
        };
        let front = Some(named(&card.front));
        let back = card.back.as_ref().map(named);
        let mut lines = cover.map(lines).unwrap_or_default();
        lines.extend(card.expires().map(|it| format!("expires {it}")));
        lines.push(format!("photographed {}", card.photographed_day()));
        Item { title: card.title.to_string(), lines, front, back, is_card: true }
    }

    fn of_cover(cover: &Cover) -> Item {
        let (title, lines) = (cover.title(), lines(cover));
        Item { title, lines, front: None, back: None, is_card: false }
    }
}

/// What stands beside the card: of the cover, with its numbers in full.
fn lines(cover: &Cover) -> Vec<String> {
    let mut lines = vec![cover.title()];
    lines.extend(cover.numbers().into_iter().map(|(what, it)| format!("{what}: {it}")));
    lines.extend(cover.phone.as_ref().map(|it| format!("customer line: {it}")));
    lines.extend(cover.days().map(|it| format!("in force {it}")));
    lines
}

#[derive(Template, WebTemplate)]
#[template(path = "coverage/sheet.html")]
struct SheetPage {
    page: Page,
    titles: Vec<String>,
}

async fn show(grant: Grant<See<Papers>>) -> Result<SheetPage> {
    let (facts, _) = read(&grant.view().await?, grant.today()).await?;
    let titles = facts.cards.into_iter().map(|it| it.title).collect();
    Ok(SheetPage { page: grant.page("Cards on paper"), titles })
}

async fn print(grant: Grant<See<Papers>>) -> Result<Response> {
    let (facts, sums) = read(&grant.view().await?, grant.today()).await?;
    let mut data = noted(&grant, Sheet::Cards, &facts).await?;
    data["unset"] = false.into();
    let press = &grant.house().press;
    let pdf = match opened(&grant.house().files, &sums).await {
        Ok(photos) => press
            .render_with(Sheet::Cards, data.clone(), photos)
            .await
            .map_err(|e| Error::Internal(e.into())),
        Err(e) => Err(e),
    };
    let pdf = match pdf {
        Ok(pdf) => pdf,
        Err(e) => {
            tracing::warn!(error = %e, "a card's photo could not be set");
            data["unset"] = true.into();
            let plain = press.render(Sheet::Cards, data).await;
            plain.map_err(|e| Error::Internal(e.into()))?
        }
    };
    paper(&grant, (Sheet::Cards, "inline"), pdf)
}

async fn opened(files: &Files, sums: &[String]) -> Result<Vec<Vec<u8>>> {
    let mut photos = Vec::new();
    for sum in sums {
        photos.push(files.open(sum).await?.bytes);
    }
    Ok(photos)
}
