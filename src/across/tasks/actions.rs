//! Whose hands a task is in: taken, given back, offered to another, who says yes or no.

use super::act::{ActPage, Asks, Before, Changing, May, Step, before, page, writing};
use crate::{
    base::ids::TaskId,
    family::tasks::form::{Because, Offered},
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

fn step(verb: &'static str, may: May, asks: Asks, explains: impl Into<String>) -> Step {
    Step { verb, may, asks, explains: explains.into() }
}

pub async fn taking(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let explains = "Your name then stands beside it, and the others know that you see to it.";
    let before = before(&grant, id).await?;
    page(&grant, before, typed, step("I take it", May::All, Asks::Nothing, explains))
}

pub async fn take(grant: Changing, At(id): At<TaskId>, form: Form<Press>) -> Done {
    let it = writing(&grant, id, form.parse()?.version, May::All).await?;
    let after = it.task.taken(it.member, it.gone())?;
    it.keep(&after, "Your name stands beside it").await
}

pub async fn giving_back(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let before = before(&grant, id).await?;
    let waits = match &before.task.waiting_on {
        Some(on) => format!(" That it waits on {on} leaves it too, and stays in its history."),
        None => String::new(),
    };
    let explains = format!("It is open again for anyone to take, without a reason.{waits}");
    page(&grant, before, typed, step("Give it back", May::Move, Asks::Nothing, explains))
}

pub async fn give_back(grant: Changing, At(id): At<TaskId>, form: Form<Press>) -> Done {
    let it = writing(&grant, id, form.parse()?.version, May::Move).await?;
    let after = it.task.given_back()?;
    it.keep(&after, "Given back; it is open for anyone").await
}

pub async fn offering(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let before = before(&grant, id).await?;
    let others = before.ground.hands.others(&before.task);
    let explains = explains_offer(&before);
    let asks = if others.is_empty() { Asks::Nothing } else { Asks::Whom(others) };
    page(&grant, before, typed, step("Ask someone to take it", May::Move, asks, explains))
}

fn explains_offer(before: &Before) -> String {
    let row = before.row();
    if before.ground.hands.others(&before.task).is_empty() {
        return "Nobody else who shares the record may take it.".to_owned();
    }
    match row.owner.filter(|_| !row.free) {
        Some(owner) => {
            format!(
                "It stays with {owner} until the one you ask says yes. The question stands on Today and above the board."
            )
        }
        None => "It stays open until the one you ask says yes. The question stands on Today and above the board."
            .to_owned(),
    }
}

pub async fn offer(grant: Changing, At(id): At<TaskId>, form: Form<Offered>) -> Done {
    let Offered { to, version } = form.parse()?;
    let it = writing(&grant, id, version, May::Move).await?;
    let others = it.hands.others(&it.task);
    let Some((_, name)) = others.iter().find(|(id, _)| *id == to) else {
        return Err(FormErrors::at("offered_to", "Choose whom you ask.").into());
    };
    // Who takes it herself needs nobody's yes.
    let (after, says) = match to == it.member {
        true => (it.task.taken(to, true)?, "Your name stands beside it".to_owned()),
        false => (it.task.offered(to, it.member)?, format!("{name} is asked to take it")),
    };
    it.keep(&after, says).await
}

pub async fn withdrawing(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let before = before(&grant, id).await?;
    let name = before.row().offered_to.unwrap_or_default();
    let explains = format!("{name} is not asked any more. It stays where it is.");
    page(&grant, before, typed, step("Ask no more", May::Withdraw, Asks::Nothing, explains))
}

pub async fn withdraw(grant: Changing, At(id): At<TaskId>, form: Form<Press>) -> Done {
    let it = writing(&grant, id, form.parse()?.version, May::Withdraw).await?;
    let after = it.task.withdrawn()?;
    it.keep(&after, "Nobody is asked any more").await
}

pub async fn accepting(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let before = before(&grant, id).await?;
    let by = before.row().offered_by.unwrap_or_default();
    let explains = format!("{by} asks you. With your yes it is yours, and the others see that.");
    page(&grant, before, typed, step("Yes, I take it", May::Asked, Asks::Nothing, explains))
}

pub async fn accept(grant: Changing, At(id): At<TaskId>, form: Form<Press>) -> Done {
    let it = writing(&grant, id, form.parse()?.version, May::Asked).await?;
    let after = it.task.accepted(it.member)?;
    it.keep(&after, "You said yes; it is yours").await
}

pub async fn declining(grant: Changing, At(id): At<TaskId>, typed: Typed) -> Result<ActPage> {
    let before = before(&grant, id).await?;
    let by = before.row().offered_by.unwrap_or_default();
    let explains = format!("It stays where it is. {by} reads your reason.");
    let asks = Asks::Reason("for example: away that week");
    page(&grant, before, typed, step("No, I can not", May::Asked, asks, explains))
}

pub async fn decline(grant: Changing, At(id): At<TaskId>, form: Form<Because>) -> Done {
    let Because { reason, version } = form.parse()?;
    let it = writing(&grant, id, version, May::Asked).await?;
    let after = it.task.declined(it.member, reason)?;
    it.keep(&after, "You said no; it stays where it is").await
}
