//! One thing that is to be renewed, as a row: the family's own entry, or what is kept elsewhere with
//! what was said of it.

pub use super::sources::WINDOW;
use super::sources::{self, Found};
use crate::{
    base::{day, ids::MemberId},
    platform::{
        auth::area::{Essentials, Papers},
        db::View,
        error::{Error, Result},
        web::urls::{self, Address},
    },
    record::{
        people::store as people,
        renewals::{
            known,
            model::Renewal,
            reckon::Start,
            rule::{self, Rule},
            store,
        },
    },
};
use time::{Date, Duration};

pub struct Item {
    /// As it is kept; of what is kept elsewhere with version zero, until something is said of it.
    pub kept: Renewal,
    pub title: String,
    /// The last day on which it holds.
    pub last: Date,
    /// Where it is kept, if elsewhere.
    pub to: Option<Address>,
    /// When to begin at the latest.
    pub start: Start,
}

/// So many days before the latest day to begin it stands on Today, and is mailed.
pub const BEFORE: i64 = 7;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    Stands,
    Renewing(MemberId),
    /// Let lapse, with a reason.
    Lapsed,
    /// A yearly window in which nothing more is to be done.
    Done,
    Struck,
}

/// Everything that the reader sees, by the latest day to begin; struck entries as well.
pub async fn all(view: &View<Papers>, today: Date) -> Result<Vec<Item>> {
    let kept = store::list(view).await?;
    let found = sources::all(view, today).await?.into_iter();
    let mut items: Vec<Item> = kept.iter().filter_map(|it| Item::own(it.clone())).collect();
    items.extend(found.map(|it| {
        let said = kept.iter().find(|kept| kept.is_about(it.kind, it.item));
        let fresh = || Renewal::about(view.person(), (it.kind, it.item), it.rule);
        Item::of(said.cloned().unwrap_or_else(fresh), it)
    }));
    items.sort_by(|a, b| (a.start.on, &a.title).cmp(&(b.start.on, &b.title)));
    Ok(items)
}

/// One by its address: "own" and its number, or the kind and number of what is kept elsewhere.
pub async fn find(view: &View<Papers>, (about, number): (&str, i64), today: Date) -> Result<Item> {
    let is = |it: &Item| match about {
        "own" => it.kept.version > 0 && i64::from(it.kept.id) == number,
        kind => it.kept.is_about(kind, number),
    };
    all(view, today).await?.into_iter().find(is).ok_or(Error::NotFound)
}

impl Item {
    fn own(kept: Renewal) -> Option<Item> {
        let (title, last) = (kept.title.as_ref()?.to_string(), kept.last_on?);
        Some(Item { start: kept.start(last), title, last, to: None, kept })
    }

    fn of(kept: Renewal, found: Found) -> Item {
        // A newer day there counts, and so does one that was typed here.
        let last = kept.last_on.map_or(found.last, |it| it.max(found.last));
        let (title, to) = (found.title, Some(found.to));
        Item { start: kept.start(last), title, last, to, kept }
    }

    pub fn address(&self) -> Address {
        match (&self.kept.about_kind, self.kept.about_item) {
            (Some(kind), Some(item)) => urls::renewal_of(kind, item),
            _ => urls::renewal(self.kept.id),
        }
    }

    /// What mail and tasks name it by.
    pub fn named(&self) -> (&str, i64) {
        let about = self.kept.about_kind.as_deref().zip(self.kept.about_item);
        about.unwrap_or(("renewal", self.kept.id.into()))
    }

    pub fn is_window(&self) -> bool {
        self.kept.about_kind.as_deref() == Some(WINDOW)
    }

    pub fn state(&self) -> State {
        match self.kept.renewer(self.last) {
            _ if self.kept.struck => State::Struck,
            _ if self.is_window() && self.kept.last_on.is_some() => State::Done,
            _ if self.kept.lapses(self.last) => State::Lapsed,
            Some(by) => State::Renewing(by),
            None => State::Stands,
        }
    }

    /// Whether someone has to begin, or it is past its last day while someone renews it.
    pub fn needs_someone(&self, today: Date) -> bool {
        match self.state() {
            State::Stands => self.start.on.saturating_sub(Duration::days(BEFORE)) <= today,
            State::Renewing(_) => self.last < today,
            _ => false,
        }
    }

    /// "begin by Fri 27 Nov 2026", "the day to begin was Fri 27 Nov 2026", "its last day was ..".
    pub fn begin_words(&self, today: Date) -> String {
        let on = day::short_words(self.start.on);
        match self.last < today {
            true => format!("its last day was {}", day::short_words(self.last)),
            false if self.start.on < today => format!("the day to begin was {on}"),
            false => format!("begin by {on}"),
        }
    }

    pub fn last_words(&self) -> String {
        day::words(self.last)
    }

    /// How the day to begin was reckoned.
    pub fn reckoned(&self) -> String {
        self.start.says.join("; ")
    }

    /// What the rule says in general and of this last day, and who says so.
    pub fn rule_says(&self, born: Option<Date>) -> Vec<String> {
        let known = self.kept.rule.known();
        let mut says = vec![known.says];
        says.extend(known::says(self.kept.rule, self.last, born));
        says
    }

    pub fn source(&self) -> String {
        source(self.kept.rule)
    }
}

/// "US Department of State, as of 2026-11-26"
pub fn source(of: Rule) -> String {
    format!("{}, as of {}", of.known().source, rule::as_of())
}

/// The person's birthday, where the reader sees it.
pub async fn born(view: &View<Papers>) -> Result<Option<Date>> {
    Ok(match view.area::<Essentials>() {
        Some(view) => Some(people::find(&view).await?.born),
        None => None,
    })
}
