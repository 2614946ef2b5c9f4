//! Where coverage, cards and what was refused at the counter are.

use super::{Address, record};
use crate::base::ids::{CardId, CoverId, RefusalCallId, RefusalId};

pub fn coverage() -> Address {
    record("/coverage")
}

pub fn cover(id: impl Into<CoverId>) -> Address {
    let id = id.into();
    record(format!("/coverage/{id}"))
}

pub fn cards() -> Address {
    record("/coverage/cards")
}

pub fn card(id: impl Into<CardId>) -> Address {
    let id = id.into();
    record(format!("/coverage/cards/{id}"))
}

/// The paper with all cards and their numbers.
pub fn card_sheet() -> Address {
    record("/coverage/cards/sheet")
}

pub fn refusals() -> Address {
    record("/coverage/refusals")
}

pub fn refusal(id: impl Into<RefusalId>) -> Address {
    let id = id.into();
    record(format!("/coverage/refusals/{id}"))
}

pub fn refusal_call(refusal_id: impl Into<RefusalId>, id: impl Into<RefusalCallId>) -> Address {
    let id = id.into();
    refusal(refusal_id).and(&format!("calls/{id}"))
}
