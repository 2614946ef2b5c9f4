//! What happened after which directives are looked at again: the list with what each touches, a new
//! one, striking one, and putting one directive aside after one of them.

use super::{Changing, Seeing, ground::Ground};
use crate::{
    base::{
        day,
        ids::{ContactId, DirectiveEventId, DirectiveId},
        text::Line,
    },
    platform::{
        auth::{area::Directives, grant::Change},
        db::Done,
        error::{Error, Result},
        web::{
            form::{Choice, Form, FormErrors, Press},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::directives::{
        diagnosis::Since,
        event_store as store,
        events::{DirectiveAside, DirectiveEvent, Happened},
        form::{Because, Event},
        model::Directive,
        review,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

#[derive(Template, WebTemplate)]
#[template(path = "directives/events.html")]
pub struct ListPage {
    page: Page,
    rows: Vec<Row>,
    may_change: bool,
}

/// One event, and the directives that it touches.
struct Row {
    it: DirectiveEvent,
    title: String,
    /// With the words for how far each is.
    touched: Vec<(Directive, &'static str)>,
}

impl Row {
    fn of(it: &DirectiveEvent, ground: &Ground) -> Row {
        let open = ground.prompts();
        let waits = |of: &Directive| {
            open.iter().any(|prompt| prompt.event.id == it.id && prompt.directive.id == of.id)
        };
        let touched = ground.all.iter().filter(|of| review::touches(it, of));
        let said = |of: &Directive| {
            (of.clone(), if waits(of) { "look at it again" } else { "reviewed or put aside" })
        };
        Row { it: it.clone(), title: ground.event_title(it), touched: touched.map(said).collect() }
    }
}

pub async fn list(grant: Seeing) -> Result<ListPage> {
    let ground = Ground::read(&grant.view().await?).await?;
    let rows = ground.events.iter().map(|it| Row::of(it, &ground)).collect();
    let may_change = grant.may::<Change<Directives>>();
    Ok(ListPage { page: grant.page("What happened since"), rows, may_change })
}

#[derive(Template, WebTemplate)]
#[template(path = "directives/event.html")]
pub struct EventPage {
    page: Page,
    typed: Typed,
    contacts: Vec<(ContactId, String)>,
}

impl EventPage {
    fn kinds(&self) -> impl Iterator<Item = &'static str> {
        Happened::ALL.iter().map(|it| it.words())
    }

    fn name(&self) -> &str {
        self.page.person.as_ref().map_or("the person", |it| &it.name)
    }
}

/// What the page that led here asks about; all of it can be typed anew.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    kind: String,
    on: String,
    words: String,
}

impl Asked {
    /// A condition that began then; of a year alone the day is left to be typed.
    pub fn diagnosis(name: &Line, since: Since) -> Asked {
        let on = match since {
            Since::On(began) => day::words(began),
            Since::In(_) => String::new(),
        };
        Asked { kind: Happened::Diagnosis.words().to_owned(), on, words: name.to_string() }
    }

    /// As an address asks it.
    pub fn query(&self) -> String {
        let pairs = [("kind", &self.kind), ("on", &self.on), ("words", &self.words)];
        form_urlencoded::Serializer::new(String::new()).extend_pairs(pairs).finish()
    }
}

pub async fn blank(grant: Changing, Query(asked): Query<Asked>, typed: Typed) -> Result<EventPage> {
    let typed = typed.with("kind", asked.kind).with("happened_on", asked.on);
    let typed = typed.with("words", asked.words);
    let contacts = named(&Ground::read(&grant.view().await?).await?);
    Ok(EventPage { page: grant.page("Something happened"), typed, contacts })
}

/// Everyone on the list, and everyone who is named in a directive: also who was struck.
fn named(ground: &Ground) -> Vec<(ContactId, String)> {
    ground.contacts.iter().map(|it| (it.id, it.name.to_string())).collect()
}

pub async fn add(grant: Changing, form: Form<Event>) -> Done {
    let Event { kind, contact_id, on, words } = form.parse()?;
    let mut write = grant.write().await?;
    let ground = Ground::read(&write).await?;
    if contact_id.is_some_and(|id| ground.contact(id).is_none()) {
        let says = "This contact is not on the list any more.";
        return Err(FormErrors::at("contact_id", says).into());
    }
    let whose = (kind, contact_id);
    let new = DirectiveEvent::new(write.person(), whose, (on, words), grant.today())?;
    store::add(&mut write, &new).await?;
    let touched = ground.all.iter().filter(|it| review::touches(&new, it)).count();
    let line = match touched {
        0 => "Written down. No directive is touched by it.".to_owned(),
        1 => "Written down. 1 directive is to be looked at again.".to_owned(),
        many => format!("Written down. {many} directives are to be looked at again."),
    };
    write.commit().await?.then(urls::directive_events()).saying(line)
}

#[derive(Template, WebTemplate)]
#[template(path = "directives/event_act.html")]
pub struct ActPage {
    page: Page,
    typed: Typed,
    title: String,
    version: i64,
    back: String,
    /// What is asked, and its hint; none where a press is enough.
    asks: Option<(&'static str, &'static str)>,
    verb: &'static str,
    explains: &'static str,
}

async fn act(
    grant: &Changing,
    id: DirectiveEventId,
    typed: Typed,
    asks: Option<(&'static str, &'static str)>,
    (verb, explains): (&'static str, &'static str),
) -> Result<ActPage> {
    let ground = Ground::read(&grant.view().await?).await?;
    let kept = ground.events.iter().find(|it| it.id == id).ok_or(Error::NotFound)?;
    let (title, version) = (ground.event_title(kept), kept.version);
    let page = grant.page(format!("{verb}: {title}"));
    let back = page.at(urls::directive_events());
    Ok(ActPage { page, typed, title, version, back, asks, verb, explains })
}

pub async fn striking(
    grant: Changing,
    At(id): At<DirectiveEventId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains =
        "Only where it was entered by mistake. No directive is asked about because of it any more.";
    let asks = Some(("What was wrong with the entry", "for example: it was his brother who moved"));
    act(&grant, id, typed, asks, ("Strike", explains)).await
}

pub async fn strike(grant: Changing, At(id): At<DirectiveEventId>, form: Form<Because>) -> Done {
    let Because { reason, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    store::save(&mut write, &before, &before.struck(reason)).await?;
    write.commit().await?.then(urls::directive_events()).saying("Struck")
}

pub async fn bringing_back(
    grant: Changing,
    At(id): At<DirectiveEventId>,
    typed: Typed,
) -> Result<ActPage> {
    let explains = "What it touches is asked about again.";
    act(&grant, id, typed, None, ("Bring back", explains)).await
}

pub async fn bring_back(grant: Changing, At(id): At<DirectiveEventId>, form: Form<Press>) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    store::save(&mut write, &before, &before.brought_back()).await?;
    write.commit().await?.then(urls::directive_events()).saying("It counts again")
}

/// An event that touches the directive.
fn both(
    ground: &Ground,
    of: DirectiveId,
    event: DirectiveEventId,
) -> Result<(&Directive, &DirectiveEvent)> {
    let of = ground.find(of)?;
    let event = ground.events.iter().find(|it| it.id == event && review::touches(it, of));
    event.map(|event| (of, event)).ok_or(Error::NotFound)
}

pub async fn putting_aside(
    grant: Changing,
    At(of): At<DirectiveId>,
    At(event): At<DirectiveEventId>,
    typed: Typed,
) -> Result<ActPage> {
    let ground = Ground::read(&grant.view().await?).await?;
    let (of, event) = both(&ground, of, event)?;
    let verb = "Put aside";
    let page = grant.page(format!("{verb}: {}", of.title()));
    let back = page.at(urls::directive(of.id));
    let title = format!("{}, after {}", of.title(), ground.event_title(event));
    let asks = Some((
        "Why it need not be looked at",
        "for example: the lawyer says that it holds there as well",
    ));
    let explains =
        "After this event nobody is asked to look at it again. The reason stands on its page.";
    Ok(ActPage { page, typed, title, version: event.version, back, asks, verb, explains })
}

pub async fn put_aside(
    grant: Changing,
    At(of): At<DirectiveId>,
    At(event): At<DirectiveEventId>,
    form: Form<Because>,
) -> Done {
    let Because { reason, .. } = form.parse()?;
    let mut write = grant.write().await?;
    let ground = Ground::read(&write).await?;
    let (of, event) = both(&ground, of, event)?;
    let same = |it: &&DirectiveAside| it.event_id == event.id && it.directive_id == of.id;
    match ground.asides.iter().find(same) {
        Some(before) => store::save_aside(&mut write, before, &before.anew(reason)).await?,
        None => {
            let new = DirectiveAside::new(write.person(), (event.id, of.id), reason);
            store::add_aside(&mut write, &new).await?;
        }
    }
    write.commit().await?.then(urls::directive(of.id)).saying("Put aside, with the reason")
}

pub async fn take_back(
    grant: Changing,
    At(of): At<DirectiveId>,
    At(event): At<DirectiveEventId>,
    form: Form<Press>,
) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let asides = store::asides(&write).await?.into_iter();
    let same = |it: &DirectiveAside| it.event_id == event && it.directive_id == of && it.standing;
    let before = asides.into_iter().find(same).ok_or(Error::NotFound)?;
    if before.version != press.version {
        return Err(Error::Stale);
    }
    store::save_aside(&mut write, &before, &before.taken_back()).await?;
    write.commit().await?.then(urls::directive(of)).saying("It is to be looked at again")
}
