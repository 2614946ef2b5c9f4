//! The facts of a day on paper: what is taken at each time, and blank columns for whoever gives
//! it. What she writes there is hers; nothing of it is read back into the record by itself.

use super::{BesideItem, Ground, Head, counted};
use crate::{
    base::day as calendar,
    platform::{auth::area::Clinical, db::View, error::Result},
    record::medicines::schedule::day,
};
use serde::Serialize;
use time::Date;

#[derive(Serialize)]
pub struct Facts {
    pub paper: &'static str,
    pub lang: &'static str,
    pub title: &'static str,
    pub person: Head,
    /// "Wed 25 Nov 2026"
    pub day: String,
    pub sentence: String,
    pub stamp: Option<String>,
    pub changes: Vec<String>,
    pub lines: Vec<Line>,
    pub beside: Vec<BesideItem>,
}

/// One medicine at one time.
#[derive(Serialize)]
pub struct Line {
    /// "morning"
    pub time: String,
    pub window: Option<&'static str>,
    pub amount: String,
    pub title: String,
}

impl Facts {
    /// As the reader may see them, in one snapshot.
    pub async fn read(view: &View<Clinical>, date: Date) -> Result<Facts> {
        let ground = Ground::read(view).await?;
        let slots = day::day(&ground.medicines, &ground.steps, date).slots;
        let lines = slots.into_iter().flat_map(|slot| {
            slot.lines.into_iter().map(move |it| Line {
                time: slot.name.clone(),
                window: slot.window,
                amount: it.amount,
                title: it.title,
            })
        });
        let beside = day::beside(&ground.medicines, &ground.steps, &[date]);
        Ok(Facts {
            paper: ground.paper,
            lang: "en",
            title: "What is taken in a day",
            day: calendar::short_words(date),
            sentence: counted(&ground.medicines),
            stamp: ground.stamp(),
            changes: ground.changes(date, date),
            lines: lines.collect(),
            beside: beside.into_iter().map(BesideItem::from).collect(),
            person: ground.head,
        })
    }
}
