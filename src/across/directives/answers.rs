//! The answer where nothing is listed: "no directives", said by someone on a day.

use super::Changing;
use crate::{
    platform::{
        audit::Touch,
        db::Done,
        error::Result,
        web::{
            form::{Choice, Form},
            page::Page,
            typed::Typed,
            urls,
        },
    },
    record::directives::{answer::Answer, form::Answered, store},
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "directives/answer.html")]
pub struct AnswerPage {
    page: Page,
    typed: Typed,
    version: i64,
    touch: Option<Touch>,
}

impl AnswerPage {
    fn answers(&self) -> impl Iterator<Item = &'static str> {
        Answer::ALL.iter().map(|it| it.words())
    }
}

pub async fn asking(grant: Changing, typed: Typed) -> Result<AnswerPage> {
    let view = grant.view().await?;
    let kept = store::answer(&view).await?;
    let touch = view.last_change("directive_answer", kept.id.into()).await?;
    // Proposed, not preset: without the name and the day it is not kept.
    let answer = if typed.stale() { kept.answer } else { Answer::No };
    let typed = typed.over(&kept).with("answer", answer);
    Ok(AnswerPage { page: grant.page("No directives?"), typed, version: kept.version, touch })
}

pub async fn answer(grant: Changing, form: Form<Answered>) -> Done {
    let Answered { none, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::answer(&write).await?.opened_at(version)?;
    let listed = store::list(&write).await?.iter().filter(|it| !it.struck).count();
    let after = match none {
        Some(said) => before.none(said, listed, grant.today())?,
        None => before.retracted(),
    };
    store::save_answer(&mut write, &before, &after).await?;
    let line = format!("Written down: {}", after.answer);
    write.commit().await?.then(urls::directives()).saying(line)
}
