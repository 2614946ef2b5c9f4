//! Saying whether one's own entries are shown; and, for the person or on her behalf, whether any
//! are.

use super::door::Carrying;
use crate::{
    base::text::Line,
    family::carried::{
        form::{OwnWish, WishOfAll},
        store,
        wish::{Said, Wish, Wished},
    },
    platform::{
        auth::area::Role,
        db::Done,
        error::{Error, Result},
        web::{
            form::{Choice, Form},
            page::Page,
            typed::Typed,
            urls,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "carried/wish.html")]
pub struct WishPage {
    page: Page,
    typed: Typed,
    wish: Wish,
    /// None: a member's own wish, which she says herself and now.
    of_all: Option<OfAll>,
}

/// Whose wish it is that none of it is shown, and who enters it.
struct OfAll {
    person: String,
    on_behalf: bool,
}

impl WishPage {
    fn choices(&self) -> impl Iterator<Item = &'static str> {
        Wished::ALL.iter().map(|it| it.words())
    }
}

pub async fn own(Carrying(grant): Carrying, typed: Typed) -> Result<WishPage> {
    let wish = store::wishes(&grant.view().await?, grant.today()).await?.own;
    let typed = typed.with("wished", wish.wished().words());
    Ok(WishPage { page: grant.page("Is what you carry shown?"), typed, wish, of_all: None })
}

pub async fn say_own(Carrying(grant): Carrying, form: Form<OwnWish>) -> Done {
    let OwnWish { wished, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::wishes(&write, grant.today()).await?.own.opened_at(version)?;
    let by = write.names().await?.of(write.member()).to_owned();
    let said = Said { wished, by: Line::from(by), on: grant.today() };
    let after = before.said(said, write.member(), grant.today())?;
    store::keep_wish(&mut write, &before, &after).await?;
    let says = match wished {
        Wished::Shown => "Your entries are shown",
        Wished::NotShown => "Your entries are there for you alone",
    };
    write.commit().await?.then(urls::carried()).saying(says)
}

pub async fn of_all(Carrying(grant): Carrying, typed: Typed) -> Result<WishPage> {
    if !grant.role().decides() {
        return Err(Error::Forbidden);
    }
    let view = grant.view().await?;
    let wish = store::wishes(&view, grant.today()).await?.of_all;
    let typed = typed.with("wished", wish.wished().words()).with_day("said_on", grant.today());
    let person = view.whose().await?.name;
    let of_all = Some(OfAll { person, on_behalf: grant.role() != Role::Person });
    Ok(WishPage { page: grant.page("Is any of it shown?"), typed, wish, of_all })
}

pub async fn say_of_all(Carrying(grant): Carrying, form: Form<WishOfAll>) -> Done {
    if !grant.role().decides() {
        return Err(Error::Forbidden);
    }
    let wished = form.parse()?;
    let version = wished.version;
    let mut write = grant.write().await?;
    let before = store::wishes(&write, grant.today()).await?.of_all.opened_at(version)?;
    let herself = match grant.role() {
        Role::Person => Some(Line::from(write.names().await?.of(write.member()).to_owned())),
        _ => None,
    };
    let after = before.said(wished.said(herself)?, write.member(), grant.today())?;
    store::keep_wish(&mut write, &before, &after).await?;
    let says = if after.hides { "None of it is shown" } else { "It may be shown" };
    write.commit().await?.then(urls::carried()).saying(says)
}
