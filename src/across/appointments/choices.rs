//! The closed answers of the forms, with the words for each: how it repeats, which day of a month, how a series ends, what
//! becomes of one whose day the series no longer has.

use crate::{platform::web::form::Choice, record::appointments::repeat::OfMonth};

/// How it repeats.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Repeats {
    Once,
    Days,
    Weeks,
    Months,
    Years,
}

impl Choice for Repeats {
    const ALL: &'static [Repeats] =
        &[Repeats::Once, Repeats::Days, Repeats::Weeks, Repeats::Months, Repeats::Years];

    fn words(self) -> &'static str {
        match self {
            Repeats::Once => "it does not repeat",
            Repeats::Days => "every so many days",
            Repeats::Weeks => "every so many weeks, on these days",
            Repeats::Months => "every so many months",
            Repeats::Years => "every so many years",
        }
    }
}

/// Which day of a month.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MonthDay {
    Day,
    Weekday,
    LastWeekday,
    LastDay,
}

impl Choice for MonthDay {
    const ALL: &'static [MonthDay] =
        &[MonthDay::Day, MonthDay::Weekday, MonthDay::LastWeekday, MonthDay::LastDay];

    fn words(self) -> &'static str {
        match self {
            MonthDay::Day => "on the same day of the month, like the 15th",
            MonthDay::Weekday => "on the same weekday, counted, like the second Tuesday",
            MonthDay::LastWeekday => "on the last such weekday, like the last Tuesday",
            MonthDay::LastDay => "on the last day of the month",
        }
    }
}

impl MonthDay {
    pub fn kept(self) -> OfMonth {
        match self {
            MonthDay::Day => OfMonth::Day,
            MonthDay::Weekday => OfMonth::Weekday,
            MonthDay::LastWeekday => OfMonth::LastWeekday,
            MonthDay::LastDay => OfMonth::LastDay,
        }
    }

    pub fn of(kept: OfMonth) -> MonthDay {
        match kept {
            OfMonth::Day => MonthDay::Day,
            OfMonth::Weekday => MonthDay::Weekday,
            OfMonth::LastWeekday => MonthDay::LastWeekday,
            OfMonth::LastDay => MonthDay::LastDay,
        }
    }
}

/// How a series ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HowItEnds {
    Never,
    After,
    On,
}

impl Choice for HowItEnds {
    const ALL: &'static [HowItEnds] = &[HowItEnds::Never, HowItEnds::After, HowItEnds::On];

    fn words(self) -> &'static str {
        match self {
            HowItEnds::Never => "it goes on",
            HowItEnds::After => "after so many times",
            HowItEnds::On => "on a day",
        }
    }
}

/// What becomes of one whose day the series no longer has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Settled {
    Keep,
    LetGo,
}

impl Choice for Settled {
    const ALL: &'static [Settled] = &[Settled::Keep, Settled::LetGo];

    fn words(self) -> &'static str {
        match self {
            Settled::Keep => "keep it: it takes place",
            Settled::LetGo => "let it go: it does not take place",
        }
    }
}
