//! What the words of a paper propose, joined from the rules: which contact, which person, what was filed
//! before. For one reader: only papers and contacts that she sees have a part in it.

use crate::{
    base::{
        day,
        ids::{ContactId, PaperId},
    },
    platform::{
        auth::{
            area::{Essentials, Papers},
            shared::Shared,
        },
        db::View,
        error::Result,
        web::typed::Typed,
    },
    record::{
        contacts::{model::Contact, store as contacts},
        papers::{
            model::Paper,
            proposals::{
                dates::{self, Dated, Meant},
                kinds::{Kinds, Proposed},
                person::{self, About},
                sender::{self, Known, Sender},
            },
            store,
            text::{PaperText, store as texts},
        },
        people::{model::Person, store as people},
    },
};
use std::collections::HashMap;
use time::Date;

/// What one line of a proposal says, and why.
#[derive(Clone, Debug)]
pub struct Line {
    pub label: &'static str,
    pub says: String,
    pub why: String,
    /// Someone should look twice.
    pub doubtful: bool,
}

#[derive(Clone, Debug, Default)]
pub struct Proposal {
    pub kind: Option<Proposed>,
    pub dated: Option<Dated>,
    pub from: Option<Sender<ContactId>>,
    pub about: Option<(About, String)>,
}

/// All that proposals are made from, read once for a page.
pub struct Proposer {
    kinds: Kinds,
    known: Vec<Known<ContactId>>,
    person: Option<Person>,
    /// The persons of her other records.
    others: Vec<String>,
    today: Date,
    texts: HashMap<PaperId, PaperText>,
}

impl Proposer {
    /// `others` are the reader's other records: asked for before a view is open, for it takes a look of
    /// its own.
    pub async fn read(view: &View<Papers>, others: Vec<Shared>, today: Date) -> Result<Proposer> {
        let others = others.into_iter().map(|it| it.name).collect();
        let (waiting, filed) = (store::waiting(view).await?, store::filed(view).await?);
        let texts = texts::of(view, &[waiting, filed.clone()].concat()).await?;
        let mut kinds = Kinds::starting();
        for paper in &filed {
            if let (Some(kind), Some(text)) = (paper.kind, texts.get(&paper.id)) {
                kinds.confirm(kind, &text.words);
            }
        }
        let (known, person) = match view.area::<Essentials>() {
            Some(view) => {
                let all = contacts::list(&view).await?.into_iter();
                (all.map(known).collect(), Some(people::find(&view).await?))
            }
            None => (Vec::new(), None),
        };
        Ok(Proposer { kinds, known, person, others, today, texts })
    }

    pub fn text(&self, paper: PaperId) -> Option<&PaperText> {
        self.texts.get(&paper)
    }

    /// Of a paper that was read and has words; nothing of one that still waits to be read.
    pub fn of(&self, paper: &Paper) -> Option<Proposal> {
        let text = self.text(paper.id).filter(|it| it.is_whole() && !it.is_empty())?;
        let person = self.person.as_ref();
        let name = person.map(|it| it.name.to_string());
        let names: Vec<String> = name.iter().chain(&self.others).cloned().collect();
        let about = name.map(|name| {
            let first = name.split_whitespace().next().unwrap_or(&name).to_owned();
            (person::about(&name, &self.others, &text.words), first)
        });
        Some(Proposal {
            kind: self.kinds.propose(&text.words),
            dated: dates::own(&text.words, person.map(|it| it.born), self.today),
            from: sender::of(&self.known, &names, &text.words),
            about,
        })
    }
}

fn known(it: Contact) -> Known<ContactId> {
    let phones = [&it.phone, &it.other_phone].into_iter().flatten().map(ToString::to_string);
    Known {
        id: it.id,
        phones: phones.collect(),
        organization: it.organization.as_ref().map(ToString::to_string),
        name: it.name.to_string(),
    }
}

impl Proposal {
    /// Each thing that is proposed, or that could not be, in the order of the form.
    pub fn lines(&self) -> Vec<Line> {
        let line = |label, says: String, why: String| Line { label, says, why, doubtful: false };
        let mut lines = vec![match &self.kind {
            Some(it) => Line { doubtful: it.or.is_some(), ..line("kind", kinds(it), it.why()) },
            None => line("kind", "not known".into(), "too few of its words are known".into()),
        }];
        lines.push(match &self.dated {
            Some(it) => dated(it),
            None => line("date", "not found".into(), "no date on it is the paper’s own".into()),
        });
        lines.push(match &self.from {
            Some(Sender::Contact { name, why, .. }) => line("from", name.clone(), why.clone()),
            Some(Sender::Name { name, why }) => {
                line("from", name.clone(), format!("{why}, and nobody among the contacts"))
            }
            Some(Sender::Several(names)) => {
                let why = "each of them is named on it: a person says which".into();
                Line { doubtful: true, ..line("from", names.join(" or "), why) }
            }
            None => line("from", "not found".into(), "no sender was made out".into()),
        });
        lines.extend(self.about.as_ref().map(|(about, name)| Line {
            doubtful: about.is_doubtful(),
            ..line("about", about.says(name), String::new())
        }));
        lines
    }

