//! One dose as it was entered: shown, put right, struck, brought back. What it said first stays
//! in its history.

use super::super::{model::Medicine, store as medicines};
use super::{
    as_needed::moment,
    form::{Correction, Mistake},
    model::{Given, Outcome, Said, title, whom},
    store,
};
use crate::base::{day, ids::GivenId};
use crate::platform::{
    audit::Touch,
    auth::{
        area::{Clinical, History, Log},
        grant::{Change, Grant, See},
    },
    db::{Done, View},
    error::{Error, Result},
    web::{
        form::{Choice, Form, Press},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Log>>;

/// An entry, and the medicine it is of.
async fn found(view: &View<Log>, id: GivenId) -> Result<(Given, Medicine)> {
    let given = store::find(view, id).await?;
    let clinical = view.area::<Clinical>().ok_or(Error::NotFound)?;
    let medicine = medicines::find(&clinical, given.medicine_id).await?;
    Ok((given, medicine))
}

/// One that she entered, or that she decides about.
async fn hers(view: &View<Log>, grant: &Changing, id: GivenId) -> Result<(Given, Medicine)> {
    let (given, medicine) = found(view, id).await?;
    match given.is_for(grant.member(), grant.role()) {
        true => Ok((given, medicine)),
        false => Err(Error::Forbidden),
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/given/show.html")]
pub struct ShowPage {
    page: Page,
    given: Given,
    medicine: Medicine,
    day: String,
    time: String,
    outcome: &'static str,
    giver: String,
    entered: String,
    /// Who put it right last.
    touch: Option<Touch>,
    may_change: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Log>>, At(id): At<GivenId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let (given, medicine) = found(&view, id).await?;
    let names = view.names().await?;
    let touch = view.last_change("given", id.into()).await?.filter(|it| !it.added);
    let may_change = grant.may::<Change<Log>>() && given.is_for(grant.member(), grant.role());
    Ok(ShowPage {
        page: grant.page(format!("A dose of {}", medicine.name)),
        day: day::short_words(given.day),
        time: given.time_words(grant.zone()),
        outcome: given.outcome.words(),
        giver: given.giver(&names).to_owned(),
        entered: given.entered(&names, grant.zone()),
        may_read_history: grant.may::<See<History>>(),
        touch,
        may_change,
        given,
        medicine,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/given/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    given: Given,
    title: String,
}

impl EditPage {
    fn outcomes(&self) -> impl Iterator<Item = &'static str> {
        Outcome::ALL.iter().map(|it| it.words())
    }
}

pub async fn edit(grant: Changing, At(id): At<GivenId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let (given, medicine) = hers(&view, &grant, id).await?;
    let names = view.names().await?;
    let time = given.at.map(|it| grant.zone().clock_words(it));
    let typed = typed
        .over(&given)
        .with("amount", given.amount)
        .with("outcome", given.outcome.words())
        .with("by", given.giver(&names))
        .with("time", time.unwrap_or_default());
    let title = title(&medicine.title(), given.day, given.time_of_day.as_deref());
    Ok(EditPage { page: grant.page("Put the entry right"), typed, given, title })
}

pub async fn save(grant: Changing, At(id): At<GivenId>, form: Form<Correction>) -> Done {
    let Correction { amount, outcome, note, by, day, time, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = hers(&write, &grant, id).await?.0.opened_at(version)?;
    let names = write.names().await?;
    let same = by.as_ref().is_none_or(|it| it.as_str() == before.giver(&names));
    let by = match same {
        true => (before.given_by, before.given_name.clone()),
        false => whom(by, write.member(), &write.members().await?),
    };
    let said = Said { amount, outcome, note, by }.sound()?;
    // The same minute again is the same moment.
    let typed = time.zip(before.at).filter(|(time, at)| {
        let wall = grant.zone().wall(*at);
        day != Some(wall.date()) || (wall.hour(), wall.minute()) != (time.hour(), time.minute())
    });
    let moment = match typed {
        Some((time, _)) => Some(moment((day, Some(time)), grant.now(), grant.zone())?),
        None => None,
    };
    store::save(&mut write, &before, &before.put_right(said, moment)).await?;
    write
        .commit()
        .await?
        .then(urls::given_entry(id))
        .saying("Put right; its history keeps the first")
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/given/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    given: Given,
    title: String,
    asks_reason: bool,
    verb: &'static str,
    explains: &'static str,
}

async fn act(
    grant: &Changing,
    id: GivenId,
    typed: Typed,
    (verb, asks_reason, explains): (&'static str, bool, &'static str),
) -> Result<ActPage> {
    let (given, medicine) = hers(&grant.view().await?, grant, id).await?;
    let title = title(&medicine.title(), given.day, given.time_of_day.as_deref());
    let page = grant.page(format!("{verb}: {title}"));
    Ok(ActPage { page, typed, given, title, asks_reason, verb, explains })
}

pub async fn striking(grant: Changing, At(id): At<GivenId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for an entry that was a mistake: the dose is \"not entered\" again. The history keeps the entry, and it can be brought back.";
    act(&grant, id, typed, ("Strike", true, explains)).await
}

pub async fn strike(grant: Changing, At(id): At<GivenId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = hers(&write, &grant, id).await?.0.opened_at(version)?;
    store::save(&mut write, &before, &before.struck(reason)).await?;
    let to = urls::given_on(before.day);
    write.commit().await?.then(to).saying("Struck; the history keeps it")
}

pub async fn bringing_back(grant: Changing, At(id): At<GivenId>, typed: Typed) -> Result<ActPage> {
    let explains = "It stands in the log again as it was.";
    act(&grant, id, typed, ("Bring back", false, explains)).await
}

pub async fn bring_back(grant: Changing, At(id): At<GivenId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = hers(&write, &grant, id).await?.0.opened_at(press.version)?;
    store::save(&mut write, &before, &before.brought_back()).await?;
    write.commit().await?.then(urls::given_entry(id)).saying("It stands in the log again")
}
