//! What happens to a refusal: the plan has the prescriber's statement, the plan decided, it is
//! somebody else's move, it is settled. Each has a page that posts to itself.

use super::{
    refusals::{Changing, Told},
    titles::Medicines,
};
use crate::{
    base::ids::RefusalId,
    platform::{
        auth::area::Papers,
        db::{Done, View, Write},
        error::{Error, Result},
        web::{
            form::{Choice, Form},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::coverage::refusals::{
        form::{Decided, Moved, Settled, Stated},
        model::Refusal,
        mover::{Decision, Mover},
        store,
    },
};
use askama::Template;
use askama_web::WebTemplate;

/// What one of these pages asks for.
#[derive(Clone, Copy)]
enum Asks {
    Statement,
    Decision,
    Move,
    End,
}

#[derive(Template, WebTemplate)]
#[template(path = "coverage/step.html")]
pub struct StepPage {
    page: Page,
    typed: Typed,
    kept: Refusal,
    title: String,
    asks: Asks,
}

impl StepPage {
    fn movers(&self) -> impl Iterator<Item = &'static str> {
        Mover::ALL.iter().map(|it| it.words())
    }

    fn decisions(&self) -> impl Iterator<Item = &'static str> {
        Decision::ALL.iter().map(|it| it.words())
    }
}

/// One that is neither settled nor struck.
async fn standing(view: &View<Papers>, id: RefusalId) -> Result<Refusal> {
    let found = store::find(view, id).await?;
    if found.stands() { Ok(found) } else { Err(Error::NotFound) }
}

async fn step(
    grant: &Changing,
    id: RefusalId,
    (typed, asks, title): (Typed, Asks, &str),
) -> Result<StepPage> {
    let view = grant.view().await?;
    let kept = standing(&view, id).await?;
    let typed = match asks {
        Asks::Statement => match kept.statement_at {
            Some(at) => typed
                .with_day("statement_day", grant.zone().day(at))
                .with("statement_time", grant.zone().clock_words(at))
                .with("expedited", kept.expedited),
            None => typed.with_day("statement_day", grant.today()),
        },
        Asks::Decision => {
            let decision = kept.decision.map(Choice::words).unwrap_or_default();
            let on = kept.decided_on.unwrap_or(grant.today());
            typed
                .over(&kept)
                .with("decision", decision)
                .with_day("decided_on", on)
                .with("mover", "")
        }
        Asks::Move => typed.with_day("mover_since", grant.today()),
        Asks::End => typed.with_day("settled_on", grant.today()),
    };
    let own = Medicines::read(&view).await?.title(&kept);
    Ok(StepPage { page: grant.page(title), typed, kept, title: own, asks })
}

async fn keep(mut write: Write<Papers>, old: &Refusal, new: &Refusal, says: &str) -> Done {
    store::save(&mut write, old, new).await?;
    write.commit().await?.then(urls::refusal(new.id)).saying(says)
}

pub async fn stating(
    _: Told,
    grant: Changing,
    At(id): At<RefusalId>,
    typed: Typed,
) -> Result<StepPage> {
    step(&grant, id, (typed, Asks::Statement, "The plan has the prescriber’s statement")).await
}

pub async fn state(_: Told, grant: Changing, At(id): At<RefusalId>, form: Form<Stated>) -> Done {
    let Stated { on, at, expedited, version } = form.parse()?;
    let write = grant.write().await?;
    let before = standing(&write, id).await?.opened_at(version)?;
    let at = (grant.zone().instant(on, at), on);
    let after = before.stated(at, expedited, grant.now())?;
    keep(write, &before, &after, "Written down: the plan has the statement").await
}

pub async fn deciding(
    _: Told,
    grant: Changing,
    At(id): At<RefusalId>,
    typed: Typed,
) -> Result<StepPage> {
    step(&grant, id, (typed, Asks::Decision, "What did the plan decide?")).await
}

pub async fn decide(_: Told, grant: Changing, At(id): At<RefusalId>, form: Form<Decided>) -> Done {
    let Decided { answered, mover, version } = form.parse()?;
    let write = grant.write().await?;
    let before = standing(&write, id).await?.opened_at(version)?;
    let after = before.decided(answered, mover, grant.today())?;
    keep(write, &before, &after, "The plan’s answer is written down").await
}

pub async fn moving(
    _: Told,
    grant: Changing,
    At(id): At<RefusalId>,
    typed: Typed,
) -> Result<StepPage> {
    step(&grant, id, (typed, Asks::Move, "Whose move is it now?")).await
}

pub async fn hand_on(_: Told, grant: Changing, At(id): At<RefusalId>, form: Form<Moved>) -> Done {
    let Moved { mover, since, version } = form.parse()?;
    let write = grant.write().await?;
    let before = standing(&write, id).await?.opened_at(version)?;
    let after = before.moved(mover, since, grant.today())?;
    keep(write, &before, &after, &format!("Now it is {mover}’s move")).await
}

pub async fn settling(
    _: Told,
    grant: Changing,
    At(id): At<RefusalId>,
    typed: Typed,
) -> Result<StepPage> {
    step(&grant, id, (typed, Asks::End, "How did it end?")).await
}

pub async fn settle(_: Told, grant: Changing, At(id): At<RefusalId>, form: Form<Settled>) -> Done {
    let Settled { how, on, version } = form.parse()?;
    let write = grant.write().await?;
    let before = standing(&write, id).await?.opened_at(version)?;
    let after = before.settled(how, on, grant.today())?;
    keep(write, &before, &after, "Settled; it stays listed below the others").await
}
