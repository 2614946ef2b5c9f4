//! The form of one question. The page that shows the answers joins them with what is listed, so
//! it stands in `across`.

use super::{
    form::Answered,
    model::{Answer, Question},
    state::State,
    store,
};
use crate::platform::{
    audit::Touch,
    auth::{
        area::Clinical,
        grant::{Change, Grant},
    },
    db::Done,
    error::Result,
    web::{
        form::{Choice, Form},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "statements/answer.html")]
pub struct AnswerPage {
    page: Page,
    typed: Typed,
    question: Question,
    version: i64,
    touch: Option<Touch>,
}

impl AnswerPage {
    fn answers(&self) -> impl Iterator<Item = &'static str> {
        Answer::ALL.iter().map(|it| it.words())
    }

    fn which(&self) -> (&'static str, &'static str) {
        match self.question {
            Question::BloodThinner => ("Which one", "to “yes”: as it stands on the label"),
            Question::Implant => ("Which one", "to “yes”: pacemaker, valve, pump, joint"),
        }
    }
}

pub async fn asking(
    grant: Changing,
    At(question): At<Question>,
    typed: Typed,
) -> Result<AnswerPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, question).await?;
    let touch = view.last_change("statement", kept.id.into()).await?;
    // Nothing is preset where nobody was asked: an answer is chosen, never left standing.
    let preset = match kept.answer {
        Answer::NotAsked if !typed.stale() => "",
        answer => answer.words(),
    };
    let typed = typed.over(&kept).with("answer", preset);
    let page = grant.page(question.words());
    Ok(AnswerPage { page, typed, question, version: kept.version, touch })
}

pub async fn answer(grant: Changing, At(question): At<Question>, form: Form<Answered>) -> Done {
    let Answered { said, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, question).await?.opened_at(version)?;
    let after = match said {
        Some(said) => before.said(said, grant.today())?,
        None => before.retracted(),
    };
    store::save(&mut write, &before, &after).await?;
    let line = format!("Written down: {} {}", question.words(), State::of(&after).sentence());
    write.commit().await?.then(urls::statements()).saying(line)
}
