//! Who may see and change what: the whole table on one screen.
//!
//! It is the most a role may have. An area that is not seen answers "not found".

use super::area::{AreaName, Role};

/// How far a role reaches into an area.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    None,
    See,
    Change,
}

use Level::{Change as C, None as N, See as S};

#[rustfmt::skip]
pub fn level(role: Role, area: AreaName) -> Level {
    let [person, steward, relative, aide, reader] = match area {
        AreaName::Essentials => [C, C, C, S, S],
        AreaName::Clinical   => [C, C, C, S, S],
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

/// Whether a role reaches an area at this level. The house's own doors (no role) reach all.
pub fn allows(role: Option<Role>, area: AreaName, needs: Level) -> bool {
    role.is_none_or(|role| level(role, area) >= needs)
}
