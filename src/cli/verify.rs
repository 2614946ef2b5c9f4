//! `kinsheaf verify`: every chain is read anew, and every row compared with its history.

use super::{Outcome, database};
use crate::{
    base::ids::PersonId,
    platform::{audit::Fault, auth::doors::Operator, config::Config},
};
use std::process::ExitCode;

/// A mark shorter than this could fit by chance.
const SHORTEST_MARK: usize = 12;

pub async fn verify(config: Config, head: Option<String>) -> Outcome {
    let head = head.map(mark).transpose()?;
    let db = database(&config).await?;
    let operator = Operator::new(db.clone());
    let (mut sound, mut head_seen) = (true, head.is_none());
    for chain in operator.chains().await? {
        let mut report = operator.verify(chain, head.as_deref()).await?;
        let missing = report.faults.contains(&Fault::HeadUnknown);
        head_seen |= !missing;
        report.faults.retain(|it| *it != Fault::HeadUnknown);
        let name = name(chain);
        match report.sound() {
            true => {
                println!("{name}: {} entries, sound; newest mark {}", report.entries, report.head)
            }
            false => println!("{name}: {} entries, NOT sound", report.entries),
        }
        for fault in &report.faults {
            println!("  {fault}");
        }
        // The house's own chain tells of it, once for all records.
        for (at, faults) in report.restored.iter().filter(|_| chain == PersonId::default()) {
            println!("  restored on {at} from a backup that was not sound:");
            faults.iter().for_each(|it| println!("    {it}"));
        }
        sound &= report.sound();
    }
    db.close().await;
    if !head_seen {
        println!("The mark is in no history: entries were cut off, or it is from elsewhere.");
    }
    Ok(if sound && head_seen { ExitCode::SUCCESS } else { ExitCode::FAILURE })
}

/// What a chain is called at the command line.
pub(super) fn name(chain: PersonId) -> String {
    match i64::from(chain) {
        0 => "The house".into(),
        id => format!("Record {id}"),
    }
}

/// The mark as it is printed on a sheet (in groups, in either case) or as `verify` shows it.
fn mark(typed: String) -> Result<String, String> {
    let digits: String = typed.chars().filter(|it| !it.is_whitespace()).collect();
    let digits = digits.to_ascii_lowercase();
    let sound = digits.len() >= SHORTEST_MARK && digits.bytes().all(|it| it.is_ascii_hexdigit());
    sound.then_some(digits).ok_or(format!(
        "--head takes the history mark of a sheet: {SHORTEST_MARK} or more of the digits 0-9 and a-f."
    ))
}
