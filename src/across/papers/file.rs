//! Filing: one paper, one decision, and the next. The same form puts a filed paper right.

use super::{
    Changing, about,
    row::Senders,
    words::propose::{Proposal, Proposer},
};
use crate::{
    across::happenings::items::Group,
    base::ids::PaperId,
    platform::{
        audit::Touch,
        auth::area::Papers,
        db::{Done, View, Write},
        error::{Error, Result},
        web::{
            form::{Form, FormErrors},
            page::Page,
            path::At,
            typed::Typed,
            urls::{self, Address},
        },
    },
    record::papers::{
        form::{Filed, words},
        kind::{Kind, Original},
        model::{Filing, Paper},
        page::PaperPage,
        page_store, store,
    },
};
use askama::Template;
use askama_web::WebTemplate;
use axum::extract::Query;

#[derive(Template, WebTemplate)]
#[template(path = "papers/file.html")]
pub struct FilePage {
    page: Page,
    typed: Typed,
    paper: Paper,
    touch: Option<Touch>,
    pages: Vec<PaperPage>,
    senders: Senders,
    /// Those of which it may be a newer version.
    older: Vec<Paper>,
    /// How many wait, and the one after it.
    waiting: usize,
    next: Option<PaperId>,
    /// What its words propose: it stands in the fields, and why above them.
    proposal: Option<Proposal>,
    /// What it can be about.
    abouts: Vec<Group>,
    decides: bool,
}

impl FilePage {
    fn kinds(&self) -> &'static [Kind] {
        <Kind as crate::platform::web::form::Choice>::ALL
    }

    /// Single keys, what each does, and to what.
    fn keys(&self) -> &'static [(&'static str, &'static str, &'static str)] {
        &[
            ("f", "files it as it stands in the fields, and shows the next", "file-it"),
            ("n", "leaves it for now, and shows the next", "see-next"),
            ("k", "goes to its kind: then the first letters of one", "kind"),
            ("t", "goes to its title", "title"),
            ("d", "goes to the date on it", "dated_on"),
            ("u", "goes to the day until which it holds", "expires_on"),
            ("w", "goes to whom it is from", "contact_id"),
            ("p", "shows the paper itself: turn, join or strike it there", "see-pages"),
            ("l", "leaves it, and shows the tray", "leave-it"),
        ]
    }

    fn stewards_hint(&self) -> &'static str {
        match self.decides {
            true => "not the relatives",
            false => "then you do not see it any more yourself",
        }
    }

    fn originals(&self) -> Vec<String> {
        words::<Original>()
    }
}

/// Of which it is said to be a newer version, by who came from both side by side.
#[derive(Default, serde::Deserialize)]
#[serde(default)]
pub struct Asked {
    replaces: String,
}

/// One that can be filed or put right.
async fn open(view: &View<Papers>, id: PaperId) -> Result<Paper> {
    let paper = store::find(view, id).await?;
    if paper.waits() || paper.is_filed() && !paper.struck {
        Ok(paper)
    } else {
        Err(Error::NotFound)
    }
}

pub async fn edit(
    grant: Changing,
    At(id): At<PaperId>,
    Query(asked): Query<Asked>,
    typed: Typed,
) -> Result<FilePage> {
    let others = grant.others().await?;
    let view = grant.view().await?;
    let paper = open(&view, id).await?;
    let title = if paper.waits() { "What is this paper?" } else { "Put it right" };
    let waiting = store::waiting(&view).await?;
    let mut older = store::filed(&view).await?;
    older.retain(|it| paper.waits() && it.stands());
    let proposer = Proposer::read(&view, others, grant.today()).await?;
    let proposal = proposer.of(&paper).filter(|_| paper.waits());
    let proposed = proposal.as_ref().filter(|_| !typed.is_again());
    let near = paper.dated_on.unwrap_or(grant.today());
    let typed = typed.over(&paper).with("replaces", asked.replaces);
    Ok(FilePage {
        typed: proposed.into_iter().fold(typed, |typed, it| it.over(typed)),
        proposal,
        page: grant.page(title),
        touch: view.last_change("paper", paper.id.into()).await?,
        pages: page_store::of(&view, &paper).await?,
        senders: Senders::read(&view).await?,
        abouts: about::choices(&view, near).await?,
        next: next(&waiting, id),
        waiting: waiting.len(),
        decides: grant.role().decides(),
        paper,
        older,
    })
}

