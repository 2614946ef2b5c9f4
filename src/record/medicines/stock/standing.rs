//! How each medicine's supply stands on a day: how long it lasts, by when to act, and why.

use super::super::{
    model::Medicine,
    schedule::{model::Step, store as schedule},
    store as medicines,
};
use super::{
    act_by::ActBy,
    lasts::{Lasts, Written},
    life::Life,
    model::{Fill, Setting},
    store,
};
use crate::base::{day, ids::MedicineId};
use crate::platform::{auth::area::Clinical, db::View, error::Result};
use time::Date;

pub struct Standing {
    pub written: Written,
    pub lasts: Lasts,
    pub act: Option<ActBy>,
    /// What the last fill says of the next one, and from when on is reckoned.
    pub says: Vec<String>,
}

/// Every medicine that is taken or on hold: those with a day to act by first, by that day.
pub async fn all(view: &View<Clinical>, today: Date) -> Result<Vec<Standing>> {
    let (medicines, steps) = (medicines::current(view).await?, schedule::list(view).await?);
    of(view, medicines, &steps, today).await
}

/// Of these medicines, with all steps.
pub async fn of(
    view: &View<Clinical>,
    medicines: Vec<Medicine>,
    steps: &[Step],
    today: Date,
) -> Result<Vec<Standing>> {
    let (fills, counts) = (store::fills(view, None).await?, store::counts(view, None).await?);
    let pauses = store::pauses(view, None).await?;
    let setting = store::setting(view).await?;
    let one = |medicine: Medicine| {
        let id = medicine.id;
        let written = Written {
            steps: steps.iter().filter(|it| it.medicine_id == id).cloned().collect(),
            fills: fills.iter().filter(|it| it.medicine_id == id).cloned().collect(),
            counts: counts.iter().filter(|it| it.medicine_id == id).cloned().collect(),
            pauses: pauses.iter().filter(|it| it.medicine_id == id).cloned().collect(),
            medicine,
        };
        Standing::new(written, &fills, &setting, today)
    };
    let mut all: Vec<Standing> = medicines.into_iter().map(one).collect();
    all.sort_by_key(|it| (it.act.is_none(), it.act.as_ref().map(|it| it.on)));
    Ok(all)
}

/// Of one medicine, whatever its status.
pub async fn one(view: &View<Clinical>, id: MedicineId, today: Date) -> Result<Standing> {
    let medicine = medicines::find(view, id).await?;
    let written = Written {
        medicine,
        steps: schedule::of_medicine(view, id).await?,
        fills: store::fills(view, Some(id)).await?,
        counts: store::counts(view, Some(id)).await?,
        pauses: store::pauses(view, Some(id)).await?,
    };
    let (fills, setting) = (store::fills(view, None).await?, store::setting(view).await?);
    Ok(Standing::new(written, &fills, &setting, today))
}

impl Standing {
    fn new(written: Written, fills: &[Fill], setting: &Setting, today: Date) -> Standing {
        let lasts = match written.medicine.is_current() {
            true => written.lasts(today),
            false => Lasts::Untold { says: format!("{} now", written.medicine.status) },
        };
        let act = match lasts {
            Lasts::Until { out, .. } => {
                let days = pharmacy_days(written.fills.last(), fills, setting);
                Some(ActBy::new(out, days))
            }
            _ => None,
        };
        let next_fill = written.fills.last().map(|it| next_fill(it, &lasts, today));
        let mut says = next_fill.unwrap_or_default();
        if let Some(begins) = written.begins_late() {
            let begins = day::words(begins);
            says.push(format!("its schedule begins on {begins}, and nothing is used up before"));
        }
        Standing { says, written, lasts, act }
    }

    pub fn id(&self) -> MedicineId {
        self.written.medicine.id
    }

    pub fn title(&self) -> String {
        self.written.medicine.title()
    }

    /// "act by Wed 23 Dec 2026"; "act by was ..." once it is past.
    pub fn act_words(&self, today: Date) -> Option<String> {
        let act = self.act.as_ref()?;
        let on = day::short_words(act.on);
        Some(if act.is_past(today) { format!("act by was {on}") } else { format!("act by {on}") })
    }

    pub fn is_past(&self, today: Date) -> bool {
        self.act.as_ref().is_some_and(|it| it.is_past(today))
    }

    /// For the first page: past its day, or within three days of it.
    pub fn needs(&self, today: Date) -> Option<String> {
        let (act, Lasts::Until { out, .. }) = (self.act.as_ref()?, &self.lasts) else {
            return None;
        };
        if !act.is_soon(today) {
            return None;
        }
        let runs = if *out <= today { "ran out" } else { "runs out" };
        let out = day::short_words(*out);
        Some(format!("{} {runs} on {out}: {}", self.title(), self.act_words(today)?))
    }

    /// How long it lasts, in words.
    pub fn words(&self, today: Date) -> String {
        match &self.lasts {
            Lasts::Until { out, .. } if *out <= today => {
                format!("ran out on {}, by what is written down", day::short_words(*out))
            }
            Lasts::Until { out, there } => {
                let there = there.as_ref().map(|it| format!("; {it} there today"));
                format!("runs out on {}{}", day::short_words(*out), there.unwrap_or_default())
            }
            Lasts::ToItsEnd { end, there } => {
                format!(
                    "lasts to the end of its schedule, {}; {there} there today",
                    day::words(*end)
                )
            }
            Lasts::AsNeeded { says } => format!("as needed, no run-out day: {says}"),
            Lasts::Untold { says } => says.clone(),
        }
    }

