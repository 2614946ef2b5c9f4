//! Lays the lines of a second list beside the medicines of the record.
//!
//! A line and a medicine belong together where their names are the same (or were confirmed to be
//! of one ingredient) and nothing else could be meant. Everything less is only proposed, with the
//! reason, and a person decides. What the list does not mention is said to be not mentioned:
//! silence is no stop.

#[cfg(test)]
mod tests;

use super::{lines::Understood, settled::Class, strength as spell};
use crate::record::medicines::model::Medicine;

/// A medicine of the record, as far as a list can be compared with it.
#[derive(Clone, Debug, Default)]
pub struct Ours {
    pub name: String,
    pub strength: Option<String>,
    pub form: Option<String>,
    /// How it is taken, in each order in which a list may say it.
    pub said: Vec<String>,
    pub on_hold: bool,
}

impl Ours {
    pub fn of(medicine: &Medicine) -> Ours {
        let text =
            |it: &Option<crate::base::text::Line>| it.as_ref().map(|it| it.as_str().to_owned());
        let (dose, times, route) =
            (text(&medicine.dose), text(&medicine.times), text(&medicine.route));
        let orders = [[&dose, &times, &route], [&dose, &route, &times], [&dose, &times, &None]];
        let joined = |parts: [&Option<String>; 3]| {
            parts.into_iter().flatten().map(String::as_str).collect::<Vec<_>>().join(", ")
        };
        let mut said: Vec<String> = orders.map(joined).into();
        said.retain(|it| !it.is_empty());
        Ours {
            name: medicine.name.to_string(),
            strength: text(&medicine.strength),
            form: text(&medicine.form),
            said,
            on_hold: medicine.is_on_hold(),
        }
    }
}

/// One row: a line, a medicine, or both.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    pub line: Option<usize>,
    pub ours: Option<usize>,
    pub class: Class,
    pub differs: Vec<Differs>,
    /// Why it is proposed, or what else should be known.
    pub note: Option<String>,
}

/// A part in which the two differ.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Differs {
    pub what: &'static str,
    pub ours: String,
    pub theirs: String,
}

/// Names that were confirmed to be of one ingredient.
#[derive(Clone, Debug, Default)]
pub struct Pairs {
    confirmed: Vec<(String, String)>,
    /// A brand with what is sold under it, from the list of names: only ever proposed.
    listed: Vec<(String, String)>,
}

impl Pairs {
    pub fn of<'a>(pairs: impl IntoIterator<Item = (&'a str, &'a str)>) -> Pairs {
        Pairs { confirmed: spelled(pairs), listed: Vec::new() }
    }

    /// With what the list of names says of brands.
    pub fn with_listed<'a>(self, listed: impl IntoIterator<Item = (&'a str, &'a str)>) -> Pairs {
        Pairs { listed: spelled(listed), ..self }
    }

    /// Whether the two names are the same, or were said to be.
    pub fn same(&self, one: &str, other: &str) -> bool {
        spell::name(one) == spell::name(other) || among(&self.confirmed, one, other)
    }

    /// Whether the list of names has the one in the other.
    fn listed(&self, one: &str, other: &str) -> bool {
        among(&self.listed, one, other)
    }
}

fn spelled<'a>(pairs: impl IntoIterator<Item = (&'a str, &'a str)>) -> Vec<(String, String)> {
    pairs.into_iter().map(|(one, other)| (spell::name(one), spell::name(other))).collect()
}

fn among(pairs: &[(String, String)], one: &str, other: &str) -> bool {
    let (one, other) = (spell::name(one), spell::name(other));
    pairs.iter().any(|(a, b)| (*a == one && *b == other) || (*a == other && *b == one))
}

/// What must agree for two to belong together without a question, the strictest first.
#[derive(Clone, Copy)]
enum Agree {
    Everything,
    StrengthAndForm,
    Strength,
    Name,
}

