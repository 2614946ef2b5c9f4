//! A test mail to oneself: whether mail leaves this house is known when one has arrived. The mail
//! server's own answer is shown, whether it took the mail or not.

use super::{form::Pressed, pages::decides};
use crate::base::reach::Email;
use crate::platform::{
    auth::doors::Account,
    db::Done,
    error::{Error, Result},
    web::{
        form::{Form, FormErrors},
        page::Page,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "mail_choices/test.html")]
pub struct TestPage {
    page: Page,
    typed: Typed,
    email: Email,
    leaves: bool,
}

/// Who decides in no record here has no test mail to send.
async fn own_address(account: &Account) -> Result<Email> {
    if !decides(&account.records().await?) {
        return Err(Error::Forbidden);
    }
    Ok(super::super::store::find(&account.view().await?, account.member()).await?.email)
}

pub async fn form(account: Account, typed: Typed) -> Result<TestPage> {
    let email = own_address(&account).await?;
    let leaves = account.house.carrier.leaves();
    Ok(TestPage { page: account.page("A test mail"), typed, email, leaves })
}

pub async fn send(account: Account, form: Form<Pressed>) -> Done {
    let email = own_address(&account).await?;
    form.parse()?;
    let write = account.write().await?;
    // The form is kept first: a repeat of it sends no second mail.
    let kept = write.commit().await?;
    let house = &account.house;
    let answer = house.carrier.test(&email, house.config.base(), house.clock.now()).await;
    match answer {
        Ok(said) => {
            let says = format!("The test mail was handed over. The answer: {said}");
            kept.then(urls::mail()).saying(says)
        }
        Err(refused) => {
            let says = format!("The test mail was not taken. The answer: {}", refused.words());
            Err(FormErrors::at("test", says).into())
        }
    }
}
