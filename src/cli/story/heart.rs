//! The cardiology visit of the month: a question put to it from afar, the note that Ines wrote that
//! evening, read by Juno and not yet by Bram.

use super::{Telling, appointments::HEART, line};
use crate::{
    base::{ids::VisitId, text::Note},
    platform::{
        auth::area::{Clinical, Tasks},
        error::Result,
    },
    record::{
        appointments::store as appointments,
        questions::{
            model::{Answer, Question, Whom, Wording},
            store as questions,
        },
        visits::{
            model::{Account, Item, Reader, Visit},
            store,
        },
    },
};

const DOCTOR: &str = "Dr Piet Aalders";

impl Telling<'_> {
    /// Juno cannot come along, and asks by way of Ines.
    pub(super) async fn heart_asked(&self) -> Result<()> {
        self.day(14, (11, 10));
        let mut write = self.write::<Clinical>("Juno").await?;
        let words =
            "Her pulse is about 54 in the mornings. Is that as it should be with the tablets?";
        let wording = Wording {
            words: note(words),
            for_whom: Whom::Clinician,
            clinician: Some(line(DOCTOR)),
            about: None,
        };
        let new = Question::new(self.person, wording, (write.member(), write.at()));
        let new = new.owned(Some(self.member("Ines").0));
        questions::add(&mut write, &new).await?;
        write.commit().await.map(|_| ())
    }

    /// One write: the note, the answer, and who should read it.
    pub(super) async fn heart_noted(&self) -> Result<()> {
        self.day(13, (18, 30));
        let mut write = self.write::<Clinical>("Ines").await?;
        let tasks = write.area::<Tasks>()?;
        let all = appointments::list(&tasks).await?;
        let heart = all.iter().find(|it| it.title.as_str() == HEART).map(|it| (it.id, it.on_day));
        let account = Account {
            held_on: self.date(13),
            contact: None,
            with_whom: line(DOCTOR),
            present: vec![self.member("Ottoline").0, self.member("Ines").0],
            others: None,
            said: Some(note(
                "The heart rhythm is as it was in May. The swelling comes from the veins more than from the heart.\nHe would like to see the book of blood tests each time.",
            )),
            decisions: Some(note("Nothing changes until the next visit, in half a year.")),
        };
        let by = (write.member(), write.at());
        let visit = Visit::new(self.person, heart, account, by);
        let visit = Visit { id: store::add(&mut write, &visit).await?, ..visit };
        let all = questions::list(&write, &questions::Wanted::default()).await?;
        if let Some(before) = all.iter().find(|it| it.whom() == DOCTOR) {
            let said = note("Yes. Below 50, or when she is dizzy with it, he wants to be phoned.");
            let item = Item::answered(&visit, before.id, said.clone());
            let answer = Answer { answer: said, by: line(DOCTOR), on: self.date(13) };
            questions::save(&mut write, before, &before.answered(answer, self.date(13))?).await?;
            store::add_item(&mut write, &item).await?;
        }
        for name in ["Bram", "Juno"] {
            let reader = Reader::new(self.person, visit.id, self.member(name).0);
            store::add_reader(&mut write, &reader).await?;
        }
        write.commit().await.map(|_| ())
    }

    pub(super) async fn heart_read(&self) -> Result<()> {
        self.day(11, (7, 40));
        let (juno, role) = self.member("Juno");
        let mut write = self.operator.note_for(self.person, juno, role).await?;
        let at = write.at();
        // The first note of the record.
        let readers = store::readers(&write, VisitId::from(1)).await?;
        if let Some(own) = readers.iter().find(|it| it.member_id == juno) {
            store::mark_read(&mut write, own, &own.read(at)).await?;
        }
        write.commit().await.map(|_| ())
    }
}

fn note(text: &str) -> Note {
    Note::from(text.to_owned())
}
