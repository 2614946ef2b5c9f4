//! `kinsheaf member reset`: a link with which a member chooses a new password.

use super::{Outcome, database, print};
use crate::{
    base::reach::Email,
    family::members::reset,
    platform::{config::Config, error::Error},
};

pub async fn reset(config: Config, typed: &str) -> Outcome {
    let email = Email::parse(typed).ok_or("That is not an e-mail address.")?;
    let db = database(&config).await?;
    let made = reset::link(&db, &email).await;
    db.close().await;
    let (member, token) = match made {
        Ok(made) => made,
        Err(Error::NotFound) => return Err(format!("Nobody signs in here with {email}.").into()),
        Err(e) => return Err(format!("The link could not be made: {e:?}").into()),
    };
    let link = config.base().absolute(&format!("/sign-in/reset/{token}"));
    Ok(print(&format!(
        "With this link {} chooses a new password. It works once, within 24 hours:\n{link}\nIt stands in the history, and {} is told at the next sign-in.",
        member.name, member.name
    )))
}
