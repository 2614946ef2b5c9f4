//! What was noticed in the month, in plain words: a plate that Ottoline explains, a small fall, a
//! bill; and a night of her own that she keeps for the clinician only.

use super::{Telling, line, some};
use crate::{
    base::{
        clock::Instant,
        ids::{MemberId, ObservationId},
        text::Note,
    },
    platform::{auth::area::Log, error::Result},
    record::observations::{
        fall::{Fall, GotUp, Known},
        model::{Observation, Seen},
        store,
        subject::Subject,
    },
};

impl Telling<'_> {
    /// Seen in the evening, answered in her own words the next morning.
    pub(super) async fn toast_noticed(&self) -> Result<()> {
        self.day(10, (20, 5));
        let toast = "Half a slice of toast since noon. The soup from Sunday stood untouched.";
        let seen = self.seen_on(10, (Subject::Eating, toast, "at supper"));
        let toast = self.noticed("Ines", seen).await?;
        self.day(9, (7, 40));
        let answer = "Halvard had me over for dumplings at four. I was full, not poorly.";
        self.turned_observation("Ottoline", toast, |it, by| {
            it.answered(Some(Note::from(answer.to_owned())), by, self.member("Ottoline").1)
        })
        .await
    }

    pub(super) async fn fall_noticed(&self) -> Result<()> {
        self.day(6, (9, 15));
        let words = "Slid off the edge of the bed while pulling on a stocking.";
        let fall = Fall {
            place: Some(line("beside the bed")),
            up: GotUp::Alone,
            head: Known::No,
            hurt: Known::No,
        };
        let seen = self.seen_on(6, (Subject::Fall, words, "before breakfast"));
        self.noticed("Ines", Seen { fall: Some(fall), ..seen }).await.map(|_| ())
    }

    pub(super) async fn bill_noticed(&self) -> Result<()> {
        self.day(3, (20, 15));
        let words = "Two receipts for the same gas bill lay in the drawer, two days apart.";
        let seen = self.seen_on(3, (Subject::Money, words, ""));
        self.noticed("Juno", seen).await.map(|_| ())
    }

    pub(super) async fn night_kept(&self) -> Result<()> {
        self.day(1, (8, 40));
        let words = "Awake at four, and read until it was light. The third night this week.";
        let seen = self.seen_on(1, (Subject::Sleep, words, "from four in the morning"));
        let night = self.noticed("Ottoline", seen).await?;
        let role = self.member("Ottoline").1;
        self.turned_observation("Ottoline", night, |it, _| Ok(it.kept_for_clinician(role))).await
    }

    fn seen_on(&self, ago: i64, (about, words, time): (Subject, &str, &str)) -> Seen {
        let words = Note::from(words.to_owned());
        Seen { about, on: self.date(ago), time: some(time), words, fall: None }
    }

    async fn noticed(&self, who: &str, seen: Seen) -> Result<ObservationId> {
        let mut write = self.write::<Log>(who).await?;
        let (by, today) = ((write.member(), write.at()), self.zone.day(write.at()));
        let new = Observation::new(self.person, seen, by, today)?;
        let id = store::add(&mut write, &new).await?;
        write.commit().await.map(|_| id)
    }

    async fn turned_observation(
        &self,
        who: &str,
        id: ObservationId,
        turn: impl Fn(&Observation, (MemberId, Instant)) -> Result<Observation>,
    ) -> Result<()> {
        let mut write = self.write::<Log>(who).await?;
        let before = store::find(&write, id).await?;
        let after = turn(&before, (write.member(), write.at()))?;
        store::save(&mut write, &before, &after).await?;
        write.commit().await.map(|_| ())
    }
}
