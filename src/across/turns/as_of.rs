//! The list as it stood here at the end of a day that is past, played from the history; and what was
//! entered afterwards about days up to then. The two are never mixed: the first is what the family
//! could know, the second what it learned.

use super::pages::shown;
use crate::{
    base::{
        clock::Instant,
        day,
        ids::{MedicineId, TurnId},
    },
    platform::{
        auth::{
            area::{Clinical, History},
            grant::{Grant, See},
        },
        error::{Error, Result},
        web::{page::Page, stamp::Stamp, urls},
    },
    record::medicines::{
        model::{Medicine, Status},
        turns::store::{self as turns, Wanted},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;
use time::{Date, Duration, Time};

#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    on: String,
}

impl Asked {
    /// A day that is past, or today.
    fn day(&self, today: Date) -> std::result::Result<Date, &'static str> {
        if self.on.trim().is_empty() {
            return Ok(today);
        }
        match day::parse(&self.on) {
            None => Err("Enter a day, like 9 Mar 2026."),
            Some(on) if on > today => Err("This day has not come yet."),
            Some(on) => Ok(on),
        }
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "turns/as_of.html")]
pub struct AsOfPage {
    page: Page,
    on: String,
    typed: String,
    wrong: Option<&'static str>,
    taking: Vec<Past>,
    held: Vec<Past>,
    later: Vec<Later>,
}

/// A medicine as it stood; its page shows it as it stands now.
struct Past {
    medicine: Medicine,
    stamp: Stamp,
}

/// What was entered after that day, about a day up to it.
struct Later {
    says: String,
    entered: Option<Instant>,
    turn: Option<TurnId>,
    medicine: MedicineId,
}

pub async fn list(grant: Grant<See<History>>, Query(asked): Query<Asked>) -> Result<AsOfPage> {
    let history = grant.view().await?;
    let view = history.area::<Clinical>().ok_or(Error::NotFound)?;
    let (on, wrong) = match asked.day(grant.today()) {
        Ok(on) => (on, None),
        Err(says) => (grant.today(), Some(says)),
    };
    let end = grant.zone().instant(on + Duration::DAY, Time::MIDNIGHT).minus(Duration::SECOND);
    let (page, names) = (grant.page("The list on a past day"), view.names().await?);
    let stood = history.stood("medicine", end).await?;
    let of = |(id, fields): (&i64, &_)| Medicine::stood((*id).into(), view.person(), fields);
    let mut stood: Vec<Medicine> = stood.iter().filter_map(of).collect();
    stood.sort_by_key(|it| (it.as_needed, it.name.as_str().to_lowercase()));
    let rows = |status| {
        let those = stood.iter().filter(move |it| it.status == status);
        let row = |it: &Medicine| Past {
            stamp: Stamp::of(&page, &names, it.check()),
            medicine: it.clone(),
        };
        those.map(row).collect()
    };
    let (taking, held) = (rows(Status::Taking), rows(Status::OnHold));
    let shown = shown(&view).await?;
    let mut later = Vec::new();
    for turn in turns::list(&view, &Wanted::default()).await? {
        let Some(medicine) = shown.get(&turn.medicine_id) else { continue };
        if turn.from_on <= on && turn.entered_at > end && !turn.planned {
            later.push(Later {
                says: format!("{}: {}, said {}", medicine.title(), turn.sentence(), turn.said_by),
                entered: Some(turn.entered_at),
                turn: Some(turn.id),
                medicine: medicine.id,
            });
        }
    }
    let unknown = shown.values().filter(|it| !stood.iter().any(|old| old.id == it.id));
    for it in unknown.filter(|it| it.started_on.is_some_and(|day| day <= on)) {
        if later.iter().any(|known| known.medicine == it.id) {
            continue;
        }
        let since = it.started().unwrap_or_default();
        let says = format!("{}: taken since {since}", it.title());
        later.push(Later { says, entered: None, turn: None, medicine: it.id });
    }
    let typed = if wrong.is_some() { asked.on } else { day::words(on) };
    Ok(AsOfPage { page, on: day::words(on), typed, wrong, taking, held, later })
}
