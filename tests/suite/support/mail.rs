//! What has become due, and the mail that leaves a house, by hand and by the house's own clock.

use super::{
    Browser, Family, TestHouse,
    family::{line, place},
    smtp::MailServer,
};
use kinsheaf::{
    across::reminders,
    base::{reach::Email, zone::Zone},
    family::members::{
        mail_choices::{quiet::QuietHours, store as choices},
        model::Member,
        store,
    },
    platform::{
        auth::area::Role,
        config::Config,
        mail::{Carrier, Post},
    },
};
use std::collections::BTreeMap;

/// A message of the outbox as it stands.
#[derive(Clone, Debug, PartialEq, sqlx::FromRow)]
pub struct Mail {
    pub recipient: String,
    pub kind: String,
    pub state: String,
    pub subject: String,
    pub body: String,
    pub html: Option<String>,
    pub stop_link: Option<String>,
    pub tries: i64,
    pub trouble: Option<String>,
    pub message_id: String,
    pub occurrence: String,
}

impl TestHouse {
    /// Looks for what has become due; gives how many reminders were written.
    pub async fn remind(&self) -> usize {
        let (db, base) = (&self.house.db, self.house.config.base());
        reminders::plan(db, base, self.now()).await.expect("planned").len()
    }

    /// What would be written now, one line each.
    pub async fn would_remind(&self) -> Vec<String> {
        let due = reminders::due(&self.house.db, self.now()).await.expect("looked at");
        due.iter().map(|it| it.in_words(self.now())).collect()
    }

    /// Hands over what is due, to this server; gives how many were on their way.
    pub async fn carry(&self, server: &MailServer) -> usize {
        self.carry_to(&server.url).await
    }

    pub async fn carry_to(&self, url: &str) -> usize {
        let url = url.to_owned();
        let env = move |name: &str| match name {
            "KINSHEAF_SMTP_URL" => Some(url.clone()),
            "KINSHEAF_MAIL_FROM" => Some("Kinsheaf <care@example.org>".to_owned()),
            _ => None,
        };
        let config = Config::read(env, |_| unreachable!("no files")).expect("settings");
        let carrier = Carrier::of(&config).expect("a carrier");
        Post::new(self.house.db.clone(), carrier).carry_due().await
    }

    /// Hands over what is due as this house does by itself: into files.
    pub async fn lay_down(&self) -> usize {
        Post::new(self.house.db.clone(), self.house.carrier.clone()).carry_due().await
    }

    pub async fn mails(&self) -> Vec<Mail> {
        let mut db = self.outside().await;
        let rows = sqlx::query_as(
            "select recipient, kind, state, subject, body, html, stop_link, tries, trouble,
                message_id, occurrence
            from outbox order by id",
        );
        rows.fetch_all(&mut db).await.expect("the outbox")
    }

    /// How many there are in each state.
    pub async fn states(&self) -> BTreeMap<String, usize> {
        let mut count = BTreeMap::new();
        for it in self.mails().await {
            *count.entry(it.state).or_insert(0) += 1;
        }
        count
    }
}

impl Family {
    /// A medicine of which one is taken a day and two are there: its day to act has come.
    pub async fn with_a_supply_running_out() -> Family {
        let family = Family::new().await;
        family.runs_out("Warfarin", 1).await;
        family
    }

    pub async fn runs_out(&self, name: &str, id: i64) {
        let mut ines = self.browser("Ines").await;
        self.runs_out_by(&mut ines, name, id).await;
    }

    async fn runs_out_by(&self, ines: &mut Browser, name: &str, id: i64) {
        ines.open(&self.at("/medicines/add")).await.fill("Name", name);
        ines.press("Add this medicine").await.answers(200);
        ines.open(&self.at(&format!("/medicines/{id}/steps/add"))).await.fill("morning", "1");
        ines.press("Save").await.answers(200);
        ines.open(&self.at(&format!("/medicines/{id}/stock/fills/add"))).await;
        ines.fill("How many", "2").press("Save").await.answers(200);
    }
}

/// Adds so many members to a record of one supply that runs out, and supplies until there are
/// `medicines`; gives how many reminders of them are due. The members have no password and no
/// quiet hours: they are there to be mailed.
pub async fn many(family: &Family, members: i64, medicines: i64) -> usize {
    let (house, person) = (&family.house, family.person);
    for number in 0..members {
        let mut write = house.operator().write().await.expect("a write");
        let (name, email) = (format!("Member {number}"), format!("m{number:04}@example.org"));
        let member = Member::new(line(&name), Email::from(email), Zone::utc());
        let id = store::add(&mut write, &member).await.expect("a member");
        let usual = QuietHours::usual(id);
        let none = QuietHours { ends: usual.starts.clone(), ..usual.clone() };
        choices::save_quiet(&mut write, &usual, &none).await.expect("no quiet hours");
        write.commit().await.expect("kept");
        place(house, person, id, Role::Relative).await;
    }
    let mut ines = family.browser("Ines").await;
    for id in 2..=medicines {
        family.runs_out_by(&mut ines, &format!("Medicine {id}"), id).await;
    }
    usize::try_from(members * medicines).expect("a number")
}
