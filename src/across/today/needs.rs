//! What needs someone: what was never asked, what is missing, what does not agree, what waits.
//!
//! Each says where to go. Nothing here judges what is kept; it says what is not.

use crate::{
    across::statements::beside,
    family::members::invitations::{model::Invitation, store as invitations},
    platform::{
        auth::area::{Clinical, Essentials, Log, Members},
        db::View,
        error::Result,
        web::urls::{self, Address},
    },
    record::{
        allergies::{state::State, store as allergies},
        baseline::store as baseline,
        contacts::store as contacts,
        happenings::{
            model::Place,
            store::{self as happenings, Wanted},
        },
        medicines::{model::Medicine, stock::standing as supply, store as medicines},
        operations::store as operations,
        people::store as people,
        statements::{state::State as Stated, store as statements},
    },
};

use time::Date;

pub struct Need {
    pub says: String,
    pub to: Address,
}

impl Need {
    fn new(says: impl Into<String>, to: Address) -> Need {
        Need { says: says.into(), to }
    }
}

/// Everything that needs someone, what matters first in an emergency in front.
pub async fn all(view: &View<Essentials>, today: Date) -> Result<Vec<Need>> {
    let mut needs = essentials(view).await?;
    if let Some(view) = view.area::<Clinical>() {
        needs.extend(running_out(&view, today).await?);
        needs.extend(clinical(&view).await?);
    }
    if let Some(view) = view.area::<Log>() {
        needs.extend(waiting(&view).await?);
    }
    Ok(needs)
}

async fn essentials(view: &View<Essentials>) -> Result<Vec<Need>> {
    let mut needs = Vec::new();
    if matches!(allergies::state(view).await?, State::NotAsked) {
        needs.push(Need::new("Allergies: not asked yet", urls::allergies()));
    }
    if contacts::list(view).await?.is_empty() {
        needs.push(Need::new("Nobody to phone is written down", urls::contacts()));
    }
    if baseline::find(view).await?.is_empty() {
        let name = people::find(view).await?.name;
        let says = format!("How {name} usually is, is not written down");
        needs.push(Need::new(says, urls::usual()));
    }
    Ok(needs)
}

async fn clinical(view: &View<Clinical>) -> Result<Vec<Need>> {
    let mut needs = Vec::new();
    let operations = operations::list(view).await?;
    for statement in statements::list(view).await? {
        if let Some(differs) = beside(&statement, &operations) {
            needs.push(Need::new(differs, urls::statements()));
        } else if !Stated::of(&statement).is_asked() {
            needs.push(Need::new(Stated::of(&statement).sentence(), urls::statements()));
        }
    }
    let medicines = medicines::list(view).await?;
    let current: Vec<_> = medicines.iter().filter(|it| it.is_current()).collect();
    if current.is_empty() {
        needs.push(Need::new("No medicine is written down", urls::medicines()));
    }
    let without: Vec<_> = current.into_iter().filter(|it| it.purpose.is_none()).collect();
    if let Some(says) = purposes(&without) {
        needs.push(Need::new(says, urls::medicines()));
    }
    Ok(needs)
}

/// Medicines whose day to act is past or near.
async fn running_out(view: &View<Clinical>, today: Date) -> Result<Vec<Need>> {
    let all = supply::all(view, today).await?;
    let need = |it: &supply::Standing| Some(Need::new(it.needs(today)?, urls::stock(it.id())));
    Ok(all.iter().filter_map(need).collect())
}

/// "What 2 medicines are for is not written down: Sertraline 50 mg, Melatonin 3 mg"
fn purposes(without: &[&Medicine]) -> Option<String> {
    let titles: Vec<_> = without.iter().map(|it| it.title()).collect();
    Some(match titles.as_slice() {
        [] => return None,
        [one] => format!("What {one} is for is not written down"),
        all => {
            format!("What {} medicines are for is not written down: {}", all.len(), all.join(", "))
        }
    })
}

async fn waiting(view: &View<Log>) -> Result<Vec<Need>> {
    let wanted = Wanted { place: Some(Place::Waiting), most: 200, ..Wanted::default() };
    let waiting = happenings::list(view, &wanted).await?;
    Ok(match waiting.as_slice() {
        [] => Vec::new(),
        [one] => {
            let says = format!("A note has no place yet: {}", one.title());
            vec![Need::new(says, urls::happening(one.id))]
        }
        all => {
            vec![Need::new(format!("{} notes have no place yet", all.len()), urls::happenings())]
        }
    })
}

/// Invitations that ran out before anyone came in by them: for those who invite.
pub async fn invitations(
    view: &View<Members>,
    now: crate::base::clock::Instant,
) -> Result<Vec<Need>> {
    let ran_out = |it: &Invitation| it.is_standing() && !it.open_at(now);
    let all = invitations::list(view).await?.into_iter().filter(ran_out);
    let need = |it: Invitation| {
        Need::new(format!("The invitation for {} ran out unused", it.name), urls::family())
    };
    Ok(all.map(need).collect())
}
