//! What can be typed about what is mailed.

use super::{
    kind::Kind,
    model::{HowOften, LONGEST, Leads, OFFERED, Whose},
    quiet::WallTime,
};
use crate::platform::{
    auth::policy::Reach,
    web::form::{Choice, FormErrors, FromForm, Reader},
};

/// Whose appointments: the choices in their order.
pub const APPOINTMENTS: [(Whose, &str); 3] = [
    (Whose::All, "every appointment"),
    (Whose::Mine, "the ones I go along to"),
    (Whose::None, "no appointment"),
];
pub const TASKS: [(Whose, &str); 3] = [
    (Whose::All, "my tasks, and those that nobody has taken"),
    (Whose::Mine, "my tasks"),
    (Whose::None, "no task"),
];

pub fn words(choices: &[(Whose, &'static str)], of: Whose) -> &'static str {
    choices.iter().find(|it| it.0 == of).map_or("", |it| it.1)
}

/// A choice as it was typed: what stood on the page for a place that reaches so far. `None`: it was
/// not asked.
pub struct Chosen {
    pub appointments: Option<Whose>,
    pub leads: Option<Leads>,
    pub tasks: Option<Whose>,
    pub supply: bool,
    pub renewal: bool,
    pub trouble: bool,
    pub digest: Option<HowOften>,
    pub version: i64,
}

impl FromForm for Chosen {
    fn read(form: &mut Reader) -> Result<Chosen, FormErrors> {
        let appointments = whose(form, "appointments", &APPOINTMENTS);
        let leads = leads(form);
        let tasks = whose(form, "tasks", &TASKS);
        let digest = match form.raw("digest") {
            "" => None,
            _ => form.choice("digest"),
        };
        let (supply, renewal) = (form.tick("supply"), form.tick("renewal"));
        let (trouble, version) = (form.tick("trouble"), form.version());
        if appointments.is_some_and(|it| it != Whose::None) && leads.is_none() {
            form.wrong("leads", "Choose at least one of these, or no appointment.");
        }
        form.finish(|| {
            Some(Chosen { appointments, leads, tasks, supply, renewal, trouble, digest, version })
        })
    }
}

impl Chosen {
    /// Laid over what held until now; what her place does not reach stays as it was.
    pub fn over(self, before: &super::model::MailChoice, reach: Reach) -> super::model::MailChoice {
        let mut after = before.clone();
        let offered = |kind: Kind| kind.is_offered(reach);
        after.appointments = self.appointments.unwrap_or(before.appointments);
        after.leads = self.leads.unwrap_or(before.leads.clone());
        after.tasks = self.tasks.unwrap_or(before.tasks);
        after.digest = self.digest.unwrap_or(before.digest);
        if offered(Kind::Supply) {
            after.supply = self.supply;
        }
        if offered(Kind::Renewal) {
            after.renewal = self.renewal;
        }
        if offered(Kind::Trouble) {
            after.trouble = self.trouble;
        }
        after
    }
}

fn whose(form: &mut Reader, name: &'static str, choices: &[(Whose, &str)]) -> Option<Whose> {
    let typed = form.raw(name).to_owned();
    let found = choices.iter().find(|it| it.1 == typed).map(|it| it.0);
    if found.is_none() && !typed.is_empty() {
        form.wrong(name, "Choose one of these.");
    }
    found
}

fn leads(form: &mut Reader) -> Option<Leads> {
    let offered = OFFERED.iter().filter(|it| form.tick(&format!("lead_{it}"))).copied();
    let mut hours: Vec<i64> = offered.collect();
    let own = form.raw("lead_own").trim().to_owned();
    if !own.is_empty() {
        match own.parse::<i64>().ok().filter(|it| (1..=LONGEST).contains(it)) {
            Some(own) => hours.push(own),
            None => form.wrong("lead_own", format!("Enter whole hours from 1 to {LONGEST}.")),
        }
    }
    (!hours.is_empty()).then(|| Leads::of(hours))
}

/// When no mail is wanted.
pub struct Quiet {
    pub starts: WallTime,
    pub ends: WallTime,
    pub version: i64,
}

impl FromForm for Quiet {
    fn read(form: &mut Reader) -> Result<Quiet, FormErrors> {
        let (starts, ends) = (wall(form, "starts"), wall(form, "ends"));
        let version = form.version();
        form.finish(|| Some(Quiet { starts: starts?, ends: ends?, version }))
    }
}

fn wall(form: &mut Reader, name: &'static str) -> Option<WallTime> {
    let read = WallTime::parse(form.raw(name));
    if read.is_none() {
        form.wrong(name, "Enter a time, like 21:00 or 9 pm.");
    }
    read
}

/// A press that stops a kind of mail: by the button, or by a mail program (RFC 8058, section 3.2).
pub struct Stopping {
    pub one_click: bool,
}

impl FromForm for Stopping {
    fn read(form: &mut Reader) -> Result<Stopping, FormErrors> {
        Ok(Stopping { one_click: form.raw("List-Unsubscribe") == "One-Click" })
    }
}

/// A press without fields.
pub struct Pressed;

impl FromForm for Pressed {
    fn read(_: &mut Reader) -> Result<Pressed, FormErrors> {
        Ok(Pressed)
    }
}

/// The words of a choice, for the page.
pub fn all<C: Choice>() -> impl Iterator<Item = &'static str> {
    C::ALL.iter().map(|it| it.words())
}
