//! What can be typed about directives, copies and events.

use super::{
    answer::Answer,
    copies::Holder,
    events::Happened,
    kind::{Starts, State},
    model::{Entry, Review, Voiding},
};
use crate::base::{
    ids::{ContactId, DirectiveId},
    text::Line,
};
use crate::platform::web::form::{FormErrors, FromForm, Reader};
use time::Date;

/// A contact that was chosen, or nobody.
fn contact(form: &mut Reader, name: &'static str) -> Option<ContactId> {
    let sent = form.raw(name);
    let read = sent.parse().ok();
    if read.is_none() && !sent.is_empty() {
        form.wrong(name, "Choose one of the contacts.");
    }
    read
}

/// The other directive that was chosen.
fn other(form: &mut Reader, name: &'static str) -> Option<DirectiveId> {
    let read = form.raw(name).parse().ok();
    if read.is_none() {
        form.wrong(name, "Choose which other directive.");
    }
    read
}

/// All of one directive; how it stands and what it replaces are asked of a new one.
pub struct Told {
    pub entry: Entry,
    pub state: Option<State>,
    pub replaces: Option<DirectiveId>,
    pub version: i64,
}

impl FromForm for Told {
    fn read(form: &mut Reader) -> Result<Told, FormErrors> {
        let kind = form.choice("kind");
        let (form_of, signed_on) = (form.line("form_of"), form.day("signed_on"));
        let (witnesses, notary) = (form.line("witnesses"), form.line("notary"));
        let named =
            ["agent_id", "alternate_id", "second_alternate_id"].map(|name| contact(form, name));
        in_order(form, &named);
        let (starts, starts_words) = starts(form);
        let (kept_where, holder_id) = (form.line("kept_where"), contact(form, "holder_id"));
        let (note, source) = (form.note("note"), form.line("source"));
        let state = match form.raw("state") {
            "" => None,
            _ => form.choice("state"),
        };
        let replaces = match form.raw("replaces") {
            "" => None,
            _ => other(form, "replaces"),
        };
        let version = form.version();
        form.finish(|| {
            let (kind, starts) = (kind?, starts?);
            let entry = Entry {
                kind,
                form_of,
                signed_on,
                witnesses,
                notary,
                named,
                starts,
                starts_words,
                kept_where,
                holder_id,
                note,
                source,
            };
            Some(Told { entry, state, replaces, version })
        })
    }
}

/// An alternate comes after an agent, and nobody is named twice.
fn in_order(form: &mut Reader, named: &[Option<ContactId>; 3]) {
    let [agent, alternate, second] = named;
    if alternate.is_some() && agent.is_none() {
        form.wrong("alternate_id", "Choose the agent first: an alternate comes after her.");
    }
    if second.is_some() && alternate.is_none() {
        form.wrong("second_alternate_id", "Choose the first alternate before the second.");
    }
    if alternate.is_some() && (alternate == agent || alternate == second) {
        form.wrong("alternate_id", "This one is named twice.");
    } else if second.is_some() && second == agent {
        form.wrong("second_alternate_id", "This one is named twice.");
    }
}

/// When the power starts; the words of the paper only where the paper says.
fn starts(form: &mut Reader) -> (Option<Starts>, Option<Line>) {
    let starts = form.choice("starts");
    let words = match starts {
        Some(Starts::AsThePaperSays) => {
            form.needed_line("starts_words", "Enter what the paper says of when it starts.")
        }
        _ => form.line("starts_words"),
    };
    if words.is_some() && starts.is_some_and(|it| it != Starts::AsThePaperSays) {
        form.wrong(
            "starts_words",
            "These words belong to “as the paper says”: choose that above, or leave this empty.",
        );
    }
    (starts, words)
}

/// The answer where nothing is listed: "none" with who said so and when, or nothing.
pub struct Answered {
    pub none: Option<(Line, Date)>,
    pub version: i64,
}

impl FromForm for Answered {
    fn read(form: &mut Reader) -> Result<Answered, FormErrors> {
        let (answer, version) = (form.choice("answer"), form.version());
        if answer == Some(Answer::NotAsked) {
            return Ok(Answered { none: None, version });
        }
        let said_by = form.needed_line("said_by", "Enter who said that there are none.");
        let says = "Enter the day on which it was said, like 9 Mar 2026.";
        let said_on = form.needed_day("said_on", says);
        form.finish(|| {
            answer?;
            Some(Answered { none: Some((said_by?, said_on?)), version })
        })
    }
}

/// A draft that was signed: on which day, with which witnesses.
pub struct Signed {
    pub on: Date,
    pub witnesses: Option<Line>,
    pub notary: Option<Line>,
    pub version: i64,
}

