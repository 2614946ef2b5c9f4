//! The page on which a member makes the address of her calendar, and takes it back.

use super::{model::Feed, store};
use crate::{
    base::ids::{FeedId, PersonId},
    platform::{
        auth::doors::{Account, Record},
        db::Done,
        error::Result,
        random,
        web::{
            form::{Form, FormErrors, FromForm, Reader},
            page::Page,
            path::At,
            typed::Typed,
            urls,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;

#[derive(Template, WebTemplate)]
#[template(path = "calendar/list.html")]
pub struct ListPage {
    page: Page,
    typed: Typed,
    feeds: Vec<(Feed, String)>,
    records: Vec<Record>,
}

/// Which records it is of.
fn of(feed: &Feed, records: &[Record]) -> String {
    match feed.record_id {
        None => "all records you share".into(),
        Some(id) => {
            let record = records.iter().find(|it| it.person == id);
            record.map_or("a record you have no place in", |it| it.name.as_str()).to_owned()
        }
    }
}

pub async fn list(account: Account, typed: Typed) -> Result<ListPage> {
    let records = account.records().await?;
    let feeds = store::list(&account.view().await?).await?;
    let feeds = feeds.into_iter().map(|it| (it.clone(), of(&it, &records))).collect();
    Ok(ListPage { page: account.page("Your calendar in another program"), typed, feeds, records })
}

/// Of all records, or of one.
pub struct Wanted {
    record: Option<PersonId>,
}

impl FromForm for Wanted {
    fn read(form: &mut Reader) -> std::result::Result<Wanted, FormErrors> {
        let sent = form.raw("record").to_owned();
        let record = sent.parse().ok();
        if !sent.is_empty() && record.is_none() {
            form.wrong("record", "Choose from the list.");
        }
        form.finish(|| Some(Wanted { record }))
    }
}

#[derive(Template, WebTemplate)]
#[template(path = "calendar/made.html")]
pub struct MadePage {
    page: Page,
    link: String,
    of: String,
}

/// So many stand at a time: more than her devices.
const MOST: usize = 10;

pub async fn make(account: Account, form: Form<Wanted>) -> Result<MadePage> {
    let Wanted { record } = form.parse()?;
    let records = account.records().await?;
    if record.is_some_and(|id| !records.iter().any(|it| it.person == id)) {
        return Err(FormErrors::at("record", "Choose from the list.").into());
    }
    let mut write = account.write().await?;
    if store::list(&write).await?.len() >= MOST {
        return Err(FormErrors::at("record", "There are ten already. Take one back first.").into());
    }
    let feed = Feed::new(account.member(), record, write.at());
    let secret = random::hex(32);
    store::add(&mut write, &feed, &secret).await?;
    write.commit().await?;
    let link = account.house.config.base().absolute(&format!("/calendar/{secret}.ics"));
    let page = account.page("The address of your calendar");
    Ok(MadePage { page, link, of: of(&feed, &records) })
}

pub async fn take_back(account: Account, At(id): At<FeedId>) -> Done {
    let mut write = account.write().await?;
    let feed = store::find(&write, id).await?;
    store::end(&mut write, &feed).await?;
    let says = "Taken back: that address shows nothing any more";
    write.commit().await?.then(urls::my_calendar()).saying(says)
}
