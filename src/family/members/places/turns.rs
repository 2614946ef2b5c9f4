//! A place is paused, goes on, or ends. Each has a page that says what follows, and posts to itself.

use super::{
    super::model::{State, place_words},
    pages::{Changing, find, keep, opened_at},
    store::{self, Relative},
};
use crate::base::ids::MembershipId;
use crate::platform::{
    db::Done,
    error::Result,
    web::{
        form::{Form, FormErrors, Press},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "members/place_turn.html")]
pub struct TurnPage {
    page: Page,
    typed: Typed,
    whose: Relative,
    version: i64,
    verb: &'static str,
    explains: &'static str,
}

impl TurnPage {
    fn shares_as(&self) -> String {
        place_words(self.whose.role, self.whose.lowered)
    }
}

async fn turn(
    grant: &Changing,
    id: MembershipId,
    typed: Typed,
    (verb, explains): (&'static str, &'static str),
) -> Result<TurnPage> {
    let view = grant.view().await?;
    let (kept, whose) = (find(&view, id).await?, store::relative(&view, id).await?);
    let page = grant.page(format!("{verb}: {}", whose.name));
    Ok(TurnPage { page, typed, whose, version: kept.version, verb, explains })
}

pub async fn pausing(grant: Changing, At(id): At<MembershipId>, typed: Typed) -> Result<TurnPage> {
    let explains = "From this moment this member sees nothing of the record, its emergency sheet neither, and gets no mail about it, until the pause is taken back. Invitations this member made do not work meanwhile.";
    turn(&grant, id, typed, ("Pause this place", explains)).await
}

pub async fn pause(grant: Changing, At(id): At<MembershipId>, form: Form<Press>) -> Done {
    let says = "is paused, and sees nothing of this record";
    set(grant, id, form, (State::Standing, State::Paused), says).await
}

pub async fn resuming(grant: Changing, At(id): At<MembershipId>, typed: Typed) -> Result<TurnPage> {
    let explains = "This member sees the record again, as before the pause.";
    turn(&grant, id, typed, ("Take back the pause", explains)).await
}

pub async fn resume(grant: Changing, At(id): At<MembershipId>, form: Form<Press>) -> Done {
    set(grant, id, form, (State::Paused, State::Standing), "sees this record again").await
}

pub async fn removing(grant: Changing, At(id): At<MembershipId>, typed: Typed) -> Result<TurnPage> {
    let explains = "From this moment this member sees nothing of the record. What this member wrote stays, with the name. The history keeps that the place was there, and a new invitation can fill it again.";
    turn(&grant, id, typed, ("End this place", explains)).await
}

pub async fn remove(grant: Changing, At(id): At<MembershipId>, form: Form<Press>) -> Done {
    let version = form.parse()?.version;
    let write = grant.write().await?;
    let before = opened_at(&write, id, version).await?;
    let after = before.turned(State::Ended, write.at());
    keep(write, (&before, &after), "turn", "no longer shares this record").await
}

async fn set(
    grant: Changing,
    id: MembershipId,
    form: Form<Press>,
    (from, to): (State, State),
    says: &str,
) -> Done {
    let version = form.parse()?.version;
    let write = grant.write().await?;
    let before = opened_at(&write, id, version).await?;
    if before.state != from {
        return Err(FormErrors::at("turn", "That is so already.").into());
    }
    let after = before.turned(to, write.at());
    keep(write, (&before, &after), "turn", says).await
}
