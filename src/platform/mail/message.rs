//! A row of the outbox as a message: one sender, one recipient, text and the same as HTML, and the
//! headers that tell other programs what it is.
//!
//! `Auto-Submitted` keeps answering machines quiet (RFC 3834); `List-Unsubscribe` (RFC 2369) and,
//! over https, `List-Unsubscribe-Post` (RFC 8058) let a mail program offer to stop such mail.

use super::{outbox::Waiting, words};
use crate::base::clock::Instant;
use lettre::{
    Address, Message,
    message::{
        Mailbox, MultiPart,
        header::{ContentType, HeaderName, HeaderValue},
    },
};
use std::{error::Error, time::Duration};

pub type Trouble = Box<dyn Error + Send + Sync>;

pub fn build(from: &Mailbox, it: &Waiting, now: Instant) -> Result<Message, Trouble> {
    let to = Mailbox::new(None, it.recipient.parse::<Address>()?);
    let seconds = u64::try_from(now.unix()).unwrap_or(0);
    let mut builder = Message::builder()
        .from(from.clone())
        .to(to)
        .subject(words::subject(&it.subject))
        .date(std::time::UNIX_EPOCH + Duration::from_secs(seconds))
        .message_id(Some(format!("<{}>", it.message_id)))
        .raw_header(plain("Auto-Submitted", "auto-generated"));
    if let Some(link) = &it.stop_link {
        builder = builder.raw_header(plain("List-Unsubscribe", &format!("<{link}>")));
        if link.starts_with("https://") {
            let one_click = plain("List-Unsubscribe-Post", "List-Unsubscribe=One-Click");
            builder = builder.raw_header(one_click);
        }
    }
    Ok(match &it.html {
        Some(html) => {
            builder.multipart(MultiPart::alternative_plain_html(it.body.clone(), html.clone()))?
        }
        None => builder.header(ContentType::TEXT_PLAIN).body(it.body.clone())?,
    })
}

/// A header of ours, of plain letters: nothing in it needs an encoding, and a link must not be
/// broken over lines.
fn plain(name: &'static str, value: &str) -> HeaderValue {
    let name = HeaderName::new_from_ascii_str(name);
    HeaderValue::dangerous_new_pre_encoded(name, value.to_owned(), value.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn waiting(subject: &str, link: &str) -> Waiting {
        Waiting {
            id: 1,
            message_id: "0a1b@varga.example.org".into(),
            recipient: "ines@example.org".into(),
            subject: subject.into(),
            body: "A supply needs attention.".into(),
            html: Some("<p>A supply needs attention.</p>".into()),
            stop_link: Some(link.into()),
            tries: 0,
            made_at: Instant::from_unix(0),
        }
    }

    fn written(it: &Waiting) -> String {
        let from = "Kinsheaf <care@example.org>".parse().expect("a sender");
        let message = build(&from, it, Instant::from_unix(1_795_619_520)).expect("a message");
        assert_eq!(message.envelope().to().len(), 1);
        String::from_utf8(message.formatted()).expect("plain letters")
    }

    #[test]
    fn a_subject_with_line_breaks_begins_no_header() {
        let text = written(&waiting("Visit\r\nBcc: other@example.org\r\n\r\nbody", "https://x/y"));
        let heads = text.split("\r\n\r\n").next().expect("headers");
        assert!(!heads.lines().any(|it| it.to_ascii_lowercase().starts_with("bcc")), "{heads}");
        assert!(heads.contains("Subject: Visit Bcc: other@example.org body"), "{heads}");
    }

    #[test]
    fn the_headers_say_what_it_is_and_how_to_stop_it() {
        let link = format!("https://varga.example.org/care/mail/stop/{}", "0".repeat(64));
        let text = written(&waiting("A supply needs attention", &link));
        for line in [
            "Message-ID: <0a1b@varga.example.org>".to_owned(),
            "Auto-Submitted: auto-generated".to_owned(),
            format!("List-Unsubscribe: <{link}>"),
            "List-Unsubscribe-Post: List-Unsubscribe=One-Click".to_owned(),
            "Date: Wed, 25 Nov 2026 15:12:00 +0000".to_owned(),
        ] {
            assert!(text.lines().any(|it| it == line), "{line}\n--- not in ---\n{text}");
        }
        // RFC 8058, section 3.1: the one-click address is an https one.
        let plain = written(&waiting("A supply", "http://127.0.0.1:8317/mail/stop/0"));
        assert!(plain.contains("List-Unsubscribe: <http") && !plain.contains("Unsubscribe-Post"));
    }
}
