//! What a paper is, and where its original lies, in the words of the trade. A kind is a label: nothing
//! is concluded from it but that a directive's text is for those who see directives.

use crate::platform::web::form::Choice;
use std::fmt;

/// Each kind by its words, which are also how it is kept.
macro_rules! named {
    ($(#[$doc:meta])* $type:ident { $($(#[$about:meta])* $variant:ident = $words:literal),* $(,)? }) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, sqlx::Type)]
        pub enum $type {
            $($(#[$about])* #[serde(rename = $words)] #[sqlx(rename = $words)] $variant,)*
        }

        impl Choice for $type {
            const ALL: &'static [$type] = &[$($type::$variant),*];

            fn words(self) -> &'static str {
                match self { $($type::$variant => $words,)* }
            }
        }

        impl fmt::Display for $type {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(self.words())
            }
        }
    };
}

named! {
    Kind {
        MedicalOrder = "medical order",
        Directive = "directive",
        Release = "release of information",
        InsuranceCard = "insurance card",
        IdentityCard = "identity card",
        Result = "test result",
        Discharge = "discharge paper",
        Prescription = "prescription",
        Letter = "letter",
        Bill = "bill or receipt",
        Policy = "insurance policy",
        Warranty = "warranty",
        Military = "military record",
        /// Of a birth, a marriage, a death.
        Vital = "vital record",
        Funeral = "funeral contract",
        Tax = "tax paper",
        Deed = "deed or title",
        Other = "other",
    }
}

named! {
    /// Where the original is; a place in words may stand beside it.
    Original {
        Home = "at home",
        Lawyer = "with the lawyer",
        Person = "with the person",
        Elsewhere = "elsewhere",
        /// It came as a file.
        None = "there is none",
    }
}

impl Kind {
    /// What belongs to it, where its name alone may not say so.
    pub fn holds(self) -> &'static str {
        match self {
            Kind::MedicalOrder => "signed by a clinician, as a portable medical order is",
            Kind::Directive => {
                "as a power of attorney for health care; those who may see directives see it"
            }
            Kind::Release => "who may be told what",
            Kind::IdentityCard => "also a passport, a driver’s license, a placard",
            Kind::Discharge => "what a hospital gave along",
            Kind::Vital => "of a birth, a marriage, a divorce, a death",
            _ => "",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_kind_is_kept_by_its_words() {
        for kind in Kind::ALL {
            assert_eq!(serde_json::json!(kind), kind.words());
        }
        let mut words: Vec<_> = Kind::ALL.iter().map(|it| it.words()).collect();
        words.sort_unstable();
        words.dedup();
        assert_eq!(words.len(), 18);
    }
}
