//! What one member wants mailed about one record, what is usual for her role, and each rule in the
//! words that stand on her page.

use super::kind::Kind;
use crate::audited;
use crate::base::ids::{MailChoiceId, MemberId, PersonId};
use crate::platform::{auth::area::Role, web::form::Choice};
use serde::Serialize;
use std::fmt;

#[derive(Clone, Debug, PartialEq)]
pub struct MailChoice {
    pub id: MailChoiceId,
    pub record_id: PersonId,
    pub member_id: MemberId,
    pub appointments: Whose,
    pub leads: Leads,
    pub tasks: Whose,
    pub supply: bool,
    pub renewal: bool,
    pub trouble: bool,
    pub digest: HowOften,
    /// Zero: nothing was chosen, and this is what is usual.
    pub version: i64,
}

audited!(MailChoice as "mail_choice" {
    record_id: "", member_id: "", appointments: "mail about appointments", leads: "how long before",
    tasks: "mail about tasks", supply: "mail about supplies", renewal: "mail about papers to renew",
    trouble: "mail about lost mail", digest: "mail about what is new",
} skip { id, version });

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Whose {
    None,
    Mine,
    All,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum HowOften {
    Never,
    Daily,
    Weekly,
}

impl Choice for HowOften {
    const ALL: &'static [HowOften] = &[HowOften::Never, HowOften::Daily, HowOften::Weekly];

    fn words(self) -> &'static str {
        match self {
            HowOften::Never => "never",
            HowOften::Daily => "every day",
            HowOften::Weekly => "every Monday",
        }
    }
}

/// How many hours before an appointment, the longest first: "168 24 2".
#[derive(Clone, Debug, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(transparent)]
#[sqlx(transparent)]
pub struct Leads(String);

/// The ones that are offered, in hours.
pub const OFFERED: [i64; 3] = [168, 24, 2];
/// Thirty days.
pub const LONGEST: i64 = 720;

impl Leads {
    pub fn of(hours: impl IntoIterator<Item = i64>) -> Leads {
        let mut all: Vec<i64> = hours.into_iter().filter(|it| (1..=LONGEST).contains(it)).collect();
        all.sort_unstable_by(|a, b| b.cmp(a));
        all.dedup();
        Leads(all.iter().map(i64::to_string).collect::<Vec<_>>().join(" "))
    }

    pub fn hours(&self) -> impl Iterator<Item = i64> {
        self.0.split(' ').filter_map(|it| it.parse().ok())
    }

    /// The one that is not among those offered.
    pub fn own(&self) -> Option<i64> {
        self.hours().find(|it| !OFFERED.contains(it))
    }
}

/// "7 days, 1 day and 2 hours"
impl fmt::Display for Leads {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let all: Vec<String> = self.hours().map(hours_words).collect();
        f.write_str(&crate::platform::auth::voice::listed(&all))
    }
}

/// "7 days", "1 day", "36 hours"
pub fn hours_words(hours: i64) -> String {
    match (hours, hours % 24) {
        (1, _) => "1 hour".into(),
        (24, _) => "1 day".into(),
        (_, 0) => format!("{} days", hours / 24),
        _ => format!("{hours} hours"),
    }
}

impl MailChoice {
    /// What is usual for a role. Who decides hears of every appointment and of what nobody has
    /// taken; who takes part hears of her own.
    pub fn usual(record_id: PersonId, member_id: MemberId, role: Role) -> MailChoice {
        let (decides, changes) = (role.decides(), role.decides() || role == Role::Relative);
        MailChoice {
            id: MailChoiceId::default(),
            record_id,
            member_id,
            appointments: if decides { Whose::All } else { Whose::Mine },
            leads: Leads::of(OFFERED),
            tasks: if role == Role::Steward { Whose::All } else { Whose::Mine },
            supply: changes,
            renewal: changes,
            trouble: role == Role::Steward,
            digest: if changes { HowOften::Weekly } else { HowOften::Never },
            version: 0,
        }
    }

