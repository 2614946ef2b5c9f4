//! What stands in a reminder: the person's first name, what kind of thing, and when, with a link that
//! needs a sign-in. Never a diagnosis, a medicine or a directive.
//!
//! With names, where the record allows them, an appointment's title and clinician or a task's title
//! stand there as well.

use super::occasion::{Occasion, Says};
use crate::{
    base::{clock::Instant, day, zone::Zone},
    platform::{
        auth::job::Recipient,
        config::Base,
        error::{Error, Result},
        mail::{Stop, Text},
        web::urls,
    },
};
use askama::Template;
use time::Date;

#[derive(Template)]
#[template(path = "mail/reminder.txt")]
struct Plain<'a>(&'a Said);

#[derive(Template)]
#[template(path = "mail/reminder.html")]
struct Html<'a>(&'a Said);

/// A reminder in its parts.
struct Said {
    name: String,
    subject: String,
    head: String,
    lines: Vec<String>,
    link: String,
    about: &'static str,
    choices: String,
    stop: String,
}

pub fn text(
    whom: &Recipient,
    it: &Occasion,
    (base, stop): (&Base, &Stop),
    now: Instant,
) -> Result<Text> {
    let subject = subject(whom, it, now);
    let said = Said {
        name: whom.name.clone(),
        head: head(whom, it),
        lines: lines(whom, it),
        link: base.absolute(&it.to.path("", whom.person)),
        about: it.kind.about(),
        choices: base.absolute(&urls::mail().path("", whom.person)),
        stop: stop.link.clone(),
        subject: subject.clone(),
    };
    let failed = |e: askama::Error| Error::Internal(e.into());
    let body = Plain(&said).render().map_err(failed)?;
    let html = Html(&said).render().map_err(failed)?;
    Ok(Text { subject, body, html })
}

/// "Ottoline: an appointment on Tue 1 Dec 2026"
pub fn subject(whom: &Recipient, it: &Occasion, now: Instant) -> String {
    let first = whom.first_name();
    match &it.says {
        Says::Appointment { on, at, named } => {
            let what = named.as_deref().unwrap_or("an appointment");
            format!("{first}: {what}, {}", near(&whom.zone, (*on, *at), now))
        }
        Says::Task { due, past: false, named } => {
            let what = named.as_deref().unwrap_or("a task");
            format!("{first}: {what} is due on {}", day::short_words(*due))
        }
        Says::Task { due, past: true, named } => {
            let what = named.as_deref().unwrap_or("a task");
            format!("{first}: {what} was due on {}", day::short_words(*due))
        }
        Says::Supply => format!("{first}: a supply needs attention"),
        Says::Renewal => format!("{first}: a paper is to be renewed"),
        Says::Trouble => format!("{first}: mail to a member did not arrive"),
        Says::Digest { new, or_more } => format!("{first}: {}", things(*new, *or_more)),
    }
}

/// "today, 9:30 am", "tomorrow, 9:30 am", "Tue 1 Dec 2026, 9:30 am": on the member's own clock.
fn near(zone: &Zone, (on, at): (Date, Option<Instant>), now: Instant) -> String {
    let (on, today) = (at.map_or(on, |at| zone.day(at)), zone.day(now));
    let day = match (on - today).whole_days() {
        0 => "today".to_owned(),
        1 => "tomorrow".to_owned(),
        _ => day::short_words(on),
    };
    match at {
        Some(at) => format!("{day}, {}", zone.clock_words(at)),
        None => day,
    }
}

fn things(new: usize, or_more: bool) -> String {
    match (new, or_more) {
        (1, false) => "1 thing is new".into(),
        (new, false) => format!("{new} things are new"),
        (new, true) => format!("{new} things or more are new"),
    }
}

/// The first sentence.
fn head(whom: &Recipient, it: &Occasion) -> String {
    let first = whom.first_name();
    match &it.says {
        Says::Appointment { named: Some(named), .. } => {
            format!("{first} has an appointment: {named}.")
        }
        Says::Appointment { .. } => format!("{first} has an appointment."),
        Says::Task { past, named, .. } => {
            let is = if *past { "was due and is not done" } else { "is due" };
            match named {
                Some(named) => format!("In the record of {first} a task {is}: {named}."),
                None => format!("In the record of {first} a task {is}."),
            }
        }
        Says::Supply => format!("In the record of {first} a supply needs attention."),
        Says::Renewal => format!("In the record of {first} a paper is to be renewed."),
        Says::Trouble => {
            format!("Mail about the record of {first} to one of its members did not arrive.")
        }
        Says::Digest { new, or_more } => {
            let since = "since you last confirmed having read";
            format!("In the record of {first} {} {since}.", things(*new, *or_more))
        }
    }
}

