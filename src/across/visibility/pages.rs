//! The page that says who sees an item, and decides it.

use super::{
    form::Decision,
    model::{Hidden, can_hide_from},
    store::{self, Member},
};
use crate::{
    across::history::{kinds, titles::Titles},
    family::members::answers::{model::Answer, store as answers},
    platform::{
        auth::{
            area::{History, Members},
            grant::{Change, Grant},
        },
        db::{Done, View},
        error::{Error, Result},
        web::{form::Form, page::Page, typed::Typed, urls},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Path;

/// The kinds of items that can be hidden.
const KINDS: [&str; 18] = [
    "medicine",
    "allergy",
    "contact",
    "condition",
    "operation",
    "happening",
    "question",
    "appointment",
    "task",
    "observation",
    "decision",
    "directive",
    "visit",
    "renewal",
    "paper",
    "cover",
    "card",
    "refusal",
];

#[derive(Template, WebTemplate)]
#[template(path = "visibility/show.html")]
pub struct ShowPage {
    page: Page,
    typed: Typed,
    title: String,
    back: String,
    members: Vec<Row>,
    on_behalf: bool,
    /// What the person answered about it, and how she was asked.
    answers: Vec<(Answer, String)>,
    asked: String,
}

/// A member, and whether the item is hidden from her.
struct Row {
    member: Member,
    hidden: bool,
}

type Item = Path<(String, String, i64)>;

pub async fn show(
    grant: Grant<Change<Members>>,
    Path((_, kind, item)): Item,
    typed: Typed,
) -> Result<ShowPage> {
    let view = grant.view().await?;
    let title = title(&view, &kind, item).await?;
    let hidden = store::list(&view, &kind, item).await?;
    let mut members = store::members(&view).await?;
    members.retain(|it| can_hide_from(it.role, it.id == grant.member()));
    let row = |member: Member| {
        let hidden = hidden.iter().any(|it| it.member_id == member.id && it.standing);
        Row { member, hidden }
    };
    let members = members.into_iter().map(row).collect();
    let page = grant.page(format!("Who sees {title}"));
    let back = page.at(kinds::page(&kind, item).unwrap_or_else(urls::person));
    let on_behalf = grant.role() != crate::platform::auth::area::Role::Person;
    let (names, about) = (view.names().await?, answers::about(&view, &kind, item).await?);
    let answers = about.into_iter().map(|it| (it.clone(), it.asked(&names))).collect();
    let asked = page.at(urls::visibility(&kind, item).and("asked"));
    Ok(ShowPage { page, typed, title, back, members, on_behalf, answers, asked })
}

/// The item's name, if it is of a kind that can be hidden and the one who asks sees it.
pub(super) async fn title(view: &View<Members>, kind: &str, item: i64) -> Result<String> {
    let known = KINDS.contains(&kind).then_some(()).ok_or(Error::NotFound);
    known?;
    let titles = Titles::read(&view.area::<History>().ok_or(Error::NotFound)?, &[]).await?;
    titles.of(kind, item).map(str::to_owned).ok_or(Error::NotFound)
}

pub async fn decide(
    grant: Grant<Change<Members>>,
    Path((_, kind, item)): Item,
    form: Form<Decision>,
) -> Done {
    let decision = form.parse()?;
    let mut write = grant.write().await?;
    let title = title(&write, &kind, item).await?;
    let hidden = store::list(&write, &kind, item).await?;
    let mut members = store::members(&write).await?;
    members.retain(|it| can_hide_from(it.role, it.id == grant.member()));
    for member in members {
        let hide = decision.hide_from.contains(&member.id);
        let before = hidden.iter().find(|it| it.member_id == member.id);
        match before {
            Some(before) => {
                store::save(&mut write, before, &before.decided(hide, grant.role())).await?
            }
            None if hide => {
                let new = Hidden::new(grant.person(), member.id, (&kind, item));
                store::add(&mut write, &new.decided(true, grant.role())).await?;
            }
            None => {}
        }
    }
    let back = kinds::page(&kind, item).unwrap_or_else(urls::person);
    write.commit().await?.then(back).saying(format!("Kept who sees {title}"))
}
