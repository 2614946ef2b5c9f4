//! One time of an appointment, as the note of it needs it: who it was with, who went along, and that
//! it was kept.

use crate::{
    base::ids::{AppointmentId, MemberId},
    platform::{
        auth::area::{Clinical, Tasks},
        db::{View, Write},
        error::{Error, Result},
        web::path,
    },
    record::appointments::{
        escort::Escort, meeting::Meeting, model::Status, occurrence::Occurrence, store,
    },
};
use axum::{extract::FromRequestParts, http::request::Parts};
use time::Date;

/// The day in an address by which one time of an appointment is named.
pub struct Day(pub Date);

impl<S: Send + Sync> FromRequestParts<S> for Day {
    type Rejection = Error;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Self> {
        let text = path::text(parts, state, "day").await?;
        crate::base::day::iso(&text).map(Day).ok_or(Error::NotFound)
    }
}

/// A visit that is in the calendar.
pub struct Met {
    pub meeting: Meeting,
}

impl Met {
    /// Not found where the calendar is out of her reach.
    pub async fn find<A>(view: &View<A>, (id, on): (AppointmentId, Date)) -> Result<Met> {
        let view = view.area::<Tasks>().ok_or(Error::NotFound)?;
        Ok(Met { meeting: store::meeting(&view, id, on).await? })
    }

    /// By which the note names it.
    pub fn key(&self) -> (AppointmentId, Date) {
        (self.meeting.id(), self.meeting.on)
    }

    /// The typed name; of a visit with neither contact nor name, what it is.
    pub fn with_whom(&self) -> String {
        let it = &self.meeting.appointment;
        match (&it.contact_id, &it.with_whom) {
            (Some(_), _) => String::new(),
            (None, Some(name)) => name.to_string(),
            (None, None) => it.title.to_string(),
        }
    }

    /// The member who was to go along.
    pub fn escort(&self) -> Option<MemberId> {
        match self.meeting.escort {
            Escort::Member(member) => Some(member),
            _ => None,
        }
    }
}

/// That there is a note says that it was kept. Where her place does not change the calendar, it
/// stays as it is there.
pub async fn was_kept(write: &Write<Clinical>, met: &Met) -> Result<()> {
    let Ok(mut write) = write.area::<Tasks>() else { return Ok(()) };
    let (meeting, of) = (&met.meeting, &met.meeting.appointment);
    if meeting.status == Status::Kept {
        return Ok(());
    }
    if !of.is_series() {
        return store::save(&mut write, of, &of.turned(Status::Kept, None)).await;
    }
    let own = store::occurrence(&write, of.id, meeting.on).await?;
    let own = own.unwrap_or_else(|| Occurrence::new(of, meeting.on));
    store::keep_occurrence(&mut write, &own, &own.became(Status::Kept, of)).await
}
