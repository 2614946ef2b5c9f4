//! One cover, the form for it, and the page that shows its numbers.

use super::{
    form::{Numbered, Typed as TypedCover},
    kind::Kind,
    model::Cover,
    noted::noted,
    rules, store,
};
use crate::base::ids::CoverId;
use crate::platform::{
    audit::Touch,
    auth::{
        area::{History, Members, Papers},
        grant::{Change, Grant, See},
    },
    db::{Done, View},
    error::Result,
    web::{
        form::{Choice, Form},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

pub type Changing = Grant<Change<Papers>>;

#[derive(Template, WebTemplate)]
#[template(path = "coverage/show.html")]
pub struct ShowPage {
    page: Page,
    kept: Cover,
    holds: bool,
    talk_is_over: bool,
    /// Medicare's dates, for a kind that has them.
    dates: Vec<String>,
    source: &'static str,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
}

pub async fn show(grant: Grant<See<Papers>>, At(id): At<CoverId>) -> Result<ShowPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    let years = &rules::medicare().plan_years;
    let dated = kept.kind.begins_in_january() && kept.holds_on(grant.today());
    Ok(ShowPage {
        page: grant.page(kept.title()),
        holds: kept.holds_on(grant.today()),
        talk_is_over: kept.talk_is_over(grant.today()),
        dates: if dated { years.lines(kept.kind, grant.today()) } else { Vec::new() },
        source: &years.source,
        may_change: grant.may::<Change<Papers>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        kept,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "coverage/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    kept: Option<Cover>,
    touch: Option<Touch>,
    /// Those who share the record, for who may talk to them.
    members: Vec<String>,
}

impl EditPage {
    fn kinds(&self) -> impl Iterator<Item = &'static str> {
        Kind::ALL.iter().map(|it| it.words())
    }
}

async fn members(view: &View<Papers>) -> Result<Vec<String>> {
    Ok(view.members().await?.into_iter().map(|(_, name)| name).collect())
}

pub async fn blank(grant: Changing, typed: Typed) -> Result<EditPage> {
    let members = members(&grant.view().await?).await?;
    Ok(EditPage { page: grant.page("Add a cover"), typed, kept: None, touch: None, members })
}

pub async fn add(grant: Changing, form: Form<TypedCover>) -> Done {
    let TypedCover { terms, numbers, .. } = form.parse()?;
    let mut write = grant.write().await?;
    let new = Cover::new(write.person(), terms, numbers)?;
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::cover(id)).saying(format!("Added {}", new.title()))
}

pub async fn edit(grant: Changing, At(id): At<CoverId>, typed: Typed) -> Result<EditPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let touch = view.last_change("cover", id.into()).await?;
    let typed = typed.over(&kept).with("kind", kept.kind.words());
    let members = members(&view).await?;
    let page = grant.page(format!("Put {} right", kept.title()));
    Ok(EditPage { page, typed, kept: Some(kept), touch, members })
}

pub async fn save(grant: Changing, At(id): At<CoverId>, form: Form<TypedCover>) -> Done {
    let TypedCover { terms, version, .. } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.reworded(terms)?;
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::cover(id)).saying(format!("Saved {}", after.title()))
}

#[derive(Template, WebTemplate)]
#[template(path = "coverage/numbers.html")]
pub struct NumbersPage {
    page: Page,
    typed: Typed,
    kept: Cover,
    noted: bool,
    may_change: bool,
}

/// The numbers in full; the history notes that they were shown.
pub async fn numbers(
    grant: Grant<See<Papers>>,
    At(id): At<CoverId>,
    typed: Typed,
) -> Result<NumbersPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let noted = noted(&grant, &view, ("opened the numbers of", "cover", id.into())).await;
    let mut typed = typed;
    for (name, value) in [
        ("member_number", &kept.member_number),
        ("group_number", &kept.group_number),
        ("rx_bin", &kept.rx_bin),
        ("rx_pcn", &kept.rx_pcn),
        ("rx_group", &kept.rx_group),
    ] {
        typed = typed.with(name, value.as_ref().map(ToString::to_string).unwrap_or_default());
    }
    let page = grant.page(format!("Numbers of {}", kept.title()));
    let may_change = grant.may::<Change<Papers>>() && !kept.struck;
    Ok(NumbersPage { page, typed, kept, noted, may_change })
}

pub async fn keep_numbers(grant: Changing, At(id): At<CoverId>, form: Form<Numbered>) -> Done {
    let Numbered { numbers, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    store::save(&mut write, &before, &before.numbered(numbers)).await?;
    write.commit().await?.then(urls::cover(id)).saying("Saved the numbers")
}
