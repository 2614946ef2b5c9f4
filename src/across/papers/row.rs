//! A paper as a line of a list, and from whom it is.

use crate::{
    base::{day, ids::ContactId},
    platform::{
        auth::area::{Essentials, Papers},
        db::View,
        error::Result,
        web::page::Page,
    },
    record::{
        contacts::store as contacts,
        papers::{lapse::Lapse, model::Paper},
    },
};

/// The contacts that the reader sees, by name.
pub struct Senders(pub Vec<(ContactId, String)>);

impl Senders {
    pub async fn read(view: &View<Papers>) -> Result<Senders> {
        let Some(view) = view.area::<Essentials>() else { return Ok(Senders(Vec::new())) };
        let all = contacts::list(&view).await?.into_iter();
        Ok(Senders(all.map(|it| (it.id, it.name.to_string())).collect()))
    }

    pub fn has(&self, id: ContactId) -> bool {
        self.0.iter().any(|it| it.0 == id)
    }

    /// Who sent it, by the list of contacts or as it was typed.
    pub fn of(&self, paper: &Paper) -> Option<String> {
        let listed = paper.contact_id.and_then(|id| self.0.iter().find(|it| it.0 == id));
        listed.map(|it| it.1.clone()).or_else(|| paper.from_name.as_ref().map(ToString::to_string))
    }
}

pub struct Row {
    pub paper: Paper,
    /// "from Lakeshore Hospital · dated 3 March 2026 · at home: the drawer"
    pub about: String,
    /// "lapses in 3 days"
    pub lapse: Option<String>,
    pub over: bool,
}

impl Row {
    pub fn of(paper: Paper, senders: &Senders, page: &Page) -> Row {
        let today = page.today();
        let parts = [
            senders.of(&paper).map(|it| format!("from {it}")),
            paper.dated_on.map(|it| format!("dated {}", day::words(it))),
            paper.original_words().map(|it| format!("original {it}")),
        ];
        let about = parts.into_iter().flatten().collect::<Vec<_>>().join(" · ");
        let over = paper.lapse(today) == Some(Lapse::Over);
        Row { about, lapse: paper.lapse_words(today), over, paper }
    }
}
