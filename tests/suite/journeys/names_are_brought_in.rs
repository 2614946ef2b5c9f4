//! Names of medicines from a list: brought in at the command line, offered while typing, proposed
//! and never decided; and everything works without them.

use crate::support::Family;
use kinsheaf::cli::import_names::{Counts, import};

const LIST: &str = include_str!("../fixtures/names.rrf");

#[tokio::test]
async fn names_are_offered_and_proposed() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.get("/names?start=ac").await.answers(200);
    assert_eq!(ines.body, b"[]", "nothing was brought in yet");
    let counts = import(&family.house.operator(), LIST.as_bytes()).await.expect("imported");
    assert_eq!(counts, Counts { read: 10, kept: 7 });
    ines.get("/names?start=AC").await.answers(200);
    assert_eq!(ines.body, br#"["acetaminophen","acetaminophen / codeine"]"#);
    ines.get("/names?start=calm").await.answers(200);
    assert_eq!(ines.body, br#"["Calmadol"]"#);
    for start in ["a", "", "zz", "%25", "'%20or%201=1"] {
        ines.get(&format!("/names?start={start}")).await.answers(200);
        assert_eq!(ines.body, b"[]", "{start}");
    }

    ines.open(&family.at("/medicines/add")).await.fill("Name", "Calmadol");
    ines.press("Add this medicine").await.answers(200).press("Ingredients").await;
    ines.sees("The list of names has in it: acetaminophen, codeine phosphate");
    assert_eq!(ines.value("Ingredient"), "acetaminophen");
    ines.press("Save").await.answers(200).press("Another ingredient").await;
    assert_eq!(ines.value("Ingredient"), "codeine phosphate");
    ines.open(&family.at("/ingredients")).await.does_not_see("codeine phosphate");

    // A list that says the ingredient: proposed as the same, for a person to say.
    ines.open(&family.at("/reconciliation/add")).await.tick("a clinic's printout");
    ines.fill("Whose list it is", "the clinic").fill("The list", "Acetaminophen 325 mg capsule");
    ines.press("Take it in").await.answers(200).open(&family.at("/reconciliation/1")).await;
    ines.sees("Possibly the same ingredient").sees("The list of names has the one in the other.");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_second_import_takes_the_place_and_a_wrong_file_changes_nothing() {
    let family = Family::new().await;
    let (mut ines, operator) = (family.browser("Ines").await, family.house.operator());
    import(&operator, LIST.as_bytes()).await.expect("imported");
    let wrong = format!("{}\nname;strength\n", LIST.lines().next().expect("a line"));
    for (text, says) in [
        (wrong.as_str(), "line 2: RXNCONSO.RRF has 18 columns with a bar after each; here are 1"),
        ("", "there is no name in it; nothing was changed"),
    ] {
        let refused = import(&operator, text.as_bytes()).await.expect_err("refused");
        assert_eq!(refused.to_string(), says);
    }
    ines.get("/names?start=ibu").await;
    assert_eq!(ines.body, br#"["ibuprofen"]"#);
    let one = LIST.lines().next().expect("a line");
    import(&operator, one.as_bytes()).await.expect("imported");
    ines.get("/names?start=ibu").await;
    assert_eq!(ines.body, b"[]");
    family.house.is_sound().await;
}

/// As long as the real list: no more than a line of it is held.
#[tokio::test]
async fn a_long_list_is_read() {
    let family = Family::new().await;
    let line = |at: usize| format!("{at}|ENG||||||1||1||RXNORM|SCD|1|name {at}||N||\n");
    let long: String = (0..200_000).map(line).chain([LIST.to_owned()]).collect();
    let counts = import(&family.house.operator(), long.as_bytes()).await.expect("imported");
    assert_eq!(counts, Counts { read: 200_010, kept: 7 });
}
