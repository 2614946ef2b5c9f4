//! Writing a question down, and putting its words right. What it is about is chosen from what is
//! listed now.

use super::made::keep;
use crate::{
    across::happenings::items::{self, GONE, Group},
    base::{
        ids::{ContactId, QuestionId},
        text::Line,
    },
    platform::{
        audit::Touch,
        auth::{
            area::{Clinical, Essentials},
            grant::{Change, Grant},
        },
        db::{Done, View},
        error::Result,
        web::{
            form::{Choice, Form, FormErrors},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::{
        contacts::store as contacts,
        questions::{
            form::Worded,
            model::{Question, Whom, Wording},
            store,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "questions/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    /// None: one is being written down.
    kept: Option<Question>,
    /// Those it can be for.
    contacts: Vec<(ContactId, String)>,
    groups: Vec<Group>,
    touch: Option<Touch>,
}

impl EditPage {
    fn whoms(&self) -> impl Iterator<Item = &'static str> {
        Whom::ALL.iter().map(|it| it.words())
    }
}

/// What the page that led here was about.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    about: String,
    contact: String,
}

/// Those it can be for: who is listed now, and the one it is for already.
async fn listed(
    view: &View<Clinical>,
    kept: Option<&Question>,
) -> Result<Vec<(ContactId, String)>> {
    let mut all = Vec::new();
    if let Some(view) = view.area::<Essentials>() {
        let contacts = contacts::list(&view).await?.into_iter();
        all.extend(contacts.map(|it| (it.id, it.name.to_string())));
    }
    if let Some((id, name)) = kept.and_then(|it| Some((it.contact_id?, it.whom().to_owned())))
        && !all.iter().any(|(it, _)| *it == id)
    {
        all.push((id, name));
    }
    Ok(all)
}

pub async fn blank(grant: Changing, Query(asked): Query<Asked>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let for_whom = if asked.contact.is_empty() { Whom::Pharmacist } else { Whom::Clinician };
    let typed = typed.with("about", asked.about).with("for_whom", for_whom);
    Ok(EditPage {
        page: grant.page("Write down a question"),
        typed: typed.with("contact_id", asked.contact),
        kept: None,
        contacts: listed(&view, None).await?,
        groups: items::all(&view).await?,
        touch: None,
    })
}

pub async fn add(grant: Changing, form: Form<Worded>) -> Done {
    let Worded { wording, contact, .. } = form.parse()?;
    let write = grant.write().await?;
    known(&write, &wording).await?;
    let by = (write.member(), write.at());
    let new = Question::new(write.person(), wording, by);
    let new = for_contact(&write, new, contact, None).await?;
    keep(write, &new).await
}

/// For the contact that was chosen, which must be one that she sees, or the one it was for.
async fn for_contact(
    view: &View<Clinical>,
    question: Question,
    contact: Option<ContactId>,
    kept: Option<&Question>,
) -> Result<Question> {
    let Some(contact) = contact else { return Ok(question) };
    let listed = listed(view, kept).await?;
    let found = listed.into_iter().find(|(id, _)| *id == contact);
    let (id, name) = found.ok_or_else(|| FormErrors::at("contact_id", GONE))?;
    Ok(question.for_contact(id, Line::from(name)))
}

/// What it is about must be on the list that she sees.
async fn known(view: &View<Clinical>, wording: &Wording) -> Result<()> {
    let Some((kind, item)) = &wording.about else { return Ok(()) };
    match items::title(view, kind, *item).await? {
        Some(_) => Ok(()),
        None => Err(FormErrors::at("about", GONE).into()),
    }
}

pub async fn edit(grant: Changing, At(id): At<QuestionId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let touch = view.last_change("question", id.into()).await?;
    let groups = items::all(&view).await?;
    let about = kept.about().map(|(kind, item)| format!("{kind}/{item}")).unwrap_or_default();
    let contacts = listed(&view, Some(&kept)).await?;
    let typed = typed.over(&kept).with("about", about).with("for_whom", kept.for_whom);
    let page = grant.page("Put the question right");
    Ok(EditPage { page, typed, kept: Some(kept), contacts, groups, touch })
}

pub async fn save(grant: Changing, At(id): At<QuestionId>, form: Form<Worded>) -> Done {
    let Worded { wording, contact, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    // What it was about may have left the list since: it stays about that.
    if before.about() != wording.about.as_ref().map(|(kind, item)| (kind.as_str(), *item)) {
        known(&write, &wording).await?;
    }
    let after = for_contact(&write, before.reworded(wording), contact, Some(&before)).await?;
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::question(id)).saying("Saved the question")
}
