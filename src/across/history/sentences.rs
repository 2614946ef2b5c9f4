//! One entry of the history as a sentence: who did what to which thing, and what it was before.

use super::{
    answers, appointments, carried, coverage, death, decided, directives, given, kinds, noticed,
    papers, places, questions, reconciled, renewals, tasks,
    titles::{Thing, Titles},
    turns, values, visits,
};
use crate::{
    base::{clock::Instant, ids::MemberId, zone::Zone},
    platform::audit::{
        Names, RESTORED_UNSOUND,
        read::{Difference, Recorded},
    },
    record::happenings::model::title,
};

/// A sentence: "Ines" "changed the dose of" "Warfarin 2.5 mg" "from 1 tablet to 2 tablets".
pub struct Sentence {
    pub at: Instant,
    pub who: String,
    pub does: String,
    /// One, or several where the same was done to each in one go.
    pub things: Vec<Thing>,
    pub rest: String,
    pub changes: Vec<Line>,
}

impl Sentence {
    /// Whether another sentence says the same of another thing, at the same moment.
    pub fn goes_on_in(&self, next: &Sentence) -> bool {
        let said = |it: &Sentence| (it.at, it.who.clone(), it.does.clone(), it.rest.clone());
        let plain = |it: &Sentence| it.changes.is_empty() && !it.things.is_empty();
        said(self) == said(next) && plain(self) && plain(next)
    }
}

/// One changed field.
pub struct Line {
    pub label: &'static str,
    pub old: Option<String>,
    pub new: Option<String>,
}

/// What is needed to read entries: names, titles, the person's zone.
pub struct Words<'a> {
    pub names: &'a Names,
    pub titles: &'a Titles,
    pub zone: &'a Zone,
}

