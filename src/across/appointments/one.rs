//! What is done to one time of an appointment: who goes along, another day, how it stands, cancelled; and what becomes of
//! one whose day the series no longer has.
//!
//! Of one that does not repeat it is done to the appointment; of a series to that one alone, and the others stay.

use super::{
    Changing, books,
    choices::Settled,
    edit::may_escort,
    form::{Escorted, Moved, STATUSES, Settling, Stands, Why},
    row::{Words, place, unusual},
    show::Named,
};
use crate::{
    base::{day, ids::ContactId, time_of_day::TimeOfDay},
    platform::{
        auth::area::{Essentials, Role, Tasks},
        db::{Done, View, Write},
        error::{Error, Result},
        web::{
            form::{Choice, Form, FormErrors, Press},
            page::Page,
            typed::Typed,
            urls,
        },
    },
    record::{
        appointments::{
            escort::Escort,
            meeting::Meeting,
            model::{Appointment, Status},
            occurrence::Occurrence,
            store,
        },
        contacts::store as contacts,
    },
};
use askama::Template;
use askama_web::WebTemplate;

/// What one of these pages asks for.
enum Asks {
    Nothing,
    Escort(Vec<(String, String)>),
    Day,
    Status(Vec<&'static str>),
    Reason,
    Settle(Vec<&'static str>),
}

#[derive(Template, WebTemplate)]
#[template(path = "appointments/one.html")]
pub struct OnePage {
    page: Page,
    typed: Typed,
    meeting: Meeting,
    when: String,
    back: String,
    asks: Asks,
    verb: &'static str,
    explains: &'static str,
}

impl OnePage {
    /// Whether the page only asks for the press: then the button has its verb.
    fn is_press(&self) -> bool {
        matches!(self.asks, Asks::Nothing | Asks::Reason)
    }

    fn options(&self) -> impl Iterator<Item = &'static str> {
        let all = match &self.asks {
            Asks::Status(all) | Asks::Settle(all) => all.as_slice(),
            _ => &[],
        };
        all.iter().copied()
    }

    fn clocks(&self) -> String {
        format!("like 9:30 am, on the clocks of {}", self.meeting.appointment.zone.place())
    }
}

async fn act(
    grant: &Changing,
    view: &View<Tasks>,
    (meeting, typed): (Meeting, Typed),
    (verb, asks): (&'static str, Asks),
    explains: &'static str,
) -> Result<OnePage> {
    let page = grant.page(format!("{verb}: {}", meeting.appointment.title));
    let words = Words::read(view, &page).await?;
    let when = words.when(&meeting).words();
    let typed = typed
        .with("escort", meeting.escort.name())
        .with("status", meeting.status)
        .with_day("to_day", meeting.appointment.zone.day(meeting.starts))
        .with("to_time", TimeOfDay::of(meeting.appointment.zone.wall(meeting.starts).time()));
    let back = page.at(place(&meeting));
    Ok(OnePage { page, typed, meeting, when, back, asks, verb, explains })
}

/// One time of it, in a calendar that still has it.
async fn find(view: &View<Tasks>, named: &Named) -> Result<Meeting> {
    let meeting = store::meeting(view, named.appointment, named.day).await?;
    if meeting.appointment.struck { Err(Error::NotFound) } else { Ok(meeting) }
}

/// The change of one time: of the appointment, or of that one of its series.
async fn keep(
    mut write: Write<Tasks>,
    (named, version): (Named, i64),
    single: impl FnOnce(&Appointment) -> Appointment,
    of_series: impl FnOnce(&Occurrence) -> Occurrence,
    says: impl FnOnce(&Meeting) -> String,
) -> Done {
    let meeting = find(&write, &named).await?;
    let of = meeting.appointment;
    if of.is_series() {
        let kept = store::occurrence(&write, of.id, named.day).await?;
        let before = kept.unwrap_or_else(|| Occurrence::new(&of, named.day)).opened_at(version)?;
        store::keep_occurrence(&mut write, &before, &of_series(&before)).await?;
    } else {
        let before = of.opened_at(version)?;
        store::save(&mut write, &before, &single(&before)).await?;
    }
    let (line, to) = match store::meeting(&write, named.appointment, named.day).await {
        Ok(after) => (says(&after), place(&after)),
        // Let go, it has no page any more.
        Err(Error::NotFound) => (
            "It does not take place".to_owned(),
            crate::platform::web::urls::appointment(named.appointment),
        ),
        Err(e) => return Err(e),
    };
    write.commit().await?.then(to).saying(line)
}

/// An aide says something only of what she goes along to.
async fn may_say(grant: &Changing, view: &View<Tasks>, named: &Named) -> Result<()> {
    let aide = grant.role() == Role::Aide;
    match aide && !find(view, named).await?.escort.is_member(grant.member()) {
        true => Err(Error::Forbidden),
        false => Ok(()),
    }
}

/// The person herself is no escort.
fn goes(grant: &Changing) -> Result<()> {
    if grant.role() == Role::Person { Err(Error::Forbidden) } else { Ok(()) }
}

pub async fn going(grant: Changing, named: Named, typed: Typed) -> Result<OnePage> {
    goes(&grant)?;
    let view = grant.view().await?;
    let meeting = find(&view, &named).await?;
    let explains = "Your name then stands beside it, and the others know that you go along.";
    act(&grant, &view, (meeting, typed), ("I will go along", Asks::Nothing), explains).await
}

pub async fn go(grant: Changing, named: Named, form: Form<Press>) -> Done {
    goes(&grant)?;
    let press = form.parse()?;
    let write = grant.write().await?;
    let me = Escort::Member(grant.member());
    if !may_escort(&write, me).await? {
        return Err(Error::Forbidden);
    }
    let says = |_: &Meeting| "Your name stands beside it".to_owned();
    keep(write, (named, press.version), |it| it.escorted(me), |it| it.escorted(me), says).await
}

async fn contacts_of(view: &View<Tasks>) -> Result<Vec<(ContactId, String)>> {
    let Some(view) = view.area::<Essentials>() else { return Ok(Vec::new()) };
    let all = contacts::list(&view).await?;
    Ok(all.into_iter().map(|it| (it.id, it.name.to_string())).collect())
}

pub async fn escorting(grant: Changing, named: Named, typed: Typed) -> Result<OnePage> {
    let view = grant.view().await?;
    may_say(&grant, &view, &named).await?;
    let meeting = find(&view, &named).await?;
    let words = Words::read(&view, &grant.page("")).await?;
    let choices = words.choices(&contacts_of(&view).await?, Some(meeting.escort));
    let explains = "Say it to the one you choose as well.";
    act(&grant, &view, (meeting, typed), ("Who goes along", Asks::Escort(choices)), explains).await
}

pub async fn escort(grant: Changing, named: Named, form: Form<Escorted>) -> Done {
    let Escorted { escort, version } = form.parse()?;
    let write = grant.write().await?;
    may_say(&grant, &write, &named).await?;
    let same = find(&write, &named).await?.escort == escort;
    if !same && !may_escort(&write, escort).await? {
        return Err(FormErrors::at("escort", "This is not on the list any more.").into());
    }
    let words = Words::read(&write, &grant.page("")).await?;
    let says = |it: &Meeting| words.along(it);
    keep(write, (named, version), |it| it.escorted(escort), |it| it.escorted(escort), says).await
}

pub async fn moving(grant: Changing, named: Named, typed: Typed) -> Result<OnePage> {
    books(&grant)?;
    let view = grant.view().await?;
    let meeting = find(&view, &named).await?;
    let explains = "Only this one: the others of a series stay where they are.";
    act(&grant, &view, (meeting, typed), ("Move it", Asks::Day), explains).await
}

pub async fn move_it(grant: Changing, named: Named, form: Form<Moved>) -> Done {
    books(&grant)?;
    let Moved { day, time, version } = form.parse()?;
    let write = grant.write().await?;
    let says = |it: &Meeting| {
        let unusual = unusual(it).map(|it| format!(". {it}")).unwrap_or_default();
        format!("Moved to {}, {}{unusual}", day::short_words(day), time.words())
    };
    let (single, series) = (time.clone(), time.clone());
    keep(write, (named, version), |it| it.moved(day, single), |it| it.moved(day, series), says)
        .await
}

pub async fn standing(grant: Changing, named: Named, typed: Typed) -> Result<OnePage> {
    let view = grant.view().await?;
    may_say(&grant, &view, &named).await?;
    let meeting = find(&view, &named).await?;
    let over = meeting.starts <= grant.now();
    let of_past = [Status::Kept, Status::Missed].into_iter().filter(|_| over);
    let statuses = of_past.chain(STATUSES).map(Choice::words).collect();
    let explains = "Kept: she was there. Missed: she was not. Confirmed: the clinic or service has said that it stands.";
    act(&grant, &view, (meeting, typed), ("How it stands", Asks::Status(statuses)), explains).await
}

pub async fn stand(grant: Changing, named: Named, form: Form<Stands>) -> Done {
    let Stands { status, version } = form.parse()?;
    let write = grant.write().await?;
    may_say(&grant, &write, &named).await?;
    let meeting = find(&write, &named).await?;
    if !status.is_open() && meeting.starts > grant.now() {
        return Err(FormErrors::at("status", "This day has not come yet.").into());
    }
    if status != Status::Requested && !meeting.is_timed() {
        return Err(FormErrors::at(
            "status",
            "It has no time yet: edit it, and enter the time first.",
        )
        .into());
    }
    let says = |it: &Meeting| format!("{} is {status}", it.appointment.title);
    let of = meeting.appointment.clone();
    keep(write, (named, version), |it| it.turned(status, None), |it| it.became(status, &of), says)
        .await
}

pub async fn cancelling(grant: Changing, named: Named, typed: Typed) -> Result<OnePage> {
    books(&grant)?;
    let view = grant.view().await?;
    let meeting = find(&view, &named).await?;
    let explains = "It does not take place. It stays in the calendar as cancelled, so that everyone sees it. Only this one: the others of a series stay.";
    act(&grant, &view, (meeting, typed), ("Cancel this one", Asks::Reason), explains).await
}

pub async fn cancel(grant: Changing, named: Named, form: Form<Why>) -> Done {
    books(&grant)?;
    let Why { reason, version } = form.parse()?;
    let write = grant.write().await?;
    let says = |it: &Meeting| format!("{} is cancelled", it.appointment.title);
    let (single, series) = (Some(reason.clone()), Some(reason));
    keep(
        write,
        (named, version),
        |it| it.turned(Status::Cancelled, single),
        |it| it.turned(Status::Cancelled, series),
        says,
    )
    .await
}

/// One that differs from its series.
async fn differing(view: &View<Tasks>, named: &Named) -> Result<Meeting> {
    let meeting = find(view, named).await?;
    if meeting.occurrence.is_some() { Ok(meeting) } else { Err(Error::NotFound) }
}

pub async fn settling(grant: Changing, named: Named, typed: Typed) -> Result<OnePage> {
    books(&grant)?;
    let view = grant.view().await?;
    let meeting = differing(&view, &named).await?;
    if !meeting.orphan {
        let explains = "What was said of this one alone is taken back: its own day, its own escort, that it was cancelled, kept or missed. The history keeps it.";
        return act(
            &grant,
            &view,
            (meeting, typed),
            ("As the series again", Asks::Nothing),
            explains,
        )
        .await;
    }
    let choices = Settled::ALL.iter().map(|it| it.words()).collect();
    let explains = "Something was said of this one, and then the series was changed: it no longer has this day.";
    act(&grant, &view, (meeting, typed), ("Keep it or let it go", Asks::Settle(choices)), explains)
        .await
}

pub async fn settle(grant: Changing, named: Named, form: Form<Settling>) -> Done {
    books(&grant)?;
    let Settling { settled, version } = form.parse()?;
    let write = grant.write().await?;
    let orphan = differing(&write, &named).await?.orphan;
    if orphan && settled.is_none() {
        return Err(FormErrors::at("settled", "Choose one of these.").into());
    }
    let keeps = orphan && settled == Some(Settled::Keep);
    let after = |it: &Occurrence| if keeps { it.kept_apart() } else { it.struck() };
    let says = |_: &Meeting| match keeps {
        true => "It is kept, beside the series".to_owned(),
        false => "It is as the series again".to_owned(),
    };
    keep(write, (named, version), Appointment::clone, after, says).await
}
