//! What needs someone among the directives, for Today: two that disagree, an agent who can not be
//! asked, what is to be looked at again, and for those who may do it the copy holders to be told.

use super::ground::Ground;
use crate::{
    across::today::needs::Need,
    platform::{
        auth::area::Directives,
        db::View,
        error::Result,
        web::urls::{self, Address},
    },
    record::directives::review::Prompt,
};

pub async fn of(view: &View<Directives>) -> Result<Vec<Need>> {
    let ground = Ground::read(view).await?;
    let standing = ground.standing();
    let need = |says: String, to: Address| Need { says, to };
    let mut needs = Vec::new();
    if !ground.asked().is_asked() {
        needs.push(need("Directives: not asked yet".to_owned(), urls::directives()));
    }
    for it in standing.pairs.iter().filter_map(|it| standing.sentence(it)) {
        needs.push(need(it, urls::directives()));
    }
    for it in &standing.troubles {
        needs.push(need(ground.trouble(it), urls::directive(it.directive)));
    }
    needs.extend(prompts(&ground));
    if view.may_change() {
        needs.extend(ground.to_tell().into_iter().map(|it| {
            let (who, what) = (ground.holder(it), ground.title(it.directive_id));
            let to = urls::directive_copy(it.id).and("told");
            need(format!("To be told that it does not hold any more: {who}, {what}"), to)
        }));
    }
    Ok(needs)
}

/// What is to be looked at again, and after what.
pub async fn reviews(view: &View<Directives>) -> Result<Vec<Need>> {
    Ok(prompts(&Ground::read(view).await?))
}

fn prompts(ground: &Ground) -> Vec<Need> {
    let need = |it: Prompt| {
        let after = ground.event_title(it.event);
        let says = format!("Look at it again: {}, after {after}", it.directive.title());
        Need { says, to: urls::directive(it.directive.id) }
    };
    ground.prompts().into_iter().map(need).collect()
}
