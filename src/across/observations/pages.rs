//! The list by day, of one thing it is about or of all, and one observation by itself.

use super::tick;
use crate::{
    base::{day, ids::ObservationId, reach::Phone},
    platform::{
        audit::Names,
        auth::{
            area::{Clinical, History, Log, Members},
            grant::{Change, Grant, See},
            voice::Voice,
        },
        error::Result,
        web::{
            form::Choice,
            page::Page,
            path::At,
            urls::{self, Address},
        },
    },
    record::observations::{
        model::{Observation, may_speak},
        store::{self, PAGE, Wanted},
        subject::Subject,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;
use time::Date;

/// One observation as it is read.
pub struct Row {
    pub kept: Observation,
    pub by: String,
    /// "Ottoline Varga", or "Ottoline Varga, entered by Ines".
    pub answered: Option<String>,
}

impl Row {
    pub fn of(kept: Observation, names: &Names, name: &str) -> Row {
        let answered = kept.answer_by.map(|by| match kept.answer_for_her {
            Some(true) => format!("{name}, entered by {}", names.of(by)),
            _ => name.to_owned(),
        });
        Row { by: names.of(kept.noted_by).to_owned(), answered, kept }
    }
}

/// What was noticed on one day.
pub struct DayOf {
    pub name: String,
    pub rows: Vec<Row>,
}

fn by_day(rows: Vec<Row>, today: Date) -> Vec<DayOf> {
    let mut days: Vec<(Date, DayOf)> = Vec::new();
    for row in rows {
        let on = row.kept.seen_on;
        match days.last_mut() {
            Some((last, day)) if *last == on => day.rows.push(row),
            _ => {
                let name = format!("{}, {}", day::short_words(on), day::ago(on, today));
                days.push((on, DayOf { name, rows: vec![row] }));
            }
        }
    }
    days.into_iter().map(|(_, day)| day).collect()
}

/// Which of them, and from where on.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    about: String,
    before: String,
}

impl Asked {
    fn before(&self) -> Option<(Date, ObservationId)> {
        let (on, id) = self.before.split_once('.')?;
        Some((day::iso(on)?, id.parse().ok()?))
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "observations/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    about: Option<Subject>,
    days: Vec<DayOf>,
    earlier: Option<String>,
}

impl ListPage {
    fn name(&self) -> &str {
        self.page.person.as_ref().map_or("", |it| &it.name)
    }

    fn subjects(&self) -> impl Iterator<Item = Subject> {
        Subject::ALL.iter().copied()
    }

    fn is_of(&self, subject: &Subject) -> bool {
        self.about == Some(*subject)
    }
}

pub async fn list(grant: Grant<See<Log>>, Query(asked): Query<Asked>) -> Result<ListPage> {
    let view = grant.view().await?;
    let about = Subject::named(&asked.about);
    let wanted = Wanted { about, before: asked.before(), most: PAGE, ..Wanted::default() };
    let found = store::list(&view, &wanted).await?;
    let last = found.last().filter(|_| found.len() as i64 == PAGE);
    let earlier = last.map(|it| {
        let of = about.map(Subject::name).unwrap_or_default();
        format!("about={of}&before={}.{}", it.seen_on, it.id)
    });
    let (names, name) = (view.names().await?, view.whose().await?.name);
    let rows = found.into_iter().map(|it| Row::of(it, &names, &name)).collect();
    Ok(ListPage {
        page: grant.page("Noticed"),
        may_change: grant.may::<Change<Log>>(),
        about,
        days: by_day(rows, grant.today()),
        earlier,
    })
}

/// What the reader may do with one.
pub struct May {
    put_right: bool,
    answer: bool,
    keep: bool,
    show: bool,
    strike: bool,
    tick: bool,
}

impl May {
    fn of(grant: &Grant<See<Log>>, voice: &Voice, it: &Observation) -> May {
        let (member, role) = (grant.member(), grant.role());
        let writes = grant.may::<Change<Log>>();
        let (stands, speaks) = (writes && !it.struck, may_speak(role, voice));
        May {
            put_right: stands && it.is_of(member),
            answer: stands && speaks,
            keep: stands && speaks && !it.clinician_only,
            show: stands && it.clinician_only && it.may_be_shown_by(member, role, voice),
            strike: writes && it.may_be_struck_by(member, role),
            tick: stands,
        }
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "observations/show.html")]
pub struct ShowPage {
    page: Page,
    row: Row,
    may: May,
    /// The visit on whose sheet it stands, and that sheet.
    visit: Option<(String, Address)>,
    emergency_number: Phone,
    may_see_sheet: bool,
    may_decide: bool,
    may_read_history: bool,
}

impl ShowPage {
    fn name(&self) -> &str {
        self.page.person.as_ref().map_or("", |it| &it.name)
    }

    fn seen(&self) -> String {
        day::words(self.row.kept.seen_on)
    }

    /// The usual caution, while the person lives.
    fn cautions(&self) -> bool {
        self.row.kept.hit_the_head() && !self.row.kept.struck && !self.page.has_died()
    }
}

pub async fn show(grant: Grant<See<Log>>, At(id): At<ObservationId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let (names, whose, voice) = (view.names().await?, view.whose().await?, view.voice().await?);
    let page = grant.page(kept.title());
    let visit = tick::of(&view, &kept).await?;
    let visit = visit.map(|it| (tick::words(&it, &page), urls::visit_sheet_of(it.id(), it.on)));
    Ok(ShowPage {
        page,
        visit,
        may: May::of(&grant, &voice, &kept),
        emergency_number: whose.emergency_number,
        may_see_sheet: grant.may::<See<Clinical>>(),
        may_decide: grant.may::<Change<Members>>() && !kept.struck,
        may_read_history: grant.may::<See<History>>(),
        row: Row::of(kept, &names, &whose.name),
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_goes_on_before_the_last_one_it_showed() {
        let asked = |before: &str| Asked { before: before.to_owned(), ..Asked::default() }.before();
        let on = time::macros::date!(2026 - 03 - 09);
        assert_eq!(asked("2026-03-09.17"), Some((on, 17.into())));
        for odd in ["", "17", "2026-03-09", "2026-02-31.17", "2026-03-09.x"] {
            assert_eq!(asked(odd), None, "{odd}");
        }
    }
}
