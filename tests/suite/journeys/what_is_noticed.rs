//! What was noticed: plain words of what was seen, which the person sees and answers, hides or
//! keeps for the clinician only. Who sees which is the table in `record/observations`.

use crate::support::{Browser, Family};

/// Delia writes down what she saw, and it has the id 1.
async fn toast(family: &Family) -> Browser {
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/noticed")).await.press("Write down what you noticed").await;
    delia.sees("and not what you make of it").tick("eating and drinking");
    delia.fill("What you saw", "Half a slice of toast since noon");
    delia.fill("At what time of day, if you know", "at supper").press("Keep it").await;
    delia.answers(200).sees("Kept, with your name");
    delia
}

#[tokio::test]
async fn an_aide_notices_and_the_person_answers_in_her_own_words() {
    let family = Family::new().await;
    let mut delia = toast(&family).await;
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/today")).await.sees("Delia noticed Half a slice of toast");
    ottoline.open(&family.at("/noticed")).await.sees("eating and drinking · at supper · Delia");
    ottoline.press("Half a slice of toast since noon").await.press("Answer").await;
    ottoline.press("Keep this answer").await.answers(422).sees("Write the answer.");
    ottoline.fill("In own words", "I had dumplings at four.").press("Keep this answer").await;
    ottoline.answers(200).sees("Ottoline Varga says").sees("I had dumplings at four.");
    delia.open(&family.at("/noticed")).await.sees("Ottoline Varga: I had dumplings at four.");

    // Only Delia puts her words right; what was said to the old ones is told as that.
    let mut ines = family.browser("Ines").await;
    for page in ["edit", "answer", "clinician", "family"] {
        ines.get(&family.at(&format!("/noticed/1/{page}"))).await.answers(403);
    }
    family.house.pass(time::Duration::minutes(5));
    delia.open(&family.at("/noticed/1/edit")).await;
    delia.fill("What you saw", "A slice of toast since noon").press("Save").await;
    delia.answers(200).sees("got other words after this was said");
    ines.open(&family.at("/history")).await;
    ines.sees("Ottoline answered A slice of toast since noon with “I had dumplings at four.”");
    ottoline.open(&family.at("/noticed/1/answer")).await.fill("In own words", "");
    ottoline.press("Keep this answer").await.answers(200).sees("The answer is gone");
    family.house.is_sound().await;
}

