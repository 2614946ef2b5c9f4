//! Whose hands a task can be in, with what leans on an item that is hidden from one of them.
//!
//! A question is out of her reach with what it names, an appointment with its contacts, the note of a
//! visit with its contact or its appointment, what was refused or is to be renewed with what it is
//! about: as their stores leave it out for her (`seen` reads them).
//! Offered to her, a task about it would be a page that is not there.

use crate::{
    family::tasks::{
        hands::{Hand, Hands, HiddenFrom},
        store,
    },
    platform::{
        auth::{
            area::{AreaName, Clinical, Papers, Tasks},
            policy::{self, Level},
        },
        db::View,
        error::Result,
    },
    record::{
        appointments::{model::Appointment, occurrence::Occurrence, store as appointments},
        coverage::refusals::store as refusals,
        papers::{kind::Kind, model::Paper, store as papers},
        questions::{model::Question, store as questions},
        renewals::{model::Renewal, store as renewals},
        visits::{model::Visit, store as visits},
    },
};

pub async fn hands(view: &View<Tasks>) -> Result<Hands> {
    let mut hands = store::hands(view).await?;
    if let Some(view) = view.area::<Papers>() {
        let all = renewals::list(&view).await?;
        let out = all.iter().flat_map(|it| out_of_reach(it, &hands)).collect::<Vec<_>>();
        hands.hidden.extend(out);
    }
    if let Some(view) = view.area::<Papers>() {
        let all = [papers::waiting(&view).await?, papers::filed(&view).await?].concat();
        let out = all.iter().flat_map(|it| close(it, &hands)).collect::<Vec<_>>();
        hands.hidden.extend(out);
    }
    if hands.hidden.is_empty() {
        return Ok(hands);
    }
    let hidden = &hands.hidden;
    let mut leaning = Vec::new();
    if let Some(view) = view.area::<Clinical>() {
        for it in &questions::list(&view, &questions::Wanted::default()).await? {
            leaning.extend(with(hidden, "question", it.id.into(), |on| asks_of(it, on)));
        }
        for it in &visits::list(&view).await? {
            leaning.extend(with(hidden, "visit", it.id.into(), |on| tells_of(it, on)));
        }
    }
    if let Some(view) = view.area::<Papers>() {
        for it in &refusals::list(&view).await? {
            let of = |on: &HiddenFrom| is(on, "medicine", Some(it.medicine_id));
            leaning.extend(with(hidden, "refusal", it.id.into(), of));
        }
    }
    let apart = appointments::occurrences(view, None).await?;
    for it in &appointments::list(view).await? {
        leaning.extend(with(hidden, "appointment", it.id.into(), |on| is_with(it, &apart, on)));
    }
    hands.hidden.extend(leaning);
    Ok(hands)
}

/// What is to be renewed is out of her reach with what it is about: hidden from her, or a prescription
/// where her place does not reach the medicines.
fn out_of_reach(it: &Renewal, hands: &Hands) -> Vec<HiddenFrom> {
    let Some((kind, about)) = it.about_kind.as_deref().zip(it.about_item) else {
        return Vec::new();
    };
    let hidden = |member| {
        let of = |on: &&HiddenFrom| on.member == member && on.kind == kind;
        hands.hidden.iter().filter(of).any(|on| on.item == about)
    };
    let sees = |reach| policy::allows(Some(reach), AreaName::Clinical, Level::See);
    let lacks = |hand: &&Hand| hidden(hand.member) || kind == "medicine" && !sees(hand.reach);
    let all = hands.members.iter().filter(lacks);
    let (kind, item) = ("renewal".to_owned(), it.id.into());
    all.map(|hand| HiddenFrom { member: hand.member, kind: kind.clone(), item }).collect()
}

/// A paper is out of her reach where it is for stewards, is a directive and her place does not reach those,
/// or came from a contact that is hidden from her.
fn close(it: &Paper, hands: &Hands) -> Vec<HiddenFrom> {
    let from = |on: &HiddenFrom| is(on, "contact", it.contact_id);
    let sees = |reach| policy::allows(Some(reach), AreaName::Directives, Level::See);
    let stewards = |hand: &Hand| it.stewards_only && !hand.reach.role.decides();
    let directive = |hand: &Hand| it.kind == Some(Kind::Directive) && !sees(hand.reach);
    let lacks = |hand: &&Hand| {
        let hidden = hands.hidden.iter().any(|on| on.member == hand.member && from(on));
        stewards(hand) || directive(hand) || hidden
    };
    let of = |hand: &Hand| HiddenFrom {
        member: hand.member,
        kind: "paper".to_owned(),
        item: it.id.into(),
    };
    hands.members.iter().filter(lacks).map(of).collect()
}

/// An item is hidden from each member from whom one is that it leans on.
fn with<'a>(
    hidden: &'a [HiddenFrom],
    kind: &'a str,
    item: i64,
    leans: impl Fn(&HiddenFrom) -> bool + 'a,
) -> impl Iterator<Item = HiddenFrom> + 'a {
    let on = hidden.iter().filter(move |on| leans(on));
    on.map(move |on| HiddenFrom { member: on.member, kind: kind.to_owned(), item })
}

/// Whether a question is about an item, for it, or names it.
fn asks_of(question: &Question, on: &HiddenFrom) -> bool {
    let named = question.names.as_deref().map(serde_json::from_str::<Vec<(String, i64)>>);
    let named = named.and_then(|it| it.ok()).unwrap_or_default();
    is(on, "contact", question.contact_id)
        || question.about() == Some((on.kind.as_str(), on.item))
        || named.iter().any(|it| it.0 == on.kind && it.1 == on.item)
}

fn tells_of(visit: &Visit, on: &HiddenFrom) -> bool {
    is(on, "contact", visit.contact_id) || is(on, "appointment", visit.appointment_id)
}

/// Whether an appointment, or one time of it, is with a contact.
fn is_with(appointment: &Appointment, apart: &[Occurrence], on: &HiddenFrom) -> bool {
    let own = apart.iter().filter(|it| it.appointment_id == appointment.id && !it.struck);
    let own = own.map(|it| it.escort_contact_id);
    let with = [appointment.contact_id, appointment.escort_contact_id];
    with.into_iter().chain(own).any(|it| is(on, "contact", it))
}

fn is(on: &HiddenFrom, kind: &str, item: Option<impl Into<i64>>) -> bool {
    on.kind == kind && item.map(Into::into) == Some(on.item)
}
