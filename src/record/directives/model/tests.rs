//! What may happen to a directive, and samples for the rules beside it.

use super::*;
use time::macros::date;

pub const TODAY: Date = date!(2026 - 11 - 25);

pub fn line(text: &str) -> Line {
    Line::from(text.to_owned())
}

pub fn entry(kind: Kind, signed_on: Option<Date>) -> Entry {
    Entry {
        kind,
        form_of: None,
        signed_on,
        witnesses: None,
        notary: None,
        named: [None; 3],
        starts: Starts::NotSaid,
        starts_words: None,
        kept_where: None,
        holder_id: None,
        note: None,
        source: None,
    }
}

/// One in force, signed on 3 May 2022.
pub fn directive(id: i64, kind: Kind) -> Directive {
    let entry = entry(kind, Some(date!(2022 - 05 - 03)));
    Directive { id: id.into(), ..Directive::new(1.into(), entry, State::InForce) }
}

#[test]
fn a_draft_is_not_signed_and_nothing_is_signed_on_a_day_to_come() {
    let on =
        |day, state| Directive::new(1.into(), entry(Kind::LivingWill, day), state).sound(TODAY);
    assert!(on(Some(TODAY), State::InForce).is_ok() && on(None, State::InForce).is_ok());
    assert!(on(Some(date!(2026 - 11 - 26)), State::InForce).is_err());
    assert!(on(Some(TODAY), State::Draft).is_err());
    let draft = on(None, State::Draft).unwrap();
    assert_eq!(draft.title(), "Living will, a draft");
    assert!(draft.signed(date!(2026 - 11 - 26), TODAY).is_err());
    let signed = draft.signed(TODAY, TODAY).unwrap();
    assert!(signed.is_in_force());
    assert_eq!(signed.title(), "Living will of 25 November 2026");
}

#[test]
fn what_is_over_stands_again_as_it_was() {
    let kept = directive(1, Kind::LivingWill);
    let voiding = |on| Voiding { on, by: line("Ottoline"), how: line("torn up") };
    assert!(kept.voided(voiding(date!(2026 - 11 - 26)), TODAY).is_err());
    let void = kept.voided(voiding(TODAY), TODAY).unwrap();
    assert_eq!(void.voided_so().unwrap(), "voided on 25 November 2026 by Ottoline: torn up");
    assert!(void.is_over() && !void.is_in_force());
    assert_eq!(void.stands_again(), kept);
    assert_eq!(kept.superseded(2.into()).stands_again(), kept);
    assert_eq!(kept.struck(line("it is Emeric's")).brought_back(), kept);
    assert!(!kept.struck(line("it is Emeric's")).is_in_force());
}

#[test]
fn an_edit_keeps_how_it_stands() {
    let kept = directive(1, Kind::LivingWill).superseded(2.into());
    let after = kept.edited(entry(Kind::Combined, None), TODAY).unwrap();
    assert_eq!((after.kind, after.superseded_by), (Kind::Combined, Some(2.into())));
    assert_eq!(
        after.title(),
        "Living will and power of attorney for health care in one form, day of signing not known"
    );
}

#[test]
fn it_speaks_of_who_is_named_in_it_and_of_who_holds_the_original() {
    let named = [Some(3.into()), Some(4.into()), None];
    let entry = Entry { named, holder_id: Some(5.into()), ..entry(Kind::HealthPower, None) };
    let kept = Directive::new(1.into(), entry, State::InForce);
    let ids: Vec<_> = kept.named().collect();
    assert_eq!(ids, [("agent", 3.into()), ("alternate agent", 4.into())]);
    assert!(kept.speaks_of(4.into()) && kept.speaks_of(5.into()) && !kept.speaks_of(6.into()));
}
