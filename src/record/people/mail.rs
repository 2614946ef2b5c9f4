//! What mail and calendar feeds may say of a record: by itself nothing but what kind of thing and
//! when; with names also titles and clinicians' names, never a diagnosis, a medicine or a
//! directive.
//!
//! It is the record's own setting, for everyone who gets mail about it: the person decides, or a
//! steward. Mail passes many hands that this house does not know.

use super::{model::Person, store};
use crate::platform::{
    auth::{
        area::{Essentials, Role},
        grant::{Change, Grant},
    },
    db::Done,
    error::{Error, Result},
    web::{
        form::{Choice, Form, FormErrors, FromForm, Reader},
        page::Page,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use std::fmt;

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, serde::Serialize, sqlx::Type)]
#[serde(rename_all = "lowercase")]
#[sqlx(rename_all = "lowercase")]
pub enum MailSays {
    #[default]
    Nothing,
    Names,
}

impl Choice for MailSays {
    const ALL: &'static [MailSays] = &[MailSays::Nothing, MailSays::Names];

    fn words(self) -> &'static str {
        match self {
            MailSays::Nothing => "Only what kind of thing it is, and when",
            MailSays::Names => {
                "Also the titles of appointments and tasks, and the names of clinicians"
            }
        }
    }
}

impl fmt::Display for MailSays {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

impl MailSays {
    pub fn short(self) -> &'static str {
        match self {
            MailSays::Nothing => "what kind of thing, and when; no names",
            MailSays::Names => "titles and names of clinicians as well",
        }
    }
}

impl Person {
    /// Whether titles and clinicians' names may stand in mail and in calendar feeds.
    pub fn mail_names(&self) -> bool {
        self.mail_says == MailSays::Names
    }

    pub fn saying(&self, mail_says: MailSays) -> Person {
        Person { mail_says, ..self.clone() }
    }
}

pub fn may_choose(role: Role) -> bool {
    role.decides()
}

/// What was chosen.
pub struct Chosen {
    pub says: MailSays,
    pub version: i64,
}

impl FromForm for Chosen {
    fn read(form: &mut Reader) -> std::result::Result<Chosen, FormErrors> {
        let (says, version) = (form.choice("mail_says"), form.version());
        form.finish(|| Some(Chosen { says: says?, version }))
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "people/mail.html")]
pub struct MailPage {
    page: Page,
    typed: Typed,
    person: Person,
}

impl MailPage {
    fn choices(&self) -> impl Iterator<Item = &'static str> {
        MailSays::ALL.iter().map(|it| it.words())
    }
}

type Changing = Grant<Change<Essentials>>;

fn decides(grant: &Changing) -> Result<()> {
    if may_choose(grant.role()) { Ok(()) } else { Err(Error::Forbidden) }
}

pub async fn choosing(grant: Changing, typed: Typed) -> Result<MailPage> {
    decides(&grant)?;
    let person = store::find(&grant.view().await?).await?;
    let typed = typed.with("mail_says", person.mail_says);
    Ok(MailPage { page: grant.page("What mail may say"), typed, person })
}

pub async fn choose(grant: Changing, form: Form<Chosen>) -> Done {
    decides(&grant)?;
    let Chosen { says, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write).await?.opened_at(version)?;
    store::save(&mut write, &before, &before.saying(says)).await?;
    write.commit().await?.then(urls::person()).saying("Saved what mail may say")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{check::Check, clock::Instant, ids::MemberId, text::Line, zone::Zone};
    use time::macros::date;

    #[test]
    fn nothing_is_said_until_someone_decides_and_the_check_of_the_page_stays() {
        let name = Line::from("Ottoline".to_owned());
        let person = Person::new(name.clone(), date!(1944 - 03 - 09), Zone::utc());
        assert!(!person.mail_names());
        let at = Instant::from_unix(0);
        let checked = person.checked(Check { at, by: MemberId::from(2), against: name });
        let with = checked.saying(MailSays::Names);
        assert!(with.mail_names() && with.check().is_some());
        // Typed anew, what mail may say stays.
        assert!(with.edited(person).mail_names());
    }
}
