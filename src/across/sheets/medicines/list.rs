//! The facts of the medicine list: for whoever prescribes, gives or checks.
//!
//! Name, dose, route, how often and what for stand for every medicine, and a missing one is shown
//! as missing (Joint Commission NPSG.03.06.01, 2020 wording). The plain directions of the steps
//! stand beside the label's own words, and replace none of them.

use super::{Ground, Head, counted};
use crate::{
    across::sheets::{emergency::Allergies, stamps::Stamps},
    base::text::Line,
    platform::{
        auth::area::{Clinical, Essentials},
        db::View,
        error::Result,
    },
    record::{
        allergies::store as allergies,
        medicines::{
            model::{Medicine, Status},
            schedule::model::Step,
            store as medicines,
            turns::standing,
        },
    },
};
use serde::Serialize;
use time::{Date, Duration};

/// For so long a stopped medicine stays at the end of the list.
const LATELY: Duration = Duration::days(90);

#[derive(Serialize)]
pub struct Facts {
    pub paper: &'static str,
    pub lang: &'static str,
    pub title: &'static str,
    pub person: Head,
    pub allergies: Allergies,
    pub medicines: Medicines,
    pub stopped: Stopped,
}

#[derive(Serialize)]
pub struct Medicines {
    /// How many, so that a lost page is noticed.
    pub sentence: String,
    pub stamp: Option<String>,
    pub taking: Vec<Item>,
    pub held: Vec<Item>,
}

#[derive(Serialize)]
pub struct Item {
    pub name: Line,
    pub strength: Option<Line>,
    pub form: Option<Line>,
    pub purpose: Option<Line>,
    /// In the label's own words.
    pub dose: Option<Line>,
    pub times: Option<Line>,
    pub route: Option<Line>,
    /// The steps in plain words, those to come too.
    pub plain: Vec<String>,
    pub as_needed: bool,
    pub limit: Option<Line>,
    pub supply: String,
    pub prescriber: Option<Line>,
    pub started: Option<String>,
    pub held_since: Option<String>,
    pub reason: Option<Line>,
    /// Its hold and what is planned, with who said so.
    pub turns: Option<String>,
    /// Where it differs from the block's.
    pub stamp: Option<String>,
}

#[derive(Serialize)]
pub struct Stopped {
    pub title: &'static str,
    /// In place of an empty list.
    pub sentence: Option<String>,
    pub items: Vec<StoppedItem>,
}

#[derive(Serialize)]
pub struct StoppedItem {
    pub title: String,
    pub since: Option<String>,
    pub reason: Option<Line>,
}

/// Who prints the list, and on which day.
pub struct Reader {
    pub name: String,
    pub today: Date,
}

impl Facts {
    /// As the reader may see them, in one snapshot.
    pub async fn read(view: &View<Clinical>, reader: &Reader) -> Result<Facts> {
        let ground = Ground::read(view).await?;
        let allergies = allergies_of(view, &ground.stamps(), &reader.name).await?;
        let all = medicines::list(view).await?;
        Ok(Facts {
            paper: ground.paper,
            lang: "en",
            title: "Medicine list",
            allergies,
            medicines: Medicines::of(&ground, reader.today),
            stopped: Stopped::of(&all, reader.today, view.current_only()),
            person: ground.head,
        })
    }
}

pub(super) async fn allergies_of(
    view: &View<Clinical>,
    stamps: &Stamps<'_>,
    reader: &str,
) -> Result<Allergies> {
    Ok(match view.area::<Essentials>() {
        Some(view) => Allergies::of(&allergies::state(&view).await?, stamps),
        None => Allergies {
            sentence: format!("Not listed here: {reader} does not see the allergies."),
            stamp: None,
            items: Vec::new(),
        },
    })
}

impl Medicines {
    fn of(ground: &Ground, today: Date) -> Medicines {
        let (all, stamps) = (&ground.medicines, ground.stamps());
        let block = stamps.block(all.iter().map(Medicine::check));
        let item = |it: &Medicine| Item {
            name: it.name.clone(),
            strength: it.strength.clone(),
            form: it.form.clone(),
            purpose: it.purpose.clone(),
            dose: it.dose.clone(),
            times: it.times.clone(),
            route: it.route.clone(),
            plain: plain(&ground.steps, it, today),
            as_needed: it.as_needed,
            limit: it.label_limit.clone(),
            supply: it.supply.to_string(),
            prescriber: it.prescriber.clone(),
            started: it.started(),
            held_since: it.turned_on(),
            reason: it.status_reason.clone(),
            turns: standing::on_paper(it, &ground.turned),
            stamp: block.mark(stamps.of(it.check())),
        };
        Medicines {
            sentence: counted(all),
            stamp: block.stamp.clone(),
            taking: all.iter().filter(|it| it.is_taken()).map(item).collect(),
            held: all.iter().filter(|it| it.is_on_hold()).map(item).collect(),
        }
    }
}

/// The steps that are not over, each with its days where it has any.
fn plain(steps: &[Step], medicine: &Medicine, today: Date) -> Vec<String> {
    let own = steps.iter().filter(|it| it.medicine_id == medicine.id);
    let open = own.filter(|it| it.until_on.is_none_or(|until| today <= until));
    let said = open.map(|it| match it.span(today) {
        Some(span) => format!("{}, {span}", it.directions()),
        None => it.directions(),
    });
    said.collect()
}

impl Stopped {
    fn of(all: &[Medicine], today: Date, current_only: bool) -> Stopped {
        let lately = |it: &&Medicine| {
            it.status == Status::Stopped && it.status_since.is_none_or(|on| today - on <= LATELY)
        };
        let item = |it: &Medicine| StoppedItem {
            title: it.title(),
            since: it.turned_on(),
            reason: it.status_reason.clone(),
        };
        let items: Vec<StoppedItem> = all.iter().filter(lately).map(item).collect();
        let sentence = match (items.is_empty(), current_only) {
            (true, true) => Some("Not listed here: an aide is shown what is taken now."),
            (true, false) => Some("None is written down as stopped in the last 90 days."),
            (false, _) => None,
        };
        Stopped {
            title: "Stopped in the last 90 days, so that it is not started again by mistake",
            sentence: sentence.map(str::to_owned),
            items,
        }
    }
}
