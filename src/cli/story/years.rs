//! So many years of the same family before its ordinary month: a record as long as it gets, to
//! measure and to look at.
//!
//! Told week by week through the same writes as the month, by several members. A year makes some
//! 3,000 entries of history and five new medicines. Every choice comes from one seed, so the same
//! years are told at each start, counted back from today. What a medicine is called and how
//! strong it is are names here and nothing more.

mod contacts;
mod courses;
mod dice;
mod illnesses;
mod names;
mod rounds;
mod sharing;

use self::dice::Dice;
use super::Telling;
use crate::platform::error::Result;

const WEEKS: i64 = 52;
/// How far back one year reaches: whole weeks.
pub(super) const DAYS: i64 = 7 * WEEKS;
const SEED: u64 = 19_440_309;

/// One week of the telling.
struct Week<'a> {
    it: &'a Telling<'a>,
    dice: Dice,
    /// Counted from the first.
    number: i64,
    /// So many days ago it began.
    ago: i64,
}

impl Telling<'_> {
    pub(super) async fn years(&self, years: u8) -> Result<()> {
        let mut dice = Dice::of(SEED);
        for number in 0..WEEKS * i64::from(years) {
            let ago = self.began - 7 * number;
            let mut week = Week { it: self, dice: dice.split(), number, ago };
            week.tell().await?;
        }
        Ok(())
    }
}

impl Week<'_> {
    /// Day by day, as a family goes through a week. The first day has its evening taken by the
    /// beginning of the record.
    async fn tell(&mut self) -> Result<()> {
        self.day(1, 9);
        self.bottles_compared("Ines").await?;
        self.courses().await?;
        self.day(2, 11);
        self.sheet_printed().await?;
        self.illnesses().await?;
        self.day(3, 18);
        self.bottles_compared("Juno").await?;
        self.day(4, 10);
        self.new_bottles().await?;
        self.numbers().await?;
        self.day(5, 17);
        self.sheet_printed().await?;
        self.day(6, 20);
        self.bottles_compared("Bram").await?;
        self.now_and_then().await?;
        self.sharing().await
    }

    /// On this day of the week, within this hour; the minute is any.
    fn day(&mut self, day: i64, hour: u8) {
        let minute = u8::try_from(self.dice.below(60)).unwrap_or(0);
        self.it.day(self.ago - day, (hour, minute));
    }

    /// Whether it is this week's turn of what comes once in so many weeks.
    fn turn(&self, every: i64, offset: i64) -> bool {
        self.number % every == offset
    }
}
