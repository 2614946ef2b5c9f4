//! The comparison as it stands now: what is still open, computed anew each time, and what was
//! decided, as it was kept.

use super::{
    matching::{self, Differs, Ours, Pairs},
    model::{ListLine, SecondList},
    settled::{Class, SettledRow},
    settled_store, store,
};
use crate::{
    base::text::Line,
    platform::{auth::area::Clinical, db::View, error::Result},
    record::medicines::{model::Medicine, names::store as names, store as medicines},
};

/// A row that waits for a decision.
pub struct Open {
    pub line: Option<ListLine>,
    pub medicine: Option<Medicine>,
    pub class: Class,
    pub differs: Vec<Differs>,
    pub note: Option<String>,
}

/// What can be decided on a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    Accept,
    Keep,
    Ask,
    /// Two names, one ingredient: the row is laid anew.
    Pair,
}

impl Choice {
    pub const ALL: [Choice; 4] = [Choice::Accept, Choice::Keep, Choice::Ask, Choice::Pair];

    /// As a form sends it.
    pub fn sent(self) -> &'static str {
        match self {
            Choice::Accept => "accept",
            Choice::Keep => "keep",
            Choice::Ask => "ask",
            Choice::Pair => "pair",
        }
    }
}

impl Open {
    /// Its name on the page: one for each line, and for each medicine that stands alone.
    pub fn key(&self) -> String {
        match (&self.line, &self.medicine) {
            (Some(line), _) => format!("line-{}", line.id),
            (None, Some(medicine)) => format!("medicine-{}", medicine.id),
            (None, None) => String::new(),
        }
    }

    /// Its name with how each side stood: a press counts for exactly that.
    pub fn opened(&self) -> String {
        let line = self.line.as_ref().map_or(0, |it| it.version);
        let medicine = self.medicine.as_ref();
        let (id, version) = medicine.map_or((0, 0), |it| (it.id.into(), it.version));
        format!("{}/{line}/{id}/{version}/{:?}", self.key(), self.class)
    }

    /// What can be decided on it, with the words for each.
    pub fn offers(&self) -> Vec<(Choice, &'static str)> {
        let ask = (Choice::Ask, "Ask: it becomes a question");
        match (self.class, &self.medicine) {
            (Class::NotUnderstood, _) => {
                vec![(Choice::Keep, "Leave the record as it is"), ask]
            }
            (Class::Same, _) => vec![(Choice::Keep, "They agree"), ask],
            (Class::Changed, _) => vec![
                (Choice::Accept, "Accept theirs: change the label in the record"),
                (Choice::Keep, "Keep ours"),
                ask,
            ],
            (Class::New, _) => vec![
                (Choice::Accept, "Accept theirs: add it, as a prescription"),
                (Choice::Keep, "Leave it out of the record"),
                ask,
            ],
            (Class::Stopped, Some(_)) => vec![
                (Choice::Accept, "Accept theirs: mark it stopped in the record"),
                (Choice::Keep, "Keep ours"),
                ask,
            ],
            (Class::Stopped, None) => {
                vec![(Choice::Keep, "It is not among ours either"), ask]
            }
            (Class::NotMentioned, _) => vec![(Choice::Keep, "Keep ours"), ask],
            (Class::PossiblyTheSame, _) => vec![
                (Choice::Pair, "They are one ingredient"),
                (Choice::Accept, "They are two: add theirs beside ours"),
                (Choice::Keep, "Keep ours, and leave theirs out"),
                ask,
            ],
        }
    }

    /// The parts that differ, in one line.
    pub fn told(&self) -> Option<String> {
        let one = |it: &Differs| {
            format!("{}: {} in the record, {} on the list", it.what, it.ours, it.theirs)
        };
        let all: Vec<_> = self.differs.iter().map(one).collect();
        (!all.is_empty()).then(|| all.join("; "))
    }

