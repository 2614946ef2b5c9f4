//! What comes round: the list compared with something three times a week, prints, and now and
//! then the rest of the record.

use super::Week;
use crate::{
    base::check::Check,
    cli::story::{line, some},
    platform::{
        auth::area::{Clinical, Essentials},
        db::Door,
        error::Result,
    },
    record::{
        allergies::store as allergies,
        baseline::{model::Baseline, store as baseline},
        conditions::store as conditions,
        operations::store as operations,
        people::{model::Person, store as people},
        statements::{
            model::{Question, Said},
            store as statements,
        },
    },
};

const AGAINST: [&str; 5] = [
    "the bottles on the table",
    "the pharmacy's list",
    "what Emeric read out on the phone",
    "the pill box",
    "the summary of the last visit",
];
const MOODS: [&str; 4] = [
    "calm and a little ironic",
    "cheerful after visits",
    "quiet before breakfast",
    "tired by four",
];
const MOBILITY: [&str; 4] = [
    "walks with a stick",
    "walks with a stick, a frame outside",
    "walks with a stick, not on stairs alone",
    "walks arm in arm on ice",
];

impl Week<'_> {
    pub(super) async fn bottles_compared(&mut self, who: &str) -> Result<()> {
        let against = self.dice.one_of(&AGAINST).copied().unwrap_or_default();
        if self.turn(2, 0) {
            self.signed_in(who).await?;
        }
        self.it.check_medicines(who, against).await
    }

    /// The aide's bag, a bedside drawer, a hand that asks: someone prints the sheet.
    pub(super) async fn sheet_printed(&mut self) -> Result<()> {
        let who = self.dice.one_of(&["Delia", "Delia", "Bram", "Ines", "Rosalind", "Ottoline"]);
        let who = who.copied().filter(|it| *it != "Rosalind" || !self.rosalind_is_paused());
        let who = who.unwrap_or("Delia");
        self.signed_in(who).await?;
        self.it.printed(who).await
    }

    async fn signed_in(&self, who: &str) -> Result<()> {
        let (member, _) = self.it.member(who);
        let mut write = self.it.operator.write_as(member, Door::Visitor).await?;
        write.did("signed in", "member", member.into()).await?;
        write.commit().await.map(|_| ())
    }

    /// Once a month the conditions, operations and allergies; twice a year the usual self and the
    /// person's page; once a year the two questions.
    pub(super) async fn now_and_then(&mut self) -> Result<()> {
        if self.turn(4, 0) {
            self.rest_checked().await?;
        }
        if self.turn(26, 3) {
            self.usual_self_again().await?;
        }
        if self.turn(26, 9) {
            self.page_edited().await?;
        }
        if self.turn(52, 12) {
            self.asked_again().await?;
        }
        Ok(())
    }

    async fn rest_checked(&mut self) -> Result<()> {
        let mut write = self.it.write::<Clinical>("Ines").await?;
        let against = line("the summary of the last visit");
        let check = write.check(against);
        for it in conditions::list(&write).await?.iter().filter(|it| it.is_standing()) {
            conditions::save(&mut write, it, &it.checked(check.clone())).await?;
        }
        for it in operations::list(&write).await? {
            operations::save(&mut write, &it, &it.checked(check.clone())).await?;
        }
        let mut write = write.area::<Essentials>()?;
        for it in allergies::list(&write).await? {
            allergies::save(&mut write, &it, &it.checked(check.clone())).await?;
        }
        write.commit().await.map(|_| ())
    }

    async fn usual_self_again(&mut self) -> Result<()> {
        let mood = self.dice.one_of(&MOODS).and_then(|it| some(it));
        let mut write = self.it.write::<Essentials>("Juno").await?;
        let (_, role) = self.it.member("Juno");
        let (before, today) = (baseline::find(&write).await?, self.it.date(self.ago - 6));
        let (said_by, said_on) = (some("Emeric, on the phone"), Some(today));
        let after = Baseline { mood, said_by, said_on, ..before.clone() };
        baseline::save(&mut write, &before, &before.written(after, role, today)?).await?;
        write.commit().await.map(|_| ())
    }

    async fn page_edited(&mut self) -> Result<()> {
        let mobility = self.dice.one_of(&MOBILITY).and_then(|it| some(it));
        let mut write = self.it.write::<Essentials>("Ines").await?;
        let before = people::find(&write).await?;
        let after = before.edited(Person { mobility, ..before.clone() });
        let (at, by, against) = (write.at(), write.member(), line("Ottoline herself"));
        people::save(&mut write, &before, &after.checked(Check { at, by, against })).await?;
        write.commit().await.map(|_| ())
    }

    async fn asked_again(&mut self) -> Result<()> {
        let mut write = self.it.write::<Clinical>("Ines").await?;
        let today = self.it.date(self.ago - 6);
        for (question, which) in
            [(Question::BloodThinner, "warfarin"), (Question::Implant, "hip joint")]
        {
            let said = Said { which: some(which), by: line("Dr Oyelaran"), on: today };
            let before = statements::find(&write, question).await?;
            statements::save(&mut write, &before, &before.said(said, today)?).await?;
        }
        write.commit().await.map(|_| ())
    }
}
