//! Noting in the history that something was opened that is not for every eye: the numbers of a
//! cover, a card. At a desk it is opened again and again, and noted once.

use crate::platform::{
    auth::{
        area::Papers,
        grant::{Grant, Leave},
    },
    db::View,
    error::Result,
};
use time::Duration;

/// What is opened within so many minutes is one opening.
const ONE_OPENING: Duration = Duration::minutes(5);

/// Notes it; says whether it could be noted. A full disk keeps nobody from a card at a desk.
pub async fn noted<L: Leave>(
    grant: &Grant<L>,
    view: &View<Papers>,
    what: (&'static str, &'static str, i64),
) -> bool {
    match note(grant, view, what).await {
        Ok(()) => true,
        Err(e) => {
            tracing::error!(error = %e, "an opening could not be noted");
            false
        }
    }
}

async fn note<L: Leave>(
    grant: &Grant<L>,
    view: &View<Papers>,
    (action, kind, item): (&'static str, &'static str, i64),
) -> Result<()> {
    let since = grant.now().minus(ONE_OPENING);
    if view.did_since((action, kind, item), since).await? {
        return Ok(());
    }
    let mut write = grant.note().await?;
    write.did(action, kind, item).await?;
    write.commit().await.map(|_| ())
}
