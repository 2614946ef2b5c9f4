//! The page of today, and the press that confirms having read.

use super::{
    checks::{self, Fact},
    facts::Facts,
    form::Confirmed,
    needs::{self, Need},
    planned::Planned,
    read,
    week::{self, Day},
};
use crate::{
    across::{
        appointments, coverage, directives,
        history::days::{self, Told},
        papers, renewals, tasks, visits,
    },
    platform::{
        audit::{Names, read::Wanted},
        auth::{
            area::{Clinical, Directives, Essentials, History, Log, Members, Papers, Tasks},
            grant::{Change, Grant, See},
        },
        db::{Done, View},
        error::Result,
        web::{form::Form, page::Page, stamp::Stamp, urls},
    },
    record::coverage::cards::{model::Card, store as cards},
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "today/show.html")]
pub struct ShowPage {
    page: Page,
    /// After a death nothing reminds: neither what needs someone, nor what was checked long ago.
    living: bool,
    needs: Vec<Need>,
    /// The next seven days, as far as the reader's place reaches.
    week: Option<Vec<Day>>,
    changes: Option<Changes>,
    oldest: Vec<Checked>,
    may_note: bool,
    /// What is shown at a desk.
    cards: Vec<Card>,
    /// For those who decide: no mail server is set, and mail lies as files.
    mail_lies: bool,
}

/// What others changed since the reader last confirmed.
struct Changes {
    told: Told,
    /// The newest entry that the page knows of: what a press confirms.
    upto: i64,
    ever: bool,
}

/// A fact with the stamp of its check.
struct Checked {
    fact: Fact,
    stamp: Stamp,
}

/// How many changes the page tells; the rest is in the history.
const MOST: usize = 20;

pub async fn show(grant: Grant<See<Essentials>>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let (page, names) = (grant.page("Today"), view.names().await?);
    let facts = Facts::read(&view, grant.today()).await?;
    let living = facts.person.is_living();
    let planned = match view.area::<Tasks>().filter(|_| living) {
        Some(view) => Some(Planned::read(&view, &page).await?),
        None => None,
    };
    let mut needs = match living {
        true => needs(&grant, &view, (&facts, planned.as_ref(), &names)).await?,
        false => Vec::new(),
    };
    if let Some(it) = &planned {
        let calendar = (&it.words, &it.calendar);
        needs.extend(appointments::needs::waiting(&view, &page, calendar).await?);
    }
    let week = planned.as_ref().map(|it| week::of(it, &names, &page));
    let changes = match view.area::<History>() {
        Some(view) => Some(changes(&grant, &view).await?),
        None => None,
    };
    let stamped =
        |fact: Fact| Checked { stamp: Stamp::of(&page, &names, fact.check.clone()), fact };
    let oldest = if living { checks::oldest(&facts) } else { Vec::new() };
    let oldest = oldest.into_iter().map(stamped).collect();
    let mail_lies = living && grant.may::<Change<Members>>() && !grant.house().carrier.leaves();
    let may_note = grant.may::<Change<Log>>();
    let cards = match view.area::<Papers>() {
        Some(view) => cards::standing(&view).await?,
        None => Vec::new(),
    };
    Ok(ShowPage { living, needs, week, changes, oldest, may_note, cards, mail_lies, page })
}

async fn needs(
    grant: &Grant<See<Essentials>>,
    view: &View<Essentials>,
    (facts, planned, names): (&Facts, Option<&Planned>, &Names),
) -> Result<Vec<Need>> {
    let mut needs = needs::of(facts, grant.today());
    if let Some(it) = planned.filter(|_| grant.may::<Change<Tasks>>()) {
        let hers = (grant.member(), grant.today());
        needs.extend(tasks::needs(&it.tasks, &it.hands, names, hers));
    }
    if let Some(view) = view.area::<Directives>() {
        needs.extend(directives::needs::of(&view).await?);
    }
    if let Some(view) = view.area::<Log>() {
        needs.extend(needs::waiting(&view).await?);
    }
    if grant.may::<See<Members>>()
        && let Some(view) = view.area::<Clinical>()
    {
        needs.extend(needs::to_look_at_again(&view, grant.today()).await?);
    }
    if grant.may::<Change<Members>>()
        && let Some(view) = view.area::<Members>()
    {
        needs.extend(needs::invitations(&view, grant.now()).await?);
        needs.extend(needs::lost_mail(&view, grant.now()).await?);
    }
    if let Some(view) = view.area::<Clinical>() {
        needs.extend(visits::needs::own(&view).await?);
    }
    if let Some(view) = view.area::<Papers>() {
        needs.extend(renewals::needs::of(&view, names, grant.today()).await?);
        needs.extend(papers::needs::of(&view, grant.today()).await?);
        if grant.may::<Change<Members>>() {
            needs.extend(papers::words::needs(&view, &grant.house().ocr).await?);
        }
    }
    if let Some(view) = view.area::<Papers>().filter(|it| it.may_change()) {
        needs.extend(coverage::needs(&view, &grant.page("Today")).await?);
    }
    let treated = facts.treated.iter();
    needs.extend(treated.flat_map(|it| needs::compared(it, grant.today())));
    Ok(needs)
}

async fn changes(grant: &Grant<See<Essentials>>, view: &View<History>) -> Result<Changes> {
    let (mark, upto) = (read::mark(view).await?, read::newest(view).await?);
    let wanted = Wanted {
        after: Some(mark),
        not_by: Some(grant.member()),
        changes_only: true,
        most: Some(MOST),
        ..Wanted::default()
    };
    let told = days::tell(view, &wanted, grant.zone(), grant.today()).await?;
    Ok(Changes { told, upto, ever: mark > 0 })
}

/// Only the reader can say that she has read.
pub async fn confirm(grant: Grant<See<History>>, form: Form<Confirmed>) -> Done {
    let confirmed = form.parse()?;
    let mut write = grant.note().await?;
    read::confirm(&mut write, confirmed.upto).await?;
    write.commit().await?.then(urls::today()).saying("Noted that you have read this")
}
