//! What else is done to a paper: replaced by a newer version, said to stand again, struck, brought back.
//! Each has a page that posts to itself.

use super::{
    form::{Mistake, Replaced},
    model::Paper,
    store,
};
use crate::base::ids::PaperId;
use crate::platform::{
    auth::{
        area::Papers,
        grant::{Change, Grant},
    },
    db::{Done, View, Write},
    error::{Error, Result},
    web::{
        form::{Form, FormErrors, Press},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

type Changing = Grant<Change<Papers>>;

/// What one of these pages asks for.
enum Asks {
    Which(Vec<Paper>),
    Reason,
    Nothing,
}

#[derive(Template, WebTemplate)]
#[template(path = "papers/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    paper: Paper,
    asks: Asks,
    verb: &'static str,
    explains: &'static str,
}

fn act(
    grant: &Changing,
    (typed, paper): (Typed, Paper),
    (verb, asks): (&'static str, Asks),
    explains: &'static str,
) -> ActPage {
    let page = grant.page(format!("{verb}: {}", paper.title()));
    ActPage { page, typed, paper, asks, verb, explains }
}

async fn keep(mut write: Write<Papers>, (old, new): (&Paper, &Paper), says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    write.commit().await?.then(urls::paper(new.id)).saying(says)
}

/// One that is filed.
async fn filed(view: &View<Papers>, id: PaperId) -> Result<Paper> {
    let found = store::find(view, id).await?;
    if found.is_filed() { Ok(found) } else { Err(Error::NotFound) }
}

/// Those that could stand in its place, of the same kind first.
async fn others(view: &View<Papers>, of: &Paper) -> Result<Vec<Paper>> {
    let mut all = store::filed(view).await?;
    all.retain(|it| it.stands() && it.id != of.id);
    all.sort_by_key(|it| (it.kind != of.kind, std::cmp::Reverse(it.id)));
    Ok(all)
}

/// The newer version, by who came from both side by side.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    by: String,
}

pub async fn replacing(
    grant: Changing,
    At(id): At<PaperId>,
    Query(asked): Query<Asked>,
    typed: Typed,
) -> Result<ActPage> {
    let view = grant.view().await?;
    let paper = filed(&view, id).await?;
    let asks = Asks::Which(others(&view, &paper).await?);
    let typed = typed.with("replaced_by", asked.by);
    let explains = "The newer version is filed first, and then chosen here. This one stays, and leads to it from now on.";
    Ok(act(&grant, (typed, paper), ("Replace by a newer version", asks), explains))
}

pub async fn replace(grant: Changing, At(id): At<PaperId>, form: Form<Replaced>) -> Done {
    let Replaced { by, version } = form.parse()?;
    let write = grant.write().await?;
    let before = filed(&write, id).await?.opened_at(version)?;
    if !others(&write, &before).await?.iter().any(|it| it.id == by) {
        return Err(FormErrors::at("replaced_by", "Choose the newer version.").into());
    }
    keep(write, (&before, &before.replaced(by)), "Replaced; it stays, and says by which").await
}

pub async fn standing_again(grant: Changing, At(id): At<PaperId>, typed: Typed) -> Result<ActPage> {
    let paper = filed(&grant.view().await?, id).await?;
    let explains =
        "No other paper stands in its place after all. It is listed again beside the others.";
    Ok(act(&grant, (typed, paper), ("It stands again", Asks::Nothing), explains))
}

pub async fn stand_again(grant: Changing, At(id): At<PaperId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = filed(&write, id).await?.opened_at(press.version)?;
    keep(write, (&before, &before.standing_again()), "It stands again").await
}

pub async fn striking(grant: Changing, At(id): At<PaperId>, typed: Typed) -> Result<ActPage> {
    let paper = store::find(&grant.view().await?, id).await?;
    let explains = "Only for what was a mistake: it leaves the tray and the lists. The history keeps it with its pages, and it can be brought back from there.";
    Ok(act(&grant, (typed, paper), ("Strike", Asks::Reason), explains))
}

pub async fn strike(grant: Changing, At(id): At<PaperId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    store::save(&mut write, &before, &before.struck(reason)).await?;
    let back = if before.waits() { urls::tray() } else { urls::papers() };
    write.commit().await?.then(back).saying("Struck; its history keeps it")
}

pub async fn bringing_back(grant: Changing, At(id): At<PaperId>, typed: Typed) -> Result<ActPage> {
    let paper = store::find(&grant.view().await?, id).await?;
    let explains = "It is in the tray or in the lists again, as it was.";
    Ok(act(&grant, (typed, paper), ("Bring back", Asks::Nothing), explains))
}

pub async fn bring_back(grant: Changing, At(id): At<PaperId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    keep(write, (&before, &before.brought_back()), "It is back").await
}
