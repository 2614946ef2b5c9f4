//! What is done to a question: taken on, handed on, asked, answered, let go, brought back.
//!
//! Each has a page that asks what must be known, and posts to itself.

use super::{
    form::{Answered, Handed, LetGo, Put},
    model::Question,
    store,
};
use crate::base::ids::{MemberId, QuestionId};
use crate::platform::{
    auth::{
        area::Clinical,
        grant::{Change, Grant},
    },
    db::{Done, Write},
    error::Result,
    web::{
        form::{Form, FormErrors, Press},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Clinical>>;

/// What one of these pages asks for.
#[derive(PartialEq)]
enum Asks {
    Who(Vec<(MemberId, String)>),
    Day,
    Answer,
    Reason,
    Nothing,
}

impl Asks {
    /// Whether what is typed is the point: the verb of the page would not fit the button.
    fn is_filled_in(&self) -> bool {
        matches!(self, Asks::Who(_) | Asks::Answer)
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "questions/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    question: Question,
    asks: Asks,
    verb: &'static str,
    explains: &'static str,
}

async fn act(
    grant: &Changing,
    id: QuestionId,
    typed: Typed,
    (verb, asks): (&'static str, Asks),
    explains: &'static str,
) -> Result<ActPage> {
    let question = store::find(&grant.view().await?, id).await?;
    let page = grant.page(format!("{verb}: {}", question.title()));
    let owner = question.owner_id.map(|it| it.to_string()).unwrap_or_default();
    let typed = typed.with_day("on", grant.today()).with("owner", owner);
    let typed = typed.with("answered_by", question.whom());
    Ok(ActPage { page, typed, question, asks, verb, explains })
}

async fn keep(mut write: Write<Clinical>, old: &Question, new: &Question, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    write.commit().await?.then(urls::question(new.id)).saying(says)
}

pub async fn owning(grant: Changing, At(id): At<QuestionId>, typed: Typed) -> Result<ActPage> {
    let explains = "Your name then stands beside it, and the others know that it is taken on.";
    act(&grant, id, typed, ("I will ask", Asks::Nothing), explains).await
}

pub async fn own(grant: Changing, At(id): At<QuestionId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    let after = before.owned(Some(write.member()));
    keep(write, &before, &after, "Your name stands beside it").await
}

pub async fn handing(grant: Changing, At(id): At<QuestionId>, typed: Typed) -> Result<ActPage> {
    let explains = "Say it to the one you choose as well: nobody is told of it by mail.";
    let askers = store::askers(&grant.view().await?).await?;
    act(&grant, id, typed, ("Who will ask", Asks::Who(askers)), explains).await
}

pub async fn hand(grant: Changing, At(id): At<QuestionId>, form: Form<Handed>) -> Done {
    let Handed { to, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let askers = store::askers(&write).await?;
    let known = |it: MemberId| askers.iter().find(|(id, _)| *id == it);
    let says = match to.map(known) {
        None => "Nobody will ask it yet".to_owned(),
        Some(Some((_, name))) => format!("{name} will ask it"),
        Some(None) => return Err(FormErrors::at("owner", "Choose who will ask.").into()),
    };
    keep(write, &before, &before.owned(to), &says).await
}

pub async fn asking(grant: Changing, At(id): At<QuestionId>, typed: Typed) -> Result<ActPage> {
    let explains = "It was put to someone, and the answer is still to come.";
    act(&grant, id, typed, ("It was asked", Asks::Day), explains).await
}

pub async fn ask(grant: Changing, At(id): At<QuestionId>, form: Form<Put>) -> Done {
    let Put { on, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    keep(write, &before, &before.asked(on, grant.today())?, "Asked; the answer is to come").await
}

pub async fn answering(grant: Changing, At(id): At<QuestionId>, typed: Typed) -> Result<ActPage> {
    let explains = "Write what was said, in the words of the one who said it. It changes nothing else in the record.";
    act(&grant, id, typed, ("Write the answer", Asks::Answer), explains).await
}

pub async fn answer(grant: Changing, At(id): At<QuestionId>, form: Form<Answered>) -> Done {
    let Answered { answer, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.answered(answer, grant.today())?;
    keep(write, &before, &after, "The answer is kept").await
}

pub async fn letting_go(grant: Changing, At(id): At<QuestionId>, typed: Typed) -> Result<ActPage> {
    let explains = "It need not be asked any more. It stays listed with the reason.";
    act(&grant, id, typed, ("Let it go", Asks::Reason), explains).await
}

pub async fn let_go(grant: Changing, At(id): At<QuestionId>, form: Form<LetGo>) -> Done {
    let LetGo { reason, version } = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    keep(write, &before, &before.let_go(reason), "Let go; it stays listed").await
}

pub async fn bringing_back(
    grant: Changing,
    At(id): At<QuestionId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains =
        "It is open again. An answer that was written down leaves it, and stays in its history.";
    act(&grant, id, typed, ("Bring back", Asks::Nothing), explains).await
}

pub async fn bring_back(grant: Changing, At(id): At<QuestionId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    keep(write, &before, &before.brought_back(), "It is open again").await
}
