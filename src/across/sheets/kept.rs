//! The facts of the sheet "What is kept, and who sees it": for the person herself, who may never
//! sign in.
//!
//! It speaks to her, in short sentences, and says what stands: what is kept, who sees and changes
//! what, what is hidden from whom and who decided so, what she answered before. It gives nobody
//! leave for anything. What is hidden from the member who shows it cannot stand on it, and it says
//! so.

mod holdings;
mod on_paper;
mod sharers;

use self::{
    holdings::Part,
    sharers::{Sharer, invited, sharers},
};
use crate::{
    across::{
        history::titles::Titles,
        visibility::{model::Hidden, store as visibility},
    },
    base::{clock::Instant, day, ids::MemberId, zone::Zone},
    family::members::answers::{model::Answer, store as answers},
    platform::{
        audit::Names,
        auth::{
            area::{Essentials, History, Members, Role},
            voice::{Voice, listed},
        },
        db::View,
        error::Result,
    },
    record::people::{paper::Paper, store as people},
};
use serde::Serialize;

#[derive(Serialize)]
pub struct Facts {
    pub paper: &'static str,
    pub lang: &'static str,
    pub title: String,
    pub person: Head,
    pub opening: Vec<String>,
    pub kept: Vec<Part>,
    pub sharers: Vec<Sharer>,
    pub invited: Vec<String>,
    pub hidden: Vec<HiddenItem>,
    /// What to know of the list of hidden things; also where it is empty.
    pub hidden_notes: Vec<String>,
    pub answers: Vec<Answered>,
}

#[derive(Serialize)]
pub struct Head {
    pub name: String,
    pub born: String,
}

#[derive(Serialize)]
pub struct HiddenItem {
    pub what: String,
    pub decided: String,
    /// What she answered about it.
    pub answered: Vec<String>,
}

#[derive(Serialize)]
pub struct Answered {
    pub question: String,
    pub said: String,
    pub own_words: Option<String>,
    pub asked: String,
}

/// The member who shows the sheet, and when.
pub struct Reader {
    pub member: MemberId,
    pub role: Role,
    pub now: Instant,
}

/// What is read once, for every part.
struct Known {
    names: Names,
    zone: Zone,
    answers: Vec<Answer>,
}

impl Facts {
    /// As the reader may see them, in one snapshot.
    pub async fn read(view: &View<Members>, reader: &Reader) -> Result<Facts> {
        let whose = view.whose().await?;
        // Letter, where the reader does not see what was chosen.
        let paper = match view.area::<Essentials>() {
            Some(view) => people::find(&view).await?.paper,
            None => Paper::UsLetter,
        };
        let mut standing = answers::list(view).await?;
        standing.retain(Answer::is_standing);
        let known = Known { names: view.names().await?, zone: whose.zone, answers: standing };
        let head = Head { name: whose.name, born: day::words(whose.born) };
        let voice = view.voice().await?;
        let shown_by = known.names.of(reader.member);
        let hidden = hidden(view, &known).await?;
        let hidden_notes = hidden_notes(hidden.as_deref(), shown_by, reader.role);
        Ok(Facts {
            paper: paper.code(),
            lang: "en",
            title: format!("What is kept about {}, and who sees it", head.name),
            opening: opening(&head.name, &voice),
            kept: holdings::read(view, &head.name, shown_by).await?,
            sharers: sharers(view, &known.zone).await?,
            invited: invited(view, &known, reader.now).await?,
            hidden: hidden.unwrap_or_default(),
            hidden_notes,
            answers: known.answers.iter().map(|it| Answered::of(it, &known.names)).collect(),
            person: head,
        })
    }
}

fn opening(name: &str, voice: &Voice) -> Vec<String> {
    let entered = match voice.signs_in {
        true => "You can sign in yourself. Then you see all of it, and decide what others see."
            .to_owned(),
        false => format!(
            "You do not sign in yourself. {} can write down what you are asked and what you answer.",
            listed(&voice.deciders)
        ),
    };
    vec![
        format!("This record is about you, {name}. It is yours."),
        "You may ask for a change at any time. You may say yes or no, or that something is to be hidden. You may also leave it for another day.".to_owned(),
        entered,
        "This is not a legal paper.".to_owned(),
    ]
}

/// What is hidden from whom; none where the reader may not see how things are called.
async fn hidden(view: &View<Members>, known: &Known) -> Result<Option<Vec<HiddenItem>>> {
    let Some(history) = view.area::<History>() else { return Ok(None) };
    let titles = Titles::read(&history, &[]).await?;
    let mut items = Vec::new();
    for it in visibility::all(view).await?.iter().filter(|it| it.standing) {
        let Some(what) = titles.of(&it.kind, it.item) else { continue };
        items.push(HiddenItem {
            what: format!("{what} is hidden from {}.", known.names.of(it.member_id)),
            decided: decided(view, it, &known.zone).await?,
            answered: known.answered_about(&it.kind, it.item),
        });
    }
    Ok(Some(items))
}

/// "Ines decided this for you on 3 March 2026."
async fn decided(view: &View<Members>, it: &Hidden, zone: &Zone) -> Result<String> {
    let touch = view.last_change("hidden", it.id.into()).await?;
    let (by, on) = touch.map_or(("Someone".to_owned(), String::new()), |it| {
        (it.by, format!(" on {}", day::words(zone.day(it.at))))
    });
    Ok(if it.on_behalf {
        format!("{by} decided this for you{on}.")
    } else {
        format!("You decided this yourself{on}.")
    })
}

fn hidden_notes(hidden: Option<&[HiddenItem]>, shown_by: &str, role: Role) -> Vec<String> {
    let mut notes = Vec::new();
    match hidden {
        Some([]) => {
            notes.push("Nothing is hidden from anyone, as far as this sheet can tell.".to_owned())
        }
        Some(_) => {}
        None => {
            notes.push(format!("This cannot be listed here: {shown_by} does not see the history."))
        }
    }
    if role != Role::Person {
        notes.push(format!(
            "{shown_by} shows you this sheet. If something is hidden from {shown_by}, it is not on it. Someone else who decides here, or you yourself, can print another."
        ));
    }
    notes
}

impl Known {
    /// "You were asked by Ines, in person, on 3 March 2026. You said: no."
    fn answered_about(&self, kind: &str, item: i64) -> Vec<String> {
        let about = self.answers.iter().filter(|it| it.is_about(kind, item));
        about
            .map(|it| {
                format!(
                    "“{}” You said: {}. ({})",
                    it.question,
                    it.sentence(),
                    it.asked(&self.names)
                )
            })
            .collect()
    }
}

impl Answered {
    fn of(it: &Answer, names: &Names) -> Answered {
        Answered {
            question: it.question.to_string(),
            said: it.sentence(),
            own_words: it.own_words.as_ref().map(ToString::to_string),
            asked: it.asked(names),
        }
    }
}
