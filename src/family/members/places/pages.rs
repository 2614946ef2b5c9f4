//! One member's place: what it is, its role, and the areas that are lowered for her.

use super::{
    super::{
        answers::{model::Answer, store as answers},
        model::{Membership, State, role_words},
    },
    form::{self, Areas, Other, ROLES},
    rules,
    store::{self, Relative},
};
use crate::base::ids::MembershipId;
use crate::platform::{
    auth::{
        area::{AreaName, History, Members, Role},
        grant::{self, Grant, See},
        lowered,
    },
    db::{Done, View, Write},
    error::{Error, Result},
    web::{
        form::{Form, FormErrors},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

pub type Changing = Grant<grant::Change<Members>>;

#[derive(Template, WebTemplate)]
#[template(path = "members/place.html")]
pub struct PlacePage {
    page: Page,
    whose: Relative,
    is_own: bool,
    may_change: bool,
    may_read_history: bool,
    /// What the person answered about this place, and how she was asked.
    answers: Vec<(Answer, String)>,
}

impl PlacePage {
    fn reaches(&self) -> &'static str {
        role_words(self.whose.role)
    }

    fn clock(&self) -> String {
        self.whose.zone.clock_words(self.page.now)
    }
}

pub async fn show(grant: Grant<See<Members>>, At(id): At<MembershipId>) -> Result<PlacePage> {
    let view = grant.view().await?;
    let whose = store::relative(&view, id).await?;
    let may_change = grant.may::<grant::Change<Members>>();
    let mut answers = Vec::new();
    if may_change {
        let names = view.names().await?;
        let about = answers::about(&view, "membership", id.into()).await?.into_iter();
        answers.extend(about.map(|it| (it.clone(), it.asked(&names))));
    }
    Ok(PlacePage {
        page: grant.page(format!("The place of {}", whose.name)),
        is_own: whose.id == grant.member(),
        may_change,
        answers,
        may_read_history: grant.may::<See<History>>(),
        whose,
    })
}

#[derive(Template, WebTemplate)]
#[template(path = "members/place_role.html")]
pub struct RolePage {
    page: Page,
    typed: Typed,
    whose: Relative,
    version: i64,
    roles: Vec<(&'static str, &'static str)>,
}

pub async fn role(grant: Changing, At(id): At<MembershipId>, typed: Typed) -> Result<RolePage> {
    let view = grant.view().await?;
    let (kept, whose) = (find(&view, id).await?, store::relative(&view, id).await?);
    let page = grant.page(format!("Another role for {}", whose.name));
    let typed = typed.over(&kept);
    let roles = ROLES.map(|it| (it.name(), role_words(it))).to_vec();
    Ok(RolePage { page, typed, whose, version: kept.version, roles })
}

pub async fn change_role(grant: Changing, At(id): At<MembershipId>, form: Form<Other>) -> Done {
    let Other { role, version } = form.parse()?;
    let write = grant.write().await?;
    let before = opened_at(&write, id, version).await?;
    let says = format!("now shares this record as {}", role.name());
    keep(write, (&before, &before.in_role(role)), "role", &says).await
}

#[derive(Template, WebTemplate)]
#[template(path = "members/place_areas.html")]
pub struct AreasPage {
    page: Page,
    typed: Typed,
    whose: Relative,
    version: i64,
}

impl AreasPage {
    /// The areas the role reaches: name, what belongs there, and what they can be set to.
    fn areas(&self) -> impl Iterator<Item = (&'static str, &'static str, Vec<String>)> {
        let choices = |it| form::choices(self.whose.role, it).into_iter().map(String::from);
        let all = AreaName::ALL.into_iter().map(move |it| (it, choices(it).collect::<Vec<_>>()));
        let reached = all.filter(|(_, choices)| !choices.is_empty());
        reached.map(|(area, choices)| (area.name(), area.holds(), choices))
    }
}

pub async fn areas(grant: Changing, At(id): At<MembershipId>, typed: Typed) -> Result<AreasPage> {
    let view = grant.view().await?;
    let (kept, whose) = (find(&view, id).await?, store::relative(&view, id).await?);
    let page = grant.page(format!("What {} sees", whose.name));
    let typed = AreaName::ALL.into_iter().fold(typed, |typed, area| {
        let level = kept.lowered.level(area);
        typed.with(area.name(), level.map_or(form::AS_THE_ROLE, lowered::words))
    });
    Ok(AreasPage { page, typed, whose, version: kept.version })
}

pub async fn lower(grant: Changing, At(id): At<MembershipId>, form: Form<Areas>) -> Done {
    let areas = form.parse()?;
    let write = grant.write().await?;
    let before = opened_at(&write, id, areas.version).await?;
    let after = before.lowered(areas.over(before.lowered, before.role));
    keep(write, (&before, &after), "essentials", "has the areas you chose").await
}

/// A place that has not ended.
pub async fn find(view: &View<Members>, id: MembershipId) -> Result<Membership> {
    let found = store::list(view).await?.into_iter().find(|it| it.id == id);
    found.filter(|it| it.state != State::Ended).ok_or(Error::NotFound)
}

/// The place as it was when the page was opened, or `Stale`.
pub async fn opened_at(view: &View<Members>, id: MembershipId, version: i64) -> Result<Membership> {
    let found = find(view, id).await?;
    if found.version == version { Ok(found) } else { Err(Error::Stale) }
}

/// Keeps a change that the rules allow; `field` is where the page says so if they do not.
pub async fn keep(
    mut write: Write<Members>,
    (before, after): (&Membership, &Membership),
    field: &'static str,
    says: &str,
) -> Done {
    let places = store::list(&write).await?;
    rules::allow(&places, write.member(), (before, after))
        .map_err(|why| FormErrors::at(field, why))?;
    let name = store::relative(&write, before.id).await?.name;
    // Her own leaving is nobody's decision for the person.
    let for_her = write.voice().await?.is_spoken_for() && before.member_id != write.member();
    store::save(&mut write, before, &after.on_behalf_if(for_her, before)).await?;
    let own_end = before.member_id == write.member() && after.state != State::Standing;
    let to = match after.state {
        _ if own_end => urls::records(),
        State::Ended => urls::family(),
        State::Standing | State::Paused => urls::place(before.id),
    };
    write.commit().await?.then(to).saying(format!("{name} {says}"))
}
