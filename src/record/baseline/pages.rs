//! How the person usually is: the page, its form, and its check.

use super::{
    daily::{ACTIVITIES, Activity, Manner},
    form::{Against, Described},
    model::{Baseline, usually_is},
    store,
};
use crate::platform::{
    audit::Touch,
    auth::{
        area::{Essentials, History},
        grant::{Change, Grant, See},
    },
    db::Done,
    error::{Error, Result},
    web::{
        form::{Choice, Form},
        page::Page,
        stamp::Stamp,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Essentials>>;

/// The title says whose usual self it is, by the name in the page's head.
fn titled(mut page: Page, words: impl Fn(&str) -> String) -> (Page, String) {
    let name = page.person.as_ref().map(|it| it.name.clone()).unwrap_or_default();
    page.title = words(&name);
    (page, name)
}

#[derive(Template, WebTemplate)]
#[template(path = "baseline/show.html")]
pub struct ShowPage {
    page: Page,
    name: String,
    baseline: Baseline,
    stamp: Stamp,
    touch: Option<Touch>,
    may_change: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Essentials>>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let (baseline, names) = (store::find(&view).await?, view.names().await?);
    let touch = view.last_change("baseline", baseline.id.into()).await?;
    let (page, name) = titled(grant.page(""), usually_is);
    Ok(ShowPage {
        stamp: Stamp::of(&page, &names, baseline.check()),
        may_change: grant.may::<Change<Essentials>>(),
        may_read_history: grant.may::<See<History>>(),
        page,
        name,
        baseline,
        touch,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "baseline/edit.html")]
pub struct EditPage {
    page: Page,
    name: String,
    typed: Typed,
    version: i64,
    touch: Option<Touch>,
}

impl EditPage {
    fn activities(&self) -> &'static [Activity] {
        &ACTIVITIES
    }

    fn manners(&self) -> Vec<String> {
        Manner::ALL.iter().map(Manner::to_string).collect()
    }
}

pub async fn edit(grant: Changing, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let baseline = store::find(&view).await?;
    let touch = view.last_change("baseline", baseline.id.into()).await?;
    let (page, name) = titled(grant.page(""), |name| format!("Write down how {name} usually is"));
    let typed = typed.over(&baseline);
    let typed =
        if baseline.said_on.is_none() { typed.with_day("said_on", grant.today()) } else { typed };
    Ok(EditPage { page, name, typed, version: baseline.version, touch })
}

pub async fn save(grant: Changing, form: Form<Described>) -> Done {
    let Described { baseline, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write).await?.opened_at(version)?;
    let after = before.written(baseline, grant.role(), grant.today())?;
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::usual()).saying("Saved")
}

#[derive(Template, WebTemplate)]
#[template(path = "baseline/check.html")]
pub struct CheckPage {
    page: Page,
    name: String,
    typed: Typed,
    baseline: Baseline,
}

pub async fn checking(grant: Changing, typed: Typed) -> Result<CheckPage> {
    let baseline = store::find(&grant.view().await?).await?;
    if baseline.is_empty() {
        return Err(Error::NotFound);
    }
    let (page, name) = titled(grant.page(""), |name| format!("Check: how {name} usually is"));
    Ok(CheckPage { page, name, typed, baseline })
}

pub async fn check(grant: Changing, form: Form<Against>) -> Done {
    let Against { against, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write).await?.opened_at(version)?;
    if before.is_empty() {
        return Err(Error::NotFound);
    }
    let check = write.check(against);
    store::save(&mut write, &before, &before.checked(check)).await?;
    write.commit().await?.then(urls::usual()).saying("Checked")
}
