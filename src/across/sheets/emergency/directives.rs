//! The block of the emergency sheet that says which directives stand, where the originals are, and
//! the phones of the agent and the alternates. Not their text; what is voided or superseded stands on
//! no sheet, nor does a financial power, which nobody needs at a bedside. Two that disagree are both
//! named.

use crate::{
    across::directives::ground::Ground,
    base::{day, ids::ContactId, text::Phone},
    platform::{auth::area, db::View, error::Result},
    record::directives::{model::Directive, standing::Fate},
};
use serde::Serialize;

#[derive(Serialize)]
pub struct Directives {
    pub sentence: String,
    /// Where there is something on the sheet that could be taken for the paper itself.
    pub caution: Option<&'static str>,
    pub disagree: Vec<String>,
    pub items: Vec<DirectiveItem>,
}

#[derive(Serialize)]
pub struct DirectiveItem {
    pub kind: String,
    pub signed: Option<String>,
    pub form_of: Option<String>,
    pub original: Option<String>,
    pub agents: Vec<AgentItem>,
    /// It gives a power, and no agent is written down.
    pub no_agent: bool,
}

#[derive(Serialize)]
pub struct AgentItem {
    pub what: &'static str,
    pub name: String,
    pub phones: Vec<Phone>,
    /// Struck from the contacts, or dead.
    pub amiss: Option<String>,
}

const CAUTION: &str = "Copy for information, not an order.";

impl Directives {
    pub(super) async fn read(view: &View<area::Directives>) -> Result<Directives> {
        let ground = Ground::read(view).await?;
        let standing = ground.standing();
        let for_care = |id| standing.find(id).is_some_and(|it| it.kind.is_for_care());
        let pairs = standing.pairs.iter().filter(|it| for_care(it.one) && for_care(it.other));
        let shown = standing.in_force.iter().filter(|it| it.kind.is_for_care());
        let items: Vec<_> = shown.map(|it| DirectiveItem::of(it, &ground)).collect();
        Ok(Directives {
            sentence: sentence(&ground, items.len()),
            caution: (!items.is_empty()).then_some(CAUTION),
            disagree: pairs.filter_map(|it| standing.sentence(it)).collect(),
            items,
        })
    }
}

/// Where something is listed, but nothing for this sheet, the sheet says no more than that.
fn sentence(ground: &Ground, shown: usize) -> String {
    use crate::record::directives::answer::Asked;
    match ground.asked() {
        Asked::Listed { .. } => Asked::Listed { in_force: shown }.sentence(),
        asked => asked.sentence(),
    }
}

impl DirectiveItem {
    pub(in crate::across::sheets) fn of(it: &Directive, ground: &Ground) -> DirectiveItem {
        let agents: Vec<_> = it.named().map(|(what, id)| AgentItem::of(what, id, ground)).collect();
        let holder = it.holder_id.map(|id| held(id, ground));
        let place = it.kept_where.as_ref().map(ToString::to_string);
        DirectiveItem {
            kind: it.kind.title(),
            signed: it.signed_day(),
            form_of: it.form_of.as_ref().map(ToString::to_string),
            original: match (place, holder) {
                (Some(place), Some(holder)) => Some(format!("{place}; {holder}")),
                (one, other) => one.or(other),
            },
            no_agent: it.kind.power().is_some() && agents.is_empty(),
            agents,
        }
    }
}

/// "held by Ines Varga, 218-555-0101"
fn held(id: ContactId, ground: &Ground) -> String {
    let phone = ground.contact(id).and_then(|it| it.phones().next());
    let phone = phone.map(|it| format!(", {it}")).unwrap_or_default();
    format!("held by {}{phone}", ground.name(id))
}

impl AgentItem {
    fn of(what: &'static str, id: ContactId, ground: &Ground) -> AgentItem {
        AgentItem {
            what,
            name: ground.name(id),
            phones: ground.contact(id).map(|it| it.phones().cloned().collect()).unwrap_or_default(),
            amiss: match ground.fate(id) {
                Fate::Struck => Some("struck from the contacts".to_owned()),
                Fate::Died(on) => Some(format!("died on {}", day::words(on))),
                Fate::Listed | Fate::NotShown => None,
            },
        }
    }
}
