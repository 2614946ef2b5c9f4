//! Ines keeps two records in two tabs. A form is kept in the record in which it was opened,
//! whatever was opened since, and the line about it names that person.

use crate::support::Family;

#[tokio::test]
async fn a_form_opened_for_ottoline_lands_in_her_record() {
    let (family, mut one) = Family::with_two_records().await;
    one.open("/p/1/medicines/add").await.fill("Name", "Warfarin");
    // The other tab of the same browser: the same sign-in, another page.
    let mut other = family.browser("Ines").await;
    other.open("/p/2/medicines/add").await.sees("Emeric Varga");
    one.press("Add this medicine").await.answers(200);
    one.sees("In the record of Ottoline Varga: Added Warfarin").does_not_see("Emeric Varga");
    other.open("/p/2/medicines").await.does_not_see("Warfarin");
    other.open("/p/1/medicines").await.sees("Warfarin");

    // Sent again with the other's address typed over its own, it is answered as it was then: one
    // form has one effect, in one record.
    one.open("/p/1/medicines/add").await.fill("Name", "Iron");
    let (_, address, form) = one.pressed("Add this medicine");
    assert_eq!(address, "/p/1/medicines/add");
    one.send(&address, &form).await.answers(303);
    one.send("/p/2/medicines/add", &form).await.answers(303);
    assert!(one.at.starts_with("/p/1/"), "{}", one.at);
    other.open("/p/2/medicines").await.does_not_see("Iron");
    family.house.is_sound().await;
}

/// The line may be read on whatever page comes next: it names the record of the write.
#[tokio::test]
async fn the_line_names_the_person_also_on_the_page_of_another() {
    let (family, mut ines) = Family::with_two_records().await;
    ines.open("/p/1/contacts/add").await.fill("Name", "Juno Varga").fill("Phone", "617-555-0103");
    let (_, address, form) = ines.pressed("Add this contact");
    ines.send(&address, &form).await.answers(303);
    ines.open("/p/2/contacts").await.sees("In the record of Ottoline Varga: Added Juno Varga");
    ines.open("/p/2/contacts").await.does_not_see("Ottoline Varga").does_not_see("Juno");
    // What is done in no record names nobody.
    ines.open("/me/edit").await.fill("Your name", "Ines V.").press("Save").await.answers(200);
    ines.does_not_see("In the record of");
    family.house.is_sound().await;
}
