//! The sheets there are, the emergency sheet on screen, and its print.

use super::{
    emergency::Facts,
    give::give,
    kept::{self, Reader},
    medicines::{pages::list_facts, wallet},
    print::{self, Print},
    store,
};
use crate::platform::{
    auth::{
        area::{Clinical, Directives, Essentials, Members, Papers},
        grant::{Change, Grant, Leave, See},
    },
    error::{Error, Result},
    pdf::Sheet,
    web::{page::Page, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use axum::response::Response;
use time::Date;

type Changing = Grant<Change<Members>>;

#[derive(Template, WebTemplate)]
#[template(path = "sheets/list.html")]
pub struct ListPage {
    page: Page,
    prints: Vec<Row>,
    /// Whether she decides, so may ask the person with the sheet of what is kept.
    may_ask: bool,
    may_see_medicines: bool,
    may_see_directives: bool,
    today: Date,
}

/// An earlier print, and whether it still says what the record says to this reader; none where
/// she may not see that sheet.
struct Row {
    print: Print,
    by: String,
    current: Option<bool>,
}

pub async fn list(grant: Grant<See<Essentials>>) -> Result<ListPage> {
    let view = grant.view().await?;
    let (names, prints) = (view.names().await?, store::list(&view).await?);
    let emergency = print::hash(&Facts::read(&view, grant.today()).await?);
    let page = grant.page("Sheets");
    let may_ask = grant.may::<Change<Members>>() && !page.has_died();
    let kept = match view.area::<Members>().filter(|_| may_ask) {
        Some(members) => Some(kept::Facts::read(&members, &kept_by(&grant)).await?),
        None => None,
    };
    // What was never printed need not be compared.
    let printed = |sheet: Sheet| prints.iter().any(|it| it.sheet == sheet.name());
    let medicines = match view.area::<Clinical>().filter(|_| printed(Sheet::MedicineList)) {
        Some(clinical) => Some(print::hash(&list_facts(&clinical, &grant).await?)),
        None => None,
    };
    let wallet = match printed(Sheet::WalletCard) {
        true => Some(print::hash(&wallet::Facts::read(&view, grant.today()).await?)),
        false => None,
    };
    // A week and a day are of their own dates: they are not compared with now.
    let now = [
        (Sheet::Emergency, Some(emergency)),
        (Sheet::Kept, kept.as_ref().map(print::hash)),
        (Sheet::MedicineList, medicines),
        (Sheet::WalletCard, wallet),
    ];
    // Who reads less on the emergency sheet than others would be told by a difference that there is more.
    let reads_all = view.for_sheet_unless_closed::<Directives>().is_some();
    let row = |print: Print| {
        let own = reads_all || print.member_id == grant.member();
        let same = now.iter().find(|(sheet, _)| sheet.name() == print.sheet).filter(|_| own);
        let current = same.and_then(|(_, hash)| Some(*hash.as_ref()? == print.facts));
        Row { by: names.of(print.member_id).to_owned(), current, print }
    };
    // A print of the cards, or of the register, tells those who see neither that there is one.
    let may_see_directives = grant.may::<See<Directives>>();
    let told = |it: &Print| match it.sheet.as_str() {
        sheet if sheet == Sheet::Cards.name() => grant.may::<See<Papers>>(),
        sheet if sheet == Sheet::Directives.name() => may_see_directives,
        _ => true,
    };
    let prints = prints.into_iter().filter(told).map(row).collect();
    let may_see_medicines = grant.may::<See<Clinical>>();
    let today = grant.today();
    Ok(ListPage { page, prints, may_ask, may_see_medicines, may_see_directives, today })
}

#[derive(Template, WebTemplate)]
#[template(path = "sheets/emergency.html")]
pub struct EmergencyPage {
    page: Page,
    facts: Facts,
}

pub async fn emergency(grant: Grant<See<Essentials>>) -> Result<EmergencyPage> {
    let facts = Facts::read(&grant.view().await?, grant.today()).await?;
    Ok(EmergencyPage { page: grant.page("Emergency sheet"), facts })
}

/// The paper, to be looked at and printed.
pub async fn print_emergency(grant: Grant<See<Essentials>>) -> Result<Response> {
    paper(grant, "inline").await
}

/// The same as a file, for when there is no network.
pub async fn keep_emergency(grant: Grant<See<Essentials>>) -> Result<Response> {
    paper(grant, "attachment").await
}

async fn paper(grant: Grant<See<Essentials>>, disposition: &str) -> Result<Response> {
    let view = grant.view().await?;
    let facts = Facts::read(&view, grant.today()).await?;
    drop(view);
    give(&grant, (Sheet::Emergency, disposition), &facts).await
}

#[derive(Template, WebTemplate)]
#[template(path = "sheets/kept.html")]
pub struct KeptPage {
    page: Page,
    facts: kept::Facts,
}

pub async fn kept(grant: Changing) -> Result<KeptPage> {
    let page = living(grant.page("What is kept"))?;
    let facts = kept::Facts::read(&grant.view().await?, &kept_by(&grant)).await?;
    Ok(KeptPage { page, facts })
}

/// The sheet speaks to the person: after her death there is none.
fn living(page: Page) -> Result<Page> {
    if page.has_died() { Err(Error::NotFound) } else { Ok(page) }
}

pub async fn print_kept(grant: Changing) -> Result<Response> {
    living(grant.page(""))?;
    let view = grant.view().await?;
    let facts = kept::Facts::read(&view, &kept_by(&grant)).await?;
    drop(view);
    give(&grant, (Sheet::Kept, "inline"), &facts).await
}

/// Who shows the sheet to the person, and when.
fn kept_by<L: Leave>(grant: &Grant<L>) -> Reader {
    Reader { member: grant.member(), role: grant.role(), now: grant.now() }
}
