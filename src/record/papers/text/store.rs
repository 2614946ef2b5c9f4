//! All the SQL of the words of papers, and of the queue of what is to be read.
//!
//! A reader asks with papers that she was shown: what is hidden there is hidden here. The job asks for
//! what is due in the whole house, and shows it to nobody.

use super::{super::model::Paper, PageText, PaperText, State, TRIES, rest, together};
use crate::base::{
    clock::Instant,
    ids::{PaperId, PersonId},
};
use crate::platform::{
    auth::area::{Own, Papers},
    db::{View, Write},
    error::Result,
    ocr::{Form, Text, Unread},
};
use sqlx::{query, query_as, query_scalar};
use std::collections::HashMap;
use time::Duration;

/// A file that is to be read.
#[derive(Clone, Debug)]
pub struct Due {
    pub id: i64,
    pub person_id: PersonId,
    pub file: String,
    pub form: String,
    pub tries: i64,
}

impl Due {
    pub fn form(&self) -> Form {
        if self.form == "pdf" { Form::Pdf } else { Form::Picture }
    }
}

/// The words of these papers, which the reader sees.
pub async fn of(view: &View<Papers>, papers: &[Paper]) -> Result<HashMap<PaperId, PaperText>> {
    let person = view.person();
    let pages = view.all(query_as!(
        PageText,
        r#"select g.paper_id as "paper_id: PaperId", t.state as "state?: State", t.words as "words?",
            coalesce(t.recognized, 0) as "recognized!: bool", coalesce(t.goes_on, 0) as "goes_on!: bool",
            t.reason as "reason?"
        from paper_page g left join paper_text t on t.person_id = g.person_id and t.file = g.file
        where g.person_id = ? order by g.paper_id, g.place, g.id"#,
        person
    ));
    let mut pages = pages.await?;
    pages.retain(|it| papers.iter().any(|paper| paper.id == it.paper_id));
    Ok(together(pages))
}

/// The words of one file, as far as they were read. It is asked for by a page that the reader sees.
pub async fn on_file(view: &View<Papers>, file: &str) -> Result<Option<String>> {
    let person = view.person();
    let words = view.values(query_scalar!(
        r#"select words as "words!" from paper_text
        where person_id = ? and file = ? and state = 'read'"#,
        person,
        file
    ));
    Ok(words.await?.pop())
}

/// Puts every file of every record into the queue that is not in it. Gives how many.
pub async fn queue(write: &Write<Own>) -> Result<u64> {
    let now = write.at();
    let added = write.machinery(query!(
        "insert into paper_text (person_id, file, form, state, due_at)
        select g.person_id, g.file, max(case g.media when 'pdf' then 'pdf' else 'picture' end), 'waiting', ?
        from paper_page g
        where not exists (select 1 from paper_text t where t.person_id = g.person_id and t.file = g.file)
        group by g.person_id, g.file",
        now
    ));
    added.await
}

/// Puts what could not be read of a paper, which the reader sees, into the queue again. Gives how many pages.
pub async fn again(write: &Write<Papers>, paper: PaperId) -> Result<u64> {
    let (person, now) = (write.person(), write.at());
    let asked = write.machinery(query!(
        "update paper_text set state = 'waiting', tries = 0, due_at = ?, settled_at = null, reason = null
        where person_id = ? and state = 'not read' and file in
            (select file from paper_page where person_id = ? and paper_id = ?)",
        now,
        person,
        person,
        paper
    ));
    asked.await
}

/// Whether any file is not in the queue yet: asked first, since a write waits for others.
pub async fn is_behind(view: &View<Own>) -> Result<bool> {
    let missing = view.values(query_scalar!(
        r#"select count(*) as "many!: i64" from (select 1 from paper_page g where not exists
            (select 1 from paper_text t where t.person_id = g.person_id and t.file = g.file) limit 1)"#
    ));
    Ok(missing.await?.first().is_some_and(|it| *it > 0))
}

/// What is due, the longest waiting first: pictures, PDFs, or both. What rests for longer than anything
/// does was put off by a clock that was set back since.
pub async fn due(
    view: &View<Own>,
    now: Instant,
    (pictures, pdfs): (bool, bool),
    most: i64,
) -> Result<Vec<Due>> {
    let beyond = now.plus(Duration::days(2));
    view.all(query_as!(
        Due,
        r#"select id, person_id as "person_id: _", file, form, tries from paper_text
        where state = 'waiting' and (due_at <= ?1 or due_at > ?2)
            and (form = 'picture' and ?3 or form = 'pdf' and ?4)
        order by due_at, id limit ?5"#,
        now,
        beyond,
        pictures,
        pdfs,
        most
    ))
    .await
}

/// Notes what was read.
pub async fn read(write: &Write<Own>, it: &Due, text: &Text) -> Result<()> {
    let (person, now) = (it.person_id, write.at());
    let noted = write.machinery(query!(
        "update paper_text set state = 'read', words = ?, recognized = ?, goes_on = ?, settled_at = ?,
            reason = null, tries = tries + 1
        where person_id = ? and id = ? and state = 'waiting'",
        text.words,
        text.recognized,
        text.goes_on,
        now,
        person,
        it.id
    ));
    noted.await.map(|_| ())
}

/// Notes that it was not read: it is tried again, or left with why. A program that is missing, and a
/// house that ends, are no fault of the file.
pub async fn failed(write: &Write<Own>, it: &Due, why: Unread) -> Result<()> {
    let (person, now, says) = (it.person_id, write.at(), why.says());
    let (tries, due) = match why {
        Unread::Ended => return Ok(()),
        Unread::Missing(_) => (it.tries, now.plus(Duration::hours(12))),
        _ => (it.tries + 1, now.plus(rest(it.tries + 1))),
    };
    let (state, settled) = match tries {
        TRIES.. => (State::NotRead, Some(now)),
        _ => (State::Waiting, None),
    };
    let noted = write.machinery(query!(
        "update paper_text set state = ?, tries = ?, due_at = ?, settled_at = ?, reason = ?
        where person_id = ? and id = ? and state = 'waiting'",
        state,
        tries,
        due,
        settled,
        says,
        person,
        it.id
    ));
    noted.await.map(|_| ())
}
