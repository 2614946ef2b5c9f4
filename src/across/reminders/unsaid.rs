//! What mail never names, whatever the record allows: the names of medicines, conditions and
//! operations. A title in which one of them stands is not said at all.
//!
//! It is asked as the house itself and not as the member: a name that is hidden from her is not to
//! stand in her mail either.

use super::occasion::Asked;
use crate::{
    base::ids::MemberId,
    platform::{auth::area::Clinical, error::Result},
    record::{
        conditions::store as conditions, medicines::store as medicines,
        operations::store as operations,
    },
};

pub struct Unsaid(Vec<String>);

impl Unsaid {
    pub async fn read(asked: &Asked<'_>) -> Result<Unsaid> {
        let view = asked.house.in_record::<Clinical>(asked.whom.person, MemberId::default())?;
        let mut names: Vec<String> =
            medicines::list(&view).await?.into_iter().map(|it| it.name.to_string()).collect();
        names.extend(conditions::list(&view).await?.into_iter().map(|it| it.name.to_string()));
        names.extend(operations::list(&view).await?.into_iter().map(|it| it.name.to_string()));
        Ok(Unsaid(names.iter().map(|it| it.to_lowercase()).collect()))
    }

    pub fn may_say(&self, title: &str) -> bool {
        let title = title.to_lowercase();
        !self.0.iter().any(|name| title.contains(name.as_str()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_title_with_the_name_of_a_medicine_or_a_condition_is_not_said() {
        let unsaid = Unsaid(vec!["warfarin".into(), "atrial fibrillation".into()]);
        assert!(unsaid.may_say("Fetch the parcel"));
        assert!(!unsaid.may_say("Refill WARFARIN 2.5 mg"));
        assert!(!unsaid.may_say("Ask about Atrial Fibrillation"));
    }
}
