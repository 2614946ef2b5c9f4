//! Putting a pile in the tray, and what became of each file of it.

use super::{
    Changing, Seeing,
    arrival::{self, Came, Told},
};
use crate::{
    base::ids::ArrivalId,
    platform::{
        auth::area::Papers,
        db::{Done, View, Write},
        error::{Error, Result},
        files::{Files, paper::MOST_BYTES},
        web::{
            form::FormErrors,
            page::Page,
            path::At,
            pile::{Arrived, MOST_FILES, Sent},
            typed::Typed,
            urls,
        },
    },
    record::papers::{model::Paper, page::PaperPage, page_store as pages, store},
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "papers/add.html")]
pub struct AddPage {
    page: Page,
    typed: Typed,
}

impl AddPage {
    /// Bytes of a file, and files of a pile: for the script, which need not send the rest.
    fn most(&self) -> (u64, usize) {
        (MOST_BYTES, MOST_FILES)
    }
}

pub async fn blank(grant: Changing, typed: Typed) -> AddPage {
    AddPage { page: grant.page("Put papers in the tray"), typed }
}

pub async fn add(grant: Changing, arrived: Arrived) -> Done {
    if arrived.files().is_empty() {
        return Err(FormErrors::at("papers", "Choose one or more photos or PDFs.").into());
    }
    let mut write = grant.write().await?;
    let mut told = Vec::new();
    for sent in arrived.files() {
        told.push(keep(&mut write, &grant.house().files, sent).await?);
    }
    let id = arrival::add(&write, &told).await?;
    let kept = told.iter().filter(|it| matches!(it.came, Came::Kept(_))).count();
    let says = format!("{kept} of {} put in the tray", told.len());
    let done = write.commit().await?;
    arrived.is_told().await;
    done.then(urls::arrival(id)).saying(says)
}

/// A file becomes a paper of one page; its bytes have their place before its row is there.
async fn keep(write: &mut Write<Papers>, files: &Files, sent: &Sent) -> Result<Told> {
    let name = sent.name.as_ref();
    let file = match &sent.file {
        Ok(file) => file,
        Err(unfit) => return Ok(Told::not(name, unfit.says())),
    };
    if let Some(same) = pages::with_file(write, &file.sum).await? {
        return Ok(Told::same(name, same.id));
    }
    files.settle(file).await?;
    let by = (write.member(), write.at());
    let id = store::add(write, &Paper::arrived(write.person(), sent.name.clone(), by)).await?;
    let page = PaperPage::arrived(write.person(), id, file);
    pages::add(write, &page).await?;
    Ok(Told::kept(name, id))
}

#[derive(Template, WebTemplate)]
#[template(path = "papers/arrived.html")]
pub struct ArrivedPage {
    page: Page,
    kept: Vec<(String, Paper)>,
    same: Vec<(String, Paper)>,
    not: Vec<(String, String)>,
    waiting: usize,
}

pub async fn show(grant: Seeing, At(id): At<ArrivalId>) -> Result<ArrivedPage> {
    let view = grant.view().await?;
    let (mut kept, mut same, mut not) = (Vec::new(), Vec::new(), Vec::new());
    for Told { name, came } in arrival::find(&view, id).await? {
        match came {
            Came::Kept(id) => kept.extend(seen(&view, id).await?.map(|it| (name, it))),
            Came::Same(id) => same.extend(seen(&view, id).await?.map(|it| (name, it))),
            Came::Not(why) => not.push((name, why)),
        }
    }
    let waiting = store::waiting(&view).await?.len();
    Ok(ArrivedPage { page: grant.page("What arrived"), kept, same, not, waiting })
}

/// A paper, where the reader sees it by now.
async fn seen(view: &View<Papers>, id: i64) -> Result<Option<Paper>> {
    match store::find(view, id.into()).await {
        Err(Error::NotFound) => Ok(None),
        found => found.map(Some),
    }
}
