//! The log of doses that the family keeps for the last ten days: one tablet each morning, by
//! Delia on weekdays and by Ines on the others, and what Emeric gave when the hip hurt.

use super::{Telling, line, some};
use crate::{
    base::{quantity::Quantity, text::Line},
    platform::{
        auth::area::{Clinical, Log},
        error::{Error, Result},
    },
    record::medicines::{
        given::{
            keeping::LogKeeping,
            model::{Given, Outcome, Point, Said},
            store as given,
        },
        schedule::times::When,
        store as medicines,
    },
};
use time::{Time, Weekday};

const MORNING: &str = "Metoprolol succinate";
const NEEDED: &str = "Acetaminophen";

impl Telling<'_> {
    /// Of two medicines a log is kept from now on.
    pub(super) async fn log_begins(&self) -> Result<()> {
        self.day(10, (19, 20));
        let mut write = self.write::<Clinical>("Ines").await?;
        let by = (write.member(), write.at());
        let all = medicines::current(&write).await?;
        for name in [MORNING, NEEDED] {
            let found = all.iter().find(|it| it.name.as_str() == name && it.is_taken());
            let id = found.ok_or(Error::NotFound)?.id;
            given::add_keeping(&mut write, &LogKeeping::new(self.person, Some(id), by)).await?;
        }
        write.commit().await.map(|_| ())
    }

    pub(super) async fn morning_dose(&self, ago: i64) -> Result<()> {
        let date = self.date(ago);
        let weekend = matches!(date.weekday(), Weekday::Saturday | Weekday::Sunday);
        let who = if weekend { "Ines" } else { "Delia" };
        self.day(ago, (8, 10));
        let (outcome, note) = match ago {
            6 => (Outcome::Refused, some("did not want it before the toast, nor after")),
            _ => (Outcome::Given, None),
        };
        let by = (Some(self.member(who).0), line(who));
        let said = Said { amount: Quantity::ONE, outcome, note, by };
        self.dose(who, MORNING, Point::Slot(date, When::Morning), said).await
    }

    /// Emeric gave it; Ines enters it a quarter of an hour later.
    pub(super) async fn hip_hurts(&self, ago: i64, hour: u8) -> Result<()> {
        let date = self.date(ago);
        self.day(ago, (hour, 15));
        let time = Time::from_hms(hour, 0, 0).unwrap_or(Time::MIDNIGHT);
        let at = self.zone.instant(date, time);
        let (by, note) = ((None, line("Emeric")), some("the hip, after the stairs"));
        let said = Said { amount: Quantity::ONE, outcome: Outcome::Given, note, by };
        self.dose("Ines", NEEDED, Point::Moment(date, at), said).await
    }

    async fn dose(&self, who: &str, name: &str, point: Point, said: Said) -> Result<()> {
        let reader = self.write::<Clinical>("Ines").await?;
        let all = medicines::current(&reader).await?;
        drop(reader);
        let found = all.iter().find(|it| it.name.as_str() == name && it.is_taken());
        let id = found.ok_or(Error::NotFound)?.id;
        let mut write = self.write::<Log>(who).await?;
        let entered = (write.member(), write.at());
        let unit: Line = line("tablet");
        let new = Given::new((self.person, id), point, (said, unit), entered);
        given::add(&mut write, &new).await?;
        write.commit().await.map(|_| ())
    }
}
