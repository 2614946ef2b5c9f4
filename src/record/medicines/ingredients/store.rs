//! All the SQL of ingredients. Those of a medicine that is hidden from the reader are not there.

use super::model::Ingredient;
use crate::base::{
    change::Change,
    clock::Instant,
    ids::{IngredientId, MedicineId},
    quantity::Quantity,
    text::Line,
};
use crate::platform::{
    auth::area::Clinical,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};

/// Every ingredient that was not struck, medicine by medicine.
pub async fn list(view: &View<Clinical>) -> Result<Vec<Ingredient>> {
    those(view, None, None).await
}

/// Those of one medicine.
pub async fn of_medicine(view: &View<Clinical>, medicine: MedicineId) -> Result<Vec<Ingredient>> {
    those(view, Some(medicine), None).await
}

/// One of a medicine's.
pub async fn find(
    view: &View<Clinical>,
    medicine: MedicineId,
    id: IngredientId,
) -> Result<Ingredient> {
    those(view, Some(medicine), Some(id)).await?.pop().ok_or(Error::NotFound)
}

async fn those(
    view: &View<Clinical>,
    medicine: Option<MedicineId>,
    id: Option<IngredientId>,
) -> Result<Vec<Ingredient>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Ingredient,
        r#"select id, person_id, medicine_id, name as "name: Line", amount as "amount: Quantity",
            unit as "unit: Line", per as "per: Quantity", counted as "counted: Line",
            most as "most: Quantity", most_unit as "most_unit: Line", entered_by,
            entered_at as "entered_at: Instant", struck as "struck: bool", version
        from ingredient
        where person_id = ?1 and not struck and (?2 is null or medicine_id = ?2)
            and (?3 is null or id = ?3)
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?4 and standing)
        order by medicine_id, id"#,
        person,
        medicine,
        id,
        member
    ))
    .await
}

pub async fn add(write: &mut Write<Clinical>, new: &Ingredient) -> Result<IngredientId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into ingredient (person_id, medicine_id, name, amount, unit, per, counted,
                most, most_unit, entered_by, entered_at, struck)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.medicine_id,
            new.name,
            new.amount,
            new.unit,
            new.per,
            new.counted,
            new.most,
            new.most_unit,
            new.entered_by,
            new.entered_at,
            new.struck
        ),
    );
    Ok(added.await?.into())
}

pub async fn save(write: &mut Write<Clinical>, old: &Ingredient, new: &Ingredient) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update ingredient set name = ?, amount = ?, unit = ?, per = ?, counted = ?, most = ?,
                most_unit = ?, struck = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.name,
            new.amount,
            new.unit,
            new.per,
            new.counted,
            new.most,
            new.most_unit,
            new.struck,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// "Acetaminophen in Something 500 mg": of every ingredient there ever was, for the history.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(IngredientId, String)>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        r#"select it.id as "id: IngredientId", it.name, medicine.name as product
        from ingredient it join medicine on medicine.id = it.medicine_id
        where it.person_id = ?
            and it.medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ? and standing)"#,
        person,
        member
    ));
    let title = |name: String, product: String| format!("{name}, in {product}");
    Ok(all.await?.into_iter().map(|it| (it.id, title(it.name, it.product))).collect())
}
