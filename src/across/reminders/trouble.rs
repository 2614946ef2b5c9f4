//! Mail that was refused or given up: told to those who decide, once a day for each member whose mail
//! it was, and never to herself, whom mail does not reach.
//!
//! Mail of this kind that is lost itself is not told of again: two dead addresses would write to each
//! other for ever.

use super::occasion::{Asked, Occasion, Says};
use crate::{
    family::members::mail_choices::kind::Kind,
    platform::{error::Result, mail::GivenUp, web::urls},
};
use time::Duration;

/// How long it is news.
const NEWS: Duration = Duration::days(3);

pub async fn occasions(asked: &Asked<'_>) -> Result<Vec<Occasion>> {
    let lost = asked.view.given_up(asked.now.minus(NEWS)).await?;
    let told = |it: &GivenUp| {
        let own = it.recipient == asked.whom.email.as_str();
        !own && !it.reached_since && it.kind != Kind::Trouble.name()
    };
    Ok(lost.iter().filter(|it| told(it)).map(|it| occasion(asked, it)).collect())
}

fn occasion(asked: &Asked<'_>, it: &GivenUp) -> Occasion {
    let whose = it.member.map_or(0, i64::from);
    Occasion {
        kind: Kind::Trouble,
        item_kind: "member",
        item: whose,
        occurrence: asked.zone().day(it.at).to_string(),
        at: it.at,
        begins: None,
        until: Some(it.at.plus(NEWS)),
        stands: true,
        says: Says::Trouble,
        why: "mail about this record did not arrive",
        to: urls::reminders(),
    }
}
