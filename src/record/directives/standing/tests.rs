//! The rule of what stands. That two papers may disagree and that a later one does not settle it by
//! itself is common practice, no source: laws differ by state, so both are named.

use super::super::model::{
    Voiding,
    tests::{TODAY, directive, line},
};
use super::*;
use time::macros::date;

fn with_agent(id: i64, kind: Kind, agent: i64) -> Directive {
    Directive { agent_id: Some(agent.into()), ..directive(id, kind) }
}

fn listed(_: ContactId) -> Fate {
    Fate::Listed
}

fn whys_of(all: &[Directive]) -> Vec<Vec<Why>> {
    Standing::of(all, listed).pairs.into_iter().map(|it| it.whys).collect()
}

#[test]
fn only_what_is_in_force_stands_and_nothing_struck_does() {
    let void = Voiding { on: TODAY, by: line("Ottoline"), how: line("torn up") };
    let all = [
        directive(1, Kind::LivingWill).superseded(2.into()),
        directive(2, Kind::LivingWill),
        directive(3, Kind::NoResuscitation).voided(void, TODAY).unwrap(),
        directive(4, Kind::MedicalOrder),
        directive(5, Kind::LivingWill).struck(line("it is Emeric's")),
        Directive { state: super::super::kind::State::Draft, ..directive(6, Kind::Combined) },
    ];
    let it = Standing::of(&all, listed);
    let ids = |those: &[&Directive]| those.iter().map(|it| i64::from(it.id)).collect::<Vec<_>>();
    assert_eq!(ids(&it.in_force), [4, 2], "orders stand first");
    assert_eq!((ids(&it.over), ids(&it.drafts)), (vec![3, 1], vec![6]));
    assert_eq!(it.pairs, []);
}

#[test]
fn two_of_a_kind_in_force_disagree_and_a_later_day_does_not_settle_it() {
    let later =
        Directive { signed_on: Some(date!(2026 - 01 - 02)), ..directive(2, Kind::LivingWill) };
    let all = [directive(1, Kind::LivingWill), later];
    assert_eq!(whys_of(&all), [[Why::SameKind(Kind::LivingWill)]]);
    let it = Standing::of(&all, listed);
    let said = it.sentence(&it.pairs[0]).unwrap();
    assert!(said.starts_with("Two papers disagree: show both to the clinician."), "{said}");
    assert!(said.contains("of 2 January 2026") && said.contains("of 3 May 2022"), "{said}");
    // With the older one superseded there is one.
    assert!(whys_of(&[all[0].superseded(2.into()), all[1].clone()]).is_empty());
    assert!(whys_of(&[all[0].struck(line("x")), all[1].clone()]).is_empty());
    // A release is signed for each office.
    assert!(whys_of(&[directive(1, Kind::Release), directive(2, Kind::Release)]).is_empty());
}

#[test]
fn the_same_power_to_different_agents_disagrees_and_another_power_does_not() {
    let health = with_agent(1, Kind::HealthPower, 3);
    assert_eq!(whys_of(&[health.clone(), with_agent(2, Kind::Combined, 4)]), [[Why::Agents]]);
    assert!(whys_of(&[health.clone(), with_agent(2, Kind::Combined, 3)]).is_empty());
    assert!(whys_of(&[health.clone(), with_agent(2, Kind::FinancialPower, 4)]).is_empty());
    assert!(whys_of(&[health.clone(), directive(2, Kind::Combined)]).is_empty());
    let both = [Why::SameKind(Kind::HealthPower), Why::Agents];
    assert_eq!(whys_of(&[health, with_agent(2, Kind::HealthPower, 4)]), [both]);
    let money = [with_agent(1, Kind::FinancialPower, 3), with_agent(2, Kind::FinancialPower, 4)];
    let it = Standing::of(&money, listed);
    assert!(it.sentence(&it.pairs[0]).unwrap().contains("show both to a lawyer"));
}

#[test]
fn a_mark_of_the_family_counts_while_both_are_in_force_whichever_bears_it() {
    let will = directive(1, Kind::LivingWill);
    let order = directive(2, Kind::MedicalOrder);
    let marked = will.differing(Some((2.into(), line("hospital: yes and no"))));
    let why = [Why::Marked(line("hospital: yes and no"))];
    assert_eq!(whys_of(&[marked.clone(), order.clone()]), std::slice::from_ref(&why));
    let other = order.differing(Some((1.into(), line("hospital: yes and no"))));
    assert_eq!(whys_of(&[will.clone(), other]), [why]);
    assert!(whys_of(&[marked.clone(), order.superseded(3.into())]).is_empty());
    assert!(whys_of(&[marked.differing(None), order]).is_empty());
}

#[test]
fn a_missing_struck_or_dead_agent_is_told_of_what_is_in_force_and_of_nothing_else() {
    let named = Directive { alternate_id: Some(4.into()), ..with_agent(1, Kind::HealthPower, 3) };
    let all = [
        named.clone(),
        directive(2, Kind::FinancialPower),
        directive(3, Kind::LivingWill),
        with_agent(4, Kind::HealthPower, 3).superseded(1.into()),
    ];
    let died = date!(2026 - 02 - 01);
    let fate = |id: ContactId| match i64::from(id) {
        3 => Fate::Died(died),
        4 => Fate::Struck,
        _ => Fate::Listed,
    };
    let told: Vec<_> = Standing::of(&all, fate).troubles.into_iter().map(|it| it.with).collect();
    let wanted = [
        With::Died("agent", 3.into(), died),
        With::Struck("alternate agent", 4.into()),
        With::NoAgent,
    ];
    assert_eq!(told, wanted);
    assert_eq!(wanted[0].words(|_| "Emeric".into()), "the agent, Emeric, died on 1 February 2026");
    // Who is not shown to the reader is not spoken of.
    assert_eq!(Standing::of(&[named], |_| Fate::NotShown).troubles, []);
}