impl Words<'_> {
    /// The sentence; where a place was decided for a person who does not sign in, it says so.
    pub fn tell(&self, entry: &Recorded) -> Sentence {
        let mut sentence = self.told(entry);
        let place = matches!(entry.kind.as_str(), "membership" | "invitation");
        if place && new_text(entry, "on_behalf", self.zone).is_some() {
            let behalf = self.behalf();
            match sentence.rest.is_empty() {
                true => sentence.rest = behalf,
                false => sentence.rest.push_str(&format!(", {behalf}")),
            }
        }
        sentence
    }

    fn behalf(&self) -> String {
        let name = self.titles.person().unwrap_or("the person");
        format!("on {name}'s behalf")
    }

    fn told(&self, entry: &Recorded) -> Sentence {
        let who = self.who(entry);
        let things = Vec::from_iter(self.thing(entry));
        let at = entry.at;
        if !is_change(entry) {
            let (does, rest) = done(entry);
            return Sentence { at, who, does, things, rest, changes: Vec::new() };
        }
        if entry.kind == "read_mark" {
            let does = "confirmed having read what had changed".to_owned();
            return Sentence { at, who, does, things, rest: String::new(), changes: Vec::new() };
        }
        if entry.kind == "hidden" {
            return self.hiding(entry, who);
        }
        let own = places::tell(self, entry).or_else(|| answers::tell(self, entry));
        let own = own.or_else(|| given::tell(self, entry));
        let own = own.or_else(|| death::tell(self, entry));
        let own = own.or_else(|| questions::tell(self, entry));
        let own = own.or_else(|| tasks::tell(self, entry));
        let own = own.or_else(|| carried::tell(self, entry));
        let own = own.or_else(|| noticed::tell(self, entry));
        let own = own.or_else(|| decided::tell(self, entry));
        let own = own.or_else(|| coverage::tell(self, entry));
        let own = own.or_else(|| directives::tell(self, entry));
        let own = own.or_else(|| turns::tell(self, entry));
        let own = own.or_else(|| appointments::tell(self, entry));
        let own = own.or_else(|| visits::tell(self, entry));
        let own = own.or_else(|| renewals::tell(self, entry));
        let own = own.or_else(|| papers::tell(self, entry));
        if let Some(sentence) = own.or_else(|| reconciled::tell(self, entry)) {
            return sentence;
        }
        let mut changes = self.changes(entry);
        let (does, rest) = match turn(entry) {
            Some(turn) => {
                changes.retain(|it| !turn.tells(entry, it.label));
                (turn.verb.to_owned(), turn.rest(entry, self.zone))
            }
            None => self.plain(entry, &mut changes, !things.is_empty()),
        };
        Sentence { at, who, does, things, rest, changes }
    }

    pub(super) fn who(&self, entry: &Recorded) -> String {
        match (entry.actor, entry.door.as_str()) {
            (actor, _) if actor != MemberId::default() => self.names.of(actor).to_owned(),
            (_, "visitor") => "Someone not signed in".into(),
            (_, "operator") => "The one who runs the server".into(),
            _ => "The program".into(),
        }
    }

    pub(super) fn thing(&self, entry: &Recorded) -> Option<Thing> {
        let title = match entry.kind.as_str() {
            "member" if entry.actor == MemberId::from(entry.item) => return None,
            "allergy_answer" if entry.action == "added" => return None,
            "allergy_answer" => "the answer about allergies".to_owned(),
            "member" => self.names.of(entry.item.into()).to_owned(),
            "membership" if !is_change(entry) => return None,
            kind => self.titles.of(kind, entry.item)?.to_owned(),
        };
        Some(Thing { title, page: kinds::page(&entry.kind, entry.item) })
    }

    fn changes(&self, entry: &Recorded) -> Vec<Line> {
        // That an edit takes the check off goes without saying.
        let unchecked =
            |it: &Difference| it.field == "checked_against" && it.new.as_deref() == Some("null");
        let told = entry.values.iter().filter(|it| !unchecked(it)).filter_map(|it| {
            let label = label(entry, &it.field)?;
            let (old, new) = self.sides(it);
            // A new thing is told by what was filled in.
            let empty = entry.action == "added"
                && matches!(new.as_deref(), None | Some("no" | "changed" | "not asked"));
            // A short note is its own title.
            let titled = entry.kind == "happening" && it.field == "words" && !is_long(it);
            let empty = empty || titled && entry.action == "added";
            let told = old != new || it.erased || is_sealed(it);
            (!empty && told).then(|| Line { label, old: old.filter(|_| !is_sealed(it)), new })
        });
        told.collect()
    }

    fn sides(&self, it: &Difference) -> (Option<String>, Option<String>) {
        match it.erased {
            true => (None, Some("erased".into())),
            false => (
                values::of_field(&it.field, it.old.as_deref(), self.zone),
                values::of_field(&it.field, it.new.as_deref(), self.zone),
            ),
        }
    }

    /// Added, removed, or changed without a turn: one changed field is told in the sentence.
    /// Without a thing it is the member's own doing: "changed the phone", "changed own settings".
    fn plain(&self, entry: &Recorded, changes: &mut Vec<Line>, thing: bool) -> (String, String) {
        let noun = kinds::kind(&entry.kind).map_or("something", |it| it.noun);
        match (entry.action.as_str(), changes.as_slice()) {
            ("added", _) if entry.kind == "print" => ("printed the".into(), String::new()),
            ("added", _) if entry.kind == "happening" => ("noted".into(), String::new()),
            ("added", _) => (format!("added {noun}"), String::new()),
            ("removed", _) => (format!("removed {noun}"), String::new()),
            (_, [one]) => {
                let side = |it: &Option<String>| it.clone().unwrap_or_else(|| "nothing".into());
                let rest = match one.new.as_deref() {
                    Some("changed") => String::new(),
                    _ => format!("from {} to {}", side(&one.old), side(&one.new)),
                };
                let of = if thing { " of" } else { "" };
                let does = format!("changed the {}{of}", one.label);
                changes.clear();
                (does, rest)
            }
            _ if thing => ("changed".into(), String::new()),
            _ => ("changed own settings".into(), String::new()),
        }
    }

    fn hiding(&self, entry: &Recorded, who: String) -> Sentence {
        let new = |field: &str| new_text(entry, field, self.zone);
        let row = self.titles.hidden(entry.item);
        let from = row.map_or("someone", |it| self.names.of(it.member_id));
        let hides = new("standing").as_deref() != Some("no");
        let behalf = match new("on_behalf").as_deref() {
            Some("yes") => format!(", {}", self.behalf()),
            _ => String::new(),
        };
        let (kind, item) = row.map_or(("", 0), |it| (it.kind.as_str(), it.item));
        let title = self.titles.of(kind, item).unwrap_or("something").to_owned();
        Sentence {
            at: entry.at,
            who,
            does: if hides { "hid".into() } else { "showed again".into() },
            things: vec![Thing { title, page: kinds::page(kind, item) }],
            rest: format!("{} {from}{behalf}", if hides { "from" } else { "to" }),
            changes: Vec::new(),
        }
    }
}

fn label(entry: &Recorded, field: &str) -> Option<&'static str> {
    kinds::kind(&entry.kind)?.label(field)
}

/// Whether a note says more than its title.
fn is_long(it: &Difference) -> bool {
    let words = it.new.as_deref().and_then(|it| serde_json::from_str::<String>(it).ok());
    words.is_some_and(|it| title(Some(&it)) != it)
}

