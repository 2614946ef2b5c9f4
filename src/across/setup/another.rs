//! Another person's record in the same house: whoever decides in one record may start another,
//! and is its steward.

use crate::{
    base::{text::Line, zone::Zone},
    family::members::{model::Membership, store as members},
    platform::{
        auth::{
            area::{Essentials, Members, Role},
            doors::Account,
        },
        db::Done,
        error::{Error, Result},
        web::{
            form::{Form, FormErrors, FromForm, Reader},
            page::Page,
            typed::Typed,
            urls,
        },
    },
    record::people::{
        model::{Person, sound_birth},
        store as people,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use time::Date;

pub struct Another {
    name: Line,
    born: Date,
    zone: Zone,
}

impl FromForm for Another {
    fn read(form: &mut Reader) -> std::result::Result<Another, FormErrors> {
        let name = form.needed_line("name", "Enter the name of the person you care for.");
        let born = form.needed_day("born", "Enter the birth date, like 2 Nov 1941.");
        let zone = form.zone("zone");
        form.finish(|| Some(Another { name: name?, born: born?, zone: zone? }))
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "setup/another.html")]
pub struct AnotherPage {
    page: Page,
    typed: Typed,
}

impl AnotherPage {
    fn zones(&self) -> Vec<String> {
        Zone::names().map(|it| it.name().to_owned()).collect()
    }
}

pub async fn adding(account: Account, typed: Typed) -> Result<AnotherPage> {
    may_start(&account).await?;
    let typed = typed.with("zone", account.signed.zone.name());
    Ok(AnotherPage { page: account.page("Start another record"), typed })
}

pub async fn add(account: Account, form: Form<Another>) -> Done {
    may_start(&account).await?;
    let Another { name, born, zone } = form.parse()?;
    let born = sound_birth(born, zone.day(account.house.clock.now()))?;
    let person = Person::new(name, born, zone);
    let write = account.write().await?;
    let member = account.member();
    let mut essentials = write.in_record::<Essentials>(Default::default(), member)?;
    let id = people::add(&mut essentials, &person).await?;
    let place = Membership::new(id, member, Role::Steward);
    members::place(&mut write.in_record::<Members>(id, member)?, &place).await?;
    let kept = write.commit().await?;
    kept.then(urls::record_of(id)).saying(format!("The record of {} is started", person.name))
}

async fn may_start(account: &Account) -> Result<()> {
    let decides = account.records().await?.iter().any(|it| it.reach.role.decides());
    decides.then_some(()).ok_or(Error::Forbidden)
}
