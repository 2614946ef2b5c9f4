//! What is done to a whole appointment: cancelled, struck, brought back. Of a series it is all of it.

use super::{Changing, books, form::Why};
use crate::{
    base::ids::AppointmentId,
    platform::{
        auth::area::Tasks,
        db::{Done, Write},
        error::Result,
        web::{
            form::{Form, Press},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::appointments::{
        model::{Appointment, Status},
        store,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "appointments/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    of: Appointment,
    asks_reason: bool,
    verb: &'static str,
    explains: &'static str,
}

async fn act(
    grant: &Changing,
    id: AppointmentId,
    typed: Typed,
    (verb, asks_reason, explains): (&'static str, bool, &'static str),
) -> Result<ActPage> {
    books(grant)?;
    let of = store::find(&grant.view().await?, id).await?;
    let page = grant.page(format!("{verb}: {}", of.title));
    Ok(ActPage { page, typed, of, asks_reason, verb, explains })
}

async fn keep(mut write: Write<Tasks>, old: &Appointment, new: &Appointment, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    let line = format!("{} {says}", new.title);
    write.commit().await?.then(urls::appointment(new.id)).saying(line)
}

pub async fn cancelling(
    grant: Changing,
    At(id): At<AppointmentId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains = "It does not take place. It stays in the calendar as cancelled, so that everyone sees it. Of a series this is all that is still to come; what was kept stays.";
    act(&grant, id, typed, ("Cancel", true, explains)).await
}

pub async fn cancel(grant: Changing, At(id): At<AppointmentId>, form: Form<Why>) -> Done {
    books(&grant)?;
    let why = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(why.version)?;
    let after = before.turned(Status::Cancelled, Some(why.reason));
    keep(write, &before, &after, "is cancelled").await
}

pub async fn striking(grant: Changing, At(id): At<AppointmentId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for an entry that was a mistake: it leaves the calendar. One that does not take place is cancelled. The history keeps it, and it can be brought back from there.";
    act(&grant, id, typed, ("Strike", true, explains)).await
}

pub async fn strike(grant: Changing, At(id): At<AppointmentId>, form: Form<Why>) -> Done {
    books(&grant)?;
    let why = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(why.version)?;
    keep(write, &before, &before.struck(why.reason), "was struck").await
}

pub async fn bringing_back(
    grant: Changing,
    At(id): At<AppointmentId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains = "It stands in the calendar again: booked, where it was cancelled.";
    act(&grant, id, typed, ("Bring back", false, explains)).await
}

pub async fn bring_back(grant: Changing, At(id): At<AppointmentId>, form: Form<Press>) -> Done {
    books(&grant)?;
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    let after = match before.struck {
        true => before.brought_back(),
        false => before.stands_again(),
    };
    keep(write, &before, &after, "is in the calendar again").await
}
