//! What the invented parents were asked about their own records, and what they answered: Ottoline
//! by herself and on the phone, Emeric, who does not sign in, by Ines at the table.

use super::{Telling, line};
use crate::{
    across::visibility::{model::Hidden, store as visibility},
    base::{
        ids::{AnswerId, MemberId},
        text::Note,
    },
    family::members::answers::{
        model::{Answer, How, Said, State},
        store,
    },
    platform::{
        auth::area::{Clinical, Members, Role},
        error::Result,
    },
    record::medicines::store as medicines,
};

impl Telling<'_> {
    pub(super) async fn directives_answered(&self) -> Result<()> {
        self.day(6, (9, 55));
        let own = "The will and the rest I tell each of you myself.";
        let directives = Answer {
            own_words: Some(Note::from(own.to_owned())),
            ..self.answer("May Juno read the text of directives?", Said::No, 6)
        };
        self.written_down("Ottoline", &directives).await
    }

    pub(super) async fn asked_by_phone(&self) -> Result<()> {
        self.day(4, (18, 20));
        for (question, said) in [
            ("May Bram see the history: who wrote or changed what?", Said::Yes),
            ("May Delia see who shares this record?", Said::AskAgain),
        ] {
            let asked = self.answer(question, said, 4);
            self.written_down("Ines", &self.asked(asked, How::ByPhone)).await?;
        }
        Ok(())
    }

    /// In Emeric's record: what he wants hidden is hidden for him.
    pub(super) async fn second_parents_answers(&self) -> Result<()> {
        self.day(7, (12, 30));
        let clinical =
            self.operator.write_for::<Clinical>(self.person, self.cast[1].0, Role::Steward);
        let listed = medicines::list(&*clinical.await?).await?;
        let kept = self.answer("May we keep this record?", Said::Yes, 7);
        self.written_down("Ines", &self.asked(kept, How::InPerson)).await?;
        let Some(medicine) = listed.first().map(|it| i64::from(it.id)) else { return Ok(()) };
        let juno = self.cast[3].0;
        let hide = Answer {
            hide_what: Some(line("Tamsulosin")),
            hide_from: Some(line("Juno")),
            about_kind: Some("medicine".to_owned()),
            about_item: Some(medicine),
            ..self.answer("Who should not see Tamsulosin?", Said::Hide, 7)
        };
        self.written_down("Ines", &self.asked(hide, How::InPerson)).await?;
        let mut write = self.write::<Members>("Ines").await?;
        let hidden = Hidden::new(self.person, juno, ("medicine", medicine));
        visibility::add(&mut write, &hidden.decided(true, Role::Steward)).await?;
        write.commit().await.map(|_| ())
    }

    fn answer(&self, question: &str, said: Said, ago: i64) -> Answer {
        Answer {
            id: AnswerId::default(),
            person_id: self.person,
            question: line(question),
            said,
            hide_what: None,
            hide_from: None,
            own_words: None,
            asked_by: None,
            how: None,
            asked_on: self.date(ago),
            about_kind: None,
            about_item: None,
            state: State::Standing,
            struck_reason: None,
            version: 1,
        }
    }

    fn asked(&self, answer: Answer, how: How) -> Answer {
        let ines: MemberId = self.cast[1].0;
        Answer { asked_by: Some(ines), how: Some(how), ..answer }
    }

    async fn written_down(&self, who: &str, answer: &Answer) -> Result<()> {
        let mut write = self.write::<Members>(who).await?;
        store::add(&mut write, answer).await?;
        write.commit().await.map(|_| ())
    }
}
