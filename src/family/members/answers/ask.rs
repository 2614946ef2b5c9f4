//! Writing down an answer: to a new question, to one asked before, about a member's place, and
//! (from `across`) about an item.

use super::{
    super::places::{pages::Changing, store as places},
    form::{ByAsker, ByHerself, Told},
    model::{Answer, How, Said, State, Subject},
    starters::{about_member, starters},
    store,
};
use crate::base::ids::{AnswerId, MemberId, MembershipId, PersonId};
use crate::platform::{
    auth::area::{Members, Role},
    db::{Done, View, Write},
    error::Result,
    web::{
        form::{Choice, Form, FormErrors},
        page::Page,
        path::At,
        typed::Typed,
        urls::{self, Address},
    },
};
use askama::Template;
use askama_web::WebTemplate;
use time::Date;

#[derive(Template, WebTemplate)]
#[template(path = "answers/ask.html")]
pub struct AskPage {
    page: Page,
    typed: Typed,
    name: String,
    /// Where it came from, in an address and in words.
    back: (String, String),
    starters: Vec<String>,
    /// Who may have asked; empty where the person writes it down herself.
    askers: Vec<(MemberId, String)>,
    version: i64,
}

impl AskPage {
    fn answers(&self) -> impl Iterator<Item = &'static str> {
        Said::ALL.iter().map(|it| it.words())
    }

    fn hows(&self) -> impl Iterator<Item = &'static str> {
        How::ALL.iter().map(|it| it.words())
    }
}

/// What an answer is to be about: where the page came from, and what to ask.
pub struct About {
    pub back: (Address, String),
    pub starters: Vec<String>,
    pub question: String,
    /// What "hide" would hide.
    pub what: String,
}

/// The form, as it may be sent by the one who asked or by the person.
pub type Sent = (Form<ByAsker>, Form<ByHerself>);

/// The page that takes an answer.
pub async fn page(grant: &Changing, typed: Typed, about: About, version: i64) -> Result<AskPage> {
    let view = grant.view().await?;
    let askers = if grant.role() == Role::Person { Vec::new() } else { askers(&view).await? };
    let page = grant.page("Write down an answer");
    let name = page.person.as_ref().map(|it| it.name.clone()).unwrap_or_default();
    let typed = typed.with_day("asked_on", grant.today()).with("asked_by", grant.member());
    let typed = typed.with("question", about.question).with("hide_what", about.what);
    let back = (page.at(about.back.0), about.back.1);
    Ok(AskPage { page, typed, name, back, starters: about.starters, askers, version })
}

/// Those who may have asked her: everyone with a place here but herself.
async fn askers(view: &View<Members>) -> Result<Vec<(MemberId, String)>> {
    let family = places::family(view).await?.into_iter();
    let family = family.filter(|it| it.role != Role::Person);
    Ok(family.map(|it| (it.id, it.name)).collect())
}

/// Keeps the answer. One that stood for the same question is replaced by it.
pub async fn keep(
    grant: &Changing,
    mut write: Write<Members>,
    (by_asker, by_herself): Sent,
    subject: Option<Subject>,
    before: Option<Answer>,
) -> Done {
    let told = read(grant.role(), &by_asker, &by_herself)?;
    if let Some((by, _)) = told.asked
        && !askers(&write).await?.iter().any(|it| it.0 == by)
    {
        return Err(FormErrors::at("asked_by", "Choose from the members of this record.").into());
    }
    let new = written(grant.person(), told, subject, grant.today())?;
    let asked_again = before.map(|it| it.id);
    for old in store::list(&write).await? {
        let again = asked_again == Some(old.id) && old.is_standing();
        if again || old.is_asked_anew_in(&new) {
            store::save(&mut write, &old, &old.replaced()).await?;
        }
    }
    let id = store::add(&mut write, &new).await?;
    let line = format!("Written down: {} {}", new.question, new.sentence());
    write.commit().await?.then(urls::answer(id)).saying(line)
}

/// What was typed, by the one who may type it so.
fn read(role: Role, by_asker: &Form<ByAsker>, by_herself: &Form<ByHerself>) -> Result<Told> {
    Ok(match role {
        Role::Person => by_herself.parse()?.0,
        _ => by_asker.parse()?.0,
    })
}

fn written(
    person_id: PersonId,
    told: Told,
    subject: Option<Subject>,
    today: Date,
) -> Result<Answer> {
    FormErrors::unless_come("asked_on", told.asked_on, today)?;
    let (about_kind, about_item) = subject.map(|it| (it.kind, it.item)).unzip();
    Ok(Answer {
        id: AnswerId::default(),
        person_id,
        question: told.question,
        said: told.said,
        hide_what: told.hide_what,
        hide_from: told.hide_from,
        own_words: told.own_words,
        asked_by: told.asked.map(|it| it.0),
        how: told.asked.map(|it| it.1),
        asked_on: told.asked_on,
        about_kind,
        about_item,
        state: State::Standing,
        struck_reason: None,
        version: 1,
    })
}

pub async fn asking(grant: Changing, typed: Typed) -> Result<AskPage> {
    let members = askers(&grant.view().await?).await?.into_iter().map(|it| it.1);
    let starters = starters(&members.collect::<Vec<_>>());
    let back = (urls::answers(), "Answers".to_owned());
    let about = About { back, starters, question: String::new(), what: String::new() };
    page(&grant, typed, about, 0).await
}

pub async fn add(grant: Changing, sent: Sent) -> Done {
    keep(&grant, grant.write().await?, sent, None, None).await
}

pub async fn asking_again(grant: Changing, At(id): At<AnswerId>, typed: Typed) -> Result<AskPage> {
    let before = store::find(&grant.view().await?, id).await?;
    let back = (urls::answer(id), before.question.to_string());
    let question = before.question.to_string();
    let what = before.hide_what.as_ref().map(ToString::to_string).unwrap_or_default();
    let about = About { back, starters: Vec::new(), question, what };
    page(&grant, typed, about, before.version).await
}

pub async fn ask_again(grant: Changing, At(id): At<AnswerId>, sent: Sent) -> Done {
    let version = read(grant.role(), &sent.0, &sent.1)?.version;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let subject = before.about_kind.clone().zip(before.about_item);
    let subject = subject.map(|(kind, item)| Subject { kind, item });
    keep(&grant, write, sent, subject, Some(before)).await
}

pub async fn asking_of_place(
    grant: Changing,
    At(id): At<MembershipId>,
    typed: Typed,
) -> Result<AskPage> {
    let whose = places::relative(&grant.view().await?, id).await?.name;
    let starters = about_member(&whose);
    let back = (urls::place(id), whose);
    let about = About { back, starters, question: String::new(), what: String::new() };
    page(&grant, typed, about, 0).await
}

pub async fn add_of_place(grant: Changing, At(id): At<MembershipId>, sent: Sent) -> Done {
    let write = grant.write().await?;
    places::relative(&write, id).await?;
    let subject = Subject { kind: "membership".to_owned(), item: id.into() };
    keep(&grant, write, sent, Some(subject), None).await
}