    /// "Bill or receipt from Birch Lane Electric"
    pub fn title(&self) -> Option<String> {
        let kind = self.kind.as_ref()?.kind.to_string();
        let mut letters = kind.chars();
        let kind: String = letters.next()?.to_uppercase().chain(letters).collect();
        Some(match &self.from {
            Some(Sender::Contact { name, .. } | Sender::Name { name, .. }) => {
                format!("{kind} from {name}")
            }
            _ => kind,
        })
    }

    /// What stands in the fields of the form: nothing that can be read in two ways.
    pub fn fields(&self) -> Vec<(&'static str, String)> {
        let mut fields = Vec::new();
        if let (Some(kind), Some(title)) = (&self.kind, self.title()) {
            fields.extend([("kind", kind.kind.to_string()), ("title", title)]);
        }
        if let Some(Dated { meant: Meant::Day(on), .. }) = self.dated {
            fields.push(("dated_on", day::words(on)));
        }
        match &self.from {
            Some(Sender::Contact { id, .. }) => fields.push(("contact_id", id.to_string())),
            Some(Sender::Name { name, .. }) => fields.push(("from_name", name.clone())),
            _ => {}
        }
        fields
    }

    pub fn over(&self, typed: Typed) -> Typed {
        self.fields().into_iter().fold(typed, |typed, (name, value)| typed.with(name, value))
    }

    /// Whether one press can say yes to all of it: a kind, and nothing to look at twice.
    pub fn is_plain(&self) -> bool {
        self.kind.is_some() && self.lines().iter().all(|it| !it.doubtful)
    }
}

fn kinds(it: &Proposed) -> String {
    match it.or {
        Some(or) => format!("{}, or {or}", it.kind),
        None => it.kind.to_string(),
    }
}

fn dated(it: &Dated) -> Line {
    let others = match it.others {
        0 => String::new(),
        1 => "; another date stands on it too".into(),
        many => format!("; {many} other dates stand on it too"),
    };
    let (says, why, doubtful) = match it.meant {
        Meant::Day(on) => {
            let written = format!(", written {}", it.written);
            (day::words(on), format!("{}{written}{others}", it.why), false)
        }
        Meant::Either(a, b) => {
            let why = format!("{} can be read both ways: a person says which{others}", it.written);
            (format!("{} or {}", day::words(a), day::words(b)), why, true)
        }
    };
    Line { label: "date", says, why, doubtful }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::papers::kind::Kind;
    use time::macros::date;

    fn proposal() -> Proposal {
        let kind =
            Proposed { kind: Kind::Bill, or: None, words: vec!["amount".into()], confirmed: 3 };
        let why = "it stands behind “Date”".to_owned();
        let dated = Dated {
            meant: Meant::Day(date!(2026 - 10 - 02)),
            written: "10/2/2026".into(),
            why,
            others: 1,
        };
        let from = Sender::Contact {
            id: 4.into(),
            name: "Birch Lane Electric".into(),
            why: "its number".into(),
        };
        let about = Some((About::Her, "Ottoline".to_owned()));
        Proposal { kind: Some(kind), dated: Some(dated), from: Some(from), about }
    }

    #[test]
    fn a_plain_one_fills_the_form_and_says_why() {
        let it = proposal();
        assert!(it.is_plain());
        let fields = it.fields();
        let title = "Bill or receipt from Birch Lane Electric".to_owned();
        assert_eq!(fields[..2], [("kind", "bill or receipt".to_owned()), ("title", title)]);
        assert_eq!(
            fields[2..],
            [("dated_on", "2 October 2026".to_owned()), ("contact_id", "4".to_owned())]
        );
        let says: Vec<String> = it.lines().into_iter().map(|it| it.why).collect();
        assert_eq!(
            says[1],
            "it stands behind “Date”, written 10/2/2026; another date stands on it too"
        );
    }

    #[test]
    fn what_can_be_read_in_two_ways_is_left_to_a_person() {
        let either = Meant::Either(date!(2026 - 03 - 04), date!(2026 - 04 - 03));
        let dated =
            proposal().dated.map(|it| Dated { meant: either, written: "3/4/2026".into(), ..it });
        let it = Proposal { dated, ..proposal() };
        assert!(!it.is_plain() && it.fields().iter().all(|it| it.0 != "dated_on"));
        assert_eq!(it.lines()[1].says, "4 March 2026 or 3 April 2026");
        let several = Sender::Several(vec!["A".into(), "B".into()]);
        let it = Proposal { from: Some(several), ..proposal() };
        assert!(!it.is_plain() && it.title().as_deref() == Some("Bill or receipt"));
        let emeric = (About::Another("Emeric Varga".into()), "Ottoline".to_owned());
        assert!(!Proposal { about: Some(emeric), ..proposal() }.is_plain());
        assert!(!Proposal::default().is_plain() && Proposal::default().fields().is_empty());
    }
}
