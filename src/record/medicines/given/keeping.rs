//! For which medicines the family keeps a log of doses: for single ones, or for all, those too
//! that are added later. Who turned it on or off is kept, and when.

use super::super::model::Medicine;
use crate::audited;
use crate::base::{
    clock::Instant,
    ids::{LogKeepingId, MedicineId, MemberId, PersonId},
};

#[derive(Clone, Debug, PartialEq)]
pub struct LogKeeping {
    pub id: LogKeepingId,
    pub person_id: PersonId,
    /// None: all medicines.
    pub medicine_id: Option<MedicineId>,
    pub standing: bool,
    pub turned_by: MemberId,
    pub turned_at: Instant,
    pub version: i64,
}

audited!(LogKeeping as "log_keeping" {
    medicine_id: "", standing: "log of doses", turned_by: "", turned_at: "",
} skip { id, person_id, version });

impl LogKeeping {
    pub fn new(
        person_id: PersonId,
        medicine_id: Option<MedicineId>,
        (by, at): (MemberId, Instant),
    ) -> LogKeeping {
        LogKeeping {
            id: LogKeepingId::default(),
            person_id,
            medicine_id,
            standing: true,
            turned_by: by,
            turned_at: at,
            version: 1,
        }
    }

    /// Turned on or off; left as it is, nothing of it changes.
    pub fn turned(&self, standing: bool, (by, at): (MemberId, Instant)) -> LogKeeping {
        match self.standing == standing {
            true => self.clone(),
            false => LogKeeping { standing, turned_by: by, turned_at: at, ..self.clone() },
        }
    }
}

/// The row that keeps the log of a medicine: its own, or that of all.
pub fn keeps(all: &[LogKeeping], medicine: MedicineId) -> Option<&LogKeeping> {
    let fits = |it: &&LogKeeping| it.medicine_id.is_none_or(|it| it == medicine);
    all.iter().filter(|it| it.standing).find(fits)
}

/// Those of which a log is kept, among what is taken or on hold.
pub fn logged(medicines: &[Medicine], all: &[LogKeeping]) -> Vec<Medicine> {
    let logged = |it: &&Medicine| it.is_current() && keeps(all, it.id).is_some();
    medicines.iter().filter(logged).cloned().collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_or_all_are_kept_and_what_is_left_as_it_is_keeps_its_name() {
        let by = |member: i64, at| (MemberId::from(member), Instant::from_unix(at));
        let one = LogKeeping::new(1.into(), Some(7.into()), by(2, 0));
        assert!(keeps(std::slice::from_ref(&one), 7.into()).is_some());
        assert!(keeps(std::slice::from_ref(&one), 8.into()).is_none());
        let all = LogKeeping::new(1.into(), None, by(2, 0));
        assert!(keeps(std::slice::from_ref(&all), 8.into()).is_some());
        assert_eq!(one.turned(true, by(3, 60)), one);
        let off = one.turned(false, by(3, 60));
        assert_eq!((off.turned_by, off.standing), (3.into(), false));
        assert!(keeps(&[off], 7.into()).is_none());
    }
}
