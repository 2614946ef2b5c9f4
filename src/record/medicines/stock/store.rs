//! All the SQL of supplies. What belongs to a medicine that is hidden from the reader is not there.

use super::{
    Amount,
    model::{Class, Count, Fill, Pause, Setting},
};
use crate::base::{
    change::Change,
    clock::Instant,
    day,
    ids::{CountId, FillId, MedicineId, PauseId},
    text::Line,
};
use crate::platform::{
    auth::area::Clinical,
    db::{View, Write},
    error::{Error, Result},
};
use sqlx::{query, query_as};
use time::Date;

/// Every fill that was not struck, in the order of their days; of one medicine, or of all.
pub async fn fills(view: &View<Clinical>, medicine: Option<MedicineId>) -> Result<Vec<Fill>> {
    let mut all = every_fill(view, medicine, None).await?;
    all.retain(|it| !it.struck);
    Ok(all)
}

pub async fn fill(view: &View<Clinical>, id: FillId) -> Result<Fill> {
    every_fill(view, None, Some(id)).await?.pop().ok_or(Error::NotFound)
}

async fn every_fill(
    view: &View<Clinical>,
    medicine: Option<MedicineId>,
    id: Option<FillId>,
) -> Result<Vec<Fill>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Fill,
        r#"select id, person_id, medicine_id, filled_on as "filled_on: Date",
            amount as "amount: Amount", label_days, pharmacy as "pharmacy: Line", pharmacy_days,
            refills_left, written_on as "written_on: Date", expires_on as "expires_on: Date",
            class as "class: Class", earliest_refill as "earliest_refill: Date",
            entered_by, entered_at as "entered_at: Instant", struck as "struck: bool", version
        from fill
        where person_id = ?1 and (?2 is null or medicine_id = ?2) and (?3 is null or id = ?3)
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?4 and standing)
        order by filled_on, id"#,
        person,
        medicine,
        id,
        member
    ))
    .await
}

pub async fn add_fill(write: &mut Write<Clinical>, new: &Fill) -> Result<FillId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into fill (person_id, medicine_id, filled_on, amount, label_days, pharmacy,
                pharmacy_days, refills_left, written_on, expires_on, class, earliest_refill,
                entered_by, entered_at, struck)
            values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            person,
            new.medicine_id,
            new.filled_on,
            new.amount,
            new.label_days,
            new.pharmacy,
            new.pharmacy_days,
            new.refills_left,
            new.written_on,
            new.expires_on,
            new.class,
            new.earliest_refill,
            new.entered_by,
            new.entered_at,
            new.struck
        ),
    );
    Ok(added.await?.into())
}

pub async fn save_fill(write: &mut Write<Clinical>, old: &Fill, new: &Fill) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update fill set filled_on = ?, amount = ?, label_days = ?, pharmacy = ?,
                pharmacy_days = ?, refills_left = ?, written_on = ?, expires_on = ?, class = ?,
                earliest_refill = ?, struck = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.filled_on,
            new.amount,
            new.label_days,
            new.pharmacy,
            new.pharmacy_days,
            new.refills_left,
            new.written_on,
            new.expires_on,
            new.class,
            new.earliest_refill,
            new.struck,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

/// Every count that was not struck, in the order of their days.
pub async fn counts(view: &View<Clinical>, medicine: Option<MedicineId>) -> Result<Vec<Count>> {
    let mut all = every_count(view, medicine, None).await?;
    all.retain(|it| !it.struck);
    Ok(all)
}

pub async fn count(view: &View<Clinical>, id: CountId) -> Result<Count> {
    every_count(view, None, Some(id)).await?.pop().ok_or(Error::NotFound)
}

async fn every_count(
    view: &View<Clinical>,
    medicine: Option<MedicineId>,
    id: Option<CountId>,
) -> Result<Vec<Count>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Count,
        r#"select id, person_id, medicine_id, counted_on as "counted_on: Date",
            amount as "amount: Amount", entered_by, entered_at as "entered_at: Instant",
            struck as "struck: bool", version
        from stock_count
        where person_id = ?1 and (?2 is null or medicine_id = ?2) and (?3 is null or id = ?3)
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?4 and standing)
        order by counted_on, id"#,
        person,
        medicine,
        id,
        member
    ))
    .await
}

