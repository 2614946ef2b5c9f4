//! What is laid side by side, read from the record as far as the reader sees it; and where each
//! side comes from.

use super::rows::{Row, Written};
use crate::{
    across::reconciliation::{settled_store as pairs, store as second_lists},
    base::{check::Check, text::Line},
    platform::{
        audit::Names,
        auth::area::{Clinical, Essentials},
        db::View,
        error::Result,
        web::{
            page::Page,
            stamp::Stamp,
            urls::{self, Address},
        },
    },
    record::{
        allergies::store as allergies,
        conditions::store as conditions,
        medicines::{ingredients::store as ingredients, store as medicines},
        people::store as people,
    },
};

pub async fn written(view: &View<Clinical>) -> Result<Written> {
    let born = match view.area::<Essentials>() {
        Some(view) => Some(people::find(&view).await?.born),
        None => None,
    };
    Ok(Written {
        conditions: conditions::list(view).await?,
        lists: second_lists::list(view).await?,
        born,
        ..substances(view).await?
    })
}

/// Only what is taken and what is not borne.
pub async fn substances(view: &View<Clinical>) -> Result<Written> {
    let allergies = match view.area::<Essentials>() {
        Some(view) => allergies::list(&view).await?,
        None => Vec::new(),
    };
    Ok(Written {
        medicines: medicines::current(view).await?,
        ingredients: ingredients::list(view).await?,
        pairs: pairs::confirmed(view).await?,
        allergies,
        ..Written::default()
    })
}

/// One side of a row: what stands there, where it comes from, its page.
pub struct Side {
    pub says: String,
    pub from: Vec<String>,
    pub to: Address,
}

/// Reads where the sides of rows come from.
pub struct Sources<'a> {
    pub view: &'a View<Clinical>,
    pub page: &'a Page,
    pub names: &'a Names,
}

impl Sources<'_> {
    pub async fn sides(&self, row: &Row) -> Result<[Side; 2]> {
        let [one, other] = row.sides();
        let (first, second) = match row {
            Row::NotBorne { allergy, medicine, .. } => {
                let to = urls::allergy(allergy.id);
                let of = (allergy.source.as_ref(), allergy.check());
                let first = self.side(one, ("allergy", allergy.id.into()), of, to).await?;
                (first, self.medicine(other, medicine).await?)
            }
            Row::ForWhatIsOver { medicine, condition } => {
                let to = urls::condition(condition.id);
                let of = (condition.source.as_ref(), condition.check());
                let first = self.medicine(one, medicine).await?;
                (first, self.side(other, ("condition", condition.id.into()), of, to).await?)
            }
            Row::BornOtherwise { list, .. } => {
                let to = urls::second_list(list.id);
                let of = (Some(&list.source), None);
                let first = self.side(one, ("second_list", list.id.into()), of, to).await?;
                let person = ("person", list.person_id.into());
                (first, self.side(other, person, (None, None), urls::person()).await?)
            }
            Row::ForNothing { medicine } => {
                let own = urls::medicine(medicine.id);
                let to = if self.view.may_change() { own.and("edit") } else { own };
                let first = self.medicine(one, medicine).await?;
                (first, Side { says: other, from: Vec::new(), to })
            }
        };
        Ok([first, second])
    }

    async fn medicine(
        &self,
        says: String,
        it: &crate::record::medicines::model::Medicine,
    ) -> Result<Side> {
        let of = (it.source.as_ref(), it.check());
        self.side(says, ("medicine", it.id.into()), of, urls::medicine(it.id)).await
    }

    async fn side(
        &self,
        says: String,
        (kind, item): (&str, i64),
        (source, check): (Option<&Line>, Option<Check>),
        to: Address,
    ) -> Result<Side> {
        let mut from = Vec::from_iter(source.map(|it| format!("known from: {it}")));
        if let Some(touch) = self.view.last_change(kind, item).await? {
            let verb = if touch.added { "entered" } else { "last changed" };
            from.push(format!("{verb} by {}, {}", touch.by, self.page.when(&touch.at)));
        }
        if kind != "second_list" {
            from.push(Stamp::of(self.page, self.names, check).to_string());
        }
        Ok(Side { says, from, to })
    }
}
