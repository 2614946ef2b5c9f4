//! The four sheets of the medicines on screen, and their prints.

use super::{day, list, slip_pages, wallet, week};
use crate::{
    across::sheets::give::give,
    base::day as calendar,
    platform::{
        auth::{
            area::{Clinical, Essentials},
            grant::{Grant, Leave, See},
        },
        db::View,
        error::Result,
        house::House,
        pdf::Sheet,
        web::{page::Page, urls},
    },
    record::medicines::schedule::grids::Asked,
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{
    Router,
    extract::Query,
    response::Response,
    routing::{get, post},
};
use time::{Date, Duration};

pub fn routes() -> Router<House> {
    Router::new()
        .route("/p/{person}/sheets/medicines", get(list))
        .route("/p/{person}/sheets/medicines/print", post(print_list))
        .route("/p/{person}/sheets/wallet", get(wallet))
        .route("/p/{person}/sheets/wallet/print", post(print_wallet))
        .route("/p/{person}/sheets/week", get(week))
        .route("/p/{person}/sheets/week/print", post(print_week))
        .route("/p/{person}/sheets/day", get(day))
        .route("/p/{person}/sheets/day/print", post(print_day))
        .merge(slip_pages::routes())
}

type Seeing = Grant<See<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "sheets/medicines.html")]
pub struct ListPage {
    page: Page,
    facts: list::Facts,
}

/// The facts of the list as this member sees them.
pub async fn list_facts<L: Leave>(view: &View<Clinical>, grant: &Grant<L>) -> Result<list::Facts> {
    let name = view.names().await?.of(grant.member()).to_owned();
    list::Facts::read(view, &list::Reader { name, today: grant.today() }).await
}

async fn list(grant: Seeing) -> Result<ListPage> {
    let facts = list_facts(&grant.view().await?, &grant).await?;
    Ok(ListPage { page: grant.page(facts.title), facts })
}

async fn print_list(grant: Seeing) -> Result<Response> {
    let facts = list_facts(&grant.view().await?, &grant).await?;
    give(&grant, (Sheet::MedicineList, "inline"), &facts).await
}

#[derive(Template, WebTemplate)]
#[template(path = "sheets/wallet.html")]
pub struct WalletPage {
    page: Page,
    facts: wallet::Facts,
}

async fn wallet(grant: Grant<See<Essentials>>) -> Result<WalletPage> {
    let facts = wallet::Facts::read(&grant.view().await?, grant.today()).await?;
    Ok(WalletPage { page: grant.page(facts.title), facts })
}

async fn print_wallet(grant: Grant<See<Essentials>>) -> Result<Response> {
    let facts = wallet::Facts::read(&grant.view().await?, grant.today()).await?;
    give(&grant, (Sheet::WalletCard, "inline"), &facts).await
}

#[derive(Template, WebTemplate)]
#[template(path = "sheets/week.html")]
pub struct WeekPage {
    page: Page,
    facts: week::Facts,
    from: Date,
    unread: Option<String>,
    before: Date,
    after: Date,
}

impl WeekPage {
    fn words(&self) -> String {
        calendar::words(self.from)
    }
}

async fn week(grant: Seeing, Query(asked): Query<Asked>) -> Result<WeekPage> {
    let from = asked.day(grant.today());
    let facts = week::Facts::read(&grant.view().await?, from).await?;
    Ok(WeekPage {
        page: grant.page(facts.title),
        facts,
        from,
        unread: asked.unread(),
        before: from - Duration::days(7),
        after: from + Duration::days(7),
    })
}

async fn print_week(grant: Seeing, Query(asked): Query<Asked>) -> Result<Response> {
    let facts = week::Facts::read(&grant.view().await?, asked.day(grant.today())).await?;
    give(&grant, (Sheet::Week, "inline"), &facts).await
}

#[derive(Template, WebTemplate)]
#[template(path = "sheets/day.html")]
pub struct DayPage {
    page: Page,
    facts: day::Facts,
    on: Date,
    unread: Option<String>,
    before: Date,
    after: Date,
}

impl DayPage {
    fn words(&self) -> String {
        calendar::words(self.on)
    }
}

async fn day(grant: Seeing, Query(asked): Query<Asked>) -> Result<DayPage> {
    let on = asked.day(grant.today());
    let facts = day::Facts::read(&grant.view().await?, on).await?;
    Ok(DayPage {
        page: grant.page(facts.title),
        facts,
        on,
        unread: asked.unread(),
        before: on - Duration::days(1),
        after: on + Duration::days(1),
    })
}

async fn print_day(grant: Seeing, Query(asked): Query<Asked>) -> Result<Response> {
    let facts = day::Facts::read(&grant.view().await?, asked.day(grant.today())).await?;
    give(&grant, (Sheet::Day, "inline"), &facts).await
}