/// The one after it in the tray, or the first where it is the last.
fn next(waiting: &[Paper], id: PaperId) -> Option<PaperId> {
    let mut others = waiting.iter().map(|it| it.id).filter(|it| *it != id);
    let after = others.clone().find(|it| *it > id);
    after.or_else(|| others.next())
}

pub async fn file(grant: Changing, At(id): At<PaperId>, form: Form<Filed>) -> Done {
    let Filed { filing, replaces, version } = form.parse()?;
    let mut write = grant.write().await?;
    let before = open(&write, id).await?.opened_at(version)?;
    known(&write, &filing, &before).await?;
    let filing = about::settled(&write, filing, &before).await?;
    let by = (write.member(), write.at());
    let after = before.filed(filing, by, grant.today())?;
    store::save(&mut write, &before, &after).await?;
    if let Some(older) = replaces.filter(|_| before.waits()) {
        replace(&mut write, older, id).await?;
    }
    let (to, says) = onward(&write, (&before, &after), grant.role().decides()).await?;
    write.commit().await?.then(to).saying(says)
}

/// The contact must be on the list that she sees; what stood there already stays.
async fn known(view: &View<Papers>, filing: &Filing, before: &Paper) -> Result<()> {
    let Some(chosen) = filing.contact_id.filter(|it| before.contact_id != Some(*it)) else {
        return Ok(());
    };
    match Senders::read(view).await?.has(chosen) {
        true => Ok(()),
        false => Err(FormErrors::at("contact_id", "Choose from the contacts, or nobody.").into()),
    }
}

async fn replace(write: &mut Write<Papers>, older: PaperId, by: PaperId) -> Result<()> {
    let older = match store::find(write, older).await {
        Ok(older) if older.stands() && older.id != by => older,
        Ok(_) | Err(Error::NotFound) => {
            let says = "Choose the older version from the list.";
            return Err(FormErrors::at("replaces", says).into());
        }
        Err(e) => return Err(e),
    };
    store::save(write, &older, &older.replaced(by)).await
}

/// After one is filed the next of the tray; after one is put right that one, where she still sees it.
async fn onward(
    view: &View<Papers>,
    (before, after): (&Paper, &Paper),
    decides: bool,
) -> Result<(Address, String)> {
    let seen = store::find(view, before.id).await.is_ok();
    let closed = if seen { "" } else { ". Only those who may see it find it now" };
    if before.is_filed() {
        let to = if seen { urls::paper(before.id) } else { urls::papers() };
        return Ok((to, format!("Saved {}{closed}", after.title())));
    }
    let stewards = if after.stewards_only && decides { ", for stewards only" } else { "" };
    let waiting = store::waiting(view).await?;
    let rest = match waiting.len() {
        0 => "The tray is empty".to_owned(),
        1 => "1 more waits".to_owned(),
        many => format!("{many} more wait"),
    };
    let to = next(&waiting, before.id).map_or(urls::tray(), |it| urls::paper(it).and("file"));
    Ok((to, format!("Filed {}{stewards}{closed}. {rest}", after.title())))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::{clock::Instant, ids::MemberId};

    #[test]
    fn the_next_of_the_tray_is_offered_and_after_the_last_the_first() {
        let by = (MemberId::from(2), Instant::from_unix(0));
        let waiting =
            [3, 5, 9].map(|id| Paper { id: id.into(), ..Paper::arrived(1.into(), None, by) });
        assert_eq!(next(&waiting, 3.into()), Some(5.into()));
        assert_eq!(next(&waiting, 4.into()), Some(5.into()));
        assert_eq!(next(&waiting, 9.into()), Some(3.into()));
        assert_eq!(next(&waiting[..1], 3.into()), None);
    }
}
