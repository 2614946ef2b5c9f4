//! What is done to one page: turned a quarter, moved a place, split off into a paper of its own. Buttons
//! without fields; each can be taken back by another.

use super::{
    model::Paper,
    page::{PaperPage, closed_up, moved},
    page_store as pages, store,
};
use crate::base::ids::{PaperId, PaperPageId};
use crate::platform::{
    auth::{
        area::Papers,
        grant::{Change, Grant},
    },
    db::{Done, View, Write},
    error::{Error, Result},
    web::{path::At, urls},
};

type Changing = Grant<Change<Papers>>;

/// A paper with its pages, as long as they are its own and it was not struck.
async fn open(view: &View<Papers>, id: PaperId) -> Result<(Paper, Vec<PaperPage>)> {
    let paper = store::find(view, id).await?;
    let all = pages::of(view, &paper).await?;
    if paper.struck || all.is_empty() { Err(Error::NotFound) } else { Ok((paper, all)) }
}

fn one(all: &[PaperPage], id: PaperPageId) -> Result<&PaperPage> {
    all.iter().find(|it| it.id == id).ok_or(Error::NotFound)
}

pub async fn turn(grant: Changing, At(id): At<PaperId>, At(page): At<PaperPageId>) -> Done {
    let mut write = grant.write().await?;
    let (paper, all) = open(&write, id).await?;
    let before = one(&all, page)?;
    if before.is_picture() {
        pages::save(&mut write, before, &before.turned()).await?;
    }
    write.commit().await?.then(urls::paper(paper.id)).saying("Turned a quarter")
}

pub async fn earlier(grant: Changing, id: At<PaperId>, page: At<PaperPageId>) -> Done {
    step(grant, (id.0, page.0), false).await
}

pub async fn later(grant: Changing, id: At<PaperId>, page: At<PaperPageId>) -> Done {
    step(grant, (id.0, page.0), true).await
}

async fn step(grant: Changing, (id, page): (PaperId, PaperPageId), later: bool) -> Done {
    let mut write = grant.write().await?;
    let (paper, all) = open(&write, id).await?;
    one(&all, page)?;
    place(&mut write, &moved(&all, page, later)).await?;
    write.commit().await?.then(urls::paper(paper.id)).saying("The pages are in another order")
}

async fn place(write: &mut Write<Papers>, changed: &[(PaperPage, PaperPage)]) -> Result<()> {
    for (before, after) in changed {
        pages::save(write, before, after).await?;
    }
    Ok(())
}

/// The page becomes a paper that waits in the tray, under the name its paper came with. Where that is
/// kept from anyone, the page is for stewards only until one of them files it.
pub async fn split_off(grant: Changing, At(id): At<PaperId>, At(page): At<PaperPageId>) -> Done {
    let mut write = grant.write().await?;
    let (paper, all) = open(&write, id).await?;
    let before = one(&all, page)?;
    if all.len() == 1 {
        let says = "It is a paper of its own already";
        return write.commit().await?.then(urls::paper(paper.id)).saying(says);
    }
    let by = (write.member(), write.at());
    let own = Paper::arrived(write.person(), paper.sent_as.clone(), by);
    let own = Paper { stewards_only: store::is_close(&write, &paper).await?, ..own };
    let own = store::add(&mut write, &own).await?;
    pages::save(&mut write, before, &before.at(own, 1)).await?;
    place(&mut write, &closed_up(&all, page)).await?;
    let says = "The page is a paper of its own now, and waits in the tray";
    write.commit().await?.then(urls::paper(paper.id)).saying(says)
}
