//! Instants, and the clock that hands them out.
//!
//! An `Instant` is UTC and cut to whole seconds, so that its text form (RFC 3339, the same in
//! JSON and in the database) sorts as time does. `Clock` is made where the program starts;
//! tests make one that stands still.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::{fmt, sync::Arc};
use time::{Duration, OffsetDateTime, UtcOffset, format_description::well_known::Rfc3339};

/// A moment, in UTC, to the second.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, sqlx::Type)]
#[sqlx(transparent)]
pub struct Instant(OffsetDateTime);

impl Instant {
    /// Cuts to whole seconds: fractions of different length would sort wrongly as text.
    pub fn new(at: OffsetDateTime) -> Self {
        Instant(at.to_offset(UtcOffset::UTC).truncate_to_second())
    }

    /// Seconds since 1970-01-01T00:00:00Z; beyond the years ±9999 the nearest end of them.
    pub fn from_unix(seconds: i64) -> Self {
        let end = |it: time::PrimitiveDateTime| it.assume_utc().unix_timestamp();
        let (first, last) = (end(time::PrimitiveDateTime::MIN), end(time::PrimitiveDateTime::MAX));
        let within = OffsetDateTime::from_unix_timestamp(seconds.clamp(first, last));
        Instant(within.unwrap_or(OffsetDateTime::UNIX_EPOCH))
    }

    pub fn parse(rfc3339: &str) -> Option<Self> {
        OffsetDateTime::parse(rfc3339, &Rfc3339).ok().map(Self::new)
    }

    pub fn unix(self) -> i64 {
        self.0.unix_timestamp()
    }

    pub fn utc(self) -> OffsetDateTime {
        self.0
    }

    pub fn plus(self, span: Duration) -> Self {
        Instant(self.0.saturating_add(span))
    }

    pub fn minus(self, span: Duration) -> Self {
        Instant(self.0.saturating_sub(span))
    }

    pub fn since(self, earlier: Self) -> Duration {
        self.0 - earlier.0
    }
}

impl fmt::Display for Instant {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0.format(&Rfc3339).map_err(|_| fmt::Error)?)
    }
}

impl Serialize for Instant {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Instant {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = String::deserialize(from)?;
        Instant::parse(&text).ok_or_else(|| serde::de::Error::custom("not an instant"))
    }
}

/// Where the time comes from.
#[derive(Clone)]
pub struct Clock(Arc<dyn Fn() -> Instant + Send + Sync>);

impl Clock {
    pub fn new(read: impl Fn() -> Instant + Send + Sync + 'static) -> Self {
        Clock(Arc::new(read))
    }

    pub fn now(&self) -> Instant {
        (self.0)()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use time::macros::datetime;

    #[test]
    fn an_instant_is_utc_whole_seconds_and_reads_back() {
        let at = Instant::new(datetime!(2026-03-08 02:30:55.75 -6));
        assert_eq!(at.to_string(), "2026-03-08T08:30:55Z");
        assert_eq!(Instant::parse(&at.to_string()), Some(at));
        assert_eq!(serde_json::to_string(&at).unwrap(), r#""2026-03-08T08:30:55Z""#);
    }
}
