//! A member's calendar at a secret address: made, shown once, fetched by a program that is signed in nowhere, less when her place
//! reaches less, nothing when it is paused or taken back, and nothing more to come after a death.

use crate::support::{Browser, Family};

async fn book(ines: &mut Browser, record: &str, what: &str, day: &str) {
    ines.open(&format!("{record}/appointments/add")).await.fill("What it is", what);
    ines.fill("Or a name", "Dr Quill").fill("Place", "Canal Park").fill("Day", day);
    ines.fill("Time", "9:30 am").fill("What it is for", "the eyes");
    ines.press("Keep this appointment").await.answers(200);
}

/// Makes one, and gives its address.
async fn made(browser: &mut Browser, record: &str) -> String {
    browser.open("/me").await.press("Your calendar in another program").await;
    browser.sees("Whoever has the address sees what it shows").fill("Of which records", record);
    browser.press("Make an address").await.answers(200).sees("It is shown this once.");
    let text = browser.text();
    let from = text.find("/calendar/").expect("the address");
    let end = text[from..].find(".ics").expect("its end") + from + 4;
    text[from..end].to_owned()
}

async fn fetched(family: &Family, address: &str) -> Browser {
    let mut program = Browser::new(&family.house.app);
    program.get(address).await;
    program
}

fn body(program: &Browser) -> String {
    String::from_utf8(program.body.clone()).expect("text").replace("\r\n ", "")
}

#[tokio::test]
async fn it_shows_when_and_of_whom_and_no_more() {
    let (family, mut ines) = Family::with_two_records().await;
    let mut own = family.browser("Ines").await;
    book(&mut own, &family.at(""), "Eye test", "3 Dec 2026").await;
    book(&mut ines, "/p/2", "Hearing test", "4 Dec 2026").await;
    let (all, one) = (made(&mut own, "").await, made(&mut own, "2").await);
    let program = fetched(&family, &all).await;
    assert_eq!(program.status, 200);
    let header = |name: &str| {
        program.headers.get(name).expect("a header").to_str().expect("text").to_owned()
    };
    assert_eq!(header("content-type"), "text/calendar; charset=utf-8");
    assert!(header("cache-control").starts_with("private"));
    let text = body(&program);
    // 9:30 am in Chicago in December.
    assert!(text.contains("DTSTART:20261203T153000Z") && text.contains("DTSTART:20261204T153000Z"));
    assert!(
        text.contains("SUMMARY:Appointment (Ottoline)")
            && text.contains("SUMMARY:Appointment (Emeric)")
    );
    for secret in ["Eye", "Hearing", "Quill", "Canal", "eyes", "Varga"] {
        assert!(!text.contains(secret), "{secret}: {text}");
    }
    let text = body(&fetched(&family, &one).await);
    assert!(text.contains("Emeric") && !text.contains("Ottoline"), "{text}");
    // The same again has the same mark; after a change it has another.
    let again = fetched(&family, &all).await;
    assert_eq!(again.headers.get("etag"), program.headers.get("etag"));
    own.open(&family.at("/appointments/3")).await.press("Move it").await;
    own.fill("To which day", "7 Dec 2026").press("Save").await.answers(200);
    let moved = fetched(&family, &all).await;
    assert_ne!(moved.headers.get("etag"), program.headers.get("etag"));
    assert!(
        body(&moved).contains("DTSTART:20261207T153000Z") && body(&moved).contains("SEQUENCE:1")
    );
    own.open(&family.at("/appointments/3")).await.press("Cancel").await.fill("Why", "called off");
    own.press("Cancel this one").await.answers(200);
    assert!(body(&fetched(&family, &all).await).contains("STATUS:CANCELLED"));
    family.house.is_sound().await;
}

