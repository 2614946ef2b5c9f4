//! The index of the words on the pages of papers, as a whole: taken out of a copy, and built anew
//! where it was.
//!
//! While a house is in use the index follows the pages by itself (the triggers of the migration). A
//! backup holds the pages and not the index, which is as large again: a house that is opened builds
//! it, so a restored one finds what it found before.

use sqlx::SqliteConnection;

/// Takes it out; the pages stay.
pub(super) async fn leave_out(copy: &mut SqliteConnection) -> sqlx::Result<()> {
    sqlx::query("insert into page_word (page_word) values ('delete-all')")
        .execute(&mut *copy)
        .await?;
    sqlx::query!("update page_mark set whole = 0").execute(copy).await?;
    Ok(())
}

/// Builds it where it was left out.
pub(super) async fn demand_whole(writer: &mut SqliteConnection) -> sqlx::Result<()> {
    let whole = sqlx::query_scalar!(r#"select whole as "whole: bool" from page_mark"#);
    if whole.fetch_one(&mut *writer).await? {
        return Ok(());
    }
    sqlx::query("insert into page_word (page_word) values ('rebuild')")
        .execute(&mut *writer)
        .await?;
    sqlx::query!("update page_mark set whole = 1").execute(writer).await?;
    Ok(())
}
