//! The records a member shares in, and the members of one record.

use super::{
    model::role_words,
    store::{self, Relative},
};
use crate::platform::{
    auth::{
        area::{Members, Role},
        doors::{Account, Record},
        grant::{Grant, See},
    },
    error::Result,
    web::{page::Page, urls},
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "members/records.html")]
pub struct RecordsPage {
    page: Page,
    records: Vec<Record>,
}

pub async fn records(account: Account) -> Result<RecordsPage> {
    let records = account.records().await?;
    Ok(RecordsPage { page: account.page("Records you share"), records })
}

#[derive(Template, WebTemplate)]
#[template(path = "members/family.html")]
pub struct FamilyPage {
    page: Page,
    family: Vec<Relative>,
}

impl FamilyPage {
    fn reaches(&self, role: &Role) -> &'static str {
        role_words(*role)
    }

    /// What time it is for a member.
    fn clock(&self, member: &Relative) -> String {
        format!("{} in {}", member.zone.clock_words(self.page.now), member.zone.place())
    }
}

pub async fn family(grant: Grant<See<Members>>) -> Result<FamilyPage> {
    let family = store::family(&grant.view().await?).await?;
    Ok(FamilyPage { page: grant.page("Family"), family })
}
