//! The leaves of what is known of the person by everyone, of what is to be done, of what was noted and
//! what was decided.

use crate::{
    across::{
        search::leaves::{beyond, called, joined, opt},
        tasks::seen as tasks,
    },
    base::{text::Note, zone::Zone},
    family::{
        decisions::{model::Decision, store as decisions},
        tasks::{model::Task, store::Wanted as AllTasks},
    },
    platform::{
        auth::area::{Clinical, Essentials, Log, Members, Tasks},
        db::View,
        error::Result,
        words::Leaf,
    },
    record::{
        allergies::{model::Allergy, store as allergies},
        appointments::{matter_store as matters, model::Appointment, store as appointments},
        contacts::{model::Contact, store as contacts},
        happenings::{model::Happening, store as happenings},
        observations::{model::Observation, store as observations},
    },
};

pub async fn allergies(view: &View<Essentials>) -> Result<Vec<Leaf>> {
    let leaf = |it: &Allergy| Leaf {
        kind: "allergy",
        item: it.id.into(),
        title: it.substance.to_string(),
        text: joined([
            Some(it.nature.to_string()),
            opt(&it.reaction),
            opt(&it.since),
            opt(&it.source),
        ]),
        ..Leaf::default()
    };
    Ok(allergies::list(view).await?.iter().map(leaf).collect())
}

pub async fn contacts(view: &View<Essentials>) -> Result<Vec<Leaf>> {
    let leaf = |it: &Contact| Leaf {
        kind: "contact",
        item: it.id.into(),
        title: it.name.to_string(),
        text: joined([
            Some(it.kind.to_string()),
            opt(&it.who),
            opt(&it.organization),
            opt(&it.phone),
            opt(&it.other_phone),
            it.email.as_ref().map(ToString::to_string),
            opt(&it.address),
            opt(&it.note),
            opt(&it.source),
        ]),
        also: called([it.phone.as_ref(), it.other_phone.as_ref()]),
        day: None,
    };
    Ok(contacts::list(view).await?.iter().map(leaf).collect())
}

/// One that is with a hidden contact is not there itself, so the contact's name may stand here.
pub async fn appointments(view: &View<Tasks>) -> Result<Vec<Leaf>> {
    let matters = match view.area::<Clinical>() {
        Some(view) => matters::list(&view).await?,
        None => Vec::new(),
    };
    let contacts = match view.area::<Essentials>() {
        Some(view) => contacts::list(&view).await?,
        None => Vec::new(),
    };
    let leaf = |it: &Appointment| {
        let with = contacts.iter().find(|one| Some(one.id) == it.contact_id);
        let matter = matters.iter().find(|one| one.appointment_id == it.id);
        let matter = matter.map(|it| [opt(&it.purpose), opt(&it.bring), opt(&it.referral)]);
        let own = [
            with.map(|it| it.name.to_string()),
            opt(&it.with_whom),
            opt(&it.place),
            opt(&it.transport),
            opt(&it.interpreter),
            opt(&it.reason),
        ];
        Leaf {
            kind: "appointment",
            item: it.id.into(),
            title: it.title.to_string(),
            text: joined(own.into_iter().chain(matter.into_iter().flatten())),
            day: Some(it.on_day),
            ..Leaf::default()
        }
    };
    Ok(appointments::list(view).await?.iter().map(leaf).collect())
}

pub async fn tasks(view: &View<Tasks>, zone: &Zone) -> Result<Vec<Leaf>> {
    let leaf = |it: &Task| Leaf {
        kind: "task",
        item: it.id.into(),
        title: it.title.to_string(),
        text: joined([
            opt(&it.why),
            opt(&it.waiting_on),
            opt(&it.off_reason),
            opt(&it.proof),
            opt(&it.let_go_reason),
        ]),
        day: it.closed_on.or(it.due_on).or(Some(zone.day(it.entered_at))),
        ..Leaf::default()
    };
    Ok(tasks::list(view, &AllTasks::default()).await?.iter().map(leaf).collect())
}

pub async fn happenings(view: &View<Log>, zone: &Zone) -> Result<Vec<Leaf>> {
    let wanted = happenings::Wanted { most: i64::MAX, ..Default::default() };
    let leaf = |it: &Happening| Leaf {
        kind: "happening",
        item: it.id.into(),
        title: it.title(),
        text: joined([beyond(&it.title(), it.words.as_ref().map(Note::as_str)), opt(&it.happened)]),
        day: Some(zone.day(it.noted_at)),
        ..Leaf::default()
    };
    Ok(happenings::list(view, &wanted).await?.iter().map(leaf).collect())
}

pub async fn observations(view: &View<Log>) -> Result<Vec<Leaf>> {
    let wanted = observations::Wanted { most: i64::MAX, ..Default::default() };
    let leaf = |it: &Observation| Leaf {
        kind: "observation",
        item: it.id.into(),
        title: it.title(),
        text: joined([
            beyond(&it.title(), Some(it.words.as_str())),
            opt(&it.fall_where),
            opt(&it.answer),
        ]),
        day: Some(it.seen_on),
        ..Leaf::default()
    };
    Ok(observations::list(view, &wanted).await?.iter().map(leaf).collect())
}

/// They are there only for those who also see who shares the record.
pub async fn decisions(view: &View<Clinical>, zone: &Zone) -> Result<Vec<Leaf>> {
    if view.area::<Members>().is_none() {
        return Ok(Vec::new());
    }
    let leaf = |it: &Decision| Leaf {
        kind: "decision",
        item: it.id.into(),
        title: it.matter.to_string(),
        text: joined([
            opt(&it.background),
            opt(&it.decided),
            opt(&it.reasons),
            opt(&it.her_words),
            opt(&it.not_asked),
            opt(&it.heard_others),
            opt(&it.decider),
            opt(&it.right_words),
            opt(&it.withdrawn_reason),
        ]),
        day: it.decided_on.or(Some(zone.day(it.entered_at))),
        ..Leaf::default()
    };
    Ok(decisions::list(view).await?.iter().map(leaf).collect())
}
