//! All the SQL of the pages of papers. A page is reached through its paper, which is asked for first: what
//! is hidden there is hidden here.

use super::{model::Paper, page::PaperPage, store};
use crate::base::{
    change::Change,
    ids::{PaperId, PaperPageId},
};
use crate::platform::{
    auth::area::Papers,
    db::{View, Write},
    error::{Error, Result},
    files::paper::Media,
};
use sqlx::{query, query_as, query_scalar};

/// The pages of a paper that the reader sees, in order.
pub async fn of(view: &View<Papers>, paper: &Paper) -> Result<Vec<PaperPage>> {
    let person = view.person();
    view.all(query_as!(
        PaperPage,
        r#"select id, person_id, paper_id, place, file, media as "media: Media", bytes, turned, version
        from paper_page where person_id = ? and paper_id = ? order by place, id"#,
        person,
        paper.id
    ))
    .await
}

pub async fn find(view: &View<Papers>, paper: &Paper, id: PaperPageId) -> Result<PaperPage> {
    let found = of(view, paper).await?.into_iter().find(|it| it.id == id);
    found.ok_or(Error::NotFound)
}

/// The first page of each paper: what it looks like in a list.
pub async fn first_of(
    view: &View<Papers>,
    papers: Vec<Paper>,
) -> Result<Vec<(Paper, Option<PaperPage>)>> {
    let mut found = Vec::new();
    for paper in papers {
        let first = of(view, &paper).await?.into_iter().next();
        found.push((paper, first));
    }
    Ok(found)
}

/// The paper that has this file, as far as the reader sees it. One that is hidden from her is not
/// told of: she may send the same once more.
pub async fn with_file(view: &View<Papers>, sum: &str) -> Result<Option<Paper>> {
    let person = view.person();
    let all = view.values(query_scalar!(
        r#"select distinct paper_id as "id: PaperId" from paper_page
        where person_id = ? and file = ? order by paper_id"#,
        person,
        sum
    ));
    for id in all.await? {
        match store::find(view, id).await {
            Err(Error::NotFound) => {}
            found => return found.map(Some),
        }
    }
    Ok(None)
}

pub async fn add(write: &mut Write<Papers>, new: &PaperPage) -> Result<()> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into paper_page (person_id, paper_id, place, file, media, bytes, turned)
            values (?, ?, ?, ?, ?, ?, ?)",
            person,
            new.paper_id,
            new.place,
            new.file,
            new.media,
            new.bytes,
            new.turned
        ),
    );
    added.await.map(|_| ())
}

pub async fn save(write: &mut Write<Papers>, old: &PaperPage, new: &PaperPage) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update paper_page set paper_id = ?, place = ?, turned = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.paper_id,
            new.place,
            new.turned,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}
