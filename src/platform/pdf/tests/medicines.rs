//! The sheets of the medicines, read back: how large their letters are, and the card as a card.

use super::*;
use typst::visualize::Geometry;

/// Label type of at least 12 points (16 CCR 1707.5); the foot is no part of the list.
#[test]
fn the_medicine_list_is_in_letters_that_can_be_read() {
    let document = Stock::open().set(Sheet::MedicineList, samples::medicines::list(3)).unwrap();
    for leaf in document.pages() {
        let foot = leaf.frame.size().y.to_pt() - 80.0;
        let mut smallest = f64::MAX;
        placed(&leaf.frame, Point::zero(), &mut |at, size, _| {
            if at.y.to_pt() < foot {
                smallest = smallest.min(size);
            }
        });
        assert!(smallest >= 12.0, "{smallest} points");
    }
}

/// A business card is 3.5 x 2 in, 252 x 144 points; this one is folded from two. Whatever lies on
/// it lies inside it, in letters of nine points and more, and what has no room is counted.
#[test]
fn the_card_is_as_large_as_a_card_and_cuts_nothing() {
    let hostile = samples::medicines::all().into_iter().find(|it| it.0 == "wallet-hostile");
    for (count, data) in [
        (7, samples::medicines::wallet(7)),
        (60, samples::medicines::wallet(60)),
        (20, hostile.expect("a sample").2),
    ] {
        let document = Stock::open().set(Sheet::WalletCard, data).unwrap();
        let page = &document.pages()[0].frame;
        let fold = fold_of(page, Point::zero()).expect("a line to fold on");
        let (top, bottom) = (fold.y.to_pt() - 144.0, fold.y.to_pt() + 144.0);
        let mut words = String::new();
        for run in runs(&document).iter().filter(|it| it.page == 0) {
            if run.y > top && run.y <= bottom {
                let right = run.x + run.width;
                let inside = run.x >= fold.x.to_pt() + 6.0 && right <= fold.x.to_pt() + 246.0;
                assert!(inside, "{count}: {:?} at {}, {}", run.text, run.x, run.y);
                words.push_str(&squeezed(&run.text));
            }
        }
        placed(page, Point::zero(), &mut |at, size, text| {
            let on = at.y.to_pt() > top && at.y.to_pt() <= bottom;
            assert!(!on || size >= 9.0, "{count}: {text:?} in {size} points");
        });
        assert!(words.contains("9March1944") && words.contains("K7Q-4MZD"), "{count}: {words}");
        assert_eq!(words.contains("more:seethelist"), count > 7, "{count}: {words}");
    }
}

/// Where the line to fold on begins: the one line that is as long as a card is wide.
fn fold_of(frame: &Frame, from: Point) -> Option<Point> {
    frame.items().find_map(|(place, item)| match item {
        FrameItem::Group(group) => fold_of(&group.frame, from + *place),
        FrameItem::Shape(shape, _) => match shape.geometry {
            Geometry::Line(to) if (to.x.to_pt() - 252.0).abs() < 0.1 => Some(from + *place),
            _ => None,
        },
        _ => None,
    })
}

fn placed(frame: &Frame, from: Point, look: &mut impl FnMut(Point, f64, &str)) {
    for (place, item) in frame.items() {
        match item {
            FrameItem::Group(group) => placed(&group.frame, from + *place, look),
            FrameItem::Text(text) => look(from + *place, text.size.to_pt(), &text.text),
            _ => {}
        }
    }
}
