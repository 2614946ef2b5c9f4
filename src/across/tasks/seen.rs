//! The tasks that a reader sees: what the store gives her, less those about an item that is hidden
//! from her by rules of its own.
//!
//! A question about a hidden medicine is hidden, and a task about that question with it; so are an
//! appointment and the note of a visit with a hidden contact. Whoever reads the board, one task or its
//! title goes through here; `leaning` says the same of each of the others, before a task is given to her.

use crate::{
    across::renewals::titles as renewals,
    base::ids::TaskId,
    family::tasks::{
        model::Task,
        store::{self, Titled, Wanted},
    },
    platform::{
        auth::area::{Clinical, Papers, Tasks},
        db::View,
        error::{Error, Result},
    },
    record::{
        appointments::store as appointments, coverage::refusals::store as refusals,
        papers::store as papers, questions::store as questions, visits::store as visits,
    },
};
use std::collections::HashSet;

/// The items with rules of their own that the reader sees, by kind and id.
struct Seen(HashSet<(&'static str, i64)>);

const LEANING: [&str; 6] = ["question", "appointment", "visit", "refusal", "renewal", "paper"];

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
        if kinds.contains("renewal")
            && let Some(view) = view.area::<Papers>()
        {
            let all = renewals::of(&view).await?.into_iter();
            seen.extend(all.map(|(id, _)| ("renewal", i64::from(id))));
        }
        if kinds.contains("paper")
            && let Some(view) = view.area::<Papers>()
        {
            let all = papers::titles(&view).await?.into_iter();
            seen.extend(all.map(|(id, _)| ("paper", i64::from(id))));
        }
        if kinds.contains("refusal")
            && let Some(view) = view.area::<Papers>()
        {
            let all = refusals::list(&view).await?.into_iter();
            seen.extend(all.map(|it| ("refusal", i64::from(it.id))));
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

/// What every task there ever was says, for the history.
pub async fn titles(view: &View<Tasks>) -> Result<Vec<(TaskId, String)>> {
    let all = store::titles(view).await?;
    let seen = Seen::read(view, all.iter().map(|it| it.about_kind.as_deref())).await?;
    let about = |it: &Titled| seen.has(it.about_kind.as_deref().zip(it.about_item));
    Ok(all.into_iter().filter(about).map(|it| (it.id, it.title)).collect())
}
