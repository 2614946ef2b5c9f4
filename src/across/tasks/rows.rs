//! One task as it is listed: with names for the members, and what it is about.

use super::leaning;
use crate::{
    across::history::titles::{Thing, Titles},
    base::ids::MemberId,
    family::tasks::{
        hands::{Gone, Hands},
        model::Task,
    },
    platform::{
        audit::Names,
        auth::{
            area::Tasks,
            grant::{Grant, Leave},
        },
        db::View,
        error::Result,
        web::page::Page,
    },
};
use time::Date;

pub struct Row {
    pub task: Task,
    pub by: String,
    pub owner: Option<String>,
    /// Why its owner cannot do it any more.
    pub gone: Option<Gone>,
    /// Nobody has it who can do it.
    pub free: bool,
    /// The reader has it, or has done it.
    pub hers: bool,
    /// The reader is asked to take it.
    pub asked: bool,
    pub offered_to: Option<String>,
    pub offered_by: Option<String>,
    pub declined_by: Option<String>,
    pub closed_by: Option<String>,
    pub about: Option<Thing>,
    pub overdue: bool,
    pub put_off: bool,
    pub ask_again: bool,
}

/// What is needed to show tasks: names, titles, who can do one, and which day it is.
pub struct Ground {
    names: Names,
    titles: Titles,
    pub hands: Hands,
    reader: MemberId,
    pub today: Date,
    /// After a death nothing reminds.
    living: bool,
}

impl Ground {
    pub async fn read<L: Leave>(
        grant: &Grant<L>,
        view: &View<Tasks>,
        page: &Page,
    ) -> Result<Ground> {
        Ok(Ground {
            names: view.names().await?,
            titles: Titles::read(view, &[]).await?,
            hands: leaning::hands(view).await?,
            reader: grant.member(),
            today: grant.today(),
            living: !page.has_died(),
        })
    }

    pub fn titles(&self) -> &Titles {
        &self.titles
    }

    pub fn row(&self, task: Task) -> Row {
        let name = |it: Option<MemberId>| it.map(|it| self.names.of(it).to_owned());
        let free = self.hands.is_free(&task);
        let closed = task.closed_by == Some(self.reader);
        Row {
            by: self.names.of(task.entered_by).to_owned(),
            owner: name(task.owner_id),
            gone: self.hands.gone(&task).filter(|_| task.stands()),
            free,
            hers: task.is_owned_by(self.reader) && !free || closed,
            asked: task.is_offered_to(self.reader),
            offered_to: name(task.offered_to),
            offered_by: name(task.offered_by),
            declined_by: name(task.declined_by),
            closed_by: name(task.closed_by),
            about: task.about().and_then(|(kind, item)| self.titles.thing(kind, item)),
            overdue: self.living && task.is_overdue(self.today),
            put_off: task.is_put_off(self.today),
            ask_again: self.living && task.wait_is_over(self.today),
            task,
        }
    }
}

impl Row {
    /// "it was done by Juno on Tue 3 Mar 2026": why nothing more is to be done to it.
    pub fn ended(&self) -> Option<String> {
        let (by, on) = (self.closed_by.as_deref()?, self.task.closed_day()?);
        Some(match self.task.is_done() {
            true => format!("{by} wrote down that it was done on {on}."),
            false => format!("{by} let it go on {on}."),
        })
    }
}
