//! Taking back, in one go, what was accepted from a list: each medicine is as it was before. Where
//! one was changed since, nothing is taken back, and the page says which. A stop that is taken back
//! was none: no days without the medicine are noted for it.

use super::{
    model::SecondList,
    settled::{SettledRow, Wrote},
    settled_store, store,
};
use crate::{
    base::{ids::SecondListId, text::Line},
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::{Done, View},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors, Press},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::medicines::{
        before::Before, model::Medicine, store as medicines, turns::store as turns,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use time::Date;

#[derive(Template, WebTemplate)]
#[template(path = "reconciliation/take_back.html")]
pub struct TakeBackPage {
    page: Page,
    typed: Typed,
    list: SecondList,
    written: Vec<Written>,
}

/// A row that wrote into the record, and the medicine as it is now.
struct Written {
    row: SettledRow,
    medicine: Medicine,
}

async fn written(view: &View<Clinical>, list: &SecondList) -> Result<Vec<Written>> {
    let mut all = Vec::new();
    for row in settled_store::rows(view, Some(list.id)).await? {
        if let Some(id) = row.medicine_id.filter(|_| row.stands_written()) {
            all.push(Written { medicine: medicines::find(view, id).await?, row });
        }
    }
    Ok(all)
}

pub async fn taking_back(
    grant: Grant<Change<Clinical>>,
    At(id): At<SecondListId>,
    typed: Typed,
) -> Result<TakeBackPage> {
    let view = grant.view().await?;
    let list = store::find(&view, id).await?;
    let written = written(&view, &list).await?;
    Ok(TakeBackPage { page: grant.page("Take it all back"), typed, list, written })
}

pub async fn take_back(
    grant: Grant<Change<Clinical>>,
    At(id): At<SecondListId>,
    form: Form<Press>,
) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let list = store::find(&write, id).await?;
    let written = written(&write, &list).await?;
    untouched(&written)?;
    let list = list.opened_at(press.version)?;
    for Written { row, medicine } in &written {
        medicines::save(&mut write, medicine, &as_before(row, medicine, &list, grant.today())?)
            .await?;
        settled_store::save_row(&mut write, row, &row.stood_back()).await?;
        if let Some(id) = row.turn_id {
            let turn = turns::find(&write, id).await?;
            turns::save(&mut write, &turn, &turn.struck()).await?;
        }
    }
    if !list.is_struck() {
        store::save(&mut write, &list, &list.reopened()).await?;
    }
    let line = format!("Taken back: {} medicines are as before", written.len());
    write.commit().await?.then(urls::second_list(id)).saying(line)
}

/// Every medicine is as accepting left it.
fn untouched(written: &[Written]) -> Result<()> {
    if written.is_empty() {
        return Err(FormErrors::at("taken", "Nothing that was accepted stands any more.").into());
    }
    let changed = written.iter().filter(|it| it.row.after_version != Some(it.medicine.version));
    let changed: Vec<_> = changed.map(|it| it.medicine.title()).collect();
    if changed.is_empty() {
        return Ok(());
    }
    let says = format!(
        "Nothing was taken back, because this was changed since: {}. Put it right on its own page.",
        changed.join(", ")
    );
    Err(FormErrors::at("taken", says).into())
}

fn as_before(row: &SettledRow, now: &Medicine, list: &SecondList, today: Date) -> Result<Medicine> {
    if row.wrote == Wrote::Added {
        let reason = Line::from(format!("taken back: accepted from the {}", list.title()));
        return Ok(now.struck(reason, today));
    }
    let before = row.before.as_deref().and_then(Before::read);
    let before = before.ok_or_else(|| Error::Internal("a kept medicine does not read".into()))?;
    Ok(before.restored(now))
}
