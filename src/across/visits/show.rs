//! One note: what was said and decided, and what came of it, each with its own page: answers, changes
//! of medicines, tests and follow-ups, the next appointment; and who has read it.

use super::meeting::Met;
use crate::{
    across::{
        history::titles::{Thing, Titles},
        papers::about,
        tasks::seen,
        turns::shown,
    },
    base::ids::{MedicineId, VisitId},
    family::tasks::model::Task,
    platform::{
        audit::{Names, Touch},
        auth::{
            area::{Clinical, History, Members, Tasks},
            grant::{Change, Grant, See},
        },
        db::View,
        error::Result,
        web::{page::Page, path::At, urls},
    },
    record::{
        medicines::{
            model::Medicine,
            turns::store::{self as turns, Wanted},
        },
        papers::model::Paper,
        visits::{
            model::{Item, Reader, Visit, What},
            store,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;
use std::collections::HashMap;

#[derive(Template, WebTemplate)]
#[template(path = "visits/show.html")]
pub struct ShowPage {
    page: Page,
    visit: Visit,
    by: String,
    present: String,
    met: Option<Met>,
    next: Option<Thing>,
    said: Vec<SaidRow>,
    medicines: Vec<Thing>,
    follow: Vec<FollowRow>,
    papers: Vec<Paper>,
    readers: Vec<(Reader, String)>,
    /// Whether the reader of the page was asked to read it, and has not said that she has.
    asked: bool,
    touch: Option<Touch>,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
}

/// What was said to one question.
struct SaidRow {
    question: Thing,
    item: Item,
}

impl SaidRow {
    fn is_answered(&self) -> bool {
        self.item.what == What::Answered
    }

    fn was_asked(&self) -> bool {
        self.item.what == What::Asked
    }
}

/// A test or a follow-up, with its task as far as the reader sees it.
struct FollowRow {
    item: Item,
    task: Option<(Task, String)>,
}

impl FollowRow {
    fn is_test(&self) -> bool {
        self.item.what == What::Test
    }
}

pub async fn show(grant: Grant<See<Clinical>>, At(id): At<VisitId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let visit = store::find(&view, id).await?;
    let (names, titles) = (view.names().await?, Titles::read(&view, &[]).await?);
    let items = store::items(&view, Some(id)).await?;
    let readers = store::readers(&view, id).await?;
    let own = |it: &Reader| it.member_id == grant.member() && it.read_at.is_none();
    let met = match visit.appointment_id.zip(visit.occurrence_on) {
        Some(key) => Met::find(&view, key).await.ok(),
        None => None,
    };
    Ok(ShowPage {
        page: grant.page(visit.title()),
        by: names.of(visit.entered_by).to_owned(),
        present: present(&visit, &names),
        met,
        next: visit.next_id.and_then(|it| titles.thing("appointment", it.into())),
        said: said(&items, &titles),
        medicines: turned(&view, &items, &shown(&view).await?).await?,
        papers: about::papers(&view, ("visit", id.into())).await?,
        follow: follow(&view, &items, &names).await?,
        asked: readers.iter().any(own),
        readers: readers
            .into_iter()
            .map(|it| (it.clone(), names.of(it.member_id).into()))
            .collect(),
        touch: view.last_change("visit", id.into()).await?.filter(|it| !it.added),
        may_change: grant.may::<Change<Clinical>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        visit,
    })
}

/// "Ines, Juno; the neighbor"
fn present(visit: &Visit, names: &Names) -> String {
    let members: Vec<_> = visit.members().into_iter().map(|it| names.of(it).to_owned()).collect();
    let members = Some(members.join(", ")).filter(|it| !it.is_empty());
    let others = visit.others.as_ref().map(ToString::to_string);
    members.into_iter().chain(others).collect::<Vec<_>>().join("; ")
}

/// A question that is not there for the reader leaves no trace here either.
fn said(items: &[Item], titles: &Titles) -> Vec<SaidRow> {
    let row = |item: &Item| {
        let question = titles.thing("question", item.question_id?.into())?;
        Some(SaidRow { question, item: item.clone() })
    };
    items.iter().filter_map(row).collect()
}

/// "Warfarin 2.5 mg: put on hold from 9 March 2026"; what was struck since is told no more, nor, to an
/// aide, what is not taken any more.
async fn turned(
    view: &View<Clinical>,
    items: &[Item],
    shown: &HashMap<MedicineId, Medicine>,
) -> Result<Vec<Thing>> {
    let all = turns::list(view, &Wanted::default()).await?;
    let thing = |item: &Item| {
        let turn = all.iter().find(|it| Some(it.id) == item.turn_id)?;
        let medicine = shown.get(&turn.medicine_id)?;
        let title = format!("{}: {}. {}", medicine.title(), turn.sentence(), turn.reason);
        Some(Thing { title, page: Some(urls::turn(turn.id)) })
    };
    Ok(items.iter().filter_map(thing).collect())
}

async fn follow(view: &View<Clinical>, items: &[Item], names: &Names) -> Result<Vec<FollowRow>> {
    let mut rows = Vec::new();
    for item in items.iter().filter(|it| matches!(it.what, What::Test | What::FollowUp)) {
        let task = match (item.task_id, view.area::<Tasks>()) {
            (Some(id), Some(view)) => seen::find(&view, id).await.ok(),
            _ => None,
        };
        let task = task.map(|it| {
            let stands = stands(&it, names);
            (it, stands)
        });
        rows.push(FollowRow { item: item.clone(), task });
    }
    Ok(rows)
}

/// "done", "Bram has it", "Bram was asked", "nobody has it yet"
fn stands(task: &Task, names: &Names) -> String {
    let of = |it| names.of(it).to_owned();
    match (task.owner_id, task.offered_to) {
        _ if task.is_done() => "done".to_owned(),
        _ if task.is_closed() || task.struck => "let go".to_owned(),
        (Some(owner), _) => format!("{} has it", of(owner)),
        (None, Some(asked)) => format!("{} was asked", of(asked)),
        (None, None) => "nobody has it yet".to_owned(),
    }
}
