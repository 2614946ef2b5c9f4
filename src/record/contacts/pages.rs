//! The contacts in calling order, one contact, and its form.

use super::{form::Entered, kind::Kind, model::Contact, store};
use crate::base::{ids::ContactId, zone::Zone};
use crate::platform::{
    audit::Touch,
    auth::{
        area::{Clinical, Essentials, History, Members},
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

type Changing = Grant<Change<Essentials>>;

#[derive(Template, WebTemplate)]
#[template(path = "contacts/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    /// Who answers now, and then the others: each in calling order.
    now: Vec<Row>,
    others: Vec<Row>,
    stamp: Stamp,
}

/// A contact, its place in the calling order, and whether it answers.
struct Row {
    place: usize,
    contact: Contact,
    answers: String,
}

pub async fn list(grant: Grant<See<Essentials>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (page, names) = (grant.page("Contacts"), view.names().await?);
    let contacts = store::list(&view).await?;
    let stamp = Stamp::of_list(&page, &names, contacts.iter().map(Contact::check));
    let (at, zone) = (grant.now(), grant.zone());
    let rows = contacts.into_iter().zip(1..).map(|(contact, place)| {
        let answering = contact.answering(at, zone);
        (answering.is_now(), Row { place, answers: answering.words(at, zone), contact })
    });
    let (now, others): (Vec<_>, Vec<_>) = rows.partition(|(is_now, _)| *is_now);
    let [now, others] = [now, others].map(|it| it.into_iter().map(|(_, row)| row).collect());
    let may_change = grant.may::<Change<Essentials>>();
    Ok(ListPage { page, may_change, now, others, stamp })
}

#[derive(Template, WebTemplate)]
#[template(path = "contacts/show.html")]
pub struct ShowPage {
    page: Page,
    contact: Contact,
    answers: String,
    stamp: Stamp,
    touch: Option<Touch>,
    may_change: bool,
    may_decide: bool,
    may_read_questions: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Essentials>>, At(id): At<ContactId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let (contact, names) = (store::find(&view, id).await?, view.names().await?);
    let touch = view.last_change("contact", id.into()).await?;
    let page = grant.page(contact.name.as_str());
    Ok(ShowPage {
        stamp: Stamp::of(&page, &names, contact.check()),
        answers: contact.answering(grant.now(), grant.zone()).words(grant.now(), grant.zone()),
        may_change: grant.may::<Change<Essentials>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_questions: grant.may::<See<Clinical>>(),
        may_read_history: grant.may::<See<History>>(),
        page,
        contact,
        touch,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "contacts/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    /// None: one is being added.
    kept: Option<Contact>,
    touch: Option<Touch>,
}

impl EditPage {
    fn kinds(&self) -> Vec<String> {
        Kind::ALL.iter().map(ToString::to_string).collect()
    }

    fn zones(&self) -> Vec<String> {
        Zone::names().map(|it| it.name().to_owned()).collect()
    }
}

pub async fn blank(grant: Changing, typed: Typed) -> Result<EditPage> {
    let typed = typed.with("kind", Kind::NotSaid);
    Ok(EditPage { page: grant.page("Add a contact"), typed, kept: None, touch: None })
}

pub async fn add(grant: Changing, form: Form<Entered>) -> Done {
    let entry = form.parse()?.entry;
    let mut write = grant.write().await?;
    let new = Contact::new(write.person(), entry, store::last_place(&write).await?);
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::contact(id)).saying(format!("Added {}", new.name))
}

pub async fn edit(grant: Changing, At(id): At<ContactId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let contact = store::find(&view, id).await?;
    let touch = view.last_change("contact", id.into()).await?;
    let page = grant.page(format!("Edit {}", contact.name));
    Ok(EditPage { page, typed: typed.over(&contact), kept: Some(contact), touch })
}

pub async fn save(grant: Changing, At(id): At<ContactId>, form: Form<Entered>) -> Done {
    let Entered { entry, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.edited(entry);
    store::save(&mut write, &before, &after).await?;
    // A number that is hers no more still stands elsewhere: the next page says where.
    let gone = before.phones().find(|it| after.phones().all(|now| now.groups() != it.groups()));
    let next = match gone {
        Some(number) => urls::contact_places(id).and(&number.groups()),
        None => urls::contact(id),
    };
    write.commit().await?.then(next).saying(format!("Saved {}", after.name))
}
