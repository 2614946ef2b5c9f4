//! Whose voice the record has: whether the person signs in herself, and if not, who enters what
//! she is asked and what she answers.
//!
//! Many a parent never signs in. It says nothing of what she is able to decide, and nothing in
//! the house depends on it but these words and the mark "on her behalf".

use super::{
    area::{AreaName, Role},
    lowered::Lowered,
    policy::{self, Level, Reach},
};
use crate::{
    base::{reach::Phone, zone::Zone},
    platform::{db::View, error::Result},
};
use time::Date;

pub struct Voice {
    pub signs_in: bool,
    pub has_died: bool,
    /// Those who decide who shares the record.
    pub deciders: Vec<String>,
}

/// Whose record it is, as every page of it says.
pub struct Whose {
    pub name: String,
    pub born: Date,
    pub died: Option<Date>,
    pub zone: Zone,
    /// Whom to call in an emergency: a setting of the record.
    pub emergency_number: Phone,
}

impl<A> View<A> {
    pub async fn whose(&self) -> Result<Whose> {
        let person = self.person();
        self.one(sqlx::query_as!(
            Whose,
            r#"select name, born as "born: Date", died_on as "died: Date", zone as "zone: Zone",
                emergency_number as "emergency_number: Phone"
            from person where id = ?"#,
            person
        ))
        .await
    }

    pub async fn voice(&self) -> Result<Voice> {
        let person = self.person();
        let standing = self.all(sqlx::query!(
            r#"select m.name, s.role as "role: Role", s.lowered
            from membership s join member m on m.id = s.member_id
            where s.person_id = ? and s.state = 'standing' order by s.id"#,
            person
        ));
        let has_died = self.whose().await?.died.is_some();
        let mut voice = Voice { signs_in: false, has_died, deciders: Vec::new() };
        for it in standing.await? {
            let reach = Reach { role: it.role, lowered: Lowered::from(it.lowered) };
            voice.signs_in |= it.role == Role::Person;
            if policy::level(reach, AreaName::Members) == Level::Change {
                voice.deciders.push(it.name);
            }
        }
        Ok(voice)
    }
}

impl Voice {
    /// Whether others decide for her: she lives, and does not sign in.
    pub fn is_spoken_for(&self) -> bool {
        !self.signs_in && !self.has_died
    }

    /// "Ottoline Varga does not sign in. What Ottoline Varga is asked .. is entered by Ines."
    /// None where she speaks for herself, and after her death.
    pub fn entered_for(&self, name: &str) -> Option<String> {
        let by = listed(&self.deciders);
        self.is_spoken_for().then(|| {
            format!("{name} does not sign in. What {name} is asked about this record, and what the answers are, is entered by {by}.")
        })
    }
}

/// "Ines, Bram and Juno"
pub fn listed(names: &[String]) -> String {
    match names {
        [] => "nobody".to_owned(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn who_enters_it_is_named_where_the_person_does_not_sign_in() {
        let names = ["Ines", "Bram", "Juno"].map(str::to_owned).to_vec();
        assert_eq!(listed(&names[..1]), "Ines");
        assert_eq!(listed(&names), "Ines, Bram and Juno");
        let silent = Voice { signs_in: false, has_died: false, deciders: names[..1].to_vec() };
        let said = silent.entered_for("Ottoline").unwrap();
        assert!(said.starts_with("Ottoline does not sign in.") && said.ends_with("by Ines."));
        let dead = Voice { has_died: true, ..silent };
        assert_eq!(dead.entered_for("Ottoline"), None);
        assert_eq!(Voice { signs_in: true, has_died: false, ..dead }.entered_for("Ottoline"), None);
    }
}
