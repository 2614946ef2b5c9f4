//! The one page of the first run.

use super::form::Start;
use crate::{
    base::zone::Zone,
    family::members::{
        model::{Member, Membership},
        store as members,
    },
    platform::{
        auth::{
            area::{Essentials, Members, Role},
            doors::{Operator, Visitor},
            links::{self, Purpose},
        },
        config::Base,
        db::{Db, Done},
        error::Result,
        web::{form::Form, page::Page, typed::Typed, urls},
    },
    record::people::{
        model::{Person, sound_birth},
        store as people,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Path;
use time::Duration;

#[derive(Template, WebTemplate)]
#[template(path = "setup/form.html")]
pub struct StartPage {
    page: Page,
    typed: Typed,
}

impl StartPage {
    fn zones(&self) -> Vec<String> {
        Zone::names().map(|it| it.name().to_owned()).collect()
    }
}

pub async fn form(visitor: Visitor, Path(token): Path<String>, typed: Typed) -> Result<StartPage> {
    links::find(&visitor.house.db, Purpose::Setup, &token).await?;
    let zone = "America/Chicago";
    let typed = typed.with("zone", zone).with("person_zone", zone);
    Ok(StartPage { page: visitor.page("Start the care record"), typed })
}

pub async fn start(visitor: Visitor, Path(token): Path<String>, form: Form<Start>) -> Done {
    let start = form.parse()?;
    let link = links::find(&visitor.house.db, Purpose::Setup, &token).await?;
    let today = start.person_zone.day(visitor.house.clock.now());
    let person = Person::new(start.person, sound_birth(start.born, today)?, start.person_zone);
    let member = Member::new(start.name, start.email, start.zone);
    let phc = visitor.house.hasher.hash(member.accepts(&start.password, "password")?).await;

    let mut write = visitor.write_as(Default::default()).await?;
    link.use_up(&write).await?;
    let member = members::add(&mut write, &member.with_password(phc)).await?;
    let mut essentials = write.in_record::<Essentials>(Default::default(), member)?;
    let id = people::add(&mut essentials, &person).await?;
    let place = Membership::new(id, member, Role::Steward);
    members::place(&mut write.in_record::<Members>(id, member)?, &place).await?;
    let kept = write.commit().await?;
    let answer = visitor.enter(kept, member, false, urls::record_of(id)).await?;
    answer.saying(format!("The record of {} is started", person.name))
}

/// Makes the one-time link where nobody signs in yet; an earlier one stops working.
pub async fn link(db: &Db, base: &Base) -> Result<Option<String>> {
    if members::anyone(&Operator::new(db.clone()).view().await?).await? {
        return Ok(None);
    }
    links::forget(db, Purpose::Setup).await?;
    let token = links::make(db, Purpose::Setup, None, Duration::hours(24)).await?;
    Ok(Some(base.absolute(&format!("/setup/{token}"))))
}
