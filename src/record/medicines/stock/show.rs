//! The supply of one medicine: how long it lasts and why, its fills and counts, its prescription,
//! and the proportion of days covered.

use super::{
    covered::Covered,
    lasts::Written,
    life::Life,
    standing::{self, Standing},
};
use crate::base::{
    clock::Instant,
    day,
    ids::{MedicineId, MemberId},
};
use crate::platform::{
    audit::Names,
    auth::{
        area::Clinical,
        grant::{Change, Grant, See},
    },
    error::Result,
    web::{page::Page, path::At, urls},
};
use askama::Template;
use askama_web::WebTemplate;
use time::{Date, Duration};

#[derive(Template, WebTemplate)]
#[template(path = "medicines/stock/show.html")]
pub struct ShowPage {
    page: Page,
    standing: Standing,
    words: String,
    act: Option<String>,
    life: Vec<String>,
    covered: Option<Covered>,
    notices: Vec<String>,
    may_change: bool,
    names: Names,
}

impl ShowPage {
    fn on(&self, date: &Date) -> String {
        day::words(*date)
    }

    /// "entered Tue 3 Mar 2026, 9:12 am by Ines"
    fn entered(&self, at: &Instant, by: &MemberId) -> String {
        format!("entered {} by {}", self.page.when(at), self.names.of(*by))
    }

    /// "30 days by the label", "about 30 days by its schedule"
    fn days(&self, fill: &super::model::Fill) -> Option<String> {
        let by = if fill.label_days.is_some() { "label" } else { "schedule" };
        Some(format!("{} days by its {by}", self.standing.written.days_of(fill)?))
    }
}

pub async fn show(grant: Grant<See<Clinical>>, At(id): At<MedicineId>) -> Result<ShowPage> {
    let view = grant.view().await?;
    let today = grant.today();
    let standing = standing::one(&view, id, today).await?;
    let written = &standing.written;
    let page = grant.page(format!("Supply of {}", written.medicine.name));
    let living = page.person.as_ref().is_none_or(|it| it.died.is_none());
    Ok(ShowPage {
        words: standing.words(today),
        act: standing.act_words(today).filter(|_| living),
        life: written.fills.last().map(|it| Life::of(it).says).unwrap_or_default(),
        covered: covered(written, today),
        notices: notices(written),
        may_change: grant.may::<Change<Clinical>>(),
        names: view.names().await?,
        page,
        standing,
    })
}

/// Over the last year, where there are fills on two days at least (as the measure asks, from
/// memory) and each tells its days.
fn covered(written: &Written, today: Date) -> Option<Covered> {
    if written.is_as_needed() {
        return None;
    }
    let fills = written.fills.iter().map(|it| Some((it.filled_on, written.days_of(it)?)));
    let fills: Vec<_> = fills.collect::<Option<_>>()?;
    let first = today - Duration::days(364);
    let since = fills.iter().filter(|(day, _)| *day >= first);
    let (least, most) = (since.clone().map(|it| it.0).min()?, since.map(|it| it.0).max()?);
    Covered::of(&fills, (first, today)).filter(|_| least < most)
}

/// What a reader of the figures should know.
fn notices(written: &Written) -> Vec<String> {
    let mut notices = Vec::new();
    for pair in written.fills.windows(2) {
        if pair[0].filled_on == pair[1].filled_on {
            let on = day::words(pair[0].filled_on);
            notices
                .push(format!("More than one fill is written down for {on}: all of them count."));
        }
    }
    notices.dedup();
    if let Some(last) = written.fills.last()
        && let (Some(label), Some(steps)) = (last.label_days, written.days_by_steps(last))
        && label != steps
    {
        notices.push(format!(
            "The label says {label} days; by the schedule that is written down it is {steps}. Ask the pharmacist."
        ));
    }
    if written.is_partly_as_needed() {
        notices.push(
            "What is taken as needed comes on top and is not reckoned in. A count puts it right."
                .into(),
        );
    }
    notices
}

#[cfg(test)]
mod tests {
    use super::super::super::schedule::model::Rhythm;
    use super::super::{
        model::Fill,
        samples::{fill, step, written},
    };
    use super::*;
    use time::macros::date;

    const TODAY: Date = date!(2026 - 03 - 31);

    #[test]
    fn days_covered_need_two_fills_on_two_days() {
        let first = fill(date!(2026 - 03 - 02), "10 tablets");
        let daily = || vec![step(Rhythm::Days, 1, "morning 1")];
        let of = |fills| covered(&written(daily(), fills), TODAY);
        assert_eq!(of(vec![first.clone()]), None);
        assert_eq!(of(vec![first.clone(), first.clone()]), None);
        let second = fill(date!(2026 - 03 - 22), "30 tablets");
        let it = of(vec![first, second]).expect("two days");
        assert_eq!((it.days, it.of_days()), (20, 30));
    }

    #[test]
    fn what_does_not_agree_is_told() {
        let last = Fill { label_days: Some(30), ..fill(date!(2026 - 03 - 02), "30 tablets") };
        let it = |times| vec![step(Rhythm::Days, 1, times)];
        assert!(notices(&written(it("morning 1"), vec![last.clone()])).is_empty());
        let says = "The label says 30 days; by the schedule that is written down it is 15. Ask the pharmacist.";
        assert_eq!(notices(&written(it("morning 2"), vec![last.clone()])), [says]);
        let twice = vec![last.clone(), last.clone(), last];
        let says = "More than one fill is written down for 2 March 2026: all of them count.";
        assert_eq!(notices(&written(it("morning 1"), twice)), [says]);
    }
}
