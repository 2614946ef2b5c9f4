//! A medicine that runs out: once when its day to act is three days away, and once on that day. The
//! mail says that a supply needs attention, and never which.
//!
//! It is one cycle for each fill: a new count moves the day, and does not begin anew.

use super::occasion::{Asked, Occasion, Says};
use crate::{
    base::clock::Instant,
    family::members::mail_choices::kind::Kind,
    platform::{auth::area::Clinical, error::Result, web::urls},
    record::medicines::stock::standing::{self, Standing},
};
use time::{Date, Duration};

/// How many days before the day to act the first goes: as Today shows it.
const SOON: Duration = Duration::days(3);
/// So long after the day to act, what is written down is more likely old than the supply out.
const OF_USE: Duration = Duration::days(14);

pub async fn occasions(asked: &Asked<'_>) -> Result<Vec<Occasion>> {
    let Some(view) = asked.view.area::<Clinical>() else { return Ok(Vec::new()) };
    let today = asked.whom.whose_zone.day(asked.now);
    let all = standing::all(&view, today).await?;
    Ok(all.iter().filter_map(|it| occasion(asked, it)).collect())
}

fn occasion(asked: &Asked<'_>, it: &Standing) -> Option<Occasion> {
    let act = it.act.as_ref()?.on;
    let (stage, at) = stage(act, |day| asked.of_day(day), asked.now);
    let cycle = match it.written.fills.last() {
        Some(fill) => format!("fill {}", fill.id),
        None => act.to_string(),
    };
    Some(Occasion {
        kind: Kind::Supply,
        item_kind: "medicine",
        item: it.id().into(),
        occurrence: format!("{cycle}, {stage}"),
        at,
        begins: None,
        until: Some(asked.of_day(act.saturating_add(OF_USE))),
        stands: true,
        says: Says::Supply,
        why: "a supply is near its day to act",
        // Its own address would say what kind of supply it is.
        to: urls::today(),
    })
}

/// The later of the two that has come, or the first.
fn stage(act: Date, of_day: impl Fn(Date) -> Instant, now: Instant) -> (&'static str, Instant) {
    match of_day(act) {
        on_it if on_it <= now => ("on the day", on_it),
        _ => ("soon", of_day(act.saturating_sub(SOON))),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::zone::Zone;
    use time::macros::{date, datetime, time};

    #[test]
    fn it_is_said_three_days_before_the_day_to_act_and_on_it() {
        let zone = Zone::parse("America/Chicago").expect("a zone");
        let of_day = |day| zone.instant(day, time!(09:00));
        let at = |utc| stage(date!(2026 - 12 - 23), of_day, Instant::new(utc));
        let soon = Instant::new(datetime!(2026-12-20 15:00 UTC));
        assert_eq!(at(datetime!(2026-12-01 00:00 UTC)), ("soon", soon));
        assert_eq!(at(datetime!(2026-12-23 14:59 UTC)), ("soon", soon));
        let day = Instant::new(datetime!(2026-12-23 15:00 UTC));
        assert_eq!(at(datetime!(2026-12-23 15:00 UTC)), ("on the day", day));
    }
}
