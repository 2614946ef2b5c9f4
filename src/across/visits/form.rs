//! What can be typed of a visit: the note itself, what was said to each question, what was changed
//! of each medicine, tests, follow-ups, the next visit, and who should read it.

use super::fields;
use crate::{
    base::{
        ids::{ContactId, MedicineId, MemberId, QuestionId},
        text::{Line, Note},
        time_of_day::TimeOfDay,
    },
    platform::{
        random,
        web::form::{FormErrors, FormKey, FromForm, Reader},
    },
    record::{medicines::model::Supply, visits::drafts::model::Sent},
};
use time::Date;

/// The form as it stands, whatever is in it: to be kept as a draft.
pub struct Typing {
    pub sent: Sent,
    /// Whether the note is to be saved; else only kept.
    pub saves: bool,
}

impl FromForm for Typing {
    fn read(form: &mut Reader) -> Result<Typing, FormErrors> {
        let mut kept = form_urlencoded::Serializer::new(String::new());
        for (name, value) in form.fields().iter().filter(|it| !fields::MACHINERY.contains(&it.0)) {
            kept.append_pair(name, value);
        }
        let number = |name: &str| form.raw(name).parse().unwrap_or(0);
        let page = FormKey::of(form.fields()).map_or_else(|| random::hex(16), |it| it.0);
        let token = Some(form.raw("draft").to_owned()).filter(|it| is_token(it));
        let sent = Sent {
            meeting: None,
            token: token.unwrap_or_else(|| page.clone()),
            count: number("count"),
            version: number("draft_version"),
            fields: kept.finish(),
            page,
        };
        Ok(Typing { sent, saves: form.raw("press") == "save" })
    }
}

pub fn is_token(text: &str) -> bool {
    text.len() == 32 && text.bytes().all(|it| it.is_ascii_hexdigit())
}

/// The note itself, as it is also put right later.
pub struct Told {
    pub held_on: Date,
    pub contact: Option<ContactId>,
    pub with_whom: Option<Line>,
    pub present: Vec<MemberId>,
    pub others: Option<Line>,
    pub said: Option<Note>,
    pub decisions: Option<Note>,
    pub readers: Vec<MemberId>,
    pub version: i64,
}

impl FromForm for Told {
    fn read(form: &mut Reader) -> Result<Told, FormErrors> {
        let says = "Enter the day of the visit, like 9 Mar 2026.";
        let held_on = form.needed_day("held_on", says);
        let contact = form.raw("contact_id").parse::<ContactId>().ok();
        let with_whom = form.line("with_whom");
        if contact.is_none() && form.raw("with_whom").trim().is_empty() {
            form.wrong("with_whom", "Choose or enter with whom the visit was.");
        }
        let (present, readers) = (fields::members(form, "present"), fields::members(form, "told"));
        let (others, said) = (form.line("others"), form.note("said"));
        let (decisions, version) = (form.note("decisions"), form.version());
        form.finish(|| {
            let held_on = held_on?;
            Some(Told {
                held_on,
                contact,
                with_whom,
                present,
                others,
                said,
                decisions,
                readers,
                version,
            })
        })
    }
}

/// What was said to one question.
pub struct Said {
    pub question: QuestionId,
    pub answer: Option<Note>,
    pub version: i64,
}

/// What became of a medicine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Becomes {
    Held,
    Stopped,
    Changed,
}

