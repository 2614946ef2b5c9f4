//! Writing down what was noticed, putting the words right, and the answer to it.

use super::{
    fall::{GotUp, Known},
    form::{Answered, Noticed},
    model::{Observation, may_speak},
    store,
    subject::Subject,
};
use crate::base::ids::ObservationId;
use crate::platform::{
    auth::{
        area::Log,
        grant::{Change, Grant},
    },
    db::{Done, View},
    error::{Error, Result},
    web::{
        form::{Choice, Form},
        page::Page,
        path::At,
        typed::Typed,
        urls,
    },
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Log>>;

#[derive(Template, WebTemplate)]
#[template(path = "observations/edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    kept: Option<Observation>,
}

impl EditPage {
    fn name(&self) -> &str {
        self.page.person.as_ref().map_or("", |it| &it.name)
    }

    fn subjects(&self) -> impl Iterator<Item = &'static str> {
        Subject::ALL.iter().map(|it| it.words())
    }

    fn ups(&self) -> impl Iterator<Item = &'static str> {
        GotUp::ALL.iter().map(|it| it.words())
    }

    fn known(&self) -> impl Iterator<Item = &'static str> {
        Known::ALL.iter().map(|it| it.words())
    }
}

pub async fn blank(grant: Changing, typed: Typed) -> EditPage {
    let typed = typed.with_day("seen_on", grant.today());
    EditPage { page: grant.page("What did you notice?"), typed, kept: None }
}

pub async fn add(grant: Changing, form: Form<Noticed>) -> Done {
    let seen = form.parse()?.seen;
    let mut write = grant.write().await?;
    let by = (write.member(), write.at());
    let new = Observation::new(write.person(), seen, by, grant.today())?;
    let id = store::add(&mut write, &new).await?;
    write.commit().await?.then(urls::observation(id)).saying("Kept, with your name")
}

pub async fn edit(grant: Changing, At(id): At<ObservationId>, typed: Typed) -> Result<EditPage> {
    let kept = store::find(&grant.view().await?, id).await?;
    if !kept.is_of(grant.member()) {
        return Err(Error::Forbidden);
    }
    let up = kept.fall_up.map(Choice::words).unwrap_or_default();
    let typed = typed.over(&kept).with("about", kept.about).with("fall_up", up);
    Ok(EditPage { page: grant.page("Put the words right"), typed, kept: Some(kept) })
}

pub async fn save(grant: Changing, At(id): At<ObservationId>, form: Form<Noticed>) -> Done {
    let Noticed { seen, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let after = before.put_right(seen, (write.member(), write.at()), grant.today())?;
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::observation(id)).saying("The words are put right")
}

#[derive(Template, WebTemplate)]
#[template(path = "observations/answer.html")]
pub struct AnswerPage {
    page: Page,
    typed: Typed,
    kept: Observation,
    by: String,
    entered: Option<String>,
}

impl AnswerPage {
    fn name(&self) -> &str {
        self.page.person.as_ref().map_or("", |it| &it.name)
    }
}

/// One that she may answer, or speak about for the person.
pub(super) async fn spoken<A>(
    grant: &Changing,
    view: &View<A>,
    id: ObservationId,
) -> Result<Observation> {
    let found = store::find(&view.area::<Log>().ok_or(Error::NotFound)?, id).await?;
    match may_speak(grant.role(), &view.voice().await?) {
        true => Ok(found),
        false => Err(Error::Forbidden),
    }
}

pub async fn answering(
    grant: Changing,
    At(id): At<ObservationId>,
    typed: Typed,
) -> Result<AnswerPage> {
    let view = grant.view().await?;
    let kept = spoken(&grant, &view, id).await?;
    let by = view.names().await?.of(kept.noted_by).to_owned();
    let page = grant.page("Answer");
    let entered = page.entered_for(&view.voice().await?);
    Ok(AnswerPage { page, typed: typed.over(&kept), kept, by, entered })
}

pub async fn answer(grant: Changing, At(id): At<ObservationId>, form: Form<Answered>) -> Done {
    let Answered { answer, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = spoken(&grant, &write, id).await?.opened_at(version)?;
    let by = (write.member(), write.at());
    let after = before.answered(answer, by, grant.role())?;
    let says = if after.answer.is_some() { "The answer is kept" } else { "The answer is gone" };
    store::save(&mut write, &before, &after).await?;
    write.commit().await?.then(urls::observation(id)).saying(says)
}
