//! An amount together with what is counted: "60 tablets", "2.5 mL". Kept as people read it.

use super::super::schedule::directions::{counted, plural};
use crate::base::quantity::Quantity;
use std::fmt;

#[derive(Clone, Debug, Default, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(transparent)]
#[sqlx(transparent)]
pub struct Amount(String);

impl Amount {
    pub fn of(quantity: Quantity, unit: &str) -> Amount {
        Amount(counted(quantity, unit))
    }

    pub fn quantity(&self) -> Quantity {
        let number = self.0.split_once(' ').map_or(self.0.as_str(), |(number, _)| number);
        Quantity::parse(number).ok().flatten().unwrap_or_default()
    }

    /// "tablets": as it was kept, in the plural where there are several.
    pub fn unit(&self) -> &str {
        self.0.split_once(' ').map_or("", |(_, unit)| unit)
    }

    pub fn is_counted_in(&self, unit: &str) -> bool {
        same_unit(self.unit(), unit)
    }
}

/// Whether two words count the same: "tablet" and "Tablets".
pub fn same_unit(one: &str, other: &str) -> bool {
    plural(one).eq_ignore_ascii_case(&plural(other))
}

impl fmt::Display for Amount {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl From<String> for Amount {
    fn from(kept: String) -> Amount {
        Amount(kept)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_amount_reads_back() {
        for (thousandths, unit, kept) in [
            (60_000, "tablet", "60 tablets"),
            (1_000, "patch", "1 patch"),
            (2_500, "mL", "2.5 mL"),
            (1_200_000, "tablets", "1,200 tablets"),
            (0, "drop", "0 drops"),
            (5_000, "extended-release tablet", "5 extended-release tablet"),
        ] {
            let amount = Amount::of(Quantity::thousandths(thousandths), unit);
            assert_eq!(amount.to_string(), kept);
            assert_eq!(amount.quantity(), Quantity::thousandths(thousandths));
            assert!(amount.is_counted_in(unit), "{kept} {unit}");
        }
        assert!(same_unit("tablet", "Tablets") && same_unit("patches", "patch"));
        assert!(!same_unit("mL", "drop"));
    }
}
