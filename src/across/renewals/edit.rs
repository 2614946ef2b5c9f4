//! Writing down what is to be renewed, and putting it right; of what is kept elsewhere, how long it
//! takes.

use super::{
    item::{self, Item},
    show::At,
};
use crate::{
    platform::{
        auth::{
            area::Papers,
            grant::{Change, Grant},
        },
        db::Done,
        error::Result,
        web::{form::Form, page::Page, typed::Typed, urls},
    },
    record::renewals::{
        form::{self, Taking, Worded},
        model::Renewal,
        rule::Rule,
        store,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Path;

pub type Changing = Grant<Change<Papers>>;

#[derive(Template, WebTemplate)]
#[template(path = "renewals/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    /// None: an entry is being written down.
    item: Option<Item>,
    rules: Vec<String>,
}

impl EditPage {
    /// Whether all of it is the family's own.
    fn is_own(&self) -> bool {
        self.item.as_ref().is_none_or(|it| it.kept.is_own())
    }
}

pub async fn blank(grant: Changing, typed: Typed) -> EditPage {
    let typed = typed.with("rule", Rule::Other);
    EditPage { page: grant.page("What is to be renewed?"), typed, item: None, rules: form::rules() }
}

pub async fn add(grant: Changing, form: Form<Worded>) -> Done {
    let Worded { entry, .. } = form.parse()?;
    let mut write = grant.write().await?;
    let says = format!("Written down: {}", entry.title);
    let new = Renewal::new(write.person(), entry);
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::renewal(id)).saying(says)
}

pub async fn edit(grant: Changing, Path((_, about, number)): At, typed: Typed) -> Result<EditPage> {
    let item = item::find(&grant.view().await?, (&about, number), grant.today()).await?;
    let mut rules = form::rules();
    let own = item.kept.rule.to_string();
    if !rules.contains(&own) {
        rules.insert(0, own);
    }
    let page = grant.page(format!("Put right: {}", item.title));
    Ok(EditPage { page, typed: typed.over(&item.kept), item: Some(item), rules })
}

pub async fn save(
    grant: Changing,
    Path((_, about, number)): At,
    own: Form<Worded>,
    elsewhere: Form<Taking>,
) -> Done {
    let mut write = grant.write().await?;
    let item = item::find(&write, (&about, number), grant.today()).await?;
    let (after, version) = match item.kept.is_own() {
        true => {
            let Worded { entry, version } = own.parse()?;
            (item.kept.reworded(entry), version)
        }
        false => {
            let Taking { takes, version } = elsewhere.parse()?;
            (item.kept.taking(takes), version)
        }
    };
    let (to, before) = (item.address(), item.kept.opened_at(version)?);
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(to).saying("Saved")
}
