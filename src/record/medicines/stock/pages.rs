//! Writing down a fill or a count, changing a fill, striking what was a mistake.

use super::super::schedule::store as schedule;
use super::super::{model::Medicine, store as medicines};
use super::{
    form::{Counted, Filled},
    model::{Class, Count, Fill},
    store,
};
use crate::base::{
    day,
    ids::{CountId, FillId, MedicineId},
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
#[template(path = "medicines/stock/fill.html")]
pub struct FillPage {
    page: Page,
    typed: Typed,
    medicine: Medicine,
    kept: Option<Fill>,
}

impl FillPage {
    fn classes(&self) -> impl Iterator<Item = &'static str> {
        Class::ALL.iter().map(|it| it.words())
    }
}

/// What is counted of this medicine: as it was before, as its steps say, as its form is.
async fn unit(view: &View<Clinical>, medicine: &Medicine) -> Result<String> {
    let fills = store::fills(view, Some(medicine.id)).await?;
    let steps = schedule::of_medicine(view, medicine.id).await?;
    let before = fills.last().map(|it| it.amount.unit().to_owned());
    let step = || steps.last().map(|it| it.unit.to_string());
    let form = || medicine.form.as_ref().map(|it| it.to_string());
    Ok(before.or_else(step).or_else(form).unwrap_or_else(|| "tablet".into()))
}

pub async fn filling(grant: Changing, At(id): At<MedicineId>, typed: Typed) -> Result<FillPage> {
    let view = grant.view().await?;
    let medicine = medicines::find(&view, id).await?;
    let typed = typed.with_day("filled_on", grant.today());
    let mut typed = typed.with("unit", unit(&view, &medicine).await?);
    let last = store::fills(&view, Some(id)).await?.pop();
    typed = typed.with("class", last.as_ref().map_or(Class::NoneKnown, |it| it.class));
    if let Some(pharmacy) = last.and_then(|it| it.pharmacy) {
        typed = typed.with("pharmacy", pharmacy);
    }
    let page = grant.page(format!("Fetched from the pharmacy: {}", medicine.name));
    Ok(FillPage { page, typed, medicine, kept: None })
}

pub async fn fill(grant: Changing, At(id): At<MedicineId>, form: Form<Filled>) -> Done {
    let entry = form.parse()?.entry;
    let mut write = grant.write().await?;
    medicines::find(&write, id).await?;
    let new = entry.of(id, (write.member(), write.at())).sound(grant.today())?;
    let others = store::fills(&write, Some(id)).await?;
    store::add_fill(&mut write, &new).await?;
    let mut line = format!("Written down: {} fetched", new.amount);
    if others.iter().any(|it| it.filled_on == new.filled_on) {
        let on = day::words(new.filled_on);
        line = format!("{line}. There is another fill of {on}: both count");
    }
    write.commit().await?.then(urls::stock(id)).saying(line)
}

pub async fn edit(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<FillId>,
    typed: Typed,
) -> Result<FillPage> {
    let view = grant.view().await?;
    let kept = found(&view, medicine, id).await?;
    let medicine = medicines::find(&view, medicine).await?;
    let page = grant.page(format!("Fetched from the pharmacy: {}", medicine.name));
    let typed = typed.over(&kept).with("unit", kept.amount.unit());
    let typed = typed.with("quantity", kept.amount.quantity());
    Ok(FillPage { page, typed, medicine, kept: Some(kept) })
}

async fn found(view: &View<Clinical>, medicine: MedicineId, id: FillId) -> Result<Fill> {
    let fill = store::fill(view, id).await?;
    let belongs = fill.medicine_id == medicine && !fill.struck;
    belongs.then_some(fill).ok_or(Error::NotFound)
}

pub async fn save(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<FillId>,
    form: Form<Filled>,
) -> Done {
    let Filled { entry, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = found(&write, medicine, id).await?.opened_at(version)?;
    let after = entry.over(&before).sound(grant.today())?;
    store::save_fill(&mut write, &before, &after).await?;
    let line = format!("Saved: {} fetched", after.amount);
    write.commit().await?.then(urls::stock(medicine)).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/stock/strike.html")]
pub struct StrikePage {
    page: Page,
    typed: Typed,
    medicine: Medicine,
    /// "60 tablets fetched on 3 March 2026"
    says: String,
    version: i64,
}

pub async fn striking(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<FillId>,
    typed: Typed,
) -> Result<StrikePage> {
    let view = grant.view().await?;
    let fill = found(&view, medicine, id).await?;
    let medicine = medicines::find(&view, medicine).await?;
    let says = format!("{} fetched on {}", fill.amount, day::words(fill.filled_on));
    let page = grant.page(format!("Entered by mistake: {}", medicine.name));
    Ok(StrikePage { page, typed, medicine, says, version: fill.version })
}

pub async fn strike(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<FillId>,
    form: Form<Press>,
) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = found(&write, medicine, id).await?.opened_at(press.version)?;
    store::save_fill(&mut write, &before, &before.struck()).await?;
    write.commit().await?.then(urls::stock(medicine)).saying("Struck; the history keeps it")
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/stock/count.html")]
pub struct CountPage {
    page: Page,
    typed: Typed,
    medicine: Medicine,
}

pub async fn counting(grant: Changing, At(id): At<MedicineId>, typed: Typed) -> Result<CountPage> {
    let view = grant.view().await?;
    let medicine = medicines::find(&view, id).await?;
    let typed = typed.with_day("counted_on", grant.today());
    let typed = typed.with("unit", unit(&view, &medicine).await?);
    let page = grant.page(format!("Counted in the house: {}", medicine.name));
    Ok(CountPage { page, typed, medicine })
}

pub async fn count(grant: Changing, At(id): At<MedicineId>, form: Form<Counted>) -> Done {
    let counted = form.parse()?;
    let mut write = grant.write().await?;
    medicines::find(&write, id).await?;
    let new = counted.of(id, (write.member(), write.at())).sound(grant.today())?;
    store::add_count(&mut write, &new).await?;
    let line = format!("Written down: {} counted", new.amount);
    write.commit().await?.then(urls::stock(id)).saying(line)
}

async fn found_count(view: &View<Clinical>, medicine: MedicineId, id: CountId) -> Result<Count> {
    let count = store::count(view, id).await?;
    let belongs = count.medicine_id == medicine && !count.struck;
    belongs.then_some(count).ok_or(Error::NotFound)
}

pub async fn striking_count(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<CountId>,
    typed: Typed,
) -> Result<StrikePage> {
    let view = grant.view().await?;
    let count = found_count(&view, medicine, id).await?;
    let medicine = medicines::find(&view, medicine).await?;
    let says = format!("{} counted on {}", count.amount, day::words(count.counted_on));
    let page = grant.page(format!("Entered by mistake: {}", medicine.name));
    Ok(StrikePage { page, typed, medicine, says, version: count.version })
}

pub async fn strike_count(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<CountId>,
    form: Form<Press>,
) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = found_count(&write, medicine, id).await?.opened_at(press.version)?;
    store::save_count(&mut write, &before, &before.struck()).await?;
    write.commit().await?.then(urls::stock(medicine)).saying("Struck; the history keeps it")
}
