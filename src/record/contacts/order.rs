//! The calling order: one press moves a contact a place earlier or later.

use super::{model::Contact, store};
use crate::base::{
    ids::ContactId,
    order::{Step, places},
};
use crate::platform::{
    auth::{
        area::Essentials,
        grant::{Change, Grant},
    },
    db::Done,
    error::Result,
    web::{
        form::{Form, Press},
        page::Page,
        path::At,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "contacts/order.html")]
pub struct OrderPage {
    page: Page,
    contacts: Vec<Contact>,
}

pub async fn show(grant: Grant<Change<Essentials>>) -> Result<OrderPage> {
    let contacts = store::list(&grant.view().await?).await?;
    Ok(OrderPage { page: grant.page("Change the order"), contacts })
}

pub async fn earlier(
    grant: Grant<Change<Essentials>>,
    At(id): At<ContactId>,
    form: Form<Press>,
) -> Done {
    step(grant, id, form, Step::Earlier).await
}

pub async fn later(
    grant: Grant<Change<Essentials>>,
    At(id): At<ContactId>,
    form: Form<Press>,
) -> Done {
    step(grant, id, form, Step::Later).await
}

/// One place further, in the order as the presser sees it. Where someone has changed the contact
/// since the page was shown there is no typing to keep, so the answer is the page as it is now.
async fn step(
    grant: Grant<Change<Essentials>>,
    id: ContactId,
    form: Form<Press>,
    step: Step,
) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let found = store::find(&write, id).await?;
    let list = store::list(&write).await?;
    let line = match places(&list, |it| it.id == id, step) {
        Some((one, other)) if one.version == press.version => {
            store::save(&mut write, one, &one.moved_to(other)).await?;
            store::save(&mut write, other, &other.moved_to(one)).await?;
            match step {
                Step::Earlier => format!("{} now comes before {}", one.name, other.name),
                Step::Later => format!("{} now comes after {}", one.name, other.name),
            }
        }
        _ => format!("{} was not moved: look at the order as it is now", found.name),
    };
    write.commit().await?.then(urls::contacts().and("order")).saying(line)
}
