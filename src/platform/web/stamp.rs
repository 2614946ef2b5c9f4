//! The stamp: who checked this, when, against what. It is shown old where nobody has, or where
//! the check is more than 90 days old (a prompt to look again; common practice, no source).

use super::page::Page;
use crate::base::check::{Check, Together};
use crate::platform::audit::Names;
use std::fmt;

pub struct Stamp {
    text: String,
    pub old: bool,
}

const OLD_DAYS: i64 = 90;

impl Stamp {
    pub fn of(page: &Page, names: &Names, check: Option<Check>) -> Stamp {
        let Some(check) = check else {
            return Stamp { text: "not checked yet".into(), old: true };
        };
        let (ago, by) = (page.ago(&check.at), names.of(check.by));
        Stamp {
            text: format!("checked {ago} by {by}, against {}", check.against),
            old: page.now.since(check.at).whole_days() > OLD_DAYS,
        }
    }

    /// The stamp of a whole list: how many gaps it has, or its oldest check.
    pub fn of_list(
        page: &Page,
        names: &Names,
        checks: impl IntoIterator<Item = Option<Check>>,
    ) -> Stamp {
        let Together { count, unchecked, oldest } = Together::of(checks);
        match (unchecked, oldest) {
            (0, Some(oldest)) => {
                let stamp = Stamp::of(page, names, Some(oldest));
                Stamp { text: format!("all {count}, the oldest {}", stamp.text), ..stamp }
            }
            (gaps, _) if gaps == count => Stamp { text: "not checked yet".into(), old: true },
            (gaps, _) => Stamp { text: format!("{gaps} of {count} not checked yet"), old: true },
        }
    }
}

impl fmt::Display for Stamp {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}
