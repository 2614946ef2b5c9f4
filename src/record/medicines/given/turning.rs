//! Turning the log on and off: for all medicines, or for single ones.

use super::super::{model::Medicine, store as medicines};
use super::{form::Keeping, keeping::LogKeeping, store};
use crate::base::ids::MedicineId;
use crate::platform::{
    audit::Names,
    auth::{
        area::Clinical,
        grant::{Change, Grant},
    },
    db::{Done, Write},
    error::{Error, Result},
    web::{form::Form, page::Page, typed::Typed, urls},
};
use askama::Template;
use askama_web::WebTemplate;

type Changing = Grant<Change<Clinical>>;

#[derive(Template, WebTemplate)]
#[template(path = "medicines/given/keeping.html")]
pub struct KeepingPage {
    page: Page,
    typed: Typed,
    all: Row,
    each: Vec<Row>,
    version: i64,
}

/// All medicines, or one.
struct Row {
    medicine: Option<MedicineId>,
    title: String,
    standing: bool,
    /// "on since 3 March 2026 by Ines"
    since: Option<String>,
}

impl Row {
    fn of(medicine: Option<&Medicine>, kept: &[LogKeeping], page: &Page, names: &Names) -> Row {
        let id = medicine.map(|it| it.id);
        let kept = kept.iter().find(|it| it.medicine_id == id);
        let since = kept.map(|it| {
            let turned = if it.standing { "on since" } else { "off since" };
            format!("{turned} {}, by {}", page.when(&it.turned_at), names.of(it.turned_by))
        });
        Row {
            medicine: id,
            title: medicine.map_or("all medicines".into(), Medicine::title),
            standing: kept.is_some_and(|it| it.standing),
            since,
        }
    }
}

/// Goes up with every turn: two who turn at once are told.
fn version(kept: &[LogKeeping]) -> i64 {
    kept.iter().map(|it| it.version).sum()
}

pub async fn keeping(grant: Changing, typed: Typed) -> Result<KeepingPage> {
    let view = grant.view().await?;
    let (kept, names) = (store::keeping(&view).await?, view.names().await?);
    let mut medicines = medicines::list(&view).await?;
    medicines.retain(Medicine::is_current);
    let page = grant.page("Log of doses");
    let each = medicines.iter().map(|it| Row::of(Some(it), &kept, &page, &names)).collect();
    let all = Row::of(None, &kept, &page, &names);
    Ok(KeepingPage { page, typed, all, each, version: version(&kept) })
}

pub async fn keep(grant: Changing, form: Form<Keeping>) -> Done {
    let sent = form.parse()?;
    let mut write = grant.write().await?;
    let kept = store::keeping(&write).await?;
    if version(&kept) != sent.version {
        return Err(Error::Stale);
    }
    turn(&mut write, &kept, None, sent.all).await?;
    for medicine in medicines::list(&write).await?.iter().filter(|it| it.is_current()) {
        turn(&mut write, &kept, Some(medicine.id), sent.each.contains(&medicine.id)).await?;
    }
    write.commit().await?.then(urls::given()).saying("Kept for which medicines doses are entered")
}

async fn turn(
    write: &mut Write<Clinical>,
    kept: &[LogKeeping],
    medicine: Option<MedicineId>,
    standing: bool,
) -> Result<()> {
    let by = (write.member(), write.at());
    match kept.iter().find(|it| it.medicine_id == medicine) {
        Some(before) => store::save_keeping(write, before, &before.turned(standing, by)).await,
        None if standing => {
            let new = LogKeeping::new(write.person(), medicine, by);
            store::add_keeping(write, &new).await
        }
        None => Ok(()),
    }
}
