//! Giving a note its place: about an item, or on its own. Anyone who writes notes may.

use super::{
    form::{ALONE, Placed},
    items::{self, GONE, Group},
};
use crate::{
    base::ids::HappeningId,
    platform::{
        auth::{
            area::Log,
            grant::{Change, Grant},
        },
        db::{Done, View},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::happenings::{
        model::{Happening, Place},
        store,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "happenings/place.html")]
pub struct PlacePage {
    page: Page,
    typed: Typed,
    happening: Happening,
    groups: Vec<Group>,
}

pub async fn placing(
    grant: Grant<Change<Log>>,
    At(id): At<HappeningId>,
    typed: Typed,
) -> Result<PlacePage> {
    let view = grant.view().await?;
    let happening = open(&view, id).await?;
    let now = match (happening.place, happening.about()) {
        (_, Some((kind, item))) => format!("{kind}/{item}"),
        (Place::Alone, _) => ALONE.to_owned(),
        _ => String::new(),
    };
    let page = grant.page("Where does it belong?");
    let groups = items::all(&view).await?;
    Ok(PlacePage { page, typed: typed.with("place", now), happening, groups })
}

/// One that stands: what was struck has no place to be given.
async fn open(view: &View<Log>, id: HappeningId) -> Result<Happening> {
    let happening = store::find(view, id).await?;
    if happening.struck { Err(Error::NotFound) } else { Ok(happening) }
}

pub async fn place(grant: Grant<Change<Log>>, At(id): At<HappeningId>, form: Form<Placed>) -> Done {
    let Placed { at, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = open(&write, id).await?.opened_at(version)?;
    let (title, at) = match &at {
        None => ("on its own".to_owned(), None),
        Some(choice) => {
            let title = items::title(&write, &choice.kind, choice.item).await?;
            let title = title.ok_or_else(|| FormErrors::at("place", GONE))?;
            (format!("about {title}"), Some((choice.kind.as_str(), choice.item)))
        }
    };
    store::save(&mut write, &before, &before.placed(at)).await?;
    write.commit().await?.then(urls::today()).saying(format!("Its place: {title}"))
}
