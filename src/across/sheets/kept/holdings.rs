//! What is kept, part by part, in short lists: an area that the reader does not see is named as
//! not listed, never left out.

use super::on_paper::{directives, filed, paid, to_renew};
use crate::{
    across::{reconciliation::store as second_lists, tasks::seen as tasks},
    family::{
        carried::store as carried, decisions::store as decisions, tasks::store as kept_tasks,
    },
    platform::{
        auth::area::{Clinical, Directives, Essentials, Log, Members, Papers, Tasks},
        db::View,
        error::Result,
    },
    record::{
        allergies::store as allergies,
        appointments::store as appointments,
        baseline::{model::usually_is, store as baseline},
        conditions::{model::Condition, store as conditions},
        contacts::store as contacts,
        happenings::store::{self as happenings, Wanted},
        medicines::{
            given::store as given, model::Medicine, stock::store as stock, store as medicines,
            turns::store as turns,
        },
        observations::store::{self as observations, Wanted as Seen},
        operations::store as operations,
        people::{model::Person, store as people},
        questions::store as asked,
        statements::{state::State, store as statements},
        visits::store as visits,
    },
};
use serde::Serialize;

#[derive(Serialize)]
pub struct Part {
    pub title: String,
    pub lines: Vec<String>,
}

fn part(title: &str, lines: Vec<String>) -> Part {
    Part { title: title.to_owned(), lines }
}

/// Each area in the order of the record; a further one is two lines more.
pub async fn read(view: &View<Members>, name: &str, shown_by: &str) -> Result<Vec<Part>> {
    let closed = || format!("Not listed here: {shown_by} does not see this.");
    let mut parts = match view.area::<Essentials>() {
        Some(view) => essentials(&view, name).await?,
        None => vec![part("Allergies, contacts, your usual self", vec![closed()])],
    };
    match view.area::<Clinical>() {
        Some(clinical_view) => {
            parts.extend(clinical(&clinical_view).await?);
            parts.push(part("Decisions", decided(&clinical_view).await?));
        }
        None => parts.push(part("Medicines, conditions, operations", vec![closed()])),
    }
    match view.area::<Directives>() {
        Some(view) => parts.push(part("Directives", directives(&view).await?)),
        None => parts.push(part("Directives", vec![closed()])),
    }
    match view.area::<Log>() {
        Some(view) => {
            parts.push(part("Notes of what happened", vec![notes(&view).await?]));
            parts.push(part("What was noticed", vec![noticed(&view).await?]));
        }
        None => parts.push(part("Notes of what happened", vec![closed()])),
    }
    match view.area::<Papers>() {
        Some(view) => {
            parts.push(part("Papers", filed(&view).await?));
            parts.push(part("Cards, and who pays", paid(&view).await?));
            parts.push(part("What is to be renewed", to_renew(&view).await?));
        }
        None => parts.push(part("Papers, cards, and what is to be renewed", vec![closed()])),
    }
    match view.area::<Tasks>() {
        Some(view) => {
            parts.push(part("Appointments", vec![booked(&view).await?]));
            parts.push(part("What is to be done", to_do(&view).await?));
        }
        None => parts.push(part("Appointments, and what is to be done", vec![closed()])),
    }
    let history = "Every change, with who made it and when. What was struck stays there.";
    parts.push(part("History", vec![history.to_owned()]));
    Ok(parts)
}

async fn essentials(view: &View<Essentials>, name: &str) -> Result<Vec<Part>> {
    let (person, state) = (people::find(view).await?, allergies::state(view).await?);
    let listed = state.listed().iter().map(|it| it.substance.to_string());
    let contacts = contacts::list(view).await?.into_iter().map(|it| it.name.to_string());
    let usual = baseline::find(view).await?;
    let usual = match (usual.is_empty(), usual.said()) {
        (true, _) => "Nothing is written down.".to_owned(),
        (false, Some(said)) => format!("It is written down, {said}."),
        (false, None) => "It is written down.".to_owned(),
    };
    Ok(vec![
        part("Who you are", vec![who(&person)]),
        part("Allergies", vec![counted(&state.sentence(), listed.collect())]),
        part("Contacts", vec![list("contact", contacts.collect())]),
        part(&usually_is(name), vec![usual]),
    ])
}