impl Becomes {
    pub const ALL: [(&'static str, Becomes); 3] = [
        ("on hold", Becomes::Held),
        ("stopped", Becomes::Stopped),
        ("taken differently", Becomes::Changed),
    ];
    pub const NOTHING: &'static str = "nothing changed";
}

/// A medicine that was talked over with a result.
pub struct Turned {
    pub medicine: MedicineId,
    pub becomes: Becomes,
    pub reason: Line,
    /// None: the day of the visit.
    pub on: Option<Date>,
    pub resume_on: Option<Date>,
    pub strength: Option<Line>,
    pub dose: Option<Line>,
    pub times: Option<Line>,
    pub version: i64,
}

/// One that is newly started.
pub struct Started {
    pub at: usize,
    pub name: Line,
    pub strength: Option<Line>,
    pub form: Option<Line>,
    pub dose: Option<Line>,
    pub times: Option<Line>,
    pub purpose: Option<Line>,
    pub supply: Supply,
    pub on: Option<Date>,
}

/// A test, or what is to be done: who sees to it, until when.
pub struct Follow {
    pub at: usize,
    pub what: Line,
    pub place: Option<Line>,
    pub owner: Option<MemberId>,
    pub due: Option<Date>,
}

/// The next visit, as far as it is known.
pub struct Next {
    pub what: Option<Line>,
    pub day: Date,
    pub time: Option<TimeOfDay>,
}

/// The whole form.
pub struct Noted {
    pub told: Told,
    pub answers: Vec<Said>,
    pub turned: Vec<Turned>,
    pub started: Vec<Started>,
    pub tests: Vec<Follow>,
    pub follow_ups: Vec<Follow>,
    pub next: Option<Next>,
}

impl FromForm for Noted {
    fn read(form: &mut Reader) -> Result<Noted, FormErrors> {
        let (answers, turned) = (answers(form), turned(form));
        let started = (1..=fields::MOST).filter_map(|at| started(form, at)).collect();
        let tests = (1..=fields::MOST).filter_map(|at| follow(form, "test", at)).collect();
        let follow_ups = (1..=fields::MOST).filter_map(|at| follow(form, "follow", at)).collect();
        let next = next(form);
        // Last: it finishes the form with all that was wrong above.
        let told = Told::read(form)?;
        Ok(Noted { told, answers, turned, started, tests, follow_ups, next })
    }
}

/// Only what was answered or asked; the others were not reached.
fn answers(form: &mut Reader) -> Vec<Said> {
    let mut all = Vec::new();
    for id in fields::ids(form, "q", "version") {
        let answer = form.note(fields::question(id, "answer"));
        let asked = form.tick(&fields::question(id, "asked"));
        let version = form.raw(&fields::question(id, "version")).parse().unwrap_or(0);
        if answer.is_some() || asked {
            all.push(Said { question: id.into(), answer, version });
        }
    }
    all
}

fn turned(form: &mut Reader) -> Vec<Turned> {
    let mut all = Vec::new();
    for id in fields::ids(form, "m", "version") {
        let field = |part: &str| fields::medicine(id, part);
        let sent = form.raw(&field("what")).to_owned();
        let becomes = Becomes::ALL.iter().find(|it| it.0 == sent).map(|it| it.1);
        let reason = form.line(field("why"));
        let (on, resume_on) = (form.day(field("on")), form.day(field("resume")));
        let (strength, dose) = (form.line(field("strength")), form.line(field("dose")));
        let times = form.line(field("times"));
        let typed = [&reason, &strength, &dose, &times].iter().any(|it| it.is_some());
        let typed = typed || on.is_some() || resume_on.is_some();
        match (becomes, reason) {
            (None, _) if typed || !matches!(sent.as_str(), "" | Becomes::NOTHING) => {
                form.wrong(field("what"), "Choose what became of this medicine.");
            }
            (None, _) => {}
            (Some(_), None) => form.wrong(field("why"), "Enter the reason, as it was given."),
            (Some(becomes), Some(reason)) => all.push(Turned {
                medicine: id.into(),
                becomes,
                reason,
                on,
                resume_on,
                strength,
                dose,
                times,
                version: form.raw(&field("version")).parse().unwrap_or(0),
            }),
        }
    }
    all
}

pub const STARTED: [&str; 7] = ["name", "strength", "form", "dose", "times", "purpose", "on"];

fn started(form: &mut Reader, at: usize) -> Option<Started> {
    let field = |part: &str| fields::row("new", at, part);
    if STARTED.iter().all(|part| form.raw(&field(part)).trim().is_empty()) {
        return None;
    }
    let name = form.line(field("name"));
    if name.is_none() {
        form.wrong(field("name"), "Enter the name of the new medicine.");
    }
    let sent = form.raw(&field("supply")).to_owned();
    let supplies = [Supply::OverTheCounter, Supply::Supplement];
    let supply = supplies.into_iter().find(|it| it.to_string() == sent);
    Some(Started {
        at,
        name: name?,
        strength: form.line(field("strength")),
        form: form.line(field("form")),
        dose: form.line(field("dose")),
        times: form.line(field("times")),
        purpose: form.line(field("purpose")),
        supply: supply.unwrap_or(Supply::Prescription),
        on: form.day(field("on")),
    })
}

pub const FOLLOW: [&str; 3] = ["what", "where", "due"];

fn follow(form: &mut Reader, kind: &str, at: usize) -> Option<Follow> {
    let field = |part: &str| fields::row(kind, at, part);
    if FOLLOW.iter().all(|part| form.raw(&field(part)).trim().is_empty()) {
        return None;
    }
    let what = form.line(field("what"));
    if what.is_none() {
        let says = if kind == "test" { "Enter which test." } else { "Enter what is to be done." };
        form.wrong(field("what"), says);
    }
    let owner = form.raw(&field("owner")).parse::<i64>().ok().map(MemberId::from);
    Some(Follow {
        at,
        what: what?,
        place: form.line(field("where")),
        owner,
        due: form.day(field("due")),
    })
}

fn next(form: &mut Reader) -> Option<Next> {
    let typed = |name: &str| !form.raw(name).trim().is_empty();
    if !["next_what", "next_day", "next_time"].into_iter().any(typed) {
        return None;
    }
    let says = "Enter a day for the next visit; a guess will do until it is booked.";
    let day = form.needed_day("next_day", says);
    let sent = form.raw("next_time").trim().to_owned();
    let time = TimeOfDay::parse(&sent);
    if time.is_none() && !sent.is_empty() {
        form.wrong("next_time", "Enter the time like 9:30 am, or leave it empty.");
    }
    Some(Next { what: form.line("next_what"), day: day?, time })
}
