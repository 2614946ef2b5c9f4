//! What is to be done in the month: one fetched every week, one phoned from another city and late,
//! one waiting on the joiner, one that Juno is asked to take, one that nobody has.

use super::{Telling, line};
use crate::{
    base::{
        ids::{MemberId, TaskId},
        text::Note,
    },
    family::tasks::{
        model::{Due, Task, Wording},
        moves::Finish,
        repeats::{Repeats, Unit},
        store,
    },
    platform::{auth::area::Tasks, error::Result},
};

fn due(on: time::Date, firm: bool) -> Option<Due> {
    Some(Due { on, firm, repeats: None })
}

fn why(text: &str) -> Option<Note> {
    Some(Note::from(text.to_owned()))
}

impl Telling<'_> {
    /// In the evening Ines writes down what she has in her head.
    pub(super) async fn tasks_written(&self) -> Result<()> {
        self.day(7, (19, 30));
        let refills = self.task("Ines", self.refills()).await?;
        self.turn_task("Ines", refills, |it, me| it.taken(me, false)).await?;
        let placard = Wording {
            why: why("The form is in the blue folder. Its second page is for the clinic to sign."),
            due: due(self.date(-17), true),
            ..Wording::of(line("Renew the parking placard"))
        };
        let placard = self.task("Ines", placard).await?;
        self.turn_task("Ines", placard, |it, me| it.taken(me, false)).await?;
        let insurer = Wording {
            why: why("They wrote that the walker needs a form from the clinic. Which one?"),
            due: due(self.date(2), false),
            from_afar: true,
            ..Wording::of(line("Phone the insurer about the walker"))
        };
        self.task("Ines", insurer).await?;
        let bar = Wording {
            why: why("Beside the tub, on the left, where the wall is sound."),
            ..Wording::of(line("A grab bar in the bathroom"))
        };
        let bar = self.task("Ines", bar).await?;
        self.turn_task("Ines", bar, |it, me| it.taken(me, false)).await
    }

    fn refills(&self) -> Wording {
        let repeats = Some(Repeats { every: 1, unit: Unit::Weeks });
        let due = Some(Due { on: self.date(6), firm: false, repeats });
        Wording { due, ..Wording::of(line("Fetch the prescriptions")) }
    }

    /// The next day: Bram takes the call, the prescriptions are fetched, the joiner has been rung.
    pub(super) async fn tasks_taken(&self) -> Result<()> {
        self.day(6, (11, 5));
        self.turn_task(
            "Bram",
            self.named("Phone the insurer about the walker").await?,
            |it, me| it.taken(me, false),
        )
        .await?;
        self.day(6, (17, 40));
        self.refills_fetched().await?;
        self.day(6, (18, 5));
        let bar = self.named("A grab bar in the bathroom").await?;
        self.turn_task("Ines", bar, |it, me| {
            it.waiting(line("the joiner, who comes to measure"), self.date(-2), me, self.date(6))
        })
        .await
    }

    async fn refills_fetched(&self) -> Result<()> {
        let id = self.named("Fetch the prescriptions").await?;
        let mut write = self.write::<Tasks>("Ines").await?;
        let (before, me) = (store::find(&write, id).await?, write.member());
        let proof = why("Both bags. They had no eye drops; those come on Thursday.");
        let finish = Finish { on: self.date(6), proof, photo: None };
        let done = before.done(finish, me, self.date(6))?;
        let next = done.next(true, (me, write.at()));
        let next_id = match next {
            Some(next) => Some(store::add(&mut write, &next).await?),
            None => None,
        };
        store::save(&mut write, &before, &Task { next_id, ..done }).await?;
        write.commit().await.map(|_| ())
    }

    /// The last evening: one is to go to Juno, and one is new.
    pub(super) async fn tasks_asked(&self) -> Result<()> {
        self.day(1, (20, 50));
        let placard = self.named("Renew the parking placard").await?;
        let juno = self.member("Juno").0;
        self.turn_task("Ines", placard, |it, me| it.offered(juno, me)).await?;
        let snow = Wording {
            why: why("The neighbor at 116 can not do it this winter."),
            due: due(self.date(-9), false),
            from_afar: true,
            ..Wording::of(line("Find someone who clears the snow from the steps"))
        };
        self.task("Ines", snow).await.map(|_| ())
    }

    async fn task(&self, who: &str, wording: Wording) -> Result<TaskId> {
        let mut write = self.write::<Tasks>(who).await?;
        let new = Task::new(self.person, wording, (write.member(), write.at()));
        let id = store::add(&mut write, &new).await?;
        write.commit().await.map(|_| id)
    }

    async fn named(&self, title: &str) -> Result<TaskId> {
        let write = self.write::<Tasks>("Ines").await?;
        let all = store::list(&write, &store::Wanted::default()).await?;
        let found = all.into_iter().find(|it| it.title.as_str() == title);
        Ok(found.map(|it| it.id).unwrap_or_default())
    }

    async fn turn_task(
        &self,
        who: &str,
        id: TaskId,
        turn: impl Fn(&Task, MemberId) -> Result<Task>,
    ) -> Result<()> {
        let mut write = self.write::<Tasks>(who).await?;
        let (before, me) = (store::find(&write, id).await?, write.member());
        store::save(&mut write, &before, &turn(&before, me)?).await?;
        write.commit().await.map(|_| ())
    }
}
