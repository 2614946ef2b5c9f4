//! The clock of the story: it stands where the story has got to, so that what is told of last
//! month is written with last month's date.

use crate::base::clock::{Clock, Instant};
use std::sync::{
    Arc,
    atomic::{AtomicI64, Ordering},
};

/// The clock of the story: it stands where the story has got to.
pub struct StoryClock {
    at: Arc<AtomicI64>,
    now: Instant,
}

impl StoryClock {
    pub fn new(now: Instant) -> StoryClock {
        StoryClock { at: Arc::new(AtomicI64::new(now.unix())), now }
    }

    pub fn clock(&self) -> Clock {
        let at = self.at.clone();
        Clock::new(move || Instant::from_unix(at.load(Ordering::SeqCst)))
    }

    /// The moment at which the demo is started.
    pub fn now(&self) -> Instant {
        self.now
    }

    /// The story goes on at this moment.
    pub fn set(&self, at: Instant) {
        self.at.store(at.unix(), Ordering::SeqCst);
    }
}
