//! Where the link of an invitation leads: someone new chooses a password and is in; someone who
//! signs in here already accepts with one press.

use super::{
    super::{
        model::{Member, Membership, State},
        places::store as places,
        store as members,
    },
    form::Joining,
    model::{HAS_PLACE, Invitation, UNKNOWN},
    store::{self, Names},
};
use crate::base::{clock::Instant, ids::MemberId, zone::Zone};
use crate::platform::{
    auth::{
        area::{Members, Own},
        doors::{Account, Visitor},
    },
    db::{Done, View, Write},
    error::{Error, Result},
    web::{form::Form, page::Page, typed::Typed, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Path;

#[derive(Template, WebTemplate)]
#[template(path = "members/join.html")]
pub struct JoinPage {
    page: Page,
    typed: Typed,
    invitation: Invitation,
    names: Names,
    token: String,
    /// Signed in already: one press is all.
    signed_in: bool,
}

impl JoinPage {
    fn zones(&self) -> Vec<String> {
        Zone::names().map(|it| it.name().to_owned()).collect()
    }
}

/// Someone who is signed in gets the page with the one press.
pub async fn show(
    visitor: Visitor,
    account: std::result::Result<Account, Error>,
    Path(token): Path<String>,
    typed: Typed,
) -> Result<JoinPage> {
    if let Ok(account) = account {
        return offered(account, token, typed).await;
    }
    let now = visitor.house.clock.now();
    let (record, invitation) =
        open(&visitor.view().await?, &token, MemberId::default(), now).await?;
    let names = store::names(&record, &invitation).await?;
    let email = invitation.email.as_ref().map(ToString::to_string).unwrap_or_default();
    let typed = typed.with("name", &invitation.name).with("email", email);
    let typed = typed.with("zone", names.zone.name());
    let page = visitor.page("An invitation");
    Ok(JoinPage { page, typed, invitation, names, token, signed_in: false })
}

pub async fn accepting(
    account: Account,
    Path(token): Path<String>,
    typed: Typed,
) -> Result<JoinPage> {
    offered(account, token, typed).await
}

async fn offered(account: Account, token: String, typed: Typed) -> Result<JoinPage> {
    let now = account.house.clock.now();
    let (record, invitation) = open(&account.view().await?, &token, account.member(), now).await?;
    let names = store::names(&record, &invitation).await?;
    let page = account.page("An invitation");
    Ok(JoinPage { page, typed, invitation, names, token, signed_in: true })
}

/// Makes the new member, gives her the place, and signs her in.
pub async fn join(visitor: Visitor, Path(token): Path<String>, form: Form<Joining>) -> Done {
    let now = visitor.house.clock.now();
    open(&visitor.view().await?, &token, MemberId::default(), now).await?;
    let Joining { name, email, password, zone } = form.parse()?;
    let member = Member::new(name, email, zone);
    let phc = visitor.house.hasher.hash(member.accepts(&password, "password")?).await;
    let mut write = visitor.write_as(MemberId::default()).await?;
    let (_, invitation) = open(&write, &token, MemberId::default(), now).await?;
    let member = members::add(&mut write, &member.with_password(phc)).await?;
    let person = take(&write, &invitation, member).await?;
    let kept = write.commit().await?;
    let to = urls::record_of(invitation.person_id);
    visitor.enter(kept, member, false, to).await?.saying(welcome(&person))
}

/// Gives the place to someone who signs in here already.
pub async fn accept(account: Account, Path(token): Path<String>) -> Done {
    let write = account.write().await?;
    let now = write.at();
    let (_, invitation) = open(&write, &token, account.member(), now).await?;
    let person = take(&write, &invitation, account.member()).await?;
    write.commit().await?.then(urls::record_of(invitation.person_id)).saying(welcome(&person))
}

fn welcome(person: &str) -> String {
    format!("You share the record of {person} now")
}

/// An invitation whose link works for this member (zero: not known yet), and its record.
async fn open(
    view: &View<Own>,
    token: &str,
    by: MemberId,
    now: Instant,
) -> Result<(View<Members>, Invitation)> {
    let (person, id) = store::by_token(view, token).await?.ok_or(UNKNOWN)?;
    let record = view.in_record::<Members>(person, by)?;
    let (invitation, places) = (store::find(&record, id).await?, places::list(&record).await?);
    invitation.works(&places, now)?;
    let here = |it: &Membership| it.member_id == by && it.state != State::Ended;
    if places.iter().any(here) { Err(HAS_PLACE) } else { Ok((record, invitation)) }
}

/// Fills the place: a new one, or the one that had ended. Gives the person's name.
async fn take(write: &Write<Own>, invitation: &Invitation, member: MemberId) -> Result<String> {
    let mut record = write.in_record::<Members>(invitation.person_id, member)?;
    store::save(&mut record, invitation, &invitation.accepted(member)).await?;
    match places::of_member(&record, member).await? {
        Some(before) => {
            let after = before.filled_again(invitation.role, record.at());
            places::save(&mut record, &before, &after).await?;
        }
        None => {
            let new = Membership::new(invitation.person_id, member, invitation.role);
            places::add(&mut record, &new).await?;
        }
    }
    Ok(store::names(&record, invitation).await?.person)
}
