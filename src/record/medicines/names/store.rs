//! All the SQL of names: they belong to no record, so no query names a person.

use super::rrf::Entry;
use crate::platform::{
    auth::area::Own,
    db::{View, Write},
    error::Result,
};
use sqlx::{query, query_scalar};

/// How many names a completion offers.
pub const MOST: i64 = 12;

/// Takes away what an earlier import made.
pub async fn clear(write: &Write<Own>) -> Result<()> {
    write.machinery(query!("delete from drug_name")).await?;
    write.machinery(query!("delete from drug_brand")).await.map(|_| ())
}

/// Keeps what one line holds; whether that was anything.
pub async fn keep(write: &Write<Own>, entry: &Entry) -> Result<bool> {
    match entry {
        Entry::Ingredient(name) => name_once(write, name, "ingredient").await?,
        Entry::Brand(name) => name_once(write, name, "brand").await?,
        Entry::Product { brand, ingredients } => {
            for ingredient in ingredients {
                let kept = query!(
                    "insert into drug_brand (brand, ingredient) values (?, ?) on conflict do nothing",
                    brand,
                    ingredient
                );
                write.machinery(kept).await?;
            }
        }
        Entry::Skipped => return Ok(false),
    }
    Ok(true)
}

async fn name_once(write: &Write<Own>, name: &str, kind: &'static str) -> Result<()> {
    let kept = query!(
        "insert into drug_name (name, kind) values (?, ?) on conflict do nothing",
        name,
        kind
    );
    write.machinery(kept).await.map(|_| ())
}

/// Names that begin so, the shortest first: that is the plain one, and not its salts.
pub async fn beginning<A>(view: &View<A>, start: &str) -> Result<Vec<String>> {
    // The last letter there is, so that an index finds all that begin so.
    let end = format!("{start}\u{10ffff}");
    view.values(query_scalar!(
        r#"select name as "name!: String" from drug_name where name >= ? and name < ?
        group by name order by length(name), name limit ?"#,
        start,
        end,
        MOST
    ))
    .await
}

/// Brands among these names, each with an ingredient that is sold under it. A brand of one
/// ingredient stands once; the names as they were asked for.
pub async fn brands<A>(view: &View<A>, names: &[String]) -> Result<Vec<(String, String)>> {
    let asked = serde_json::to_string(names).unwrap_or_default();
    let all = view.all(query!(
        r#"select brand as "brand!: String", ingredient as "ingredient!: String" from drug_brand
        where brand in (select value from json_each(?)) order by brand, id"#,
        asked
    ));
    Ok(all.await?.into_iter().map(|it| (it.brand, it.ingredient)).collect())
}
