//! What changed since the last visit: among the medicines, the conditions and the operations; and
//! what was noticed, as far as it is ticked for this visit.

use super::{Item, Part, Reader, occasion::Occasion};
use crate::{
    across::{papers::about, sheets::medicines::Ground},
    base::day,
    platform::{
        auth::area::{Clinical, Log},
        db::View,
        error::Result,
    },
    record::{
        conditions::{model::Condition, store as conditions},
        medicines::{
            model::Medicine,
            store as medicines,
            turns::{
                model::{Turn, What},
                store::{self as turns, Wanted},
            },
        },
        observations::{
            model::Observation,
            store::{self as observations, Wanted as Seen},
            subject::Subject,
        },
        operations::store as operations,
        papers::model::Paper,
    },
};

pub async fn medicines(view: &View<Clinical>, occasion: &Occasion) -> Result<Part> {
    let shown = medicines::list(view).await?;
    let wanted = Wanted { since: Some(occasion.since), ..Wanted::default() };
    let turned = turns::list(view, &wanted).await?;
    let items = turned.iter().filter_map(|it| turn(it, &shown)).collect();
    let none = "No change of a medicine is written down.".to_owned();
    Ok(Part::of("Medicines that changed", none, items))
}

fn turn(turn: &Turn, shown: &[Medicine]) -> Option<Item> {
    let medicine = shown.iter().find(|it| it.id == turn.medicine_id)?;
    let before = turn.was_taken(medicine);
    // What is not taken any more has no "now".
    let now = match (&before, turn.what) {
        (_, What::Stopped | What::Held) => format!("taken until then: {}", medicine.taken()),
        (Some(_), _) => format!("now: {}", medicine.taken()),
        (None, _) => format!("taken: {}", medicine.taken()),
    };
    let lines = [
        Some(turn.sentence()),
        before.map(|it| format!("before: {it}")),
        Some(now),
        Some(format!("said {}: {}", turn.said_by, turn.reason)),
    ];
    Some(Item { head: medicine.title(), lines: lines.into_iter().flatten().collect() })
}

/// Those that were written down since, and those that are over since.
pub async fn illnesses(
    view: &View<Clinical>,
    occasion: &Occasion,
    ground: &Ground,
) -> Result<Part> {
    let since = ground.begins(occasion.since);
    let new = view.added_since("condition", since).await?;
    let all = conditions::list(view).await?;
    let mut listed: Vec<&Condition> = all.iter().filter(|it| !it.struck).collect();
    listed.retain(|it| {
        new.contains(&i64::from(it.id)) || it.over_on.is_some_and(|on| on >= occasion.since)
    });
    let mut items: Vec<Item> = listed.iter().map(|it| condition(it)).collect();
    let new = view.added_since("operation", since).await?;
    let operated = operations::list(view).await?.into_iter();
    let operated = operated.filter(|it| !it.struck && new.contains(&i64::from(it.id)));
    items.extend(operated.map(|it| {
        let when = it.done_when.as_ref().map(|on| format!("done {on}"));
        let place = it.done_where.as_ref().map(ToString::to_string);
        let put_in = it.implant.as_ref().map(|what| format!("put in: {what}"));
        let lines = [when, place, put_in].into_iter().flatten().collect();
        Item { head: format!("{} (operation)", it.name), lines }
    }));
    let none = "No new condition and no new operation is written down.".to_owned();
    let mut part = Part::of("New conditions and operations", none, items);
    // As on the emergency sheet: the wish itself does not stand beside a name.
    let care = listed.iter().any(|it| it.wants_told.asks_for_care());
    let name = ground.name();
    part.notice = care.then(|| format!("Ask the family before you tell {name} of a diagnosis."));
    Ok(part)
}

fn condition(it: &Condition) -> Item {
    let since = it.since.as_ref().map(|it| format!("since {it}"));
    let by = it.followed_by.as_ref().map(|it| format!("followed by {it}"));
    let over = it.over_on.map(|on| {
        let by = it.over_said_by.as_ref().map(|it| format!(", said {it}")).unwrap_or_default();
        format!("over since {}{by}", day::words(on))
    });
    let source = it.source.as_ref().map(|it| format!("source: {it}"));
    let lines = [since, over, by, source].into_iter().flatten().collect();
    Item { head: it.name.to_string(), lines }
}

/// Falls in front, then the newest; each with what the person says of it.
pub async fn noticed(view: &View<Clinical>, occasion: &Occasion, reader: &Reader) -> Result<Part> {
    const TITLE: &str = "Falls, and what else was noticed";
    let Some(log) = view.area::<Log>() else { return Ok(Part::closed(TITLE, &reader.name)) };
    let mut ticked = match occasion.visit {
        Some(visit) => {
            let wanted = Seen { visit: Some(visit), most: 200, ..Seen::default() };
            observations::list(&log, &wanted).await?
        }
        None => Vec::new(),
    };
    ticked.sort_by_key(|it| it.about != Subject::Fall);
    let (names, name) = (view.names().await?, view.whose().await?.name);
    let items = ticked.iter().map(|it| seen(it, names.of(it.noted_by), &name)).collect();
    let none = "Nothing that was noticed is ticked for this visit.".to_owned();
    Ok(Part::of(TITLE, none, items))
}

fn seen(it: &Observation, by: &str, name: &str) -> Item {
    let time = it.seen_time.as_ref().map(|it| format!(", {it}")).unwrap_or_default();
    let answer = it.answer.as_ref().map(|words| format!("{name} says: {words}"));
    let lines = [
        Some(it.words.to_string()),
        it.fall().map(|it| it.sentence()),
        Some(format!("noticed by {by}")),
        answer,
    ];
    let head = format!("{}: {}{time}", day::short_words(it.seen_on), it.about);
    Item { head, lines: lines.into_iter().flatten().collect() }
}

/// The papers that were filed as about this appointment, the newest first; nothing where there are none.
pub async fn papers(view: &View<Clinical>, occasion: &Occasion) -> Result<Option<Part>> {
    let Some((appointment, _)) = occasion.visit else { return Ok(None) };
    let all = about::papers(view, ("appointment", appointment.into())).await?;
    let item = |it: &Paper| {
        let kind = it.kind.map(|kind| kind.to_string());
        let dated = it.dated().map(|on| format!("dated {on}"));
        let said: Vec<_> = kind.into_iter().chain(dated).collect();
        let original = it.original_words().map(|it| format!("original: {it}"));
        let lines = [Some(said.join(", ")).filter(|it| !it.is_empty()), original];
        Item { head: it.title(), lines: lines.into_iter().flatten().collect() }
    };
    let items: Vec<_> = all.iter().filter(|it| it.stands()).map(item).collect();
    Ok((!items.is_empty()).then(|| Part::of("Papers for this visit", String::new(), items)))
}
