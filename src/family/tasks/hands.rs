//! Whose hands a task can be in: the members whose place stands, may change tasks, and from whom
//! neither the task nor what it is about is hidden.
//!
//! One whose owner is none of these is free to be taken, and says so: nothing is lost when a
//! place is paused or ends.

use super::model::{Task, areas_of};
use crate::base::ids::MemberId;
use crate::platform::auth::{
    area::AreaName,
    policy::{self, Level, Reach},
};

/// A member with her place in this record.
pub struct Hand {
    pub member: MemberId,
    pub name: String,
    pub place: Place,
    pub reach: Reach,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, sqlx::Type)]
#[sqlx(rename_all = "lowercase")]
pub enum Place {
    Standing,
    Paused,
    Ended,
}

/// An item hidden from a member.
pub struct HiddenFrom {
    pub member: MemberId,
    pub kind: String,
    pub item: i64,
}

#[derive(Default)]
pub struct Hands {
    pub members: Vec<Hand>,
    pub hidden: Vec<HiddenFrom>,
}

/// Why who has a task cannot do it any more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gone {
    Left,
    Paused,
    /// Her place, or what was shown to her, does not reach it.
    OutOfReach,
}

impl Gone {
    /// After her name: "was with Juno, who has left".
    pub fn words(self) -> &'static str {
        match self {
            Gone::Left => "who has left",
            Gone::Paused => "whose place is paused",
            Gone::OutOfReach => "whose place does not reach it",
        }
    }
}

impl Hands {
    /// Why its owner cannot do it any more; none where she can, or it has none.
    pub fn gone(&self, task: &Task) -> Option<Gone> {
        let owner = task.owner_id?;
        let hand = self.members.iter().find(|it| it.member == owner);
        match hand.map(|it| (it.place, self.reaches(it, task))) {
            None | Some((Place::Ended, _)) => Some(Gone::Left),
            Some((Place::Paused, _)) => Some(Gone::Paused),
            Some((Place::Standing, false)) => Some(Gone::OutOfReach),
            Some((Place::Standing, true)) => None,
        }
    }

    /// Whether nobody has it who can do it.
    pub fn is_free(&self, task: &Task) -> bool {
        task.stands() && (task.owner_id.is_none() || self.gone(task).is_some())
    }

    /// Whom it can be offered to: all but who has it.
    pub fn others(&self, task: &Task) -> Vec<(MemberId, String)> {
        let can = |it: &&Hand| it.place == Place::Standing && self.reaches(it, task);
        let other = |it: &&Hand| !task.is_owned_by(it.member);
        let all = self.members.iter().filter(can).filter(other);
        all.map(|it| (it.member, it.name.clone())).collect()
    }

    fn reaches(&self, hand: &Hand, task: &Task) -> bool {
        let allows = |area, level| policy::allows(Some(hand.reach), area, level);
        let hidden = |kind: &str, item: i64| {
            let of = |it: &&HiddenFrom| it.member == hand.member && it.kind == kind;
            self.hidden.iter().filter(of).any(|it| it.item == item)
        };
        allows(AreaName::Tasks, Level::Change)
            && !hidden("task", task.id.into())
            && task.about().is_none_or(|(kind, item)| {
                let seen = areas_of(kind).iter().all(|it| allows(*it, Level::See));
                seen && !hidden(kind, item)
            })
    }
}

#[cfg(test)]
mod tests {
    use super::super::model::Wording;
    use super::*;
    use crate::base::{clock::Instant, text::Line};
    use crate::platform::auth::{area::Role, lowered::Lowered};

    fn hand(member: i64, place: Place, role: Role) -> Hand {
        let name = format!("number {member}");
        Hand { member: member.into(), name, place, reach: Reach::of(role) }
    }

    fn hands() -> Hands {
        let lowered = Lowered::default().with(AreaName::Clinical, Some(Level::None));
        let without = Reach { role: Role::Relative, lowered };
        let members = vec![
            hand(1, Place::Standing, Role::Steward),
            hand(2, Place::Paused, Role::Relative),
            hand(3, Place::Ended, Role::Relative),
            hand(4, Place::Standing, Role::Reader),
            Hand { reach: without, ..hand(5, Place::Standing, Role::Relative) },
            hand(6, Place::Standing, Role::Aide),
        ];
        Hands { members, hidden: Vec::new() }
    }

    fn of(owner: i64) -> Task {
        let title = Line::from("Fetch the tablets".to_owned());
        let about = Some(("medicine".to_owned(), 7));
        let wording = Wording { about, ..Wording::of(title) };
        let task = Task::new(1.into(), wording, (1.into(), Instant::from_unix(0)));
        task.taken(owner.into(), false).expect("free")
    }

    #[test]
    fn a_task_whose_owner_cannot_do_it_is_free() {
        let hands = hands();
        assert_eq!(hands.gone(&of(1)), None);
        assert_eq!(hands.gone(&of(2)), Some(Gone::Paused));
        assert_eq!(hands.gone(&of(3)), Some(Gone::Left));
        assert_eq!(hands.gone(&of(9)), Some(Gone::Left));
        assert_eq!(hands.gone(&of(4)), Some(Gone::OutOfReach), "a reader changes nothing");
        assert_eq!(hands.gone(&of(5)), Some(Gone::OutOfReach), "it is about a medicine");
        assert!(hands.is_free(&of(2)) && !hands.is_free(&of(1)));
        let from = HiddenFrom { member: 1.into(), kind: "medicine".into(), item: 7 };
        let hidden = Hands { hidden: vec![from], ..hands };
        assert_eq!(hidden.gone(&of(1)), Some(Gone::OutOfReach));
    }

    #[test]
    fn it_is_offered_to_those_alone_who_can_see_and_do_it() {
        let others = |task| hands().others(&task).into_iter().map(|it| it.0.into()).collect();
        let ids: Vec<i64> = others(of(1));
        assert_eq!(ids, [6]);
        let ids: Vec<i64> = others(of(2));
        assert_eq!(ids, [1, 6]);
    }
}