    pub fn wants(&self, kind: Kind) -> bool {
        match kind {
            Kind::Appointment => {
                self.appointments != Whose::None && self.leads.hours().next().is_some()
            }
            Kind::Task => self.tasks != Whose::None,
            Kind::Supply => self.supply,
            Kind::Renewal => self.renewal,
            Kind::Trouble => self.trouble,
            Kind::Digest => self.digest != HowOften::Never,
        }
    }

    /// Without one kind.
    pub fn without(&self, kind: Kind) -> MailChoice {
        let mut after = self.clone();
        match kind {
            Kind::Appointment => after.appointments = Whose::None,
            Kind::Task => after.tasks = Whose::None,
            Kind::Supply => after.supply = false,
            Kind::Renewal => after.renewal = false,
            Kind::Trouble => after.trouble = false,
            Kind::Digest => after.digest = HowOften::Never,
        }
        after
    }

    /// What is mailed of a kind, in words; where nothing is, that.
    pub fn says(&self, kind: Kind) -> String {
        if !self.wants(kind) {
            return format!("Nothing about {}.", kind.about());
        }
        match kind {
            Kind::Appointment => {
                let whose = match self.appointments {
                    Whose::All => "Every appointment",
                    _ => "The appointments you go along to",
                };
                format!("{whose}, {} before.", self.leads)
            }
            Kind::Task => {
                let whose = match self.tasks {
                    Whose::All => "Your tasks, and those that nobody has taken",
                    _ => "Your tasks",
                };
                format!("{whose}, on the day they are due, and once when that day is past.")
            }
            Kind::Supply => "When a supply needs attention: three days before the day to act, and on that day. It does not say which.".into(),
            Kind::Renewal => "When a paper is to be renewed: a week before the latest day to begin, and on that day, unless someone renews it. It does not say which.".into(),
            Kind::Trouble => "When mail about this record did not arrive, at most once a day for each member.".into(),
            Kind::Digest => {
                let when = match self.digest {
                    HowOften::Daily => "Every day",
                    _ => "Every Monday",
                };
                format!("{when}, if anything is new: how many things are new since you last confirmed having read, and nothing of what.")
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn usual(role: Role) -> MailChoice {
        MailChoice::usual(1.into(), 2.into(), role)
    }

    #[test]
    fn what_is_usual_follows_the_role() {
        let steward = usual(Role::Steward);
        assert!(Kind::ALL.into_iter().all(|it| steward.wants(it)));
        let relative = usual(Role::Relative);
        assert_eq!((relative.appointments, relative.tasks), (Whose::Mine, Whose::Mine));
        assert!(relative.supply && !relative.trouble && relative.digest == HowOften::Weekly);
        let aide = usual(Role::Aide);
        assert!(!aide.supply && aide.wants(Kind::Task) && !aide.wants(Kind::Digest));
    }

    #[test]
    fn a_kind_that_is_stopped_is_not_wanted_and_the_others_stay() {
        for kind in Kind::ALL {
            let after = usual(Role::Steward).without(kind);
            let wanted: Vec<_> = Kind::ALL.into_iter().filter(|it| !after.wants(*it)).collect();
            assert_eq!(wanted, [kind]);
            assert!(after.says(kind).starts_with("Nothing about"), "{}", after.says(kind));
        }
    }

    #[test]
    fn hours_before_are_said_in_words() {
        let leads = Leads::of([2, 36, 168, 24, 2, 0, -3, 900]);
        assert_eq!(leads.to_string(), "7 days, 36 hours, 1 day and 2 hours");
        assert_eq!((leads.own(), Leads::of(OFFERED).own()), (Some(36), None));
        let none = MailChoice { leads: Leads::of([]), ..usual(Role::Steward) };
        assert!(!none.wants(Kind::Appointment));
    }
}
