//! Adding a directive and putting one right. A new one may take the place of an older one.

use super::{Changing, ground::Ground};
use crate::{
    base::ids::{ContactId, DirectiveId},
    platform::{
        audit::Touch,
        db::Done,
        error::Result,
        web::{
            form::{Choice, Form, FormErrors},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::directives::{
        form::Told,
        kind::{Kind, Starts, State},
        model::{Directive, Entry},
        store,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "directives/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    kept: Option<Directive>,
    contacts: Vec<(ContactId, String)>,
    /// Those in force, of which a new one may take the place.
    older: Vec<Directive>,
    touch: Option<Touch>,
}

impl EditPage {
    fn kinds(&self) -> impl Iterator<Item = &'static str> {
        Kind::ALL.iter().map(|it| it.words())
    }

    fn starts(&self) -> impl Iterator<Item = &'static str> {
        Starts::ALL.iter().map(|it| it.words())
    }

    fn states(&self) -> impl Iterator<Item = &'static str> {
        State::FIRST.iter().map(|it| it.words())
    }
}

pub async fn blank(grant: Changing, typed: Typed) -> Result<EditPage> {
    let ground = Ground::read(&grant.view().await?).await?;
    let older = ground.all.iter().filter(|it| it.is_in_force()).cloned().collect();
    let typed = typed.with("starts", Starts::NotSaid.words()).with("state", State::InForce.words());
    let contacts = ground.choices(None);
    let page = grant.page("Add a directive");
    Ok(EditPage { page, typed, kept: None, contacts, older, touch: None })
}

pub async fn add(grant: Changing, form: Form<Told>) -> Done {
    let Told { entry, state, replaces, .. } = form.parse()?;
    let state = state.filter(|it| State::FIRST.contains(it));
    let state = state.ok_or_else(|| FormErrors::at("state", "Choose one of these."))?;
    let mut write = grant.write().await?;
    let ground = Ground::read(&write).await?;
    known(&entry, &ground, None)?;
    let older = match replaces {
        Some(id) => Some(replaced(&ground, id, state)?.clone()),
        None => None,
    };
    let new = Directive::new(write.person(), entry, state).sound(grant.today())?;
    let id = store::add(&mut write, &new).await?;
    if let Some(older) = older {
        store::save(&mut write, &older, &older.superseded(id)).await?;
    }
    write.commit().await?.then(urls::directive(id)).saying(format!("Added: {}", new.title()))
}

/// The older one, which must be in force; a draft takes nobody's place.
fn replaced(ground: &Ground, id: DirectiveId, state: State) -> Result<&Directive> {
    let found = ground.all.iter().find(|it| it.id == id && it.is_in_force());
    let says = match found {
        Some(older) if state == State::InForce => return Ok(older),
        Some(_) => "A draft takes no other's place. Choose nothing here until it is signed.",
        None => "Choose one that is in force.",
    };
    Err(FormErrors::at("replaces", says).into())
}

/// Everyone who is named is a contact whom the writer sees, or stood there before.
fn known(entry: &Entry, ground: &Ground, kept: Option<&Directive>) -> Result<()> {
    let choices = ground.choices(kept);
    let [agent, alternate, second] = entry.named;
    for (field, id) in [
        ("agent_id", agent),
        ("alternate_id", alternate),
        ("second_alternate_id", second),
        ("holder_id", entry.holder_id),
    ] {
        if id.is_some_and(|id| choices.iter().all(|(it, _)| *it != id)) {
            let says = "This contact is not on the list any more.";
            return Err(FormErrors::at(field, says).into());
        }
    }
    Ok(())
}

pub async fn edit(grant: Changing, At(id): At<DirectiveId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let ground = Ground::read(&view).await?;
    let kept = ground.find(id)?.clone();
    let touch = view.last_change("directive", id.into()).await?;
    let typed = typed.over(&kept).with("kind", kept.kind).with("starts", kept.starts);
    let contacts = ground.choices(Some(&kept));
    let page = grant.page(format!("Edit {}", kept.title()));
    Ok(EditPage { page, typed, kept: Some(kept), contacts, older: Vec::new(), touch })
}

pub async fn save(grant: Changing, At(id): At<DirectiveId>, form: Form<Told>) -> Done {
    let Told { entry, version, .. } = form.parse()?;
    let mut write = grant.write().await?;
    let ground = Ground::read(&write).await?;
    let before = ground.find(id)?.clone().opened_at(version)?;
    known(&entry, &ground, Some(&before))?;
    let after = before.edited(entry, grant.today())?;
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::directive(id)).saying(format!("Saved: {}", after.title()))
}
