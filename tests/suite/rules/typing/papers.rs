//! The forms of papers, in the tray and filed.

use crate::support::{Browser, Family, paper};

pub const FORMS: &[&str] = &[
    "/papers/tray/add",
    "/papers/1/file",
    "/papers/1/join",
    "/papers/1/replace",
    "/papers/1/strike",
];

/// One in the tray, and one that is filed.
pub async fn filed(ines: &mut Browser, family: &Family) {
    ines.open(&family.at("/papers/tray/add")).await;
    ines.attach("Photos or PDFs", &paper::picture(1)).press("Put them in the tray").await;
    ines.open(&family.at("/papers/1/file")).await.fill("Kind", "letter").fill("Title", "A letter");
    ines.press("File it").await.answers(200);
}
