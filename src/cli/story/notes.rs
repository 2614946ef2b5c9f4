//! What happened in the month, as it was noted by whoever was there; and Juno, who says that she
//! has read.

use super::{Telling, line};
use crate::{
    across::today::read,
    base::{ids::HappeningId, text::Note},
    platform::{
        auth::area::{Log, Notes},
        error::Result,
    },
    record::happenings::{
        model::{Happening, Noted},
        store,
    },
};

impl Telling<'_> {
    pub(super) async fn dizziness_noted(&self) -> Result<()> {
        self.day(12, (13, 20));
        let dizzy = "Dizzy for a minute when she got up from lunch. Sat down again, it went by.";
        let dizzy = self.noted("Delia", dizzy, None).await?;
        self.day(12, (20, 30));
        self.is_about("Ines", dizzy, Some(("medicine", 5))).await
    }

    pub(super) async fn drops_noted(&self) -> Result<()> {
        self.day(9, (9, 15));
        let card = "The pharmacy says the eye drops come in another bottle now, same drops.";
        let card = self.noted("Ines", card, None).await?;
        self.is_about("Ines", card, Some(("medicine", 8))).await
    }

    pub(super) async fn cake_noted(&self) -> Result<()> {
        self.day(5, (16, 45));
        let visit = "Halvard came by with plum cake. She told him the whole story of the viola.";
        let visit = self.noted("Delia", visit, None).await?;
        self.day(5, (21, 0));
        self.is_about("Bram", visit, None).await
    }

    pub(super) async fn juno_reads(&self) -> Result<()> {
        self.day(3, (19, 40));
        self.has_read("Juno").await
    }

    pub(super) async fn night_noted(&self) -> Result<()> {
        self.day(1, (8, 25));
        let night = "Up twice in the night, and said the bed was in the wrong room.";
        let night = format!("Emeric says: {night}");
        self.noted("Ines", &night, Some("last night")).await.map(|_| ())
    }

    async fn noted(&self, who: &str, words: &str, when: Option<&str>) -> Result<HappeningId> {
        let mut write = self.write::<Log>(who).await?;
        let words = Some(Note::from(words.to_owned()));
        let noted = Noted { words, photo: None, happened: when.map(line) };
        let new = Happening::new(self.person, noted, (write.member(), write.at()))?;
        let id = store::add(&mut write, &new).await?;
        write.commit().await.map(|_| id)
    }

    async fn is_about(&self, who: &str, id: HappeningId, what: Option<(&str, i64)>) -> Result<()> {
        let mut write = self.write::<Log>(who).await?;
        let before = store::find(&write, id).await?;
        store::save(&mut write, &before, &before.placed(what)).await?;
        write.commit().await.map(|_| ())
    }

    async fn has_read(&self, who: &str) -> Result<()> {
        let mut write = self.write::<Notes>(who).await?;
        let newest = read::newest(&write).await?;
        read::confirm(&mut write, newest).await?;
        write.commit().await.map(|_| ())
    }
}
