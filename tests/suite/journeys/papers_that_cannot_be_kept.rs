//! Files that are no papers, or break on their way: each is told why, the others are kept, and nothing of
//! what was refused stays behind. What is kept is handed out so that it can do no harm.

use super::a_pile_is_sorted::put_in;
use crate::support::{
    Browser, Family,
    paper::{pdf, picture},
};
use std::fs;

/// How many files lie in the house's folder, arrived and on their way.
fn files(family: &Family) -> (usize, usize) {
    let folder = family.house.folder().join("files");
    let (mut kept, mut arriving) = (0, 0);
    for entry in fs::read_dir(folder).into_iter().flatten() {
        let path = entry.expect("an entry").path();
        let inside = fs::read_dir(&path).map_or(0, Iterator::count);
        match path.ends_with("arriving") {
            true => arriving += inside,
            false => kept += inside,
        }
    }
    (kept, arriving)
}

#[tokio::test]
async fn each_file_that_cannot_be_kept_has_its_reason_and_the_others_go_on() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    let cut = pdf("cut", "");
    let hostile = [
        ("empty.pdf", Vec::new(), "It is empty."),
        ("words.pdf", b"only words".to_vec(), "it is neither a JPEG, a PNG, a WebP nor a PDF"),
        ("cut.pdf", cut[..cut.len() - 20].to_vec(), "its end is missing"),
        ("headless.pdf", cut[5..].to_vec(), "it is neither a JPEG"),
        (
            "locked.pdf",
            pdf("x", "/Encrypt 5 0 R "),
            "This PDF has a password: save it without one.",
        ),
        ("phone.heic", b"\0\0\0\x18ftypheic\0\0\0\0".to_vec(), "It is a HEIC picture"),
        ("logo.svg", b"<svg onload='alert(1)'/>".to_vec(), "It is an SVG drawing"),
        ("page.png", b"<!doctype html><script>alert(1)</script>".to_vec(), "It is a web page"),
        ("letter.docx", b"PK\x03\x04\x14\0".to_vec(), "It is a zip"),
        ("bomb.png", bomb(), "more than 120 megapixels"),
        ("broken.png", picture(1)[..18].to_vec(), "it may be cut short"),
        ("moving.gif", b"GIF89a\x01\0\x01\0".to_vec(), "not every browser shows"),
    ];
    let mut pile = vec![("good.png", picture(3))];
    pile.extend(hostile.iter().map(|(name, bytes, _)| (*name, bytes.clone())));
    pile.push(("good.pdf", pdf("good", "")));
    put_in(&mut ines, &family, &pile).await;
    ines.sees("2 of 14 put in the tray").sees("Not kept 12").sees("In the tray 2");
    for (name, _, says) in &hostile {
        ines.sees(name).sees(says);
    }
    assert_eq!(files(&family), (2, 0));
    ines.open(&family.at("/papers/tray")).await.sees("2 papers wait").does_not_see("locked");
    put_in(&mut ines, &family, &[("only.svg", b"<svg/>".to_vec())]).await;
    ines.sees("0 of 1 put in the tray").sees("It is an SVG drawing").sees("2 papers wait");
    family.house.is_sound().await;
}

/// A PNG of 60,000 by 60,000 dots, of which nothing is packed.
fn bomb() -> Vec<u8> {
    let mut bytes = picture(60_000);
    bytes[20..24].copy_from_slice(&60_000_u32.to_be_bytes());
    bytes
}

