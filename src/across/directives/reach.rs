//! Whose place reaches these pages, as it stands: said beside who is named in the papers, because
//! the two are different facts.

use crate::{
    family::members::{
        model::State,
        places::store::{self as places, Relative},
    },
    platform::{
        auth::{
            area::{AreaName, Directives, Members},
            policy::{self, Level, Reach},
        },
        db::View,
        error::Result,
    },
};

/// "Ines (steward): sees and changes"; none where the reader does not see who shares the record.
pub async fn lines(view: &View<Directives>) -> Result<Option<Vec<String>>> {
    let Some(view) = view.area::<Members>() else { return Ok(None) };
    let family = places::family(&view).await?;
    Ok(Some(family.iter().filter_map(line).collect()))
}

fn line(it: &Relative) -> Option<String> {
    let reach = Reach { role: it.role, lowered: it.lowered };
    let does = match (it.state, policy::level(reach, AreaName::Directives)) {
        (State::Standing, Level::Change) => "sees and changes these pages",
        (State::Standing, Level::See) => "sees these pages",
        _ => return None,
    };
    Some(format!("{} ({}): {does}", it.name, it.role.name()))
}
