//! What is done to an observation: kept for the clinician only, shown to the family again, struck,
//! brought back. Each has a page that posts to itself.

use super::{form::Mistake, model::Observation, pages::spoken, store};
use crate::base::ids::ObservationId;
use crate::platform::{
    auth::{
        area::{Log, Role},
        grant::{Change, Grant},
    },
    db::{Done, View, Write},
    error::{Error, Result},
    web::{
        form::{Form, Press},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Log>>;

#[derive(Template, WebTemplate)]
#[template(path = "observations/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    kept: Observation,
    asks_reason: bool,
    verb: &'static str,
    explains: String,
}

fn act(
    grant: &Changing,
    typed: Typed,
    kept: Observation,
    (verb, asks_reason): (&'static str, bool),
    explains: impl Into<String>,
) -> ActPage {
    let page = grant.page(format!("{verb}: {}", kept.title()));
    ActPage { page, typed, kept, asks_reason, verb, explains: explains.into() }
}

async fn keep(mut write: Write<Log>, old: &Observation, new: &Observation, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    // It may be gone for the one who pressed.
    let to = match store::find(&write, new.id).await {
        Ok(seen) if !seen.struck => urls::observation(new.id),
        _ => urls::observations(),
    };
    write.commit().await?.then(to).saying(says)
}

pub async fn keeping(grant: Changing, At(id): At<ObservationId>, typed: Typed) -> Result<ActPage> {
    let view = grant.view().await?;
    let kept = spoken(&grant, &view, id).await?;
    let (name, by) = (view.whose().await?.name, view.names().await?.of(kept.noted_by).to_owned());
    let mut explains = format!(
        "Then only {name} and {by} see it, and the sheet of a visit has it only if it is ticked and one of the two prints. For everyone else it is not there, in the history neither."
    );
    if grant.role() != Role::Person && !kept.is_of(grant.member()) {
        explains.push_str(" That holds for you too, from this press on.");
    }
    Ok(act(&grant, typed, kept, ("Keep for the clinician only", false), explains))
}

pub async fn keep_for_clinician(
    grant: Changing,
    At(id): At<ObservationId>,
    form: Form<Press>,
) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = spoken(&grant, &write, id).await?.opened_at(press.version)?;
    let after = before.kept_for_clinician(grant.role());
    keep(write, &before, &after, "Kept for the clinician only").await
}

/// One that she may show to the family again.
async fn hers_to_show<A>(
    grant: &Changing,
    view: &View<A>,
    id: ObservationId,
) -> Result<Observation> {
    let found = store::find(&view.area::<Log>().ok_or(Error::NotFound)?, id).await?;
    let voice = view.voice().await?;
    match found.may_be_shown_by(grant.member(), grant.role(), &voice) {
        true => Ok(found),
        false => Err(Error::Forbidden),
    }
}

pub async fn showing(grant: Changing, At(id): At<ObservationId>, typed: Typed) -> Result<ActPage> {
    let kept = hers_to_show(&grant, &grant.view().await?, id).await?;
    let explains =
        "Everyone who sees what was noticed sees it again, with what was answered to it.";
    Ok(act(&grant, typed, kept, ("Show the family again", false), explains))
}

pub async fn show_to_family(grant: Changing, At(id): At<ObservationId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = hers_to_show(&grant, &write, id).await?.opened_at(press.version)?;
    keep(write, &before, &before.shown_to_family(), "The family sees it again").await
}

/// Her own, or one she decides about.
fn hers(grant: &Changing, found: Observation) -> Result<Observation> {
    match found.may_be_struck_by(grant.member(), grant.role()) {
        true => Ok(found),
        false => Err(Error::Forbidden),
    }
}

pub async fn striking(grant: Changing, At(id): At<ObservationId>, typed: Typed) -> Result<ActPage> {
    let kept = hers(&grant, store::find(&grant.view().await?, id).await?)?;
    let explains = "Only for what was written down by mistake: it leaves the lists and every sheet. The history keeps it, and it can be brought back from there. Who saw it otherwise answers it instead.";
    Ok(act(&grant, typed, kept, ("Strike", true), explains))
}

pub async fn strike(grant: Changing, At(id): At<ObservationId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let write = grant.write().await?;
    let before = hers(&grant, store::find(&write, id).await?.opened_at(version)?)?;
    keep(write, &before, &before.struck(reason), "Struck; its history keeps it").await
}

pub async fn bringing_back(
    grant: Changing,
    At(id): At<ObservationId>,
    typed: Typed,
) -> Result<ActPage> {
    let kept = hers(&grant, store::find(&grant.view().await?, id).await?)?;
    let explains = "It stands in the lists again as it was.";
    Ok(act(&grant, typed, kept, ("Bring back", false), explains))
}

pub async fn bring_back(grant: Changing, At(id): At<ObservationId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = hers(&grant, store::find(&write, id).await?.opened_at(press.version)?)?;
    keep(write, &before, &before.brought_back(), "It stands in the lists again").await
}
