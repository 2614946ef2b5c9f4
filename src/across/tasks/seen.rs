//! The tasks that a reader sees: what the store gives her, less those about an item that is hidden
//! from her by rules of its own.
//!
//! A question about a hidden medicine is hidden, and a task about that question with it; so are an
//! appointment and the note of a visit with a hidden contact. Whoever reads the board, one task or its
//! title goes through here.

use crate::{
    base::ids::TaskId,
    family::tasks::{
        hands::{Hands, HiddenFrom},
        model::Task,
        store::{self, Titled, Wanted},
    },
    platform::{
        auth::area::{Clinical, Tasks},
        db::View,
        error::{Error, Result},
    },
    record::{
        appointments::{model::Appointment, store as appointments},
        questions::{model::Question, store as questions},
        visits::store as visits,
    },
};
use std::collections::HashSet;

/// The items with rules of their own that the reader sees, by kind and id.
struct Seen(HashSet<(&'static str, i64)>);

const LEANING: [&str; 3] = ["question", "appointment", "visit"];

impl Seen {
    /// Reads only what these kinds ask for: most tasks are about nothing of the sort.
    async fn read<'a>(
        view: &View<Tasks>,
        kinds: impl Iterator<Item = Option<&'a str>>,
    ) -> Result<Seen> {
        let kinds: HashSet<&str> = kinds.flatten().collect();
        let mut seen = HashSet::new();
        if kinds.contains("question")
            && let Some(view) = view.area::<Clinical>()
        {
            let all = questions::titles(&view).await?.into_iter();
            seen.extend(all.map(|(id, _)| ("question", i64::from(id))));
        }
        if kinds.contains("appointment") {
            let all = appointments::titles(view).await?.into_iter();
            seen.extend(all.map(|(id, _)| ("appointment", i64::from(id))));
        }
        if kinds.contains("visit")
            && let Some(view) = view.area::<Clinical>()
        {
            let all = visits::titles(&view).await?.into_iter();
            seen.extend(all.map(|(id, _)| ("visit", i64::from(id))));
        }
        Ok(Seen(seen))
    }

    fn has(&self, about: Option<(&str, i64)>) -> bool {
        about.is_none_or(|(kind, item)| {
            let leaning = LEANING.into_iter().find(|it| *it == kind);
            leaning.is_none_or(|kind| self.0.contains(&(kind, item)))
        })
    }
}

pub async fn list(view: &View<Tasks>, wanted: &Wanted) -> Result<Vec<Task>> {
    let mut all = store::list(view, wanted).await?;
    let seen = Seen::read(view, all.iter().map(|it| it.about_kind.as_deref())).await?;
    all.retain(|it| seen.has(it.about()));
    Ok(all)
}

/// Those of one page, and whether there are more after it.
pub async fn page(view: &View<Tasks>, wanted: &Wanted) -> Result<(Vec<Task>, bool)> {
    let next = Wanted { most: 1, skip: wanted.skip + wanted.most, ..wanted.clone() };
    let goes_on = !store::list(view, &next).await?.is_empty();
    Ok((list(view, wanted).await?, goes_on))
}

pub async fn find(view: &View<Tasks>, id: TaskId) -> Result<Task> {
    let wanted = Wanted { id: Some(id), ..Wanted::default() };
    list(view, &wanted).await?.pop().ok_or(Error::NotFound)
}

/// Whose hands a task can be in; a question is out of reach with what it names, an appointment with
/// its contacts.
pub async fn hands(view: &View<Tasks>) -> Result<Hands> {
    let mut hands = store::hands(view).await?;
    if hands.hidden.is_empty() {
        return Ok(hands);
    }
    if let Some(view) = view.area::<Clinical>() {
        let all = questions::list(&view, &questions::Wanted::default()).await?;
        let leaning = all.iter().flat_map(|it| {
            let from =
                hands.hidden.iter().filter(move |hidden| leans(it, &hidden.kind, hidden.item));
            from.map(move |hidden| HiddenFrom {
                member: hidden.member,
                kind: "question".to_owned(),
                item: it.id.into(),
            })
        });
        let leaning: Vec<_> = leaning.collect();
        hands.hidden.extend(leaning);
    }
    let all = appointments::list(view).await?;
    let leaning = all.iter().flat_map(|it| {
        let from = hands.hidden.iter().filter(move |hidden| is_with(it, hidden));
        from.map(move |hidden| HiddenFrom {
            member: hidden.member,
            kind: "appointment".to_owned(),
            item: it.id.into(),
        })
    });
    let leaning: Vec<_> = leaning.collect();
    hands.hidden.extend(leaning);
    Ok(hands)
}

/// Whether what is hidden is a contact that an appointment is with.
fn is_with(appointment: &Appointment, hidden: &HiddenFrom) -> bool {
    let with = [appointment.contact_id, appointment.escort_contact_id];
    hidden.kind == "contact" && with.into_iter().flatten().any(|it| i64::from(it) == hidden.item)
}

/// Whether a question is about an item, or names it.
fn leans(question: &Question, kind: &str, item: i64) -> bool {
    let named = question.names.as_deref().map(serde_json::from_str::<Vec<(String, i64)>>);
    let named = named.and_then(|it| it.ok()).unwrap_or_default();
    let whom = kind == "contact" && question.contact_id.map(i64::from) == Some(item);
    whom || question.about() == Some((kind, item))
        || named.iter().any(|it| it.0 == kind && it.1 == item)
}

/// What every task there ever was says, for the history.
pub async fn titles(view: &View<Tasks>) -> Result<Vec<(TaskId, String)>> {
    let all = store::titles(view).await?;
    let seen = Seen::read(view, all.iter().map(|it| it.about_kind.as_deref())).await?;
    let about = |it: &Titled| seen.has(it.about_kind.as_deref().zip(it.about_item));
    Ok(all.into_iter().filter(about).map(|it| (it.id, it.title)).collect())
}
