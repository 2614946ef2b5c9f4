//! A phone without a network: the emergency sheet that was kept as a file, the house on the home
//! screen, and the shell that stays on the phone, with nothing of a record in it.

use crate::support::{Browser, Family, TestHouse};
use axum::http::HeaderMap;
use serde_json::Value;

fn header<'a>(headers: &'a HeaderMap, name: &str) -> &'a str {
    headers.get(name).map_or("", |it| it.to_str().expect("text"))
}

/// Keeps the sheet from this page, and gives the name of the file.
async fn kept(browser: &mut Browser, page: &str) -> String {
    browser.open(page).await.sees("make a new one after changes");
    let (method, address, fields) = browser.pressed("Keep on this phone");
    assert_eq!(method, "POST");
    browser.send(&address, &fields).await.answers(200);
    assert_eq!(header(&browser.headers, "content-type"), "application/pdf");
    assert_eq!(header(&browser.headers, "cache-control"), "no-store");
    assert!(browser.body.starts_with(b"%PDF-"));
    header(&browser.headers, "content-disposition").to_owned()
}

#[tokio::test]
async fn the_emergency_sheet_is_kept_as_a_file_and_noted_as_a_print() {
    let family = Family::new().await;
    let mut delia = family.browser("Delia").await;
    let named = "attachment; filename=\"emergency-sheet-2026-11-25.pdf\"";
    for page in ["/sheets/emergency", "/sheets"] {
        assert_eq!(kept(&mut delia, &family.at(page)).await, named);
    }
    delia.open(&family.at("/sheets")).await.sees("by Delia").sees("says the same as now");
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/history")).await.sees("Delia printed the emergency sheet");
    family.house.is_sound().await;
}

/// What the W3C's Web Application Manifest asks of the members that a browser needs to install
/// (section 1, members; section 5, icons; from memory).
#[tokio::test]
async fn the_manifest_is_one_at_any_path() {
    for base in ["", "/our/care"] {
        let house = TestHouse::at(&format!("http://127.0.0.1:8317{base}")).await;
        let mut phone = Browser::new(&house.app);
        phone.open(&format!("{base}/sign-in")).await.answers(200);
        let linked = format!("href=\"{base}/manifest.webmanifest\"");
        assert!(String::from_utf8_lossy(&phone.body).contains(&linked), "{linked}");
        phone.get(&format!("{base}/manifest.webmanifest")).await.answers(200);
        assert_eq!(header(&phone.headers, "content-type"), "application/manifest+json");
        let manifest: Value = serde_json::from_slice(&phone.body).expect("JSON");
        let text = |name: &str| manifest[name].as_str().unwrap_or_default().to_owned();
        assert_eq!((text("name"), text("short_name")), ("Kinsheaf".into(), "Kinsheaf".into()));
        assert!(text("short_name").chars().count() <= 12, "a name below an icon");
        let root = format!("{base}/");
        assert_eq!(
            (text("id"), text("scope"), text("start_url")),
            (root.clone(), root.clone(), root)
        );
        assert_eq!(text("display"), "standalone");
        for colour in ["theme_color", "background_color"] {
            let colour = text(colour);
            assert!(colour.len() == 7 && colour.starts_with('#'), "{colour}");
            let style = include_str!("../../../static/style.css");
            assert!(style.contains(&colour), "{colour} is not the stylesheet's");
        }
        icons(&mut phone, manifest["icons"].as_array().expect("icons")).await;
    }
}

/// Each is what it says it is: the kind, and for a PNG the size that stands in its header
/// (W3C PNG, section 11.2.1: width and height are bytes 16 to 23).
async fn icons(phone: &mut Browser, icons: &[Value]) {
    let mut sizes = Vec::new();
    for icon in icons {
        let text = |name: &str| icon[name].as_str().expect("text");
        phone.get(text("src")).await.answers(200);
        assert_eq!(header(&phone.headers, "content-type"), text("type"));
        if text("type") == "image/png" {
            let side = |from: usize| phone.body[from..from + 4].try_into().map(u32::from_be_bytes);
            let (wide, high) = (side(16).expect("bytes"), side(20).expect("bytes"));
            assert_eq!(text("sizes"), format!("{wide}x{high}"));
            assert!(text("purpose").contains("maskable"));
        }
        sizes.push(text("sizes").to_owned());
    }
    assert_eq!(sizes, ["any", "192x192", "512x512"]);
}

/// What stands behind `const NAME =` in the script.
fn constant(script: &str, name: &str) -> Value {
    let line = script.lines().find(|it| it.starts_with(&format!("const {name} = ")));
    let (_, value) = line.expect(name).split_once(" = ").expect("a value");
    serde_json::from_str(value.trim_end_matches(';')).expect(name)
}

#[tokio::test]
async fn the_shell_is_the_look_and_nothing_of_a_record() {
    for base in ["", "/care"] {
        let house = TestHouse::at(&format!("http://127.0.0.1:8317{base}")).await;
        let family = Family::in_house(house).await;
        let mut ines = family.browser("Ines").await;
        ines.get(&format!("{base}/sw.js")).await.answers(200);
        assert_eq!(header(&ines.headers, "content-type"), "text/javascript; charset=utf-8");
        let script = String::from_utf8(ines.body.clone()).expect("text");
        let shell = constant(&script, "SHELL");
        let shell: Vec<&str> =
            shell.as_array().expect("a list").iter().filter_map(Value::as_str).collect();
        let offline = constant(&script, "OFFLINE");
        assert_eq!(offline, format!("{base}/offline"));
        assert_eq!(shell.len(), 8);
        for at in shell {
            let ours = at.starts_with(&format!("{base}/static/")) || offline == at;
            assert!(ours, "{at} is kept");
            // Signed in or not, it is the same: it can hold nothing of anyone's.
            let own = ines.get(at).await.answers(200).body.clone();
            let mut nobody = Browser::new(&family.house.app);
            nobody.get(at).await.answers(200);
            assert!(own == nobody.body, "{at} differs by who asks");
            assert!(nobody.headers.get("set-cookie").is_none());
        }
        ines.open(&format!("{base}/offline")).await.sees("No network").sees("kept emergency sheet");
        ines.does_not_see("Ines").does_not_see("Ottoline");
    }
}
