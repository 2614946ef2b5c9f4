//! The names of the items, as one reader may see them. A kind without a title here is told to
//! nobody: one list to extend when a capability is added, below its area.

use super::kinds::page;
use crate::{
    across::{
        coverage::titles as refused,
        directives,
        reconciliation::{settled_store as settled, store as second_lists},
        renewals::titles as renewals,
        sheets::store as sheets,
        tasks::seen as tasks,
        visibility::{model::Hidden, store as visibility},
    },
    family::{
        carried::store as carried,
        decisions::store as decisions,
        members::{
            answers::store as answers, invitations::store as invitations, places::store as places,
        },
    },
    platform::{
        auth::area::{Clinical, Directives, Essentials, Log, Members, Papers, Tasks},
        db::View,
        error::Result,
        web::urls::Address,
    },
    record::{
        allergies::store as allergies,
        appointments::{matter_store as matters, store as appointments},
        baseline::{model::usually_is, store as baseline},
        conditions::store as conditions,
        contacts::store as contacts,
        coverage::{cards::store as cards, store as covers},
        happenings::store as happenings,
        medicines::{
            given::store as given, ingredients::store as ingredients, schedule::store as schedule,
            stock::store as stock, store as medicines, turns::store as turns,
        },
        observations::store as observations,
        operations::store as operations,
        papers::{alike::pair_store as pairs, store as papers},
        people::store as people,
        questions::store as questions,
        renewals::word_store as paper_words,
        statements::store as statements,
        visits::store as visits,
    },
};
use std::collections::HashMap;

/// An item by its name, with its own page where it has one.
pub struct Thing {
    pub title: String,
    pub page: Option<Address>,
}

/// The names of the items, as the reader may see them: of each kind, each item's.
pub struct Titles {
    items: HashMap<&'static str, HashMap<i64, String>>,
    /// What was ever hidden from someone: later entries tell only what changed.
    hidden: Vec<Hidden>,
}

impl Titles {
    /// Of everything there ever was; of prints, doses and turns, which never end, only these.
    pub async fn read<A>(view: &View<A>, these: &[i64]) -> Result<Titles> {
        let mut it = Titles { items: HashMap::new(), hidden: Vec::new() };
        if let Some(view) = view.area::<Clinical>() {
            it.clinical(&view, these).await?;
        }
        if let Some(view) = view.area::<Essentials>() {
            it.essentials(&view, these).await?;
        }
        if let Some(view) = view.area::<Log>() {
            it.put("happening", happenings::titles(&view).await?);
            it.put("observation", observations::titles(&view).await?);
        }
        if let Some(view) = view.area::<Papers>() {
            it.put("renewal", renewals::of(&view).await?);
            it.put("paper_word", paper_words::titles(&view).await?);
            it.put("paper", papers::titles(&view).await?);
            it.put("paper_pair", pairs::titles(&view).await?);
        }
        if let Some(view) = view.area::<Directives>() {
            for (kind, id, title) in directives::titles(&view).await? {
                it.put(kind, [(id, title)]);
            }
        }
        if let Some(view) = view.area::<Tasks>() {
            it.put("appointment", appointments::titles(&view).await?);
            it.put("occurrence", appointments::occurrence_titles(&view).await?);
            it.put("task", tasks::titles(&view).await?);
            it.put("carried", carried::titles(&view).await?);
            it.put("carried_wish", carried::wish_titles(&view).await?);
        }
        if let Some(view) = view.area::<Papers>() {
            it.put("cover", covers::titles(&view).await?);
            it.put("card", cards::titles(&view).await?);
            it.put("refusal", refused::refusals(&view).await?);
            it.put("refusal_call", refused::calls(&view).await?);
        }
        if let Some(view) = view.area::<Members>() {
            if let Some(view) = view.area::<Clinical>() {
                it.put("decision", decisions::titles(&view).await?);
            }
            it.put("membership", places::titles(&view).await?);
            it.put("invitation", invitations::titles(&view).await?);
            it.hidden = visibility::all(&view).await?;
            if view.may_change() {
                it.put("answer", answers::titles(&view).await?);
            }
        }
        Ok(it)
    }

    async fn clinical(&mut self, view: &View<Clinical>, these: &[i64]) -> Result<()> {
        self.put("medicine", medicines::titles(view).await?);
        self.put("step", schedule::titles(view).await?);
        self.put("ingredient", ingredients::titles(view).await?);
        for (kind, id, title) in stock::titles(view).await? {
            self.put(kind, [(id, title)]);
        }
        self.put("turn", turns::titles(view, these).await?);
        self.put("telling", turns::telling_titles(view, these).await?);
        self.put("log_keeping", given::keeping_titles(view).await?);
        if let Some(view) = view.area::<Log>() {
            self.put("given", given::titles(&view, these).await?);
        }
        self.put("condition", conditions::titles(view).await?);
        self.put("operation", operations::titles(view).await?);
        self.put("question", questions::titles(view).await?);
        self.put("appointment_matter", matters::titles(view).await?);
        self.put("statement", statements::titles(view).await?);
        self.put("visit", visits::titles(view).await?);
        self.put("visit_reader", visits::reader_titles(view).await?);
        self.reconciled(view).await
    }

    /// What second lists are about; their lines only where there are any.
    async fn reconciled(&mut self, view: &View<Clinical>) -> Result<()> {
        let lists = second_lists::titles(view).await?;
        if !lists.is_empty() {
            self.put("second_list", lists);
            self.put("second_list_line", second_lists::line_titles(view).await?);
            self.put("settled_row", settled::row_titles(view).await?);
            self.put("same_ingredient", settled::pair_titles(view).await?);
        }
        Ok(())
    }

    async fn essentials(&mut self, view: &View<Essentials>, these: &[i64]) -> Result<()> {
        let person = people::find(view).await?;
        let usual = baseline::find(view).await?.id;
        self.put("baseline", [(usual, usually_is(person.name.as_str()))]);
        self.put("person", [(person.id, person.name.to_string())]);
        self.put("allergy", allergies::titles(view).await?);
        self.put("print", sheets::titles(view, these).await?);
        self.put("contact", contacts::titles(view).await?);
        Ok(())
    }

    fn put<I: Into<i64>>(
        &mut self,
        kind: &'static str,
        titles: impl IntoIterator<Item = (I, String)>,
    ) {
        let of = self.items.entry(kind).or_default();
        of.extend(titles.into_iter().map(|(id, title)| (id.into(), title)));
    }

    /// An item that the reader sees.
    pub fn thing(&self, kind: &str, item: i64) -> Option<Thing> {
        Some(Thing { title: self.of(kind, item)?.to_owned(), page: page(kind, item) })
    }

    pub fn of(&self, kind: &str, item: i64) -> Option<&str> {
        self.items.get(kind)?.get(&item).map(String::as_str)
    }

    /// What a row of `hidden` hides, and from whom.
    pub fn hidden(&self, row: i64) -> Option<&Hidden> {
        self.hidden.iter().find(|it| i64::from(it.id) == row)
    }

    /// The person's name, where the reader sees the essentials.
    pub fn person(&self) -> Option<&str> {
        self.items.get("person")?.values().next().map(String::as_str)
    }
}
