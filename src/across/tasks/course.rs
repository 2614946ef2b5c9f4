//! What becomes of a task: it waits, is put off, is done, let go, opened again, struck.

use super::act::{ActPage, Asks, Changing, May, Next, Step, before, page, writing};
use crate::{
    base::{
        day,
        ids::{MemberId, TaskId},
    },
    family::tasks::{
        form::{Awaited, Because, Finished, PutOff},
        model::Task,
        store,
    },
    platform::{
        db::Done,
        error::Result,
        web::{
            form::{Form, FormErrors, Press},
            path::At,
            typed::Typed,
        },
    },
};

async fn ask(
    grant: &Changing,
    id: TaskId,
    typed: Typed,
    (verb, may, asks): (&'static str, May, Asks),
    explains: &'static str,
) -> Result<ActPage> {
    let before = before(grant, id).await?;
    let typed = typed.over(&before.task).with_day("closed_on", grant.today());
    let step = Step { verb, may, asks, explains: explains.to_owned() };
    page(grant, before, typed, step)
}

pub async fn waiting(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let explains = "Nothing can be done until someone else has done something. If nobody has it yet, it is yours then.";
    ask(&grant, id, typed, ("It waits", May::Move, Asks::Wait), explains).await
}

pub async fn wait(grant: Changing, At(id): At<TaskId>, form: Form<Awaited>) -> Done {
    let Awaited { on, until, version } = form.parse()?;
    let it = writing(&grant, id, version, May::Move).await?;
    let taken =
        if it.hands.is_free(&it.task) { it.task.taken(it.member, true)? } else { it.task.clone() };
    let says = format!("It waits on {on}");
    let after = taken.waiting(on, until, it.member, grant.today())?;
    it.keep(&after, says).await
}

pub async fn going_on(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let explains = "What it waited for has come, or is not waited for any more.";
    ask(&grant, id, typed, ("It waits no longer", May::Move, Asks::Nothing), explains).await
}

pub async fn go_on(grant: Changing, At(id): At<TaskId>, form: Form<Press>) -> Done {
    let it = writing(&grant, id, form.parse()?.version, May::Move).await?;
    let after = it.task.arrived();
    it.keep(&after, "It waits no longer").await
}

pub async fn putting_off(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let explains = "It leaves the board until that day, and comes back by itself. The day it is due stays as it is.";
    ask(&grant, id, typed, ("Put it off", May::Move, Asks::Day), explains).await
}

pub async fn put_off(grant: Changing, At(id): At<TaskId>, form: Form<PutOff>) -> Done {
    let PutOff { until, reason, version } = form.parse()?;
    let it = writing(&grant, id, version, May::Move).await?;
    let after = it.task.put_off(until, reason, grant.today())?;
    it.keep(&after, format!("Put off until {}", day::short_words(until))).await
}

pub async fn bringing_forward(
    grant: Changing,
    At(id): At<TaskId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains = "It stands on the board again from now on.";
    ask(&grant, id, typed, ("Back on the board now", May::Move, Asks::Nothing), explains).await
}

pub async fn bring_forward(grant: Changing, At(id): At<TaskId>, form: Form<Press>) -> Done {
    let it = writing(&grant, id, form.parse()?.version, May::Move).await?;
    let after = it.task.back_now();
    it.keep(&after, "It stands on the board again").await
}

pub async fn finishing(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let before = before(&grant, id).await?;
    let row = before.row();
    let living = !grant.page("").has_died();
    let repeats = living && row.task.next_id.is_none();
    let rhythm = row.task.repeats().filter(|_| repeats).map(|it| it.to_string());
    let owner = row.owner.clone().filter(|_| !row.free && rhythm.is_some());
    let typed = typed.with_day("closed_on", grant.today()).with("stays", owner.is_some());
    let explains = match (&row.owner, row.free || row.hers) {
        (Some(owner), false) => format!("It is with {owner}. If you have done it, say so here."),
        _ => "What shows that it is done helps the others later: a few words, a number, a photo of the letter.".to_owned(),
    };
    let asks = Asks::Finish { next: Next { owner, rhythm } };
    page(&grant, before, typed, Step { verb: "It is done", may: May::All, asks, explains })
}

pub async fn finish(grant: Changing, At(id): At<TaskId>, form: Form<Finished>) -> Done {
    let Finished { finish, stays, version } = form.parse()?;
    if let Some(sum) = &finish.photo
        && !grant.house().files.has(sum).await
    {
        let says = "The photo did not arrive. Choose it again.";
        return Err(FormErrors::at("photo", says).into());
    }
    let mut it = writing(&grant, id, version, May::All).await?;
    let done = it.task.done(finish, it.member, grant.today())?;
    let by: (MemberId, _) = (it.member, it.write.at());
    let next = done.next(stays && !it.gone(), by).filter(|_| !grant.page("").has_died());
    let (after, says) = match next {
        Some(next) => {
            let next_id = Some(store::add(&mut it.write, &next).await?);
            let on = next.due_on.map(day::short_words).unwrap_or_default();
            (Task { next_id, ..done }, format!("Done. The next one is due on {on}"))
        }
        None => (done, "Done".to_owned()),
    };
    it.keep(&after, says).await
}

pub async fn letting_go(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let explains = "It need not be done any more. It stays listed with the reason; one that repeats does not come again.";
    let asks = Asks::Reason("for example: the clinic does it");
    ask(&grant, id, typed, ("Let it go", May::Move, asks), explains).await
}

pub async fn let_go(grant: Changing, At(id): At<TaskId>, form: Form<Because>) -> Done {
    let Because { reason, version } = form.parse()?;
    let it = writing(&grant, id, version, May::Move).await?;
    let after = it.task.let_go(reason, it.member, grant.today())?;
    it.keep(&after, "Let go; it stays listed").await
}

pub async fn opening_again(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let explains = "It is still to be done after all. What was written down when it ended leaves it, and stays in its history. If a next one was made, that stands as well.";
    ask(&grant, id, typed, ("Open again", May::All, Asks::Nothing), explains).await
}

pub async fn open_again(grant: Changing, At(id): At<TaskId>, form: Form<Press>) -> Done {
    let it = writing(&grant, id, form.parse()?.version, May::All).await?;
    let after = it.task.opened_again(it.gone())?;
    it.keep(&after, "It is to be done again").await
}

pub async fn striking(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let explains = "Only for what was a mistake: it leaves the board. The history keeps it, and it can be brought back from there.";
    let asks = Asks::Reason("for example: written down twice");
    ask(&grant, id, typed, ("Strike", May::Strike, asks), explains).await
}

pub async fn strike(grant: Changing, At(id): At<TaskId>, form: Form<Because>) -> Done {
    let Because { reason, version } = form.parse()?;
    let it = writing(&grant, id, version, May::Strike).await?;
    let after = it.task.struck(reason);
    it.keep(&after, "Struck; its history keeps it").await
}

pub async fn bringing_back(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let explains = "It stands on the board again as it was.";
    ask(&grant, id, typed, ("Bring back", May::Strike, Asks::Nothing), explains).await
}

pub async fn bring_back(grant: Changing, At(id): At<TaskId>, form: Form<Press>) -> Done {
    let it = writing(&grant, id, form.parse()?.version, May::Strike).await?;
    let after = it.task.brought_back();
    it.keep(&after, "It stands on the board again").await
}
