//! Which papers are expected for this person and not there yet: with what follows, and the one next
//! step. What was answered instead stands below, with who said so. Nothing is counted.

use super::{
    edit::Changing,
    held::{self, Held},
};
use crate::{
    platform::{
        audit::Touch,
        auth::{
            area::{Clinical, Directives, Papers},
            grant::{Change, Grant, See},
        },
        db::{Done, View},
        error::{Error, Result},
        web::{
            form::{Choice, Form},
            page::Page,
            typed::Typed,
            urls,
        },
    },
    record::renewals::{
        expected::{self, Expected, Fact, Ground},
        word::{Answer, Answered, PaperWord},
        word_store as words,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Path;

/// An expected paper with what is there of it.
pub struct Row {
    expected: Expected,
    held: Vec<Held>,
    word: PaperWord,
}

impl Row {
    fn name(&self) -> &str {
        &self.expected.name
    }

    fn is_missing(&self) -> bool {
        self.held.is_empty() && self.word.answer == Answer::NotAsked
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "renewals/missing.html")]
pub struct MissingPage {
    page: Page,
    may_change: bool,
    missing: Vec<Row>,
    /// There, or answered.
    settled: Vec<Row>,
    facts: Vec<(Fact, PaperWord)>,
    as_of: String,
}

impl MissingPage {
    fn name(&self) -> &str {
        self.page.person.as_ref().map_or("", |it| &it.name)
    }
}

/// Whether the reader's place reaches what would answer it: of what she does not see, nothing is said.
fn told(view: &View<Papers>, it: &Expected) -> bool {
    let of = |what: &str| it.fits.iter().any(|it| it.starts_with(what));
    let clinical = of("medicines") || of("implant card");
    (!clinical || view.area::<Clinical>().is_some())
        && (!of("directive/") || view.area::<Directives>().is_some())
}

pub async fn list(grant: Grant<See<Papers>>) -> Result<MissingPage> {
    let view = grant.view().await?;
    let said = words::list(&view).await?;
    let word = |about: &str| {
        let found = said.iter().find(|it| it.about == about);
        found.cloned().unwrap_or_else(|| PaperWord::not_asked(view.person(), about))
    };
    let mut held = held::all(&view).await?;
    let ground = Ground { words: &said, implant: held::has_implant(&view).await? };
    let mut rows = Vec::new();
    for it in expected::expected(&ground).into_iter().filter(|it| told(&view, it)) {
        let (own, rest): (Vec<_>, Vec<_>) =
            held.into_iter().partition(|held: &Held| it.fits.contains(&held.fits));
        held = rest;
        rows.push(Row { word: word(&it.name), held: own, expected: it });
    }
    let (missing, settled) = rows.into_iter().partition(Row::is_missing);
    let facts = Fact::ALL.into_iter().map(|it| (it, word(it.name()))).collect();
    let page = grant.page("Papers that are not there yet");
    let may_change = grant.may::<Change<Papers>>();
    Ok(MissingPage { page, may_change, missing, settled, facts, as_of: expected::as_of() })
}

#[derive(Template, WebTemplate)]
#[template(path = "renewals/answer.html")]
pub struct AnswerPage {
    page: Page,
    typed: Typed,
    fact: Option<Fact>,
    version: i64,
    touch: Option<Touch>,
}

impl AnswerPage {
    fn answers(&self) -> impl Iterator<Item = &'static str> {
        expected::answers(self.fact)
    }
}

/// What is asked by this name: of the person, or of a paper.
fn asked(name: &str) -> Result<(Option<Fact>, String)> {
    match Fact::named(name) {
        Some(fact) => Ok((Some(fact), fact.subject().to_owned())),
        None => {
            let found = expected::find(name).ok_or(Error::NotFound)?;
            Ok((None, found.title))
        }
    }
}

pub async fn answering(
    grant: Changing,
    Path((_, name)): Path<(String, String)>,
    typed: Typed,
) -> Result<AnswerPage> {
    let (fact, title) = asked(&name)?;
    let view = grant.view().await?;
    let kept = words::find(&view, &name).await?;
    let touch = view.last_change("paper_word", kept.id.into()).await?;
    // Nothing is preset where nobody was asked: an answer is chosen, never left standing.
    let typed = match kept.answer {
        Answer::NotAsked => typed.over(&kept).with("answer", ""),
        _ => typed.over(&kept),
    };
    let page = grant.page(title);
    Ok(AnswerPage { page, typed, fact, version: kept.version, touch })
}

pub async fn answer(
    grant: Changing,
    Path((_, name)): Path<(String, String)>,
    form: Form<Answered>,
) -> Done {
    let (fact, title) = asked(&name)?;
    let Answered { said, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = words::find(&write, &name).await?.opened_at(version)?;
    let after = match said {
        Some(said) => before.said(said, fact, grant.today())?,
        None => before.retracted(),
    };
    words::save(&mut write, &before, &after).await?;
    let line = format!("Written down: {title}: {}", after.answer.words());
    write.commit().await?.then(urls::missing_papers()).saying(line)
}
