//! What the family wants to ask in the month: one question answered, one taken on, one that
//! nobody will ask yet.

use super::{Telling, line};
use crate::{
    base::{ids::QuestionId, text::Note},
    platform::{auth::area::Clinical, error::Result},
    record::questions::{
        model::{Answer, Question, Whom, Wording},
        store,
    },
};

impl Telling<'_> {
    /// After the visit: Bram wants to know, Juno asks at the pharmacy.
    pub(super) async fn bottle_asked_about(&self) -> Result<()> {
        self.day(8, (21, 50));
        let words = "The drops come in another bottle now. Is the label the same, word for word?";
        let bottle = self.question("Bram", (words, Whom::Pharmacist), 8).await?;
        self.day(7, (7, 30));
        self.turn_question("Juno", bottle, |it| Ok(it.owned(Some(self.member("Juno").0)))).await?;
        self.day(7, (8, 5));
        self.turn_question("Juno", bottle, |it| {
            let answer = "Yes, the same words. Only the maker of the bottle is another.";
            let (answer, by) = (Note::from(answer.to_owned()), line("the pharmacist, by phone"));
            it.answered(Answer { answer, by, on: self.date(7) }, self.date(7))
        })
        .await
    }

    /// After the change of the strength: it stands on Today until someone takes it on.
    pub(super) async fn tablets_asked_about(&self) -> Result<()> {
        self.day(2, (16, 55));
        let words = "There are two bottles of Furosemide in the house now. Which belongs back at the pharmacy?";
        self.question("Ines", (words, Whom::Pharmacist), 2).await?;
        self.day(2, (20, 10));
        let words = "Who looks at the blood test after the new strength, and when?";
        let test = self.question("Juno", (words, Whom::Prescriber), 2).await?;
        self.turn_question("Ines", test, |it| Ok(it.owned(Some(self.member("Ines").0)))).await
    }

    async fn question(
        &self,
        who: &str,
        (words, for_whom): (&str, Whom),
        medicine: i64,
    ) -> Result<QuestionId> {
        let mut write = self.write::<Clinical>(who).await?;
        let about = Some(("medicine".to_owned(), medicine));
        let words = Note::from(words.to_owned());
        let wording = Wording { words, for_whom, clinician: None, about };
        let new = Question::new(self.person, wording, (write.member(), write.at()));
        let id = store::add(&mut write, &new).await?;
        write.commit().await.map(|_| id)
    }

    async fn turn_question(
        &self,
        who: &str,
        id: QuestionId,
        turn: impl Fn(&Question) -> Result<Question>,
    ) -> Result<()> {
        let mut write = self.write::<Clinical>(who).await?;
        let before = store::find(&write, id).await?;
        store::save(&mut write, &before, &turn(&before)?).await?;
        write.commit().await.map(|_| ())
    }
}
