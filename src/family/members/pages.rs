//! The records a member shares in, and the members of one record with the open invitations.

use super::{
    invitations::{model::Invitation, store as invitations},
    model::{State, place_words, role_words},
    places::store::{self as places, Relative},
};
use crate::platform::{
    audit::Names,
    auth::{
        area::Members,
        doors::{Account, Record},
        grant::{Change, Grant, See},
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
    /// Whether she may start another record: who decides in one.
    may_start: bool,
}

pub async fn records(account: Account) -> Result<RecordsPage> {
    let records = account.records().await?;
    let may_start = records.iter().any(|it| it.reach.role.decides());
    Ok(RecordsPage { page: account.page("Records you share"), records, may_start })
}

#[derive(Template, WebTemplate)]
#[template(path = "members/family.html")]
pub struct FamilyPage {
    page: Page,
    /// Those whose place stands or is paused, and those whose place has ended.
    family: Vec<Relative>,
    ended: Vec<Relative>,
    open: Vec<Open>,
    may_change: bool,
    /// Who enters the answers of a person who does not sign in.
    entered: Option<String>,
}

/// An open invitation.
struct Open {
    invitation: Invitation,
    by: String,
    /// Whether the one who invited still decides here.
    works: bool,
}

impl FamilyPage {
    fn place(&self, it: &Relative) -> String {
        place_words(it.role, it.lowered)
    }

    fn reaches(&self, it: &Relative) -> &'static str {
        role_words(it.role)
    }

    /// What time it is for a member.
    fn clock(&self, member: &Relative) -> String {
        format!("{} in {}", member.zone.clock_words(self.page.now), member.zone.place())
    }
}

pub async fn family(grant: Grant<See<Members>>) -> Result<FamilyPage> {
    let view = grant.view().await?;
    let (names, standing) = (view.names().await?, places::list(&view).await?);
    let open = invitations::list(&view).await?.into_iter().filter(|it| it.open_at(grant.now()));
    let open = open.map(|it| listed(it, &names, |it| it.is_backed(&standing))).collect();
    let (ended, family) =
        places::family(&view).await?.into_iter().partition(|it| it.state == State::Ended);
    let may_change = grant.may::<Change<Members>>();
    let page = grant.page("Family");
    let entered = page.entered_for(&view.voice().await?);
    Ok(FamilyPage { page, family, ended, open, may_change, entered })
}

fn listed(it: Invitation, names: &Names, works: impl Fn(&Invitation) -> bool) -> Open {
    Open { by: names.of(it.invited_by).to_owned(), works: works(&it), invitation: it }
}
