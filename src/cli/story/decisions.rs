//! An evening on the telephone: what the family decides, what Ottoline says of it, and what stays
//! open until they meet.

use super::{Telling, line};
use crate::{
    base::{ids::DecisionId, text::Note},
    family::decisions::{
        model::{Asked, Decision, Outcome},
        right::Right,
        store,
    },
    platform::{auth::area::Clinical, error::Result},
};
use time::Date;

fn note(text: &str) -> Note {
    Note::from(text.to_owned())
}

impl Telling<'_> {
    pub(super) async fn evening_of_decisions(&self) -> Result<()> {
        self.day(7, (20, 30));
        let known = "The stairs have 14 steps, and the railing is on one side only.";
        let bed = self.put_up("Ines", "Whether the bedroom moves downstairs", known).await?;
        let known = "Delia comes on weekdays. Ines has every Saturday and Sunday since August.";
        self.put_up("Bram", "Whether someone is paid to come on Sundays", known).await?;
        let known = "The pharmacy on Superior Street delivers for 4 dollars a time.";
        let fetch = self.put_up("Juno", "Who fetches the medicines this month", known).await?;
        self.day(7, (21, 10));
        let said =
            Asked::Said(note("Not yet. I want the window to the harbor while I can climb to it."));
        let stays = Outcome {
            decided: note("It stays upstairs. A second railing is put up."),
            reasons: note(
                "It is Ottoline’s bedroom, and the physical therapist saw her on the stairs.",
            ),
            ..self.outcome(said, "Ottoline Varga", Right::Person, self.date(-60))
        };
        self.decided("Ines", bed, stays).await?;
        let not = Asked::Not(line("it is about who of us drives"));
        let ines = Outcome {
            decided: note("Ines fetches them, on her way home on Fridays."),
            reasons: note("She passes the pharmacy anyway."),
            ..self.outcome(not, "Ines, Bram and Juno", Right::Agreement, self.date(0))
        };
        self.decided("Juno", fetch, ines).await
    }

    fn outcome(&self, asked: Asked, decider: &str, right: Right, again: Date) -> Outcome {
        Outcome {
            decided: note(""),
            reasons: note(""),
            heard: ["Ines", "Bram", "Juno"].map(|it| self.member(it).0).to_vec(),
            heard_others: None,
            asked,
            decider: line(decider),
            right,
            right_words: None,
            on: self.date(7),
            look_again_on: Some(again),
        }
    }

    async fn put_up(&self, who: &str, matter: &str, known: &str) -> Result<DecisionId> {
        let mut write = self.write::<Clinical>(who).await?;
        let place = store::last_place(&write).await? + 1;
        let by = (write.member(), write.at());
        let new = Decision::new(self.person, (line(matter), Some(note(known))), by, place);
        let id = store::add(&mut write, &new).await?;
        write.commit().await.map(|_| id)
    }

    async fn decided(&self, who: &str, id: DecisionId, outcome: Outcome) -> Result<()> {
        let mut write = self.write::<Clinical>(who).await?;
        let before = store::find(&write, id).await?;
        let after = before.decided(outcome, self.zone.day(write.at()))?;
        store::save(&mut write, &before, &after).await?;
        write.commit().await.map(|_| ())
    }
}
