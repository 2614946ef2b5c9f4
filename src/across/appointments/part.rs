//! This one and all later ones of a series, changed: the old series ends before it, and a new one goes on from it.
//!
//! What was said of single ones stays with the series it was said of. Where that series ends before their day, they stand
//! there until someone says what becomes of them.

use super::{
    Changing, books,
    edit::{EditPage, keep_matter, known, said, whole},
    form::Booked,
    show::Named,
};
use crate::{
    base::day,
    platform::auth::area::Tasks,
    platform::{
        db::{Done, View},
        error::{Error, Result},
        web::{form::Form, form::FormErrors, typed::Typed, urls},
    },
    record::appointments::{matter::Matter, model::Appointment, store},
};
use time::Date;

/// The series, where a day of it is named that is not its first: the first and all later ones are the whole.
async fn series(view: &View<Tasks>, named: &Named) -> Result<(Appointment, Matter)> {
    let (of, matter) = whole(view, named.appointment).await?;
    let is_one = of.is_series() && of.falls_on(named.day) && of.on_day != named.day && !of.struck;
    if is_one { Ok((of, matter)) } else { Err(Error::NotFound) }
}

/// What is left of it from a day on, as the form begins.
fn rest(of: &Appointment, from: Date) -> Appointment {
    let repeat = of.repeat().map(|it| it.from_day(of.on_day, from).rule(from));
    Appointment { on_day: from, repeats: repeat, ..of.clone() }
}

pub async fn parting(grant: Changing, named: Named, typed: Typed) -> Result<EditPage> {
    books(&grant)?;
    let view = grant.view().await?;
    let (of, matter) = series(&view, &named).await?;
    let rest = rest(&of, named.day);
    let page = grant.page(format!("{}: this one and all later ones", of.title));
    let begins = day::short_words(named.day);
    let edit = EditPage::read(&grant, &view, (page, typed), Some((rest, matter))).await?;
    Ok(EditPage { parts: Some(begins), ..edit })
}

pub async fn part(grant: Changing, named: Named, form: Form<Booked>) -> Done {
    books(&grant)?;
    let booked = form.parse()?;
    let entry = booked.entry.sound()?;
    let mut write = grant.write().await?;
    let (before, _) = series(&write, &named).await?;
    let before = before.opened_at(booked.version)?;
    known(&write, &entry, Some(&before)).await?;
    let ended = before.ended_before(named.day).ok_or(Error::NotFound)?;
    if entry.on_day <= ended.on_day {
        let says = "This is not after the series that it goes on with began.";
        return Err(FormErrors::at("on_day", says).into());
    }
    let zone = booked.zone.unwrap_or_else(|| before.zone.clone());
    let after = before.followed_by(entry, zone);
    store::save(&mut write, &before, &ended).await?;
    let id = store::add(&mut write, &after).await?;
    keep_matter(&mut write, id, (booked.matter, 0)).await?;
    let line = format!("{} goes on from {} as you wrote it", after.title, day::words(after.on_day));
    let says = said(&after, line);
    write.commit().await?.then(urls::appointment(id)).saying(says)
}
