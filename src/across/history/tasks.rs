//! How the history tells of a task: "Bram took Renew the parking placard", "Juno said yes to ..".
//! What moves it from hand to hand and to its end has words of its own.

use super::sentences::{Sentence, Words, new_text, old_text};
use crate::{
    base::ids::MemberId,
    platform::audit::read::{Difference, Recorded},
};

/// The sentence of an entry about a task; none where the plain words will do.
pub fn tell(words: &Words, entry: &Recorded) -> Option<Sentence> {
    if entry.kind != "task" || entry.action == "removed" {
        return None;
    }
    let told = Told { words, entry };
    let (does, rest) = match entry.action.as_str() {
        "added" => told.added(),
        _ => {
            told.ended().or_else(|| told.moved()).or_else(|| told.put()).or_else(|| told.said())?
        }
    };
    let things = Vec::from_iter(words.thing(entry));
    let (at, who) = (entry.at, words.who(entry));
    Some(Sentence { at, who, does: does.to_owned(), things, rest, changes: Vec::new() })
}

struct Told<'a> {
    words: &'a Words<'a>,
    entry: &'a Recorded,
}

type Said = Option<(&'static str, String)>;

impl Told<'_> {
    fn now(&self, field: &str) -> Option<String> {
        new_text(self.entry, field, self.words.zone)
    }

    fn old(&self, field: &str) -> Option<String> {
        old_text(self.entry, field, self.words.zone)
    }

    fn changed(&self, field: &str) -> bool {
        self.entry.values.iter().any(|it| it.field == field)
    }

    /// Whether nothing but these was changed.
    fn only(&self, fields: &[&str]) -> bool {
        let among = |it: &Difference| fields.contains(&it.field.as_str());
        self.entry.values.iter().all(among)
    }

    fn member(&self, said: Option<String>) -> Option<(MemberId, &str)> {
        let id = MemberId::from(said?.parse::<i64>().ok()?);
        Some((id, self.words.names.of(id)))
    }

    /// ": because of this", or nothing.
    fn because(&self, field: &str) -> String {
        self.now(field).map(|it| format!(": {it}")).unwrap_or_default()
    }

    fn added(&self) -> (&'static str, String) {
        let firm = self.now("firm").as_deref() == Some("yes");
        let due = self.now("due_on");
        let rest = due.as_ref().map(|on| match firm {
            true => format!("that must be done by {on}"),
            false => format!("that is best done by {on}"),
        });
        let again = self.now("counted_from").is_some_and(|it| Some(it) != due);
        let does =
            if again { "wrote down the next time of the task" } else { "wrote down the task" };
        (does, rest.unwrap_or_default())
    }

    fn ended(&self) -> Said {
        match self.now("state")?.as_str() {
            "done" => {
                let on = self.now("closed_on").map(|it| format!("on {it}")).unwrap_or_default();
                let photo = self.now("photo").map_or("", |_| ", with a photo");
                Some(("finished", format!("{on}{photo}{}", self.because("proof"))))
            }
            "let go" => {
                let why = self.now("let_go_reason").map(|it| format!("with the reason: {it}"));
                Some(("let go of the task", why.unwrap_or_default()))
            }
            _ if matches!(self.old("state").as_deref(), Some("done" | "let go")) => {
                Some(("opened again", String::new()))
            }
            _ => None,
        }
    }

    /// From hand to hand.
    fn moved(&self) -> Said {
        let owner = self.member(self.now("owner_id"));
        if self.changed("owner_id") {
            let asked = self.member(self.old("offered_to"));
            return Some(match owner {
                None => ("gave back", String::new()),
                Some((id, _)) if asked.is_some_and(|it| it.0 == id) => {
                    let by = self.member(self.old("offered_by"));
                    ("said yes to", by.map(|it| format!("asked by {}", it.1)).unwrap_or_default())
                }
                _ if self.now("waiting_on").is_some() => return self.put(),
                _ => ("took", String::new()),
            });
        }
        if let Some((_, name)) = self.member(self.now("offered_to")) {
            return Some(("offered", format!("to {name}")));
        }
        if self.now("declined_by").is_some() {
            return Some((
                "said no to",
                self.now("declined_why").map(|it| format!("because: {it}"))?,
            ));
        }
        let (_, asked) = self.member(self.old("offered_to"))?;
        Some(("asked no more about", format!("whether {asked} takes it")))
    }

    /// Waiting, and put off.
    fn put(&self) -> Said {
        if let Some(on) = self.now("waiting_on") {
            let until = self.now("waiting_until").map(|it| format!(", until {it}"));
            return Some((
                "said of",
                format!("that it waits on {on}{}", until.unwrap_or_default()),
            ));
        }
        if self.now("waiting_until").is_some() {
            return Some((
                "said of",
                format!("that it waits until {}", self.now("waiting_until")?),
            ));
        }
        if self.changed("waiting_on") {
            return Some(("said of", "that it waits no longer".to_owned()));
        }
        if let Some(until) = self.now("off_until") {
            return Some(("put off", format!("until {until}{}", self.because("off_reason"))));
        }
        if self.changed("off_until") {
            return Some(("put back on the board", String::new()));
        }
        None
    }

    /// What has no good name as a field.
    fn said(&self) -> Said {
        let yes = |field: &str| self.now(field).as_deref() == Some("yes");
        if self.only(&["firm"]) {
            let says = if yes("firm") {
                "that it must be done by its day"
            } else {
                "that its day is only best"
            };
            return Some(("said of", says.to_owned()));
        }
        if self.only(&["from_afar"]) {
            let can = if yes("from_afar") { "can" } else { "can not" };
            return Some(("said of", format!("that it {can} be done from afar")));
        }
        if self.only(&["about_kind", "about_item"]) {
            return Some(("said anew what it is about:", String::new()));
        }
        if self.only(&["every", "unit", "counted_from"]) {
            let ended = self.changed("every") && self.now("every").is_none();
            let says =
                if ended { "that it does not come again" } else { "how often it comes again" };
            return Some(("said of", says.to_owned()));
        }
        None
    }
}
