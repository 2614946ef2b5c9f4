//! One appointment, and one of a series: what is known of it, what is at the same time, and what can be done.

use super::{
    clash::{self, Seeing},
    row::{Row, Words, unusual},
};
use crate::{
    across::papers::about,
    base::{
        clock::Instant,
        day,
        ids::{AppointmentId, PathId},
    },
    platform::{
        audit::Touch,
        auth::{
            area::{Clinical, Essentials, History, Members, Role, Tasks},
            grant::{Change, Grant, Leave, See},
        },
        db::View,
        error::{Error, Result},
        house::House,
        web::{
            page::Page,
            path::{self, At},
            urls,
        },
    },
    record::{
        appointments::{
            matter::Matter,
            matter_store,
            meeting::Meeting,
            model::{Appointment, Status},
            store,
        },
        papers::model::Paper,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::{extract::FromRequestParts, http::request::Parts};
use time::{Date, Duration};

/// One time of an appointment, as the address names it: by the day it would have been on.
#[derive(Clone, Copy)]
pub struct Named {
    pub appointment: AppointmentId,
    pub day: Date,
}

impl FromRequestParts<House> for Named {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, house: &House) -> Result<Self> {
        let id = path::text(parts, house, AppointmentId::PARAM).await?;
        let day = path::text(parts, house, "day").await?;
        let appointment = id.parse().map_err(|_| Error::NotFound)?;
        Ok(Named { appointment, day: day::iso(&day).ok_or(Error::NotFound)? })
    }
}

/// What the reader may do.
pub struct May {
    pub book: bool,
    pub go: bool,
    /// Say how it stands: who books, and an aide where she goes along.
    pub say: bool,
    pub decide: bool,
    pub read_history: bool,
    pub see_contacts: bool,
    /// The sheet before the visit.
    pub see_sheet: bool,
}

impl May {
    fn of<L: Leave>(grant: &Grant<L>, hers: bool) -> May {
        let change = grant.may::<Change<Tasks>>();
        let aide = grant.role() == Role::Aide;
        May {
            book: change && !aide,
            go: change && grant.role() != Role::Person,
            say: change && (!aide || hers),
            decide: grant.may::<Change<Members>>(),
            read_history: grant.may::<See<History>>(),
            see_contacts: grant.may::<See<Essentials>>(),
            see_sheet: grant.may::<See<Clinical>>(),
        }
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "appointments/show.html")]
pub struct ShowPage {
    page: Page,
    of: Appointment,
    with: Option<String>,
    along: String,
    /// The one it is about: the only one, or one of a series.
    row: Option<Row>,
    hers: bool,
    /// Of a series: how it repeats, what that leaves out, the next ones, what differs.
    repeats: Option<String>,
    leaves_out: Option<String>,
    next: Vec<Row>,
    differs: Vec<Row>,
    follows: Option<Appointment>,
    followed_by: Option<Appointment>,
    matter: Option<Matter>,
    referral: Option<String>,
    unusual: Option<String>,
    papers: Vec<Paper>,
    touch: Option<Touch>,
    may: May,
}

/// So many of the next ones stand on the page of a series.
const NEXT: usize = 8;

pub async fn show(grant: Seeing, At(id): At<AppointmentId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let of = store::find(&view, id).await?;
    let meeting = match of.is_series() {
        true => None,
        false => Some(store::meeting(&view, id, of.on_day).await?),
    };
    page(&grant, view, (of, meeting)).await
}

pub async fn one(grant: Seeing, named: Named) -> Result<ShowPage> {
    let view = grant.view().await?;
    let of = store::find(&view, named.appointment).await?;
    let meeting = store::meeting(&view, named.appointment, named.day).await?;
    page(&grant, view, (of, Some(meeting))).await
}

async fn page(
    grant: &Seeing,
    view: View<Tasks>,
    (of, meeting): (Appointment, Option<Meeting>),
) -> Result<ShowPage> {
    let page = grant.page(of.title.as_str());
    let words = Words::read(&view, &page).await?;
    let matter = match view.area::<Clinical>() {
        Some(view) => Some(matter_store::of(&view, of.id).await?),
        None => None,
    };
    let all = store::list(&view).await?;
    let (next, differs) = match meeting {
        Some(_) => (Vec::new(), Vec::new()),
        None => of_series(&view, &of, &page).await?,
    };
    let touch = view.last_change("appointment", of.id.into()).await?;
    let papers = about::papers(&view, ("appointment", of.id.into())).await?;
    let near = match &meeting {
        Some(it) => store::meetings(&view, around(it).0, around(it).1).await?,
        None => Vec::new(),
    };
    drop(view);
    let row = |it: Meeting| Row::of(&words, it, &page);
    let (mut row_of, mut hers) = (None, false);
    if let Some(meeting) = meeting.clone() {
        let elsewhere = clash::elsewhere(grant, around(&meeting)).await?;
        let mut it = row(meeting);
        it.warnings = clash::found(&it.meeting, &near, &elsewhere, &words);
        hers = it.is_hers(&words);
        row_of = Some(it);
    }
    let repeat = of.repeat();
    let of_day = meeting.as_ref().map_or(of.on_day, |it| it.day(page.local()));
    let other = |it: &&Appointment, id| Some(it.id) == id;
    Ok(ShowPage {
        with: words.with(&of),
        along: words.along(meeting.as_ref().unwrap_or(&Meeting::of(&of, of.on_day, None))),
        hers,
        repeats: repeat.as_ref().map(|it| it.words(of.on_day)),
        leaves_out: repeat.and_then(|it| it.leaves_out(of.on_day)),
        next: next.into_iter().map(row).collect(),
        differs: differs.into_iter().map(row).collect(),
        follows: all.iter().find(|it| other(it, of.follows_id)).cloned(),
        followed_by: all.iter().find(|it| it.follows_id == Some(of.id)).cloned(),
        referral: matter.as_ref().and_then(|it| it.referral_ends(of_day)),
        matter: matter.filter(|it| !it.is_empty()),
        unusual: unusual(meeting.as_ref().unwrap_or(&Meeting::of(&of, of.on_day, None))),
        may: May::of(grant, hers),
        row: row_of,
        papers,
        touch,
        of,
        page,
    })
}

/// The time in which another one may lie over it: none lasts longer than a day.
fn around(it: &Meeting) -> (Instant, Instant) {
    (it.starts.minus(Duration::days(1)), it.ends())
}

/// The next ones of a series, and all that differ from it.
async fn of_series(
    view: &View<Tasks>,
    of: &Appointment,
    page: &Page,
) -> Result<(Vec<Meeting>, Vec<Meeting>)> {
    let own = store::occurrences(view, Some(of.id)).await?;
    let far = page.now.plus(Duration::days(1100));
    let mut next = Meeting::all(std::slice::from_ref(of), &own, (page.now, far));
    next.truncate(NEXT);
    let differs = own.iter().filter(|it| !it.struck);
    let mut differs: Vec<_> = differs.map(|it| Meeting::of(of, it.on_day, Some(it))).collect();
    differs.sort_by_key(|it| (!it.orphan, it.starts));
    Ok((next, differs))
}

impl ShowPage {
    /// Where its actions are.
    fn own(&self) -> urls::Address {
        urls::appointment(self.of.id)
    }

    fn one(&self, row: &Row) -> urls::Address {
        urls::appointment_on(self.of.id, row.meeting.on)
    }

    /// One of a series, and not the series.
    fn is_one_of_series(&self) -> bool {
        self.of.is_series() && self.row.is_some()
    }

    /// Whether it is not the first of its series: then it parts it.
    fn may_part(&self) -> bool {
        let on = self.row.as_ref().map(|it| it.meeting.on);
        on.is_some_and(|on| on != self.of.on_day && self.of.falls_on(on))
    }

    fn original_day(&self, row: &Row) -> Option<String> {
        row.meeting.is_moved().then(|| day::short_words(row.meeting.on))
    }

    fn day_it_had(&self, row: &Row) -> String {
        day::short_words(row.meeting.on)
    }

    fn first_day(&self) -> String {
        day::short_words(self.of.on_day)
    }

    /// Whether its clocks are not the person's.
    fn is_elsewhere(&self) -> bool {
        self.of.zone != *self.page.local()
    }

    fn is_cancelled(&self) -> bool {
        self.of.status == Status::Cancelled
    }

    /// Of a series; and of one that is only requested or confirmed.
    fn shows_series_status(&self) -> bool {
        self.row.is_none() || self.is_cancelled()
    }

    fn referral_day(&self, matter: &Matter) -> Option<String> {
        matter.referral_until.map(day::words)
    }
}
