//! Writing down who was told: of one turn, or one contact of all that she has not been told.
//!
//! It is said by whoever told, never concluded: that a page was opened tells nobody anything.

use super::{
    form::{TellAll, Told},
    pages::{Asked, contacts_of, shown},
    told,
};
use crate::{
    base::{
        day,
        ids::{ContactId, TellingId, TurnId},
    },
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::{Done, View},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors, Press},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::{
        contacts::model::Contact,
        medicines::{
            model::Medicine,
            store as medicines,
            turns::{
                model::{Telling, Turn},
                store::{self, Wanted},
            },
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;
use time::Date;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "turns/tell.html")]
pub struct TellPage {
    page: Page,
    typed: Typed,
    turn: Turn,
    medicine: Medicine,
    treating: Vec<Contact>,
    others: Vec<Contact>,
}

pub async fn telling(grant: Changing, At(id): At<TurnId>, typed: Typed) -> Result<TellPage> {
    let view = grant.view().await?;
    let turn = store::find(&view, id).await?;
    let medicine = medicines::find(&view, turn.medicine_id).await?;
    let (treating, others) = contacts_of(&view).await?.into_iter().partition(told::treats);
    let page = grant.page(format!("Who was told: {}", medicine.name));
    let typed = typed.with_day("told_on", grant.today());
    Ok(TellPage { page, typed, turn, medicine, treating, others })
}

pub async fn tell(grant: Changing, At(id): At<TurnId>, form: Form<Told>) -> Done {
    let told = form.parse()?;
    told.come(grant.today())?;
    let mut write = grant.write().await?;
    let turn = store::find(&write, id).await?;
    let whom = match told.contact {
        Some(contact) => {
            let known = contacts_of(&write).await?.into_iter().find(|it| it.id == contact);
            let gone = || FormErrors::at("contact", "This contact is not on the list any more.");
            known.map(|it| (Some(contact), it.name)).ok_or_else(gone)?
        }
        None => (None, told.whom.clone().ok_or(Error::NotFound)?),
    };
    let line = format!("Kept: {} was told", whom.1);
    let telling = told.of(&turn, whom, write.member());
    store::add_telling(&mut write, &telling).await?;
    write.commit().await?.then(urls::turn(id)).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "turns/untold.html")]
pub struct UntoldPage {
    page: Page,
    typed: Typed,
    contact: Contact,
    since: Date,
    unread: Option<String>,
    rows: Vec<(Turn, String)>,
}

impl UntoldPage {
    fn words(&self) -> String {
        day::words(self.since)
    }
}

async fn contact(view: &View<Clinical>, id: ContactId) -> Result<Contact> {
    let mut all = contacts_of(view).await?.into_iter();
    all.find(|it| it.id == id).ok_or(Error::NotFound)
}

pub async fn untold(
    grant: Changing,
    At(id): At<ContactId>,
    Query(asked): Query<Asked>,
    typed: Typed,
) -> Result<UntoldPage> {
    let view = grant.view().await?;
    let (contact, shown) = (contact(&view, id).await?, shown(&view).await?);
    let since = asked.day(grant.today());
    let wanted = Wanted { since: Some(since), ..Wanted::default() };
    let (turns, tellings) =
        (store::list(&view, &wanted).await?, store::tellings(&view, None).await?);
    let row = |it: &Turn| Some((it.clone(), shown.get(&it.medicine_id)?.title()));
    let rows = told::untold(&contact, &turns, &tellings).into_iter().filter_map(row).collect();
    let page = grant.page(format!("Not told yet: {}", contact.name));
    let typed = typed.with_day("told_on", grant.today());
    Ok(UntoldPage { page, typed, contact, since, unread: asked.unread(), rows })
}

pub async fn tell_all(grant: Changing, At(id): At<ContactId>, form: Form<TellAll>) -> Done {
    let TellAll { turns, told } = form.parse()?;
    told.come(grant.today())?;
    let mut write = grant.write().await?;
    let contact = contact(&write, id).await?;
    for turn in &turns {
        let turn = store::find(&write, *turn).await?;
        let whom = (Some(id), contact.name.clone());
        let telling = told.of(&turn, whom, write.member());
        store::add_telling(&mut write, &telling).await?;
    }
    let line = format!("Kept: {} was told of {}", contact.name, turns.len());
    write.commit().await?.then(urls::turns()).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "turns/strike.html")]
pub struct StrikePage {
    page: Page,
    typed: Typed,
    telling: Telling,
    by: String,
}

pub async fn striking(grant: Changing, At(id): At<TellingId>, typed: Typed) -> Result<StrikePage> {
    let view = grant.view().await?;
    let telling = store::find_telling(&view, id).await?;
    let by = view.names().await?.of(telling.told_by).to_owned();
    Ok(StrikePage { page: grant.page("It was not told"), typed, telling, by })
}

pub async fn strike(grant: Changing, At(id): At<TellingId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find_telling(&write, id).await?.opened_at(press.version)?;
    store::save_telling(&mut write, &before, &before.struck()).await?;
    let line = format!("Struck: that {} was told", before.whom);
    write.commit().await?.then(urls::turn(before.turn_id)).saying(line)
}
