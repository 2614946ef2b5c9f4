//! How many things are new since a member last confirmed having read, and nothing of what: every day
//! or every Monday, and only if something is new since the time before.

use super::occasion::{Asked, Occasion, Says};
use crate::{
    across::{history::days, today::read},
    base::clock::Instant,
    family::members::mail_choices::{kind::Kind, model::HowOften},
    platform::{audit::read::Wanted, auth::area::History, db::View, error::Result, web::urls},
};
use time::{Date, Duration};

/// More than so many are not counted.
const MOST: usize = 100;

pub async fn occasions(asked: &Asked<'_>) -> Result<Vec<Occasion>> {
    let every = if asked.choice.digest == HowOften::Daily { 1 } else { 7 };
    let today = asked.zone().day(asked.now);
    let days = latest(today, every).into_iter();
    let come = days.map(|it| (it, asked.of_day(it))).find(|(_, at)| *at <= asked.now);
    let (Some((day, at)), Some(view)) = (come, asked.view.area::<History>()) else {
        return Ok(Vec::new());
    };
    let mut it = Occasion {
        kind: Kind::Digest,
        item_kind: "record",
        item: asked.whom.person.into(),
        occurrence: day.to_string(),
        at,
        begins: None,
        until: Some(at.plus(Duration::days(every))),
        stands: false,
        says: Says::Digest { new: 0, or_more: false },
        why: "how much is new since she last confirmed having read",
        to: urls::today(),
    };
    // Counting takes a while: only when its time has come.
    if !asked.is_due(&it) {
        return Ok(Vec::new());
    }
    // The time before, or when was last looked, if that was missed.
    let before = asked.of_day(day.saturating_sub(Duration::days(every))).min(asked.since);
    Ok(match count(asked, &view, before).await? {
        Some((new, or_more)) => {
            it.says = Says::Digest { new, or_more };
            vec![it]
        }
        None => Vec::new(),
    })
}

/// The newest two days on which one is due, the later first.
fn latest(today: Date, every: i64) -> [Date; 2] {
    let since = match every {
        1 => 0,
        _ => i64::from(today.weekday().number_days_from_monday()),
    };
    let last = today.saturating_sub(Duration::days(since));
    [last, last.saturating_sub(Duration::days(every))]
}

/// How many, and whether there are more. None: nothing that came since the time before.
async fn count(
    asked: &Asked<'_>,
    view: &View<History>,
    before: Instant,
) -> Result<Option<(usize, bool)>> {
    let wanted = Wanted {
        after: Some(read::mark(view).await?),
        not_by: Some(asked.whom.member),
        changes_only: true,
        most: Some(MOST),
        ..Wanted::default()
    };
    let zone = &asked.whom.whose_zone;
    let told = days::tell(view, &wanted, zone, zone.day(asked.now)).await?;
    let mut sentences = told.days.iter().flat_map(|it| &it.sentences);
    let fresh = sentences.any(|it| it.at > before);
    Ok((fresh && told.entries > 0).then_some((told.entries, told.goes_on)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    #[test]
    fn a_week_begins_on_monday() {
        let wednesday = date!(2026 - 11 - 25);
        assert_eq!(latest(wednesday, 7), [date!(2026 - 11 - 23), date!(2026 - 11 - 16)]);
        let monday = date!(2026 - 11 - 23);
        assert_eq!(latest(monday, 7), [monday, date!(2026 - 11 - 16)]);
        assert_eq!(latest(wednesday, 1), [wednesday, date!(2026 - 11 - 24)]);
    }
}
