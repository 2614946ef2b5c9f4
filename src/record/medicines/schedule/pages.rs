//! Adding a step to a medicine's schedule, changing it, striking it.

use super::super::{model::Medicine, store as medicines};
use super::{
    form::Typed as Entered,
    model::{Rhythm, Step},
    repeat::WEEK,
    store,
    times::When,
};
use crate::base::{
    ids::{MedicineId, StepId},
    quantity::Quantity,
};
use crate::platform::{
    auth::{
        area::Clinical,
        grant::{Change, Grant},
    },
    db::{Done, View},
    error::{Error, Result},
    web::{
        form::{Choice, Form, Press},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "medicines/step.html")]
pub struct StepPage {
    page: Page,
    typed: Typed,
    medicine: Medicine,
    kept: Option<Step>,
}

impl StepPage {
    fn rhythms(&self) -> impl Iterator<Item = &'static str> {
        Rhythm::ALL.iter().map(|it| it.words())
    }

    /// The days of the week: name in the form, words, whether the kept step has it.
    fn week(&self) -> Vec<(&'static str, &'static str, bool)> {
        let has = |day| self.kept.as_ref().is_some_and(|it| it.weekdays.has(day));
        WEEK.iter().map(|(day, short, long)| (*short, *long, has(*day))).collect()
    }

    /// The four standard times: the name of the field, the hours it stands for.
    fn standard(&self) -> impl Iterator<Item = (&'static str, &'static str)> {
        When::STANDARD.into_iter().map(|(when, name)| (name, when.window().unwrap_or_default()))
    }
}

pub async fn blank(grant: Changing, At(id): At<MedicineId>, typed: Typed) -> Result<StepPage> {
    let view = grant.view().await?;
    let medicine = medicines::find(&view, id).await?;
    let last = store::of_medicine(&view, id).await?.into_iter().rfind(|it| it.until_on.is_some());
    let from = last.and_then(|it| it.until_on?.next_day()).unwrap_or(grant.today());
    let unit = medicine.form.as_ref().map_or("tablet", |it| it.as_str()).to_owned();
    let typed = typed.with_day("from_on", from).with("unit", unit);
    let rhythm = if medicine.as_needed { Rhythm::AsNeeded } else { Rhythm::Days };
    let typed = typed.with("rhythm", rhythm.words());
    let page = grant.page(format!("When and how much: {}", medicine.name));
    Ok(StepPage { page, typed, medicine, kept: None })
}

pub async fn add(grant: Changing, At(id): At<MedicineId>, form: Form<Entered>) -> Done {
    let entry = form.parse()?.step;
    let mut write = grant.write().await?;
    let medicine = medicines::find(&write, id).await?;
    let others = store::of_medicine(&write, id).await?;
    let new = entry.of(id, None).sound()?.beside(&others)?;
    store::add(&mut write, &new).await?;
    let line = format!("{}: {}", medicine.name, new.directions());
    write.commit().await?.then(urls::medicine(id)).saying(line)
}

pub async fn edit(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<StepId>,
    typed: Typed,
) -> Result<StepPage> {
    let view = grant.view().await?;
    let (medicine, kept) =
        (medicines::find(&view, medicine).await?, found(&view, medicine, id).await?);
    let page = grant.page(format!("When and how much: {}", medicine.name));
    Ok(StepPage { page, typed: filled(typed.over(&kept), &kept), medicine, kept: Some(kept) })
}

/// What a step is kept as, in the fields it is typed in.
fn filled(typed: Typed, kept: &Step) -> Typed {
    let shown = |it: Option<Quantity>| it.map_or_else(String::new, |it| it.to_string());
    let mut typed = typed
        .with("rhythm", kept.rhythm.words())
        .with("least_hours", shown(kept.least_hours))
        .with("most_a_day", shown(kept.most_a_day))
        .with("clock", kept.times.clock_typed());
    for (when, field) in When::STANDARD {
        let amount = kept.times.each().find(|(it, _)| *it == when).map(|(_, amount)| amount);
        let field = if kept.is_as_needed() { "amount" } else { field };
        if let Some(amount) = amount {
            typed = typed.with(field, amount);
        }
    }
    typed
}

async fn found(view: &View<Clinical>, medicine: MedicineId, id: StepId) -> Result<Step> {
    let step = store::find(view, id).await?;
    match step.medicine_id == medicine && !step.struck {
        true => Ok(step),
        false => Err(Error::NotFound),
    }
}

pub async fn save(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<StepId>,
    form: Form<Entered>,
) -> Done {
    let Entered { step, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = found(&write, medicine, id).await?.opened_at(version)?;
    let others = store::of_medicine(&write, medicine).await?;
    let after = step.of(medicine, Some(&before)).sound()?.beside(&others)?;
    store::save(&mut write, &before, &after).await?;
    let line = format!("Saved: {}", after.directions());
    write.commit().await?.then(urls::medicine(medicine)).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/step_strike.html")]
pub struct StrikePage {
    page: Page,
    typed: Typed,
    medicine: Medicine,
    step: Step,
}

pub async fn striking(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<StepId>,
    typed: Typed,
) -> Result<StrikePage> {
    let view = grant.view().await?;
    let (medicine, step) =
        (medicines::find(&view, medicine).await?, found(&view, medicine, id).await?);
    let page = grant.page(format!("Entered by mistake: {}", medicine.name));
    Ok(StrikePage { page, typed, medicine, step })
}

pub async fn strike(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<StepId>,
    form: Form<Press>,
) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = found(&write, medicine, id).await?.opened_at(press.version)?;
    store::save(&mut write, &before, &before.struck()).await?;
    write.commit().await?.then(urls::medicine(medicine)).saying("Struck; the history keeps it")
}
