//! The calendar of the month: a cardiology visit that was kept with Ines beside her, physical therapy every week with one moved,
//! an eye test that nobody goes along to yet, a hearing check that was called off.

use super::{Telling, line, some};
use crate::{
    base::{ids::AppointmentId, text::Note, time_of_day::TimeOfDay},
    platform::{
        auth::area::{Clinical, Essentials, Tasks},
        error::{Error, Result},
    },
    record::{
        appointments::{
            escort::Escort,
            matter::{Matter, MatterEntry},
            matter_store,
            model::{Appointment, Entry, Status, VisitKind},
            occurrence::Occurrence,
            repeat::{Ends, Every, Repeat},
            store,
        },
        contacts::store as contacts,
    },
};
use time::{Date, Duration, Time};

const THERAPY: &str = "Physical therapy";
pub(super) const HEART: &str = "Cardiology";
const HEARING: &str = "Hearing aid check";

fn at(hour: u8, minute: u8) -> Option<TimeOfDay> {
    Time::from_hms(hour, minute, 0).ok().map(TimeOfDay::of)
}

impl Telling<'_> {
    /// Ines writes down what is known of the weeks to come.
    pub(super) async fn calendar_begins(&self) -> Result<()> {
        self.day(26, (21, 15));
        let ines = Escort::Member(self.member("Ines").0);
        let heart = Entry {
            with_whom: some("Dr Piet Aalders"),
            place: some("Superior Heart Clinic, second floor"),
            escort: ines,
            transport: some("Ines drives"),
            minutes: 45,
            ..Entry::new(line(HEART), VisitKind::Specialist, self.date(13), at(10, 30))
        };
        let heart = self.booked("Ines", heart).await?;
        self.matter_of(heart).await?;
        let visit = Entry {
            escort: ines,
            minutes: 30,
            ..Entry::new(line("Family doctor"), VisitKind::Routine, self.date(8), at(9, 30))
        };
        self.booked("Ines", visit).await?;
        let first = self.date(22);
        let weekly = Every::Weeks(1, vec![first.weekday()]);
        let therapy = Entry {
            with_whom: some("Hollis Grane, physical therapist"),
            place: some("Canal Park Rehabilitation"),
            escort: Escort::Member(self.member("Delia").0),
            transport: some("the parish van, at the door at 1:30 pm"),
            repeat: Some(Repeat { every: weekly, ends: Ends::After(12) }),
            minutes: 50,
            ..Entry::new(line(THERAPY), VisitKind::Therapy, first, at(14, 0))
        };
        self.booked("Ines", therapy).await.map(|_| ())
    }

    /// What was written down of the cardiology visit, for those who see the clinical pages.
    async fn matter_of(&self, heart: AppointmentId) -> Result<()> {
        let mut write = self.write::<Clinical>("Ines").await?;
        let entry = MatterEntry {
            purpose: Some(Note::from(
                "The heart rhythm, half a year after the last visit.".to_owned(),
            )),
            bring: Some(Note::from(
                "The list of medicines and the book of blood tests.".to_owned(),
            )),
            referral: some("R-20417"),
            referral_until: Some(self.date(13) + Duration::days(60)),
            ..MatterEntry::default()
        };
        let before = Matter::none(self.person, heart);
        matter_store::keep(&mut write, &before, &before.with(entry)).await?;
        write.commit().await.map(|_| ())
    }

    /// The therapist is away for a day: Bram moves that one from afar.
    pub(super) async fn therapy_moved(&self) -> Result<()> {
        self.day(17, (21, 40));
        let (on, to) = (self.date(15), self.date(14));
        self.one_of("Bram", THERAPY, on, |it| Some(it.moved(to, at(15, 30)?))).await
    }

    /// What became of the ones that are over.
    pub(super) async fn calendar_looked_through(&self) -> Result<()> {
        self.day(10, (16, 30));
        self.turned_appointment("Ines", HEART, |it| it.turned(Status::Kept, None)).await?;
        for on in [22, 15] {
            let kept = |it: &Occurrence| Some(it.turned(Status::Kept, None));
            self.one_of("Ines", THERAPY, self.date(on), kept).await?;
        }
        let hearing = Entry {
            with_whom: some("the hearing shop on Superior Street"),
            ..Entry::new(line(HEARING), VisitKind::Other, self.date(-4), at(11, 0))
        };
        self.booked("Juno", hearing).await.map(|_| ())
    }

    /// The newest: one called off, one booked that nobody goes along to yet.
    pub(super) async fn calendar_goes_on(&self) -> Result<()> {
        self.day(1, (21, 10));
        self.turned_appointment("Ines", "Family doctor", |it| it.turned(Status::Kept, None))
            .await?;
        let why = some("the shop closed for the week");
        self.turned_appointment("Juno", HEARING, |it| it.turned(Status::Cancelled, why.clone()))
            .await?;
        let eyes = Entry {
            with_whom: some("Lakehead Eye Clinic"),
            place: some("Woodland Avenue, ground floor"),
            minutes: 90,
            ..Entry::new(line("Eye test"), VisitKind::Test, self.date(-6), at(8, 45))
        };
        self.booked("Bram", eyes).await.map(|_| ())
    }

    async fn booked(&self, who: &str, entry: Entry) -> Result<AppointmentId> {
        let mut write = self.write::<Tasks>(who).await?;
        let listed = contacts::list(&*write.area::<Essentials>()?).await?;
        let doctor = listed.iter().find(|it| it.name.as_str() == "Dr Adaeze Oyelaran");
        let contact_id = match entry.with_whom {
            None => doctor.map(|it| it.id),
            Some(_) => None,
        };
        let entry = Entry { contact_id, ..entry }.sound()?;
        let new = Appointment::new(self.person, entry, self.zone.clone());
        let id = store::add(&mut write, &new).await?;
        write.commit().await.map(|_| id)
    }

    async fn turned_appointment(
        &self,
        who: &str,
        title: &str,
        turn: impl Fn(&Appointment) -> Appointment,
    ) -> Result<()> {
        let mut write = self.write::<Tasks>(who).await?;
        let all = store::list(&write).await?;
        let before = all.iter().find(|it| it.title.as_str() == title).ok_or(Error::NotFound)?;
        store::save(&mut write, before, &turn(before)).await?;
        write.commit().await.map(|_| ())
    }

    async fn one_of(
        &self,
        who: &str,
        title: &str,
        on: Date,
        turn: impl Fn(&Occurrence) -> Option<Occurrence>,
    ) -> Result<()> {
        let mut write = self.write::<Tasks>(who).await?;
        let all = store::list(&write).await?;
        let of = all.iter().find(|it| it.title.as_str() == title).ok_or(Error::NotFound)?;
        let kept = store::occurrence(&write, of.id, on).await?;
        let before = kept.unwrap_or_else(|| Occurrence::new(of, on));
        let after = turn(&before).ok_or(Error::NotFound)?;
        store::keep_occurrence(&mut write, &before, &after).await?;
        write.commit().await.map(|_| ())
    }
}
