//! What is in the tablets for the hip, read off their label by Ines.

use super::{Telling, line};
use crate::{
    base::quantity::Quantity,
    platform::{auth::area::Clinical, error::Result},
    record::medicines::{
        ingredients::{
            model::{Entry, Ingredient},
            store,
        },
        store as medicines,
    },
};

impl Telling<'_> {
    pub(super) async fn ingredient_read_off(&self) -> Result<()> {
        self.day(1, (20, 40));
        let mut write = self.write::<Clinical>("Ines").await?;
        let all = medicines::current(&write).await?;
        if let Some(medicine) = all.iter().find(|it| it.name.as_str() == "Acetaminophen") {
            let entry = Entry {
                name: line("Acetaminophen"),
                amount: Some((Quantity::whole(500), line("mg"))),
                per: Quantity::ONE,
                counted: line("tablet"),
                most: Some((Quantity::whole(3_000), line("mg"))),
            };
            let new = Ingredient::new(medicine.id, entry, (write.member(), write.at()));
            store::add(&mut write, &new).await?;
        }
        write.commit().await.map(|_| ())
    }
}
