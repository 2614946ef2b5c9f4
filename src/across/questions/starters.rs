//! Questions to start from, by the kind of visit: `starters.json`, in our own words, each kind with
//! the publication whose topics it follows. They are proposals: what is ticked becomes a question of
//! the record like any other, and none is added while it waits for the same clinician already.

use super::occasion::Occasion;
use crate::{
    across::visits::meeting::Day,
    base::{
        ids::{AppointmentId, ContactId},
        text::{Line, Note},
    },
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant},
        },
        db::{Done, View, Write},
        error::Result,
        web::{
            form::{Form, FormErrors, FromForm, Reader},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::{
        appointments::model::VisitKind,
        questions::{
            model::{Question, Whom, Wording},
            store,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;
use std::sync::LazyLock;

#[derive(serde::Deserialize)]
pub struct Starters {
    pub as_of: String,
    pub kinds: Vec<Kind>,
}

/// The questions for one kind of visit.
#[derive(serde::Deserialize)]
pub struct Kind {
    pub kind: String,
    pub name: String,
    /// The publication whose topics they follow.
    pub follows: String,
    pub questions: Vec<Starter>,
}

#[derive(serde::Deserialize)]
pub struct Starter {
    pub key: String,
    pub words: String,
}

/// The name of a kind of visit in the list.
fn key(kind: VisitKind) -> &'static str {
    match kind {
        VisitKind::Routine | VisitKind::Other => "routine",
        VisitKind::Specialist | VisitKind::Therapy => "specialist",
        VisitKind::Test => "test",
        VisitKind::Procedure => "procedure",
    }
}

static STARTERS: LazyLock<Starters> = LazyLock::new(|| {
    // Of ours, and read by a test: it is never wrong on a running server.
    serde_json::from_str(include_str!("starters.json"))
        .unwrap_or(Starters { as_of: String::new(), kinds: Vec::new() })
});

/// Those that were ticked, by their keys.
pub struct Ticked {
    keys: Vec<String>,
}

impl FromForm for Ticked {
    fn read(form: &mut Reader) -> std::result::Result<Ticked, FormErrors> {
        let keys = form.every("starter");
        if keys.is_empty() {
            form.wrong("starter", "Tick one question at least.");
        }
        form.finish(|| Some(Ticked { keys }))
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "questions/starters.html")]
pub struct StartersPage {
    page: Page,
    typed: Typed,
    occasion: Occasion,
    starters: &'static Starters,
    /// The keys of those that wait for this clinician already.
    waiting: Vec<String>,
}

impl StartersPage {
    /// Those for the kind of the visit first.
    fn kinds(&self) -> Vec<&'static Kind> {
        let own = self.occasion.met.as_ref().map(|it| key(it.meeting.appointment.kind));
        let mut all: Vec<_> = self.starters.kinds.iter().collect();
        all.sort_by_key(|it| Some(it.kind.as_str()) != own);
        all
    }

    fn is_ticked(&self, key: &String) -> bool {
        self.typed.among("starter", key, &false)
    }

    fn waits(&self, key: &String) -> bool {
        self.waiting.contains(key)
    }
}

type Changing = Grant<Change<Clinical>>;

pub async fn choosing_with(
    grant: Changing,
    At(contact): At<ContactId>,
    typed: Typed,
) -> Result<StartersPage> {
    let view = grant.view().await?;
    let occasion = Occasion::of_contact(&view, contact).await?;
    page(&grant, &view, occasion, typed).await
}

pub async fn choosing_for(
    grant: Changing,
    At(id): At<AppointmentId>,
    Day(on): Day,
    typed: Typed,
) -> Result<StartersPage> {
    let view = grant.view().await?;
    let occasion = Occasion::of_meeting(&view, (id, on)).await?;
    page(&grant, &view, occasion, typed).await
}

pub async fn choose_for(
    grant: Changing,
    At(id): At<AppointmentId>,
    Day(on): Day,
    form: Form<Ticked>,
) -> Done {
    let ticked = form.parse()?;
    let write = grant.write().await?;
    let occasion = Occasion::of_meeting(&write, (id, on)).await?;
    choose(write, &occasion, ticked).await
}

async fn page(
    grant: &Changing,
    view: &View<Clinical>,
    occasion: Occasion,
    typed: Typed,
) -> Result<StartersPage> {
    let waiting = occasion.questions(view).await?.into_iter().filter_map(|it| it.starter);
    let page = grant.page(format!("Questions to start from, for {}", occasion.with.name));
    Ok(StartersPage { page, typed, waiting: waiting.collect(), starters: &STARTERS, occasion })
}

pub async fn choose_with(grant: Changing, At(contact): At<ContactId>, form: Form<Ticked>) -> Done {
    let ticked = form.parse()?;
    let write = grant.write().await?;
    let occasion = Occasion::of_contact(&write, contact).await?;
    choose(write, &occasion, ticked).await
}

/// What waits already is passed over: also when two tick the same one at once.
async fn choose(mut write: Write<Clinical>, occasion: &Occasion, ticked: Ticked) -> Done {
    let waiting = occasion.questions(&write).await?;
    let waits = |key: &str| waiting.iter().any(|it| it.starter.as_deref() == Some(key));
    let mut added = 0;
    for starter in STARTERS.kinds.iter().flat_map(|it| &it.questions) {
        if ticked.keys.contains(&starter.key) && !waits(&starter.key) {
            let new = question(&write, starter, occasion);
            store::add(&mut write, &new).await?;
            added += 1;
        }
    }
    let line = match added {
        0 => "Nothing was added: these wait already".to_owned(),
        1 => "One question is written down".to_owned(),
        many => format!("{many} questions are written down"),
    };
    write.commit().await?.then(urls::questions().and(&occasion.path)).saying(line)
}

fn question(write: &Write<Clinical>, starter: &Starter, occasion: &Occasion) -> Question {
    let name = Line::from(occasion.with.name.clone());
    let wording = Wording {
        words: Note::from(starter.words.clone()),
        for_whom: Whom::Clinician,
        clinician: Some(name.clone()),
        about: None,
    };
    let by = (write.member(), write.at());
    let new = Question::new(write.person(), wording, by).begun_from(&starter.key);
    match occasion.with.contact {
        Some(contact) => new.for_contact(contact, name),
        None => new,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    /// AHRQ Pub. 01-0040d, "Having Surgery? What You Need To Know", has 12 questions.
    #[test]
    fn twelve_are_for_an_operation() {
        let of = |kind: &str| STARTERS.kinds.iter().find(|it| it.kind == kind).expect("a kind");
        assert_eq!(of("procedure").questions.len(), 12);
        assert!(of("procedure").follows.contains("AHRQ Pub. 01-0040d"));
    }

    #[test]
    fn each_kind_names_its_source_and_each_question_has_a_key_and_is_one() {
        let kinds: Vec<_> = STARTERS.kinds.iter().map(|it| it.kind.as_str()).collect();
        assert_eq!(kinds, ["routine", "specialist", "test", "procedure"]);
        let all: Vec<_> = STARTERS.kinds.iter().flat_map(|it| &it.questions).collect();
        let keys: BTreeSet<_> = all.iter().map(|it| it.key.as_str()).collect();
        assert_eq!(keys.len(), all.len(), "a key stands twice");
        for it in &all {
            let kept = Note::parse(&it.words).expect("fit to keep").expect("not empty");
            assert_eq!(kept.as_str(), it.words, "{} changes when it is kept", it.key);
            assert!(it.words.ends_with('?'), "{}", it.key);
        }
        assert!(
            STARTERS
                .kinds
                .iter()
                .all(|it| it.follows.contains("AHRQ") || it.follows.contains("NIA"))
        );
        assert!(crate::base::day::parse(&STARTERS.as_of).is_some());
    }
}
