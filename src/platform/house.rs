//! What every request is served with: the database, the clock, the settings.

use super::{
    auth::{password::Hasher, throttle::Throttle},
    config::Config,
    db::Db,
    files::Files,
    mail::Carrier,
    ocr::Ocr,
    pdf::Press,
    web::form::Constraint,
    words::Shelves,
};
use crate::base::clock::Clock;
use std::sync::Arc;

#[derive(Clone)]
pub struct House(Arc<Parts>);

pub struct Parts {
    pub db: Db,
    pub files: Files,
    pub clock: Clock,
    pub config: Config,
    pub hasher: Hasher,
    pub throttle: Throttle,
    pub press: Press,
    /// What reads the words of papers.
    pub ocr: Ocr,
    /// What to say at which field when the database refuses a value.
    pub constraints: Vec<Constraint>,
    /// What each reader found things in last.
    pub shelves: Shelves,
    /// How mail leaves: by a server, or into files.
    pub carrier: Carrier,
    /// Whether mail leaves this house, so that a forgotten password can be mended by mail.
    pub mails: bool,
    /// Whether this is the demo, where a link signs in.
    pub demo: bool,
}

impl House {
    pub fn new(parts: Parts) -> House {
        House(Arc::new(parts))
    }
}

impl std::ops::Deref for House {
    type Target = Parts;
    fn deref(&self) -> &Parts {
        &self.0
    }
}
