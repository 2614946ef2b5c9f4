//! Booking an appointment, and editing it whole: all of a series, those that are over among them.

use super::{
    Changing, books,
    choices::{HowItEnds, MonthDay, Repeats},
    form::{Booked, STATUSES},
    row::{Words, unusual},
};
use crate::{
    base::{
        ids::{AppointmentId, ContactId},
        zone::Zone,
    },
    platform::{
        audit::Touch,
        auth::{
            area::{Clinical, Essentials, Tasks},
            grant,
        },
        db::{Done, View, Write},
        error::{Error, Result},
        web::{
            form::{Choice, Form, FormErrors},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::{
        appointments::{
            escort::Escort,
            matter::{Matter, MatterEntry},
            matter_store,
            meeting::Meeting,
            model::{Appointment, Entry, Status, VisitKind},
            repeat::{Ends, Every, WEEK},
            store,
        },
        contacts::store as contacts,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use time::Weekday;

#[derive(Template, WebTemplate)]
#[template(path = "appointments/edit.html")]
pub struct EditPage {
    pub page: Page,
    pub typed: Typed,
    /// None: one is being booked.
    pub kept: Option<Appointment>,
    pub touch: Option<Touch>,
    pub contacts: Vec<(ContactId, String)>,
    pub escorts: Vec<(String, String)>,
    /// The days that are ticked on a plain visit.
    pub days: Vec<Weekday>,
    /// The person's zone and that of the appointment, where its clocks are others.
    pub zones: Vec<Zone>,
    /// None: the reader writes nothing clinical.
    pub matter_version: Option<i64>,
    /// This one and all later ones: what the form begins with.
    pub parts: Option<String>,
    pub leaves_out: Option<String>,
}

impl EditPage {
    fn kinds(&self) -> Vec<String> {
        VisitKind::ALL.iter().map(ToString::to_string).collect()
    }

    /// Kept and missed stay, where it is one of these.
    fn statuses(&self) -> Vec<&'static str> {
        let kept = self.kept.as_ref().map(|it| it.status);
        let kept = kept.filter(|it| matches!(it, Status::Kept | Status::Missed));
        STATUSES.into_iter().chain(kept).map(Choice::words).collect()
    }

    fn repeats(&self) -> impl Iterator<Item = &'static str> {
        Repeats::ALL.iter().map(|it| it.words())
    }

    fn of_month(&self) -> Vec<String> {
        MonthDay::ALL.iter().map(|it| it.words().to_owned()).collect()
    }

    fn ends(&self) -> impl Iterator<Item = &'static str> {
        HowItEnds::ALL.iter().map(|it| it.words())
    }

    fn week(&self) -> Vec<(&'static str, String, bool)> {
        let day = |(day, letters): &(Weekday, &'static str)| {
            (*letters, day.to_string(), self.days.contains(day))
        };
        WEEK.iter().map(day).collect()
    }

    pub async fn read(
        grant: &Changing,
        view: &View<Tasks>,
        (page, typed): (Page, Typed),
        kept: Option<(Appointment, Matter)>,
    ) -> Result<EditPage> {
        let words = Words::read(view, &page).await?;
        let contacts = match view.area::<Essentials>() {
            Some(view) => contacts::list(&view).await?,
            None => Vec::new(),
        };
        let contacts: Vec<_> =
            contacts.into_iter().map(|it| (it.id, it.name.to_string())).collect();
        let clinical = grant.may::<grant::Change<Clinical>>();
        let matter_version = kept.as_ref().map_or(0, |(_, matter)| matter.version);
        let of = kept.as_ref().map(|(it, _)| it);
        let touch = match of {
            Some(it) => view.last_change("appointment", it.id.into()).await?,
            None => None,
        };
        Ok(EditPage {
            escorts: words.choices(&contacts, of.map(Appointment::escort)),
            days: days(of),
            zones: zones(of, grant.zone()),
            leaves_out: of.and_then(|it| it.repeat()?.leaves_out(it.on_day)),
            matter_version: clinical.then_some(matter_version),
            typed: filled(typed, kept.as_ref()),
            kept: kept.map(|(it, _)| it),
            contacts,
            touch,
            page,
            parts: None,
        })
    }
}

fn days(of: Option<&Appointment>) -> Vec<Weekday> {
    match of.and_then(Appointment::repeat).map(|it| it.every) {
        Some(Every::Weeks(_, days)) => days,
        _ => Vec::new(),
    }
}

fn zones(of: Option<&Appointment>, person: &Zone) -> Vec<Zone> {
    match of {
        Some(it) if it.zone != *person => vec![it.zone.clone(), person.clone()],
        _ => Vec::new(),
    }
}

/// What stands in the fields.
fn filled(typed: Typed, kept: Option<&(Appointment, Matter)>) -> Typed {
    let Some((of, matter)) = kept else {
        return typed
            .with("status", Status::Booked)
            .with("kind", VisitKind::Routine)
            .with("minutes", 60)
            .with("repeats", Repeats::Once.words())
            .with("of_month", MonthDay::Day.words())
            .with("ends", HowItEnds::Never.words());
    };
    let typed = typed.over(of).over(matter).with("kind", of.kind);
    let typed =
        typed.with("contact_id", of.contact_id.map(|it| it.to_string()).unwrap_or_default());
    let typed =
        typed.with("at_time", of.at_time.as_ref().map(ToString::to_string).unwrap_or_default());
    let typed = typed.with("escort", of.escort().name());
    // Edited, what was cancelled stands again.
    let stands = if of.status == Status::Cancelled { Status::Booked } else { of.status };
    let typed = typed.with("status", stands);
    let typed =
        typed.with("of_month", MonthDay::Day.words()).with("ends", HowItEnds::Never.words());
    let Some(repeat) = of.repeat() else { return typed.with("repeats", Repeats::Once.words()) };
    let typed = match repeat.ends {
        Ends::Never => typed,
        Ends::After(times) => typed.with("ends", HowItEnds::After.words()).with("times", times),
        Ends::On(day) => typed.with("ends", HowItEnds::On.words()).with_day("until", day),
    };
    let (repeats, every) = match repeat.every {
        Every::Days(n) => (Repeats::Days, n),
        Every::Weeks(n, _) => (Repeats::Weeks, n),
        Every::Months(n, of) => {
            let typed = typed.with("of_month", MonthDay::of(of).words());
            return typed.with("repeats", Repeats::Months.words()).with("every", n);
        }
        Every::Years(n) => (Repeats::Years, n),
    };
    typed.with("repeats", repeats.words()).with("every", every)
}

pub async fn blank(grant: Changing, typed: Typed) -> Result<EditPage> {
    books(&grant)?;
    let page = grant.page("Add an appointment");
    EditPage::read(&grant, &grant.view().await?, (page, typed), None).await
}

pub async fn add(grant: Changing, form: Form<Booked>) -> Done {
    books(&grant)?;
    let booked = form.parse()?;
    let entry = booked.entry.sound()?;
    let mut write = grant.write().await?;
    known(&write, &entry, None).await?;
    let new = Appointment::new(write.person(), entry, grant.zone().clone());
    let id = store::add(&mut write, &new).await?;
    keep_matter(&mut write, id, (booked.matter, 0)).await?;
    let says = said(&new, format!("Added {}", new.title));
    write.commit().await?.then(urls::appointment(id)).saying(says)
}

/// With what becomes of its time, where the clocks are changed on its day.
pub fn said(of: &Appointment, line: String) -> String {
    match unusual(&Meeting::of(of, of.on_day, None)) {
        Some(it) => format!("{line}. {it}"),
        None => line,
    }
}

/// The contacts and the member must be on the lists that she sees; what stood there already stays.
pub async fn known(view: &View<Tasks>, entry: &Entry, before: Option<&Appointment>) -> Result<()> {
    let gone = |field| Err(Error::from(FormErrors::at(field, "This is not on the list any more.")));
    let kept = before.and_then(|it| it.contact_id);
    if entry.contact_id != kept && !is_contact(view, entry.contact_id).await? {
        return gone("contact_id");
    }
    match before.map(Appointment::escort) == Some(entry.escort)
        || may_escort(view, entry.escort).await?
    {
        true => Ok(()),
        false => gone("escort"),
    }
}

async fn is_contact(view: &View<Tasks>, id: Option<ContactId>) -> Result<bool> {
    let (Some(id), Some(view)) = (id, view.area::<Essentials>()) else { return Ok(id.is_none()) };
    Ok(contacts::list(&view).await?.iter().any(|it| it.id == id))
}

pub async fn may_escort(view: &View<Tasks>, escort: Escort) -> Result<bool> {
    match escort {
        Escort::Nobody | Escort::Alone => Ok(true),
        Escort::Contact(id) => is_contact(view, Some(id)).await,
        Escort::Member(id) => Ok(store::escorts(view).await?.iter().any(|(it, _)| *it == id)),
    }
}

/// What is clinical about it, where the form asked for it.
pub async fn keep_matter(
    write: &mut Write<Tasks>,
    id: AppointmentId,
    (entry, version): (Option<MatterEntry>, i64),
) -> Result<()> {
    let Some(entry) = entry else { return Ok(()) };
    let mut write = write.area::<Clinical>()?;
    let before = matter_store::of(&write, id).await?;
    if before.version != version {
        return Err(Error::Stale);
    }
    matter_store::keep(&mut write, &before, &before.with(entry)).await
}

/// The appointment with what is clinical about it; nothing, where the reader does not see that.
pub async fn whole(view: &View<Tasks>, id: AppointmentId) -> Result<(Appointment, Matter)> {
    let of = store::find(view, id).await?;
    let matter = match view.area::<Clinical>() {
        Some(view) => matter_store::of(&view, id).await?,
        None => Matter::none(of.person_id, id),
    };
    Ok((of, matter))
}

pub async fn edit(grant: Changing, At(id): At<AppointmentId>, typed: Typed) -> Result<EditPage> {
    books(&grant)?;
    let view = grant.view().await?;
    let kept = whole(&view, id).await?;
    let page = grant.page(format!("Edit {}", kept.0.title));
    EditPage::read(&grant, &view, (page, typed), Some(kept)).await
}

pub async fn save(grant: Changing, At(id): At<AppointmentId>, form: Form<Booked>) -> Done {
    books(&grant)?;
    let booked = form.parse()?;
    let entry = booked.entry.sound()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(booked.version)?;
    known(&write, &entry, Some(&before)).await?;
    let zone = booked.zone.unwrap_or_else(|| before.zone.clone());
    let after = before.edited(entry, zone);
    store::save(&mut write, &before, &after).await?;
    keep_matter(&mut write, id, (booked.matter, booked.matter_version)).await?;
    let says = said(&after, format!("Saved {}", after.title));
    write.commit().await?.then(urls::appointment(id)).saying(says)
}
