//! What needs someone: what was never asked, what is missing, what does not agree, what waits.
//!
//! Each says where to go. Nothing here judges what is kept; it says what is not.

mod mail;

pub use mail::lost as lost_mail;

use super::facts::{Compared, Facts, Treated};
use crate::{
    across::{disagreements, ingredients, statements::beside},
    base::clock::Instant,
    family::{
        decisions::{model::Decision, store as decisions},
        members::invitations::{model::Invitation, store as invitations},
    },
    platform::{
        auth::area::{Clinical, Log, Members},
        db::View,
        error::Result,
        web::urls::{self, Address},
    },
    record::{
        allergies::state::State,
        happenings::{
            model::Place,
            store::{self as happenings, Wanted},
        },
        medicines::{
            model::Medicine,
            stock::standing::Standing,
            turns::{model::Turn, standing},
        },
        questions::model::Question,
        statements::state::State as Stated,
    },
};
use time::Date;

pub struct Need {
    pub says: String,
    pub to: Address,
}

impl Need {
    fn new(says: impl Into<String>, to: Address) -> Need {
        Need { says: says.into(), to }
    }
}

/// What needs someone by what is written down and what is not, what matters first in an emergency
/// in front.
pub fn of(facts: &Facts, today: Date) -> Vec<Need> {
    let mut needs = essentials(facts);
    if let Some(treated) = &facts.treated {
        needs.extend(turned(treated, today));
        needs.extend(running_out(treated, today));
        needs.extend(clinical(treated));
    }
    needs
}

fn essentials(facts: &Facts) -> Vec<Need> {
    let mut needs = Vec::new();
    if matches!(facts.allergies, State::NotAsked) {
        needs.push(Need::new("Allergies: not asked yet", urls::allergies()));
    }
    if facts.contacts.is_empty() {
        needs.push(Need::new("Nobody to phone is written down", urls::contacts()));
    }
    if facts.usual.is_empty() {
        let says = format!("How {} usually is, is not written down", facts.person.name);
        needs.push(Need::new(says, urls::usual()));
    }
    needs
}

fn clinical(treated: &Treated) -> Vec<Need> {
    let mut needs = Vec::new();
    for statement in &treated.statements {
        if let Some(differs) = beside(statement, &treated.operations) {
            needs.push(Need::new(differs, urls::statements()));
        } else if !Stated::of(statement).is_asked() {
            needs.push(Need::new(Stated::of(statement).sentence(), urls::statements()));
        }
    }
    needs.extend(unasked(&treated.questions));
    if treated.medicines.is_empty() {
        needs.push(Need::new("No medicine is written down", urls::medicines()));
    }
    let without: Vec<_> = treated.medicines.iter().filter(|it| it.purpose.is_none()).collect();
    needs.extend(purposes(&without).map(|says| Need::new(says, urls::medicines())));
    needs
}

/// Holds that nobody has a day for or asks about, and plans whose day is near.
fn turned(treated: &Treated, today: Date) -> Vec<Need> {
    let owned = |turn: Option<&Turn>| {
        let question = turn.and_then(|it| it.question_id);
        let of = treated.questions.iter().find(|it| Some(it.id) == question);
        of.is_some_and(|it| it.waits() && it.owner_id.is_some())
    };
    let mut needs = Vec::new();
    for it in &treated.medicines {
        let hold = standing::hold(it, &treated.turns);
        let to = hold.map_or(urls::medicine(it.id), |it| urls::turn(it.id));
        let says = standing::hold_needs(it, &treated.turns, owned(hold), today);
        needs.extend(says.map(|says| Need::new(says, to)));
        for plan in standing::planned(it.id, &treated.turns) {
            let says = standing::plan_needs(&it.title(), plan, today);
            needs.extend(says.map(|says| Need::new(says, urls::turn(plan.id))));
        }
    }
    needs
}

/// Medicines whose day to act is past or near.
fn running_out(treated: &Treated, today: Date) -> Vec<Need> {
    let need = |it: &Standing| Some(Need::new(it.needs(today)?, urls::stock(it.id())));
    treated.supply.iter().filter_map(need).collect()
}

/// "What 2 medicines are for is not written down: Sertraline 50 mg, Melatonin 3 mg"
fn purposes(without: &[&Medicine]) -> Option<String> {
    let titles: Vec<_> = without.iter().map(|it| it.title()).collect();
    Some(match titles.as_slice() {
        [] => return None,
        [one] => format!("What {one} is for is not written down"),
        all => {
            format!("What {} medicines are for is not written down: {}", all.len(), all.join(", "))
        }
    })
}

/// Questions that nobody has said she will ask.
fn unasked(open: &[Question]) -> Option<Need> {
    let open: Vec<_> = open.iter().filter(|it| it.needs_someone()).collect();
    match open.as_slice() {
        [] => None,
        [one] => {
            let says = format!("Nobody will ask yet: {}", one.title());
            Some(Need::new(says, urls::question(one.id)))
        }
        all => Some(Need::new(
            format!("{} questions that nobody will ask yet", all.len()),
            urls::questions(),
        )),
    }
}

/// Notes that have no place yet.
pub async fn waiting(view: &View<Log>) -> Result<Vec<Need>> {
    let wanted = Wanted { place: Some(Place::Waiting), most: 200, ..Wanted::default() };
    let waiting = happenings::list(view, &wanted).await?;
    Ok(match waiting.as_slice() {
        [] => Vec::new(),
        [one] => {
            let says = format!("A note has no place yet: {}", one.title());
            vec![Need::new(says, urls::happening(one.id))]
        }
        all => {
            vec![Need::new(format!("{} notes have no place yet", all.len()), urls::happenings())]
        }
    })
}

/// Decisions whose day to look again has come.
pub async fn to_look_at_again(view: &View<Clinical>, today: Date) -> Result<Vec<Need>> {
    let due = decisions::list(view).await?.into_iter().filter(|it| it.is_due(today));
    let need =
        |it: Decision| Need::new(format!("Look again: {}", it.matter), urls::decision(it.id));
    Ok(due.map(need).collect())
}

/// Invitations that ran out before anyone came in by them: for those who invite.
pub async fn invitations(view: &View<Members>, now: Instant) -> Result<Vec<Need>> {
    let ran_out = |it: &Invitation| it.is_standing() && !it.open_at(now);
    let all = invitations::list(view).await?.into_iter().filter(ran_out);
    let need = |it: Invitation| {
        Need::new(format!("The invitation for {} ran out unused", it.name), urls::family())
    };
    Ok(all.map(need).collect())
}

/// For those who may settle them: lists that were taken in and are not settled, what does not agree
/// and ingredients that stand in two medicines, where nobody asked yet.
pub fn compared(treated: &Treated, today: Date) -> Vec<Need> {
    let Some(Compared { disagreeing, same }) = &treated.compared else { return Vec::new() };
    let unsettled = disagreeing.lists.iter().filter(|it| it.is_open()).map(|it| {
        Need::new(format!("Not settled yet: the {}", it.title()), urls::second_list(it.id))
    });
    let disagree = disagreements::unasked(disagreeing, &treated.questions);
    let disagree = disagree.map(|it| Need::new(it, urls::disagreements()));
    let several = ingredients::unasked(same, &treated.questions, today).into_iter();
    let several = several.map(|it| Need::new(it, urls::same_in_several()));
    unsettled.chain(disagree).chain(several).collect()
}
