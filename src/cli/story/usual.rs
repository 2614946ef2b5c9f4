//! How Ottoline usually is, as the invented family wrote it down: first Ines, then Ottoline in
//! her own words, then a check by Juno. In between Ines has the doctor on the phone.

use super::{Telling, line, some};
use crate::{
    base::text::Note,
    platform::{
        auth::area::{Essentials, Role},
        error::Result,
    },
    record::baseline::{daily::Manner, model::Baseline, store},
};

fn note(text: &str) -> Option<Note> {
    Some(Note::from(text.to_owned()))
}

impl Telling<'_> {
    pub(super) async fn usual_self(&self) -> Result<()> {
        self.day(30, (20, 10));
        let typed = Baseline { said_on: Some(self.date(30)), ..described() };
        self.written("Ines", Role::Steward, |_| typed.clone()).await?;
        self.day(29, (11, 10));
        self.answers().await?;
        self.day(27, (10, 5));
        let own = "Tell me what you are going to do, and then wait for me. I was a violin maker: \
            I like to know how a thing is done.\nLeave my hearing aid where I can reach it.";
        let adds = |it: &Baseline| Baseline { own_words: note(own), ..it.clone() };
        self.written("Ottoline", Role::Person, adds).await?;
        self.day(26, (19, 0));
        let mut write = self.write::<Essentials>("Juno").await?;
        let against = line("Emeric, on the phone");
        let check = write.check(against);
        let before = store::find(&write).await?;
        store::save(&mut write, &before, &before.checked(check)).await?;
        write.commit().await.map(|_| ())
    }

    async fn written(
        &self,
        who: &str,
        role: Role,
        typed: impl Fn(&Baseline) -> Baseline,
    ) -> Result<()> {
        let mut write = self.write::<Essentials>(who).await?;
        let before = store::find(&write).await?;
        let after = before.written(typed(&before), role, self.date(0))?;
        store::save(&mut write, &before, &after).await?;
        write.commit().await.map(|_| ())
    }
}

fn described() -> Baseline {
    Baseline {
        thinking: some("clear; knows the day and everyone's name; loses a word when tired"),
        mood: some("calm and a little ironic; quiet before breakfast"),
        not_usual: note("Answers in Hungarian only, or picks at her sleeves."),
        walking_aid: some("stick indoors, frame outside"),
        voice: note("From the right side, slowly, not loud."),
        light: note("A small light stays on at night."),
        touch: note("Ask before touching the hands."),
        names: note("Mrs. Varga until she says otherwise. Emeric's name calms her."),
        bathing: Manner::WithHelp,
        bathing_words: some("Delia helps with the step into the tub and with the back"),
        dressing: Manner::WithHelp,
        dressing_words: some("Emeric helps with the left sleeve and with shoes"),
        toileting: Manner::Alone,
        transferring: Manner::Alone,
        transferring_words: some("takes a minute on the edge of the bed"),
        feeding: Manner::Alone,
        said_by: some("Ines and Emeric"),
        ..Baseline::not_asked(0.into())
    }
}
