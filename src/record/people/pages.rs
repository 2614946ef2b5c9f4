//! The person: the front page of the record, its form, and its check.

use super::{
    death,
    form::{Against, Described},
    model::{Person, sound_birth},
    paper::Paper,
    store,
};
use crate::base::zone::Zone;
use crate::platform::{
    audit::Touch,
    auth::{
        area::{Essentials, History, Members},
        grant::{Change, Grant, See},
    },
    db::Done,
    error::Result,
    web::{
        form::{Choice, Form},
        page::Page,
        stamp::Stamp,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "people/show.html")]
pub struct ShowPage {
    page: Page,
    person: Person,
    stamp: Stamp,
    touch: Option<Touch>,
    /// Who entered the death, where it was entered.
    died_entered_by: Option<String>,
    may_change: bool,
    may_enter_death: bool,
    may_take_back: bool,
    may_choose_mail: bool,
    may_read_history: bool,
    /// Who enters the answers of a person who does not sign in, for those who may know the members.
    entered: Option<String>,
    may_ask: bool,
}

pub async fn show(grant: Grant<See<Essentials>>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let (person, names) = (store::find(&view).await?, view.names().await?);
    let touch = view.last_change("person", person.id.into()).await?;
    let page = grant.page("Person");
    let entered = match grant.may::<See<Members>>() {
        true => page.entered_for(&view.voice().await?),
        false => None,
    };
    Ok(ShowPage {
        stamp: Stamp::of(&page, &names, person.check()),
        may_change: grant.may::<Change<Essentials>>(),
        may_read_history: grant.may::<See<History>>(),
        may_enter_death: grant.may::<Change<Essentials>>() && death::may_enter(grant.role()),
        may_take_back: grant.may::<Change<Essentials>>() && death::may_take_back(grant.role()),
        may_choose_mail: grant.may::<Change<Essentials>>() && grant.role().decides(),
        died_entered_by: person.died_by.map(|it| names.of(it).to_owned()),
        may_ask: grant.may::<Change<Members>>(),
        entered,
        page,
        person,
        touch,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "people/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    person: Person,
    touch: Option<Touch>,
}

impl EditPage {
    fn zones(&self) -> Vec<String> {
        Zone::names().map(|it| it.name().to_owned()).collect()
    }

    fn papers(&self) -> impl Iterator<Item = &'static str> {
        Paper::ALL.iter().map(|it| it.words())
    }
}

pub async fn edit(grant: Grant<Change<Essentials>>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let person = store::find(&view).await?;
    let touch = view.last_change("person", person.id.into()).await?;
    let page = grant.page(format!("Edit {}", person.name));
    Ok(EditPage { page, typed: typed.over(&person).with("paper", person.paper), person, touch })
}

pub async fn save(grant: Grant<Change<Essentials>>, form: Form<Described>) -> Done {
    let Described { person, version } = form.parse()?;
    sound_birth(person.born, grant.today())?;
    let mut write = grant.write().await?;
    let before = store::find(&write).await?.opened_at(version)?;
    let after = before.edited(person).sound_life()?;
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::person()).saying(format!("Saved {}", after.name))
}

#[derive(Template, WebTemplate)]
#[template(path = "people/check.html")]
pub struct CheckPage {
    page: Page,
    typed: Typed,
    person: Person,
}

pub async fn checking(grant: Grant<Change<Essentials>>, typed: Typed) -> Result<CheckPage> {
    let person = store::find(&grant.view().await?).await?;
    Ok(CheckPage { page: grant.page(format!("Check: {}", person.name)), typed, person })
}

pub async fn check(grant: Grant<Change<Essentials>>, form: Form<Against>) -> Done {
    let Against { against, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write).await?.opened_at(version)?;
    let after = before.checked(write.check(against));
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::person()).saying(format!("{} is checked", after.name))
}
