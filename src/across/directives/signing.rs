//! What is to be known before signing, by the state whose form it is: only what has a source.

use super::Seeing;
use crate::{
    platform::web::{page::Page, urls},
    record::directives::signing::{self, Row},
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "directives/signing.html")]
pub struct SigningPage {
    page: Page,
    rows: &'static [Row],
    written: String,
}

pub async fn list(grant: Seeing) -> SigningPage {
    let (rows, written) = (signing::rows(), signing::written());
    SigningPage { page: grant.page("Before signing"), rows, written }
}
