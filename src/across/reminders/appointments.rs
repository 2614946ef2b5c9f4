//! An upcoming appointment, so long before as a member chose: all of them, or those she goes along
//! to.
//!
//! Of the times before that have come since was last looked, the nearest counts: after an absence one
//! mail goes, not three. Its time stands in the key, so that one that is moved is reminded of anew.

use super::{
    occasion::{Asked, Occasion, Says},
    unsaid::Unsaid,
};
use crate::{
    base::clock::Instant,
    family::members::mail_choices::{kind::Kind, model::Whose},
    platform::{
        auth::area::{Essentials, Tasks},
        db::View,
        error::Result,
        web::urls,
    },
    record::{
        appointments::{meeting::Meeting, store},
        contacts::{model::Contact, store as contacts},
    },
};
use time::Duration;

/// Quiet hours may send a reminder a day earlier.
const EARLIER: Duration = Duration::hours(25);

pub async fn occasions(asked: &Asked<'_>) -> Result<Vec<Occasion>> {
    let Some(view) = asked.view.area::<Tasks>() else { return Ok(Vec::new()) };
    let longest = asked.choice.leads.hours().max().unwrap_or(0);
    let until = asked.now.plus(Duration::hours(longest) + EARLIER);
    let mine = |it: &Meeting| {
        asked.choice.appointments == Whose::All || it.escort.is_member(asked.whom.member)
    };
    let all = store::meetings(&view, asked.now.minus(Duration::days(1)), until).await?.into_iter();
    let mut due = Vec::new();
    for it in all.filter(|it| it.status.is_open() && !it.orphan && mine(it)) {
        due.extend(nearest(asked, &it));
    }
    if asked.whom.names && !due.is_empty() {
        let (unsaid, contacts) = (Unsaid::read(asked).await?, contacts_of(&view).await?);
        for (occasion, meeting) in &mut due {
            if let Says::Appointment { named, .. } = &mut occasion.says {
                *named = name(meeting, &unsaid, &contacts);
            }
        }
    }
    Ok(due.into_iter().map(|it| it.0).collect())
}

/// The reminder nearest to the appointment that is due.
fn nearest(asked: &Asked<'_>, it: &Meeting) -> Option<(Occasion, Meeting)> {
    let hours = asked.choice.leads.hours().filter(|hours| it.is_timed() || hours % 24 == 0);
    let each = hours.map(|hours| (hours, occasion(asked, it, hours)));
    let due = each.filter(|(_, occasion)| asked.is_due(occasion)).min_by_key(|it| it.0);
    due.map(|(_, occasion)| (occasion, it.clone()))
}

fn occasion(asked: &Asked<'_>, it: &Meeting, hours: i64) -> Occasion {
    let day = it.day(&asked.whom.whose_zone);
    // Of one whose time is not known, the day is counted from its morning.
    let begins = if it.is_timed() { it.starts } else { asked.of_day(day) };
    let at: Instant = begins.minus(Duration::hours(hours));
    Occasion {
        kind: Kind::Appointment,
        item_kind: "appointment",
        item: it.id().into(),
        occurrence: format!("{}, {}, {hours} hours before", it.on, it.starts),
        at,
        begins: Some(begins),
        until: Some(begins),
        stands: false,
        says: Says::Appointment { on: day, at: it.is_timed().then_some(it.starts), named: None },
        why: match it.escort.is_member(asked.whom.member) {
            true => "an appointment that this member goes along to is near",
            false => "an appointment is near",
        },
        to: urls::appointment_on(it.id(), it.on),
    }
}

async fn contacts_of(view: &View<Tasks>) -> Result<Vec<Contact>> {
    match view.area::<Essentials>() {
        Some(view) => contacts::list(&view).await,
        None => Ok(Vec::new()),
    }
}

/// "Heart check-up with Dr Adaeze Oyelaran", as far as mail may say it.
fn name(it: &Meeting, unsaid: &Unsaid, contacts: &[Contact]) -> Option<String> {
    let contact = it.appointment.contact_id.and_then(|id| contacts.iter().find(|it| it.id == id));
    let with = contact.map(|it| &it.name).or(it.appointment.with_whom.as_ref());
    let title = it.appointment.title.to_string();
    unsaid.may_say(&title).then(|| match with.filter(|it| unsaid.may_say(it.as_str())) {
        Some(with) => format!("{title} with {with}"),
        None => title,
    })
}
