//! One paper with its pages.

use super::{
    Seeing, about,
    alike::found::Finder,
    row::{Row, Senders},
    words::propose::{Proposal, Proposer},
};
use crate::{
    across::history::titles::Thing,
    base::ids::PaperId,
    platform::{
        auth::{
            area::{History, Members, Papers, Tasks},
            grant::{Change, See},
        },
        db::View,
        error::{Error, Result},
        web::{page::Page, path::At, urls},
    },
    record::papers::{model::Paper, page::PaperPage, page_store, store, text::PaperText},
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "papers/show.html")]
pub struct ShowPage {
    page: Page,
    row: Row,
    pages: Vec<PaperPage>,
    from: Option<String>,
    sent_by: String,
    filed_by: Option<String>,
    /// The one in its place, or the one its pages went to, where the reader sees it.
    newer: Option<Paper>,
    joined: Option<Paper>,
    /// Those it replaced.
    older: Vec<Paper>,
    /// What was read on it, and what that proposes while it waits.
    text: PaperText,
    proposal: Option<Proposal>,
    /// What it looks like while it waits; and where it was struck as the same paper, which that is.
    alike: Vec<Paper>,
    same: Vec<Paper>,
    about: Option<Thing>,
    may_change: bool,
    may_task: bool,
    may_decide: bool,
    may_read_history: bool,
}

impl ShowPage {
    /// A PDF is a paper of its own.
    fn is_pictures(&self) -> bool {
        !self.pages.is_empty() && self.pages.iter().all(PaperPage::is_picture)
    }
}

pub async fn show(grant: Seeing, At(id): At<PaperId>) -> Result<ShowPage> {
    let others = grant.others().await?;
    let view = grant.view().await?;
    let (paper, names) = (store::find(&view, id).await?, view.names().await?);
    let senders = Senders::read(&view).await?;
    let page = grant.page(paper.title());
    let proposer = Proposer::read(&view, others, grant.today()).await?;
    let mut finder = Finder::read(&view).await?;
    let filed = store::filed(&view).await?.into_iter();
    Ok(ShowPage {
        pages: page_store::of(&view, &paper).await?,
        from: senders.of(&paper),
        sent_by: names.of(paper.sent_by).to_owned(),
        filed_by: paper.filed_by.map(|it| names.of(it).to_owned()),
        newer: seen(&view, paper.replaced_by).await?,
        joined: seen(&view, paper.joined_to).await?,
        older: filed.filter(|it| it.replaced_by == Some(id)).collect(),
        text: proposer.text(id).cloned().unwrap_or_default(),
        proposal: proposer.of(&paper).filter(|_| paper.waits()),
        alike: if paper.waits() { finder.named(&view, id).await? } else { Vec::new() },
        same: if paper.struck { finder.same(id) } else { Vec::new() },
        about: about::of(&view, &paper).await?,
        may_change: grant.may::<Change<Papers>>(),
        may_task: grant.may::<Change<Tasks>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        row: Row::of(paper, &senders, &page),
        page,
    })
}

async fn seen(view: &View<Papers>, id: Option<PaperId>) -> Result<Option<Paper>> {
    let Some(id) = id else { return Ok(None) };
    match store::find(view, id).await {
        Err(Error::NotFound) => Ok(None),
        found => found.map(Some),
    }
}