/// When it is, on the clock of the person and on the member's own where they differ.
fn lines(whom: &Recipient, it: &Occasion) -> Vec<String> {
    match &it.says {
        Says::Appointment { on, at: None, .. } => {
            vec![day::short_words(*on), "No time is written down.".into()]
        }
        Says::Appointment { at: Some(at), .. } => {
            let (there, here) = (&whom.whose_zone, &whom.zone);
            let mut lines = vec![format!("{}, {} time", there.in_words(*at), there.place())];
            if there.offset_differs(here, *at) {
                lines.push(format!("{} for you", here.in_words(*at)));
            }
            lines
        }
        Says::Task { due, .. } => vec![format!("Due on {}", day::short_words(*due))],
        Says::Supply => {
            vec!["Which one, and by when to act, stands in the record on the page Today.".into()]
        }
        Says::Renewal => {
            vec!["Which one, and by when to begin, stands in the record.".into()]
        }
        Says::Trouble => vec!["Whose it was, and what the mail server said, stands there.".into()],
        Says::Digest { .. } => Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{
        base::reach::Email,
        family::members::mail_choices::kind::Kind,
        platform::auth::{area::Role, policy::Reach},
    };
    use time::macros::{date, datetime};

    fn bram() -> Recipient {
        let zone = |it: &str| Zone::parse(it).expect("a zone");
        Recipient {
            member: 3.into(),
            name: "Bram".into(),
            email: Email::from("bram@example.org".to_owned()),
            zone: zone("America/Los_Angeles"),
            reach: Reach::of(Role::Relative),
            person: 1.into(),
            whose: "Ottoline Varga".into(),
            whose_zone: zone("America/Chicago"),
            names: false,
        }
    }

    fn occasion(kind: Kind, says: Says) -> Occasion {
        Occasion {
            kind,
            item_kind: "appointment",
            item: 1,
            occurrence: String::new(),
            at: Instant::from_unix(0),
            begins: None,
            until: None,
            stands: false,
            says,
            why: "",
            to: urls::today(),
        }
    }

    fn said(kind: Kind, says: Says) -> Text {
        let base = Base::parse("https://care.example.org").expect("a base");
        let now = Instant::new(datetime!(2026-11-30 15:30 UTC));
        let stop = Stop { token: "t".into(), link: "https://care.example.org/mail/stop/t".into() };
        text(&bram(), &occasion(kind, says), (&base, &stop), now).expect("a text")
    }

    #[test]
    fn an_appointment_is_said_on_both_clocks() {
        let at = Instant::new(datetime!(2026-12-01 15:30 UTC));
        let on = date!(2026 - 12 - 01);
        let mail = said(Kind::Appointment, Says::Appointment { on, at: Some(at), named: None });
        assert_eq!(mail.subject, "Ottoline: an appointment, tomorrow, 7:30 am");
        assert!(
            mail.body.contains(
                "Tue 1 Dec 2026, 9:30 am, Chicago time\nTue 1 Dec 2026, 7:30 am for you\n"
            ),
            "{}",
            mail.body
        );
        let mail = said(Kind::Appointment, Says::Appointment { on, at: None, named: None });
        assert_eq!(mail.subject, "Ottoline: an appointment, tomorrow");
    }

    #[test]
    fn nothing_typed_is_taken_for_html() {
        let named = Some("<b>Check-up</b> & \"blood\"".to_owned());
        let due = date!(2026 - 12 - 01);
        let mail = said(Kind::Task, Says::Task { due, past: false, named });
        assert!(
            mail.html.contains("&#60;b&#62;Check-up") && !mail.html.contains("<b>Check"),
            "{}",
            mail.html
        );
        assert!(mail.body.contains("is due: <b>Check-up</b> & \"blood\"."), "{}", mail.body);
    }

    #[test]
    fn what_is_said_of_a_supply_and_of_what_is_new_is_no_more_than_that() {
        let supply = said(Kind::Supply, Says::Supply);
        assert_eq!(supply.subject, "Ottoline: a supply needs attention");
        assert!(supply.body.starts_with("Hello Bram,\n\nIn the record of Ottoline a supply needs"));
        let link = "https://care.example.org/mail/stop/t";
        assert!(supply.body.contains(link) && supply.html.contains(link));
        let renewal = said(Kind::Renewal, Says::Renewal);
        assert_eq!(renewal.subject, "Ottoline: a paper is to be renewed");
        let new = said(Kind::Digest, Says::Digest { new: 100, or_more: true });
        assert_eq!(new.subject, "Ottoline: 100 things or more are new");
    }
}
