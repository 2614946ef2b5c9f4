//! The stamp: who checked this, when, against what. It is shown old where nobody has, or where
//! the check is more than 90 days old (a prompt to look again; common practice, no source).

use super::page::Page;
use crate::base::check::Check;
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
}

impl fmt::Display for Stamp {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.text)
    }
}
