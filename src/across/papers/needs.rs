//! What needs someone of the papers, for Today: how many wait, and which lapse soon or did not long ago.

use crate::{
    across::today::needs::Need,
    platform::{auth::area::Papers, db::View, error::Result, web::urls},
    record::papers::{lapse::SOON, store},
};
use time::{Date, Duration};

pub async fn of(view: &View<Papers>, today: Date) -> Result<Vec<Need>> {
    let waiting = store::waiting(view).await?;
    let says = match waiting.len() {
        0 => None,
        1 => Some("1 paper waits in the tray".to_owned()),
        many => Some(format!("{many} papers wait in the tray")),
    };
    let mut needs: Vec<Need> =
        says.map(|says| Need { says, to: urls::tray() }).into_iter().collect();
    let until = today.saturating_add(Duration::days(SOON));
    let lapsing =
        store::lapsing(view, until).await?.into_iter().filter(|it| it.needs_a_look(today));
    needs.extend(lapsing.filter_map(|it| {
        let says = format!("{} {}", it.title(), it.lapse_words(today)?);
        Some(Need { says, to: urls::paper(it.id) })
    }));
    Ok(needs)
}
