//! "I will ask when to resume": a hold without a day becomes a question with an owner, and leaves
//! Today. It stands there again when the question is let go or answered and there is no day yet.

use super::pages::question;
use crate::{
    base::{
        ids::TurnId,
        text::{Line, Note},
    },
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::Done,
        error::{Error, Result},
        web::{
            form::{Form, Press},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::{
        medicines::{
            model::Medicine,
            store as medicines,
            turns::{model::Turn, store},
        },
        questions::{
            model::{Question, Whom, Wording},
            store as questions,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "turns/ask.html")]
pub struct AskPage {
    page: Page,
    typed: Typed,
    turn: Turn,
    medicine: Medicine,
}

pub async fn asking(
    grant: Grant<Change<Clinical>>,
    At(id): At<TurnId>,
    typed: Typed,
) -> Result<AskPage> {
    let view = grant.view().await?;
    let turn = store::find(&view, id).await?;
    let medicine = medicines::find(&view, turn.medicine_id).await?;
    let page = grant.page(format!("I will ask when to resume {}", medicine.name));
    Ok(AskPage { page, typed, turn, medicine })
}

pub async fn ask(grant: Grant<Change<Clinical>>, At(id): At<TurnId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let turn = store::find(&write, id).await?.opened_at(press.version)?;
    if !turn.is_hold() || question(&write, &turn).await?.is_some_and(|it| it.waits()) {
        return Err(Error::Stale);
    }
    let medicine = medicines::find(&write, turn.medicine_id).await?;
    let by = (write.member(), write.at());
    let new = Question::new(write.person(), wording(&medicine, &turn), by);
    let question = questions::add(&mut write, &new.owned(Some(by.0))).await?;
    store::save(&mut write, &turn, &turn.asked(question)).await?;
    write.commit().await?.then(urls::question(question)).saying("Your name stands beside it")
}

fn wording(medicine: &Medicine, turn: &Turn) -> Wording {
    let (title, held) = (medicine.title(), turn.sentence());
    let words = format!(
        "{title}: when is it to be resumed, if at all?\nIt was {held}, said {}: {}.",
        turn.said_by, turn.reason
    );
    Wording {
        words: Note::from(words),
        for_whom: Whom::Clinician,
        clinician: Some(Line::from(turn.said_by.to_string())),
        about: Some(("medicine".to_owned(), medicine.id.into())),
    }
}
