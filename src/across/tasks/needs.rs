//! What needs someone among the tasks, for Today: what the reader is asked to take, what is overdue,
//! what nobody has, and where the day has come to ask again.
//!
//! Only for those who may do something about it. Nobody's name is put to what is late but the one
//! who has it: so that she can be offered a hand.

use crate::{
    across::today::needs::Need,
    base::{day, ids::MemberId},
    family::tasks::{hands::Hands, model::Task},
    platform::{
        audit::Names,
        web::urls::{self, Address},
    },
};
use time::Date;

/// More of a kind than this are told by their number.
const MOST: usize = 3;

/// Of the tasks that stand and were not put off.
pub fn needs(
    tasks: &[Task],
    hands: &Hands,
    names: &Names,
    (me, today): (MemberId, Date),
) -> Vec<Need> {
    let (asked, rest): (Vec<&Task>, Vec<_>) = tasks.iter().partition(|it| it.is_offered_to(me));
    let mut needs = Vec::new();
    for it in &asked {
        let by = it.offered_by.map(|it| names.of(it).to_owned()).unwrap_or_default();
        needs.push(need(it, format!("{by} asks you to take: {}", it.title)));
    }
    let (overdue, rest): (Vec<&Task>, Vec<_>) =
        rest.into_iter().partition(|it| it.is_overdue(today));
    let late = |it: &Task| {
        let since = it.due_on.map(day::short_words).unwrap_or_default();
        let with = match it.owner_id.filter(|_| !hands.is_free(it)) {
            Some(owner) => format!("with {}", names.of(owner)),
            None => "nobody has it".to_owned(),
        };
        format!("Was due on {since}: {} ({with})", it.title)
    };
    let many = |many: usize| format!("{many} tasks are overdue");
    needs.extend(each(&overdue, late, (many, urls::overdue_tasks())));
    needs.extend(unowned(&rest, hands));
    let mine = |it: &&&Task| it.is_owned_by(me);
    for it in overdue.iter().chain(&rest).filter(mine) {
        if it.wait_is_over(today) {
            let on = it.waiting_on.as_ref().map(ToString::to_string).unwrap_or_default();
            needs.push(need(it, format!("Ask again, {on}: {}", it.title)));
        }
        if let Some(no) = it.declined_by {
            needs.push(need(it, format!("{} said no: {}", names.of(no), it.title)));
        }
    }
    needs
}

fn need(it: &Task, says: String) -> Need {
    Need { says, to: urls::task(it.id) }
}

fn unowned(rest: &[&Task], hands: &Hands) -> Vec<Need> {
    let free: Vec<_> = rest.iter().copied().filter(|it| hands.is_free(it)).collect();
    let says = |it: &Task| format!("Nobody has it: {}", it.title);
    let many = |many: usize| format!("{many} tasks that nobody has");
    each(&free, says, (many, urls::tasks()))
}

/// Each with its own page, or all in one line.
fn each(
    tasks: &[&Task],
    one: impl Fn(&Task) -> String,
    (many, all): (impl Fn(usize) -> String, Address),
) -> Vec<Need> {
    if tasks.len() > MOST {
        return vec![Need { says: many(tasks.len()), to: all }];
    }
    tasks.iter().map(|it| need(it, one(it))).collect()
}
