//! A question that is kept, and the press "Make it a question" beside a row of some page.

use crate::{
    platform::{
        auth::area::Clinical,
        db::{Done, Write},
        web::{
            form::{FormErrors, FromForm, Reader},
            urls,
        },
    },
    record::questions::{model::Question, store},
};

/// The row, by its name on the page.
pub struct Pressed {
    pub row: String,
}

impl FromForm for Pressed {
    fn read(form: &mut Reader) -> Result<Pressed, FormErrors> {
        Ok(Pressed { row: form.raw("row").to_owned() })
    }
}

pub async fn keep(mut write: Write<Clinical>, new: &Question) -> Done {
    let id = store::add(&mut write, new).await?;
    write.commit().await?.then(urls::question(id)).saying("Kept. Who will ask it?")
}
