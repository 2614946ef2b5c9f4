//! A family with one of everything that an address can name: each has the id 1.

use super::Family;

impl Family {
    pub async fn with_one_of_everything() -> Family {
        let family = Family::new().await;
        let mut ines = family.browser("Ines").await;
        for (page, label, press) in [
            ("/medicines/add", "Name", "Add this medicine"),
            ("/medicines/1/steps/add", "morning", "Save"),
            ("/allergies/add", "To what", "Add to the list"),
            ("/contacts/add", "Name", "Add this contact"),
            ("/conditions/add", "Name", "Add this condition"),
            ("/operations/add", "What was done", "Add this operation"),
            ("/usual/edit", "Usual mood", "Save"),
            ("/happenings/add", "In a few words", "Keep it"),
            ("/family/invite", "Name", "Make the invitation"),
            ("/family/answers/add", "The question", "Keep this answer"),
        ] {
            ines.open(&family.at(page)).await.fill(label, "Something");
            match page {
                "/medicines/1/steps/add" => ines.fill("morning", "1"),
                "/allergies/add" => ines.tick("allergy"),
                "/contacts/add" => ines.fill("Phone", "218-555-0101"),
                "/usual/edit" => ines.fill("Said by", "Emeric"),
                "/family/invite" => ines.tick("relative"),
                "/family/answers/add" => ines.tick("yes").tick("in person"),
                _ => &mut ines,
            };
            ines.press(press).await.answers(200);
        }
        family
    }
}
