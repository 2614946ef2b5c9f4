//! Which directives an event touches, and which are still to be looked at again.
//!
//! What happened to the person herself touches all that are in force; what happened to someone else
//! those that speak of her. Only what was signed by that day: a later one was signed knowing it.

use super::{
    events::{DirectiveAside, DirectiveEvent, Happened},
    model::Directive,
};
use time::{Date, Month};

/// One directive to be looked at again, after which event.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Prompt<'a> {
    pub directive: &'a Directive,
    pub event: &'a DirectiveEvent,
}

/// Whether this event touches this directive.
pub fn touches(event: &DirectiveEvent, it: &Directive) -> bool {
    let of_it = event.contact_id.is_none_or(|whose| it.speaks_of(whose));
    let before = it.signed_on.is_none_or(|signed| signed <= event.happened_on);
    !event.struck && it.is_in_force() && of_it && before
}

/// What is still to be looked at: touched, not reviewed since that day, not put aside.
pub fn open<'a>(
    events: &'a [DirectiveEvent],
    all: &'a [Directive],
    asides: &[DirectiveAside],
) -> Vec<Prompt<'a>> {
    let aside = |event: &DirectiveEvent, it: &Directive| {
        let same = |a: &DirectiveAside| a.event_id == event.id && a.directive_id == it.id;
        asides.iter().any(|a| a.standing && same(a))
    };
    let reviewed = |event: &DirectiveEvent, it: &Directive| {
        it.reviewed_on.is_some_and(|on| on >= event.happened_on)
    };
    let mut open = Vec::new();
    for event in events {
        for directive in all {
            let settled = reviewed(event, directive) || aside(event, directive);
            if touches(event, directive) && !settled {
                open.push(Prompt { directive, event });
            }
        }
    }
    open
}

/// The day her newest decade began, where a directive was last signed or looked at before it and
/// nobody wrote that decade down. A birthday on 29 February is 1 March elsewhen, as everywhere here.
pub fn decade_unsaid(
    born: Date,
    today: Date,
    all: &[Directive],
    events: &[DirectiveEvent],
) -> Option<Date> {
    let age = crate::base::day::age(born, today);
    let year = born.year() + age - age.rem_euclid(10);
    let began = Date::from_calendar_date(year, born.month(), born.day())
        .or_else(|_| Date::from_calendar_date(year, Month::March, 1))
        .ok()?;
    let said =
        |it: &DirectiveEvent| !it.struck && it.kind == Happened::Decade && it.happened_on >= began;
    let looked_before = |it: &Directive| {
        it.is_in_force() && it.signed_on.max(it.reviewed_on).is_some_and(|on| on < began)
    };
    let unsaid = age >= 10 && !events.iter().any(said) && all.iter().any(looked_before);
    unsaid.then_some(began)
}

#[cfg(test)]
mod tests {
    use super::super::{
        kind::Kind,
        model::{
            Review,
            tests::{TODAY, directive, line},
        },
    };
    use super::*;
    use time::macros::date;

    fn event(kind: Happened, contact: Option<i64>, on: Date) -> DirectiveEvent {
        let whose = (kind, contact.map(Into::into));
        let new = DirectiveEvent::new(1.into(), whose, (on, None), TODAY).unwrap();
        DirectiveEvent { id: 9.into(), ..new }
    }

    fn power(id: i64) -> Directive {
        let named = (Some(3.into()), Some(4.into()));
        Directive { agent_id: named.0, alternate_id: named.1, ..directive(id, Kind::HealthPower) }
    }

    fn ids(prompts: &[Prompt]) -> Vec<i64> {
        prompts.iter().map(|it| it.directive.id.into()).collect()
    }

