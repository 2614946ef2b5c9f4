//! The supply of all medicines in one list, by the day to act, and the working days that a
//! pharmacy needs where no fill says it.

use super::{
    form::Days,
    model::Setting,
    standing::{self, Standing},
    store,
};
use crate::platform::{
    auth::{
        area::Clinical,
        grant::{Change, Grant, See},
    },
    db::Done,
    error::{Error, Result},
    web::{form::Form, page::Page, typed::Typed, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use time::Date;

#[derive(Template, WebTemplate)]
#[template(path = "medicines/stock/supply.html")]
pub struct SupplyPage {
    page: Page,
    past: Vec<Row>,
    next: Vec<Row>,
    beside: Vec<Row>,
    today: Date,
    pharmacy_days: i64,
    may_change: bool,
}

/// One medicine as a line of the list.
struct Row {
    standing: Standing,
    words: String,
    act: Option<String>,
}

pub async fn supply(grant: Grant<See<Clinical>>) -> Result<SupplyPage> {
    let (view, today) = (grant.view().await?, grant.today());
    let page = grant.page("Supply of medicines");
    let living = page.person.as_ref().is_none_or(|it| it.died.is_none());
    let (mut past, mut next, mut beside) = (Vec::new(), Vec::new(), Vec::new());
    for standing in standing::all(&view, today).await? {
        let act = standing.act_words(today).filter(|_| living);
        let to = match (&act, standing.is_past(today)) {
            (None, _) => &mut beside,
            (Some(_), true) => &mut past,
            (Some(_), false) => &mut next,
        };
        to.push(Row { words: standing.words(today), act, standing });
    }
    let pharmacy_days = store::setting(&view).await?.pharmacy_days;
    let may_change = grant.may::<Change<Clinical>>();
    Ok(SupplyPage { page, past, next, beside, today, pharmacy_days, may_change })
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/stock/days.html")]
pub struct SettingPage {
    page: Page,
    typed: Typed,
    kept: Setting,
}

pub async fn setting(grant: Grant<Change<Clinical>>, typed: Typed) -> Result<SettingPage> {
    let kept = store::setting(&grant.view().await?).await?;
    let page = grant.page("How long the pharmacy needs");
    Ok(SettingPage { page, typed: typed.over(&kept), kept })
}

pub async fn set(grant: Grant<Change<Clinical>>, form: Form<Days>) -> Done {
    let Days { pharmacy_days, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::setting(&write).await?;
    if before.version != version {
        return Err(Error::Stale);
    }
    let after = Setting { pharmacy_days, ..before.clone() };
    store::save_setting(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::supply()).saying("Saved")
}
