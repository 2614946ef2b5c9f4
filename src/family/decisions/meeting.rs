//! The family meeting: what is to be decided, and what is to be looked at again, in the order the
//! family sets or by day; on paper with room to write under each.

use super::{
    model::Decision,
    pages::{Changing, Told},
    store,
};
use crate::base::{
    day,
    ids::DecisionId,
    order::{Step, places},
};
use crate::platform::{
    auth::{
        area::Clinical,
        grant::{Change, Grant, See},
    },
    db::{Done, View},
    error::Result,
    web::{
        form::{Form, Press},
        page::Page,
        path::At,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;
use time::Date;

/// One of them, and since when it waits.
pub struct Item {
    kept: Decision,
    heard: Option<String>,
    since: Date,
    due: bool,
}

impl Item {
    /// "to be decided, put up 3 March 2026"
    fn says(&self) -> String {
        match self.due {
            true => format!("look again: the day was {}", day::words(self.since)),
            false => format!("to be decided; put up {}", day::words(self.since)),
        }
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "decisions/meeting.html")]
pub struct MeetingPage {
    page: Page,
    items: Vec<Item>,
    by_day: bool,
    may_change: bool,
}

impl MeetingPage {
    fn may_move(&self) -> bool {
        self.may_change && !self.by_day
    }

    fn on(&self) -> String {
        day::words(self.page.today())
    }
}

/// In which order.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    by: String,
}

pub async fn show(
    _: Told,
    grant: Grant<See<Clinical>>,
    Query(asked): Query<Asked>,
) -> Result<MeetingPage> {
    let view = grant.view().await?;
    let names = view.names().await?;
    let (today, by_day) = (grant.today(), asked.by == "day");
    let entered = |it: &Decision| grant.zone().day(it.entered_at);
    let item = |kept: Decision| {
        let due = kept.is_due(today);
        let since = kept.look_again_on.filter(|_| due).unwrap_or_else(|| entered(&kept));
        Item { heard: kept.heard_names(&names), since, due, kept }
    };
    let mut items: Vec<Item> = gathered(&view, today).await?.into_iter().map(item).collect();
    if by_day {
        items.sort_by_key(|it| it.since);
    }
    let may_change = grant.may::<Change<Clinical>>();
    Ok(MeetingPage { page: grant.page("Family meeting"), items, by_day, may_change })
}

async fn gathered(view: &View<Clinical>, today: Date) -> Result<Vec<Decision>> {
    let mut all = store::list(view).await?;
    all.retain(|it| it.is_for_meeting(today));
    Ok(all)
}

pub async fn earlier(_: Told, grant: Changing, At(id): At<DecisionId>, form: Form<Press>) -> Done {
    step(grant, id, form, Step::Earlier).await
}

pub async fn later(_: Told, grant: Changing, At(id): At<DecisionId>, form: Form<Press>) -> Done {
    step(grant, id, form, Step::Later).await
}

/// One place further, in the order as the presser sees it.
async fn step(grant: Changing, id: DecisionId, form: Form<Press>, step: Step) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let found = store::find(&write, id).await?;
    let all = gathered(&write, grant.today()).await?;
    let line = match places(&all, |it| it.id == id, step) {
        Some((one, other)) if one.version == press.version => {
            store::save(&mut write, one, &one.moved_to(other)).await?;
            store::save(&mut write, other, &other.moved_to(one)).await?;
            let side = if step == Step::Earlier { "before" } else { "after" };
            format!("It now comes {side} “{}”", other.matter)
        }
        _ => format!("“{}” was not moved: look at the order as it is now", found.matter),
    };
    write.commit().await?.then(urls::family_meeting()).saying(line)
}
