//! Writing down what the person answered about one item: who may see it, whether to keep it.

use super::pages::title;
use crate::{
    family::members::{
        answers::{
            ask::{self, About, AskPage, Sent},
            model::Subject,
        },
        places::pages::Changing,
    },
    platform::{
        db::Done,
        error::Result,
        web::{typed::Typed, urls},
    },
};
use axum::extract::Path;

type Item = Path<(String, String, i64)>;

pub async fn asking(grant: Changing, Path((_, kind, item)): Item, typed: Typed) -> Result<AskPage> {
    let title = title(&grant.view().await?, &kind, item).await?;
    let starters = vec![
        format!("Who should not see {title}?"),
        format!("May we keep {title} in this record?"),
    ];
    let back = (urls::visibility(&kind, item), format!("Who sees {title}"));
    let (question, what) = (starters[0].clone(), title);
    ask::page(&grant, typed, About { back, starters, question, what }, 0).await
}

pub async fn add(grant: Changing, Path((_, kind, item)): Item, sent: Sent) -> Done {
    let write = grant.write().await?;
    title(&write, &kind, item).await?;
    ask::keep(&grant, write, sent, Some(Subject { kind, item }), None).await
}