    /// The six triggers of the ABA Commission on Law and Aging, each of the person herself.
    #[test]
    fn each_published_trigger_touches_all_that_are_in_force_and_were_signed_by_then() {
        let all = [
            power(1),
            directive(2, Kind::LivingWill),
            directive(3, Kind::LivingWill).superseded(2.into()),
            directive(4, Kind::Combined).struck(line("it is Emeric's")),
            Directive {
                signed_on: Some(date!(2026 - 10 - 02)),
                ..directive(5, Kind::MedicalOrder)
            },
            Directive { signed_on: None, ..directive(6, Kind::OrganDonation) },
        ];
        for kind in [
            Happened::Decade,
            Happened::Divorce,
            Happened::Diagnosis,
            Happened::Decline,
            Happened::Move,
        ] {
            let events = [event(kind, None, date!(2026 - 10 - 01))];
            assert_eq!(ids(&open(&events, &all, &[])), [1, 2, 6], "{kind}");
        }
        let death = [event(Happened::Death, Some(4), date!(2026 - 10 - 01))];
        assert_eq!(ids(&open(&death, &all, &[])), [1], "only the one that names the alternate");
        assert!(open(&[death[0].struck(line("she lives"))], &all, &[]).is_empty());
        let stranger = [event(Happened::Death, Some(8), date!(2026 - 10 - 01))];
        assert!(open(&stranger, &all, &[]).is_empty());
    }

    #[test]
    fn it_is_asked_until_it_was_reviewed_or_put_aside() {
        let events = [event(Happened::Move, None, date!(2026 - 10 - 01))];
        let review = |on| Review { on, by: line("Ines"), why: line("the move") };
        let before = power(1).reviewed(review(date!(2026 - 09 - 30)), TODAY).unwrap();
        let since = power(1).reviewed(review(date!(2026 - 10 - 01)), TODAY).unwrap();
        assert_eq!(ids(&open(&events, &[before], &[])), [1]);
        assert!(open(&events, &[since], &[]).is_empty());
        let aside = DirectiveAside::new(1.into(), (9.into(), 1.into()), line("same form"));
        let all = [power(1), directive(2, Kind::LivingWill)];
        assert_eq!(ids(&open(&events, &all, std::slice::from_ref(&aside))), [2]);
        assert_eq!(ids(&open(&events, &all, &[aside.taken_back()])), [1, 2]);
    }

    #[test]
    fn a_death_is_someone_elses_and_a_diagnosis_her_own() {
        let new = |kind, contact: Option<i64>, on| {
            let whose = (kind, contact.map(Into::into));
            DirectiveEvent::new(1.into(), whose, (on, None), TODAY)
        };
        assert!(new(Happened::Death, None, TODAY).is_err());
        assert!(new(Happened::Diagnosis, Some(3), TODAY).is_err());
        assert!(new(Happened::Move, Some(3), TODAY).is_ok());
        assert!(new(Happened::Move, None, date!(2026 - 11 - 26)).is_err());
    }

    /// Ottoline, born 9 March 1944, was 80 on 9 March 2024.
    #[test]
    fn a_decade_that_began_since_is_told_until_someone_writes_it_down() {
        let born = date!(1944 - 03 - 09);
        let told = |today, all: &[Directive], events: &[DirectiveEvent]| {
            decade_unsaid(born, today, all, events)
        };
        let will = [directive(1, Kind::LivingWill)];
        assert_eq!(told(date!(2024 - 03 - 08), &will, &[]), None, "at 70 none was signed yet");
        assert_eq!(told(TODAY, &will, &[]), Some(date!(2024 - 03 - 09)));
        let said = [event(Happened::Decade, None, date!(2024 - 03 - 09))];
        assert_eq!(told(TODAY, &will, &said), None);
        let review = Review { on: TODAY, by: line("Ines"), why: line("80") };
        assert_eq!(told(TODAY, &[will[0].reviewed(review, TODAY).unwrap()], &[]), None);
        assert_eq!(told(TODAY, &[will[0].superseded(2.into())], &[]), None);
        let leap = decade_unsaid(date!(1936 - 02 - 29), date!(2026 - 11 - 25), &will, &[]);
        assert_eq!(leap, Some(date!(2026 - 03 - 01)), "a common year");
    }
}
