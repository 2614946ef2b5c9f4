//! The history finds what was done behind its back, and refuses what it can.

use crate::support::Family;
use kinsheaf::{
    base::ids::PersonId,
    platform::{audit::Fault, auth::area::Clinical, auth::area::Role, error::Error},
};
use sqlx::{AssertSqlSafe, SqliteConnection};

async fn run(db: &mut SqliteConnection, sql: &str) -> Result<(), sqlx::Error> {
    sqlx::raw_sql(AssertSqlSafe(sql.to_owned())).execute(db).await.map(|_| ())
}

/// Four medicines kept, one of them edited.
async fn kept() -> Family {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    for name in ["Warfarin", "Furosemide", "Levothyroxine", "Metoprolol"] {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name).fill("Dose", "1 tablet");
        ines.press("Add this medicine").await.answers(200);
    }
    ines.open(&family.at("/medicines/1/edit")).await.fill("Dose", "2 tablets").press("Save").await;
    family
}

const UNLOCK: &str = "drop trigger history_is_not_edited; drop trigger history_is_not_deleted;
    drop trigger history_value_is_only_blanked; drop trigger history_value_is_not_deleted;
    drop trigger history_comes_in_order; drop trigger history_value_joins_the_newest;";

async fn faults_after(sql: &str) -> Vec<Fault> {
    let family = kept().await;
    let mut db = family.house.outside().await;
    run(&mut db, UNLOCK).await.expect("unlocked");
    run(&mut db, sql).await.expect("tampered");
    let report = family.house.operator().verify(family.person, None).await.expect("a report");
    report.faults
}

#[tokio::test]
async fn an_edited_entry_is_found() {
    let faults = faults_after("update history set item = 9 where chain = 1 and seq = 8").await;
    assert!(faults.contains(&Fault::Edited { seq: 8 }), "{faults:?}");
}

#[tokio::test]
async fn one_flipped_byte_of_a_value_is_found() {
    let sql = "update history_value set new = replace(new, 'Warfarin', 'Warfarim') where new like '%Warfarin%'";
    let faults = faults_after(sql).await;
    let found = faults.iter().any(|it| matches!(it, Fault::Value { field, .. } if field == "name"));
    assert!(found, "{faults:?}");
}

#[tokio::test]
async fn a_deleted_entry_is_found() {
    let sql = "delete from history_value where history_id = (select id from history where chain = 1 and seq = 8);
        delete from history where chain = 1 and seq = 8";
    let faults = faults_after(sql).await;
    assert!(faults.contains(&Fault::Gap { seq: 9 }), "{faults:?}");
    assert!(faults.contains(&Fault::Broken { seq: 9 }), "{faults:?}");
}

#[tokio::test]
async fn reordered_entries_are_found() {
    let sql = "update history set seq = 99 where chain = 1 and seq = 8;
        update history set seq = 8 where chain = 1 and seq = 9;
        update history set seq = 9 where chain = 1 and seq = 99";
    let faults = faults_after(sql).await;
    assert!(faults.contains(&Fault::Gap { seq: 9 }), "{faults:?}");
}

#[tokio::test]
async fn a_cut_tail_is_found_against_a_mark_kept_elsewhere() {
    let family = kept().await;
    let operator = family.house.operator();
    let whole = operator.verify(family.person, None).await.expect("a report");
    let mark = whole.head[..16].to_owned();
    assert!(operator.verify(family.person, Some(&mark)).await.expect("a report").sound());
    let mut db = family.house.outside().await;
    run(&mut db, UNLOCK).await.expect("unlocked");
    // The last entry is the edit of the first medicine: its row is set back to fit.
    let cut = "delete from history_value where history_id = (select max(id) from history where chain = 1);
        delete from history where id = (select max(id) from history where chain = 1);
        update medicine set dose = '1 tablet', version = 1 where id = 1";
    run(&mut db, cut).await.expect("cut");
    assert!(operator.verify(family.person, None).await.expect("a report").sound());
    let report = operator.verify(family.person, Some(&mark)).await.expect("a report");
    assert_eq!(report.faults, [Fault::HeadUnknown]);
}

#[tokio::test]
async fn a_whole_history_that_is_gone_is_found() {
    let family = kept().await;
    let mut db = family.house.outside().await;
    run(&mut db, UNLOCK).await.expect("unlocked");
    let cut =
        "delete from history_value where history_id in (select id from history where chain = 1);
        delete from history where chain = 1";
    run(&mut db, cut).await.expect("cut");
    let operator = family.house.operator();
    assert!(operator.chains().await.expect("chains").contains(&family.person));
    let report = operator.verify(family.person, None).await.expect("a report");
    let gone = Fault::Row { kind: "person".into(), item: 1, field: String::new() };
    assert!(report.faults.contains(&gone), "{:?}", report.faults);
}

#[tokio::test]
async fn a_row_changed_by_another_program_is_found() {
    let family = kept().await;
    let mut db = family.house.outside().await;
    run(&mut db, "update medicine set dose = '9 tablets' where id = 3").await.expect("changed");
    run(
        &mut db,
        "insert into contact (person_id, name, kind, phone, call_order) values (1, 'x', 'family', '555', 9)",
    )
    .await
    .expect("put there");
    let report = family.house.operator().verify(family.person, None).await.expect("a report");
    let row =
        |kind: &str, item, field: &str| Fault::Row { kind: kind.into(), item, field: field.into() };
    assert_eq!(report.faults, [row("contact", 1, ""), row("medicine", 3, "dose")]);
}

#[tokio::test]
async fn the_database_itself_refuses_to_rewrite_the_history() {
    let family = kept().await;
    let mut db = family.house.outside().await;
    for sql in [
        "update history set action = 'x' where chain = 1 and seq = 2",
        "delete from history where chain = 1 and seq = 2",
        "insert or replace into history select * from history where chain = 1 and seq = 2",
        "insert into history (chain, seq, at, actor, door, area, action, kind, item, previous, hash)
            values (1, 50, '', 0, 'system', '', '', '', 0, '', '')",
        "update history_value set new = '\"x\"' where id = 2",
        "update history_value set new = null where id = 2",
        "delete from history_value where id = 2",
        "insert into history_value (history_id, field, digest) values (1, 'x', 'x')",
    ] {
        let refused = run(&mut db, sql).await.expect_err(sql).to_string();
        assert!(refused.contains("append-only"), "{sql}: {refused}");
    }
}

#[tokio::test]
async fn a_lawful_erasure_blanks_a_value_and_the_history_still_verifies() {
    let family = kept().await;
    let mut db = family.house.outside().await;
    let sql = "update history_value set old = null, new = null, salt = null
        where field = 'dose' and history_id in (select id from history where kind = 'medicine' and item = 1)";
    run(&mut db, sql).await.expect("erased");
    family.house.is_sound().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/history")).await.answers(200).sees("erased").does_not_see("2 tablets");
}

#[tokio::test]
async fn a_change_without_history_is_rolled_back() {
    let family = kept().await;
    let operator = family.house.operator();
    let person = PersonId::from(1);
    let write =
        operator.write_for::<Clinical>(person, 2.into(), Role::Steward).await.expect("a write");
    let hole = sqlx::query_scalar::<_, i64>(
        "update medicine set dose = '9 tablets' where id = 1 returning id",
    );
    write.values(hole).await.expect("changed");
    let refused = write.commit().await.err().expect("refused");
    assert!(
        matches!(&refused, Error::Internal(it) if it.to_string().contains("without history")),
        "{refused:?}"
    );
    family.house.is_sound().await;
}
