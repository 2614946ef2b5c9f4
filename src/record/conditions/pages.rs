//! The list of conditions, one condition, and its form.

use super::{form::Entered, model::Condition, store, wish::WantsTold};
use crate::base::ids::ConditionId;
use crate::platform::{
    audit::Touch,
    auth::{
        area::{Clinical, History, Members},
        grant::{Change, Grant, See},
    },
    db::Done,
    error::Result,
    web::{
        form::{Choice, Form},
        page::Page,
        path::At,
        stamp::Stamp,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "conditions/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    standing: Vec<Row>,
    over: Vec<Row>,
    stamp: Stamp,
}

/// One line of the list.
struct Row {
    condition: Condition,
    stamp: Stamp,
}

pub async fn list(grant: Grant<See<Clinical>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (page, names) = (grant.page("Conditions"), view.names().await?);
    let all = store::list(&view).await?.into_iter();
    let (standing, over): (Vec<Condition>, Vec<Condition>) = all.partition(Condition::is_standing);
    let stamp = Stamp::of_list(&page, &names, standing.iter().map(Condition::check));
    let row = |condition: Condition| Row {
        stamp: Stamp::of(&page, &names, condition.check()),
        condition,
    };
    let (standing, over) =
        (standing.into_iter().map(row).collect(), over.into_iter().map(row).collect());
    let may_change = grant.may::<Change<Clinical>>();
    Ok(ListPage { page, may_change, standing, over, stamp })
}

#[derive(Template, WebTemplate)]
#[template(path = "conditions/show.html")]
pub struct ShowPage {
    page: Page,
    condition: Condition,
    stamp: Stamp,
    touch: Option<Touch>,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Clinical>>, At(id): At<ConditionId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let condition = store::find(&view, id).await?;
    let names = view.names().await?;
    let touch = view.last_change("condition", id.into()).await?;
    let page = grant.page(condition.name.as_str());
    Ok(ShowPage {
        stamp: Stamp::of(&page, &names, condition.check()),
        may_change: grant.may::<Change<Clinical>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        page,
        condition,
        touch,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "conditions/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    /// None: one is being added.
    kept: Option<Condition>,
    touch: Option<Touch>,
}

impl EditPage {
    fn wishes(&self) -> impl Iterator<Item = &'static str> {
        WantsTold::ALL.iter().map(|it| it.words())
    }

    /// A question about the person, by her name.
    fn asks(&self, before: &str, after: &str) -> String {
        let name = self.page.person.as_ref().map_or("", |it| &it.name);
        format!("{before} {name} {after}")
    }
}

pub async fn blank(grant: Changing, typed: Typed) -> Result<EditPage> {
    let page = grant.page("Add a condition");
    let typed = typed.with("wants_told", WantsTold::NotAsked);
    Ok(EditPage { page, typed, kept: None, touch: None })
}

pub async fn add(grant: Changing, form: Form<Entered>) -> Done {
    let entry = form.parse()?.entry.sound(grant.today())?;
    let mut write = grant.write().await?;
    let new = Condition::new(write.person(), entry);
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::condition(id)).saying(format!("Added {}", new.name))
}

pub async fn edit(grant: Changing, At(id): At<ConditionId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let condition = store::find(&view, id).await?;
    let touch = view.last_change("condition", id.into()).await?;
    let page = grant.page(format!("Edit {}", condition.name));
    Ok(EditPage { page, typed: typed.over(&condition), kept: Some(condition), touch })
}

pub async fn save(grant: Changing, At(id): At<ConditionId>, form: Form<Entered>) -> Done {
    let Entered { entry, version } = form.parse()?;
    let entry = entry.sound(grant.today())?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.edited(entry);
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::condition(id)).saying(format!("Saved {}", after.name))
}
