//! A day of the log: each time of the day with its doses, each dose with its entry or with none.

use super::super::schedule::{
    day::{self as grid, Beside},
    directions::counted,
    grids::Asked,
    times::When,
};
use super::{
    day::{AsNeeded, Slot},
    ground::{Ground, taken},
    label,
    model::Given,
    store,
};
use crate::base::{
    day as calendar,
    ids::{GivenId, MedicineId},
    quantity::Quantity,
};
use crate::platform::{
    audit::Names,
    auth::{
        area::{Clinical, Log},
        grant::{Change, Grant, See},
    },
    db::View,
    error::Result,
    random,
    web::{page::Page, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;
use time::{Date, Duration};

#[derive(Template, WebTemplate)]
#[template(path = "medicines/given/list.html")]
pub struct ListPage {
    page: Page,
    date: Date,
    words: String,
    is_kept: bool,
    slots: Vec<Time>,
    needed: Vec<Needed>,
    beside: Vec<Beside>,
    /// Medicines of which no log is kept.
    unlogged: Vec<String>,
    may_turn: bool,
    before: Date,
    /// None: there is no entering ahead.
    after: Option<Date>,
}

/// One time of the day.
struct Time {
    name: String,
    window: Option<&'static str>,
    when: When,
    rows: Vec<Row>,
    /// The doses without an entry.
    open: Vec<MedicineId>,
    /// "All of the morning given", where that can be said already.
    press: Option<String>,
    key: String,
}

/// One dose, or one entry.
struct Row {
    title: String,
    amount: String,
    entry: Option<(GivenId, String)>,
}

/// What is as needed.
struct Needed {
    medicine: MedicineId,
    title: String,
    directions: Option<String>,
    entries: Vec<Row>,
    /// What was entered in 24 hours, beside the label's limit.
    sum: Option<String>,
    /// How much one press enters; none, where nothing can be entered, or how much is unknown.
    press: Option<(Quantity, String)>,
    may_enter: bool,
    key: String,
}

type Seeing = Grant<See<Log>>;

pub async fn list(grant: Seeing, Query(asked): Query<Asked>) -> Result<ListPage> {
    let view = grant.view().await?;
    let ground = Ground::read(&view).await?;
    let today = grant.today();
    let date = asked.day(today).min(today);
    let (entries, names) = (store::list(&view, None, (date, date)).await?, view.names().await?);
    let page = grant.page("Doses entered");
    let may_enter = grant.may::<Change<Log>>() && !page.has_died();
    let mut needed = Vec::new();
    for it in ground.as_needed(&entries, date) {
        needed.push(of_needed(&view, &grant, &ground, (it, date), &names).await?);
    }
    let slots = ground.slots(&entries, date);
    let slots = slots.into_iter().map(|it| of_slot(it, &grant, (date, may_enter), &names));
    let is_needed = |it: &Beside| needed.iter().any(|other: &Needed| other.medicine == it.medicine);
    let mut beside = grid::beside(&ground.logged, &ground.steps, &[date]);
    beside.retain(|it| !is_needed(it));
    let unlogged = ground.shown.iter().filter(|it| it.is_current());
    let unlogged = unlogged.filter(|it| !ground.logged.contains(it)).map(|it| it.title());
    Ok(ListPage {
        slots: slots.collect(),
        needed,
        beside,
        unlogged: unlogged.collect(),
        is_kept: !ground.logged.is_empty(),
        may_turn: grant.may::<Change<Clinical>>(),
        words: calendar::short_words(date),
        before: date - Duration::days(1),
        after: (date < today).then(|| date + Duration::days(1)),
        page,
        date,
    })
}

fn of_slot(slot: Slot, grant: &Seeing, (date, may_enter): (Date, bool), names: &Names) -> Time {
    let begins = slot.when.begins();
    let midnight = grant.zone().instant(date, time::Time::MIDNIGHT);
    // A time that has not begun is entered by the form, not by one press that may slip.
    let begun =
        date < grant.today() || midnight.plus(Duration::minutes(begins.into())) <= grant.now();
    let open: Vec<MedicineId> = slot.open().map(|it| it.medicine).collect();
    let of = match slot.when {
        When::At(_) => slot.when.title(),
        _ => format!("the {}", slot.when.title()),
    };
    let all = if open.len() == slot.doses.len() { "All" } else { "The rest" };
    let row = |it: &super::day::Dose| Row {
        title: it.title.clone(),
        amount: it.entry.as_ref().map_or_else(|| it.counted(), Given::counted),
        entry: it.entry.as_ref().map(|it| (it.id, it.state(names, grant.zone()))),
    };
    Time {
        name: slot.when.title(),
        window: slot.when.window(),
        when: slot.when,
        rows: slot.doses.iter().map(row).collect(),
        press: (may_enter && begun && !open.is_empty()).then(|| format!("{all} of {of} given")),
        open: if may_enter { open } else { Vec::new() },
        key: random::hex(16),
    }
}

async fn of_needed(
    view: &View<Log>,
    grant: &Seeing,
    ground: &Ground,
    (it, date): (AsNeeded, Date),
    names: &Names,
) -> Result<Needed> {
    let id = it.medicine.id;
    let may_enter = grant.may::<Change<Log>>()
        && ground.find(id).is_ok_and(|it| it.is_taken())
        && !grant.page("").has_died();
    let is_today = date == grant.today();
    let taken = taken(view, grant, (id, date), names).await?;
    let step = it.step.as_ref();
    let each = step.and_then(|it| Some((it.times.each().next()?.1, it.unit.as_str())));
    let press = each.filter(|_| may_enter && is_today);
    let row = |it: &Given| Row {
        title: grant.zone().clock_words(it.moment(grant.zone())),
        amount: it.counted(),
        entry: Some((it.id, it.state(names, grant.zone()))),
    };
    Ok(Needed {
        medicine: id,
        title: it.medicine.title(),
        directions: step.map(|it| it.directions()),
        entries: it.entries.iter().map(row).collect(),
        sum: step.filter(|_| is_today).map(|it| {
            let sum = label::sum(&taken, it.unit.as_str(), grant.now());
            in_a_day(sum, it.unit.as_str(), it.most_a_day)
        }),
        press: press.map(|(amount, unit)| (amount, counted(amount, unit))),
        may_enter,
        key: random::hex(16),
    })
}

/// "Entered in the last 24 hours: 2 tablets. Its label says at most 6 tablets in 24 hours."
pub(super) fn in_a_day(sum: Quantity, unit: &str, most: Option<Quantity>) -> String {
    let entered = format!("Entered here in the last 24 hours: {}.", counted(sum, unit));
    match most {
        Some(most) => {
            format!("{entered} Its label says at most {} in 24 hours.", counted(most, unit))
        }
        None => format!("{entered} The label's most in 24 hours is not written down."),
    }
}
