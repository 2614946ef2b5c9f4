//! Putting a note right: its words, the day, who was there, who should read it. What came of the visit
//! (answers, changes of medicines, tasks) is put right where it stands.

use super::{contacts, fields, form::Told};
use crate::{
    base::ids::{MemberId, VisitId},
    platform::{
        audit::Touch,
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::{Done, Write},
        error::Result,
        web::{
            form::{Form, FormErrors},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::{
        contacts::model::Contact,
        visits::{
            model::{Account, Reader, Visit},
            store,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "visits/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    visit: Visit,
    touch: Option<Touch>,
    contacts: Vec<Contact>,
    members: Vec<(MemberId, String)>,
}

impl EditPage {
    fn chosen(&self, id: impl ToString) -> bool {
        self.typed.value("contact_id") == id.to_string()
    }

    /// The contact it was with, where it has left the list since.
    fn gone(&self) -> Option<String> {
        let id = self.visit.contact_id?;
        (!self.contacts.iter().any(|it| it.id == id)).then(|| id.to_string())
    }
}

type Changing = Grant<Change<Clinical>>;

pub async fn edit(grant: Changing, At(id): At<VisitId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let visit = store::find(&view, id).await?;
    let mut typed = typed.over(&visit);
    for member in visit.members() {
        typed = typed.with(fields::present(member), true);
    }
    for it in store::readers(&view, id).await? {
        typed = typed.with(fields::told(it.member_id), true);
    }
    let named = visit.contact_id.is_none().then(|| visit.with_whom.to_string());
    Ok(EditPage {
        page: grant.page("Put the note right"),
        typed: typed.with("with_whom", named.unwrap_or_default()),
        touch: view.last_change("visit", id.into()).await?,
        contacts: contacts::listed(&view).await?,
        members: store::members(&view).await?,
        visit,
    })
}

pub async fn save(grant: Changing, At(id): At<VisitId>, form: Form<Told>) -> Done {
    let told = form.parse()?;
    FormErrors::unless_come("held_on", told.held_on, grant.today())?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(told.version)?;
    let kept = before.contact_id.map(|it| (it, &before.with_whom));
    let (contact, with_whom) = contacts::name(&write, (told.contact, told.with_whom), kept).await?;
    let known: Vec<_> = store::members(&write).await?.into_iter().map(|it| it.0).collect();
    // Who was there and has left the record since was there all the same.
    let stays = |it: &MemberId| !known.contains(it) && before.was_there(*it);
    let there = told.present.into_iter().filter(|it| known.contains(it));
    let account = Account {
        held_on: told.held_on,
        contact,
        with_whom,
        present: there.chain(before.members().into_iter().filter(stays)).collect(),
        others: told.others,
        said: told.said,
        decisions: told.decisions,
    };
    store::save(&mut write, &before, &before.put_right(account)).await?;
    let asked = told.readers.into_iter().filter(|it| known.contains(it)).collect();
    readers(&mut write, &before, asked).await?;
    write.commit().await?.then(urls::visit(id)).saying("Saved the note")
}

/// Who is not ticked any more is asked no more, unless that reader has said that the note was read.
async fn readers(write: &mut Write<Clinical>, visit: &Visit, asked: Vec<MemberId>) -> Result<()> {
    let ever = store::ever_readers(write, visit.id).await?;
    let waits = |it: &&Reader| it.standing && it.read_at.is_none();
    for it in ever.iter().filter(waits).filter(|it| !asked.contains(&it.member_id)) {
        store::save_reader(write, it, &it.no_longer_asked()).await?;
    }
    for member in asked {
        match ever.iter().find(|it| it.member_id == member) {
            Some(it) if it.standing => {}
            Some(it) => store::save_reader(write, it, &it.asked_again()).await?,
            None => {
                let new = Reader::new(visit.person_id, visit.id, member);
                store::add_reader(write, &new).await?;
            }
        }
    }
    Ok(())
}
