//! The post: hands over what is due, several at once, and notes each as soon as its acceptance is
//! known.
//!
//! A lane takes a message, looks whether it is still wanted, hands it over, notes what became of it.
//! What was accepted and cannot be noted (a full disk) is noted again and again and never sent
//! again, as long as the program runs. Where the server itself is the trouble all lanes rest.

use super::{
    carrier::{Carrier, Lane, Refused},
    outbox::{self, Waiting},
    retry,
};
use crate::platform::{db::Db, error::Result};
use std::{
    collections::{HashSet, VecDeque},
    sync::Arc,
    time::{Duration, Instant as Moment},
};
use tokio::{
    sync::{Mutex, watch},
    task::JoinSet,
};

/// How many messages are on their way at once. After a kill at most so many are handed over twice.
pub const LANES: usize = 8;
/// How often is looked for what is due.
const LOOK: Duration = Duration::from_secs(2);
/// How long all rest where the server itself is the trouble.
const REST: Duration = Duration::from_secs(60);

pub struct Post {
    db: Db,
    carrier: Carrier,
    line: Mutex<Line>,
}

/// What is due and not taken, what is on its way, and until when all rest.
#[derive(Default)]
struct Line {
    queue: VecDeque<Waiting>,
    in_hand: HashSet<i64>,
    rests_until: Option<Moment>,
}

impl Post {
    pub fn new(db: Db, carrier: Carrier) -> Arc<Post> {
        Arc::new(Post { db, carrier, line: Mutex::default() })
    }

    /// Carries what is due, until it is told to stop; what is under way then is finished.
    pub async fn carry(self: Arc<Self>, stop: watch::Receiver<bool>) {
        let mut lanes = JoinSet::new();
        for _ in 0..LANES {
            let (post, mut stop) = (self.clone(), stop.clone());
            lanes.spawn(async move {
                let mut lane = post.carrier.lane();
                while !*stop.borrow() {
                    if !post.one(&mut lane).await {
                        lane.close().await;
                        let _ = tokio::time::timeout(LOOK, stop.changed()).await;
                    }
                }
                lane.close().await;
            });
        }
        while lanes.join_next().await.is_some() {}
    }

    /// Carries what is due now, each once, and gives how many were on their way.
    pub async fn carry_due(self: Arc<Self>) -> usize {
        let mut lanes = JoinSet::new();
        for _ in 0..LANES {
            let post = self.clone();
            lanes.spawn(async move {
                let (mut lane, mut count) = (post.carrier.lane(), 0);
                while post.one(&mut lane).await {
                    count += 1;
                }
                lane.close().await;
                count
            });
        }
        lanes.join_all().await.into_iter().sum()
    }

    /// One message, if any is due.
    async fn one(&self, lane: &mut Lane) -> bool {
        let taken = match self.take().await {
            Ok(Some(taken)) => taken,
            Ok(None) => return false,
            Err(e) => {
                tracing::error!(error = ?e, "the outbox could not be read");
                return false;
            }
        };
        let id = taken.id;
        let carried = self.carry_one(lane, taken).await;
        self.line.lock().await.in_hand.remove(&id);
        if let Err(e) = &carried {
            tracing::error!(error = ?e, "a message could not be looked at");
        }
        carried.is_ok()
    }

    async fn take(&self) -> Result<Option<Waiting>> {
        let mut line = self.line.lock().await;
        if line.rests_until.is_some_and(|it| Moment::now() < it) {
            return Ok(None);
        }
        line.rests_until = None;
        if line.queue.is_empty() {
            let now = self.db.now();
            outbox::withdraw_unwanted(&self.db, now).await?;
            let due = outbox::due(&self.db, now).await?;
            let fresh = due.into_iter().filter(|it| !line.in_hand.contains(&it.id)).collect();
            line.queue = fresh;
        }
        let taken = line.queue.pop_front();
        line.in_hand.extend(taken.as_ref().map(|it| it.id));
        Ok(taken)
    }

    async fn carry_one(&self, lane: &mut Lane, it: Waiting) -> Result<()> {
        let now = self.db.now();
        if !outbox::is_wanted(&self.db, it.id, now).await? {
            return Ok(());
        }
        let became = lane.hand_over(&it, now).await;
        if let Err(refused) = &became {
            tracing::warn!(says = refused.words(), tries = it.tries + 1, "a message was not taken");
        }
        if let Err(Refused::Server(_)) = &became {
            self.line.lock().await.rests_until = Some(Moment::now() + REST);
        }
        while let Err(e) = self.note(&it, &became).await {
            tracing::error!(error = ?e, "what became of a message could not be noted");
            tokio::time::sleep(LOOK).await;
        }
        Ok(())
    }

    async fn note(
        &self,
        it: &Waiting,
        became: &std::result::Result<String, Refused>,
    ) -> Result<()> {
        let now = self.db.now();
        match became {
            Ok(said) => outbox::settle(&self.db, it.id, ("sent", said), now).await,
            Err(Refused::ForGood(says)) => {
                outbox::settle(&self.db, it.id, ("given up", says), now).await
            }
            Err(Refused::ForNow(says) | Refused::Server(says)) => {
                match retry::next(it.tries + 1, it.made_at, now) {
                    Some(due) => outbox::put_off(&self.db, it.id, due, says).await,
                    None => outbox::settle(&self.db, it.id, ("given up", says), now).await,
                }
            }
        }
    }

    /// Forgets what was settled long ago.
    pub async fn forget(&self) -> Result<()> {
        outbox::forget(&self.db, self.db.now()).await
    }
}
