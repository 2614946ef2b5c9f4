//! All that is due at one time of a day: entered by one press, or by the form that names what was
//! not given and why.
//!
//! Whoever comes second to a dose is told who entered it and when; nothing is doubled. Where she
//! would have said otherwise, nothing of her form is kept before she has read that.

use super::super::schedule::times::When;
use super::{
    day::Dose,
    form::{Answer, Doses, LATER},
    ground::Ground,
    model::{Given, Outcome, Point, Said, whom},
    store,
};
use crate::base::{
    day as calendar,
    ids::{GivenId, MemberId, PathId},
};
use crate::platform::{
    audit::Names,
    auth::{
        area::Log,
        grant::{Change, Grant},
    },
    db::{Done, View},
    error::{Error, Result},
    web::{
        form::{Choice, Form, FormErrors},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use std::str::FromStr;
use time::Date;

type Changing = Grant<Change<Log>>;

/// A day in an address.
pub struct OnDay(Date);

impl PathId for OnDay {
    const PARAM: &'static str = "day";
}

impl FromStr for OnDay {
    type Err = Error;
    fn from_str(typed: &str) -> Result<OnDay> {
        calendar::iso(typed).map(OnDay).ok_or(Error::NotFound)
    }
}

/// A time of the schedule in an address.
pub struct AtTime(When);

impl PathId for AtTime {
    const PARAM: &'static str = "time";
}

impl FromStr for AtTime {
    type Err = Error;
    fn from_str(typed: &str) -> Result<AtTime> {
        When::of(typed).map(AtTime).ok_or(Error::NotFound)
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/given/slot.html")]
pub struct SlotPage {
    page: Page,
    typed: Typed,
    date: Date,
    words: String,
    open: Vec<Dose>,
    entered: Vec<Entered>,
}

/// A dose that is entered already.
struct Entered {
    id: GivenId,
    title: String,
    amount: String,
    state: String,
}

impl SlotPage {
    fn outcomes(&self) -> Vec<&'static str> {
        Outcome::ALL.iter().map(|it| it.words()).chain([LATER]).collect()
    }
}

async fn doses(view: &View<Log>, (date, when): (Date, When)) -> Result<Vec<Dose>> {
    let ground = Ground::read(view).await?;
    let entries = store::list(view, None, (date, date)).await?;
    let slots = ground.slots(&entries, date);
    let slot = slots.into_iter().find(|it| it.when == when).ok_or(Error::NotFound)?;
    Ok(slot.doses)
}

pub async fn entering(
    grant: Changing,
    At(OnDay(date)): At<OnDay>,
    At(AtTime(when)): At<AtTime>,
    typed: Typed,
) -> Result<SlotPage> {
    let view = grant.view().await?;
    let (all, names) = (doses(&view, (date, when)).await?, view.names().await?);
    let entered = all.iter().filter_map(|it| {
        let entry = it.entry.as_ref()?;
        let (amount, state) = (entry.counted(), entry.state(&names, grant.zone()));
        Some(Entered { id: entry.id, title: it.title.clone(), amount, state })
    });
    let entered = entered.collect();
    let open = all.into_iter().filter(|it| it.entry.is_none()).collect();
    let page = grant.page(format!("What was given: {}", when.title()));
    let typed = typed.with("by", names.of(grant.member()));
    Ok(SlotPage { page, typed, date, words: calendar::short_words(date), open, entered })
}

pub async fn enter(
    grant: Changing,
    At(OnDay(date)): At<OnDay>,
    At(AtTime(when)): At<AtTime>,
    form: Form<Doses>,
) -> Done {
    let sent = form.parse()?;
    FormErrors::unless_come("doses", date, grant.today())?;
    let mut write = grant.write().await?;
    let all = doses(&write, (date, when)).await?;
    let (names, members) = (write.names().await?, write.members().await?);
    let by = whom(sent.by, write.member(), &members);
    let entered = (write.member(), write.at());
    let (mut kept, mut before) = (0, Vec::new());
    for answer in sent.each {
        let dose = all.iter().find(|it| it.medicine == answer.medicine).ok_or(Error::NotFound)?;
        if let Some(entry) = &dose.entry {
            before.push(second(&answer, (dose, entry), &grant, &names)?);
            continue;
        }
        let Some(outcome) = answer.outcome else { continue };
        let said = said(answer, (dose, outcome), by.clone())?;
        let of = (write.person(), dose.medicine);
        let new = Given::new(of, Point::Slot(date, when), (said, dose.unit.clone()), entered);
        store::add(&mut write, &new).await?;
        kept += 1;
    }
    let line = line(kept, &before, entered.0, &names);
    write.commit().await?.then(urls::given_on(date)).saying(line)
}

fn said(
    answer: Answer,
    (dose, outcome): (&Dose, Outcome),
    by: (Option<MemberId>, crate::base::text::Line),
) -> Result<Said> {
    let amount = answer.amount.unwrap_or(dose.amount);
    let said = Said { amount, outcome, note: answer.note, by };
    // Each dose has its fields; the words say which one it is about.
    said.sound().map_err(|e| match e {
        Error::Invalid(errors) => {
            let says = errors.iter().next().map_or(String::new(), |it| it.says.clone());
            FormErrors::at("doses", format!("{}: {says}", dose.title)).into()
        }
        other => other,
    })
}

/// What the second reads of a dose that the first entered; where she says otherwise, it is asked.
fn second(
    answer: &Answer,
    (dose, entry): (&Dose, &Given),
    grant: &Changing,
    names: &Names,
) -> Result<String> {
    let state =
        format!("{}, {}: {}", dose.title, entry.counted(), entry.state(names, grant.zone()));
    let same = answer.outcome.is_none_or(|it| it == entry.outcome)
        && answer.amount.is_none_or(|it| it == entry.amount);
    match (same, answer.outcome) {
        (false, Some(outcome)) => {
            let says = format!(
                "Entered meanwhile, and not as you say ({}): {state}. If that is wrong, put that entry right.",
                outcome.words()
            );
            Err(FormErrors::at("doses", says).into())
        }
        _ => Ok(state),
    }
}

fn line(kept: usize, before: &[String], by: MemberId, names: &Names) -> String {
    let entered = match kept {
        0 => "Nothing new was entered".to_owned(),
        1 => format!("1 dose entered by {}", names.of(by)),
        many => format!("{many} doses entered by {}", names.of(by)),
    };
    match before.is_empty() {
        true => entered,
        false => format!("{entered}. Entered before: {}", before.join("; ")),
    }
}
