//! A file that comes in pieces: a lost connection costs one piece, a restart nothing, and nobody else comes
//! to it. At the end it is a paper in the tray like any other, or told why not.

use crate::support::{
    Browser, Family, TestHouse,
    paper::{pdf, picture},
};
use kinsheaf::platform::audit::sha256;
use std::fs;

/// Begins a file of this length, and gives where it comes to.
async fn begin(browser: &mut Browser, family: &Family, length: usize) -> String {
    let length = length.to_string();
    let address = family.at("/papers/tray/sending");
    browser.piece("POST", &address, &[("upload-length", &length)], &[]).await.answers(201);
    browser.at.clone()
}

/// The next piece, from there.
async fn piece<'a>(
    browser: &'a mut Browser,
    address: &str,
    (at, bytes): (usize, &[u8]),
) -> &'a mut Browser {
    let at = at.to_string();
    browser.piece("PATCH", address, &[("upload-offset", &at)], bytes).await
}

fn offset(browser: &Browser) -> &str {
    browser.headers.get("upload-offset").map_or("", |it| it.to_str().expect("a number"))
}

/// What the script of the form sends at the end.
async fn put_in(browser: &mut Browser, family: &Family, sent: &[(&str, usize, &str)]) {
    browser.open(&family.at("/papers/tray/add")).await;
    let (_, address, mut form) = browser.pressed("Put them in the tray");
    for (place, length, name) in sent {
        let token = place.rsplit('/').next().unwrap_or_default();
        form.push(("in_pieces".into(), format!("{token} {length} {name}")));
    }
    browser.send_parts(&address, &form).await.answers(303);
    let to = browser.at.clone();
    browser.open(&to).await.answers(200);
}

fn lying(house: &TestHouse) -> usize {
    let folders = fs::read_dir(house.folder().join("files/sending")).into_iter().flatten();
    folders.map(|it| fs::read_dir(it.expect("a folder").path()).expect("read").count()).sum()
}

#[tokio::test]
async fn what_came_before_the_connection_broke_is_gone_on_with_and_becomes_a_paper() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    let scan = pdf(&"a long scan ".repeat(9000), "");
    let (half, all) = (scan.len() / 2, scan.len());
    let place = begin(&mut ines, &family, all).await;
    piece(&mut ines, &place, (0, &scan[..half])).await.answers(204);
    assert_eq!(offset(&ines), half.to_string());
    // The answer was lost: the same piece comes again, and is told where it stands.
    piece(&mut ines, &place, (0, &scan[..half])).await.answers(409);
    assert_eq!(offset(&ines), half.to_string());
    ines.piece("PATCH", &place, &[], &scan[half..]).await.answers(409);
    // The house was started again, over the same folder.
    let Family { house, person, .. } = family;
    let family = Family { house: TestHouse::over(house).await, person };
    let mut ines = family.browser("Ines").await;
    ines.ask("HEAD", &place).await.answers(204);
    assert_eq!(offset(&ines), half.to_string());
    // Named before it is whole it is told so, and stays.
    put_in(&mut ines, &family, &[(&place, all, "../scan.pdf")]).await;
    ines.sees("0 of 1 put in the tray").sees("scan.pdf").sees("It did not arrive whole.");
    let place = begin(&mut ines, &family, all).await;
    for (at, bytes) in [(0, &scan[..half]), (half, &scan[half..])] {
        piece(&mut ines, &place, (at, bytes)).await.answers(204);
    }
    put_in(&mut ines, &family, &[(&place, all, "scan.pdf")]).await;
    ines.sees("1 of 1 put in the tray").does_not_see("Not kept");
    ines.get(&family.at("/papers/1/pages/1")).await.answers(200);
    assert_eq!(sha256(&ines.body), sha256(&scan));
    ines.ask("HEAD", &place).await.answers(404);
    assert_eq!(lying(&family.house), 0);
    family.house.is_sound().await;
}

#[tokio::test]
async fn what_comes_in_pieces_is_looked_at_like_any_other_file() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    let files = [
        ("card.png", picture(1)),
        ("card again.png", picture(1)),
        ("page.pdf", b"<html><script>alert(1)</script>".to_vec()),
        ("empty.jpg", Vec::new()),
    ];
    let mut sent = Vec::new();
    for (name, bytes) in &files {
        let place = begin(&mut ines, &family, bytes.len()).await;
        if !bytes.is_empty() {
            piece(&mut ines, &place, (0, bytes)).await.answers(204);
        }
        sent.push((place, bytes.len(), *name));
    }
    let mut named: Vec<_> = sent.iter().map(|it| (it.0.as_str(), it.1, it.2)).collect();
    let nobodys = "0".repeat(64);
    named.extend([("-", 90_000_000, "film.pdf"), (nobodys.as_str(), 12, "lost.png")]);
    put_in(&mut ines, &family, &named).await;
    ines.sees("1 of 6 put in the tray").sees("is the same file, byte for byte");
    ines.sees("It is a web page, which can carry a program").sees("It is empty.");
    ines.sees("It is larger than 80 MB.").sees("It did not arrive whole.");
    assert_eq!(lying(&family.house), 0, "nothing of what was refused stays");
    family.house.is_sound().await;
}

#[tokio::test]
async fn nobody_else_comes_to_it_and_there_is_an_end_to_it() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    let place = begin(&mut ines, &family, 60).await;
    piece(&mut ines, &place, (0, &picture(1)[..20])).await.answers(204);
    for method in ["HEAD", "GET", "DELETE"] {
        bram.ask(method, &place).await.answers(404);
    }
    piece(&mut bram, &place, (20, b"x")).await.answers(404);
    put_in(&mut bram, &family, &[(&place, 20, "hers.png")]).await;
    bram.sees("0 of 1 put in the tray").sees("It did not arrive whole.");
    let mut delia = family.browser("Delia").await;
    let begins = family.at("/papers/tray/sending");
    delia.piece("POST", &begins, &[], &[]).await.answers(404);
    // From a page elsewhere nothing is taken.
    ines.comes_from("cross-site");
    ines.piece("POST", &begins, &[], &[]).await.answers(403);
    piece(&mut ines, &place, (20, b"x")).await.answers(403);
    ines.comes_from("same-origin");
    ines.ask("HEAD", &place).await.answers(204);
    assert_eq!(offset(&ines), "20");
    let announced = [("upload-length", "83886081")];
    ines.piece("POST", &begins, &announced, &[]).await.answers(413).sees("larger than 80 MB");
    ines.ask("DELETE", &place).await.answers(204);
    ines.ask("HEAD", &place).await.answers(404);
    for _ in 0..60 {
        begin(&mut ines, &family, 1).await;
    }
    ines.piece("POST", &begins, &[], &[]).await.answers(429).sees("60 files are on their way");
    // What is under way is in no backup.
    let file = family.house.folder().join("../b.zip");
    let made = kinsheaf::platform::backup::make(family.house.folder(), &file, family.house.now());
    made.await.expect("made");
    let names = crate::support::archive::Archive::read(&file);
    assert!(names.names().iter().all(|it| !it.contains("sending")), "{:?}", names.names());
    fs::remove_file(file).expect("removed");
    family.house.is_sound().await;
}
