//! The form of a note: for a visit in the calendar, for one that is not, or as a draft left it.
//!
//! What stands in the fields is what was sent, else the draft, else what is known of the appointment.
//! Where another device kept something newer, both stand there.

use super::{
    contacts, fields, follow,
    form::{self, Becomes},
    meeting::{self, Met},
    rows::{self, MedicineRow, QuestionRow},
};
use crate::{
    across::questions::occasion::With,
    base::ids::{AppointmentId, ContactId, DraftId, MemberId},
    platform::{
        auth::{
            area::{Clinical, Tasks},
            grant::{Change, Grant},
        },
        db::View,
        error::Result,
        web::{page::Page, path::At, typed::Typed, urls},
    },
    record::{
        contacts::model::Contact,
        medicines::model::Supply,
        visits::{
            drafts::{model::Draft, store as drafts},
            model::Visit,
            store,
        },
    },
};
use askama::Template;
use askama_web::WebTemplate;
use time::Date;

#[derive(Template, WebTemplate)]
#[template(path = "visits/write.html")]
pub struct WritePage {
    page: Page,
    typed: Typed,
    met: Option<Met>,
    /// Notes of this visit that others have saved.
    noted: Vec<(Visit, String)>,
    draft: Option<Draft>,
    /// The draft's mark, or the one that it will get.
    token: String,
    /// Whether another device has kept something newer: both are shown.
    conflict: bool,
    contacts: Vec<Contact>,
    members: Vec<(MemberId, String)>,
    owners: Vec<(MemberId, String)>,
    questions: Vec<QuestionRow>,
    medicines: Vec<MedicineRow>,
    /// Whether she may write tasks and appointments too.
    may_task: bool,
}

impl WritePage {
    /// Where the form goes: a page that shows it also when the draft has ended meanwhile.
    fn goes_to(&self) -> String {
        self.page.at(match &self.met {
            Some(it) => urls::visit_of(it.meeting.id(), it.meeting.on),
            None => urls::visits().and("add"),
        })
    }

    /// Where the script keeps what is typed.
    fn keeps_at(&self) -> String {
        match &self.met {
            Some(it) => {
                let step = format!("{}/{}", it.meeting.id(), it.meeting.on);
                self.page.at(urls::visits_typed().and(&step))
            }
            None => self.page.at(urls::visits_typed()),
        }
    }

    fn becomes(&self) -> [&'static str; 4] {
        let [one, two, three] = Becomes::ALL.map(|it| it.0);
        [Becomes::NOTHING, one, two, three]
    }

    fn supplies(&self) -> [String; 3] {
        [Supply::Prescription, Supply::OverTheCounter, Supply::Supplement].map(|it| it.to_string())
    }

    /// The rows of one kind: those that are filled, and room for more.
    fn rows(&self, kind: &str) -> std::ops::RangeInclusive<usize> {
        let filled = |name: &str| !self.typed.value(name).trim().is_empty();
        let (parts, spare): (&[&str], usize) = match kind {
            "new" => (&form::STARTED, 1),
            _ => (&form::FOLLOW, 2),
        };
        1..=fields::rows(filled, kind, parts, spare)
    }

    fn row(&self, kind: &str, at: &usize, part: &str) -> String {
        fields::row(kind, *at, part)
    }

    fn chosen(&self, name: &str, id: impl ToString) -> bool {
        self.typed.value(name) == id.to_string()
    }

    fn contact(&self, id: &ContactId) -> bool {
        self.chosen("contact_id", id)
    }

    fn kept_at(&self) -> Option<String> {
        Some(self.page.clock(&self.draft.as_ref()?.kept_at))
    }
}

type Changing = Grant<Change<Clinical>>;

/// Of a visit that is in no calendar.
pub async fn blank(grant: Changing, typed: Typed) -> Result<WritePage> {
    let view = grant.view().await?;
    let sent = Some(typed.value("draft").to_owned()).filter(|it| form::is_token(it));
    let mut own = drafts::list(&view).await?.into_iter();
    let draft = own.find(|it| Some(&it.token) == sent.as_ref());
    page(&grant, &view, typed, (None, draft)).await
}

