//! A family with one of everything that an address can name: each has the id 1.

use super::{Browser, Family, html, paper};

impl Family {
    pub async fn with_one_of_everything() -> Family {
        let family = Family::new().await;
        let mut ines = family.browser("Ines").await;
        one_of_everything(&mut ines, (&family.at(""), "1")).await;
        family
    }

    /// The same with a second record, Emeric's, in which Ines is the steward: there each has the
    /// id 2, and her place the id 6.
    pub async fn with_two_records() -> (Family, Browser) {
        let family = Family::with_one_of_everything().await;
        let mut ines = family.browser("Ines").await;
        ines.open("/records/add").await.fill("Name", "Emeric Varga").fill("Born on", "2 Nov 1941");
        ines.press("Start the record").await.answers(200);
        one_of_everything(&mut ines, ("/p/2", "2")).await;
        (family, ines)
    }
}

/// In this record, where each thing gets this id.
async fn one_of_everything(ines: &mut Browser, (record, id): (&str, &str)) {
    for (page, label, press) in [
        ("/medicines/add", "Name", "Add this medicine"),
        ("/medicines/{id}/steps/add", "morning", "Save"),
        ("/medicines/{id}/ingredients/add", "Ingredient", "Save"),
        ("/medicines/{id}/stock/fills/add", "How many", "Save"),
        ("/medicines/{id}/stock/counts/add", "How many", "Save"),
        ("/medicines/{id}/hold", "Who said so", "Hold"),
        ("/changes/{id}/tell", "Someone else's name", "Keep that they were told"),
        ("/allergies/add", "To what", "Add to the list"),
        ("/contacts/add", "Name", "Add this contact"),
        ("/conditions/add", "Name", "Add this condition"),
        ("/operations/add", "What was done", "Add this operation"),
        ("/usual/edit", "Usual mood", "Save"),
        ("/happenings/add", "In a few words", "Keep it"),
        ("/noticed/add", "What you saw", "Keep it"),
        ("/decisions/add", "What is to be decided", "Put it up"),
        ("/decisions/{id}/decide", "What was decided", "Write it down"),
        ("/directives/add", "Whose form it is", "Add this directive"),
        ("/directives/{id}/copies/add", "Or in words", "Write it down"),
        ("/directives/events/add", "In a few words", "Write it down"),
        ("/questions/add", "The question", "Keep the question"),
        ("/appointments/add", "What it is", "Keep this appointment"),
        ("/tasks/add", "What is to be done", "Keep the task"),
        ("/renewals/add", "What it is", "Write it down"),
        ("/coverage/add", "Who pays", "Add this cover"),
        ("/coverage/cards/add", "What the card is called", "Keep the card"),
        ("/coverage/refusals/add", "What the refusal says", "Keep it"),
        ("/coverage/refusals/{id}/calls/add", "With whom", "Write it down"),
        ("/carried/add", "In a few words", "Keep it"),
        ("/visits/add", "Or by name", "Save the note"),
        ("/visits/add", "What else was said", "Keep as a draft"),
        ("/reconciliation/add", "Whose list it is", "Take it in"),
        ("/family/invite", "Name", "Make the invitation"),
        ("/family/answers/add", "The question", "Keep this answer"),
    ] {
        let address = format!("{record}{page}").replace("{id}", id);
        ines.open(&address).await.fill(label, "Something");
        match page {
            "/medicines/{id}/steps/add" => ines.fill("morning", "1"),
            // A plan: the medicine itself goes on being taken.
            "/medicines/{id}/hold" => {
                ines.fill("Why", "Something").fill("From which day", "3 Dec 2026")
            }
            page if page.contains("/stock/") => ines.fill("How many", "30"),
            "/allergies/add" => ines.tick("allergy"),
            "/contacts/add" => ines.fill("Phone", "218-555-0101"),
            "/renewals/add" => ines.fill("Its last day", "15 Jan 2027"),
            "/carried/add" => ines.tick("an errand"),
            "/usual/edit" => ines.fill("Said by", "Emeric"),
            "/decisions/{id}/decide" => {
                ines.fill("Why", "Something").fill("Who decides", "Ines");
                ines.fill("What the person said of it", "Something");
                ines.tick("by agreement of the family")
            }
            "/coverage/add" => ines.tick("a Medicare drug plan"),
            "/coverage/cards/add" => ines.attach("Photo of the front", &html::photo()),
            "/coverage/refusals/add" => ines.fill("Which medicine", id).tick("the prescriber"),
            "/coverage/refusals/{id}/calls/add" => ines.fill("What was said", "Something"),
            "/noticed/add" => ines.tick("mood"),
            "/directives/add" => ines.tick("living will").fill("Signed on", "3 May 2022"),
            "/directives/events/add" => {
                ines.tick("a move to another state").fill("On which day", "2 Nov 2026")
            }
            "/reconciliation/add" => {
                ines.fill("The list", "Something").tick("the bottles on the table")
            }
            "/appointments/add" => ines
                .fill("Day", "18 Nov 2026")
                // Who goes along to both is not at two places at once.
                .fill("Time", if id == "1" { "2 pm" } else { "4 pm" })
                .tick("every so many weeks, on these days"),
            "/family/invite" => ines.tick("relative"),
            "/family/answers/add" => ines.tick("yes").tick("in person"),
            _ => &mut *ines,
        };
        ines.press(press).await.answers(200);
    }
    ines.open(&format!("{record}/papers/tray/add")).await;
    ines.attach("Photos or PDFs", &paper::picture(1)).press("Put them in the tray").await;
    ines.open(&format!("{record}/papers/{id}/file")).await.fill("Title", "Something");
    ines.fill("Kind", "letter").press("File it").await.answers(200);
    doses(ines, record, id).await;
    // One of the weekly ones differs: who goes along.
    ines.open(&format!("{record}/appointments/{id}/on/2026-11-25/go")).await;
    ines.press("I will go along").await.answers(200);
}

/// The log is kept of the medicine, and its dose of this morning is entered.
async fn doses(ines: &mut Browser, record: &str, id: &str) {
    ines.open(&format!("{record}/medicines/given/keeping")).await.tick("Something");
    ines.press("Save").await.answers(200);
    ines.press("All of the morning given").await.answers(200);
    ines.open(&format!("{record}/medicines/given/{id}")).await.answers(200);
}
