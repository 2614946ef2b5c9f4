//! Who may see and change what: the whole table on one screen.
//!
//! It is the most a role may have; an area can be lowered for one member (`lowered`). An area
//! that is not seen answers "not found".

use super::{
    area::{AreaName, Role},
    lowered::Lowered,
};

/// How far a place reaches into an area.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    None,
    See,
    Change,
}

use Level::{Change as C, None as N, See as S};

/// The most a role may have.
#[rustfmt::skip]
pub fn most(role: Role, area: AreaName) -> Level {
    let [person, steward, relative, aide, reader] = match area {
        AreaName::Essentials => [C, C, C, S, S],
        AreaName::Clinical   => [C, C, C, S, S],
        AreaName::Log        => [C, C, C, C, S],
        AreaName::Papers     => [C, C, C, N, N],
        AreaName::Directives => [C, C, S, N, N],
        AreaName::Tasks      => [C, C, C, C, S],
        AreaName::Money      => [C, C, C, N, N],
        AreaName::Members    => [C, C, S, N, N],
        AreaName::Sealed     => [C, N, N, N, N],
        AreaName::History    => [S, S, S, N, N],
        AreaName::House      => [N, N, N, N, N],
    };
    match role {
        Role::Person => person,
        Role::Steward => steward,
        Role::Relative => relative,
        Role::Aide => aide,
        Role::Reader => reader,
    }
}

/// How far one member's place reaches: her role, and what was lowered for her.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reach {
    pub role: Role,
    pub lowered: Lowered,
}

impl Reach {
    /// All that a role may have.
    pub fn of(role: Role) -> Reach {
        Reach { role, lowered: Lowered::default() }
    }

    /// Whether who reaches this far may give another this much: nobody gives what she has not,
    /// so nobody raises herself. What the other `has` already is not given anew.
    pub fn may_give(self, has: Option<Reach>, gets: Reach) -> bool {
        AreaName::ALL.into_iter().all(|area| {
            let had = has.map_or(Level::None, |it| level(it, area));
            level(gets, area) <= had.max(level(self, area))
        })
    }
}

/// The level of a place in an area: the one rule that everything else asks.
pub fn level(reach: Reach, area: AreaName) -> Level {
    most(reach.role, area).min(reach.lowered.level(area).unwrap_or(Level::Change))
}

/// Whether a place reaches an area at this level. The house's own doors (no place) reach all.
pub fn allows(reach: Option<Reach>, area: AreaName, needs: Level) -> bool {
    reach.is_none_or(|reach| level(reach, area) >= needs)
}

/// Whether a place reaches only the member's own of what is to be done: the "C (own)" of an aide.
/// The house's own doors see all.
pub fn own_tasks_only(reach: Option<Reach>) -> bool {
    reach.is_some_and(|it| it.role == Role::Aide)
}

/// Whether a place is shown what is taken and what stands now, and nothing of what was: an aide's.
/// The house's own doors see all.
pub fn current_only(reach: Option<Reach>) -> bool {
    reach.is_some_and(|it| it.role == Role::Aide)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn without(role: Role, area: AreaName, to: Level) -> Reach {
        Reach { role, lowered: Lowered::default().with(area, Some(to)) }
    }

    #[test]
    fn an_area_is_lowered_and_never_raised() {
        let relative = without(Role::Relative, AreaName::Clinical, Level::See);
        assert_eq!(level(relative, AreaName::Clinical), Level::See);
        assert_eq!(level(relative, AreaName::Essentials), Level::Change);
        let aide = without(Role::Aide, AreaName::Directives, Level::See);
        assert_eq!(level(aide, AreaName::Directives), Level::None);
    }

    #[test]
    fn an_aide_alone_is_shown_nothing_of_what_was() {
        let only = |role| current_only(Some(Reach::of(role)));
        let those: Vec<Role> = Role::ALL.into_iter().filter(|it| only(*it)).collect();
        assert_eq!(those, [Role::Aide]);
        assert!(!current_only(None), "the house itself sees all");
    }

    #[test]
    fn nobody_gives_what_she_has_not() {
        let steward = Reach::of(Role::Steward);
        let less = without(Role::Steward, AreaName::Money, Level::None);
        assert!(steward.may_give(None, Reach::of(Role::Steward)));
        assert!(!less.may_give(None, Reach::of(Role::Relative)));
        assert!(less.may_give(None, Reach::of(Role::Aide)));
        assert!(!less.may_give(Some(less), steward), "she raises herself");
        // What the other has already, she may leave to him.
        assert!(less.may_give(Some(Reach::of(Role::Relative)), Reach::of(Role::Relative)));
    }
}
