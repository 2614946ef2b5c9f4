//! Turns a password into what is stored, and compares a typed one with it.
//!
//! Argon2id with 19 MiB, two passes and one lane (OWASP Password Storage Cheat Sheet). Two run at a time, so that a
//! crowd at the door cannot take all memory. A comparison costs the same whether or not the account exists.

use std::sync::Arc;

use argon2::password_hash::phc::PasswordHash;
use argon2::{Algorithm, Argon2, Params, PasswordHasher, PasswordVerifier, Version};
use tokio::sync::Semaphore;
use unicode_normalization::UnicodeNormalization;

use super::Password;

const MEMORY_KIB: u32 = 19_456;
const PASSES: u32 = 2;
const LANES: u32 = 1;
const AT_A_TIME: usize = 2;

/// Random salt and random hash with our parameters, the hash of no known password: what a typed password is compared
/// with when there is no account.
const NOBODY: &str = "$argon2id$v=19$m=19456,t=2,p=1$QVK3WUmYfRcYsIgcdfjYQA$KKUq1arj8m9voWXR8XgHNvz9zLZGUIvn1mahuiaEbGs";

/// Hashes and compares, two at a time. Clones share the turns.
#[derive(Clone)]
pub struct Hasher {
    turns: Arc<Semaphore>,
}

impl Hasher {
    pub fn new() -> Self {
        Self { turns: Arc::new(Semaphore::new(AT_A_TIME)) }
    }

    /// The password as a PHC string, with a fresh random salt.
    pub async fn hash(&self, password: Password) -> String {
        self.in_turn(move || {
            let hash = argon2().hash_password(password.0.as_bytes());
            hash.expect("fails only without memory or randomness").to_string()
        })
        .await
    }

    /// Whether `typed` is the password kept as `phc`; false, for the same work, when there is no account.
    pub async fn matches(&self, typed: &str, phc: Option<&str>) -> bool {
        let typed: String = typed.nfc().collect();
        let kept = phc.and_then(|phc| PasswordHash::new(phc).ok());
        let exists = kept.is_some();
        let compared = kept.unwrap_or_else(|| PasswordHash::new(NOBODY).expect("a PHC string"));
        let same = self
            .in_turn(move || argon2().verify_password(typed.as_bytes(), &compared).is_ok())
            .await;
        exists && same
    }

    /// Whether `phc` was made with less than we ask for today: hash again at the next sign-in.
    pub fn is_weaker(phc: &str) -> bool {
        let Ok(hash) = PasswordHash::new(phc) else {
            return true;
        };
        let is_argon2id = hash.algorithm == Algorithm::Argon2id.ident();
        !is_argon2id
            || hash.version != Some(Version::V0x13.into())
            || Params::try_from(&hash).is_ok_and(|params| {
                params.m_cost() < MEMORY_KIB || params.t_cost() < PASSES || params.p_cost() < LANES
            })
    }

    /// The turn is given back by the work itself, since a request that goes away does not stop the thread.
    async fn in_turn<T: Send + 'static>(&self, work: impl FnOnce() -> T + Send + 'static) -> T {
        let turn = Arc::clone(&self.turns).acquire_owned().await.expect("never closed");
        let done = tokio::task::spawn_blocking(move || {
            let _turn = turn;
            work()
        });
        done.await.expect("hashing does not panic and is not aborted")
    }
}

impl Default for Hasher {
    fn default() -> Self {
        Self::new()
    }
}

fn argon2() -> Argon2<'static> {
    let params = Params::new(MEMORY_KIB, PASSES, LANES, None).expect("within the limits of Argon2");
    Argon2::new(Algorithm::Argon2id, Version::V0x13, params)
}

#[cfg(test)]
mod tests {
    use super::super::accept;
    use super::*;

    #[test]
    fn agrees_with_the_reference_implementation_of_argon2id() {
        // Argon2 reference implementation, its published test of this password and salt.
        let params = Params::new(65_536, 2, 1, Some(32)).unwrap();
        let hash = Argon2::new(Algorithm::Argon2id, Version::V0x13, params)
            .hash_password_with_salt(b"password", b"somesalt")
            .unwrap();
        assert_eq!(
            hash.to_string(),
            "$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc"
        );
    }

    #[tokio::test]
    async fn matches_what_was_set_however_the_accents_are_spelled() {
        let hasher = Hasher::new();
        let (composed, decomposed) = ("caf\u{e9} kettle violin", "cafe\u{301} kettle violin");
        for set in [composed, decomposed] {
            let kept = hasher.hash(accept(set, &[]).unwrap()).await;
            assert!(kept.starts_with("$argon2id$v=19$m=19456,t=2,p=1$"));
            assert!(hasher.matches(composed, Some(&kept)).await);
            assert!(hasher.matches(decomposed, Some(&kept)).await);
            assert!(!hasher.matches("cafe kettle violin", Some(&kept)).await);
        }
    }

    #[tokio::test]
    async fn nothing_matches_without_a_hash_and_no_hash_comes_twice() {
        let hasher = Hasher::new();
        let password = accept("maple kettle violin", &[]).unwrap();
        assert!(!hasher.matches("maple kettle violin", None).await);
        assert!(!hasher.matches("maple kettle violin", Some("not a hash")).await);
        assert_ne!(hasher.hash(password.clone()).await, hasher.hash(password).await);
    }

    #[tokio::test]
    async fn an_account_that_does_not_exist_costs_as_much() {
        let hasher = Hasher::new();
        let kept = hasher.hash(accept("maple kettle violin", &[]).unwrap()).await;
        let mut spent = Vec::new();
        for phc in [Some(kept.as_str()), None] {
            let start = std::time::Instant::now();
            hasher.matches("maple kettle", phc).await;
            spent.push(start.elapsed());
        }
        // Far apart, not equal: other tests run on the same machine. Without the work it would be microseconds.
        assert!(spent[1] * 5 > spent[0], "{spent:?}");
    }

    #[test]
    fn what_was_made_with_less_is_known() {
        assert!(!Hasher::is_weaker(NOBODY));
        for (strong, weak) in
            [("m=19456", "m=19455"), ("t=2", "t=1"), ("argon2id", "argon2i"), ("v=19", "v=16")]
        {
            assert!(Hasher::is_weaker(&NOBODY.replace(strong, weak)), "{weak}");
        }
        assert!(!Hasher::is_weaker(&NOBODY.replace("m=19456", "m=65536")));
        assert!(Hasher::is_weaker("not a hash"));
    }
}