#[tokio::test]
async fn what_is_too_large_or_too_many_is_told_so() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    let mut large = pdf("large", "");
    large.resize(80 * 1024 * 1024 + 1, b' ');
    put_in(&mut ines, &family, &[("large.pdf", large), ("small.png", picture(1))]).await;
    ines.sees("1 of 2 put in the tray").sees("It is larger than 80 MB.");
    assert_eq!(files(&family), (1, 0));
    let names: Vec<_> = (0..62).map(|it| format!("{it}.png")).collect();
    let pile: Vec<_> =
        (10..).zip(&names).map(|(wide, name)| (name.as_str(), picture(wide))).collect();
    put_in(&mut ines, &family, &pile).await;
    ines.sees("60 of 62 put in the tray").sees("It is past the 60th of this pile.");
    ines.sees("61.png").open(&family.at("/today")).await.sees("61 papers wait in the tray");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_name_is_cleaned_and_never_the_name_of_a_file() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    let long = format!("{}.png", "a".repeat(300));
    let names = [
        ("../../../etc/passwd", "passwd"),
        ("..\\..\\kinsheaf.db", "kinsheaf.db"),
        ("card\u{202e}gpj.exe", "cardgpj.exe"),
        ("<script>alert(1)<b>", "<script>alert(1)<b>"),
        (long.as_str(), &"a".repeat(120)),
        ("..", "a file without a name"),
    ];
    let pile: Vec<_> = (1..).zip(&names).map(|(wide, it)| (it.0, picture(wide))).collect();
    put_in(&mut ines, &family, &pile).await;
    ines.sees("6 of 6 put in the tray");
    for (_, shown) in names {
        ines.sees(shown);
    }
    ines.does_not_see("\u{202e}").does_not_see("etc/").does_not_see(&"a".repeat(121));
    ines.open(&family.at("/papers/tray")).await.sees("a paper without a name").sees("passwd");
    assert_eq!(files(&family), (6, 0));
    assert!(!family.house.folder().join("files/passwd").exists());
    for id in 1..=6 {
        ines.get(&family.at(&format!("/papers/{id}/pages/{id}"))).await.answers(200);
        let expected = format!("inline; filename=\"paper-{id}-page-1.png\"");
        assert_eq!(ines.headers["content-disposition"], expected.as_str());
    }
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_is_kept_is_handed_out_so_that_it_can_do_no_harm() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    // A whole PDF with a web page in it.
    let both = pdf("<html><script>alert(1)</script></html>", "");
    put_in(&mut ines, &family, &[("a.html", both.clone()), ("b.png", picture(1))]).await;
    ines.get(&family.at("/papers/1/pages/1")).await.answers(200);
    assert_eq!(ines.body, both);
    assert_eq!(ines.headers["content-type"], "application/pdf");
    assert_eq!(ines.headers["content-disposition"], "attachment; filename=\"paper-1-page-1.pdf\"");
    is_guarded(&ines);
    ines.get(&family.at("/papers/2/pages/2")).await.answers(200);
    assert_eq!(ines.headers["content-type"], "image/png");
    is_guarded(&ines);
    // A page is reached by its own paper alone.
    for odd in
        ["/papers/1/pages/2", "/papers/1/pages/9", "/papers/1/pages/..%2f..", "/papers/9/pages/1"]
    {
        ines.get(&family.at(odd)).await.answers(404);
    }
    let (path, page) = (family.house.folder().join("files"), family.at("/papers/2/pages/2"));
    fs::remove_dir_all(path).expect("gone");
    ines.get(&page).await.answers(404);
    ines.open(&family.at("/papers/2")).await.answers(200).sees("b.png");
    family.house.is_sound().await;
}

#[track_caller]
fn is_guarded(browser: &Browser) {
    let policy = "sandbox; default-src 'none'; frame-ancestors 'none'; base-uri 'none'";
    assert_eq!(browser.headers["content-security-policy"], policy);
    assert_eq!(browser.headers["x-content-type-options"], "nosniff");
    assert_eq!(browser.headers["cache-control"], "no-store");
}

#[tokio::test]
async fn no_form_names_a_file_that_it_did_not_bring() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    put_in(&mut ines, &family, &[("a.png", picture(1))]).await;
    let sum = kinsheaf::platform::audit::sha256(picture(1));
    ines.open(&family.at("/papers/tray/add")).await;
    let (_, address, mut form) = ines.pressed("Put them in the tray");
    form.push(("papers".into(), sum));
    ines.send(&address, &form).await.answers(422).sees("Choose one or more photos or PDFs.");
    // A pile that breaks off, or that comes without an end, keeps nothing.
    ines.open(&family.at("/papers/tray/add")).await.attach("Photos or PDFs", &picture(2));
    ines.breaks_off("Put them in the tray").await;
    assert_eq!(ines.status.as_u16(), 422);
    ines.sees("This did not arrive whole");
    assert_eq!(files(&family), (1, 0));
    family.house.is_sound().await;
}
