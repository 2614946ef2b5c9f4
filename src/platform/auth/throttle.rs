//! Slows those who guess passwords, without locking the member out.
//!
//! Each attempt is counted by the address it comes from and by the account it is for. A browser that has signed in to
//! the account before (it shows a cookie to prove it) is counted apart: whoever fills the account's bucket from
//! outside cannot keep the member out (OWASP, "Slow Down Online Guessing Attacks with Device Cookies").
//! An attempt counts as failed from the moment it is checked until `succeeded` says otherwise, so a thousand at once
//! gain nothing. Buckets leak steadily (generic cell rate algorithm, ITU-T I.371); all is in memory and forgotten at
//! a restart.

use std::collections::HashMap;
use std::hash::{BuildHasher, RandomState};
use std::net::{IpAddr, Ipv6Addr};
use std::sync::{Mutex, MutexGuard, PoisonError};

use crate::base::clock::Instant;

/// How many attempts a bucket holds, and how long it takes to leak one.
#[derive(Clone, Copy)]
struct Quota {
    burst: i64,
    seconds_each: i64,
}

const ADDRESS: Quota = Quota { burst: 30, seconds_each: 10 };
const ACCOUNT: Quota = Quota { burst: 8, seconds_each: 60 };

/// How many buckets are remembered.
const MOST: usize = 50_000;

/// Someone trying to sign in.
pub struct Attempt {
    /// The e-mail address that was typed, normalised; the account need not exist.
    pub account: String,
    pub address: IpAddr,
    /// The browser has proved that it signed in to this account before.
    pub known_device: bool,
}

/// How many seconds to wait before the next attempt is heard.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Wait(pub u64);

/// What a bucket is for, hashed with a secret of this process: names of any length take eight bytes.
type Key = u64;

#[derive(Default)]
pub struct Throttle {
    secret: RandomState,
    /// For each bucket the unix second at which it will have leaked empty.
    empty_at: Mutex<HashMap<Key, i64>>,
}

impl Throttle {
    pub fn new() -> Self {
        Self::default()
    }

    /// Counts the attempt, or says how long to wait; an attempt that has to wait is not counted.
    pub fn check(&self, who: &Attempt, now: Instant) -> Result<(), Wait> {
        let now = now.unix();
        let mut buckets = self.buckets();
        let pour = |(key, quota): (Key, Quota)| {
            // A clock set back must not lock anyone out: no bucket is ever fuller than full.
            let full = now + quota.burst * quota.seconds_each;
            let empty_at =
                buckets.get(&key).copied().unwrap_or(now).clamp(now, full) + quota.seconds_each;
            (key, empty_at, empty_at - full)
        };
        let poured: Vec<(Key, i64, i64)> = self.counted(who).into_iter().map(pour).collect();
        let wait = poured.iter().map(|(_, _, over)| *over).max().unwrap_or(0);
        if wait > 0 {
            return Err(Wait(wait.unsigned_abs()));
        }
        buckets.extend(poured.into_iter().map(|(key, empty_at, _)| (key, empty_at)));
        forget(&mut buckets, now, MOST);
        Ok(())
    }

    /// Takes the attempt back out of its buckets. Others stay as full as they are, so that signing in to one's own
    /// account does not buy guesses at another.
    pub fn succeeded(&self, who: &Attempt) {
        let mut buckets = self.buckets();
        for (key, quota) in self.counted(who) {
            if let Some(empty_at) = buckets.get_mut(&key) {
                *empty_at -= quota.seconds_each;
            }
        }
    }

    /// A known device is not counted by its address: behind one router, or one proxy, the member may share it with
    /// the guesser.
    fn counted(&self, who: &Attempt) -> Vec<(Key, Quota)> {
        let account = self.secret.hash_one(("account", &who.account, who.known_device));
        match who.known_device {
            true => vec![(account, ACCOUNT)],
            false => vec![
                (account, ACCOUNT),
                (self.secret.hash_one(("address", network(who.address))), ADDRESS),
            ],
        }
    }

