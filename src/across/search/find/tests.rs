//! What is best, and what counts at all, on a shelf that is laid by hand.

use super::*;
use crate::platform::words::{Leaf, Sheet};
use time::macros::date;

fn leaf(kind: &'static str, title: &str, day: Option<Date>) -> Leaf {
    Leaf { kind, title: title.into(), day, ..Leaf::default() }
}

/// The word stands there: in titles, in leaves (whole, begun), on pages.
fn word(titles: &[i64], whole: &[i64], begun: &[i64], pages: &[i64]) -> Word {
    let stands = |whole: &[i64], begun: &[i64]| super::super::words::Stands {
        whole: whole.to_vec(),
        begun: begun.to_vec(),
    };
    Word {
        titles: stands(titles, titles),
        leaves: stands(whole, begun),
        pages: stands(pages, pages),
        ..Word::default()
    }
}

async fn shelf() -> Shelf {
    let leaves = vec![
        leaf("medicine", "none of it", Some(date!(2026 - 01 - 01))),
        leaf("contact", "in the text", None),
        leaf("task", "in the text, later", Some(date!(2026 - 03 - 01))),
        leaf("medicine", "in the title", Some(date!(2020 - 01 - 01))),
        leaf("paper", "with pages", Some(date!(2026 - 02 - 01))),
    ];
    let pages = [(70, Sheet { leaf: 4, place: 2 }), (71, Sheet { leaf: 4, place: 1 })];
    Shelf::laid(leaves, pages.into_iter().collect(), Default::default()).await.expect("a shelf")
}

fn order(shelf: &Shelf, words: &[Word], asked: &Asked) -> Vec<(usize, Option<i64>)> {
    hits(shelf, words, asked).iter().map(|it| (it.leaf, it.page.map(|page| page.1))).collect()
}

#[tokio::test]
async fn the_title_is_best_then_the_newest_day_then_the_page() {
    let (shelf, all) = (shelf().await, Asked::default());
    let one = word(&[3], &[1, 2, 3], &[1, 2, 3], &[70, 71, 99]);
    let found = order(&shelf, std::slice::from_ref(&one), &all);
    assert_eq!(found, [(3, None), (2, None), (4, Some(1)), (4, Some(2)), (1, None)]);
    // A beginning comes after every whole word, however new it is.
    let begun = word(&[], &[1], &[1, 2], &[]);
    assert_eq!(order(&shelf, &[begun], &all), [(1, None), (2, None)]);
    // Every word must stand there; that of a paper's title stands on each of its pages.
    let other = word(&[4], &[4], &[4], &[]);
    assert_eq!(order(&shelf, &[one, other], &all), [(4, Some(1)), (4, Some(2))]);
    assert_eq!(order(&shelf, &[], &all), []);
}

#[tokio::test]
async fn a_kind_and_days_leave_the_rest_out() {
    let shelf = shelf().await;
    let words = [word(&[], &[0, 1, 2, 3], &[0, 1, 2, 3], &[70])];
    let asked = |kind: &str, from: &str, to: &str| Asked {
        kind: kind.into(),
        from: from.into(),
        to: to.into(),
        ..Asked::default()
    };
    assert_eq!(order(&shelf, &words, &asked("medicine", "", "")), [(0, None), (3, None)]);
    assert_eq!(order(&shelf, &words, &asked("paper", "", "")), [(4, Some(2))]);
    assert_eq!(order(&shelf, &words, &asked("", "2026-01-02", "")), [(2, None), (4, Some(2))]);
    assert_eq!(order(&shelf, &words, &asked("", "2026-01-01", "1 Jan 2026")), [(0, None)]);
    assert_eq!(order(&shelf, &words, &asked("nothing", "", "")), []);
}