/// Which of the person's own lines are filled in.
fn who(it: &Person) -> String {
    let filled = [
        ("address", it.address.is_some()),
        ("language", it.language.is_some()),
        ("hearing", it.hearing.is_some()),
        ("sight", it.vision.is_some()),
        ("how you get about", it.mobility.is_some()),
        ("whom to phone first", it.first_whom.is_some()),
    ];
    let filled = filled.into_iter().filter(|it| it.1).map(|it| it.0);
    let all: Vec<_> = ["name", "birth date"].into_iter().chain(filled).collect();
    format!("Your {}.", all.join(", "))
}

async fn clinical(view: &View<Clinical>) -> Result<Vec<Part>> {
    let all = medicines::list(view).await?;
    let current = all.iter().filter(|it| it.is_current()).map(Medicine::title).collect();
    let before = all.iter().filter(|it| !it.is_current() && !it.is_struck()).count();
    let mut taken = vec![list("medicine", current)];
    if before > 0 {
        taken.push(format!("Also kept: {before} that you took before."));
    }
    taken.extend(about_medicines(view).await?);
    let operations = operations::list(view).await?.into_iter().filter(|it| !it.struck);
    let said = statements::list(view).await?;
    let said =
        said.iter().map(|it| format!("{} {}.", it.question.words(), State::of(it).sentence()));
    Ok(vec![
        part("Medicines", taken),
        part("Conditions", ailments(&conditions::list(view).await?)),
        part(
            "Operations",
            vec![list("operation", operations.map(|it| it.name.to_string()).collect())],
        ),
        part("Asked for an emergency", said.collect()),
        part("Questions for those who treat you", questions(view).await?),
        part("Notes of visits", noted(view).await?),
    ])
}

/// What is kept of the medicines beside their list.
async fn about_medicines(view: &View<Clinical>) -> Result<Vec<String>> {
    let turned = turns::list(view, &turns::Wanted::default()).await?.len();
    let supply = stock::fills(view, None).await?.len() + stock::counts(view, None).await?.len();
    let lists = second_lists::list(view).await?.len();
    let logged = given::keeping(view).await?.iter().any(|it| it.standing);
    let kept = |some: usize, (one, many): (&str, &str), what: &str| {
        let noun = if some == 1 { one } else { many };
        (some > 0).then(|| format!("Also kept: {some} {noun}{what}."))
    };
    let doses = "Also kept: each dose that is entered as given or not given, with by whom.";
    let lines = [
        kept(turned, ("change", "changes"), ", with who said so and who was told"),
        kept(supply, ("entry", "entries"), " of what was fetched and counted"),
        kept(
            lists,
            ("list", "lists"),
            " of a hospital, a clinic or the bottles, laid beside yours",
        ),
        logged.then(|| doses.to_owned()),
    ];
    Ok(lines.into_iter().flatten().collect())
}

async fn questions(view: &View<Clinical>) -> Result<Vec<String>> {
    let all = asked::list(view, &asked::Wanted::default()).await?;
    let open = all.iter().filter(|it| it.waits()).count();
    Ok(vec![match all.len() {
        0 => "No question is written down.".to_owned(),
        some => format!("{some} kept, {open} of them to be asked or answered."),
    }])
}

/// Those that are over as well: all that was not struck.
async fn booked(view: &View<Tasks>) -> Result<String> {
    let all = appointments::list(view).await?.into_iter();
    Ok(list("appointment", all.map(|it| it.title.to_string()).collect()))
}

