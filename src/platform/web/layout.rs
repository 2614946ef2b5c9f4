//! The areas of a record as the spine at the left (and the foot on a phone) lists them: one list
//! to extend when an area is added.

use super::urls::{self, Address};
use crate::platform::auth::{
    area::AreaName,
    policy::{self, Level, Reach},
};

pub struct AreaLink {
    pub label: &'static str,
    pub icon: Icon,
    pub address: Address,
    /// Whether it stands at the foot of a phone's screen; the rest is under "More".
    pub foot: bool,
    /// Whether only the address itself (and its edit page) counts as being there.
    pub exact: bool,
    /// What is written and printed, apart from what is known.
    pub second: bool,
}

impl AreaLink {
    /// Where its pages are: below its own address, and of some in other places.
    pub fn places(&self) -> Vec<Address> {
        let others = match self.icon {
            Icon::Medicines => vec![
                urls::turns(),
                urls::second_lists(),
                urls::same_in_several(),
                urls::disagreements(),
            ],
            Icon::Tasks => vec![urls::carried(), urls::decisions()],
            Icon::Appointments => vec![urls::visits()],
            Icon::Cards => vec![urls::coverage()],
            _ => Vec::new(),
        };
        [vec![self.address.clone()], others].concat()
    }
}

/// The drawings beside the labels; the templates hold them.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Icon {
    Today,
    Log,
    Noticed,
    Person,
    Medicines,
    Allergies,
    Conditions,
    Appointments,
    Directives,
    Contacts,
    Papers,
    Cards,
    Usual,
    Questions,
    Tasks,
    Renewals,
    Sheets,
    History,
    Family,
    Search,
}

impl Icon {
    pub fn name(self) -> &'static str {
        match self {
            Icon::Today => "today",
            Icon::Log => "log",
            Icon::Noticed => "noticed",
            Icon::Person => "person",
            Icon::Medicines => "medicines",
            Icon::Allergies => "allergies",
            Icon::Conditions => "conditions",
            Icon::Appointments => "appointments",
            Icon::Directives => "directives",
            Icon::Contacts => "contacts",
            Icon::Papers => "papers",
            Icon::Cards => "cards",
            Icon::Usual => "usual",
            Icon::Questions => "questions",
            Icon::Tasks => "tasks",
            Icon::Renewals => "renewals",
            Icon::Sheets => "sheets",
            Icon::History => "history",
            Icon::Family => "family",
            Icon::Search => "search",
        }
    }
}

/// The areas a place reaches.
pub fn areas(reach: Reach) -> Vec<AreaLink> {
    use {AreaName as A, Icon as I};
    #[rustfmt::skip]
    let all = [
        // area         label        icon         address            foot   exact  second
        (A::Essentials, "Today",     I::Today,     urls::today(),     true,  false, false),
        (A::Essentials, "Person",    I::Person,    urls::person(),    false, true,  false),
        (A::Clinical,   "Medicines", I::Medicines, urls::medicines(), true,  false, false),
        (A::Essentials, "Allergies", I::Allergies, urls::allergies(), true,  false, false),
        (A::Clinical,   "Conditions", I::Conditions, urls::conditions(), false, false, false),
        (A::Tasks,      "Appointments", I::Appointments, urls::appointments(), false, false, false),
        (A::Directives, "Directives", I::Directives, urls::directives(), false, false, false),
        (A::Essentials, "Contacts",  I::Contacts,  urls::contacts(),  true,  false, false),
        (A::Papers,     "Papers",    I::Papers,    urls::papers(),    false, false, false),
        (A::Papers,     "Cards",     I::Cards,     urls::cards(),     false, false, false),
        (A::Essentials, "Usual self", I::Usual,    urls::usual(),     false, false, false),
        (A::Essentials, "Search",    I::Search,    urls::search(),    false, false, true),
        (A::Log,        "What happened", I::Log,   urls::happenings(), false, false, true),
        (A::Log,        "Noticed",   I::Noticed,   urls::observations(), false, false, true),
        (A::Clinical,   "Questions", I::Questions, urls::questions(), false, false, true),
        (A::Tasks,      "Tasks",     I::Tasks,     urls::tasks(),     false, false, true),
        (A::Papers,     "To be renewed", I::Renewals, urls::renewals(), false, false, true),
        (A::Essentials, "Sheets",    I::Sheets,    urls::sheets(),    false, false, true),
        (A::History,    "History",   I::History,   urls::history(),   false, false, true),
        (A::Members,    "Family",    I::Family,    urls::family(),    false, false, true),
    ];
    let seen = all.into_iter().filter(|it| policy::allows(Some(reach), it.0, Level::See));
    seen.map(|(_, label, icon, address, foot, exact, second)| AreaLink {
        label,
        icon,
        address,
        foot,
        exact,
        second,
    })
    .collect()
}