    pub fn reasons(&self) -> String {
        let act = self.act.as_ref().map(|it| it.reasons.join("; "));
        let all: Vec<String> = act.into_iter().chain(self.says.iter().cloned()).collect();
        all.join("; ")
    }
}

/// What this fill says; else what the newest fill of the same pharmacy says; else the setting.
fn pharmacy_days(last: Option<&Fill>, fills: &[Fill], setting: &Setting) -> i64 {
    let own = last.and_then(|it| it.pharmacy_days);
    let pharmacy = last.and_then(|it| it.pharmacy.as_ref());
    let same =
        fills.iter().rev().filter(|it| pharmacy.is_some() && it.pharmacy.as_ref() == pharmacy);
    own.or_else(|| same.filter_map(|it| it.pharmacy_days).next()).unwrap_or(setting.pharmacy_days)
}

fn next_fill(last: &Fill, lasts: &Lasts, today: Date) -> Vec<String> {
    let life = Life::of(last);
    let mut says = Vec::new();
    match (life.needs_new, last.refills_left) {
        (true, _) => says.push("the next fill needs a new prescription".to_owned()),
        (false, Some(1)) => says.push("1 refill left".into()),
        (false, Some(left)) => says.push(format!("{left} refills left")),
        (false, None) => {}
    }
    let out = match lasts {
        Lasts::Until { out, .. } => Some(*out),
        _ => None,
    };
    if let Some(end) =
        life.last_fill.filter(|it| !life.needs_new && out.is_some_and(|out| *it < out))
    {
        says.push(format!("its prescription can be filled until {}", day::short_words(end)));
    }
    if let Some(from) = last.earliest_refill.filter(|it| *it > today) {
        says.push(format!("the pharmacy fills it again from {}", day::short_words(from)));
    }
    says
}

#[cfg(test)]
mod tests {
    use super::super::super::schedule::model::{Rhythm, Step};
    use super::super::samples::{fill, step, written};
    use super::*;
    use crate::base::text::Line;
    use time::macros::date;

    const TODAY: Date = date!(2026 - 11 - 25);

    fn standing(last: Fill, others: &[Fill]) -> Standing {
        let it = written(vec![step(Rhythm::Days, 1, "morning 1, evening 1")], vec![last.clone()]);
        let fills: Vec<_> = others.iter().cloned().chain([last]).collect();
        Standing::new(it, &fills, &Setting::unsaid(1.into()), TODAY)
    }

    #[test]
    fn the_reason_has_the_day_the_pharmacy_and_the_holiday() {
        let it = standing(Fill { refills_left: Some(1), ..fill(TODAY, "60 tablets") }, &[]);
        assert_eq!(it.act_words(TODAY).as_deref(), Some("act by Wed 23 Dec 2026"));
        let says = "runs out Fri 25 Dec 2026; 2 working days for the pharmacy; Christmas Day is a holiday; 1 refill left";
        assert_eq!(it.reasons(), says);
        assert_eq!(it.words(TODAY), "runs out on Fri 25 Dec 2026; 60 tablets there today");
        assert_eq!(it.needs(date!(2026 - 12 - 19)), None);
        let says = "Warfarin runs out on Fri 25 Dec 2026: act by Wed 23 Dec 2026";
        assert_eq!(it.needs(date!(2026 - 12 - 20)).as_deref(), Some(says));
        let says = "Warfarin ran out on Fri 25 Dec 2026: act by was Wed 23 Dec 2026";
        assert_eq!(it.needs(date!(2026 - 12 - 25)).as_deref(), Some(says));
    }

    #[test]
    fn a_pharmacy_needs_what_its_last_fill_said() {
        let pharmacy = Some(Line::from("Lakeside".to_owned()));
        let at = |days| Fill {
            pharmacy: pharmacy.clone(),
            pharmacy_days: days,
            ..fill(TODAY, "60 tablets")
        };
        let on = |it: Standing| it.act.map(|it| it.on);
        assert_eq!(on(standing(at(None), &[at(Some(4))])), Some(date!(2026 - 12 - 21)));
        assert_eq!(on(standing(at(Some(1)), &[at(Some(4))])), Some(date!(2026 - 12 - 24)));
        let elsewhere = Fill { pharmacy: None, ..at(Some(4)) };
        assert_eq!(on(standing(at(None), &[elsewhere])), Some(date!(2026 - 12 - 23)));
    }

    #[test]
    fn a_schedule_that_begins_after_the_fill_is_told() {
        let step = step(Rhythm::Days, 1, "morning 1");
        let steps = vec![Step { from_on: date!(2026 - 12 - 01), ..step }];
        let it = written(steps, vec![fill(TODAY, "30 tablets")]);
        let it = Standing::new(it, &[], &Setting::unsaid(1.into()), TODAY);
        assert_eq!(
            it.says,
            ["its schedule begins on 1 December 2026, and nothing is used up before"]
        );
        assert!(it.words(TODAY).starts_with("runs out on Thu 31 Dec 2026"));
    }

    #[test]
    fn what_stands_in_the_way_of_the_next_fill_is_said() {
        let none = standing(Fill { refills_left: Some(0), ..fill(TODAY, "60 tablets") }, &[]);
        assert_eq!(none.says, ["the next fill needs a new prescription"]);
        let ends = Fill {
            expires_on: Some(date!(2026 - 12 - 10)),
            earliest_refill: Some(date!(2026 - 12 - 18)),
            ..fill(TODAY, "60 tablets")
        };
        let says = [
            "its prescription can be filled until Thu 10 Dec 2026",
            "the pharmacy fills it again from Fri 18 Dec 2026",
        ];
        assert_eq!(standing(ends, &[]).says, says);
    }
}
