//! Two appointments at the same time: said, never refused. The person cannot be at two; nor can a member go along to two,
//! not even in two records, as far as the reader sees both.

use super::row::{Row, Words};
use crate::{
    base::clock::Instant,
    platform::{
        auth::{
            area::Tasks,
            grant::{Grant, See},
        },
        error::Result,
    },
    record::appointments::{escort::Escort, meeting::Meeting, store},
};

/// What is at that time in another record.
pub struct Elsewhere {
    person: String,
    meetings: Vec<Meeting>,
}

/// The other records that the reader sees the calendar of. Call it when no view is open.
pub async fn elsewhere<L: crate::platform::auth::grant::Leave>(
    grant: &Grant<L>,
    (from, to): (Instant, Instant),
) -> Result<Vec<Elsewhere>> {
    let mut all = Vec::new();
    for other in grant.others().await? {
        if let Some(view) = other.view::<Tasks>(grant.house()).await? {
            let mut meetings = store::meetings(&view, from, to).await?;
            meetings.retain(|it| it.status.is_open() && matches!(it.escort, Escort::Member(_)));
            all.push(Elsewhere { person: other.name, meetings });
        }
    }
    Ok(all)
}

/// Says of each row what is at the same time.
pub fn warn(rows: &mut [Row], among: &[Meeting], elsewhere: &[Elsewhere], words: &Words) {
    for row in rows {
        row.warnings = found(&row.meeting, among, elsewhere, words);
    }
}

pub fn found(
    of: &Meeting,
    among: &[Meeting],
    elsewhere: &[Elsewhere],
    words: &Words,
) -> Vec<String> {
    let same = |it: &&Meeting| (it.id(), it.on) != (of.id(), of.on) && it.overlaps(of);
    let title = |it: &Meeting| format!("{}, {}", it.appointment.title, words.when(it).time);
    let mut said = Vec::new();
    for other in among.iter().filter(same) {
        said.push(format!("At the same time: {}", title(other)));
        if let Some(name) = same_escort(of, other, words) {
            said.push(format!("{name} is down for both"));
        }
    }
    for record in elsewhere {
        for other in record.meetings.iter().filter(|it| it.overlaps(of)) {
            if let Some(name) = same_escort(of, other, words) {
                let says = format!(
                    "{name} goes along with {} at the same time: {}",
                    record.person,
                    title(other)
                );
                said.push(says);
            }
        }
    }
    said
}

fn same_escort(one: &Meeting, other: &Meeting, words: &Words) -> Option<String> {
    let same = one.escort == other.escort && matches!(one.escort, Escort::Member(_));
    words.escort(one.escort).filter(|_| same)
}

/// Leave to see the calendar, for a page that only looks.
pub type Seeing = Grant<See<Tasks>>;
