//! Who shares the record, area by area, as it stands: the role, what was lowered, a pause, and who
//! is invited.

use super::Known;
use crate::{
    base::{clock::Instant, day, zone::Zone},
    family::members::{
        answers::starters::AREAS,
        invitations::store as invitations,
        model::State,
        places::store::{self as places, Relative},
    },
    platform::{
        auth::{
            area::{Members, Role},
            policy::{self, Level, Reach},
        },
        db::View,
        error::Result,
    },
};
use serde::Serialize;

#[derive(Serialize)]
pub struct Sharer {
    pub name: String,
    pub role: String,
    /// What is seen and changed, area by area; or that nothing is, while the place is paused.
    pub lines: Vec<String>,
}

/// Everyone with a place but the person herself.
pub async fn sharers(view: &View<Members>, zone: &Zone) -> Result<Vec<Sharer>> {
    let mut family = places::family(view).await?;
    family.retain(|it| it.role != Role::Person && it.state != State::Ended);
    let sharer = |it: &Relative| Sharer {
        name: it.name.clone(),
        role: format!("{}: {}", it.role.name(), plainly(it.role)),
        lines: match it.state {
            State::Paused => vec![paused(it, zone)],
            _ => lines(&it.name, Reach { role: it.role, lowered: it.lowered }),
        },
    };
    Ok(family.iter().map(sharer).collect())
}

fn plainly(role: Role) -> &'static str {
    match role {
        Role::Person => "you",
        Role::Steward => "keeps this record in order",
        Role::Relative => "one of your family or friends",
        Role::Aide => "comes to help",
        Role::Reader => "reads, and writes nothing",
    }
}

fn paused(it: &Relative, zone: &Zone) -> String {
    let since = it.turned_at.map(|at| format!(" since {}", day::words(zone.day(at))));
    format!("Sees nothing now: the place is paused{}.", since.unwrap_or_default())
}

/// "Sees and changes: medicines, conditions and operations.", as the place reaches.
fn lines(name: &str, reach: Reach) -> Vec<String> {
    let at = |wanted: Level| {
        let found = AREAS.iter().filter(|(area, _)| policy::level(reach, *area) == wanted);
        found.map(|(_, words)| *words).collect::<Vec<_>>().join("; ")
    };
    let said = [
        ("Sees and changes", at(Level::Change)),
        ("Sees, and does not change", at(Level::See)),
        ("Does not see", at(Level::None)),
    ];
    let said = said.into_iter().filter(|(_, what)| !what.is_empty());
    let mut lines: Vec<String> = said.map(|(how, what)| format!("{how}: {what}.")).collect();
    let is_less = |area| policy::level(reach, area) < policy::most(reach.role, area);
    if AREAS.iter().any(|(area, _)| is_less(*area)) {
        lines.push(format!("This is less than the role would have. It was set so for {name}."));
    }
    lines
}

/// The invitations that are open, and by whom they were made.
pub async fn invited(view: &View<Members>, known: &Known, now: Instant) -> Result<Vec<String>> {
    let open = invitations::list(view).await?.into_iter().filter(|it| it.open_at(now));
    let line = open.map(|it| {
        let until = day::words(known.zone.day(it.expires_at));
        let by = known.names.of(it.invited_by);
        let (name, role) = (it.name, it.role.name());
        format!("{name}, as {role}. Invited by {by}. The invitation works until {until}.")
    });
    Ok(line.collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::platform::auth::{area::AreaName, lowered::Lowered};

    #[test]
    fn every_area_stands_on_one_line_and_a_lowered_one_is_told() {
        let whole = lines("Bram", Reach::of(Role::Relative));
        assert!(whole[0].starts_with("Sees and changes: allergies"), "{whole:?}");
        assert_eq!(whole.len(), 2, "{whole:?}");
        let lowered = Lowered::default().with(AreaName::Clinical, Some(Level::None));
        let less = lines("Bram", Reach { role: Role::Relative, lowered });
        assert!(less[2].starts_with("Does not see: medicines"), "{less:?}");
        assert!(less[3].contains("set so for Bram"), "{less:?}");
        for (_, words) in AREAS {
            assert_eq!(less.iter().filter(|it| it.contains(words)).count(), 1, "{words}");
        }
        // An area without pages is not spoken of.
        let money = Lowered::default().with(AreaName::Money, Some(Level::None));
        assert_eq!(lines("Bram", Reach { role: Role::Relative, lowered: money }), whole);
    }
}
