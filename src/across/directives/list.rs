//! The page of the directives: at its top what needs someone, then what stands, then what is over.

use super::{Seeing, ground::Ground, reach};
use crate::{
    base::day,
    platform::{
        audit::Touch,
        auth::{
            area::{Clinical, Directives},
            grant::Change,
        },
        db::View,
        error::Result,
        web::{
            page::Page,
            urls::{self, Address},
        },
    },
    record::{
        conditions::{model::Condition, store as conditions},
        directives::{
            answer::Asked,
            copies::DirectiveCopy,
            diagnosis::{self, Since},
            kind::State,
            model::Directive,
            review::{self, Prompt},
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "directives/list.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    asked: Asked,
    touch: Option<Touch>,
    /// What is at the top: two that disagree, and what is amiss with an agent.
    disagree: Vec<String>,
    troubles: Vec<(String, Address)>,
    prompts: Vec<(String, String, Address)>,
    to_tell: Vec<(String, Address)>,
    decade: Option<String>,
    /// What began since, with the address that writes it down.
    diagnoses: Vec<(String, String)>,
    in_force: Vec<Row>,
    drafts: Vec<Row>,
    over: Vec<Row>,
    struck: Vec<Row>,
    members: Option<Vec<String>>,
    has_events: bool,
}

/// One directive in a few lines.
pub struct Row {
    it: Directive,
    lines: Vec<String>,
}

impl Row {
    fn of(it: &Directive, ground: &Ground) -> Row {
        let named = it.named().map(|(what, id)| format!("{what}: {}", ground.name(id)));
        let holder = it.holder_id.map(|id| format!(", held by {}", ground.name(id)));
        let kept = match &it.kept_where {
            Some(place) => Some(format!("original: {place}{}", holder.unwrap_or_default())),
            None => it.holder_id.map(|id| format!("original: held by {}", ground.name(id))),
        };
        let over = it.superseded_by.map(|by| format!("superseded by: {}", ground.title(by)));
        let held: Vec<_> = ground.copies_of(it.id).map(|it| ground.holder(it)).collect();
        let copies = match held.is_empty() {
            true => "no copy is written down".to_owned(),
            false => format!("copies: {}", held.join(", ")),
        };
        let copies = (!it.is_draft()).then_some(copies);
        let lines = named.chain(kept).chain(copies).chain(over).chain(it.voided_so()).collect();
        Row { it: it.clone(), lines }
    }
}

pub async fn list(grant: Seeing) -> Result<ListPage> {
    let view = grant.view().await?;
    let ground = Ground::read(&view).await?;
    let touch = view.last_change("directive_answer", ground.answer.id.into()).await?;
    let (members, born) = (reach::lines(&view).await?, view.whose().await?.born);
    let page = grant.page("Directives");
    let may_change = grant.may::<Change<Directives>>();
    let standing = ground.standing();
    let rows =
        |those: &[&Directive]| those.iter().map(|it| Row::of(it, &ground)).collect::<Vec<_>>();
    let struck: Vec<&Directive> = ground.all.iter().filter(|it| it.struck).collect();
    // After a death nothing asks to be looked at again.
    let prompts = if page.has_died() { Vec::new() } else { ground.prompts() };
    let decade = review::decade_unsaid(born, grant.today(), &ground.all, &ground.events)
        .filter(|_| !page.has_died());
    let diagnoses = if page.has_died() { Vec::new() } else { diagnoses(&view, &ground).await? };
    let trouble = |it| (ground.trouble(it), urls::directive(it.directive));
    let prompt = |it: &Prompt| {
        let after = format!("after {}", ground.event_title(it.event));
        (it.directive.title(), after, urls::directive(it.directive.id))
    };
    let tell = |it: &&DirectiveCopy| {
        let says =
            format!("{}: has a copy of {}", ground.holder(it), ground.title(it.directive_id));
        (says, urls::directive_copy(it.id).and("told"))
    };
    Ok(ListPage {
        may_change,
        asked: ground.asked(),
        touch,
        disagree: standing.pairs.iter().filter_map(|it| standing.sentence(it)).collect(),
        troubles: standing.troubles.iter().map(trouble).collect(),
        prompts: prompts.iter().map(prompt).collect(),
        to_tell: ground.to_tell().iter().map(tell).collect(),
        decade: decade.map(day::words),
        diagnoses,
        in_force: rows(&standing.in_force),
        drafts: rows(&standing.drafts),
        over: rows(&standing.over),
        struck: rows(&struck),
        members,
        has_events: !ground.events.is_empty(),
        page,
    })
}

impl ListPage {
    fn name(&self) -> &str {
        self.page.person.as_ref().map_or("the person", |it| &it.name)
    }
}

/// "Atrial fibrillation, since 2024", where it began after one of them was last signed or looked at.
async fn diagnoses(view: &View<Directives>, ground: &Ground) -> Result<Vec<(String, String)>> {
    let Some(view) = view.area::<Clinical>() else { return Ok(Vec::new()) };
    let asked = |it: Condition| {
        let since = it.since.as_ref()?;
        let began = Since::read(since.as_str())?;
        let query = super::events::Asked::diagnosis(&it.name, began).query();
        let says = format!("{}, since {since}", it.name);
        diagnosis::is_unsaid(began, &ground.all, &ground.events).then_some((says, query))
    };
    Ok(conditions::standing(&view).await?.into_iter().filter_map(asked).collect())
}
