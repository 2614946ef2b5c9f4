//! A row as a question for whoever can say, and whether someone asked.

use super::{form::Named, read::written, rows::Row};
use crate::{
    base::text::{Line, Note},
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::{Done, View},
        error::{Error, Result},
        web::{form::Form, urls},
    },
    record::questions::{
        model::{Question, State, Whom, Wording},
        store::{self as questions, Wanted},
    },
};

pub async fn make(grant: Grant<Change<Clinical>>, form: Form<Named>) -> Done {
    let named = form.parse()?;
    let mut write = grant.write().await?;
    let rows = written(&write).await?.rows();
    let row = rows.into_iter().find(|it| it.key() == named.key).ok_or(Error::NotFound)?;
    let (for_whom, clinician) = whom(&row);
    let (kind, item) = row.about();
    let about = Some((kind.to_owned(), item));
    let words = Note::from(words(&row));
    let wording = Wording { words, for_whom, clinician, about };
    let new =
        Question::new(write.person(), wording, (write.member(), write.at())).naming(&row.names());
    let id = questions::add(&mut write, &new).await?;
    write.commit().await?.then(urls::question(id)).saying("Kept. Who will ask it?")
}

fn whom(row: &Row) -> (Whom, Option<Line>) {
    match row {
        Row::NotBorne { .. } => (Whom::Pharmacist, None),
        Row::ForWhatIsOver { .. } | Row::ForNothing { .. } => (Whom::Prescriber, None),
        // Whose paper it is can only be asked where it was written.
        Row::BornOtherwise { list, .. } => (Whom::Clinician, Some(list.source.clone())),
    }
}

/// The question with both sides in their words.
fn words(row: &Row) -> String {
    let asks = match row {
        Row::NotBorne { .. } => "Two things in the family's record do not go together. What holds?",
        Row::ForWhatIsOver { .. } => "Two things in the family's record do not agree. What holds?",
        Row::BornOtherwise { .. } => "Two birth dates: is this the right paper?",
        Row::ForNothing { .. } => "What is this medicine for?",
    };
    let [one, other] = row.sides();
    format!("{asks}\n{one}.\n{other}.")
}

/// The question that stands about a row: about its item, with one of its sides in its words.
pub fn asked<'a>(row: &Row, questions: &'a [Question]) -> Option<&'a Question> {
    let [one, other] = row.sides();
    questions.iter().find(|it| {
        let says = it.words.as_str();
        let same =
            it.about() == Some(row.about()) && (says.contains(&one) || says.contains(&other));
        same && it.state != State::LetGo
    })
}

/// What no question is about, in one line; what a medicine is for has a line of its own.
pub async fn unasked(view: &View<Clinical>) -> Result<Option<String>> {
    let mut rows = written(view).await?.rows();
    let questions = questions::list(view, &Wanted::default()).await?;
    rows.retain(|it| !matches!(it, Row::ForNothing { .. }) && asked(it, &questions).is_none());
    Ok(match rows.as_slice() {
        [] => None,
        [one] => Some(format!("Two records disagree: {}", one.headline())),
        all => Some(format!("Two records disagree, in {} places", all.len())),
    })
}
