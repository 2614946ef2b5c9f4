//! Everything about directives read once, with the names of the contacts as this reader sees them.
//! Who is not shown to her is not named: neither on a page nor on a sheet.

use crate::{
    base::ids::{ContactId, DirectiveId},
    platform::{
        auth::area::{Directives, Essentials},
        db::View,
        error::{Error, Result},
    },
    record::{
        contacts::{model::Contact, store as contacts},
        directives::{
            answer::{Asked, DirectiveAnswer},
            copies::{self, DirectiveCopy},
            copy_store, event_store,
            events::{DirectiveAside, DirectiveEvent, Happened},
            model::Directive,
            review::{self, Prompt},
            standing::{Fate, Standing, Trouble},
            store,
        },
    },
};
use time::Date;

pub struct Ground {
    pub all: Vec<Directive>,
    pub copies: Vec<DirectiveCopy>,
    pub events: Vec<DirectiveEvent>,
    pub asides: Vec<DirectiveAside>,
    pub answer: DirectiveAnswer,
    /// Those on the list in calling order, then the struck ones that are named somewhere.
    pub contacts: Vec<Contact>,
}

/// In place of a name that is not shown to the reader.
const NOT_SHOWN: &str = "someone who is not shown to you";

impl Ground {
    pub async fn read(view: &View<Directives>) -> Result<Ground> {
        let all = store::list(view).await?;
        let copies = copy_store::list(view).await?;
        let events = event_store::list(view).await?;
        let mut spoken_of: Vec<ContactId> = all.iter().flat_map(spoken).collect();
        spoken_of.extend(copies.iter().filter_map(|it| it.contact_id));
        spoken_of.extend(events.iter().filter_map(|it| it.contact_id));
        let contacts = match view.area::<Essentials>() {
            Some(view) => known(&view, spoken_of).await?,
            None => Vec::new(),
        };
        let (asides, answer) = (event_store::asides(view).await?, store::answer(view).await?);
        Ok(Ground { all, copies, events, asides, answer, contacts })
    }

    pub fn find(&self, id: DirectiveId) -> Result<&Directive> {
        self.all.iter().find(|it| it.id == id).ok_or(Error::NotFound)
    }

    pub fn title(&self, id: DirectiveId) -> String {
        // A hidden one is not named.
        self.find(id).map_or_else(|_| "another".to_owned(), Directive::title)
    }

    pub fn asked(&self) -> Asked {
        Asked::of(&self.all, &self.answer)
    }

    pub fn standing(&self) -> Standing<'_> {
        Standing::of(&self.all, |id| self.fate(id))
    }

    pub fn prompts(&self) -> Vec<Prompt<'_>> {
        review::open(&self.events, &self.all, &self.asides)
    }

    pub fn to_tell(&self) -> Vec<&DirectiveCopy> {
        copies::to_tell(&self.copies, &self.all)
    }

    /// The copies of it that were given.
    pub fn copies_of(&self, id: DirectiveId) -> impl Iterator<Item = &DirectiveCopy> {
        self.copies.iter().filter(move |it| it.directive_id == id && !it.struck)
    }

    pub fn contact(&self, id: ContactId) -> Option<&Contact> {
        self.contacts.iter().find(|it| it.id == id)
    }

    pub fn name(&self, id: ContactId) -> String {
        self.contact(id).map_or_else(|| NOT_SHOWN.to_owned(), |it| it.name.to_string())
    }

    /// The day someone died, as it was written down here.
    pub fn died(&self, id: ContactId) -> Option<Date> {
        let of = |it: &&DirectiveEvent| {
            !it.struck && it.kind == Happened::Death && it.contact_id == Some(id)
        };
        self.events.iter().find(of).map(|it| it.happened_on)
    }

    pub fn fate(&self, id: ContactId) -> Fate {
        match (self.contact(id), self.died(id)) {
            (None, _) => Fate::NotShown,
            (_, Some(on)) => Fate::Died(on),
            (Some(it), None) if it.struck => Fate::Struck,
            _ => Fate::Listed,
        }
    }

    pub fn event_title(&self, it: &DirectiveEvent) -> String {
        let name = it.contact_id.map(|id| self.name(id));
        it.title(name.as_deref())
    }

    /// Who has this copy.
    pub fn holder(&self, it: &DirectiveCopy) -> String {
        match (it.contact_id, &it.given_to) {
            (Some(id), _) => self.name(id),
            (None, Some(words)) => words.to_string(),
            (None, None) => String::new(),
        }
    }

    /// "Living will of 3 May 2022: the agent, Emeric Varga, died on .."
    pub fn trouble(&self, it: &Trouble) -> String {
        format!("{}: {}", self.title(it.directive), it.with.words(|id| self.name(id)))
    }

    /// Whom a form may name: the list, and who stands in this directive already.
    pub fn choices(&self, kept: Option<&Directive>) -> Vec<(ContactId, String)> {
        let listed = self.contacts.iter().filter(|it| !it.struck);
        let mut all: Vec<_> = listed.map(|it| (it.id, it.name.to_string())).collect();
        for id in kept.into_iter().flat_map(spoken) {
            if all.iter().all(|(it, _)| *it != id) {
                let struck = if self.contact(id).is_some() { ", struck" } else { "" };
                all.push((id, format!("{}{struck}", self.name(id))));
            }
        }
        all
    }
}

/// Whom a directive speaks of.
fn spoken(it: &Directive) -> Vec<ContactId> {
    it.named().map(|(_, id)| id).chain(it.holder_id).collect()
}

async fn known(view: &View<Essentials>, spoken_of: Vec<ContactId>) -> Result<Vec<Contact>> {
    let mut known = contacts::list(view).await?;
    for id in spoken_of {
        if known.iter().any(|it| it.id == id) {
            continue;
        }
        match contacts::find(view, id).await {
            Ok(it) => known.push(it),
            // Hidden from the reader.
            Err(Error::NotFound) => {}
            Err(e) => return Err(e),
        }
    }
    Ok(known)
}
