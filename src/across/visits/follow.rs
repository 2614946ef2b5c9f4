//! What is to be done after a visit: each test and each follow-up as a task about the note, and the
//! next visit as an appointment. Whoever else should do a task is asked: it is hers when she says yes.

use super::{
    fields,
    form::{Follow, Next},
    meeting::Met,
};
use crate::{
    across::tasks::leaning,
    base::{
        day,
        ids::{AppointmentId, MemberId, PersonId, TaskId},
        text::{Line, Note},
        zone::Zone,
    },
    family::tasks::{
        model::{Due, Task, Wording},
        store as tasks,
    },
    platform::{
        auth::area::{Clinical, Tasks},
        db::{View, Write},
        error::{Error, Result},
        web::form::FormErrors,
    },
    record::{
        appointments::{
            model::{Appointment, Entry, Status, VisitKind},
            store as appointments,
        },
        visits::model::{Account, Item, Visit},
        visits::store,
    },
};

/// Those who can do a task about a visit.
pub async fn owners(view: &View<Clinical>, person: PersonId) -> Result<Vec<(MemberId, String)>> {
    let Some(tasks) = view.area::<Tasks>() else { return Ok(Vec::new()) };
    let wording = Wording { about: Some(("visit".to_owned(), 0)), ..Wording::of(line("")) };
    let by = (view.member(), crate::base::clock::Instant::from_unix(0));
    let any = Task::new(person, wording, by);
    Ok(leaning::hands(&tasks).await?.others(&any))
}

fn line(text: impl Into<String>) -> Line {
    Line::from(text.into())
}

/// A test that was ordered: the task is to get its result.
pub async fn test(write: &mut Write<Clinical>, visit: &Visit, it: Follow) -> Result<()> {
    let place = it.place.as_ref().map(|at| format!(", {at}")).unwrap_or_default();
    let title = line(format!("Get the result: {}", it.what));
    let why = format!("Ordered at the visit with {}{place}", visit.title());
    let task = task(write, visit, ("test", &it), (title, why)).await?;
    store::add_item(write, &Item::test(visit, it.what, it.place, task)).await
}

pub async fn follow_up(write: &mut Write<Clinical>, visit: &Visit, it: Follow) -> Result<()> {
    let why = format!("From the visit with {}", visit.title());
    let task = task(write, visit, ("follow", &it), (it.what.clone(), why)).await?;
    store::add_item(write, &Item::follow_up(visit, it.what, task)).await
}

/// None where her place does not change tasks: the words stand in the note all the same.
async fn task(
    write: &Write<Clinical>,
    visit: &Visit,
    (kind, it): (&'static str, &Follow),
    (title, why): (Line, String),
) -> Result<Option<TaskId>> {
    let Ok(mut write) = write.area::<Tasks>() else { return Ok(None) };
    let wording = Wording {
        why: Some(Note::from(why)),
        due: it.due.map(|on| Due { on, firm: false, repeats: None }),
        about: Some(("visit".to_owned(), visit.id.into())),
        ..Wording::of(title)
    };
    let by = write.member();
    let new = Task::new(write.person(), wording, (by, write.at()));
    let new = match it.owner {
        None => new,
        Some(owner) if owner == by => new.taken(by, false)?,
        Some(owner) => {
            let known = leaning::hands(&write).await?.others(&new);
            if !known.iter().any(|(id, _)| *id == owner) {
                let field = fields::row(kind, it.at, "owner");
                return Err(FormErrors::at(field, "Choose who sees to it.").into());
            }
            new.offered(owner, by)?
        }
    };
    tasks::add(&mut write, &new).await.map(Some)
}

/// The next visit: booked where the time is known, requested where it is not.
pub async fn next(
    write: &Write<Clinical>,
    account: &Account,
    (next, met, zone): (Next, Option<&Met>, &Zone),
) -> Result<AppointmentId> {
    if next.day < account.held_on {
        let says = format!("This is before the visit, {}.", day::words(account.held_on));
        return Err(FormErrors::at("next_day", says).into());
    }
    let mut write = write.area::<Tasks>()?;
    let kind = met.map_or(VisitKind::Routine, |it| it.meeting.appointment.kind);
    let title = next.what.unwrap_or_else(|| line(format!("Visit with {}", account.with_whom)));
    let status = if next.time.is_some() { Status::Booked } else { Status::Requested };
    let named = account.contact.is_none().then(|| account.with_whom.clone());
    let of = met.map(|it| &it.meeting.appointment);
    let entry = Entry {
        contact_id: account.contact,
        with_whom: named,
        place: of.and_then(|it| it.place.clone()),
        status,
        ..Entry::new(title, kind, next.day, next.time)
    };
    let new = Appointment::new(write.person(), entry.sound().map_err(at_next)?, zone.clone());
    appointments::add(&mut write, &new).await
}

fn at_next(e: Error) -> Error {
    match e {
        Error::Invalid(errors) => {
            let says = errors.iter().map(|it| it.says.as_str()).collect::<Vec<_>>().join(" ");
            FormErrors::at("next_day", says).into()
        }
        other => other,
    }
}
