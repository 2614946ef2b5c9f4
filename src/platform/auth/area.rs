//! The areas of a record, and the roles that reach them. The table itself is in `policy`.

/// An area, as a name that can be compared and kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum AreaName {
    Essentials,
    Clinical,
    /// What happened, as it was noted by whoever was there.
    Log,
    Papers,
    Directives,
    Tasks,
    Money,
    Members,
    Sealed,
    History,
    /// Belongs to no record: sign-ins, members themselves, set-up.
    House,
}

impl AreaName {
    pub const ALL: [AreaName; 10] = [
        AreaName::Essentials,
        AreaName::Clinical,
        AreaName::Log,
        AreaName::Papers,
        AreaName::Directives,
        AreaName::Tasks,
        AreaName::Money,
        AreaName::Members,
        AreaName::Sealed,
        AreaName::History,
    ];

    pub fn name(self) -> &'static str {
        match self {
            AreaName::Essentials => "essentials",
            AreaName::Clinical => "clinical",
            AreaName::Log => "log",
            AreaName::Papers => "papers",
            AreaName::Directives => "directives",
            AreaName::Tasks => "tasks",
            AreaName::Money => "money",
            AreaName::Members => "members",
            AreaName::Sealed => "sealed",
            AreaName::History => "history",
            AreaName::House => "house",
        }
    }

    /// What belongs there, in a few words.
    pub fn holds(self) -> &'static str {
        match self {
            AreaName::Essentials => "who she is, allergies, contacts, the whole emergency sheet",
            AreaName::Clinical => "medicines, and what else a clinician works with",
            AreaName::Log => "what happened, as noted by whoever was there",
            AreaName::Papers => "papers, and where the originals are",
            AreaName::Directives => {
                "directives, their originals and copies; and their lines on the emergency sheet"
            }
            AreaName::Tasks => "what is to be done, appointments, shifts",
            AreaName::Money => "what was paid, by whom",
            AreaName::Members => "who shares the record",
            AreaName::Sealed => "what the person has sealed",
            AreaName::History => "who did what, and what it was before",
            AreaName::House => "the house itself",
        }
    }
}

/// An area as a type, so that the compiler keeps them apart.
pub trait Area: Send + Sync + 'static {
    const NAME: AreaName;
}

/// Name, allergies, contacts, and the whole emergency sheet.
pub struct Essentials;
/// Medicines and what else a clinician works with.
pub struct Clinical;
/// What happened, as it was noted. An aide writes here too.
pub struct Log;
/// Directives: which one stands, where its original is, who has a copy.
pub struct Directives;
/// What is to be done, and when: tasks, appointments, shifts.
pub struct Tasks;
/// Papers, in the tray and filed.
pub struct Papers;
/// Who shares the record, and in which role.
pub struct Members;
/// Who did what.
pub struct History;
/// What was looked at, printed or refused: any role's doings are noted, whatever it may change.
pub struct Notes;
/// No record: the house itself.
pub struct Own;

impl Area for Essentials {
    const NAME: AreaName = AreaName::Essentials;
}
impl Area for Clinical {
    const NAME: AreaName = AreaName::Clinical;
}
impl Area for Log {
    const NAME: AreaName = AreaName::Log;
}
impl Area for Directives {
    const NAME: AreaName = AreaName::Directives;
}
impl Area for Tasks {
    const NAME: AreaName = AreaName::Tasks;
}
impl Area for Papers {
    const NAME: AreaName = AreaName::Papers;
}
impl Area for Members {
    const NAME: AreaName = AreaName::Members;
}
impl Area for History {
    const NAME: AreaName = AreaName::History;
}
impl Area for Notes {
    const NAME: AreaName = AreaName::House;
}
impl Area for Own {
    const NAME: AreaName = AreaName::House;
}

/// What a member is to one person's record.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Role {
    Person,
    Steward,
    Relative,
    Aide,
    Reader,
}

impl Role {
    pub const ALL: [Role; 5] =
        [Role::Person, Role::Steward, Role::Relative, Role::Aide, Role::Reader];

    pub fn name(self) -> &'static str {
        match self {
            Role::Person => "person",
            Role::Steward => "steward",
            Role::Relative => "relative",
            Role::Aide => "aide",
            Role::Reader => "reader",
        }
    }

    /// Whether she decides who shares the record and what is hidden from whom: the person, or a
    /// steward on her behalf.
    pub fn decides(self) -> bool {
        matches!(self, Role::Person | Role::Steward)
    }
}
