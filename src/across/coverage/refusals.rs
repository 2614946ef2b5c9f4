//! What was refused, and the form for it. The medicine and the cover are chosen from what is listed
//! now; what was chosen before may stay.

use super::{list::Row, titles::Medicines};
use crate::{
    base::ids::{CoverId, MedicineId, RefusalId},
    platform::{
        auth::{
            area::{Clinical, Papers},
            grant::{Change, Grant, See},
        },
        db::{Done, View},
        error::{Error, Result},
        web::{
            form::{Choice, Form, FormErrors, Press},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
    record::{
        coverage::{
            actions::ActPage,
            form::Mistake,
            refusals::{
                form::{Refused, Reworded},
                model::{Refusal, Said},
                mover::Mover,
                store,
            },
            store as covers,
        },
        medicines::store as medicines,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

/// Asked first: for whom refusals are there at all.
pub type Told = Grant<See<Clinical>>;
pub type Changing = Grant<Change<Papers>>;

#[derive(Template, WebTemplate)]
#[template(path = "coverage/refusals.html")]
pub struct ListPage {
    page: Page,
    may_change: bool,
    /// Of which medicine alone, where that was asked.
    of: Option<MedicineId>,
    standing: Vec<Row>,
    over: Vec<Row>,
}

pub async fn list(
    _: Told,
    grant: Grant<See<Papers>>,
    Query(asked): Query<Asked>,
) -> Result<ListPage> {
    let of: Option<MedicineId> = asked.medicine.parse().ok();
    let view = grant.view().await?;
    let medicines = Medicines::read(&view).await?;
    let mut all = store::list(&view).await?;
    all.retain(|it| of.is_none_or(|of| it.medicine_id == of));
    let rows = all.into_iter().map(|it| Row::of(it, &medicines));
    let (standing, over) = rows.partition(|it| it.refusal.stands());
    let may_change = grant.may::<Change<Papers>>();
    Ok(ListPage { page: grant.page("Refused at the counter"), may_change, of, standing, over })
}

#[derive(Template, WebTemplate)]
#[template(path = "coverage/refusal_edit.html")]
pub struct EditPage {
    page: Page,
    typed: Typed,
    kept: Option<Refusal>,
    listed: Listed,
}

/// What can be chosen: medicines and covers.
struct Listed {
    medicines: Vec<(MedicineId, String)>,
    covers: Vec<(CoverId, String)>,
}

impl Listed {
    async fn read(view: &View<Papers>, kept: Option<&Refusal>) -> Result<Listed> {
        let clinical = view.area::<Clinical>().ok_or(Error::NotFound)?;
        let current = medicines::current(&clinical).await?.into_iter();
        let mut medicines: Vec<_> = current.map(|it| (it.id, it.title())).collect();
        if let Some(it) = kept.filter(|it| !medicines.iter().any(|(id, _)| *id == it.medicine_id)) {
            medicines.push((it.medicine_id, Medicines::read(view).await?.of(it).to_owned()));
        }
        let own = kept.and_then(|it| it.cover_id);
        let covers = covers::list(view).await?.into_iter();
        let covers = covers.filter(|it| !it.struck || Some(it.id) == own);
        Ok(Listed { medicines, covers: covers.map(|it| (it.id, it.title())).collect() })
    }

    /// What was sent must stand on the lists; of a cover that the writer does not see, what is kept
    /// stays as it is.
    fn holds(&self, said: Said, kept: Option<&Refusal>) -> Result<Said> {
        if !self.medicines.iter().any(|it| it.0 == said.medicine_id) {
            let says = "This medicine is not on the list any more. Choose again.";
            return Err(FormErrors::at("medicine_id", says).into());
        }
        let known = |id: CoverId| self.covers.iter().any(|it| it.0 == id);
        if said.cover_id.is_some_and(|it| !known(it)) {
            let says = "This cover is not on the list any more. Choose again.";
            return Err(FormErrors::at("cover_id", says).into());
        }
        let unseen = kept.and_then(|it| it.cover_id).filter(|it| !known(*it));
        Ok(Said { cover_id: said.cover_id.or(unseen), ..said })
    }
}

impl EditPage {
    fn movers(&self) -> impl Iterator<Item = &'static str> {
        Mover::ALL.iter().map(|it| it.words())
    }

    fn is(&self, field: &str, id: impl ToString) -> bool {
        self.typed.value(field) == id.to_string()
    }
}

/// Which medicine the page that led here was about.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    medicine: String,
}

pub async fn blank(
    _: Told,
    grant: Changing,
    Query(asked): Query<Asked>,
    typed: Typed,
) -> Result<EditPage> {
    let listed = Listed::read(&grant.view().await?, None).await?;
    let typed = typed.with("medicine_id", asked.medicine).with_day("refused_on", grant.today());
    Ok(EditPage { page: grant.page("Refused at the counter"), typed, kept: None, listed })
}

pub async fn add(_: Told, grant: Changing, form: Form<Refused>) -> Done {
    let Refused { said, mover } = form.parse()?;
    let mut write = grant.write().await?;
    let said = Listed::read(&write, None).await?.holds(said, None)?;
    let by = (write.member(), write.at(), grant.today());
    let new = Refusal::new(write.person(), said, mover, by)?;
    let id = store::add(&mut write, &new).await?;
    write
        .commit()
        .await?
        .then(urls::refusal(id))
        .saying("Kept. It stands on Today until it is settled")
}

pub async fn edit(
    _: Told,
    grant: Changing,
    At(id): At<RefusalId>,
    typed: Typed,
) -> Result<EditPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let listed = Listed::read(&view, Some(&kept)).await?;
    let page = grant.page("Put the words right");
    Ok(EditPage { page, typed: typed.over(&kept), kept: Some(kept), listed })
}

pub async fn save(_: Told, grant: Changing, At(id): At<RefusalId>, form: Form<Reworded>) -> Done {
    let Reworded { said, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    let said = Listed::read(&write, Some(&before)).await?.holds(said, Some(&before))?;
    store::save(&mut write, &before, &before.reworded(said, grant.today())?).await?;
    write.commit().await?.then(urls::refusal(id)).saying("The words are put right")
}

pub async fn striking(
    _: Told,
    grant: Changing,
    At(id): At<RefusalId>,
    typed: Typed,
) -> Result<ActPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let title = Medicines::read(&view).await?.title(&kept);
    let page = grant.page(format!("Strike {title}"));
    Ok(ActPage::strikes(page, typed, (title, urls::refusal(id), kept.version)))
}

pub async fn strike(_: Told, grant: Changing, At(id): At<RefusalId>, form: Form<Mistake>) -> Done {
    let Mistake { reason, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(version)?;
    store::save(&mut write, &before, &before.struck(reason)).await?;
    write.commit().await?.then(urls::refusals()).saying("Struck; its history keeps it")
}

pub async fn bringing_back(
    _: Told,
    grant: Changing,
    At(id): At<RefusalId>,
    typed: Typed,
) -> Result<ActPage> {
    let view = grant.view().await?;
    let kept = store::find(&view, id).await?;
    let title = Medicines::read(&view).await?.title(&kept);
    let page = grant.page(format!("Bring back {title}"));
    Ok(ActPage::brings_back(page, typed, (title, urls::refusal(id), kept.version)))
}

pub async fn bring_back(
    _: Told,
    grant: Changing,
    At(id): At<RefusalId>,
    form: Form<Press>,
) -> Done {
    let press = form.parse()?;
    let mut write = grant.write().await?;
    let before = store::find(&write, id).await?.opened_at(press.version)?;
    store::save(&mut write, &before, &before.brought_back()).await?;
    write.commit().await?.then(urls::refusal(id)).saying("It stands again")
}