/// Every line and every medicine, each in one row: the lines in their order, then what the list
/// does not mention.
pub fn lay(theirs: &[Understood], ours: &[Ours], pairs: &Pairs) -> Vec<Row> {
    let mut laid =
        Laying { theirs, ours, pairs, of: vec![None; theirs.len()], why: vec![None; theirs.len()] };
    for agree in [Agree::Everything, Agree::StrengthAndForm, Agree::Strength, Agree::Name] {
        laid.belong_together(agree);
    }
    laid.proposed();
    let mut rows: Vec<Row> = (0..theirs.len()).map(|line| laid.row(line)).collect();
    let silent = |at: &usize| !laid.of.contains(&Some(*at));
    rows.extend((0..ours.len()).filter(silent).map(|at| Row {
        line: None,
        ours: Some(at),
        class: Class::NotMentioned,
        differs: Vec::new(),
        note: None,
    }));
    rows
}

/// Whether a line may mean a medicine.
type MayBe = fn(&Laying, usize, usize) -> bool;

struct Laying<'a> {
    theirs: &'a [Understood],
    ours: &'a [Ours],
    pairs: &'a Pairs,
    /// The medicine that each line was laid beside.
    of: Vec<Option<usize>>,
    /// Why it is only proposed.
    why: Vec<Option<&'static str>>,
}

impl Laying<'_> {
    fn free(&self) -> Vec<usize> {
        (0..self.ours.len()).filter(|at| !self.of.contains(&Some(*at))).collect()
    }

    fn unlaid(&self) -> Vec<usize> {
        (0..self.theirs.len()).filter(|line| self.of[*line].is_none()).collect()
    }

    /// Lays together what agrees, where each is the only one that the other could mean.
    fn belong_together(&mut self, agree: Agree) {
        let (lines, free) = (self.unlaid(), self.free());
        for line in &lines {
            let could: Vec<_> = free.iter().filter(|at| self.agrees(*line, **at, agree)).collect();
            let [only] = could[..] else {
                // Two that agree in everything are the same twice: either will do.
                if let (Agree::Everything, Some(first)) =
                    (agree, could.iter().find(|it| !self.of.contains(&Some(***it))))
                {
                    self.of[*line] = Some(**first);
                }
                continue;
            };
            let others = lines.iter().filter(|it| self.agrees(**it, *only, agree)).count();
            if others == 1 && !self.of.contains(&Some(*only)) {
                self.of[*line] = Some(*only);
            }
        }
    }

    fn agrees(&self, line: usize, at: usize, agree: Agree) -> bool {
        let (theirs, ours) = (&self.theirs[line], &self.ours[at]);
        let strength = || same(&theirs.strength, &ours.strength, spell::strength);
        let form = || same(&theirs.form, &ours.form, spell::form);
        self.pairs.same(&theirs.name, &ours.name)
            && match agree {
                Agree::Everything => strength() && form() && says(theirs, ours),
                Agree::StrengthAndForm => strength() && form(),
                Agree::Strength => strength(),
                Agree::Name => true,
            }
    }

    /// Proposes, for what is left, a medicine that may be of the same ingredient.
    fn proposed(&mut self) {
        let reasons: [(&'static str, MayBe); 5] = [
            ("There is more than one of this name.", |it, line, at| {
                it.agrees(line, at, Agree::Name)
            }),
            ("One name contains the other.", |it, line, at| {
                contains(&it.theirs[line].name, &it.ours[at].name)
            }),
            ("The list of names has the one in the other.", |it, line, at| {
                it.pairs.listed(&it.theirs[line].name, &it.ours[at].name)
            }),
            ("The names begin with the same word.", |it, line, at| {
                first_word(&it.theirs[line].name) == first_word(&it.ours[at].name)
            }),
            ("Strength, form and how it is taken are the same.", |it, line, at| {
                all_but_name(&it.theirs[line], &it.ours[at])
            }),
        ];
        for (why, may_be) in reasons {
            for line in self.unlaid() {
                let found = self.free().into_iter().find(|at| may_be(self, line, *at));
                if found.is_some() {
                    self.of[line] = found;
                    self.why[line] = Some(why);
                }
            }
        }
    }

    fn row(&self, line: usize) -> Row {
        let theirs = &self.theirs[line];
        let ours = self.of[line].map(|at| &self.ours[at]);
        let compared = ours.filter(|_| theirs.unclear.is_none());
        let differs = compared.map(|it| differs(theirs, it)).unwrap_or_default();
        let class = match (ours, self.why[line]) {
            _ if theirs.unclear.is_some() => Class::NotUnderstood,
            (Some(_), Some(_)) => Class::PossiblyTheSame,
            _ if theirs.stopped => Class::Stopped,
            (None, _) => Class::New,
            _ if differs.is_empty() => Class::Same,
            _ => Class::Changed,
        };
        let twice = || {
            let same = |it: &Understood| self.pairs.same(&it.name, &theirs.name);
            self.theirs.iter().filter(|it| same(it)).count() > 1
        };
        let note = theirs.unclear.clone();
        let known = self.why[line]
            .or_else(|| ours.filter(|it| it.on_hold).map(|_| "It is on hold in the record."))
            .or_else(|| twice().then_some("The list names it more than once."));
        let note = note.or_else(|| known.map(str::to_owned));
        Row { line: Some(line), ours: self.of[line], class, differs, note }
    }
}

