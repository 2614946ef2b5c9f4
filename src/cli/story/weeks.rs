//! The last days of the month, and the steps that every theme of it takes: check what is listed,
//! change one thing by its name, leave a print.

use super::{Telling, line, some};
use crate::{
    platform::{
        auth::area::{Clinical, Essentials},
        error::Result,
    },
    record::{
        allergies::store as allergies,
        contacts::{model::Contact, store as contacts},
        medicines::{model::Medicine, store as medicines, turns::model::What},
    },
};

impl Telling<'_> {
    /// What the family decided, and what changed after the visit.
    pub(super) async fn last_days(&self) -> Result<()> {
        self.bottle_asked_about().await?;
        self.morning_dose(7).await?;
        self.osteoporosis_hidden().await?;
        self.tasks_written().await?;
        self.evening_of_decisions().await?;
        self.morning_dose(6).await?;
        self.fall_noticed().await?;
        self.directives_lowered().await?;
        self.directives_answered().await?;
        self.mail_chosen().await?;
        self.directives_written().await?;
        self.tasks_taken().await?;
        self.week_carried().await?;
        self.morning_dose(5).await?;
        self.day(5, (11, 20));
        let hold = "before the dentist";
        let said = (What::Held, "Dr Adaeze Oyelaran by phone", hold);
        self.turned("Ines", "Alendronate", said, |it| {
            it.held(self.date(5), line(hold), self.date(5))
        })
        .await?;
        self.cake_noted().await?;
        self.drawer_emptied().await?;
        self.cards_photographed().await?;
        self.morning_dose(4).await?;
        self.day(4, (15, 30));
        self.printed("Bram").await?;
        self.asked_by_phone().await?;
        self.drawer_filed().await?;
        self.renewals_written().await?;
        self.morning_dose(3).await?;
        self.juno_reads().await?;
        self.bill_noticed().await?;
        self.morning_dose(2).await?;
        self.day(2, (16, 40));
        let said = (What::Changed, "Dr Adaeze Oyelaran by phone", "more swelling of the legs");
        let changed = self
            .turned("Ines", "Furosemide", said, |it| {
                let source = some("said by Dr Adaeze Oyelaran by phone");
                Ok(Medicine { strength: some("40 mg"), source, ..unchecked(it) })
            })
            .await?;
        self.told_of("Ines", changed, "Pharmacy", "by phone").await?;
        self.tablets_asked_about().await?;
        self.hip_hurts(2, 21).await?;
        self.morning_dose(1).await?;
        self.night_noted().await?;
        self.night_kept().await?;
        self.day(1, (8, 55));
        let stop = "dry cough";
        let said = (What::Stopped, "Dr Adaeze Oyelaran at the visit", stop);
        self.turned("Bram", "Lisinopril", said, |it| {
            it.stopped(self.date(1), line(stop), self.date(1))
        })
        .await?;
        self.neighbor_invited().await?;
        self.drops_refused().await?;
        self.printout_taken_in().await?;
        self.ingredient_read_off().await?;
        self.tasks_asked().await?;
        self.last_days_carried().await
    }

    /// Medicines and allergies, each compared with the same thing at the same time.
    pub(super) async fn check_list(&self, who: &str, against: &str) -> Result<()> {
        self.check_medicines(who, against).await?;
        let mut write = self.write::<Essentials>(who).await?;
        let check = write.check(line(against));
        for it in allergies::list(&write).await? {
            allergies::save(&mut write, &it, &it.checked(check.clone())).await?;
        }
        write.commit().await.map(|_| ())
    }

    pub(super) async fn check_medicines(&self, who: &str, against: &str) -> Result<()> {
        let mut write = self.write::<Clinical>(who).await?;
        let check = write.check(line(against));
        for it in medicines::list(&write).await?.iter().filter(|it| it.is_current()) {
            medicines::save(&mut write, it, &it.checked(check.clone())).await?;
        }
        write.commit().await.map(|_| ())
    }

    /// Those who have a number: the others cannot be rung.
    pub(super) async fn check_contacts(&self, who: &str, against: &str) -> Result<()> {
        let mut write = self.write::<Essentials>(who).await?;
        let check = write.check(line(against));
        for it in contacts::list(&write).await?.iter().filter(|it| it.phone.is_some()) {
            contacts::save(&mut write, it, &it.checked(check.clone())).await?;
        }
        write.commit().await.map(|_| ())
    }

    /// The last one of this name, among those that were not struck.
    pub(super) async fn change(
        &self,
        who: &str,
        name: &str,
        turn: impl Fn(&Medicine) -> Result<Medicine>,
    ) -> Result<()> {
        let mut write = self.write::<Clinical>(who).await?;
        let mut named = medicines::list(&write).await?;
        named.retain(|it| it.name.as_str() == name);
        if let Some(before) = named.iter().max_by_key(|it| it.id) {
            medicines::save(&mut write, before, &turn(before)?).await?;
        }
        write.commit().await.map(|_| ())
    }

    pub(super) async fn change_contact(
        &self,
        who: &str,
        name: &str,
        turn: impl Fn(&Contact) -> Contact,
    ) -> Result<()> {
        let mut write = self.write::<Essentials>(who).await?;
        let all = contacts::list(&write).await?;
        if let Some(before) = all.iter().find(|it| it.name.as_str() == name) {
            contacts::save(&mut write, before, &turn(before)).await?;
        }
        write.commit().await.map(|_| ())
    }

    /// A print of the emergency sheet.
    pub(super) async fn printed(&self, who: &str) -> Result<()> {
        let (member, role) = self.member(who);
        let mut write = self.operator.note_for(self.person, member, role).await?;
        let today = self.zone.day(write.at());
        crate::across::sheets::emergency_printed(&mut write, today).await?;
        write.commit().await.map(|_| ())
    }
}

/// As it is, and not compared with anything yet.
pub(super) fn unchecked(it: &Medicine) -> Medicine {
    Medicine { checked_at: None, checked_by: None, checked_against: None, ..it.clone() }
}