async fn noted(view: &View<Clinical>) -> Result<Vec<String>> {
    let all: Vec<_> = visits::list(view).await?.iter().map(|it| it.title()).collect();
    Ok(if all.is_empty() { vec!["No note of a visit is written down.".to_owned()] } else { all })
}

async fn to_do(view: &View<Tasks>) -> Result<Vec<String>> {
    let all = tasks::list(view, &kept_tasks::Wanted::default()).await?;
    let open = all.iter().filter(|it| it.stands()).count();
    let mut lines = vec![match all.len() {
        0 => "No task is written down.".to_owned(),
        some => format!("{some} kept, {open} of them still to be done."),
    }];
    let carried = carried::list(view, &carried::Wanted::default()).await?.len();
    if carried > 0 {
        let noun = if carried == 1 { "entry" } else { "entries" };
        lines.push(format!("Also kept: {carried} {noun} of what each does for you. You can wish that none of it is shown."));
    }
    Ok(lines)
}

async fn notes(view: &View<Log>) -> Result<String> {
    let all = Wanted { most: i64::MAX, ..Wanted::default() };
    Ok(match happenings::list(view, &all).await?.len() {
        0 => "No note is written down.".to_owned(),
        1 => "1 note, in words or as a photo.".to_owned(),
        many => format!("{many} notes, in words or as photos."),
    })
}

async fn decided(view: &View<Clinical>) -> Result<Vec<String>> {
    let all = decisions::list(view).await?;
    let matters = |open: bool| {
        let those = all.iter().filter(move |it| it.stands() && it.is_open() == open);
        those.map(|it| it.matter.to_string()).collect::<Vec<_>>()
    };
    let (open, decided) = (matters(true), matters(false));
    let lines = [
        (!open.is_empty()).then(|| counted("To be decided", open)),
        (!decided.is_empty()).then(|| counted("Decided", decided)),
    ];
    let lines: Vec<_> = lines.into_iter().flatten().collect();
    Ok(if lines.is_empty() { vec!["No decision is written down.".to_owned()] } else { lines })
}

/// Every one as the reader sees it: the person may answer each.
async fn noticed(view: &View<Log>) -> Result<String> {
    let all = Seen { most: i64::MAX, ..Seen::default() };
    Ok(match observations::list(view, &all).await?.len() {
        0 => "Nothing that was noticed is written down.".to_owned(),
        1 => "1 thing that someone noticed about you. You may answer it.".to_owned(),
        many => format!("{many} things that someone noticed about you. You may answer each."),
    })
}

/// A condition about which she wished to hear less is counted, and not named: the sheet is put
/// into her hand. It says so, and she may ask.
fn ailments(all: &[Condition]) -> Vec<String> {
    let standing: Vec<&Condition> = all.iter().filter(|it| it.is_standing()).collect();
    let (careful, named): (Vec<_>, Vec<_>) =
        standing.into_iter().partition(|it| it.wants_told.asks_for_care());
    let names = named.iter().map(|it| it.name.to_string()).collect();
    let more = careful.len();
    let less = match more {
        0 => return vec![list("condition", names)],
        1 => "1 more is kept. You said that you do not want to hear all about it now.".to_owned(),
        _ => format!(
            "{more} more are kept. You said that you do not want to hear all about them now."
        ),
    };
    let mut lines = Vec::new();
    if !named.is_empty() {
        lines.push(list("condition", names));
    }
    lines.extend([less, "Ask, and it is read to you.".to_owned()]);
    lines
}

/// "2 contacts: Ines, Emeric."
pub(super) fn list(noun: &str, names: Vec<String>) -> String {
    let plural = if names.len() == 1 { "" } else { "s" };
    match names.len() {
        0 => format!("No {noun} is written down."),
        count => counted(&format!("{count} {noun}{plural}"), names),
    }
}

pub(super) fn counted(sentence: &str, names: Vec<String>) -> String {
    match names.is_empty() {
        true => format!("{sentence}."),
        false => format!("{sentence}: {}.", names.join(", ")),
    }
}
