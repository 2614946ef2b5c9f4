//! What a contact is to the person, in the words of the trade. It is a label: the calling order
//! is the family's own, whatever the kinds.

use crate::platform::web::form::Choice;
use std::fmt;

#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
pub enum Kind {
    #[serde(rename = "family")]
    #[sqlx(rename = "family")]
    Family,
    #[serde(rename = "friend or neighbor")]
    #[sqlx(rename = "friend or neighbor")]
    Friend,
    #[serde(rename = "doctor")]
    #[sqlx(rename = "doctor")]
    Doctor,
    #[serde(rename = "nurse or therapist")]
    #[sqlx(rename = "nurse or therapist")]
    Nurse,
    #[serde(rename = "aide or home care")]
    #[sqlx(rename = "aide or home care")]
    Aide,
    #[serde(rename = "pharmacy")]
    #[sqlx(rename = "pharmacy")]
    Pharmacy,
    #[serde(rename = "hospital or clinic")]
    #[sqlx(rename = "hospital or clinic")]
    Hospital,
    #[serde(rename = "insurer")]
    #[sqlx(rename = "insurer")]
    Insurer,
    #[serde(rename = "lawyer or advisor")]
    #[sqlx(rename = "lawyer or advisor")]
    Lawyer,
    #[serde(rename = "faith")]
    #[sqlx(rename = "faith")]
    Faith,
    /// Someone who takes over for a while, so that who cares for the person can rest.
    #[serde(rename = "respite care")]
    #[sqlx(rename = "respite care")]
    Respite,
    /// Someone to talk to when it gets too much, at any hour.
    #[serde(rename = "crisis line")]
    #[sqlx(rename = "crisis line")]
    Crisis,
    #[serde(rename = "other service")]
    #[sqlx(rename = "other service")]
    Service,
    /// A number is worth keeping before anyone has said whose it is.
    #[serde(rename = "kind not said")]
    #[sqlx(rename = "kind not said")]
    NotSaid,
}

impl Choice for Kind {
    const ALL: &'static [Kind] = &[
        Kind::NotSaid,
        Kind::Family,
        Kind::Friend,
        Kind::Doctor,
        Kind::Nurse,
        Kind::Aide,
        Kind::Pharmacy,
        Kind::Hospital,
        Kind::Insurer,
        Kind::Lawyer,
        Kind::Faith,
        Kind::Respite,
        Kind::Crisis,
        Kind::Service,
    ];

    fn words(self) -> &'static str {
        match self {
            Kind::Family => "family",
            Kind::Friend => "friend or neighbor",
            Kind::Doctor => "doctor",
            Kind::Nurse => "nurse or therapist",
            Kind::Aide => "aide or home care",
            Kind::Pharmacy => "pharmacy",
            Kind::Hospital => "hospital or clinic",
            Kind::Insurer => "insurer",
            Kind::Lawyer => "lawyer or advisor",
            Kind::Faith => "faith",
            Kind::Respite => "respite care",
            Kind::Crisis => "crisis line",
            Kind::Service => "other service",
            Kind::NotSaid => "kind not said",
        }
    }
}

impl Kind {
    /// The words for it where it is known.
    pub fn said(self) -> Option<&'static str> {
        (self != Kind::NotSaid).then(|| self.words())
    }

    /// Whether the name is a place's, not a human being's.
    pub fn is_place(self) -> bool {
        matches!(
            self,
            Kind::Pharmacy
                | Kind::Hospital
                | Kind::Insurer
                | Kind::Respite
                | Kind::Crisis
                | Kind::Service
        )
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn is_kept_in_the_words_that_are_shown() {
        for kind in Kind::ALL {
            let kept = serde_json::to_value(kind).expect("text");
            assert_eq!(kept, kind.words());
        }
    }
}
