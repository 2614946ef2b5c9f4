//! A dose as needed, or at a time of its own. Where the label says to wait, or names a most in 24
//! hours, what was entered is shown before it is kept; a second press keeps it all the same, since
//! what was given was given.

use super::super::{
    model::Medicine,
    schedule::{directions::counted, model::Step},
};
use super::{
    day::needed_step,
    form::AsNeeded,
    ground::{Ground, taken},
    label,
    model::{Given, Outcome, Point, Said, whom},
    pages::in_a_day,
    store,
};
use crate::base::{clock::Instant, ids::MedicineId, text::Line, zone::Zone};
use crate::platform::{
    auth::{
        area::Log,
        grant::{Change, Grant},
    },
    db::{Done, View},
    error::Result,
    web::{
        form::{Form, FormErrors},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use time::{Date, Duration, Time};

type Changing = Grant<Change<Log>>;

#[derive(Template, WebTemplate)]
#[template(path = "medicines/given/as_needed.html")]
pub struct AsNeededPage {
    page: Page,
    typed: Typed,
    medicine: Medicine,
    step: Option<Step>,
    unit: Line,
    sum: Option<String>,
    /// The newest entry, which the warning was about.
    newest: i64,
}

pub async fn entering(
    grant: Changing,
    At(id): At<MedicineId>,
    typed: Typed,
) -> Result<AsNeededPage> {
    let view = grant.view().await?;
    let (ground, names) = (Ground::read(&view).await?, view.names().await?);
    let medicine = ground.find(id)?.clone();
    let (today, now) = (grant.today(), grant.now());
    let step = needed_step(&ground.steps, id, today).cloned();
    let taken = taken(&view, &grant, (id, today), &names).await?;
    let amount = step.as_ref().and_then(|it| it.times.each().next());
    let amount = amount.map_or(String::new(), |it| it.1.to_string());
    let typed = typed.with("amount", amount).with_day("day", today);
    let typed = typed.with("time", grant.zone().clock_words(now));
    Ok(AsNeededPage {
        page: grant.page(format!("Given: {}", medicine.title())),
        typed: typed.with("by", names.of(grant.member())),
        unit: unit(&medicine, step.as_ref()),
        sum: step.as_ref().map(|it| {
            let unit = it.unit.as_str();
            in_a_day(label::sum(&taken, unit, now), unit, it.most_a_day)
        }),
        newest: newest(&view, id, today).await?,
        medicine,
        step,
    })
}

/// What is counted: as its step says, or the form on its label.
fn unit(medicine: &Medicine, step: Option<&Step>) -> Line {
    let dose = || Line::from("dose".to_owned());
    step.map(|it| it.unit.clone()).or(medicine.form.clone()).unwrap_or_else(dose)
}

async fn newest(view: &View<Log>, id: MedicineId, today: Date) -> Result<i64> {
    let days = (today - Duration::days(15), today);
    let entries = store::list(view, Some(id), days).await?;
    Ok(entries.last().map_or(0, |it| it.id.into()))
}

pub async fn enter(grant: Changing, At(id): At<MedicineId>, form: Form<AsNeeded>) -> Done {
    let sent = form.parse()?;
    let mut write = grant.write().await?;
    let (ground, names) = (Ground::read(&write).await?, write.names().await?);
    let medicine = ground.find(id)?;
    let (date, at) = moment((sent.day, sent.time), grant.now(), grant.zone())?;
    let step = needed_step(&ground.steps, id, date);
    let taken = taken(&write, &grant, (id, date), &names).await?;
    let says = label::warnings(step, &taken, (at, sent.amount), grant.zone());
    let read = sent.anyway == Some(newest(&write, id, grant.today()).await?);
    if !says.is_empty() && !read {
        return Err(FormErrors::at("anyway", says.join(" ")).into());
    }
    let by = whom(sent.by, write.member(), &write.members().await?);
    let said = Said { amount: sent.amount, outcome: Outcome::Given, note: sent.note, by };
    let unit = unit(medicine, step);
    let line = format!("{} {} entered", counted(said.amount, unit.as_str()), medicine.name);
    let of = (write.person(), id);
    let entered = (write.member(), write.at());
    let new = Given::new(of, Point::Moment(date, at), (said.sound()?, unit), entered);
    store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::given_on(date)).saying(line)
}

/// The moment of a day and a time by the clock; without them it is now.
pub(super) fn moment(
    (day, time): (Option<Date>, Option<Time>),
    now: Instant,
    zone: &Zone,
) -> Result<(Date, Instant)> {
    let today = zone.day(now);
    let (day, time) = match (day.unwrap_or(today), time) {
        (day, Some(time)) => (day, time),
        (day, None) if day == today => return Ok((today, now)),
        _ => return Err(FormErrors::at("time", "Write the time, like 8:30 am.").into()),
    };
    let first = zone.instant(day, time);
    // An hour that comes twice: the later one, if it has come.
    let again = first.plus(Duration::hours(1));
    let twice = zone.wall(again) == zone.wall(first) && again <= now;
    let at = if twice { again } else { first };
    match at > now {
        true => Err(FormErrors::at("time", "This has not come yet.").into()),
        false => Ok((day, at)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::{date, datetime, time};

    #[test]
    fn a_time_by_the_clock_is_a_moment_that_has_come() {
        let zone = Zone::parse("America/New_York").expect("a zone");
        let now = Instant::new(datetime!(2026-11-01 06:45 UTC));
        let read = |day, time| moment((Some(day), time), now, &zone).ok().map(|it| it.1.utc());
        let sunday = date!(2026 - 11 - 01);
        // 1:30 am came at 05:30Z and again at 06:30Z: RFC 5545 §3.3.5, Python zoneinfo.
        assert_eq!(read(sunday, Some(time!(1:30))), Some(datetime!(2026-11-01 06:30 UTC)));
        assert_eq!(read(sunday, Some(time!(1:50))), Some(datetime!(2026-11-01 05:50 UTC)));
        assert_eq!(read(sunday, Some(time!(2:10))), None, "not yet");
        assert_eq!(read(sunday, None), Some(now.utc()));
        assert_eq!(read(date!(2026 - 10 - 31), None), None);
    }
}
