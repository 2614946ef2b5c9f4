//! A paper and one that looks like it, side by side, with what is known of both; and the decision.

use super::{
    super::{Changing, Seeing},
    found::{Finder, Twin},
};
use crate::{
    base::{
        ids::{PaperId, PaperPageId},
        text::Line,
    },
    platform::{
        audit::Names,
        auth::{area::Papers, grant::Change},
        db::{Done, View},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors, FromForm, Reader},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::papers::{
        alike::{pair::Answer, pair_store as pairs, store as looks},
        model::Paper,
        page::{PaperPage, size},
        page_store, store,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

/// What stands in the field for the reason: without the title of the other, which not everyone who reads
/// the reason may see.
const REASON: &str = "The same paper is here already";

/// One of the two, with the page by which they are alike.
pub struct Side {
    paper: Paper,
    leaf: PaperPage,
    pages: usize,
    size: String,
    sent_by: String,
}

/// The two, and why they are shown.
pub struct Beside {
    own: Side,
    other: Side,
    why: String,
}

/// One that was said to be another paper.
pub struct Apart {
    paper: Paper,
    by: String,
    at: String,
}

#[derive(Template, WebTemplate)]
#[template(path = "papers/alike.html")]
pub struct AlikePage {
    page: Page,
    typed: Typed,
    paper: Paper,
    beside: Option<Beside>,
    /// What else looks like it.
    more: Vec<Paper>,
    apart: Vec<Apart>,
    not_seen: Option<String>,
    may_change: bool,
}

/// Which of those that look like it.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    with: String,
}

/// One that waits or is filed.
async fn open(view: &View<Papers>, id: PaperId) -> Result<Paper> {
    let found = store::find(view, id).await?;
    if found.waits() || found.is_filed() && !found.struck {
        Ok(found)
    } else {
        Err(Error::NotFound)
    }
}

pub async fn show(
    grant: Seeing,
    At(id): At<PaperId>,
    Query(asked): Query<Asked>,
    typed: Typed,
) -> Result<AlikePage> {
    let view = grant.view().await?;
    let (paper, names) = (open(&view, id).await?, view.names().await?);
    let mut finder = Finder::read(&view).await?;
    let twins = finder.of(&view, id).await?;
    let wanted = if typed.is_again() { typed.value("other").to_owned() } else { asked.with };
    let chosen = twins.iter().position(|it| it.paper.id.to_string() == wanted).unwrap_or(0);
    let page = grant.page(format!("What looks like {}", paper.title()));
    let apart = finder.apart(id).into_iter().map(|(pair, other)| Apart {
        paper: other.clone(),
        by: names.of(pair.said_by).to_owned(),
        at: page.when(&pair.said_at),
    });
    let apart = apart.collect();
    let more = twins.iter().enumerate().filter(|(at, _)| *at != chosen);
    Ok(AlikePage {
        more: more.map(|(_, it)| it.paper.clone()).collect(),
        beside: match twins.into_iter().nth(chosen) {
            Some(twin) => beside(&view, (&paper, twin), &names).await?,
            None => None,
        },
        typed: typed.with("reason", REASON),
        not_seen: looks::not_seen(&view, &paper).await?,
        may_change: grant.may::<Change<Papers>>(),
        apart,
        paper,
        page,
    })
}

async fn beside(
    view: &View<Papers>,
    (paper, twin): (&Paper, Twin),
    names: &Names,
) -> Result<Option<Beside>> {
    let own = side(view, (paper, twin.own), names).await?;
    let other = side(view, (&twin.paper, twin.page), names).await?;
    let why = twin.why.says();
    Ok(own.zip(other).map(|(own, other)| Beside { own, other, why }))
}

async fn side(
    view: &View<Papers>,
    (paper, by): (&Paper, PaperPageId),
    names: &Names,
) -> Result<Option<Side>> {
    let pages = page_store::of(view, paper).await?;
    let leaf = pages.iter().find(|it| it.id == by).cloned();
    Ok(leaf.map(|leaf| Side {
        pages: pages.len(),
        size: size(pages.iter().map(|it| it.bytes).sum()),
        sent_by: names.of(paper.sent_by).to_owned(),
        paper: paper.clone(),
        leaf,
    }))
}

/// What someone says of this paper and another.
pub struct Answered {
    other: PaperId,
    answer: Answer,
    /// Why it is struck, where it is the same paper.
    reason: Option<Line>,
    version: i64,
}

impl FromForm for Answered {
    fn read(form: &mut Reader) -> std::result::Result<Answered, FormErrors> {
        let (other, answer) = (form.raw("other").parse().ok(), form.choice("answer"));
        if other.is_none() {
            form.wrong("other", "Choose the other paper from the page.");
        }
        let reason = match answer {
            Some(Answer::Same) => form.needed_line("reason", "Enter why it is struck."),
            _ => None,
        };
        let version = form.version();
        form.finish(|| Some(Answered { other: other?, answer: answer?, reason, version }))
    }
}

pub async fn answer(grant: Changing, At(id): At<PaperId>, form: Form<Answered>) -> Done {
    let said = form.parse()?;
    let mut write = grant.write().await?;
    let before = open(&write, id).await?.opened_at(said.version)?;
    let other = open(&write, said.other).await?;
    if other.id == before.id {
        return Err(FormErrors::at("other", "Choose the other paper from the page.").into());
    }
    pairs::say(&mut write, (before.id, other.id), said.answer).await?;
    if let Some(reason) = said.reason {
        store::save(&mut write, &before, &before.struck(reason)).await?;
    }
    let (to, says) = match said.answer {
        Answer::Same if before.waits() => (urls::tray(), "Struck; its history keeps it"),
        Answer::Same => (urls::papers(), "Struck; its history keeps it"),
        Answer::Two => (urls::paper(id), "Kept as two papers; nobody is asked again"),
        Answer::NotSaid => (urls::paper_alike(id), "It is asked again"),
    };
    write.commit().await?.then(to).saying(says)
}