impl FromForm for Signed {
    fn read(form: &mut Reader) -> Result<Signed, FormErrors> {
        let on = form.needed_day("signed_on", "Enter the day it was signed, like 9 Mar 2026.");
        let (witnesses, notary) = (form.line("witnesses"), form.line("notary"));
        let version = form.version();
        form.finish(|| Some(Signed { on: on?, witnesses, notary, version }))
    }
}

pub struct Voided {
    pub it: Voiding,
    pub version: i64,
}

impl FromForm for Voided {
    fn read(form: &mut Reader) -> Result<Voided, FormErrors> {
        let on = form.needed_day("voided_on", "Enter the day it was voided, like 9 Mar 2026.");
        let by = form.needed_line("voided_by", "Enter who voided it.");
        let how =
            form.needed_line("voided_how", "Enter how: a line through it, torn up, said to whom.");
        let version = form.version();
        form.finish(|| Some(Voided { it: Voiding { on: on?, by: by?, how: how? }, version }))
    }
}

/// Superseded by which other.
pub struct Superseded {
    pub by: DirectiveId,
    pub version: i64,
}

impl FromForm for Superseded {
    fn read(form: &mut Reader) -> Result<Superseded, FormErrors> {
        let (by, version) = (other(form, "superseded_by"), form.version());
        form.finish(|| Some(Superseded { by: by?, version }))
    }
}

/// Says something else than which other, and in what; or the mark is taken off.
pub struct Differs {
    pub from: Option<(DirectiveId, Line)>,
    pub version: i64,
}

impl FromForm for Differs {
    fn read(form: &mut Reader) -> Result<Differs, FormErrors> {
        let version = form.version();
        if form.raw("differs_from").is_empty() && form.raw("differs_in").trim().is_empty() {
            return Ok(Differs { from: None, version });
        }
        let from = other(form, "differs_from");
        let what = form.needed_line("differs_in", "Enter in what they say something else.");
        form.finish(|| Some(Differs { from: Some((from?, what?)), version }))
    }
}

pub struct Reviewed {
    pub it: Review,
    pub version: i64,
}

impl FromForm for Reviewed {
    fn read(form: &mut Reader) -> Result<Reviewed, FormErrors> {
        let on = form.needed_day("reviewed_on", "Enter the day, like 9 Mar 2026.");
        let by = form.needed_line("reviewed_by", "Enter who looked at it again.");
        let why = form.needed_line("reviewed_why", "Enter why, and what came of it.");
        let version = form.version();
        form.finish(|| Some(Reviewed { it: Review { on: on?, by: by?, why: why? }, version }))
    }
}

/// Struck, or put aside: with the reason.
pub struct Because {
    pub reason: Line,
    pub version: i64,
}

impl FromForm for Because {
    fn read(form: &mut Reader) -> Result<Because, FormErrors> {
        let (reason, version) = (form.needed_line("reason", "Enter the reason."), form.version());
        form.finish(|| Some(Because { reason: reason?, version }))
    }
}

/// To whom a copy was given, and when.
pub struct Given {
    pub holder: Holder,
    pub on: Option<Date>,
}

impl FromForm for Given {
    fn read(form: &mut Reader) -> Result<Given, FormErrors> {
        let (contact, words) = (contact(form, "contact_id"), form.line("given_to"));
        let holder = match (contact, words) {
            (Some(id), None) => Some(Holder::Contact(id)),
            (None, Some(words)) => Some(Holder::Words(words)),
            (None, None) => {
                form.wrong("contact_id", "Choose who has the copy, or enter it below.");
                None
            }
            (Some(_), Some(_)) => {
                form.wrong(
                    "given_to",
                    "One of the contacts is chosen above. Leave this empty, or that.",
                );
                None
            }
        };
        let on = form.day("given_on");
        form.finish(|| Some(Given { holder: holder?, on }))
    }
}

/// That a holder was told, when and how.
pub struct Heard {
    pub on: Date,
    pub how: Line,
    pub version: i64,
}

impl FromForm for Heard {
    fn read(form: &mut Reader) -> Result<Heard, FormErrors> {
        let on = form.needed_day("told_on", "Enter the day, like 9 Mar 2026.");
        let how = form.needed_line("told_how", "Enter how, and what becomes of the copy.");
        let version = form.version();
        form.finish(|| Some(Heard { on: on?, how: how?, version }))
    }
}

/// What happened, to whom, when.
pub struct Event {
    pub kind: Happened,
    pub contact_id: Option<ContactId>,
    pub on: Date,
    pub words: Option<Line>,
}

impl FromForm for Event {
    fn read(form: &mut Reader) -> Result<Event, FormErrors> {
        let (kind, contact_id) = (form.choice("kind"), contact(form, "contact_id"));
        let on = form.needed_day("happened_on", "Enter the day, like 9 Mar 2026.");
        let words = form.line("words");
        form.finish(|| Some(Event { kind: kind?, contact_id, on: on?, words }))
    }
}
