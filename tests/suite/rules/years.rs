//! The invented family's record over years: as long as it is said to be, whole, told in the order
//! in which it happened, and the same at every telling.

use crate::support::{Browser, TestHouse, family::PASSWORD, house::NOW};
use kinsheaf::{base::reach::Email, family::members::store as members, platform::auth::password};
use sqlx::{AssertSqlSafe, Row, SqliteConnection, sqlite::SqliteRow};

/// What is said of a year: so many entries, more or less a twentieth.
const A_YEAR: i64 = 3_000;

#[tokio::test]
async fn a_year_is_whole_in_order_and_as_long_as_is_said() {
    let (month, short) = TestHouse::told(0, NOW).await;
    let (year, long) = TestHouse::told(1, NOW).await;
    month.is_sound().await;
    year.is_sound().await;
    let made = long.entries - short.entries;
    assert!((made - A_YEAR).abs() <= A_YEAR / 20, "{made} entries in a year");
    assert!((80..=300).contains(&short.entries), "{} entries in the month", short.entries);
    assert_eq!(long.medicines, short.medicines + 6, "six began, in weeks 0, 10, .. 50");
    assert_eq!(
        (long.contacts, long.prints),
        (short.contacts + 10, short.prints + 104),
        "ten more to phone, two prints a week"
    );
    let mut db = year.outside().await;
    let entries = rows(&mut db, "select count(*) from history where chain in (0, 1)").await;
    assert_eq!(entries, [[Some(long.entries.to_string())]]);
    let back = "select it.kind, it.at from history it join history before
        on before.chain = it.chain and before.seq = it.seq - 1 where before.at > it.at";
    assert_eq!(rows(&mut db, back).await, Vec::<Vec<_>>::new(), "told before what came first");
}

/// Codes, salts and hashes are random in every house, so they are left out.
const ROWS: [&str; 29] = [
    "select * from person",
    "select * from medicine",
    "select * from step",
    "select * from log_keeping",
    "select * from given",
    "select * from allergy",
    "select * from contact",
    "select * from condition",
    "select * from operation",
    "select * from statement",
    "select * from baseline",
    "select * from observation",
    "select * from decision",
    "select * from renewal",
    "select * from paper_word",
    "select * from paper",
    "select * from paper_page",
    "select * from cover",
    "select * from card",
    "select * from refusal",
    "select * from refusal_call",
    "select * from directive",
    "select * from directive_copy",
    "select * from member",
    "select * from membership",
    "select * from hidden",
    "select id, person_id, member_id, sheet, printed_at from print",
    "select id, chain, seq, at, actor, door, area, action, kind, item from history",
    "select id, history_id, field, old, new from history_value
        where field not in ('code', 'head', 'facts')",
];

#[tokio::test]
async fn every_telling_is_the_same() {
    let (first, told) = TestHouse::told(1, NOW).await;
    let (again, told_again) = TestHouse::told(1, NOW).await;
    assert_eq!(told, told_again);
    let (mut first, mut again) = (first.outside().await, again.outside().await);
    for question in ROWS {
        let (rows, others) = (rows(&mut first, question).await, rows(&mut again, question).await);
        assert!(!rows.is_empty(), "{question}");
        assert!(rows == others, "{question}: another row at the second telling");
    }
}

#[tokio::test]
async fn another_day_moves_every_day_along() {
    let later = NOW + 10 * 7 * 86_400;
    let (first, _) = TestHouse::told(1, NOW).await;
    let (then, _) = TestHouse::told(1, later).await;
    // Days since the record was begun; those before it stay where they are.
    let turned = "select id, name, strength, status,
            julianday(status_since) - (select julianday(date(min(at), '-6 hours')) from history)
        from medicine order by id";
    let made = "select id, actor, action, kind, item,
            cast(julianday(date(at, '-6 hours')) - (select julianday(date(min(at), '-6 hours')) from history) as integer)
        from history order by id";
    let (mut first, mut then) = (first.outside().await, then.outside().await);
    for question in [turned, made] {
        assert_eq!(rows(&mut first, question).await, rows(&mut then, question).await);
    }
}

/// Every row, each value as its text.
async fn rows(db: &mut SqliteConnection, question: &str) -> Vec<Vec<Option<String>>> {
    let rows = sqlx::query(AssertSqlSafe(question.to_owned())).fetch_all(db).await;
    let text = |row: &SqliteRow| (0..row.len()).map(|at| row.get_unchecked(at)).collect();
    rows.expect(question).iter().map(text).collect()
}

#[tokio::test]
async fn the_history_of_a_year_is_read_page_by_page_and_verified() {
    let (house, _) = TestHouse::told(1, NOW).await;
    let mut browser = signed_in(&house, "ines@example.org").await;
    browser.open("/p/1/history").await.answers(200).sees("stopped Lisinopril");
    let (mut pages, mut placed) = (1, false);
    while browser.text().contains("Earlier") {
        browser.press("Earlier").await.answers(200);
        placed |= browser.text().contains("gave Rosalind a place as reader");
        pages += 1;
    }
    assert!(pages > 20 && placed, "{pages} pages");
    browser.sees("added the member Ottoline");
    browser.open("/p/1/history?area=members").await.answers(200).sees("paused Rosalind's place");
    browser.open("/p/1/history/verify").await.press("Verify now").await.sees("Whole: all");
}

/// The newest entries are almost all clinical: a page of the others reaches further back.
#[tokio::test]
async fn a_page_is_full_where_most_of_a_year_is_not_seen() {
    let (house, _) = TestHouse::told(1, NOW).await;
    let mut browser = signed_in(&house, "bram@example.org").await;
    let mut db = house.outside().await;
    sqlx::raw_sql("update membership set lowered = 'clinical: nothing' where member_id = 3")
        .execute(&mut db)
        .await
        .expect("lowered");
    browser.open("/p/1/history").await.answers(200).does_not_see("Furosemide").sees("Earlier");
    let pages = "/p/1/history?area=clinical";
    browser.open(pages).await.answers(200).sees("Nothing here fits what you asked for.");
}

/// A member of the story, who has no password there, with one.
async fn signed_in(house: &TestHouse, email: &str) -> Browser {
    let mut write = house.operator().write().await.expect("a write");
    let found = members::by_email(&write, &Email::from(email.to_owned())).await;
    let member = found.expect("an answer").expect("a member");
    let phc = house.house.hasher.hash(password::accept(PASSWORD, &[]).expect("good")).await;
    members::save(&mut write, &member, &member.with_password(phc)).await.expect("kept");
    write.commit().await.expect("kept");
    let mut browser = Browser::new(&house.app);
    browser.open("/sign-in").await.fill("E-mail", email).fill("Password", PASSWORD);
    browser.press("Sign in").await.answers(200);
    browser
}
