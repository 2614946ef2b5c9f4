//! All the SQL of what pages look like, and of the queue of what is still to be looked at, in the manner of
//! the words of papers: a reader asks with papers that she was shown, the job for the whole house.

use super::super::{
    model::Paper,
    text::{TRIES, rest},
};
use crate::base::{
    clock::Instant,
    ids::{PaperId, PaperPageId, PersonId},
};
use crate::platform::{
    auth::area::{Own, Papers},
    db::{View, Write},
    error::Result,
    look::Look,
};
use sqlx::{query, query_as, query_scalar};
use time::Duration;

/// A file that is to be looked at.
#[derive(Clone, Debug)]
pub struct Due {
    pub id: i64,
    pub person_id: PersonId,
    pub file: String,
    pub form: String,
    pub tries: i64,
}

impl Due {
    pub fn is_pdf(&self) -> bool {
        self.form == "pdf"
    }
}

/// What a page looks like.
#[derive(Clone, Debug)]
pub struct PageLook {
    pub paper_id: PaperId,
    pub page: PaperPageId,
    pub file: String,
    pub look: Look,
}

/// The looks of these papers' pages, which the reader sees, as far as they were looked at.
pub async fn of(view: &View<Papers>, papers: &[Paper]) -> Result<Vec<PageLook>> {
    let person = view.person();
    let pages = view.all(query!(
        r#"select g.paper_id as "paper_id: PaperId", g.id as "page: PaperPageId", g.file, l.look as "look!"
        from paper_page g join paper_look l on l.person_id = g.person_id and l.file = g.file
        where g.person_id = ? and l.state = 'seen' order by g.paper_id, g.place, g.id"#,
        person
    ));
    let mut pages = pages.await?;
    pages.retain(|it| papers.iter().any(|paper| paper.id == it.paper_id));
    let looks = pages.into_iter().filter_map(|it| {
        let look = it.look.parse().ok()?;
        Some(PageLook { paper_id: it.paper_id, page: it.page, file: it.file, look })
    });
    Ok(looks.collect())
}

/// Why a page of this paper could not be looked at, if one could not.
pub async fn not_seen(view: &View<Papers>, paper: &Paper) -> Result<Option<String>> {
    let person = view.person();
    let why = view.values(query_scalar!(
        r#"select l.reason as "reason!"
        from paper_page g join paper_look l on l.person_id = g.person_id and l.file = g.file
        where g.person_id = ? and g.paper_id = ? and l.state = 'not seen' order by g.place"#,
        person,
        paper.id
    ));
    Ok(why.await?.into_iter().next())
}

/// Puts every file of every record into the queue that is not in it. Gives how many.
pub async fn queue(write: &Write<Own>) -> Result<u64> {
    let now = write.at();
    let added = write.machinery(query!(
        "insert into paper_look (person_id, file, form, state, due_at)
        select g.person_id, g.file, max(case g.media when 'pdf' then 'pdf' else 'picture' end), 'waiting', ?
        from paper_page g
        where not exists (select 1 from paper_look l where l.person_id = g.person_id and l.file = g.file)
        group by g.person_id, g.file",
        now
    ));
    added.await
}

/// Whether any file is not in the queue yet: asked first, since a write waits for others.
pub async fn is_behind(view: &View<Own>) -> Result<bool> {
    let missing = view.values(query_scalar!(
        r#"select count(*) as "many!: i64" from (select 1 from paper_page g where not exists
            (select 1 from paper_look l where l.person_id = g.person_id and l.file = g.file) limit 1)"#
    ));
    Ok(missing.await?.first().is_some_and(|it| *it > 0))
}

/// What is due, the longest waiting first; PDFs only where they can be drawn. What rests for longer than
/// anything does was put off by a clock that was set back since.
pub async fn due(view: &View<Own>, now: Instant, pdfs: bool, most: i64) -> Result<Vec<Due>> {
    let beyond = now.plus(Duration::days(2));
    view.all(query_as!(
        Due,
        r#"select id, person_id as "person_id: _", file, form, tries from paper_look
        where state = 'waiting' and (due_at <= ?1 or due_at > ?2) and (form = 'picture' or ?3)
        order by due_at, id limit ?4"#,
        now,
        beyond,
        pdfs,
        most
    ))
    .await
}

/// Notes what it looks like.
pub async fn seen(write: &Write<Own>, it: &Due, look: &Look) -> Result<()> {
    let (person, now, look) = (it.person_id, write.at(), look.to_string());
    let noted = write.machinery(query!(
        "update paper_look set state = 'seen', look = ?, settled_at = ?, reason = null, tries = tries + 1
        where person_id = ? and id = ? and state = 'waiting'",
        look,
        now,
        person,
        it.id
    ));
    noted.await.map(|_| ())
}

/// Notes that it could not be looked at: for good, or it is tried again.
pub async fn failed(write: &Write<Own>, it: &Due, says: &str, for_good: bool) -> Result<()> {
    let (person, now, tries) = (it.person_id, write.at(), it.tries + 1);
    let due = now.plus(rest(tries));
    let settled = (for_good || tries >= TRIES).then_some(now);
    let state = if settled.is_some() { "not seen" } else { "waiting" };
    let noted = write.machinery(query!(
        "update paper_look set state = ?, tries = ?, due_at = ?, settled_at = ?, reason = ?
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
