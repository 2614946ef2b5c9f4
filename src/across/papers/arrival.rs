//! What became of each file of a pile, kept for the one who sent it.
//!
//! It is machinery: what was kept of the pile has its own history, and this only says what was not, and
//! why. Nobody reads another's. Thirty days later it is forgotten, when the next pile comes.

use crate::{
    base::{
        clock::Instant,
        ids::{ArrivalId, PaperId},
        text::Line,
    },
    platform::{
        auth::area::Papers,
        db::{View, Write},
        error::{Error, Result},
    },
};
use serde::{Deserialize, Serialize};
use sqlx::{query, query_scalar};

/// One file: its name, and what became of it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Told {
    pub name: String,
    pub came: Came,
}

#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub enum Came {
    /// It is this paper now.
    Kept(i64),
    /// It was here already, as this paper.
    Same(i64),
    /// Why not.
    Not(String),
}

impl Told {
    pub fn kept(name: Option<&Line>, id: PaperId) -> Told {
        Told { name: named(name), came: Came::Kept(id.into()) }
    }

    pub fn same(name: Option<&Line>, id: PaperId) -> Told {
        Told { name: named(name), came: Came::Same(id.into()) }
    }

    pub fn not(name: Option<&Line>, says: &str) -> Told {
        Told { name: named(name), came: Came::Not(says.to_owned()) }
    }
}

fn named(name: Option<&Line>) -> String {
    name.map_or("a file without a name".to_owned(), ToString::to_string)
}

const KEPT: time::Duration = time::Duration::days(30);

pub async fn add(write: &Write<Papers>, told: &[Told]) -> Result<ArrivalId> {
    let (person, member, at) = (write.person(), write.member(), write.at());
    let told = serde_json::to_string(told).map_err(|e| Error::Internal(e.into()))?;
    let old: Instant = at.minus(KEPT);
    write
        .machinery(query!("delete from tray_arrival where person_id = ? and at < ?", person, old))
        .await?;
    write
        .machinery(query!(
            "insert into tray_arrival (person_id, member_id, at, told) values (?, ?, ?, ?)",
            person,
            member,
            at,
            told
        ))
        .await?;
    let newest = write.values(query_scalar!(
        r#"select max(id) as "id!: ArrivalId" from tray_arrival where person_id = ? and member_id = ?"#,
        person,
        member
    ));
    newest.await?.pop().ok_or(Error::NotFound)
}

/// The reader's own.
pub async fn find(view: &View<Papers>, id: ArrivalId) -> Result<Vec<Told>> {
    let (person, member) = (view.person(), view.member());
    let found = view.values(query_scalar!(
        "select told from tray_arrival where person_id = ? and member_id = ? and id = ?",
        person,
        member,
        id
    ));
    let told = found.await?.pop().ok_or(Error::NotFound)?;
    serde_json::from_str(&told).map_err(|e| Error::Internal(e.into()))
}
