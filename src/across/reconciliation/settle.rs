//! Settling rows: everything that was chosen is written in one go, or nothing is.
//!
//! A row counts only as it stood on the page. If its line, its medicine or its class has changed
//! since, nothing is written, and the page comes again as the two stand now.

use super::{
    compare::{self, Choice, Open},
    form::Decided,
    model::SecondList,
    settled::{Class, Decision, SameIngredient, SettledRow, Wrote},
    settled_store, store,
};
use crate::{
    base::{
        ids::{MedicineId, QuestionId, SameIngredientId, SecondListId, SettledRowId, TurnId},
        text::{Line, Note},
    },
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::{Done, Write},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors},
            path::At,
            urls,
        },
    },
    record::{
        medicines::{
            before::Before,
            model::{Label, Medicine, Supply},
            stock::{model::Pause, store as stock},
            store as medicines,
            turns::{
                model::{Said, Turn, What},
                store as turns,
            },
        },
        questions::{
            model::{Question, Wording},
            store as questions,
        },
    },
};
use time::Date;

pub async fn settle(
    grant: Grant<Change<Clinical>>,
    At(id): At<SecondListId>,
    form: Form<Decided>,
) -> Done {
    let decided = form.parse()?;
    let mut write = grant.write().await?;
    let list = store::find(&write, id).await?;
    let known = questions::askers(&write).await?;
    if decided.owner.is_some_and(|it| !known.iter().any(|(id, _)| *id == it)) {
        return Err(FormErrors::at("owner", "Choose who will ask.").into());
    }
    let comparison = compare::read(&write, &list).await?;
    let settling = Settling { list: &list, decided: &decided, today: grant.today() };
    for (opened, choice) in &decided.rows {
        let row = comparison.open.iter().find(|it| it.opened() == *opened).ok_or(Error::Stale)?;
        settling.row(&mut write, row, *choice).await?;
    }
    let line = done(&decided.rows);
    write.commit().await?.then(urls::second_list(id)).saying(line)
}

/// "3 rows are settled", "One pair of names is confirmed".
fn done(rows: &[(String, Choice)]) -> String {
    let pairs = rows.iter().filter(|(_, choice)| *choice == Choice::Pair).count();
    let settled = match rows.len() - pairs {
        0 => None,
        1 => Some("One row is settled".to_owned()),
        many => Some(format!("{many} rows are settled")),
    };
    let pairs = match pairs {
        0 => None,
        1 => Some("One pair of names is confirmed".to_owned()),
        many => Some(format!("{many} pairs of names are confirmed")),
    };
    settled.into_iter().chain(pairs).collect::<Vec<_>>().join(". ")
}

struct Settling<'a> {
    list: &'a SecondList,
    decided: &'a Decided,
    today: Date,
}

/// What one decision did to the record.
#[derive(Default)]
struct Effect {
    medicine: Option<MedicineId>,
    question: Option<QuestionId>,
    before: Option<String>,
    version: Option<i64>,
    turn: Option<TurnId>,
}

