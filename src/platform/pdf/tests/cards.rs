//! The sheet of cards: in the size of a card, with the photos on it, and never lost over a broken one.

use super::super::{samples::cards::cards, *};
use crate::base::picture::Picture;
use typst::layout::{Frame, FrameItem, Size};

/// The size ID-1 of ISO/IEC 7810: 85.60 by 53.98 mm (from memory), in points of 1/72 inch.
const ID_1: (f64, f64) = (85.60 / 25.4 * 72.0, 53.98 / 25.4 * 72.0);

fn pictures(frame: &Frame, found: &mut Vec<Size>) {
    for (_, item) in frame.items() {
        match item {
            FrameItem::Group(group) => pictures(&group.frame, found),
            FrameItem::Image(_, size, _) => found.push(*size),
            _ => {}
        }
    }
}

fn with_photos() -> Value {
    let mut data = cards(1, "Harbor Drug Plan");
    data["cards"][0]["front"] = "photo-1".into();
    data["cards"][0]["back"] = "photo-2".into();
    data
}

/// A picture in the proportions of a card fills it exactly; a square one is as high as the card.
#[test]
fn each_side_has_the_size_of_a_card() {
    let photos = vec![
        Picture::plain((856, 540), [85, 32, 79]).png(),
        Picture::plain((400, 400), [240, 240, 240]).png(),
    ];
    let set = Stock::open().set_with(Sheet::Cards, with_photos(), photos).unwrap();
    let mut found = Vec::new();
    set.pages().iter().for_each(|it| pictures(&it.frame, &mut found));
    assert_eq!(found.len(), 2);
    let near = |a: f64, b: f64| (a - b).abs() < 0.2;
    let (front, back) = (found[0], found[1]);
    assert!(near(front.x.to_pt(), ID_1.0), "{front:?} is not {ID_1:?}");
    assert!(near(front.y.to_pt(), ID_1.1), "{front:?} is not {ID_1:?}");
    assert!(near(back.y.to_pt(), ID_1.1) && near(back.x.to_pt(), ID_1.1), "{back:?}");
}

#[tokio::test]
async fn it_is_an_accessible_pdf_with_photos_and_an_error_with_a_broken_one() {
    let whole = Picture::plain((856, 540), [85, 32, 79]).png();
    let broken = whole[..40].to_vec();
    let press = Press::new();
    let pdf = press.render_with(Sheet::Cards, with_photos(), vec![whole.clone(), whole.clone()]);
    let claim = b"<pdfuaid:part>1";
    assert!(pdf.await.unwrap().windows(claim.len()).any(|part| part == claim));
    let refused = press.render_with(Sheet::Cards, with_photos(), vec![whole, broken]).await;
    assert!(refused.is_err());
    let mut data = with_photos();
    data["unset"] = true.into();
    press.render(Sheet::Cards, data).await.unwrap();
}
