//! On the sheet of which visit an observation stands. Whoever writes in the log may tick it; what the
//! person takes off herself, only she puts back. A visit that the reader does not see is not named.

use super::form::{GONE, Ticked, Visit, sent};
use crate::{
    base::{clock::Instant, day, ids::ObservationId},
    platform::{
        auth::{
            area::{Log, Tasks},
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
    record::{
        appointments::{meeting::Meeting, store as appointments},
        observations::{model::Observation, store},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use time::Duration;

type Changing = Grant<Change<Log>>;

#[derive(Template, WebTemplate)]
#[template(path = "observations/visit.html")]
pub struct TickPage {
    page: Page,
    typed: Typed,
    kept: Observation,
    visits: Vec<(String, String)>,
}

/// "Mon 30 Nov 2026, 9:30 am: Heart check"
pub fn words(meeting: &Meeting, page: &Page) -> String {
    let zone = page.local();
    let when = match meeting.is_timed() {
        true => zone.in_words(meeting.starts),
        false => day::short_words(meeting.day(zone)),
    };
    format!("{when}: {}", meeting.appointment.title)
}

/// The visit on whose sheet it stands, as far as the reader sees it.
pub async fn of(view: &View<Log>, kept: &Observation) -> Result<Option<Meeting>> {
    let (Some((id, on)), Some(view)) = (kept.visit(), view.area::<Tasks>()) else {
        return Ok(None);
    };
    match appointments::meeting(&view, id, on).await {
        Ok(meeting) => Ok(Some(meeting)),
        Err(Error::NotFound) => Ok(None),
        Err(e) => Err(e),
    }
}

/// Those of the coming year, and of yesterday: a note is often made the evening after.
pub async fn coming<A>(view: &View<A>, now: Instant) -> Result<Vec<Meeting>> {
    let Some(view) = view.area::<Tasks>() else { return Ok(Vec::new()) };
    let (from, to) = (now.minus(Duration::days(1)), now.plus(Duration::days(366)));
    let mut all = appointments::meetings(&view, from, to).await?;
    all.retain(|it| it.status.is_open());
    Ok(all)
}

pub async fn ticking(grant: Changing, At(id): At<ObservationId>, typed: Typed) -> Result<TickPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let page = grant.page("On the sheet of a visit");
    let mut all = coming(&view, grant.now()).await?;
    if let Some(now) = of(&view, &kept).await?
        && !all.iter().any(|it| (it.id(), it.on) == (now.id(), now.on))
    {
        all.insert(0, now);
    }
    let visits = all.iter().map(|it| (sent((it.id(), it.on)), words(it, &page))).collect();
    let typed = typed.with("visit", kept.visit().map(sent).unwrap_or_default());
    Ok(TickPage { page, typed, kept, visits })
}

pub async fn tick(grant: Changing, At(id): At<ObservationId>, form: Form<Ticked>) -> Done {
    let Ticked { visit, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let listed = coming::<Log>(&write, grant.now()).await?;
    let known = |it: &Visit| listed.iter().any(|one| (one.id(), one.on) == *it);
    if visit.is_some_and(|it| Some(it) != before.visit() && !known(&it)) {
        return Err(FormErrors::at("visit", GONE).into());
    }
    // A visit that she does not see is not on her list: what she leaves empty stays as it is.
    let unseen =
        visit.is_none() && before.visit().is_some() && of(&write, &before).await?.is_none();
    let after = if unseen { before.clone() } else { before.ticked(visit, grant.role())? };
    store::save(&mut write, &before, &after).await?;
    let says = if visit.is_some() { "It stands on the sheet" } else { "It stands on no sheet" };
    write.commit().await?.then(urls::observation(id)).saying(says)
}
