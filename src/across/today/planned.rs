//! What is planned, each list read once for what needs someone and for the next seven days:
//! appointments, and the tasks that stand and were not put off.

use crate::{
    across::{
        appointments::row::Words,
        tasks::{leaning, seen},
    },
    family::tasks::{hands::Hands, model::Task, store::Wanted},
    platform::{auth::area::Tasks, db::View, error::Result, web::page::Page},
    record::appointments::{calendar::Calendar, store as appointments},
};

pub struct Planned {
    pub words: Words,
    pub calendar: Calendar,
    pub tasks: Vec<Task>,
    pub hands: Hands,
}

impl Planned {
    pub async fn read(view: &View<Tasks>, page: &Page) -> Result<Planned> {
        let today = page.today();
        let wanted = Wanted { since: Some(today), ..Wanted::default() };
        let mut tasks = seen::list(view, &wanted).await?;
        tasks.retain(|it| it.stands() && !it.is_put_off(today));
        Ok(Planned {
            words: Words::read(view, page).await?,
            calendar: appointments::calendar(view).await?,
            tasks,
            hands: leaning::hands(view).await?,
        })
    }
}
