//! How the mail about a record fares, for those who decide: whether it leaves the house, what it may
//! say, what waits, and what was given up.

use crate::{
    platform::{
        auth::{
            area::{Essentials, Members},
            grant::{Change, Grant},
        },
        error::Result,
        mail::GivenUp,
        web::{page::Page, urls},
    },
    record::people::store as people,
};
use askama::Template;
use askama_web::WebTemplate;
use time::Duration;

#[derive(Template, WebTemplate)]
#[template(path = "reminders/show.html")]
pub struct ShowPage {
    page: Page,
    leaves: bool,
    /// What mail may say; none where she does not reach the essentials.
    says: Option<&'static str>,
    waiting: i64,
    lost: Vec<Lost>,
}

/// A message that was given up, and for whom it was.
struct Lost {
    mail: GivenUp,
    whom: String,
}

pub async fn show(grant: Grant<Change<Members>>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let names = view.names().await?;
    let says = match view.area::<Essentials>() {
        Some(view) => Some(people::find(&view).await?.mail_says.short()),
        None => None,
    };
    let lost = view.given_up(grant.now().minus(Duration::days(30))).await?;
    let whom = |it: &GivenUp| match it.member {
        Some(member) => names.of(member).to_owned(),
        None => it.recipient.clone(),
    };
    let lost = lost.into_iter().map(|mail| Lost { whom: whom(&mail), mail }).collect();
    Ok(ShowPage {
        leaves: grant.house().carrier.leaves(),
        says,
        waiting: view.mail_waiting().await?,
        lost,
        page: grant.page("Mail about this record"),
    })
}
