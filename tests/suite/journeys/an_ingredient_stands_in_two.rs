//! One ingredient in two medicines: read off the labels, added up, named with a limit and whose it
//! is, made a question; and no trace of it where one of the two is hidden.

use crate::support::{Browser, Family};

const ALWAYS: &str = "Age, liver, kidneys and alcohol can lower it. Ask the pharmacist.";

/// Two products with acetaminophen in them, taken every day.
async fn two_products(ines: &mut Browser, family: &Family) {
    for (id, name, strength, times, amount) in
        [(1, "Acetaminophen", "500 mg", "2", "500"), (2, "Night rest", "", "1", "1,000")]
    {
        ines.open(&family.at("/medicines/add")).await.fill("Name", name);
        ines.fill("Strength", strength).fill("Form", "tablet").press("Add this medicine").await;
        ines.answers(200).press("When and how much").await.fill("morning", times);
        ines.fill("evening", times).press("Save").await.answers(200);
        ines.press("Ingredients").await;
        if id == 1 {
            ines.sees("only proposed from the strength");
            assert_eq!(
                (ines.value("Ingredient"), ines.value("How much of it")),
                (name.into(), amount.into())
            );
            assert_eq!(ines.value("Unit of the amount"), "mg");
        } else {
            ines.does_not_see("only proposed").fill("Ingredient", "acetaminophen");
            ines.fill("How much of it", amount).fill("Unit of the amount", "mg");
        }
        ines.press("Save").await.answers(200).sees("mg in 1 tablet");
    }
}

#[tokio::test]
async fn it_is_added_up_and_asked_about() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    two_products(&mut ines, &family).await;
    bram.open(&family.at("/today")).await;
    bram.press("Acetaminophen stands in 2 medicines: ask the pharmacist").await.answers(200);
    bram.sees("together in a day 4,000 mg").sees(ALWAYS);
    bram.sees("general adult figure, self-care, from 21 CFR 201.326");
    let (method, address, form) = bram.pressed_starting("Make it a question");
    assert_eq!(method, "POST");
    let to = bram.send(&address, &form).await.answers(303).at.clone();
    bram.open(&to).await.sees("Acetaminophen stands in 2 medicines. Is that meant?");
    bram.sees("4,000 mg in a day").sees("the pharmacist");
    bram.open(&family.at("/today")).await.does_not_see("stands in 2 medicines: ask");
    ines.open(&family.at("/ingredients")).await.sees("Asked about:").does_not_see("Make it");

    // A label of the house stands for the general figure. What is let go leaves it open again.
    ines.open(&family.at("/medicines/2/ingredients/2/edit")).await;
    ines.fill("The label's most of it in 24 hours", "3").press("Save").await.answers(422);
    ines.sees("Write the unit, like mg").fill("Unit of the most", "g");
    ines.fill("How much of it", "1,000.5").press("Save").await.answers(200);
    ines.open(&family.at("/ingredients")).await.sees("together in a day 4,001 mg");
    ines.sees("limit in 24 hours 3 g , label of Night rest tablet")
        .does_not_see("general adult")
        .sees(ALWAYS);
    for verdict in ["within", "under the", "over the", "above", "too much", "safe"] {
        ines.does_not_see(verdict);
    }
    ines.open(&family.at("/questions/1/let-go"))
        .await
        .fill("Why it need not be asked", "typed wrong");
    ines.press("Let it go").await.answers(200);
    ines.open(&family.at("/today")).await.sees("stands in 2 medicines: ask the pharmacist");

    ines.open(&family.at("/medicines/2/hold"))
        .await
        .fill("Why", "a test")
        .fill("Who said so", "the clinic");
    ines.press("Hold").await.answers(200);
    ines.open(&family.at("/today")).await.does_not_see("stands in 2 medicines: ask");
    ines.open(&family.at("/ingredients"))
        .await
        .sees("on hold: not added")
        .sees("together in a day 2,000 mg");
    ines.open(&family.at("/medicines/2/ingredients/2/strike")).await.press("Strike").await;
    ines.answers(200).open(&family.at("/ingredients")).await;
    ines.sees("No ingredient that is written down stands in two");
    ines.sees("In one medicine only, with a limit").sees("What is in them is not written down");
    ines.open(&family.at("/history"))
        .await
        .sees("struck as a mistake acetaminophen, in Night rest");
    ines.sees("before: 1,000 after: 1,000.5")
        .sees("Ines added the ingredient Acetaminophen, in Acetaminophen");
    family.house.is_sound().await;
}

#[tokio::test]
async fn where_one_of_the_two_is_hidden_nothing_tells_of_it() {
    let family = Family::new().await;
    let (mut ines, mut bram) = (family.browser("Ines").await, family.browser("Bram").await);
    two_products(&mut ines, &family).await;
    ines.open(&family.at("/visibility/medicine/2")).await.tick("Bram").press("Save").await;
    for page in ["/today", "/ingredients", "/history", "/medicines/1"] {
        bram.open(&family.at(page)).await.answers(200).does_not_see("Night rest");
        bram.does_not_see("stands in 2").does_not_see("together in a day 4,000 mg");
    }
    bram.open(&family.at("/ingredients")).await.sees("together in a day 2,000 mg");
    bram.get(&family.at("/medicines/2/ingredients/2/edit")).await.answers(404);
    // Nor under the address of a medicine that he sees.
    bram.get(&family.at("/medicines/1/ingredients/2/edit")).await.answers(404);
    family.house.is_sound().await;
}
