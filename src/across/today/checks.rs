//! The facts that were checked longest ago, those never checked in front.

use crate::{
    base::check::Check,
    platform::{
        auth::area::{Clinical, Essentials},
        db::View,
        error::Result,
        web::urls::{self, Address},
    },
    record::{
        allergies::store as allergies, baseline::store as baseline,
        conditions::store as conditions, contacts::store as contacts,
        medicines::store as medicines, operations::store as operations, people::store as people,
    },
};

/// How many are shown: more than one sitting's worth helps nobody.
const MOST: usize = 5;

pub struct Fact {
    pub title: String,
    pub check: Option<Check>,
    pub to: Address,
}

pub async fn oldest(view: &View<Essentials>) -> Result<Vec<Fact>> {
    let mut facts = essentials(view).await?;
    if let Some(view) = view.area::<Clinical>() {
        facts.extend(clinical(&view).await?);
    }
    Ok(first(facts))
}

fn first(mut facts: Vec<Fact>) -> Vec<Fact> {
    facts.sort_by_key(|it| it.check.as_ref().map(|it| it.at));
    facts.truncate(MOST);
    facts
}

async fn essentials(view: &View<Essentials>) -> Result<Vec<Fact>> {
    let (person, usual) = (people::find(view).await?, baseline::find(view).await?);
    let fact = |title: String, check, to| Fact { title, check, to };
    let mut facts = vec![fact(person.name.to_string(), person.check(), urls::person())];
    if !usual.is_empty() {
        let title = format!("How {} usually is", person.name);
        facts.push(fact(title, usual.check(), urls::usual()));
    }
    for it in allergies::list(view).await? {
        facts.push(fact(it.substance.to_string(), it.check(), urls::allergy(it.id)));
    }
    for it in contacts::list(view).await? {
        facts.push(fact(it.name.to_string(), it.check(), urls::contact(it.id)));
    }
    Ok(facts)
}

async fn clinical(view: &View<Clinical>) -> Result<Vec<Fact>> {
    let fact = |title: String, check, to| Fact { title, check, to };
    let mut facts = Vec::new();
    for it in medicines::list(view).await?.iter().filter(|it| it.is_current()) {
        facts.push(fact(it.title(), it.check(), urls::medicine(it.id)));
    }
    for it in conditions::list(view).await?.iter().filter(|it| it.is_standing()) {
        facts.push(fact(it.name.to_string(), it.check(), urls::condition(it.id)));
    }
    for it in operations::list(view).await? {
        facts.push(fact(it.name.to_string(), it.check(), urls::operation(it.id)));
    }
    Ok(facts)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{clock::Instant, ids::MemberId, text::Line};

    #[test]
    fn never_checked_comes_before_checked_long_ago() {
        let fact = |title: &str, at: Option<i64>| Fact {
            title: title.into(),
            check: at.map(|at| Check {
                at: Instant::from_unix(at),
                by: MemberId::from(1),
                against: Line::from("the label".to_owned()),
            }),
            to: urls::person(),
        };
        let facts = [("b", Some(9)), ("a", Some(3)), ("never", None), ("c", Some(12))];
        let all = first(facts.map(|(title, at)| fact(title, at)).into());
        let titles: Vec<_> = all.iter().map(|it| it.title.as_str()).collect();
        assert_eq!(titles, ["never", "a", "b", "c"]);
        assert_eq!(first((0..9).map(|_| fact("x", None)).collect()).len(), MOST);
    }
}
