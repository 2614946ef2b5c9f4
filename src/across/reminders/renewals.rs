//! A paper that is to be renewed: once a week before the latest day to begin, and once on that day. The
//! mail says that a paper is to be renewed, and never which.
//!
//! It is one cycle for each last day: another time for the form moves the day to begin, and does not
//! begin anew. What someone renews, or what is let lapse, reminds of nothing.

use super::occasion::{Asked, Occasion, Says};
use crate::{
    across::renewals::item::{self, BEFORE, Item, State},
    base::clock::Instant,
    family::members::mail_choices::kind::Kind,
    platform::{auth::area::Papers, error::Result, web::urls},
};
use time::{Date, Duration};

/// So long after its last day, what is written down is more likely old than the paper still wanted.
const OF_USE: Duration = Duration::days(14);

pub async fn occasions(asked: &Asked<'_>) -> Result<Vec<Occasion>> {
    let Some(view) = asked.view.area::<Papers>() else { return Ok(Vec::new()) };
    let today = asked.whom.whose_zone.day(asked.now);
    let all = item::all(&view, today).await?;
    let stands = all.iter().filter(|it| it.state() == State::Stands);
    Ok(stands.map(|it| occasion(asked, it)).collect())
}

fn occasion(asked: &Asked<'_>, it: &Item) -> Occasion {
    let (stage, at) = stage(it.start.on, |day| asked.of_day(day), asked.now);
    let (kind, item) = it.named();
    Occasion {
        kind: Kind::Renewal,
        item_kind: kept_kind(kind),
        item,
        // A cover has two last days.
        occurrence: format!("{}{}, {stage}", if kind == "talks" { "talks " } else { "" }, it.last),
        at,
        begins: None,
        until: Some(asked.of_day(it.last.saturating_add(OF_USE))),
        stands: true,
        says: Says::Renewal,
        why: "the latest day to begin renewing a paper is near",
        // Its own address may say what it is.
        to: urls::renewals(),
    }
}

/// The kinds that can be hidden: asked again before the mail leaves.
fn kept_kind(kind: &str) -> &'static str {
    match kind {
        "medicine" => "medicine",
        "window" => "window",
        "paper" => "paper",
        "cover" | "talks" => "cover",
        "card" => "card",
        _ => "renewal",
    }
}

/// The later of the two that has come, or the first.
fn stage(start: Date, of_day: impl Fn(Date) -> Instant, now: Instant) -> (&'static str, Instant) {
    match of_day(start) {
        on_it if on_it <= now => ("on the day", on_it),
        _ => ("a week before", of_day(start.saturating_sub(Duration::days(BEFORE)))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::zone::Zone;
    use time::macros::{date, datetime, time};

    #[test]
    fn it_is_said_a_week_before_the_latest_day_to_begin_and_on_it() {
        let zone = Zone::parse("America/Chicago").expect("a zone");
        let of_day = |day| zone.instant(day, time!(09:00));
        let at = |utc| stage(date!(2026 - 12 - 23), of_day, Instant::new(utc));
        let before = Instant::new(datetime!(2026-12-16 15:00 UTC));
        assert_eq!(at(datetime!(2026-12-01 00:00 UTC)), ("a week before", before));
        assert_eq!(at(datetime!(2026-12-23 14:59 UTC)), ("a week before", before));
        let day = Instant::new(datetime!(2026-12-23 15:00 UTC));
        assert_eq!(at(datetime!(2026-12-23 15:00 UTC)), ("on the day", day));
    }
}