/// Only of a sealed field is a difference kept that has the same on both sides.
fn is_sealed(it: &Difference) -> bool {
    !it.erased && it.old == it.new
}

fn value<'a>(entry: &'a Recorded, field: &str) -> Option<&'a Difference> {
    entry.values.iter().find(|it| it.field == field)
}

pub(super) fn new_text(entry: &Recorded, field: &str, zone: &Zone) -> Option<String> {
    values::of_field(field, value(entry, field)?.new.as_deref(), zone)
}

pub(super) fn old_text(entry: &Recorded, field: &str, zone: &Zone) -> Option<String> {
    values::of_field(field, value(entry, field)?.old.as_deref(), zone)
}

/// Whether a row was changed, and not only something done.
fn is_change(entry: &Recorded) -> bool {
    matches!(entry.action.as_str(), "added" | "edited" | "removed")
}

/// A change that has its own verb, and the fields that are told in the sentence after a word.
struct Turn {
    verb: &'static str,
    after: &'static str,
    told: &'static [&'static str],
}

impl Turn {
    fn rest(&self, entry: &Recorded, zone: &Zone) -> String {
        let told = self.told.iter().filter_map(|field| new_text(entry, field, zone));
        let told = told.collect::<Vec<_>>().join(": ");
        if told.is_empty() { told } else { format!("{}{told}", self.after) }
    }

    /// Whether a changed field needs no line of its own.
    fn tells(&self, entry: &Recorded, changed: &str) -> bool {
        let told = self.told.iter().any(|it| label(entry, it) == Some(changed));
        let turned = ["status", "struck", "reason", "since"].contains(&changed);
        told || turned || (self.verb == "brought back" && changed == "why struck")
    }
}

fn turn(entry: &Recorded) -> Option<Turn> {
    if entry.action != "edited" {
        return None;
    }
    let is = |field: &str, json: &str| {
        value(entry, field).is_some_and(|it| it.new.as_deref() == Some(json))
    };
    let reason: &[_] = &["status_since", "status_reason", "struck_reason"];
    let turn = |verb, after, told| Some(Turn { verb, after, told });
    if is("status", r#""stopped""#) {
        turn("stopped", "from ", reason)
    } else if is("status", r#""on hold""#) {
        turn("put on hold", "from ", reason)
    } else if is("status", r#""struck""#) || is("struck", "true") {
        // A contact may also leave the list because he need not be phoned any more.
        let verb = if entry.kind == "contact" { "struck" } else { "struck as a mistake" };
        turn(verb, "with the reason: ", &["status_reason", "struck_reason"])
    } else if is("status", r#""taking""#) || is("struck", "false") {
        let struck =
            value(entry, "status").is_none_or(|it| it.old.as_deref() == Some(r#""struck""#));
        turn(if struck { "brought back" } else { "resumed" }, "", &[])
    } else if let Some(over) = value(entry, "over_on") {
        let stands = over.new.as_deref().is_none_or(|it| it == "null");
        let verb = if stands { "brought back" } else { "marked as over" };
        turn(verb, "from ", &["over_on", "over_said_by"])
    } else if value(entry, "place").is_some() {
        turn("gave a place to", "", &[])
    } else if only_checked(entry) {
        turn("checked", "against ", &["checked_against"])
    } else {
        None
    }
}

/// Only the three columns of a check, and the check was not taken off.
fn only_checked(entry: &Recorded) -> bool {
    let checked = ["checked_at", "checked_by", "checked_against"];
    let stands = value(entry, "checked_at").is_some_and(|it| it.new.as_deref() != Some("null"));
    stands && entry.values.iter().all(|it| checked.contains(&it.field.as_str()))
}

/// What was done without changing a row.
fn done(entry: &Recorded) -> (String, String) {
    let area = match entry.area.as_str() {
        "clinical" => "the clinical pages",
        "directives" => "the directives",
        "history" => "the history",
        "members" => "the family's list",
        "papers" => "the papers",
        _ => "the essentials",
    };
    let words = match entry.action.as_str() {
        "signed in" => ("signed in", String::new()),
        "signed out" => ("signed out", String::new()),
        "ended a session" => ("signed out another device", String::new()),
        "sign-in failed" => ("tried to sign in as", "and could not".into()),
        "reset link made" => ("had a link made to choose a new password", String::new()),
        "reset" => ("chose a new password by a link", String::new()),
        RESTORED_UNSOUND => {
            ("restored this server from a backup that was not sound", String::new())
        }
        "refused" => ("asked for", format!("{area}, and was refused")),
        other => (other, String::new()),
    };
    (words.0.to_owned(), words.1)
}
