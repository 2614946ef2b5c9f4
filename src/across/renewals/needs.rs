//! What is to be renewed and needs someone, for Today: from a week before the latest day to begin, until
//! someone renews it or says that it is let lapse. Where the papers say by themselves that one lapses
//! soon, it is not said twice.

use super::item::{self, Item, State};
use crate::{
    across::today::needs::Need,
    platform::{audit::Names, auth::area::Papers, db::View, error::Result},
    record::papers::lapse::SOON,
};
use time::Date;

pub async fn of(view: &View<Papers>, names: &Names, today: Date) -> Result<Vec<Need>> {
    let all = item::all(view, today).await?.into_iter();
    let needs = all.filter(|it| it.needs_someone(today) && !is_said(it, today)).map(|it| {
        let by = match it.state() {
            State::Renewing(by) => format!(" ({} renews it)", names.of(by)),
            _ => String::new(),
        };
        let says = format!("To be renewed: {}: {}{by}", it.title, it.begin_words(today));
        Need { says, to: it.address() }
    });
    Ok(needs.collect())
}

/// Whether Today has a line of the paper's own: around its last day.
fn is_said(it: &Item, today: Date) -> bool {
    let (kind, _) = it.named();
    kind == "paper" && (it.last - today).whole_days().abs() <= SOON
}