#[tokio::test]
async fn who_sees_what_is_as_the_table_says() {
    let family = Family::new().await;
    let mut delia = toast(&family).await;
    let sees = async |who: &str, sees: bool| {
        let mut browser = family.browser(who).await;
        browser.open(&family.at("/noticed")).await.answers(200);
        assert_eq!(browser.text().contains("slice of toast"), sees, "the list, for {who}");
        let status = if sees { 200 } else { 404 };
        browser.get(&family.at("/noticed/1")).await.answers(status);
        if !matches!(who, "Delia" | "Rosalind") {
            for page in ["/history", "/today"] {
                browser.open(&family.at(page)).await;
                assert!(sees || !browser.text().contains("slice of toast"), "{page}, for {who}");
            }
            browser.get(&family.at("/history/observation/1")).await.answers(status);
        }
    };
    let everyone = ["Ottoline", "Delia", "Ines", "Bram", "Rosalind"];
    for who in everyone {
        sees(who, true).await;
    }
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/noticed/1")).await.press("Who sees this").await.tick("Bram");
    ottoline.press("Save").await.answers(200);
    for who in everyone {
        sees(who, who != "Bram").await;
    }
    ottoline.open(&family.at("/noticed/1")).await.press("Keep for the clinician only").await;
    ottoline.sees("Then only Ottoline Varga and Delia see it");
    ottoline.press("Keep for the clinician only").await.answers(200).sees("for the clinician only");
    for who in everyone {
        sees(who, matches!(who, "Ottoline" | "Delia")).await;
    }
    let mut ines = family.browser("Ines").await;
    ines.get(&family.at("/visibility/observation/1")).await.answers(404);
    ines.open(&family.at("/sheets/kept")).await.sees("Nothing that was noticed is written down.");
    ines.open(&family.at("/history")).await.does_not_see("clinician").does_not_see("noticed");

    // Struck, it is where it was for those who saw it, and in no list.
    delia.open(&family.at("/noticed/1/strike")).await.fill("What was wrong with it", "another day");
    delia.press("Strike").await.answers(200).does_not_see("slice of toast");
    delia.open(&family.at("/noticed/1")).await.answers(200).sees("another day");
    ines.get(&family.at("/noticed/1")).await.answers(404);
    delia.press("Bring back").await.press("Bring back").await.answers(200);
    ottoline.open(&family.at("/noticed/1")).await.press("Show the family again").await;
    ottoline.press("Show the family again").await.answers(200);
    sees("Ines", true).await;
    sees("Bram", false).await;
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_steward_enters_what_a_person_says_who_does_not_sign_in() {
    let family = Family::new().await;
    toast(&family).await;
    let mut ottoline = family.browser("Ottoline").await;
    ottoline.open(&family.at("/family/1/remove")).await.press("End this place").await.answers(200);
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/noticed/1")).await.press("Answer").await;
    ines.sees("Ottoline Varga does not sign in.").fill("In own words", "I was not hungry.");
    ines.press("Keep this answer").await.answers(200);
    ines.sees("Ottoline Varga, entered by Ines says");
    family.browser("Bram").await.get(&family.at("/noticed/1/answer")).await.answers(403);
    ines.open(&family.at("/history")).await;
    ines.sees("Ines wrote down what Ottoline Varga says of Half a slice of toast since noon");
    ines.open(&family.at("/noticed/1/clinician")).await.sees("That holds for you too");
    ines.press("Keep for the clinician only").await.answers(200);
    ines.sees("Kept for the clinician only").does_not_see("slice of toast");
    ines.get(&family.at("/noticed/1/clinician")).await.answers(404);
    // Delia alone sees it now, and can take that back when she is asked to.
    let mut delia = family.browser("Delia").await;
    delia.open(&family.at("/noticed/1")).await.press("Show the family again").await;
    delia.press("Show the family again").await.answers(200);
    ines.open(&family.at("/noticed/1")).await.sees("I was not hungry.");
    ines.open(&family.at("/history")).await;
    ines.sees("for the clinician only, on Ottoline Varga's behalf");
    family.house.is_sound().await;
}

#[tokio::test]
async fn a_fall_is_asked_about_plainly_and_a_hit_head_has_the_usual_caution() {
    let family = Family::new().await;
    let mut ines = family.browser("Ines").await;
    ines.open(&family.at("/noticed/add")).await.tick("a fall").fill("What you saw", "Slid down");
    ines.press("Keep it").await.answers(422);
    assert_eq!(ines.text().matches("Choose one of these.").count(), 6, "three, each said twice");
    ines.choose("Got up", "was helped up")
        .choose("Hurt", "not known")
        .choose("Hit the head", "yes");
    ines.fill("Where", "beside the bed").press("Keep it").await;
    ines.answers(200).sees("After a hit on the head").sees("Call 911").sees("was helped up");
    ines.does_not_see("score").does_not_see("risk");
    let person = family.at("/edit");
    ines.open(&person).await.fill("Emergency number", "112").press("Save").await.answers(200);
    ines.open(&family.at("/noticed/1")).await.sees("Call 112");
    ines.open(&family.at("/noticed")).await;
    ines.sees("beside the bed; got up: was helped up; hit the head: yes; hurt: not known");
    // What turns out to be no fall loses what was asked of one.
    ines.open(&family.at("/noticed/1/edit")).await.tick("walking and getting up");
    ines.press("Save").await.answers(200).does_not_see("hit the head");
    family.house.is_sound().await;
}

#[tokio::test]
async fn the_list_is_by_day_and_by_what_it_is_about() {
    let family = Family::new().await;
    let mut bram = family.browser("Bram").await;
    for (about, on, words) in [
        ("sleep", "24 Nov 2026", "Up twice"),
        ("money", "25 Nov 2026", "Two receipts"),
        ("sleep", "25 Nov 2026", "Slept till nine"),
    ] {
        bram.open(&family.at("/noticed/add")).await.tick(about).fill("On which day", on);
        bram.fill("What you saw", words).press("Keep it").await.answers(200);
    }
    bram.open(&family.at("/noticed")).await;
    let text = bram.text();
    let at = |words: &str| text.find(words).unwrap_or_else(|| panic!("{words}: {text}"));
    assert!(at("Wed 25 Nov 2026, today") < at("Slept till nine"));
    assert!(at("Slept till nine") < at("Two receipts") && at("Two receipts") < at("Tue 24 Nov"));
    bram.fill("What it is about", "sleep").press("Show").await;
    bram.sees("Up twice").sees("Slept till nine").does_not_see("Two receipts");
    bram.open(&family.at("/noticed/add")).await.tick("mood").fill("On which day", "26 Nov 2026");
    bram.fill("What you saw", "x").press("Keep it").await.answers(422);
    bram.sees("This day has not come yet.");
    family.house.is_sound().await;
}
