//! What can be typed about a place: another role, the areas that are lowered, a press.

use crate::platform::{
    auth::{
        area::{AreaName, Role},
        lowered::{self, Lowered},
        policy::{self, Level},
    },
    web::form::{FormErrors, FromForm, Reader},
};

/// Another role. The person's own place is given by invitation only.
pub struct Other {
    pub role: Role,
    pub version: i64,
}

/// The roles that can be chosen for a member.
pub const ROLES: [Role; 4] = [Role::Steward, Role::Relative, Role::Aide, Role::Reader];

impl FromForm for Other {
    fn read(form: &mut Reader) -> Result<Other, FormErrors> {
        let role = role(form, &ROLES);
        let version = form.version();
        form.finish(|| Some(Other { role: role?, version }))
    }
}

/// The role that was chosen among these.
pub fn role(form: &mut Reader, among: &[Role]) -> Option<Role> {
    let found = among.iter().copied().find(|it| it.name() == form.raw("role"));
    if found.is_none() {
        form.wrong("role", "Choose one of these.");
    }
    found
}

/// The words for an area that is not lowered.
pub const AS_THE_ROLE: &str = "as the role has it";

/// What an area can be set to for a member in this role; none where the role does not reach it.
pub fn choices(role: Role, area: AreaName) -> Vec<&'static str> {
    let below = [Level::See, Level::None].into_iter().filter(|it| *it < policy::most(role, area));
    let below: Vec<_> = below.map(lowered::words).collect();
    if below.is_empty() { below } else { [vec![AS_THE_ROLE], below].concat() }
}

/// The areas as they were sent: one field each. One that was not asked for stays as it is.
pub struct Areas {
    sent: Vec<(AreaName, String)>,
    pub version: i64,
}

impl FromForm for Areas {
    fn read(form: &mut Reader) -> Result<Areas, FormErrors> {
        let mut sent = Vec::new();
        for area in AreaName::ALL {
            let words = form.raw(area.name()).to_owned();
            let known = words.is_empty() || words == AS_THE_ROLE;
            if !known && lowered::said(&words).is_none() {
                form.wrong(area.name(), "Choose one of these.");
            }
            sent.push((area, words));
        }
        let version = form.version();
        form.finish(|| Some(Areas { sent, version }))
    }
}

impl Areas {
    /// What is lowered then. An area that this role does not reach is left as it was.
    pub fn over(&self, kept: Lowered, role: Role) -> Lowered {
        let asked =
            self.sent.iter().filter(|(area, words)| choices(role, *area).contains(&words.as_str()));
        asked.fold(kept, |kept, (area, words)| kept.with(*area, lowered::said(words)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_area_is_offered_as_far_as_the_role_reaches_it() {
        let offered = |role, area| choices(role, area);
        assert_eq!(
            offered(Role::Relative, AreaName::Clinical),
            [AS_THE_ROLE, "see only", "nothing"]
        );
        assert_eq!(offered(Role::Relative, AreaName::Directives), [AS_THE_ROLE, "nothing"]);
        assert!(offered(Role::Aide, AreaName::Directives).is_empty());
    }

    #[test]
    fn an_area_that_was_not_asked_for_stays_lowered() {
        let kept = Lowered::default().with(AreaName::Directives, Some(Level::None));
        let sent = vec![
            (AreaName::Clinical, "nothing".to_owned()),
            (AreaName::Directives, AS_THE_ROLE.to_owned()),
        ];
        let areas = Areas { sent, version: 1 };
        assert_eq!(
            areas.over(kept, Role::Aide).to_string(),
            "clinical: nothing, directives: nothing"
        );
        assert_eq!(areas.over(kept, Role::Relative).to_string(), "clinical: nothing");
    }
}