    /// Our side in one line: "Furosemide 20 mg tablet; 1 tablet, in the morning".
    pub fn ours(&self) -> Option<String> {
        self.medicine.as_ref().map(|it| format!("{}; {}", it.title(), it.directions()))
    }
}

/// A decided row beside its line.
pub struct Settled {
    pub row: SettledRow,
    pub line: Option<ListLine>,
}

impl Settled {
    /// Whether it wrote a number into the record that is not the one on the list, as an earlier
    /// version of this program did where a number began with its point.
    pub fn is_misread(&self) -> bool {
        self.row.stands_written() && self.line.as_ref().is_some_and(ListLine::is_misread)
    }
}

pub struct Comparison {
    pub open: Vec<Open>,
    pub settled: Vec<Settled>,
}

impl Comparison {
    pub fn of_class(&self, class: &Class) -> Vec<&Open> {
        self.open.iter().filter(|it| it.class == *class).collect()
    }
}

pub async fn read(view: &View<Clinical>, list: &SecondList) -> Result<Comparison> {
    let lines = store::lines(view, list).await?;
    let mut decided = settled_store::rows(view, Some(list.id)).await?;
    decided.retain(|it| !it.taken_back);
    let open = match list.is_open() {
        true => open(view, &lines, &decided).await?,
        false => Vec::new(),
    };
    let of = |row: SettledRow| {
        let line = lines.iter().find(|it| Some(it.id) == row.line_id).cloned();
        Settled { line, row }
    };
    // A row about a line that is hidden from the reader goes with it.
    let shown = |it: &Settled| it.row.line_id.is_none() || it.line.is_some();
    let settled = decided.into_iter().map(of).filter(shown).collect();
    Ok(Comparison { open, settled })
}

/// What is not decided: the lines and medicines that no standing decision is about.
async fn open(
    view: &View<Clinical>,
    lines: &[ListLine],
    decided: &[SettledRow],
) -> Result<Vec<Open>> {
    let waits =
        |it: &&ListLine| !it.left_out && !decided.iter().any(|row| row.line_id == Some(it.id));
    let lines: Vec<_> = lines.iter().filter(waits).cloned().collect();
    let mut all = medicines::list(view).await?;
    all.retain(|it| !decided.iter().any(|row| row.medicine_id == Some(it.id)));
    let (current, over): (Vec<_>, Vec<_>) = all.into_iter().partition(Medicine::is_current);
    let pairs = settled_store::confirmed(view).await?;
    let said = current.iter().map(|it| &it.name).chain(lines.iter().map(|it| &it.name));
    let brands = names::brands(view, &said.map(Line::to_string).collect::<Vec<_>>()).await?;
    let pairs = pairs.with_listed(brands.iter().map(|(one, of)| (one.as_str(), of.as_str())));
    let theirs: Vec<_> = lines.iter().map(ListLine::understood).collect();
    let ours: Vec<_> = current.iter().map(Ours::of).collect();
    let rows = matching::lay(&theirs, &ours, &pairs).into_iter();
    Ok(rows
        .map(|row| {
            let line = row.line.map(|at| lines[at].clone());
            let alone = row.ours.is_none();
            let earlier = || earlier(line.as_ref().filter(|_| alone)?, &over, &pairs);
            let note = row.note.or_else(earlier);
            let medicine = row.ours.map(|at| current[at].clone());
            Open { line, medicine, class: row.class, differs: row.differs, note }
        })
        .collect())
}

/// "In the record it stands as stopped": for a line that nothing current belongs to.
fn earlier(line: &ListLine, over: &[Medicine], pairs: &Pairs) -> Option<String> {
    let it = over.iter().find(|it| pairs.same(it.name.as_str(), line.name.as_str()))?;
    let since = it.turned_on().map(|day| format!(" since {day}")).unwrap_or_default();
    Some(format!("The record has {} as {}{since}.", it.title(), it.status))
}