/// Of one time of an appointment; hers that she began goes on.
pub async fn of(
    grant: Changing,
    At(id): At<AppointmentId>,
    meeting::Day(on): meeting::Day,
    typed: Typed,
) -> Result<WritePage> {
    let view = grant.view().await?;
    let met = Met::find(&view, (id, on)).await?;
    let draft = drafts::of_meeting(&view, met.key()).await?;
    page(&grant, &view, typed, (Some(met), draft)).await
}

/// As she left it.
pub async fn again(grant: Changing, At(id): At<DraftId>, typed: Typed) -> Result<WritePage> {
    let view = grant.view().await?;
    let draft = drafts::find(&view, id).await?;
    let met = match draft.meeting() {
        // What was struck or hidden meanwhile: what she typed is not lost by that.
        Some(key) => Met::find(&view, key).await.ok(),
        None => None,
    };
    page(&grant, &view, typed, (met, Some(draft))).await
}

async fn page(
    grant: &Changing,
    view: &View<Clinical>,
    typed: Typed,
    (met, draft): (Option<Met>, Option<Draft>),
) -> Result<WritePage> {
    let conflict = typed.stale() && draft.as_ref().is_some_and(|it| !is_known(it, &typed));
    let typed = laid(typed, grant, &met, draft.as_ref().map(|it| (it, conflict)));
    let contacts = contacts::listed(view).await?;
    let with = with(&typed, &contacts);
    let title = met.as_ref().map_or("Note of a visit".to_owned(), |it| {
        format!("Note of the visit: {}", it.meeting.appointment.title)
    });
    let names = view.names().await?;
    let page = grant.page(title);
    Ok(WritePage {
        noted: match &met {
            Some(it) => (store::of_meeting(view, it.key()).await?.into_iter())
                .map(|it| (it.clone(), names.of(it.entered_by).to_owned()))
                .collect(),
            None => Vec::new(),
        },
        token: token(&draft, &typed, &page),
        members: store::members(view).await?,
        owners: follow::owners(view, grant.person()).await?,
        questions: rows::questions(view, with.as_ref(), &typed).await?,
        medicines: rows::medicines(view, &typed).await?,
        may_task: grant.may::<Change<Tasks>>(),
        page,
        typed,
        met,
        draft,
        conflict,
        contacts,
    })
}

fn token(draft: &Option<Draft>, typed: &Typed, page: &Page) -> String {
    let sent = Some(typed.value("draft").to_owned()).filter(|it| form::is_token(it));
    let kept = draft.as_ref().map(|it| it.token.clone());
    kept.or(sent).unwrap_or_else(|| page.form_key.clone())
}

/// Whether the page that was sent knew the draft as it stands.
fn is_known(draft: &Draft, typed: &Typed) -> bool {
    let version = typed.value("draft_version").parse().unwrap_or(0);
    draft.page == typed.value("form_key") || draft.version == version
}

/// What stands in the fields on a plain visit, or beside what was sent.
fn laid(
    mut typed: Typed,
    grant: &Changing,
    met: &Option<Met>,
    draft: Option<(&Draft, bool)>,
) -> Typed {
    if let Some((draft, conflict)) = draft {
        if typed.is_again() && !conflict {
            return typed;
        }
        for (name, value) in draft.pairs() {
            typed = typed.with(name, value);
        }
        return typed.beside("On your other device");
    }
    if typed.is_again() {
        return typed;
    }
    typed = typed.with_day("held_on", grant.today());
    if let Some(met) = met {
        typed = typed.with_day("held_on", day(met, grant));
        typed = typed.with("with_whom", met.with_whom());
        let contact = met.meeting.appointment.contact_id;
        typed = typed.with("contact_id", contact.map(|it| it.to_string()).unwrap_or_default());
        if let Some(member) = met.escort() {
            typed = typed.with(fields::present(member), true);
        }
    }
    typed
}

/// The day of the visit, not after today: a note is of what has been.
fn day(met: &Met, grant: &Changing) -> Date {
    met.meeting.day(grant.zone()).min(grant.today())
}

/// With whom it is, as far as the fields say; then only the questions for that one are shown.
fn with(typed: &Typed, contacts: &[Contact]) -> Option<With> {
    let chosen = contacts.iter().find(|it| it.id.to_string() == typed.value("contact_id"));
    let name = typed.value("with_whom").trim();
    let by_name = || With { contact: None, kind: None, name: name.to_owned() };
    chosen.map(With::contact).or_else(|| (!name.is_empty()).then(by_name))
}
