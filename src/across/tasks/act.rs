//! The page that asks before something is done to a task, and how it is kept.

use super::{leaning, rows::Ground, rows::Row, seen};
use crate::{
    base::ids::{MemberId, TaskId},
    family::tasks::{hands::Hands, model::Task, store},
    platform::{
        auth::{
            area::Tasks,
            grant::{Change, Grant},
        },
        db::{Done, Write},
        error::{Error, Result},
        web::{page::Page, typed::Typed, urls},
    },
};
use askama::Template;
use askama_web::WebTemplate;

pub type Changing = Grant<Change<Tasks>>;

/// What one of these pages asks for.
pub enum Asks {
    Nothing,
    /// Whom to ask.
    Whom(Vec<(MemberId, String)>),
    /// Why, with an example.
    Reason(&'static str),
    /// What it waits on, and until when.
    Wait,
    /// Until which day it is put off.
    Day,
    /// When it was done and what shows it; whether the next time stays with who has it.
    Finish {
        next: Next,
    },
}

/// What is said of the next time of a repeating task.
pub struct Next {
    /// Whom it can stay with.
    pub owner: Option<String>,
    pub rhythm: Option<String>,
}

/// Who may do it, and what the page says.
pub struct Step {
    pub verb: &'static str,
    pub explains: String,
    pub asks: Asks,
    pub may: May,
}

/// Who may do something to a task.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum May {
    /// Whoever may change tasks.
    All,
    /// Who has it, or decides; of one that nobody has, everyone.
    Move,
    /// Who was asked to take it.
    Asked,
    /// Who offered it, or may move it.
    Withdraw,
    /// Who entered it, or decides.
    Strike,
}

#[derive(Template, WebTemplate)]
#[template(path = "tasks/act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    row: Row,
    /// Someone was faster: what has become of it. Then nothing is asked.
    over: Option<String>,
    step: Step,
}

/// What a page about one task stands on.
pub struct Before {
    pub task: Task,
    pub ground: Ground,
    page: Page,
}

impl Before {
    pub fn row(&self) -> Row {
        self.ground.row(self.task.clone())
    }

    pub fn over(&self, step: &Step) -> Option<String> {
        let row = self.row();
        let asked = row.offered_to.is_some();
        match step.may {
            May::Strike => None,
            May::Asked if row.task.stands() && !row.asked => {
                Some("You are not asked to take it any more.".to_owned())
            }
            May::Withdraw if row.task.stands() && !asked => {
                Some("Nobody is asked to take it any more.".to_owned())
            }
            _ if step.verb == "I take it" && row.task.stands() && !row.free && !row.hers => {
                Some(format!("{} took it.", row.owner.as_deref()?))
            }
            _ if step.verb != "Open again" => row.ended(),
            _ => None,
        }
    }
}

pub async fn before(grant: &Changing, id: TaskId) -> Result<Before> {
    let view = grant.view().await?;
    let task = seen::find(&view, id).await?;
    let page = grant.page(task.title.to_string());
    let ground = Ground::read(grant, &view, &page).await?;
    Ok(Before { task, ground, page })
}

pub fn page(grant: &Changing, before: Before, typed: Typed, step: Step) -> Result<ActPage> {
    permitted(grant, &before.task, &before.ground.hands, step.may)?;
    let over = before.over(&step);
    let mut page = before.page;
    page.title = format!("{}: {}", step.verb, before.task.title);
    Ok(ActPage { page, typed, over, row: before.ground.row(before.task), step })
}

fn permitted(grant: &Changing, task: &Task, hands: &Hands, may: May) -> Result<()> {
    let (member, role) = (grant.member(), grant.role());
    let moves = hands.is_free(task) || task.may_be_moved_by(member, role);
    let permitted = match may {
        May::All => true,
        May::Move => moves,
        // An offer may have been taken back meanwhile: the page says so.
        May::Asked => true,
        May::Withdraw => moves || task.offered_by.is_none_or(|it| it == member),
        May::Strike => task.may_be_struck_by(member, role),
    };
    if permitted { Ok(()) } else { Err(Error::Forbidden) }
}

/// A write on one task as it stood when its form was opened.
pub struct Writing {
    pub write: Write<Tasks>,
    pub task: Task,
    pub hands: Hands,
    pub member: MemberId,
}

impl Writing {
    pub fn gone(&self) -> bool {
        self.hands.gone(&self.task).is_some()
    }

    pub async fn keep(mut self, after: &Task, says: impl Into<String>) -> Done {
        store::save(&mut self.write, &self.task, after).await?;
        self.end(after, says).await
    }

    /// To the task, or to the board where it is not there for her any more.
    pub async fn end(self, after: &Task, says: impl Into<String>) -> Done {
        let hers = |it: Option<MemberId>| it == Some(self.member);
        let stays =
            hers(after.owner_id) || hers(after.offered_to) || after.entered_by == self.member;
        let to = match self.write.own_only() && !stays {
            true => urls::tasks(),
            false => urls::task(after.id),
        };
        self.write.commit().await?.then(to).saying(says)
    }
}

pub async fn writing(grant: &Changing, id: TaskId, version: i64, may: May) -> Result<Writing> {
    let write = grant.write().await?;
    let (task, hands) = (seen::find(&write, id).await?, leaning::hands(&write).await?);
    permitted(grant, &task, &hands, may)?;
    let (task, member) = (task.opened_at(version)?, grant.member());
    Ok(Writing { write, task, hands, member })
}
