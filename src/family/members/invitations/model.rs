//! An invitation, and the rules for when it works.

use super::super::model::{Membership, State};
use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{InvitationId, MemberId, PersonId},
    reach::Email,
    text::Line,
};
use crate::platform::{
    auth::{area::Role, policy::Reach},
    error::Error,
};
use axum::http::StatusCode;
use serde::Serialize;
use time::Duration;

/// How long a link works.
pub const LASTS: Duration = Duration::days(7);

/// What became of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum Fate {
    Open,
    Accepted,
    #[serde(rename = "taken back")]
    #[sqlx(rename = "taken back")]
    TakenBack,
}

#[derive(Clone, Debug, PartialEq)]
pub struct Invitation {
    pub id: InvitationId,
    pub person_id: PersonId,
    /// For whom, as the one who invites calls her.
    pub name: Line,
    pub email: Option<Email>,
    pub role: Role,
    pub invited_by: MemberId,
    pub expires_at: Instant,
    pub state: Fate,
    pub accepted_by: Option<MemberId>,
    /// Whether there is a link to it: a backup holds none.
    pub has_link: bool,
    /// The version of it that was decided for a person who does not sign in: the newest such.
    pub on_behalf: Option<i64>,
    pub version: i64,
}

audited!(Invitation as "invitation" {
    name: "name", email: "e-mail address", role: "", invited_by: "", expires_at: "works until",
    state: "", accepted_by: "", on_behalf: "",
} skip { id, person_id, has_link, version });

/// Why a link does not work (any more), in the words of its page.
const fn over(says: &'static str) -> Error {
    Error::Told { status: StatusCode::GONE, head: "This invitation does not work", says }
}

pub const UNKNOWN: Error = over(
    "There is no such invitation. Look whether the link is whole; in a message it may be broken over two lines.",
);
pub const USED: Error =
    over("It was accepted already. If that was you, sign in: the record is on your list.");
pub const TAKEN_BACK: Error =
    over("It was taken back. If you think that was a mistake, ask the one who invited you.");
pub const EXPIRED: Error =
    over("It worked for 7 days, and they are over. Ask the one who invited you for a new link.");
pub const ORPHANED: Error = over(
    "The one who invited you does not decide in this record at the moment. Ask another member of the family to invite you.",
);
pub const HAS_PLACE: Error = over(
    "You have a place in this record already, so there is nothing to accept. If the invitation is for someone else, sign out first.",
);
pub const PERSON_IS_HERE: Error =
    over("The person this record is about has a place in it already, and there is one such place.");

impl Invitation {
    /// For whom and as what, by whom and when.
    pub fn new(
        person_id: PersonId,
        (name, email, role): (Line, Option<Email>, Role),
        (invited_by, at): (MemberId, Instant),
    ) -> Invitation {
        Invitation {
            id: InvitationId::default(),
            person_id,
            name,
            email,
            role,
            invited_by,
            expires_at: at.plus(LASTS),
            state: Fate::Open,
            accepted_by: None,
            has_link: true,
            on_behalf: None,
            version: 1,
        }
    }

    /// Neither used nor taken back, whether or not it has run out.
    pub fn is_standing(&self) -> bool {
        self.state == Fate::Open
    }

    pub fn open_at(&self, now: Instant) -> bool {
        self.is_standing() && self.has_link && now < self.expires_at
    }

    /// Whether a link still works, among the places of its record.
    pub fn works(&self, places: &[Membership], now: Instant) -> Result<(), Error> {
        match self.state {
            Fate::Accepted => return Err(USED),
            Fate::TakenBack => return Err(TAKEN_BACK),
            Fate::Open if !self.open_at(now) => return Err(EXPIRED),
            Fate::Open => {}
        }
        if !self.is_backed(places) {
            return Err(ORPHANED);
        }
        let person_is_here = || places.iter().any(is_persons);
        if self.role == Role::Person && person_is_here() {
            return Err(PERSON_IS_HERE);
        }
        Ok(())
    }

    /// Whether the one who invited still decides here, and could still give this role.
    pub fn is_backed(&self, places: &[Membership]) -> bool {
        let inviter = places.iter().find(|it| it.member_id == self.invited_by && it.decides());
        inviter.is_some_and(|it| may_invite(it.reach(), self.role))
    }

    /// Marked as made or taken back for the person, where she does not sign in.
    pub fn on_behalf_if(self, for_her: bool, version: i64) -> Invitation {
        let on_behalf = if for_her { Some(version) } else { self.on_behalf };
        Invitation { on_behalf, ..self }
    }

    pub fn accepted(&self, by: MemberId) -> Invitation {
        Invitation { state: Fate::Accepted, accepted_by: Some(by), ..self.clone() }
    }

    pub fn taken_back(&self) -> Invitation {
        Invitation { state: Fate::TakenBack, ..self.clone() }
    }
}

/// Whether who reaches this far may offer this role: none that has more than her own place. The
/// person's place is the person's own, whoever opens the door for her.
pub fn may_invite(by: Reach, role: Role) -> bool {
    role == Role::Person || by.may_give(None, Reach::of(role))
}

/// A place of the person herself that has not ended.
pub fn is_persons(place: &Membership) -> bool {
    place.role == Role::Person && place.state != State::Ended
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::platform::auth::{area::AreaName, lowered::Lowered, policy::Level};

    fn invitation(role: Role) -> Invitation {
        let juno = (Line::from("Juno".to_owned()), None, role);
        Invitation::new(1.into(), juno, (2.into(), Instant::from_unix(0)))
    }

    fn ines() -> Membership {
        Membership::new(1.into(), 2.into(), Role::Steward)
    }

    fn head(it: Result<(), Error>) -> &'static str {
        match it {
            Ok(()) => "works",
            Err(Error::Told { says, .. }) => says.split(' ').nth(1).unwrap_or_default(),
            Err(_) => "?",
        }
    }

    #[test]
    fn it_works_until_it_is_used_taken_back_or_a_week_old() {
        let (open, places) = (invitation(Role::Relative), [ines()]);
        let last = Instant::from_unix(7 * 86_400 - 1);
        assert!(open.works(&places, last).is_ok());
        let fates = [
            (open.clone(), last.plus(Duration::seconds(1)), "worked"),
            (open.accepted(3.into()), last, "was"),
            (open.taken_back(), last, "was"),
        ];
        for (it, at, word) in fates {
            assert_eq!(head(it.works(&places, at)), word);
        }
    }

    #[test]
    fn it_falls_with_the_place_of_the_one_who_invited() {
        let (open, now) = (invitation(Role::Relative), Instant::from_unix(0));
        let less = Lowered::default().with(AreaName::Money, Some(Level::None));
        for weaker in [
            ines().turned(State::Paused, now),
            ines().turned(State::Ended, now),
            ines().in_role(Role::Relative),
            ines().lowered(less),
        ] {
            assert_eq!(head(open.works(&[weaker], now)), "one");
        }
        assert_eq!(head(open.works(&[], now)), "one");
        assert!(invitation(Role::Aide).works(&[ines().lowered(less)], now).is_ok());
    }

    #[test]
    fn there_is_one_place_of_the_person() {
        let (open, now) = (invitation(Role::Person), Instant::from_unix(0));
        let ottoline = Membership::new(1.into(), 1.into(), Role::Person);
        assert!(open.works(&[ines()], now).is_ok());
        assert!(open.works(&[ines(), ottoline.turned(State::Ended, now)], now).is_ok());
        assert_eq!(head(open.works(&[ines(), ottoline], now)), "person");
    }
}
