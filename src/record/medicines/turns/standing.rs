//! What stands of turns now: each hold with its day to resume, and what is planned.
//!
//! A hold without a day to resume needs someone until one has taken on the question; with one, it
//! needs someone from that day on. A plan needs someone from the day before. The program never
//! turns a medicine by itself: it cannot know what was done.

use super::super::model::Medicine;
use super::model::{Turn, What};
use crate::base::{day, ids::MedicineId};
use time::{Date, Duration};

/// The hold that a medicine on hold stands in; older ones have no turn.
pub fn hold<'a>(medicine: &Medicine, turns: &'a [Turn]) -> Option<&'a Turn> {
    let of = turns.iter().filter(|it| it.medicine_id == medicine.id && it.is_hold());
    let stands = |it: &&Turn| !it.planned && Some(it.from_on) == medicine.status_since;
    of.filter(stands).max_by_key(|it| i64::from(it.id)).filter(|_| medicine.is_on_hold())
}

/// What is planned for a medicine, the nearest day first.
pub fn planned(medicine: MedicineId, turns: &[Turn]) -> Vec<&Turn> {
    let mut all: Vec<_> =
        turns.iter().filter(|it| it.medicine_id == medicine && it.planned).collect();
    all.sort_by_key(|it| it.from_on);
    all
}

/// What a medicine's hold needs; nothing while someone has taken on the question.
pub fn hold_needs(medicine: &Medicine, turns: &[Turn], owned: bool, today: Date) -> Option<String> {
    if !medicine.is_on_hold() {
        return None;
    }
    let (title, hold) = (medicine.title(), hold(medicine, turns));
    if let Some((on, by)) = hold.and_then(|it| Some((it.resume_on?, it.resume_by.as_ref()?))) {
        let says = format!("{title} was to be resumed on {}, said {by}: was it?", day::words(on));
        return (on <= today).then_some(says);
    }
    if owned {
        return None;
    }
    let since = medicine.turned_on().map_or(String::new(), |it| format!(" since {it}"));
    let whom = hold.map_or("the prescriber".to_owned(), |it| it.said_by.to_string());
    Some(format!("{title} is on hold{since}: ask {whom} when to resume"))
}

/// What a plan needs, from the day before its day.
pub fn plan_needs(title: &str, turn: &Turn, today: Date) -> Option<String> {
    if !turn.planned || turn.from_on - Duration::DAY > today {
        return None;
    }
    let (what, on, by) = (turn.what.words(), day::words(turn.from_on), &turn.said_by);
    Some(match turn.from_on <= today {
        true => format!("{title} was to be {what} from {on}, said {by}: was it?"),
        false => format!("{title} is to be {what} from {on}, said {by}"),
    })
}

/// What is planned by a day, medicine by medicine: above a grid, which lays out what is taken now.
pub fn plans(medicines: &[Medicine], turns: &[Turn], last: Date) -> Vec<String> {
    let by_then = |it: &Medicine| planned(it.id, turns).iter().any(|plan| plan.from_on <= last);
    let near = medicines.iter().filter(|it| by_then(it));
    let says = |it: &Medicine| Some(format!("{}: {}", it.title(), on_paper(it, turns)?));
    near.filter_map(says).collect()
}

/// What a sheet says beside a medicine: its plans and its hold, with who said so.
pub fn on_paper(medicine: &Medicine, turns: &[Turn]) -> Option<String> {
    let mut said = Vec::new();
    if let Some(hold) = hold(medicine, turns) {
        let when = hold.resuming_words().unwrap_or_else(|| "no day to resume is given".into());
        said.push(format!("on hold, said {}; {when}", hold.said_by));
    }
    for plan in planned(medicine.id, turns) {
        let then = match (plan.what, plan.resuming_words()) {
            (What::Held, Some(when)) => format!("; {when}"),
            (What::Held, None) => "; no day to resume is given".to_owned(),
            _ => String::new(),
        };
        said.push(format!("{}, said {}{then}", plan.sentence(), plan.said_by));
    }
    (!said.is_empty()).then(|| said.join(". "))
}

#[cfg(test)]
mod tests;
