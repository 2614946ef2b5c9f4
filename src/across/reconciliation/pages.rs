//! The lists, a new one, and the comparison.

use super::{
    compare::{self, Comparison, Open},
    form::NewList,
    model::{ListLine, ListState, Paper, SecondList},
    settled::Class,
    settled_store, store,
};
use crate::{
    base::{
        day,
        ids::{MemberId, SecondListId},
    },
    platform::{
        auth::{
            area::{Clinical, Essentials, History, Role},
            grant::{Change, Grant, See},
        },
        db::{Done, View},
        error::{Error, Result},
        web::{
            form::{Choice, Form, FormErrors},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::{
        people::store as people,
        questions::{model::Whom, store as questions},
    },
};
use askama::Template;
use askama_web::WebTemplate;

/// An aide is shown what is taken now; a list also says what was.
pub fn shown(role: Role) -> Result<()> {
    if role == Role::Aide { Err(Error::NotFound) } else { Ok(()) }
}

#[derive(Template, WebTemplate)]
#[template(path = "reconciliation/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    rows: Vec<Row>,
    /// The words of the link to the pairs, with how many there are.
    pairs: String,
}

/// A list with who entered it.
struct Row {
    list: SecondList,
    by: String,
}

pub async fn list(grant: Grant<See<Clinical>>) -> Result<ListPage> {
    shown(grant.role())?;
    let view = grant.view().await?;
    let names = view.names().await?;
    let row = |list: SecondList| Row { by: names.of(list.entered_by).to_owned(), list };
    let rows = store::list(&view).await?.into_iter().map(row).collect();
    let pairs = settled_store::pairs(&view).await?.into_iter().filter(|it| it.standing).count();
    let pairs = match pairs {
        0 => "Names of one ingredient".to_owned(),
        some => format!("Names of one ingredient ({some})"),
    };
    let page = grant.page("Lists beside the record");
    Ok(ListPage { page, may_change: grant.may::<Change<Clinical>>(), rows, pairs })
}

#[derive(Template, WebTemplate)]
#[template(path = "reconciliation/add.html")]
pub struct AddPage {
    page: Page,
    typed: Typed,
}

impl AddPage {
    fn papers(&self) -> impl Iterator<Item = &'static str> {
        Paper::ALL.iter().map(|it| it.words())
    }
}

pub async fn blank(grant: Grant<Change<Clinical>>, typed: Typed) -> AddPage {
    let typed = typed.with_day("dated_on", grant.today()).with("paper", Paper::Discharge);
    AddPage { page: grant.page("Lay a list beside the record"), typed }
}

pub async fn add(grant: Grant<Change<Clinical>>, form: Form<NewList>) -> Done {
    let NewList { paper, dated_on, source, born, lines } = form.parse()?;
    FormErrors::unless_come("dated_on", dated_on, grant.today())?;
    let mut write = grant.write().await?;
    let mut list = SecondList {
        id: SecondListId::default(),
        person_id: write.person(),
        paper,
        dated_on,
        source,
        born,
        entered_by: write.member(),
        entered_at: write.at(),
        state: ListState::Open,
        finished_on: None,
        struck_reason: None,
        version: 1,
    };
    list.id = store::add(&mut write, &list).await?;
    let count = lines.len();
    for (words, understood) in lines {
        store::add_line(&mut write, &ListLine::new(&list, words, understood)).await?;
    }
    let to = urls::second_list(list.id).and("lines");
    let line = format!("Kept {count} lines. Look whether each was understood");
    write.commit().await?.then(to).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "reconciliation/show.html")]
pub struct ShowPage {
    page: Page,
    typed: Typed,
    list: SecondList,
    by: String,
    /// Both birth dates, where the list's is another one than the record's.
    born: Option<String>,
    comparison: Comparison,
    askers: Vec<(MemberId, String)>,
    wrote: bool,
    may_change: bool,
    may_read_history: bool,
}

impl ShowPage {
    fn classes(&self) -> &'static [Class] {
        &Class::ORDER
    }

    /// Whether a row stands otherwise than on the page that a form was sent from.
    fn moved_on(&self, row: &Open) -> bool {
        self.typed.stale() && !self.typed.among("opened", row.opened(), &true)
    }

    fn whoms(&self) -> [&'static str; 2] {
        [Whom::Pharmacist.words(), Whom::Prescriber.words()]
    }
}

pub async fn show(
    grant: Grant<See<Clinical>>,
    At(id): At<SecondListId>,
    typed: Typed,
) -> Result<ShowPage> {
    shown(grant.role())?;
    let view = grant.view().await?;
    let list = store::find(&view, id).await?;
    let comparison = compare::read(&view, &list).await?;
    Ok(ShowPage {
        page: grant.page(list.title()),
        typed: typed.with("for_whom", Whom::Pharmacist),
        by: view.names().await?.of(list.entered_by).to_owned(),
        born: born_otherwise(&view, &list).await?,
        askers: questions::askers(&view).await?,
        wrote: comparison.settled.iter().any(|it| it.row.stands_written()),
        may_change: grant.may::<Change<Clinical>>(),
        may_read_history: grant.may::<See<History>>(),
        comparison,
        list,
    })
}

/// "born 9 March 1941 on it, and 9 March 1944 in the record"
async fn born_otherwise(view: &View<Clinical>, list: &SecondList) -> Result<Option<String>> {
    let (Some(view), Some(paper)) = (view.area::<Essentials>(), list.born) else {
        return Ok(None);
    };
    let record = people::find(&view).await?.born;
    let (on_it, ours) = (day::words(paper), day::words(record));
    Ok((paper != record).then(|| format!("born {on_it} on it, and {ours} in the record")))
}
