//! The answers there are, and one of them with what follows from it.

use super::{
    super::places::pages::Changing,
    model::{Answer, State},
    store,
};
use crate::base::ids::AnswerId;
use crate::platform::{
    audit::{Names, Touch},
    auth::{area::History, grant::See},
    error::Result,
    web::{
        page::Page,
        path::At,
        urls::{self, Address},
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "answers/list.html")]
pub struct ListPage {
    page: Page,
    entered: Option<String>,
    names: Names,
    standing: Vec<Answer>,
    /// Asked again since, or written down by mistake.
    past: Vec<Answer>,
}

impl ListPage {
    fn name(&self) -> &str {
        self.page.person.as_ref().map_or("", |it| &it.name)
    }
}

pub async fn list(grant: Changing) -> Result<ListPage> {
    let view = grant.view().await?;
    let (page, names) = (grant.page("Answers"), view.names().await?);
    let entered = page.entered_for(&view.voice().await?);
    let all = store::list(&view).await?;
    let (standing, past) = all.into_iter().partition(Answer::is_standing);
    Ok(ListPage { page, entered, names, standing, past })
}

#[derive(Template, WebTemplate)]
#[template(path = "answers/show.html")]
pub struct ShowPage {
    page: Page,
    answer: Answer,
    asked: String,
    touch: Option<Touch>,
    may_read_history: bool,
}

impl ShowPage {
    /// Where it is done what she answered, in an address and in words; it is never done by itself.
    fn next(&self) -> Option<(Address, &'static str)> {
        let about = self.answer.about_kind.as_deref().zip(self.answer.about_item);
        Some(match about {
            _ if !self.answer.asks_for_a_change() => return None,
            Some(("membership", place)) => (urls::place(place), "Open this member’s place"),
            Some((kind, item)) => (urls::visibility(kind, item), "Decide who sees this"),
            None => (urls::family(), "Open the family’s places"),
        })
    }
}

pub async fn show(grant: Changing, At(id): At<AnswerId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let (answer, names) = (store::find(&view, id).await?, view.names().await?);
    let touch = view.last_change("answer", id.into()).await?;
    let asked = answer.asked(&names);
    let may_read_history = grant.may::<See<History>>();
    Ok(ShowPage { page: grant.page("An answer"), answer, asked, touch, may_read_history })
}
