//! What follows a try that failed: when the next one is, or that there is none.
//!
//! A refusal for good (RFC 5321 (2008), section 4.2.1: a reply of 5yz to the recipient or to the
//! message) gives the message up at once. Any other trouble (4yz, no answer, a connection that
//! breaks) is tried again after 1, 2, 4 … minutes, 6 hours at most, for three days; the last try is
//! at their end (section 4.5.4.1: "the give-up time generally needs to be at least 4-5 days" is
//! for mail between strangers; a reminder older than three days helps nobody).

use crate::base::clock::Instant;
use time::Duration;

/// How long a message is tried.
pub const LASTS: Duration = Duration::days(3);
/// The longest pause between two tries.
pub const LONGEST: Duration = Duration::hours(6);

/// When to try again after this many tries; none: it is given up.
pub fn next(tries: i64, made: Instant, now: Instant) -> Option<Instant> {
    let end = made.plus(LASTS);
    if now >= end {
        return None;
    }
    let minutes = 1_i64 << (tries - 1).clamp(0, 10);
    Some(now.plus(Duration::minutes(minutes).min(LONGEST)).min(end))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_pauses_double_up_to_six_hours_and_end_after_three_days() {
        let made = Instant::from_unix(1_795_619_520);
        let (mut now, mut tries, mut pauses) = (made, 1, Vec::new());
        while let Some(then) = next(tries, made, now) {
            pauses.push(then.since(now).whole_minutes());
            (now, tries) = (then, tries + 1);
        }
        assert_eq!(pauses[..9], [1, 2, 4, 8, 16, 32, 64, 128, 256]);
        assert!(pauses[9..pauses.len() - 1].iter().all(|it| *it == 360), "{pauses:?}");
        assert_eq!(now, made.plus(Duration::days(3)), "the last try is at the end");
    }

    #[test]
    fn a_clock_that_jumps_gives_nothing_up_untried() {
        let made = Instant::from_unix(1_795_619_520);
        // Set back: the message was made "later" than now, and goes on being tried.
        assert!(next(40, made, made.minus(Duration::days(9))).is_some());
        // Forward: what is asked is always a try that has just failed.
        assert_eq!(next(1, made, made.plus(Duration::days(9))), None);
    }
}