pub async fn add_count(write: &mut Write<Clinical>, new: &Count) -> Result<CountId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into stock_count (person_id, medicine_id, counted_on, amount, entered_by,
                entered_at, struck)
            values (?, ?, ?, ?, ?, ?, ?)",
            person,
            new.medicine_id,
            new.counted_on,
            new.amount,
            new.entered_by,
            new.entered_at,
            new.struck
        ),
    );
    Ok(added.await?.into())
}

pub async fn save_count(write: &mut Write<Clinical>, old: &Count, new: &Count) -> Result<()> {
    let person = write.person();
    let saved = write.apply(
        Change::Edited(old, new),
        query!(
            "update stock_count set struck = ?, version = version + 1
            where person_id = ? and id = ? and version = ?",
            new.struck,
            person,
            old.id,
            old.version
        ),
    );
    saved.await.map(|_| ())
}

pub async fn pauses(view: &View<Clinical>, medicine: Option<MedicineId>) -> Result<Vec<Pause>> {
    let (person, member) = (view.person(), view.member());
    view.all(query_as!(
        Pause,
        r#"select id, person_id, medicine_id, from_on as "from_on: Date",
            until_on as "until_on: Date", version
        from pause
        where person_id = ?1 and (?2 is null or medicine_id = ?2)
            and medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?3 and standing)
        order by from_on, id"#,
        person,
        medicine,
        member
    ))
    .await
}

pub async fn add_pause(write: &mut Write<Clinical>, new: &Pause) -> Result<PauseId> {
    let person = write.person();
    let added = write.apply(
        Change::Added(new),
        query!(
            "insert into pause (person_id, medicine_id, from_on, until_on) values (?, ?, ?, ?)",
            person,
            new.medicine_id,
            new.from_on,
            new.until_on
        ),
    );
    Ok(added.await?.into())
}

pub async fn setting(view: &View<Clinical>) -> Result<Setting> {
    let person = view.person();
    let found = view.maybe(query_as!(
        Setting,
        "select id, person_id, pharmacy_days, version from supply_setting where person_id = ?",
        person
    ));
    Ok(found.await?.unwrap_or_else(|| Setting::unsaid(person)))
}

pub async fn save_setting(write: &mut Write<Clinical>, old: &Setting, new: &Setting) -> Result<()> {
    let person = write.person();
    if old.version == 0 {
        let added = query!(
            "insert into supply_setting (person_id, pharmacy_days) values (?, ?)",
            person,
            new.pharmacy_days
        );
        return write.apply(Change::Added(new), added).await.map(|_| ());
    }
    let saved = query!(
        "update supply_setting set pharmacy_days = ?, version = version + 1
        where person_id = ? and id = ? and version = ?",
        new.pharmacy_days,
        person,
        old.id,
        old.version
    );
    write.apply(Change::Edited(old, new), saved).await.map(|_| ())
}

/// Kind, item and what each is called in the history: fills, counts and pauses that ever were.
pub async fn titles(view: &View<Clinical>) -> Result<Vec<(&'static str, i64, String)>> {
    let (person, member) = (view.person(), view.member());
    let all = view.all(query!(
        r#"select 'fill' as "kind!: String", it.id as "id!: i64", name as "name!: String", it.filled_on as "on!: Date"
        from fill it join medicine on medicine.id = it.medicine_id
        where it.person_id = ?1 and it.medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?2 and standing)
        union all select 'stock_count', it.id, name, it.counted_on
        from stock_count it join medicine on medicine.id = it.medicine_id
        where it.person_id = ?1 and it.medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?2 and standing)
        union all select 'pause', it.id, name, it.from_on
        from pause it join medicine on medicine.id = it.medicine_id
        where it.person_id = ?1 and it.medicine_id not in (select item from hidden where kind = 'medicine' and member_id = ?2 and standing)"#,
        person,
        member
    ));
    let title = |kind: &str, name, on| match kind {
        "fill" => ("fill", format!("{name}, fetched on {}", day::words(on))),
        "stock_count" => ("stock_count", format!("{name}, counted on {}", day::words(on))),
        _ => ("pause", format!("{name}, not taken from {}", day::words(on))),
    };
    let titled = all.await?.into_iter().map(|it| {
        let (kind, title) = title(&it.kind, it.name, it.on);
        (kind, it.id, title)
    });
    Ok(titled.collect())
}
