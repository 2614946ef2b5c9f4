//! Joining pictures that wait in the tray to a paper, as its further pages, in the order in which they came.
//!
//! A PDF is a paper of its own. Whoever does not decide about the record is offered only what nobody is kept
//! from: else a page would show itself to someone from whom it is hidden.

use super::Changing;
use crate::{
    base::ids::PaperId,
    platform::{
        auth::area::Papers,
        db::{Done, View, Write},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors, FromForm, Reader},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::papers::{model::Paper, page::PaperPage, page_store as pages, store},
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "papers/join.html")]
pub struct JoinPage {
    page: Page,
    typed: Typed,
    paper: Paper,
    others: Vec<(Paper, PaperPage)>,
    /// How many more wait than are shown.
    more: usize,
}

impl JoinPage {
    fn is_ticked(&self, id: &PaperId) -> bool {
        self.typed.among("pages", id.to_string(), &false)
    }
}

/// So many are shown to choose from.
const SHOWN: usize = 20;

/// The papers whose pages are to be joined.
pub struct Chosen {
    pages: Vec<PaperId>,
    version: i64,
}

impl FromForm for Chosen {
    fn read(form: &mut Reader) -> std::result::Result<Chosen, FormErrors> {
        let ticked: std::result::Result<Vec<PaperId>, _> =
            form.every("pages").iter().map(|it| it.parse()).collect();
        if !matches!(&ticked, Ok(some) if !some.is_empty()) {
            form.wrong("pages", "Tick what belongs to this paper.");
        }
        let version = form.version();
        form.finish(|| Some(Chosen { pages: ticked.ok()?, version }))
    }
}

/// A paper of pictures that can have more.
async fn open(view: &View<Papers>, id: PaperId) -> Result<(Paper, Vec<PaperPage>)> {
    let paper = store::find(view, id).await?;
    let own = pages::of(view, &paper).await?;
    let open = !paper.struck && !own.is_empty() && own.iter().all(PaperPage::is_picture);
    if open { Ok((paper, own)) } else { Err(Error::NotFound) }
}

/// The pictures that wait, each with its first page; those that came after it in front.
async fn others(view: &View<Papers>, of: &Paper) -> Result<Vec<(Paper, PaperPage)>> {
    let mut waiting = store::waiting(view).await?;
    waiting.retain(|it| it.id != of.id);
    waiting.sort_by_key(|it| (it.id < of.id, it.id));
    let mut found = Vec::new();
    for (paper, first) in pages::first_of(view, waiting).await? {
        let offered = view.decides() || !store::is_close(view, &paper).await?;
        found.extend(first.filter(|it| it.is_picture() && offered).map(|it| (paper, it)));
    }
    Ok(found)
}

pub async fn choose(grant: Changing, At(id): At<PaperId>, typed: Typed) -> Result<JoinPage> {
    let view = grant.view().await?;
    let (paper, _) = open(&view, id).await?;
    let mut others = others(&view, &paper).await?;
    let more = others.len().saturating_sub(SHOWN);
    others.truncate(SHOWN);
    Ok(JoinPage { page: grant.page("Further pages of it"), typed, paper, others, more })
}

pub async fn join(grant: Changing, At(id): At<PaperId>, form: Form<Chosen>) -> Done {
    let chosen = form.parse()?;
    let mut write = grant.write().await?;
    let (paper, own) = open(&write, id).await?;
    let paper = paper.opened_at(chosen.version)?;
    let mut ticked = others(&write, &paper).await?;
    ticked.retain(|(it, _)| chosen.pages.contains(&it.id));
    if ticked.len() != chosen.pages.len() {
        let says = "Something that was ticked is not in the tray any more. Tick again.";
        return Err(FormErrors::at("pages", says).into());
    }
    ticked.sort_by_key(|(it, _)| it.id);
    let mut place = own.len() as i64;
    for (other, _) in &ticked {
        place = take(&mut write, other, (&paper, place)).await?;
    }
    let says = format!("Joined; it has {place} pages now");
    write.commit().await?.then(urls::paper(id)).saying(says)
}

/// All pages of one paper go behind the last of the other.
async fn take(
    write: &mut Write<Papers>,
    from: &Paper,
    (to, mut place): (&Paper, i64),
) -> Result<i64> {
    for page in pages::of(write, from).await? {
        place += 1;
        pages::save(write, &page, &page.at(to.id, place)).await?;
    }
    store::save(write, from, &from.joined(to.id)).await?;
    Ok(place)
}