impl Settling<'_> {
    async fn row(&self, write: &mut Write<Clinical>, row: &Open, choice: Choice) -> Result<()> {
        if !row.offers().iter().any(|(it, _)| *it == choice) {
            return Err(FormErrors::at("rows", "Choose one of what stands beside the row.").into());
        }
        let (decision, wrote, effect) = match choice {
            Choice::Pair => return self.pair(write, row).await,
            Choice::Keep => (Decision::Kept, Wrote::Nothing, Effect::default()),
            Choice::Ask => (Decision::Asked, Wrote::Nothing, self.ask(write, row).await?),
            Choice::Accept => {
                let (wrote, effect) = self.accept(write, row).await?;
                (Decision::Accepted, wrote, effect)
            }
        };
        let settled = SettledRow {
            id: SettledRowId::default(),
            person_id: self.list.person_id,
            list_id: self.list.id,
            line_id: row.line.as_ref().map(|it| it.id),
            medicine_id: effect.medicine.or_else(|| row.medicine.as_ref().map(|it| it.id)),
            class: row.class,
            decision,
            wrote,
            ours: row.ours().map(Line::from),
            differs: row.told().map(Line::from),
            question_id: effect.question,
            turn_id: effect.turn,
            before: effect.before,
            after_version: effect.version,
            taken_back: false,
            version: 1,
        };
        settled_store::add_row(write, &settled).await.map(|_| ())
    }

    async fn accept(&self, write: &mut Write<Clinical>, row: &Open) -> Result<(Wrote, Effect)> {
        let source = Line::from(self.list.title());
        let (before, after, wrote) = match (row.class, &row.medicine) {
            (Class::Changed, Some(it)) => (it, relabelled(it, row, source), Wrote::Relabelled),
            (Class::Stopped, Some(it)) => {
                let stopped = it.stopped(self.list.dated_on, source, self.today);
                (it, stopped.map_err(|e| at_its_row(e, it))?, Wrote::Stopped)
            }
            _ => {
                let new = added(row, source).ok_or(Error::Stale)?;
                let new = Medicine::new(write.person(), new);
                let id = medicines::add(write, &new).await?;
                let turn = self.turn(write, &Medicine { id, ..new }, What::Started, 1).await?;
                let (medicine, version, turn) = (Some(id), Some(1), Some(turn));
                let effect = Effect { medicine, version, turn, ..Effect::default() };
                return Ok((Wrote::Added, effect));
            }
        };
        // A hold that ends in a stop: its days used nothing up of what is in the house.
        if let Some(pause) = Pause::between(before, &after, self.today) {
            stock::add_pause(write, &pause).await?;
        }
        medicines::save(write, before, &after).await?;
        let what = if wrote == Wrote::Stopped { What::Stopped } else { What::Changed };
        let turn = Some(self.turn(write, before, what, before.version + 1).await?);
        let effect = Effect {
            turn,
            medicine: Some(before.id),
            before: Some(Before::kept(before)),
            version: Some(before.version + 1),
            question: None,
        };
        Ok((wrote, effect))
    }

    /// Who said so: the list.
    async fn turn(
        &self,
        write: &mut Write<Clinical>,
        before: &Medicine,
        what: What,
        left_at: i64,
    ) -> Result<TurnId> {
        let reason = Line::from(format!("accepted from the {}", self.list.title()));
        let said = Said { on: self.list.dated_on, by: self.list.source.clone(), reason };
        let turn = Turn::new(before, what, said, (write.member(), write.at()));
        turns::add(write, &Turn { left_at, ..turn }).await
    }

    /// Puts both sides into words, for the one who will be asked.
    async fn ask(&self, write: &mut Write<Clinical>, row: &Open) -> Result<Effect> {
        let theirs = match &row.line {
            Some(line) => format!("says: \"{}\".", line.words),
            None => "does not mention it.".to_owned(),
        };
        let ours = match row.ours() {
            Some(ours) => format!("The family's record has: {ours}."),
            None => "The family's record does not have it.".to_owned(),
        };
        let of = row.medicine.as_ref().map(Medicine::title);
        let of = of.or_else(|| row.line.as_ref().map(|it| it.title())).unwrap_or_default();
        let words = format!("{of}: which holds?\nThe {} {theirs}\n{ours}", self.list.title());
        let about = row.medicine.as_ref().map(|it| ("medicine".to_owned(), it.id.into()));
        let for_whom = self.decided.for_whom;
        let wording = Wording { words: Note::from(words), for_whom, clinician: None, about };
        let by = (write.member(), write.at());
        let new = Question::new(write.person(), wording, by).owned(self.decided.owner);
        let question = Some(questions::add(write, &new).await?);
        Ok(Effect { question, ..Effect::default() })
    }

    /// Confirms that two names are of one ingredient. The row is laid anew by that, and waits.
    async fn pair(&self, write: &mut Write<Clinical>, row: &Open) -> Result<()> {
        let (Some(line), Some(medicine)) = (&row.line, &row.medicine) else {
            return Err(Error::Stale);
        };
        let new = SameIngredient {
            id: SameIngredientId::default(),
            person_id: write.person(),
            name: medicine.name.clone(),
            other_name: line.name.clone(),
            confirmed_by: write.member(),
            confirmed_at: write.at(),
            standing: true,
            version: 1,
        };
        settled_store::add_pair(write, &new).await.map(|_| ())
    }
}

/// A stop before the start has no field of its own on this page.
fn at_its_row(e: Error, medicine: &Medicine) -> Error {
    match e {
        Error::Invalid(errors) => {
            let says = errors.iter().map(|it| it.says.as_str()).collect::<Vec<_>>().join(" ");
            FormErrors::at("rows", format!("{}: {says}", medicine.title())).into()
        }
        other => other,
    }
}

/// The label with what the list says differently; what it leaves out stays as it is.
fn relabelled(medicine: &Medicine, row: &Open, source: Line) -> Medicine {
    let Some(line) = &row.line else { return medicine.clone() };
    let differs = |what: &str| row.differs.iter().any(|it| it.what == what);
    let mut label = medicine.label();
    label.source = Some(source);
    if differs("strength") && line.strength.is_some() {
        label.strength.clone_from(&line.strength);
    }
    if differs("form") {
        label.form.clone_from(&line.form);
    }
    if differs("how taken") {
        // The list's words say all of it: dose, time and route.
        label.dose.clone_from(&line.directions);
        (label.times, label.route) = (None, None);
    }
    medicine.relabelled(label)
}

/// A new medicine as the line has it, and nothing that it does not say.
fn added(row: &Open, source: Line) -> Option<Label> {
    let line = row.line.as_ref()?;
    let said = line.directions.as_ref().map(|it| it.as_str().to_lowercase()).unwrap_or_default();
    Some(Label {
        name: line.name.clone(),
        strength: line.strength.clone(),
        form: line.form.clone(),
        dose: line.directions.clone(),
        route: None,
        times: None,
        purpose: None,
        prescriber: None,
        started_on: None,
        as_needed: said.contains("as needed"),
        label_limit: None,
        supply: Supply::Prescription,
        source: Some(source),
    })
}
