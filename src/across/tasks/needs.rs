//! What needs someone among the tasks, for Today: what the reader is asked to take, what is overdue,
//! what nobody has, and where the day has come to ask again.
//!
//! Only for those who may do something about it. Nobody's name is put to what is late but the one
//! who has it: so that she can be offered a hand.

use super::seen;
use crate::{
    base::day,
    family::tasks::{hands::Hands, model::Task, store::Wanted},
    platform::{
        auth::area::Tasks,
        db::View,
        error::Result,
        web::urls::{self, Address},
    },
};
use time::Date;

/// More of a kind than this are told by their number.
const MOST: usize = 3;

pub async fn needs(view: &View<Tasks>, today: Date) -> Result<Vec<(String, Address)>> {
    if !view.may_change() {
        return Ok(Vec::new());
    }
    let names = view.names().await?;
    let hands = seen::hands(view).await?;
    let wanted = Wanted { since: Some(today), ..Wanted::default() };
    let mut all = seen::list(view, &wanted).await?;
    all.retain(|it| it.stands() && !it.is_put_off(today));
    let me = view.member();
    let (asked, rest): (Vec<_>, Vec<_>) = all.into_iter().partition(|it| it.is_offered_to(me));
    let mut needs = Vec::new();
    for it in &asked {
        let by = it.offered_by.map(|it| names.of(it).to_owned()).unwrap_or_default();
        needs.push((format!("{by} asks you to take: {}", it.title), urls::task(it.id)));
    }
    let (overdue, rest): (Vec<_>, Vec<_>) = rest.into_iter().partition(|it| it.is_overdue(today));
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
    needs.extend(unowned(&rest, &hands));
    let mine = |it: &&Task| it.is_owned_by(me);
    for it in overdue.iter().chain(&rest).filter(mine) {
        if it.wait_is_over(today) {
            let on = it.waiting_on.as_ref().map(ToString::to_string).unwrap_or_default();
            needs.push((format!("Ask again, {on}: {}", it.title), urls::task(it.id)));
        }
        if let Some(no) = it.declined_by {
            needs.push((format!("{} said no: {}", names.of(no), it.title), urls::task(it.id)));
        }
    }
    Ok(needs)
}

fn unowned(rest: &[Task], hands: &Hands) -> Vec<(String, Address)> {
    let free: Vec<_> = rest.iter().filter(|it| hands.is_free(it)).cloned().collect();
    let says = |it: &Task| format!("Nobody has it: {}", it.title);
    let many = |many: usize| format!("{many} tasks that nobody has");
    each(&free, says, (many, urls::tasks()))
}

/// Each with its own page, or all in one line.
fn each(
    tasks: &[Task],
    one: impl Fn(&Task) -> String,
    (many, all): (impl Fn(usize) -> String, Address),
) -> Vec<(String, Address)> {
    if tasks.len() > MOST {
        return vec![(many(tasks.len()), all)];
    }
    tasks.iter().map(|it| (one(it), urls::task(it.id))).collect()
}
