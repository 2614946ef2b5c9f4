//! What a rule says of one last day: from when on it can be renewed, what follows when it passes. Pure;
//! each value stands in `rules.json` with its source.

use super::rule::Rule;
use crate::base::day::{self, months_after};
use time::{Date, Duration};

/// The sentences for this last day. `born`: the person's birthday, for what ends on one.
pub fn says(rule: Rule, last: Date, born: Option<Date>) -> Vec<String> {
    let mut says = Vec::new();
    if let Some(on) = opens(rule, last) {
        says.push(format!("It can be renewed from {} on.", day::short_words(on)));
    }
    if rule == Rule::Placard
        && born.is_some_and(|it| (it.month(), it.day()) != (last.month(), last.day()))
    {
        says.push("It ends on a birthday, and this day is none: look at the placard.".into());
    }
    if let Some(on) = by_mail_until(rule, last) {
        let on = day::words(on);
        says.push(format!("If it was valid for 10 years, it can be renewed by mail until {on}."));
    }
    if let Some(it) = unpaid(rule, last) {
        says.push(format!(
            "Unpaid, the one named to be told hears of it not before {}; it lapses about {}; to be careful, ask for it to be reinstated before {}.",
            day::words(it.notice),
            day::words(it.lapse),
            day::words(it.reinstate)
        ));
    }
    says
}

/// The first day on which it can be renewed.
pub fn opens(rule: Rule, last: Date) -> Option<Date> {
    let days = rule.known().opens_days?;
    Some(last.saturating_sub(Duration::days(days)))
}

/// Until when one that was valid for its whole time is renewed by mail.
fn by_mail_until(rule: Rule, last: Date) -> Option<Date> {
    let known = rule.known();
    let more = known.mail_years? - known.years?;
    Some(months_after(last, 12 * more))
}

/// What follows when a premium is not paid on its day.
#[derive(Debug, PartialEq, Eq)]
struct Unpaid {
    notice: Date,
    lapse: Date,
    /// Counted from the due day and not from the lapse, so that it is rather early than late.
    reinstate: Date,
}

fn unpaid(rule: Rule, due: Date) -> Option<Unpaid> {
    let known = rule.known();
    let after = |days| due.saturating_add(Duration::days(days));
    Some(Unpaid {
        notice: after(known.notice_days?),
        lapse: after(known.lapse_days?),
        reinstate: months_after(due, known.reinstate_months?),
    })
}

/// The window of a rule that is open on a day or comes next: its first and its last day.
pub fn next_window(rule: Rule, today: Date) -> Option<(Date, Date)> {
    let known = rule.known();
    let years = [today.year(), today.year() + 1];
    years.into_iter().filter_map(|it| known.window(it)).find(|(_, until)| *until >= today)
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::date;

    /// US Department of State: 10 years; mail renewal within 15 years of issue.
    #[test]
    fn an_adult_passport_holds_ten_years_and_is_renewed_by_mail_within_fifteen() {
        // Issued on 1 March 2016.
        assert_eq!(Rule::Passport.known().years, Some(10));
        let last = date!(2026 - 03 - 01);
        assert_eq!(by_mail_until(Rule::Passport, last), Some(date!(2031 - 03 - 01)));
        assert_eq!(by_mail_until(Rule::License, last), None, "the issuer says");
    }

    /// Michigan Secretary of State: permanent 4 years ending on a birthday, renewed from 45 days
    /// before. 9 March 2028 less 45 days, counted on the calendar: 24 January.
    #[test]
    fn a_michigan_placard_ends_on_a_birthday_and_is_renewed_from_45_days_before() {
        assert_eq!(Rule::Placard.known().years, Some(4));
        let last = date!(2028 - 03 - 09);
        assert_eq!(opens(Rule::Placard, last), Some(date!(2028 - 01 - 24)));
        let born = Some(date!(1944 - 03 - 09));
        assert_eq!(says(Rule::Placard, last, born), ["It can be renewed from Mon 24 Jan 2028 on."]);
        assert_eq!(says(Rule::Placard, date!(2028 - 03 - 10), born).len(), 2);
    }

    /// Medicare.gov; Wisconsin Office of the Commissioner of Insurance 2024: open enrollment 15 October
    /// to 7 December, in force 1 January, notice of change by 30 September; the switch of an
    /// Advantage plan 1 January to 31 March.
    #[test]
    fn the_windows_of_medicare_come_every_year() {
        let open = |today| next_window(Rule::OpenEnrollment, today);
        let this_year = Some((date!(2026 - 10 - 15), date!(2026 - 12 - 07)));
        assert_eq!(open(date!(2026 - 01 - 01)), this_year);
        assert_eq!(open(date!(2026 - 12 - 07)), this_year);
        assert_eq!(
            open(date!(2026 - 12 - 08)),
            Some((date!(2027 - 10 - 15), date!(2027 - 12 - 07)))
        );
        let switch = next_window(Rule::AdvantageSwitch, date!(2026 - 11 - 26));
        assert_eq!(switch, Some((date!(2027 - 01 - 01), date!(2027 - 03 - 31))));
        let says = Rule::OpenEnrollment.known().says;
        assert!(says.contains("1 January") && says.contains("30 September"), "{says}");
        assert_eq!(next_window(Rule::Passport, date!(2026 - 11 - 26)), None);
    }

    /// NAIC Model 641, section 7: notice to the designee not before 30 days after due; lapse about day
    /// 65; reinstatement 5 months.
    #[test]
    fn an_unpaid_long_term_care_premium_has_three_days() {
        let expected = Unpaid {
            notice: date!(2026 - 05 - 31),
            lapse: date!(2026 - 07 - 05),
            reinstate: date!(2026 - 10 - 01),
        };
        assert_eq!(unpaid(Rule::CarePremium, date!(2026 - 05 - 01)), Some(expected));
        assert_eq!(unpaid(Rule::Policy, date!(2026 - 05 - 01)), None);
    }

    #[test]
    fn where_nothing_is_known_nothing_is_said() {
        for rule in [Rule::License, Rule::Authorization, Rule::Warranty, Rule::Other] {
            assert!(says(rule, date!(2027 - 01 - 15), None).is_empty(), "{rule}");
        }
    }
}
