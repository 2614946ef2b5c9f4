//! What is done to a list as a whole: finished, struck, brought back.

use super::{compare, form::Mistake, model::SecondList, settled::SettledRow, settled_store, store};
use crate::{
    base::ids::SecondListId,
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::{Done, Write},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors, Press},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "reconciliation/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    list: SecondList,
    asks_reason: bool,
    verb: &'static str,
    explains: &'static str,
}

async fn act(
    grant: &Changing,
    id: SecondListId,
    typed: Typed,
    (verb, asks_reason, explains): (&'static str, bool, &'static str),
) -> Result<ActPage> {
    let list = store::find(&grant.view().await?, id).await?;
    let page = grant.page(format!("{verb}: {}", list.title()));
    Ok(ActPage { page, typed, list, asks_reason, verb, explains })
}

async fn keep(mut write: Write<Clinical>, old: &SecondList, new: &SecondList, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    write.commit().await?.then(urls::second_list(new.id)).saying(says)
}

pub async fn finishing(grant: Changing, At(id): At<SecondListId>, typed: Typed) -> Result<ActPage> {
    let explains = "Every row must be settled: accepted, kept as the record has it, or asked. The comparison then stays readable as it was.";
    act(&grant, id, typed, ("Finish", false, explains)).await
}

pub async fn finish(grant: Changing, At(id): At<SecondListId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?;
    let waiting = compare::read(&write, &before).await?.open.len();
    let after = before.finished(waiting, grant.today())?;
    let before = before.opened_at(press.version)?;
    if !before.is_open() {
        return Err(Error::Stale);
    }
    keep(write, &before, &after, "Finished: every row is settled").await
}

pub async fn striking(grant: Changing, At(id): At<SecondListId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for a list that was a mistake, like another person's. What was accepted from it must be taken back first.";
    act(&grant, id, typed, ("Strike", true, explains)).await
}

pub async fn strike(grant: Changing, At(id): At<SecondListId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let rows = settled_store::rows(&write, Some(id)).await?;
    if rows.iter().any(SettledRow::stands_written) {
        let says = "Something was accepted from this list. Take it back first.";
        return Err(FormErrors::at("reason", says).into());
    }
    keep(write, &before, &before.struck(reason), "Struck; its history keeps it").await
}

pub async fn bringing_back(
    grant: Changing,
    At(id): At<SecondListId>,
    typed: Typed,
) -> Result<ActPage> {
    act(&grant, id, typed, ("Bring back", false, "It is open again, as it was.")).await
}

pub async fn bring_back(grant: Changing, At(id): At<SecondListId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    keep(write, &before, &before.reopened(), "It is open again").await
}