/// Both said, and the same in one spelling; or said by neither.
fn same(one: &Option<String>, other: &Option<String>, spelled: fn(&str) -> String) -> bool {
    match (one, other) {
        (Some(one), Some(other)) => spelled(one) == spelled(other),
        (None, None) => true,
        _ => false,
    }
}

/// Whether the list says how it is taken as the record does, in one of its orders.
fn says(theirs: &Understood, ours: &Ours) -> bool {
    let Some(said) = &theirs.directions else { return ours.said.is_empty() };
    let said = spell::directions(said);
    ours.said.iter().any(|it| spell::directions(it) == said)
}

/// Everything but the name is said by both, and is the same.
fn all_but_name(theirs: &Understood, ours: &Ours) -> bool {
    theirs.strength.is_some()
        && theirs.form.is_some()
        && theirs.directions.is_some()
        && same(&theirs.strength, &ours.strength, spell::strength)
        && same(&theirs.form, &ours.form, spell::form)
        && says(theirs, ours)
}

fn first_word(name: &str) -> String {
    spell::name(name).split(' ').next().unwrap_or_default().to_owned()
}

/// Whether one name stands in the other, word by word.
fn contains(one: &str, other: &str) -> bool {
    let words = |it: &str| {
        let spelled = spell::name(it).replace(['(', ')', '/', ','], " ");
        format!(" {} ", spelled.split_whitespace().collect::<Vec<_>>().join(" "))
    };
    let (one, other) = (words(one), words(other));
    one.trim() != "" && other.trim() != "" && (one.contains(&other) || other.contains(&one))
}

/// What both speak of and say differently. A strength that only one of them says is a difference;
/// a form or a way of taking that the list leaves out is not.
fn differs(theirs: &Understood, ours: &Ours) -> Vec<Differs> {
    let shown = |it: &Option<String>, none: &str| it.clone().unwrap_or_else(|| none.to_owned());
    let differs = |what, ours: &Option<String>, theirs: &Option<String>| Differs {
        what,
        ours: shown(ours, "not written down"),
        theirs: shown(theirs, "not said"),
    };
    let mut all = Vec::new();
    if !same(&theirs.strength, &ours.strength, spell::strength) {
        all.push(differs("strength", &ours.strength, &theirs.strength));
    }
    if theirs.form.is_some() && !same(&theirs.form, &ours.form, spell::form) {
        all.push(differs("form", &ours.form, &theirs.form));
    }
    if theirs.directions.is_some() && !says(theirs, ours) {
        all.push(differs("how taken", &ours.said.first().cloned(), &theirs.directions));
    }
    all
}
