//! One refusal: the words, whose move it is, the calls, the answer, and beside it how long the
//! medicine lasts.

use super::{refusals::Told, titles::Medicines};
use crate::{
    base::{clock::Instant, ids::RefusalId},
    platform::{
        audit::Names,
        auth::{
            area::{Clinical, History, Members, Papers, Tasks},
            grant::{Change, Grant, See},
        },
        db::View,
        error::{Error, Result},
        web::{page::Page, path::At, urls},
    },
    record::{
        coverage::{
            model::Cover,
            refusals::{calls::Call, due::due, model::Refusal, store},
            rules, store as covers,
        },
        medicines::stock::standing,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use time::Date;

#[derive(Template, WebTemplate)]
#[template(path = "coverage/refusal.html")]
pub struct ShowPage {
    page: Page,
    kept: Refusal,
    medicine: String,
    cover: Option<Cover>,
    calls: Vec<Call>,
    names: Names,
    due: Due,
    /// How long the medicine lasts, and by when to act, as the supply says it.
    lasts: Option<String>,
    act_by: Option<String>,
    may_change: bool,
    may_task: bool,
    may_decide: bool,
    may_read_history: bool,
}

/// By when the plan answers.
struct Due {
    at: Option<Instant>,
    passed: bool,
    source: &'static str,
}

impl Due {
    fn of(it: &Refusal, cover: Option<&Cover>, now: Instant) -> Due {
        let at = cover.zip(it.statement_at);
        let at = at.and_then(|(cover, stated)| due(cover.kind, stated, it.expedited));
        let passed = it.decision.is_none() && at.is_some_and(|it| it < now);
        Due { at, passed, source: &rules::medicare().answers.source }
    }
}

impl ShowPage {
    fn hours(&self) -> i64 {
        let answers = &rules::medicare().answers;
        if self.kept.expedited { answers.expedited_hours } else { answers.hours }
    }

    fn by(&self, call: &Call) -> &str {
        self.names.of(call.entered_by)
    }

    fn may_go_on(&self) -> bool {
        self.may_change && self.kept.stands()
    }
}

pub async fn show(_: Told, grant: Grant<See<Papers>>, At(id): At<RefusalId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let (kept, medicines) = (store::find(&view, id).await?, Medicines::read(&view).await?);
    let all = covers::list(&view).await?.into_iter();
    let cover = all.into_iter().find(|it| Some(it.id) == kept.cover_id);
    let (lasts, act_by) = supply(&view, &kept, grant.today()).await?;
    Ok(ShowPage {
        page: grant.page(medicines.title(&kept)),
        medicine: medicines.of(&kept).to_owned(),
        calls: store::calls_about(&view, id).await?,
        names: view.names().await?,
        due: Due::of(&kept, cover.as_ref(), grant.now()),
        lasts,
        act_by,
        may_change: grant.may::<Change<Papers>>(),
        may_task: grant.may::<Change<Tasks>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        cover,
        kept,
    })
}

/// Of a medicine that is taken or on hold; of another one nothing is said.
async fn supply(
    view: &View<Papers>,
    kept: &Refusal,
    today: Date,
) -> Result<(Option<String>, Option<String>)> {
    let view = view.area::<Clinical>().ok_or(Error::NotFound)?;
    let it = standing::one(&view, kept.medicine_id, today).await?;
    Ok((Some(it.words(today)), it.act_words(today)))
}
