//! Mail that did not arrive, for those who decide: of the last seven days, as long as nothing reached
//! the same address since.

use super::Need;
use crate::{
    base::clock::Instant,
    platform::{auth::area::Members, db::View, error::Result, web::urls},
};
use time::Duration;

const SHOWN: Duration = Duration::days(7);

pub async fn lost(view: &View<Members>, now: Instant) -> Result<Vec<Need>> {
    let lost = view.given_up(now.minus(SHOWN)).await?;
    let mut to: Vec<_> = lost.into_iter().filter(|it| !it.reached_since).collect();
    to.sort_by(|a, b| a.recipient.cmp(&b.recipient));
    to.dedup_by(|a, b| a.recipient == b.recipient);
    let need = |it: &str| Need::new(format!("Mail to {it} did not arrive"), urls::reminders());
    Ok(to.iter().map(|it| need(&it.recipient)).collect())
}
