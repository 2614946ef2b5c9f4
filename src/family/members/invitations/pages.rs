//! Inviting someone, and taking an invitation back.

use super::{
    super::{
        model::{State, role_words},
        places::{pages::Changing, store as places},
    },
    form::Offer,
    model::{Fate, Invitation, LASTS, is_persons, may_invite},
    store,
};
use crate::base::{clock::Instant, ids::InvitationId, reach::Email};
use crate::platform::{
    auth::area::{Members, Role},
    config::Base,
    db::{Done, View, Write},
    error::{Error, Result},
    random,
    web::{
        form::{Form, FormErrors},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "members/invite.html")]
pub struct InvitePage {
    page: Page,
    typed: Typed,
    roles: Vec<(&'static str, &'static str)>,
    mails: bool,
}

pub async fn inviting(grant: Changing, typed: Typed) -> Result<InvitePage> {
    let places = places::list(&grant.view().await?).await?;
    let mut roles = Role::ALL.to_vec();
    roles.retain(|it| may_invite(grant.reach(), *it));
    roles.retain(|it| *it != Role::Person || !places.iter().any(is_persons));
    let roles = roles.into_iter().map(|it| (it.name(), role_words(it))).collect();
    Ok(InvitePage { page: grant.page("Invite someone"), typed, roles, mails: grant.house().mails })
}

/// The link, shown this once.
#[derive(Template, WebTemplate)]
#[template(path = "members/invited.html")]
pub struct InvitedPage {
    page: Page,
    name: String,
    role: Role,
    link: String,
    until: Instant,
    mailed_to: Option<Email>,
}

/// The mail that carries the link. It does not name the person the record is about.
#[derive(Template)]
#[template(path = "mail/invitation.txt")]
struct InvitationMail<'a> {
    name: &'a str,
    inviter: &'a str,
    role: &'a str,
    link: &'a str,
}

pub async fn invite(grant: Changing, form: Form<Offer>) -> Result<InvitedPage> {
    let Offer { name, email, role } = form.parse()?;
    let mut write = grant.write().await?;
    let invitation =
        Invitation::new(grant.person(), (name, email, role), (grant.member(), write.at()));
    let for_her = write.voice().await?.is_spoken_for();
    let invitation = invitation.on_behalf_if(for_her, 1);
    is_wanted(&write, &invitation).await?;
    if !may_invite(grant.reach(), role) {
        let says = "This role reaches further than your own place. Another steward, or the person, can give it.";
        return Err(FormErrors::at("role", says).into());
    }
    let token = random::hex(32);
    store::add(&mut write, &invitation, &token).await?;
    let link = grant.house().config.base().absolute(&format!("/join/{token}"));
    let mailed_to = invitation.email.clone().filter(|_| grant.house().mails);
    if let Some(to) = &mailed_to {
        let base = grant.house().config.base();
        mail(&mut write, &invitation, (base, to), &link).await?;
    }
    write.commit().await?;
    let page = grant.page(format!("An invitation for {}", invitation.name));
    let (name, until) = (invitation.name.to_string(), invitation.expires_at);
    Ok(InvitedPage { page, name, role, link, until, mailed_to })
}

/// Whether there is a place to offer: not one that is taken, and not twice to one address.
async fn is_wanted(view: &View<Members>, new: &Invitation) -> Result<()> {
    let places = places::list(view).await?;
    if new.role == Role::Person && places.iter().any(is_persons) {
        return Err(FormErrors::at("role", "The person has a place here already.").into());
    }
    let Some(email) = &new.email else { return Ok(()) };
    let family = places::family(view).await?;
    let here = family.iter().find(|it| it.email == email.as_str() && it.state != State::Ended);
    if let Some(here) = here {
        let says = match here.state {
            State::Paused => {
                format!("{} has a place here. It is paused: take the pause back.", here.name)
            }
            _ => format!("{} signs in with this address, and has a place here already.", here.name),
        };
        return Err(FormErrors::at("email", says).into());
    }
    let open = store::list(view).await?;
    let twice = |it: &Invitation| it.email == new.email && it.open_at(new.expires_at.minus(LASTS));
    if open.iter().any(twice) {
        let says = "An invitation to this address is open. Take that one back first.";
        return Err(FormErrors::at("email", says).into());
    }
    Ok(())
}

async fn mail(
    write: &mut Write<Members>,
    it: &Invitation,
    (base, to): (&Base, &Email),
    link: &str,
) -> Result<()> {
    let inviter = store::names(write, it).await?.inviter;
    let role = it.role.name();
    let body = InvitationMail { name: it.name.as_str(), inviter: &inviter, role, link }.render();
    let body = body.map_err(|e| Error::Internal(e.into()))?;
    write.mail(base, to, ("An invitation to Kinsheaf", &body)).await
}

/// Takes an open invitation back; one that is not open any more is left as it is.
pub async fn take_back(grant: Changing, At(id): At<InvitationId>) -> Done {
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?;
    let says = match before.state {
        Fate::Open => {
            let for_her = write.voice().await?.is_spoken_for();
            let after = before.taken_back().on_behalf_if(for_her, before.version + 1);
            store::save(&mut write, &before, &after).await?;
            format!("The invitation for {} is taken back: its link no longer works", before.name)
        }
        Fate::TakenBack => format!("The invitation for {} was taken back already", before.name),
        Fate::Accepted => {
            format!("{} has accepted already; the place is on the list", before.name)
        }
    };
    write.commit().await?.then(urls::family()).saying(says)
}
