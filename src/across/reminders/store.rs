//! Up to which moment was looked for what has become due.

use crate::base::clock::Instant;
use crate::platform::{
    auth::area::Own,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_scalar};

/// None: never yet.
pub async fn looked_at(view: &View<Own>) -> Result<Option<Instant>> {
    let kept =
        query_scalar!(r#"select looked_at as "at: Instant" from reminder_mark where id = 1"#);
    Ok(view.values(kept).await?.pop())
}

pub async fn look_up_to(write: &mut Write<Own>, at: Instant) -> Result<()> {
    let moved = query!(
        "insert into reminder_mark (id, looked_at) values (1, ?1)
        on conflict (id) do update set looked_at = ?1",
        at
    );
    write.machinery(moved).await.map(|_| ())
}
