//! Who may change whose place, and how: pure rules.
//!
//! The person and stewards decide. The person's own place is hers: nobody lowers, pauses or ends
//! it but herself, and all she can do is leave. One steward who can act always remains. Nobody
//! gives what her own place does not have, so nobody raises herself.

use super::super::model::{Membership, State};
use crate::base::ids::MemberId;
use crate::platform::auth::area::Role;

/// Why a change is refused, in the words that stand on the page.
pub type Refused = &'static str;

pub const NOT_HERS: Refused =
    "The person's own place is not changed by anyone else; she may leave by herself.";
pub const LAST_STEWARD: Refused =
    "This is the last steward who can decide here. Make someone else a steward first.";
pub const ABOVE_ONESELF: Refused =
    "Nobody raises her own place. Another steward, or the person, can do it.";
pub const ABOVE_OWN: Refused =
    "This would give more than your own place reaches. Another steward, or the person, can do it.";
pub const ENDED: Refused = "This place has ended. A new invitation fills it again.";

/// Whether `by` may make this change, among all the places of the record.
pub fn allow(
    places: &[Membership],
    by: MemberId,
    (before, after): (&Membership, &Membership),
) -> Result<(), Refused> {
    let own = before.member_id == by;
    let leaves = own && after.state == State::Ended && after.reach() == before.reach();
    if before.role == Role::Person && !leaves {
        return Err(NOT_HERS);
    }
    if before.state == State::Ended {
        return Err(ENDED);
    }
    if before.is_steward() && !after.is_steward() && stewards(places) == 1 {
        return Err(LAST_STEWARD);
    }
    let decider = places.iter().find(|it| it.member_id == by && it.decides());
    match decider.is_some_and(|it| it.reach().may_give(Some(before.reach()), after.reach())) {
        true => Ok(()),
        false if own => Err(ABOVE_ONESELF),
        false => Err(ABOVE_OWN),
    }
}

fn stewards(places: &[Membership]) -> usize {
    places.iter().filter(|it| it.is_steward()).count()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::clock::Instant;
    use crate::platform::auth::{area::AreaName, lowered::Lowered, policy::Level};

    const OTTOLINE: i64 = 1;
    const INES: i64 = 2;
    const BRAM: i64 = 3;

    /// Ottoline is the person, Ines a steward, Bram in this role.
    fn places(bram: Role) -> Vec<Membership> {
        let cast = [(OTTOLINE, Role::Person), (INES, Role::Steward), (BRAM, bram)];
        let place = |(id, role): (i64, Role)| Membership {
            id: id.into(),
            ..Membership::new(1.into(), id.into(), role)
        };
        cast.into_iter().map(place).collect()
    }

    fn tried(
        places: &[Membership],
        by: i64,
        whose: i64,
        change: impl Fn(&Membership) -> Membership,
    ) -> Result<(), Refused> {
        let before = places.iter().find(|it| it.member_id == whose.into()).unwrap();
        allow(places, by.into(), (before, &change(before)))
    }

    fn to(state: State) -> impl Fn(&Membership) -> Membership {
        move |it| it.turned(state, Instant::from_unix(0))
    }

    fn without(area: AreaName) -> impl Fn(&Membership) -> Membership {
        move |it| it.lowered(Lowered::default().with(area, Some(Level::None)))
    }

    #[test]
    fn the_person_and_stewards_decide_and_nobody_else() {
        let all = places(Role::Relative);
        for by in [OTTOLINE, INES] {
            assert_eq!(tried(&all, by, BRAM, |it| it.in_role(Role::Aide)), Ok(()));
            assert_eq!(tried(&all, by, BRAM, to(State::Paused)), Ok(()));
            assert_eq!(tried(&all, by, BRAM, without(AreaName::Directives)), Ok(()));
        }
        assert!(tried(&all, BRAM, BRAM, |it| it.in_role(Role::Reader)).is_err());
        let mut paused = all.clone();
        paused[0] = to(State::Paused)(&paused[0]);
        assert!(tried(&paused, OTTOLINE, BRAM, to(State::Ended)).is_err());
    }

    #[test]
    fn the_last_steward_stays() {
        let all = places(Role::Relative);
        for by in [OTTOLINE, INES] {
            assert_eq!(tried(&all, by, INES, to(State::Ended)), Err(LAST_STEWARD));
            assert_eq!(tried(&all, by, INES, to(State::Paused)), Err(LAST_STEWARD));
            assert_eq!(tried(&all, by, INES, |it| it.in_role(Role::Aide)), Err(LAST_STEWARD));
            assert_eq!(tried(&all, by, INES, without(AreaName::Members)), Err(LAST_STEWARD));
            assert_eq!(tried(&all, by, INES, without(AreaName::Money)), Ok(()));
        }
        let mut two = places(Role::Steward);
        assert_eq!(tried(&two, BRAM, INES, to(State::Ended)), Ok(()));
        // A paused steward, or one who no longer reaches the members, is none who can act.
        two[2] = to(State::Paused)(&two[2]);
        assert_eq!(tried(&two, OTTOLINE, INES, to(State::Ended)), Err(LAST_STEWARD));
    }

    #[test]
    fn nobody_raises_herself_or_gives_what_she_has_not() {
        let mut all = places(Role::Steward);
        all[2] = without(AreaName::Money)(&all[2]);
        let whole = |it: &Membership| it.lowered(Lowered::default());
        assert_eq!(tried(&all, BRAM, BRAM, whole), Err(ABOVE_ONESELF));
        assert_eq!(tried(&all, INES, BRAM, whole), Ok(()));
        assert_eq!(tried(&all, BRAM, BRAM, |it| it.in_role(Role::Relative)), Ok(()));
        all[1] = without(AreaName::Money)(&all[1]);
        assert_eq!(tried(&all, INES, BRAM, whole), Err(ABOVE_OWN));
    }

    #[test]
    fn the_persons_place_is_hers_and_an_ended_one_is_over() {
        let mut all = places(Role::Relative);
        assert_eq!(tried(&all, INES, OTTOLINE, to(State::Ended)), Err(NOT_HERS));
        assert_eq!(tried(&all, INES, OTTOLINE, without(AreaName::Money)), Err(NOT_HERS));
        assert_eq!(tried(&all, OTTOLINE, OTTOLINE, without(AreaName::Money)), Err(NOT_HERS));
        assert_eq!(tried(&all, OTTOLINE, OTTOLINE, to(State::Ended)), Ok(()));
        all[2] = to(State::Ended)(&all[2]);
        assert_eq!(tried(&all, INES, BRAM, to(State::Standing)), Err(ENDED));
    }
}
