//! What of the calendar needs someone within two weeks: nobody goes along, the one who was to go has no place here any more,
//! the referral ends before the day; and, however far away, one whose day its series no longer has.

use super::row::{Words, place};
use crate::{
    across::today::needs::Need,
    base::day,
    platform::{auth::area::Clinical, db::View, error::Result, web::page::Page},
    record::appointments::{calendar::Calendar, escort::Escort, matter_store, meeting::Meeting},
};
use time::Duration;

/// So many days ahead.
const DAYS: i64 = 14;

pub async fn waiting<A>(
    view: &View<A>,
    page: &Page,
    (words, calendar): (&Words, &Calendar),
) -> Result<Vec<Need>> {
    let near = calendar.meetings(page.now, page.now.plus(Duration::days(DAYS)));
    let matters = match view.area::<Clinical>() {
        Some(view) => matter_store::list(&view).await?,
        None => Vec::new(),
    };
    let named = |it: &Meeting| format!("{}, {}", it.appointment.title, words.when(it).at());
    let need =
        |it: &Meeting, says: String| Need { says: format!("{says}: {}", named(it)), to: place(it) };
    let orphans = calendar.orphans();
    let lost = "Its series no longer has this day";
    let mut needs: Vec<_> = orphans.iter().map(|it| need(it, lost.into())).collect();
    for it in near.iter().filter(|it| it.status.is_open() && !it.orphan) {
        needs.extend(escort(it, words).map(|says| need(it, says.to_owned())));
        let matter = matters.iter().find(|matter| matter.appointment_id == it.id());
        let ends = matter.and_then(|matter| matter.referral_until);
        let ends = ends.filter(|ends| *ends < it.day(page.local()));
        needs.extend(ends.map(|ends| {
            need(it, format!("The referral ends on {}, before the day", day::words(ends)))
        }));
    }
    Ok(needs)
}

/// What is missing beside the person.
fn escort(it: &Meeting, words: &Words) -> Option<&'static str> {
    match it.escort {
        Escort::Nobody => Some("Nobody goes along yet"),
        Escort::Member(id) if words.has_left(id) => {
            Some("Who was to go along has no place here any more")
        }
        _ => None,
    }
}
