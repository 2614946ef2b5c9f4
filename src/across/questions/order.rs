//! The questions for one clinician in the order in which they will be asked: one press moves one a
//! place earlier or later, among those for the same visit.

use super::{occasion::Occasion, pages::Row};
use crate::{
    across::{history::titles::Titles, visits::meeting::Day},
    base::{
        ids::{AppointmentId, ContactId, QuestionId},
        order::{Step, places},
    },
    platform::{
        auth::{
            area::Clinical,
            grant::{Change, Grant, See},
        },
        db::{Done, View, Write},
        error::Result,
        web::{
            form::{Form, Press},
            page::Page,
            path::At,
            urls,
        },
    },
    record::{
        questions::{model::Question, store},
        visits::store as visits,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "questions/order.html")]
pub struct OrderPage {
    page: Page,
    occasion: Occasion,
    rows: Vec<Row>,
    may_change: bool,
}

impl OrderPage {
    /// One row gets a press for each neighbour it has.
    fn step(&self, question: &QuestionId, way: &str) -> String {
        self.page.at(urls::question(question).and(&self.occasion.path).and(way))
    }
}

pub async fn with_contact(grant: Grant<See<Clinical>>, At(id): At<ContactId>) -> Result<OrderPage> {
    let view = grant.view().await?;
    let occasion = Occasion::of_contact(&view, id).await?;
    page(&grant, &view, occasion).await
}

pub async fn for_meeting(
    grant: Grant<See<Clinical>>,
    At(id): At<AppointmentId>,
    Day(on): Day,
) -> Result<OrderPage> {
    let view = grant.view().await?;
    let occasion = Occasion::of_meeting(&view, (id, on)).await?;
    page(&grant, &view, occasion).await
}

async fn page(
    grant: &Grant<See<Clinical>>,
    view: &View<Clinical>,
    occasion: Occasion,
) -> Result<OrderPage> {
    let (names, titles) = (view.names().await?, Titles::read(view, &[]).await?);
    let carried = visits::carried(view).await?;
    let rows = occasion.questions(view).await?.into_iter();
    Ok(OrderPage {
        page: grant.page(format!("Questions for {}", occasion.with.name)),
        rows: rows.map(|it| Row::of(it, (&names, &titles), &carried)).collect(),
        may_change: grant.may::<Change<Clinical>>(),
        occasion,
    })
}

type Changing = Grant<Change<Clinical>>;

pub async fn earlier_with(
    grant: Changing,
    At(id): At<QuestionId>,
    At(contact): At<ContactId>,
    form: Form<Press>,
) -> Done {
    let write = grant.write().await?;
    let occasion = Occasion::of_contact(&write, contact).await?;
    step(write, &occasion, (id, form.parse()?.version), Step::Earlier).await
}

pub async fn later_with(
    grant: Changing,
    At(id): At<QuestionId>,
    At(contact): At<ContactId>,
    form: Form<Press>,
) -> Done {
    let write = grant.write().await?;
    let occasion = Occasion::of_contact(&write, contact).await?;
    step(write, &occasion, (id, form.parse()?.version), Step::Later).await
}

pub async fn earlier_for(
    grant: Changing,
    At(id): At<QuestionId>,
    At(appointment): At<AppointmentId>,
    Day(on): Day,
    form: Form<Press>,
) -> Done {
    let write = grant.write().await?;
    let occasion = Occasion::of_meeting(&write, (appointment, on)).await?;
    step(write, &occasion, (id, form.parse()?.version), Step::Earlier).await
}

pub async fn later_for(
    grant: Changing,
    At(id): At<QuestionId>,
    At(appointment): At<AppointmentId>,
    Day(on): Day,
    form: Form<Press>,
) -> Done {
    let write = grant.write().await?;
    let occasion = Occasion::of_meeting(&write, (appointment, on)).await?;
    step(write, &occasion, (id, form.parse()?.version), Step::Later).await
}

/// One place further, in the order as the presser sees it. Where someone has changed the question
/// since the page was shown there is no typing to keep, so the answer is the page as it is now.
async fn step(
    mut write: Write<Clinical>,
    occasion: &Occasion,
    (id, version): (QuestionId, i64),
    step: Step,
) -> Done {
    let found = store::find(&write, id).await?;
    let all = occasion.questions(&write).await?;
    let line = match places(&all, |it| it.id == id, step) {
        Some((one, other)) if one.version == version => {
            store::save(&mut write, one, &one.moved_to(other)).await?;
            store::save(&mut write, other, &other.moved_to(one)).await?;
            moved(one, other, step)
        }
        _ => format!("Not moved: {}. Look at the order as it is now", found.title()),
    };
    write.commit().await?.then(urls::questions().and(&occasion.path)).saying(line)
}

fn moved(one: &Question, other: &Question, step: Step) -> String {
    let word = if step == Step::Earlier { "before" } else { "after" };
    format!("“{}” is now asked {word} “{}”", one.title(), other.title())
}
