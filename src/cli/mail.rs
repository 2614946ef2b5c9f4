//! `kinsheaf mail test`: a test mail to an address, and the mail server's own answer.

use super::{Outcome, print, system_clock};
use crate::{
    base::reach::Email,
    platform::{config::Config, mail::Carrier},
};

pub async fn test(config: Config, typed: &str) -> Outcome {
    let to = Email::parse(typed).ok_or("That is not an e-mail address.")?;
    let carrier = Carrier::of(&config)?;
    if !carrier.leaves() {
        println!("No mail server is set (KINSHEAF_SMTP_URL), so it is laid into a file.");
    }
    match carrier.test(&to, config.base(), system_clock().now()).await {
        Ok(said) => {
            Ok(print(&format!("The test mail to {to} was handed over. The answer: {said}")))
        }
        Err(refused) => {
            let says =
                format!("The test mail to {to} was not taken. The answer: {}", refused.words());
            Err(says.into())
        }
    }
}
