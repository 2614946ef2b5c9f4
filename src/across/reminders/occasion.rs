//! One thing that someone may be reminded of at one moment, and the rule whether it is due.

use crate::{
    base::{clock::Instant, zone::Zone},
    family::members::mail_choices::{kind::Kind, model::MailChoice, quiet::QuietHours},
    platform::{
        auth::{area::Own, job::Recipient},
        db::View,
        error::Result,
        web::urls::Address,
    },
};
use time::{Date, Time, macros::time};

/// What is about a whole day is mailed at this hour of it, where the member is.
pub const OF_DAY: Time = time!(09:00);

pub struct Occasion {
    pub kind: Kind,
    pub item_kind: &'static str,
    pub item: i64,
    /// Which time of the item, and which reminder of that time.
    pub occurrence: String,
    /// When it would be mailed, were no hours quiet.
    pub at: Instant,
    /// When what it is about begins, where that is a moment.
    pub begins: Option<Instant>,
    /// When it is of no more use.
    pub until: Option<Instant>,
    /// Whether it is mailed even where its moment was past when it was first looked at: what stands
    /// until someone acts.
    pub stands: bool,
    pub says: Says,
    /// Why she gets it, in words.
    pub why: &'static str,
    pub to: Address,
}

/// What is said of it. `named`: with names, where the record allows them.
#[derive(Clone, Debug, PartialEq)]
pub enum Says {
    /// `at` is none where only the day is known.
    Appointment {
        on: Date,
        at: Option<Instant>,
        named: Option<String>,
    },
    Task {
        due: Date,
        past: bool,
        named: Option<String>,
    },
    Supply,
    Renewal,
    Trouble,
    Digest {
        new: usize,
        or_more: bool,
    },
}

/// Whom it is looked for, what she chose, and from when to when.
pub struct Asked<'a> {
    pub whom: &'a Recipient,
    pub choice: &'a MailChoice,
    pub quiet: &'a QuietHours,
    /// Up to when was looked before, and the moment that is looked at now.
    pub since: Instant,
    pub now: Instant,
    /// The record as she sees it, and the house itself.
    pub view: &'a View<Own>,
    pub house: &'a View<Own>,
}

impl Asked<'_> {
    pub fn zone(&self) -> &Zone {
        &self.whom.zone
    }

    /// The hour at which something about this day is mailed to her.
    pub fn of_day(&self, day: Date) -> Instant {
        self.zone().instant(day, OF_DAY)
    }

    /// The moment it goes, with her quiet hours.
    pub fn goes(&self, it: &Occasion) -> Instant {
        self.quiet.shifted(it.at, it.begins, self.zone())
    }

    /// Whether it is due now: it has become so since was last looked, or it stands, its moment has
    /// come, and no quiet hours hold. What is of no more use is not.
    pub fn is_due(&self, it: &Occasion) -> bool {
        let goes = self.goes(it);
        let fresh = goes > self.since || it.stands && self.leaves(it) == self.now;
        fresh && goes <= self.now && it.until.is_none_or(|until| self.now < until)
    }

    /// When it leaves the house, where it is due now: after an absence now may be quiet as well.
    pub fn leaves(&self, it: &Occasion) -> Instant {
        self.quiet.shifted(self.now, it.begins, self.zone()).max(self.now)
    }
}

/// The occasions of one member, of the kinds she wants and her place reaches.
pub async fn all(asked: &Asked<'_>) -> Result<Vec<Occasion>> {
    let mut found = Vec::new();
    for kind in Kind::ALL {
        if !asked.choice.wants(kind) || !kind.is_offered(asked.whom.reach) {
            continue;
        }
        found.extend(match kind {
            Kind::Appointment => super::appointments::occasions(asked).await?,
            Kind::Task => super::tasks::occasions(asked).await?,
            Kind::Supply => super::supply::occasions(asked).await?,
            Kind::Renewal => super::renewals::occasions(asked).await?,
            Kind::Trouble => super::trouble::occasions(asked).await?,
            Kind::Digest => super::digest::occasions(asked).await?,
        });
    }
    Ok(found)
}