    fn buckets(&self) -> MutexGuard<'_, HashMap<Key, i64>> {
        self.empty_at.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// One household or server: an IPv4 address, or the /64 that an IPv6 address is drawn from.
fn network(address: IpAddr) -> IpAddr {
    match address.to_canonical() {
        IpAddr::V6(v6) => Ipv6Addr::from_bits(v6.to_bits() & !u128::from(u64::MAX)).into(),
        v4 => v4,
    }
}

/// Keeps at most `most` buckets: the empty ones go first, then the quarter that would be empty soonest, which are
/// those left alone for longest.
fn forget(buckets: &mut HashMap<Key, i64>, now: i64, most: usize) {
    if buckets.len() <= most {
        return;
    }
    buckets.retain(|_, empty_at| *empty_at > now);
    if buckets.len() <= most {
        return;
    }
    let mut order: Vec<(i64, Key)> =
        buckets.iter().map(|(&key, &empty_at)| (empty_at, key)).collect();
    let quarter = order.len() - most + most / 4;
    order.select_nth_unstable(quarter - 1);
    for (_, key) in &order[..quarter] {
        buckets.remove(key);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const START: i64 = 1_772_000_000;

    fn at(second: i64) -> Instant {
        Instant::from_unix(START + second)
    }

    fn attempt(account: &str, address: &str, known_device: bool) -> Attempt {
        Attempt { account: account.to_owned(), address: address.parse().unwrap(), known_device }
    }

    fn guess(account: &str, address: &str) -> Attempt {
        attempt(account, address, false)
    }

    #[test]
    fn an_account_takes_eight_guesses_and_then_one_a_minute() {
        let throttle = Throttle::new();
        let from = |n: i64| guess("ines@example.org", &format!("192.0.2.{n}"));
        for n in 0..8 {
            assert_eq!(throttle.check(&from(n), at(0)), Ok(()), "guess {n}");
        }
        assert_eq!(throttle.check(&from(9), at(0)), Err(Wait(60)));
        assert_eq!(throttle.check(&from(9), at(45)), Err(Wait(15)));
        assert_eq!(throttle.check(&from(9), at(60)), Ok(()));
        assert_eq!(throttle.check(&from(9), at(60)), Err(Wait(60)));
        assert_eq!(throttle.check(&from(9), at(3_600)), Ok(()));
    }

    #[test]
    fn an_address_takes_thirty_and_then_one_in_ten_seconds() {
        let throttle = Throttle::new();
        let at_account = |n: i64| guess(&format!("{n}@example.org"), "192.0.2.1");
        for n in 0..30 {
            assert_eq!(throttle.check(&at_account(n), at(0)), Ok(()), "guess {n}");
        }
        assert_eq!(throttle.check(&at_account(30), at(0)), Err(Wait(10)));
        assert_eq!(throttle.check(&at_account(30), at(10)), Ok(()));
        assert_eq!(throttle.check(&guess("30@example.org", "192.0.2.2"), at(10)), Ok(()));
    }

    #[test]
    fn a_full_account_does_not_keep_the_member_out() {
        let throttle = Throttle::new();
        while throttle.check(&guess("ines@example.org", "192.0.2.1"), at(0)).is_ok() {}
        let member = attempt("ines@example.org", "192.0.2.1", true);
        assert_eq!(throttle.check(&member, at(0)), Ok(()));
    }

    #[test]
    fn a_known_device_is_slowed_as_well() {
        let throttle = Throttle::new();
        let lent = attempt("ines@example.org", "192.0.2.1", true);
        for _ in 0..8 {
            assert_eq!(throttle.check(&lent, at(0)), Ok(()));
        }
        assert_eq!(throttle.check(&lent, at(0)), Err(Wait(60)));
        assert_eq!(throttle.check(&attempt("bram@example.org", "192.0.2.1", true), at(0)), Ok(()));
    }

    #[test]
    fn signing_in_is_not_counted_and_clears_nothing_else() {
        let throttle = Throttle::new();
        for _ in 0..100 {
            let own = guess("juno@example.org", "192.0.2.1");
            assert_eq!(throttle.check(&own, at(0)), Ok(()));
            throttle.succeeded(&own);
        }
        for _ in 0..8 {
            assert_eq!(throttle.check(&guess("ines@example.org", "192.0.2.1"), at(0)), Ok(()));
            throttle.succeeded(&guess("juno@example.org", "192.0.2.1"));
        }
        assert!(throttle.check(&guess("ines@example.org", "192.0.2.1"), at(0)).is_err());
    }

    #[test]
    fn an_ipv6_network_counts_as_one_and_mapped_ipv4_as_ipv4() {
        let same = |one: &str, other: &str| {
            network(one.parse().unwrap()) == network(other.parse().unwrap())
        };
        assert!(same("2001:db8:1:2::1", "2001:db8:1:2:ffff::9"));
        assert!(!same("2001:db8:1:2::1", "2001:db8:1:3::1"));
        assert!(same("::ffff:192.0.2.1", "192.0.2.1"));
        assert!(!same("192.0.2.1", "192.0.2.2"));
    }

    #[test]
    fn a_clock_set_back_locks_nobody_out() {
        let throttle = Throttle::new();
        while throttle.check(&guess("ines@example.org", "192.0.2.1"), at(86_400)).is_ok() {}
        assert_eq!(throttle.check(&guess("ines@example.org", "192.0.2.1"), at(0)), Err(Wait(60)));
    }

    #[test]
    fn memory_is_bounded_and_the_fullest_are_remembered() {
        let mut buckets: HashMap<Key, i64> =
            (0..100_u64).map(|key| (key, START + key.cast_signed())).collect();
        forget(&mut buckets, START - 1, 100);
        assert_eq!(buckets.len(), 100);
        forget(&mut buckets, START + 29, 80);
        assert_eq!(buckets.len(), 70, "the empty ones are enough");
        forget(&mut buckets, START + 29, 60);
        assert_eq!(buckets.len(), 45);
        assert!((55..100).all(|key| buckets.contains_key(&key)));
    }

    #[test]
    fn a_flood_of_names_stays_below_the_limit() {
        let throttle = Throttle::new();
        let victim = |n: i64| guess("ines@example.org", &format!("192.0.2.{n}"));
        for n in 0..8 {
            assert!(throttle.check(&victim(n), at(0)).is_ok());
        }
        for n in 0..120_000_u32 {
            let flood = guess(
                &format!("{n}@example.org"),
                &std::net::Ipv4Addr::from(n + 1_000).to_string(),
            );
            assert!(throttle.check(&flood, at(0)).is_ok());
        }
        assert!(throttle.buckets().len() <= MOST);
        assert_eq!(throttle.check(&victim(9), at(0)), Err(Wait(60)));
    }
}
