//! The page of what is mailed to a member, with each rule in words, and its forms.

use super::{
    form::{self, APPOINTMENTS, Chosen, Quiet, TASKS},
    kind::Kind,
    model::{HowOften, MailChoice, OFFERED, hours_words},
    quiet::QuietHours,
    store,
};
use crate::base::{ids::PersonId, zone::Zone};
use crate::platform::{
    auth::{
        area::Own,
        doors::{Account, Record},
    },
    db::{Done, View},
    error::{Error, Result},
    mail::GivenUp,
    web::{form::Form, page::Page, path::At, typed::Typed, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use time::Duration;

#[derive(Template, WebTemplate)]
#[template(path = "mail_choices/show.html")]
pub struct ShowPage {
    page: Page,
    email: String,
    /// Whether mail leaves this house.
    leaves: bool,
    zone: Zone,
    quiet: QuietHours,
    records: Vec<Said>,
    lost: Vec<GivenUp>,
    /// Whether she may send a test mail: who decides in a record.
    may_test: bool,
}

/// What is mailed about one record.
struct Said {
    record: Record,
    is_usual: bool,
    rules: Vec<String>,
}

pub async fn show(account: Account) -> Result<ShowPage> {
    let (view, records) = (account.view().await?, account.records().await?);
    let member = super::super::store::find(&view, account.member()).await?;
    let quiet = store::quiet(&view, account.member()).await?;
    let lost = view.given_up(account.house.clock.now().minus(Duration::days(30))).await?;
    let may_test = decides(&records);
    let mut said = Vec::new();
    for record in records {
        let choice = choice(&account, &view, &record).await?;
        let offered = Kind::ALL.into_iter().filter(|it| it.is_offered(record.reach));
        let rules = match record.died {
            Some(_) => vec!["Nothing any more: nobody is reminded of anything.".to_owned()],
            None => offered.map(|it| choice.says(it)).collect(),
        };
        said.push(Said { is_usual: choice.version == 0, rules, record });
    }
    Ok(ShowPage {
        page: account.page("What is mailed to you"),
        email: member.email.to_string(),
        leaves: account.house.carrier.leaves(),
        zone: member.zone,
        quiet,
        records: said,
        lost,
        may_test,
    })
}

pub(super) fn decides(records: &[Record]) -> bool {
    records.iter().any(|it| it.reach.role.decides())
}

async fn choice(account: &Account, view: &View<Own>, record: &Record) -> Result<MailChoice> {
    store::find(view, (record.person, account.member()), record.reach.role).await
}

async fn record(account: &Account, person: PersonId) -> Result<Record> {
    let found = account.records().await?.into_iter().find(|it| it.person == person);
    found.ok_or(Error::NotFound)
}

#[derive(Template, WebTemplate)]
#[template(path = "mail_choices/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    record: Record,
    version: i64,
}

impl EditPage {
    fn offers(&self, kind: &str) -> bool {
        Kind::named(kind).is_some_and(|it| it.is_offered(self.record.reach))
    }

    fn appointments(&self) -> impl Iterator<Item = &'static str> {
        APPOINTMENTS.iter().map(|it| it.1)
    }

    fn tasks(&self) -> impl Iterator<Item = &'static str> {
        TASKS.iter().map(|it| it.1)
    }

    fn digests(&self) -> impl Iterator<Item = &'static str> {
        form::all::<HowOften>()
    }

    /// Name and words of each time before that is offered.
    fn leads(&self) -> impl Iterator<Item = (String, String)> {
        OFFERED.into_iter().map(|it| (format!("lead_{it}"), format!("{} before", hours_words(it))))
    }
}

pub async fn choosing(account: Account, At(id): At<PersonId>, typed: Typed) -> Result<EditPage> {
    let record = record(&account, id).await?;
    let kept = choice(&account, &account.view().await?, &record).await?;
    let mut typed = typed
        .over(&kept)
        .with("appointments", form::words(&APPOINTMENTS, kept.appointments))
        .with("tasks", form::words(&TASKS, kept.tasks))
        .with("digest", crate::platform::web::form::Choice::words(kept.digest))
        .with("lead_own", kept.leads.own().map(|it| it.to_string()).unwrap_or_default());
    for (name, hours) in [("lead_168", 168), ("lead_24", 24), ("lead_2", 2)] {
        typed = typed.with(name, kept.leads.hours().any(|it| it == hours));
    }
    let page = account.page(format!("Mail about {}", record.name));
    Ok(EditPage { page, typed, record, version: kept.version })
}

pub async fn choose(account: Account, At(id): At<PersonId>, form: Form<Chosen>) -> Done {
    let record = record(&account, id).await?;
    let chosen = form.parse()?;
    let mut write = account.write().await?;
    let before = choice(&account, &write, &record).await?;
    if before.version != chosen.version {
        return Err(Error::Stale);
    }
    let after = chosen.over(&before, record.reach);
    store::save(&mut write, &before, &after).await?;
    for kind in Kind::ALL.into_iter().filter(|it| !after.wants(*it)) {
        write.withdraw(kind.name(), account.member(), id).await?;
    }
    let says = format!("Saved what is mailed to you about {}", record.name);
    write.commit().await?.then(urls::mail()).saying(says)
}

#[derive(Template, WebTemplate)]
#[template(path = "mail_choices/quiet.html")]
pub struct QuietPage {
    page: Page,
    typed: Typed,
    version: i64,
}

pub async fn quieting(account: Account, typed: Typed) -> Result<QuietPage> {
    let kept = store::quiet(&account.view().await?, account.member()).await?;
    let page = account.page("When no mail is wanted");
    Ok(QuietPage { page, typed: typed.over(&kept), version: kept.version })
}

pub async fn keep_quiet(account: Account, form: Form<Quiet>) -> Done {
    let Quiet { starts, ends, version } = form.parse()?;
    let mut write = account.write().await?;
    let before = store::quiet(&write, account.member()).await?;
    if before.version != version {
        return Err(Error::Stale);
    }
    let after = QuietHours { starts, ends, ..before.clone() };
    store::save_quiet(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::mail()).saying("Saved when no mail is wanted")
}
