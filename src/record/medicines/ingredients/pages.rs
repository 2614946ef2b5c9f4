//! Writing down an ingredient from the label, putting it right, striking it.

use super::super::{model::Medicine, names, schedule, store as medicines};
use super::{
    form::Listed,
    model::{Ingredient, plain_strength},
    store,
};
use crate::base::{
    ids::{IngredientId, MedicineId},
    quantity::Quantity,
};
use crate::platform::{
    auth::{
        area::Clinical,
        grant::{Change, Grant},
    },
    db::{Done, View},
    error::Result,
    web::{
        form::{Form, Press},
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
#[template(path = "medicines/ingredients/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    medicine: Medicine,
    kept: Option<Ingredient>,
    /// What stands in the fields because the strength says it.
    proposed: bool,
    /// What the list of names has under this name.
    known: Vec<String>,
}

impl EditPage {
    fn units(&self) -> [&'static str; 5] {
        ["mg", "mcg", "g", "mL", "units"]
    }
}

pub async fn blank(grant: Changing, At(id): At<MedicineId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let medicine = medicines::find(&view, id).await?;
    let kept = store::of_medicine(&view, id).await?;
    let mut typed =
        typed.with("per", Quantity::ONE).with("counted", pieces(&view, &medicine).await?);
    let plain = plain_strength(&medicine).filter(|_| kept.is_empty());
    let proposed = plain.is_some();
    if let Some((amount, unit)) = plain {
        typed = typed.with("name", &medicine.name).with("amount", amount).with("unit", unit);
    }
    let known = names::store::brands(&view, &[medicine.name.to_string()]).await?;
    let known: Vec<_> = known.into_iter().map(|(_, ingredient)| ingredient).collect();
    let new = |it: &&String| !kept.iter().any(|of| of.name.as_str().eq_ignore_ascii_case(it));
    if let Some(next) = known.iter().find(new) {
        typed = typed.with("name", next);
    }
    let page = grant.page(format!("An ingredient of {}", medicine.name));
    Ok(EditPage { page, typed, medicine, kept: None, proposed, known })
}

/// What is counted of it: as its schedule counts, or by its form.
async fn pieces(view: &View<Clinical>, medicine: &Medicine) -> Result<String> {
    let steps = schedule::store::of_medicine(view, medicine.id).await?;
    let unit = steps.last().map(|it| &it.unit).or(medicine.form.as_ref());
    Ok(unit.map_or_else(|| "tablet".to_owned(), ToString::to_string))
}

pub async fn add(grant: Changing, At(id): At<MedicineId>, form: Form<Listed>) -> Done {
    let entry = form.parse()?.entry;
    let mut write = grant.write().await?;
    let medicine = medicines::find(&write, id).await?;
    let new = Ingredient::new(id, entry, (write.member(), write.at()));
    store::add(&mut write, &new).await?;
    let line = format!("{}: wrote down {}", medicine.name, new.name);
    write.commit().await?.then(urls::medicine(id)).saying(line)
}

pub async fn edit(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<IngredientId>,
    typed: Typed,
) -> Result<EditPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, medicine, id).await?;
    let medicine = medicines::find(&view, medicine).await?;
    let shown = |it: Option<Quantity>| it.map_or_else(String::new, |it| it.to_string());
    let typed = typed.over(&kept).with("amount", shown(kept.amount)).with("per", kept.per);
    let typed = typed.with("most", shown(kept.most));
    let page = grant.page(format!("{}, in {}", kept.name, medicine.name));
    Ok(EditPage { page, typed, medicine, kept: Some(kept), proposed: false, known: Vec::new() })
}

pub async fn save(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<IngredientId>,
    form: Form<Listed>,
) -> Done {
    let Listed { entry, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, medicine, id).await?.opened_at(version)?;
    let after = before.edited(entry);
    store::save(&mut write, &before, &after).await?;
    let line = format!("Saved {}", after.name);
    write.commit().await?.then(urls::medicine(medicine)).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "medicines/ingredients/strike.html")]
pub struct StrikePage {
    page: Page,
    typed: Typed,
    medicine: Medicine,
    ingredient: Ingredient,
}

pub async fn striking(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<IngredientId>,
    typed: Typed,
) -> Result<StrikePage> {
    let view = grant.view().await?;
    let ingredient = store::find(&view, medicine, id).await?;
    let medicine = medicines::find(&view, medicine).await?;
    let page = grant.page(format!("Entered by mistake: {}", ingredient.name));
    Ok(StrikePage { page, typed, medicine, ingredient })
}

pub async fn strike(
    grant: Changing,
    At(medicine): At<MedicineId>,
    At(id): At<IngredientId>,
    form: Form<Press>,
) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, medicine, id).await?.opened_at(press.version)?;
    store::save(&mut write, &before, &before.struck()).await?;
    write.commit().await?.then(urls::medicine(medicine)).saying("Struck; the history keeps it")
}
