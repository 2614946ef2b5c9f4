//! The kinds of reminders: the one place where a kind begins. What brings its occasions about is in
//! `across/reminders`.

use crate::platform::auth::{
    area::AreaName,
    policy::{self, Level, Reach},
};

#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Kind {
    Appointment,
    Task,
    Supply,
    /// A paper that is to be renewed.
    Renewal,
    /// Mail that was refused or given up.
    Trouble,
    Digest,
}

impl Kind {
    pub const ALL: [Kind; 6] =
        [Kind::Appointment, Kind::Task, Kind::Supply, Kind::Renewal, Kind::Trouble, Kind::Digest];

    /// As the outbox keeps it.
    pub fn name(self) -> &'static str {
        match self {
            Kind::Appointment => "appointment",
            Kind::Task => "task",
            Kind::Supply => "supply",
            Kind::Renewal => "renewal",
            Kind::Trouble => "trouble",
            Kind::Digest => "digest",
        }
    }

    pub fn named(name: &str) -> Option<Kind> {
        Kind::ALL.into_iter().find(|it| it.name() == name)
    }

    /// What such mail is, where one says that it stops: "Mail about appointments".
    pub fn about(self) -> &'static str {
        match self {
            Kind::Appointment => "appointments",
            Kind::Task => "tasks that are due",
            Kind::Supply => "supplies that need attention",
            Kind::Renewal => "papers that are to be renewed",
            Kind::Trouble => "mail that did not arrive",
            Kind::Digest => "how much is new",
        }
    }

    /// What a reader must reach to get it, and how far.
    pub fn needs(self) -> (AreaName, Level) {
        match self {
            Kind::Appointment | Kind::Task => (AreaName::Tasks, Level::See),
            Kind::Supply => (AreaName::Clinical, Level::See),
            Kind::Renewal => (AreaName::Papers, Level::See),
            Kind::Trouble => (AreaName::Members, Level::Change),
            Kind::Digest => (AreaName::History, Level::See),
        }
    }

    pub fn is_offered(self, reach: Reach) -> bool {
        let (area, needs) = self.needs();
        policy::level(reach, area) >= needs
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::platform::auth::area::Role;

    #[test]
    fn a_kind_is_offered_where_the_place_reaches_what_it_is_about() {
        let of = |role| {
            let offered = Kind::ALL.into_iter().filter(|it| it.is_offered(Reach::of(role)));
            offered.map(Kind::name).collect::<Vec<_>>()
        };
        assert_eq!(of(Role::Steward).len(), Kind::ALL.len());
        assert_eq!(of(Role::Relative), ["appointment", "task", "supply", "renewal", "digest"]);
        assert_eq!(of(Role::Aide), ["appointment", "task", "supply"]);
        assert!(Kind::ALL.into_iter().all(|it| Kind::named(it.name()) == Some(it)));
    }
}
