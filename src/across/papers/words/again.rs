//! What could not be read of a paper is tried once more: the program for it was put in order, or a
//! language was added to it.

use super::super::Changing;
use crate::{
    base::ids::PaperId,
    platform::{
        db::Done,
        web::{
            form::{Form, Press},
            path::At,
            urls,
        },
    },
    record::papers::{store, text::store as texts},
};

pub async fn read_again(grant: Changing, At(id): At<PaperId>, _: Form<Press>) -> Done {
    let write = grant.write().await?;
    let paper = store::find(&write, id).await?;
    let says = match texts::again(&write, paper.id).await? {
        0 => "Nothing of it is to be read again",
        _ => "It is read again within a few minutes",
    };
    write.commit().await?.then(urls::paper(paper.id)).saying(says)
}
