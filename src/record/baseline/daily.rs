//! The six daily activities, how each is done, and all six in one line for a sheet.
//!
//! They are the six of Katz, S. et al., "Studies of illness in the aged. The index of ADL", JAMA
//! 1963;185:914-919 (from memory). The index counts them; here nothing is counted.

use crate::base::text::Line;
use crate::platform::web::form::Choice;
use std::fmt;

/// How an activity is done on an ordinary day.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Manner {
    #[serde(rename = "alone")]
    #[sqlx(rename = "alone")]
    Alone,
    #[serde(rename = "with help")]
    #[sqlx(rename = "with help")]
    WithHelp,
    #[serde(rename = "done by someone")]
    #[sqlx(rename = "done by someone")]
    DoneBySomeone,
    #[serde(rename = "not asked")]
    #[sqlx(rename = "not asked")]
    NotAsked,
}

impl Choice for Manner {
    const ALL: &'static [Manner] =
        &[Manner::Alone, Manner::WithHelp, Manner::DoneBySomeone, Manner::NotAsked];

    fn words(self) -> &'static str {
        match self {
            Manner::Alone => "alone",
            Manner::WithHelp => "with help",
            Manner::DoneBySomeone => "done by someone",
            Manner::NotAsked => "not asked",
        }
    }
}

impl fmt::Display for Manner {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// An activity as the form asks for it: the two columns, its name, what it covers.
pub struct Activity {
    pub field: &'static str,
    pub words_field: &'static str,
    pub name: &'static str,
    pub covers: &'static str,
}

const fn activity(
    field: &'static str,
    words_field: &'static str,
    name: &'static str,
    covers: &'static str,
) -> Activity {
    Activity { field, words_field, name, covers }
}

pub const ACTIVITIES: [Activity; 6] = [
    activity("bathing", "bathing_words", "Bathing", "bath, shower, or wash at the basin"),
    activity("dressing", "dressing_words", "Dressing", "getting clothes out and putting them on"),
    activity("toileting", "toileting_words", "Toileting", "getting there, clothes, washing after"),
    activity("transferring", "transferring_words", "Transferring", "in and out of bed and chair"),
    activity("continence", "continence_words", "Continence", "by day and by night"),
    activity("feeding", "feeding_words", "Feeding", "from the plate to the mouth"),
];

/// An activity as it is done.
pub struct Daily<'a> {
    pub name: &'static str,
    pub manner: Manner,
    pub words: Option<&'a Line>,
}

/// All of them in one line, what others do first: what was not asked is said too. `None` where
/// nothing was asked.
pub fn sentence(all: &[Daily]) -> Option<String> {
    if all.iter().all(|it| it.manner == Manner::NotAsked && it.words.is_none()) {
        return None;
    }
    let order = [Manner::DoneBySomeone, Manner::WithHelp, Manner::Alone, Manner::NotAsked];
    let parts = order.into_iter().filter_map(|manner| {
        let done = all.iter().filter(|it| it.manner == manner).map(Daily::in_words);
        let done: Vec<String> = done.collect();
        let all_six = done.len() == all.len() && all.iter().all(|it| it.words.is_none());
        match all_six {
            true => Some(format!("all six {manner}")),
            false => (!done.is_empty()).then(|| format!("{manner}: {}", done.join(", "))),
        }
    });
    Some(parts.collect::<Vec<_>>().join("; "))
}

impl Daily<'_> {
    fn in_words(&self) -> String {
        let name = self.name.to_lowercase();
        self.words.map_or(name.clone(), |words| format!("{name} ({words})"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(manners: [Manner; 6], words: Option<&Line>) -> Option<String> {
        let daily = |(activity, manner): (&Activity, Manner)| Daily {
            name: activity.name,
            manner,
            words: words.filter(|_| activity.field == "bathing"),
        };
        sentence(&ACTIVITIES.iter().zip(manners).map(daily).collect::<Vec<_>>())
    }

    #[test]
    fn what_others_do_is_said_first_and_what_was_not_asked_is_said_too() {
        use Manner::{Alone, DoneBySomeone, NotAsked, WithHelp};
        let back = Line::from("Ines helps with the back".to_owned());
        let manners = [WithHelp, DoneBySomeone, Alone, Alone, NotAsked, WithHelp];
        assert_eq!(
            said(manners, Some(&back)).as_deref(),
            Some(
                "done by someone: dressing; with help: bathing (Ines helps with the back), feeding; \
                 alone: toileting, transferring; not asked: continence"
            )
        );
    }

    #[test]
    fn six_that_were_not_asked_say_nothing_and_six_alone_say_so() {
        assert_eq!(said([Manner::NotAsked; 6], None), None);
        assert_eq!(said([Manner::Alone; 6], None).as_deref(), Some("all six alone"));
        let line = Line::from("on good days".to_owned());
        let said = said([Manner::NotAsked; 6], Some(&line));
        assert!(said.is_some_and(|it| it.starts_with("not asked: bathing (on good days), ")));
    }
}