#[tokio::test]
async fn it_shows_what_its_member_may_see_at_that_moment() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    book(&mut ines, &family.at(""), "Eye test", "3 Dec 2026").await;
    book(&mut ines, &family.at(""), "Foot care", "4 Dec 2026").await;
    let address = made(&mut bram, "").await;
    let count = |it: &Browser| body(it).matches("BEGIN:VEVENT").count();
    assert_eq!(count(&fetched(&family, &address).await), 2);
    ines.open(&family.at("/visibility/appointment/1")).await.tick("Bram").press("Save").await;
    assert_eq!(count(&fetched(&family, &address).await), 1);
    ines.open(&family.at("/family/3/areas")).await.fill("tasks", "nothing").press("Save").await;
    assert_eq!(count(&fetched(&family, &address).await), 0);
    ines.open(&family.at("/family/3/areas")).await.fill("tasks", "as the role has it");
    ines.press("Save").await.answers(200);
    assert_eq!(count(&fetched(&family, &address).await), 1);
    ines.open(&family.at("/family/3/pause")).await.press("Pause this place").await.answers(200);
    let paused = fetched(&family, &address).await;
    assert_eq!((count(&paused), paused.status.as_u16()), (0, 200));
    assert!(!body(&paused).contains("Ottoline"));
    family.house.is_sound().await;
}

#[tokio::test]
async fn names_stand_in_it_where_the_record_allows_them_and_own_tasks_too() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    book(&mut ines, &family.at(""), "Eye test", "3 Dec 2026").await;
    for (task, day) in [("Renew the card", "9 Dec 2026"), ("Phone the plan", "")] {
        bram.open(&family.at("/tasks/add")).await.fill("What is to be done", task);
        bram.fill("By which day", day).press("Keep the task").await.answers(200);
        bram.press(&format!("I take it : {task}")).await.answers(200);
    }
    let (his, hers) = (made(&mut bram, "").await, made(&mut ines, "").await);
    let text = body(&fetched(&family, &his).await);
    assert!(
        text.contains("SUMMARY:Task (Ottoline)") && text.contains("DTSTART;VALUE=DATE:20261209")
    );
    assert_eq!(
        text.matches("BEGIN:VEVENT").count(),
        2,
        "one appointment, and the task that has a day"
    );
    assert!(!text.contains("Renew") && !text.contains("Eye test"));
    assert!(!body(&fetched(&family, &hers).await).contains("Task (Ottoline)"), "it is not hers");
    ines.open(&family.at("/mail")).await;
    ines.tick("Also the titles of appointments and tasks, and the names of clinicians");
    ines.press("Save").await.answers(200);
    let text = body(&fetched(&family, &his).await);
    for name in ["Eye test (Ottoline)", "Renew the card (Ottoline)", "Dr Quill", "Canal Park"] {
        assert!(text.contains(name), "{name}: {text}");
    }
    assert!(!text.contains("the eyes"), "what it is for is never in it");
    family.house.is_sound().await;
}

#[tokio::test]
async fn it_is_taken_back_and_no_other_address_opens_anything() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    book(&mut ines, &family.at(""), "Eye test", "3 Dec 2026").await;
    let address = made(&mut bram, "").await;
    let other = address.replace(".ics", "");
    for wrong in [other.as_str(), "/calendar/0000.ics", "/calendar/.ics", &address.to_uppercase()] {
        assert_eq!(fetched(&family, wrong).await.status, 404, "{wrong}");
    }
    // Ines cannot take back what is Bram's.
    ines.send("/me/calendar/1/take-back", &[]).await.answers(404);
    bram.open("/me/calendar").await.sees("Addresses that work").does_not_see(".ics");
    let (_, take_back, form) = bram.pressed_starting("Take it back");
    bram.send(&take_back, &form).await.answers(303);
    assert_eq!(fetched(&family, &address).await.status, 404);
    bram.open("/me/calendar").await.does_not_see("Addresses that work");
    let next = made(&mut bram, "").await;
    assert_ne!(next, address);
    assert_eq!(fetched(&family, &next).await.status, 200);
    family.house.is_sound().await;
}

#[tokio::test]
async fn after_a_death_nothing_is_to_come() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    book(&mut ines, &family.at(""), "Eye test", "20 Nov 2026").await;
    book(&mut ines, &family.at(""), "Foot care", "3 Dec 2026").await;
    let address = made(&mut ines, "").await;
    assert_eq!(body(&fetched(&family, &address).await).matches("BEGIN:VEVENT").count(), 2);
    ines.open(&family.at("/died")).await.fill("Died on", "24 Nov 2026");
    ines.fill("Who told you", "the nurse").press("Go on").await.press("Yes, enter it").await;
    let text = body(&fetched(&family, &address).await);
    assert!(text.contains("20261120T") && !text.contains("20261203T"), "{text}");
    family.house.is_sound().await;
}
