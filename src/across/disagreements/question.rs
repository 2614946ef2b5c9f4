//! A row as a question for whoever can say, and whether someone asked.

use super::{
    read::written,
    rows::{Row, Written},
};
use crate::{
    across::questions::made::{Pressed, keep},
    base::text::{Line, Note},
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::Done,
        error::Error,
        web::form::Form,
    },
    record::questions::model::{Question, State, Whom, Wording},
};

pub async fn make(grant: Grant<Change<Clinical>>, form: Form<Pressed>) -> Done {
    let pressed = form.parse()?;
    let write = grant.write().await?;
    let rows = written(&write).await?.rows();
    let row = rows.into_iter().find(|it| it.key() == pressed.row).ok_or(Error::NotFound)?;
    let (for_whom, clinician) = whom(&row);
    let (kind, item) = row.about();
    let about = Some((kind.to_owned(), item));
    let words = Note::from(words(&row));
    let wording = Wording { words, for_whom, clinician, about };
    let by = (write.member(), write.at());
    let new = Question::new(write.person(), wording, by).naming(&row.names());
    keep(write, &new).await
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
pub fn unasked(written: &Written, questions: &[Question]) -> Option<String> {
    let mut rows = written.rows();
    rows.retain(|it| !matches!(it, Row::ForNothing { .. }) && asked(it, questions).is_none());
    match rows.as_slice() {
        [] => None,
        [one] => Some(format!("Two records disagree: {}", one.headline())),
        all => Some(format!("Two records disagree, in {} places", all.len())),
    }
}
