//! Planning: what is due at a moment, and writing it into the outbox, each key once.
//!
//! Up to when was looked is kept, so that nothing is missed over a restart; the keys are kept, so
//! that nothing is mailed twice, also when the clock is set back or jumps. After a long absence only
//! what is still of use is due.

use super::{
    occasion::{self, Asked, Occasion},
    store, words,
};
use crate::{
    base::clock::Instant,
    family::members::mail_choices::{model::MailChoice, quiet::QuietHours, store as choices},
    platform::{
        auth::job::{Job, Recipient},
        config::Base,
        db::Db,
        error::Result,
        mail::{Key, Reminder, Stop},
    },
};

/// A reminder that is due.
pub struct Due {
    pub whom: Recipient,
    pub occasion: Occasion,
    /// When it leaves: now, or when her quiet hours end.
    pub leaves: Instant,
}

impl Due {
    fn key(&self) -> Key {
        Key {
            kind: self.occasion.kind.name(),
            item_kind: self.occasion.item_kind,
            item: self.occasion.item,
            occurrence: self.occasion.occurrence.clone(),
            member: self.whom.member,
            person: self.whom.person,
        }
    }

    fn reminder(&self, base: &Base, now: Instant) -> Result<Reminder> {
        let stop = Stop::new(base);
        Ok(Reminder {
            key: self.key(),
            area: self.occasion.kind.needs().0,
            to: self.whom.email.clone(),
            text: words::text(&self.whom, &self.occasion, (base, &stop), now)?,
            stop,
            due: self.leaves,
            until: self.occasion.until,
        })
    }

    /// "Ines <ines@example.org>: Ottoline: a supply needs attention. Why: .."
    pub fn in_words(&self, now: Instant) -> String {
        let Due { whom, occasion, leaves } = self;
        let subject = words::subject(whom, occasion, now);
        let waits = match *leaves > now {
            true => format!(" It waits for the end of the quiet hours, {leaves}."),
            false => String::new(),
        };
        format!("{} <{}>: {subject}. Why: {}.{waits}", whom.name, whom.email, occasion.why)
    }
}

/// What is due at a moment and was not mailed yet. Changes nothing.
pub async fn due(db: &Db, now: Instant) -> Result<Vec<Due>> {
    let job = Job::new(db.clone());
    let house = job.house().await?;
    // Never looked: what stands is due, and of the rest what becomes due from now on. Looked at a
    // later moment: the clock was set back, and the keys keep what was mailed from going again.
    let since = store::looked_at(&house).await?.map_or(now, |it| it.min(now));
    let (chosen, quiet) = (choices::all(&house).await?, choices::all_quiet(&house).await?);
    let mut due = Vec::new();
    for whom in job.recipients().await? {
        let view = job.view(&whom).await?;
        let (choice, quiet) = (choice(&chosen, &whom), quiet_of(&quiet, &whom));
        let (choice, quiet) = (&choice, &quiet);
        let asked = Asked { whom: &whom, choice, quiet, since, now, view: &view, house: &house };
        for occasion in occasion::all(&asked).await?.into_iter().filter(|it| asked.is_due(it)) {
            let leaves = asked.leaves(&occasion);
            let one = Due { whom: whom.clone(), occasion, leaves };
            if !view.is_written(&one.key()).await? {
                due.push(one);
            }
        }
    }
    Ok(due)
}

/// Writes what is due into the outbox, and gives what was written.
pub async fn plan(db: &Db, base: &Base, now: Instant) -> Result<Vec<Due>> {
    let due = due(db, now).await?;
    let job = Job::new(db.clone());
    let mut write = job.write().await?;
    let mut written = Vec::new();
    for it in due {
        if write.remind(base, &it.reminder(base, now)?).await? {
            written.push(it);
        }
    }
    store::look_up_to(&mut write, now).await?;
    write.commit().await?;
    Ok(written)
}

fn choice(chosen: &[MailChoice], whom: &Recipient) -> MailChoice {
    let own = |it: &&MailChoice| it.record_id == whom.person && it.member_id == whom.member;
    let usual = || MailChoice::usual(whom.person, whom.member, whom.reach.role);
    chosen.iter().find(own).cloned().unwrap_or_else(usual)
}

fn quiet_of(all: &[QuietHours], whom: &Recipient) -> QuietHours {
    let own = all.iter().find(|it| it.member_id == whom.member);
    own.cloned().unwrap_or_else(|| QuietHours::usual(whom.member))
}
