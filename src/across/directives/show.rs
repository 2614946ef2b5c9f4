//! One directive: what it is, who is named in it with the phones, where the original is, who has a
//! copy, and what is to be done about it.

use super::{Seeing, ground::Ground};
use crate::{
    across::papers::about,
    base::{
        day,
        ids::{DirectiveCopyId, DirectiveEventId, DirectiveId},
        text::Phone,
    },
    platform::{
        audit::Touch,
        auth::{
            area::{Directives, History, Members},
            grant::{Change, See},
        },
        error::Result,
        web::{page::Page, path::At, urls},
    },
    record::{
        directives::{
            copies::DirectiveCopy,
            kind::State,
            model::Directive,
            signing::{self, Row},
            standing::Fate,
        },
        papers::model::Paper,
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "directives/show.html")]
pub struct ShowPage {
    page: Page,
    kept: Directive,
    named: Vec<Named>,
    holder: Option<String>,
    superseded_by: Option<Directive>,
    disagree: Vec<String>,
    troubles: Vec<String>,
    /// After what it is to be looked at again.
    prompts: Vec<(String, DirectiveEventId)>,
    asides: Vec<(String, DirectiveEventId, i64)>,
    copies: Vec<CopyRow>,
    row: Option<&'static Row>,
    /// Its scans, among the papers that she sees.
    papers: Vec<Paper>,
    touch: Option<Touch>,
    may_change: bool,
    may_decide: bool,
    may_read_history: bool,
}

/// Someone who is named in it.
struct Named {
    what: &'static str,
    name: String,
    phones: Vec<Phone>,
    amiss: Option<String>,
}

struct CopyRow {
    id: DirectiveCopyId,
    holder: String,
    given: String,
    told: Option<String>,
    /// Its holder must still hear.
    waits: bool,
}

impl Named {
    pub fn all(it: &Directive, ground: &Ground) -> Vec<Named> {
        let named = |(what, id)| Named {
            what,
            name: ground.name(id),
            phones: ground.contact(id).map(|it| it.phones().cloned().collect()).unwrap_or_default(),
            amiss: match ground.fate(id) {
                Fate::Struck => Some("struck from the contacts".to_owned()),
                Fate::Died(on) => Some(format!("died on {}", day::words(on))),
                Fate::Listed | Fate::NotShown => None,
            },
        };
        it.named().map(named).collect()
    }
}

fn copies(ground: &Ground, id: DirectiveId) -> Vec<CopyRow> {
    let to_tell = ground.to_tell();
    let row = |it: &DirectiveCopy| CopyRow {
        id: it.id,
        holder: ground.holder(it),
        given: it.given_day(),
        told: it.told_so(),
        waits: to_tell.iter().any(|waits| waits.id == it.id),
    };
    ground.copies_of(id).map(row).collect()
}

fn asides(ground: &Ground, id: DirectiveId) -> Vec<(String, DirectiveEventId, i64)> {
    let of = ground.asides.iter().filter(|it| it.standing && it.directive_id == id);
    let said = of.filter_map(|it| {
        let event = ground.events.iter().find(|event| event.id == it.event_id)?;
        let says = format!("After {}: {}", ground.event_title(event), it.reason);
        Some((says, it.event_id, it.version))
    });
    said.collect()
}

pub async fn show(grant: Seeing, At(id): At<DirectiveId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let ground = Ground::read(&view).await?;
    let kept = ground.find(id)?.clone();
    let touch = view.last_change("directive", id.into()).await?;
    let page = grant.page(kept.title());
    let standing = ground.standing();
    let pairs = standing.pairs.iter().filter(|it| it.one == id || it.other == id);
    let troubles = standing.troubles.iter().filter(|it| it.directive == id);
    let prompts = if page.has_died() { Vec::new() } else { ground.prompts() };
    let prompts = prompts.iter().filter(|it| it.directive.id == id);
    let by = kept.superseded_by.and_then(|by| ground.find(by).ok());
    Ok(ShowPage {
        named: Named::all(&kept, &ground),
        holder: kept.holder_id.map(|id| ground.name(id)),
        superseded_by: by.cloned(),
        disagree: pairs.filter_map(|it| standing.sentence(it)).collect(),
        troubles: troubles.map(|it| ground.trouble(it)).collect(),
        prompts: prompts.map(|it| (ground.event_title(it.event), it.event.id)).collect(),
        asides: asides(&ground, id),
        copies: copies(&ground, id),
        papers: about::papers(&view, ("directive", id.into())).await?,
        row: signing::row_for(&kept),
        touch,
        may_change: grant.may::<Change<Directives>>(),
        may_decide: grant.may::<Change<Members>>(),
        may_read_history: grant.may::<See<History>>(),
        page,
        kept,
    })
}
