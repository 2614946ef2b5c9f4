//! The addresses of directives, their copies and what happened.

use super::{Address, record};
use crate::base::ids::{DirectiveCopyId, DirectiveEventId, DirectiveId};

/// Which directives stand, and where they are.
pub fn directives() -> Address {
    record("/directives")
}

pub fn directive(id: impl Into<DirectiveId>) -> Address {
    directives().and(&id.into().to_string())
}

/// A copy that was given away.
pub fn directive_copy(id: impl Into<DirectiveCopyId>) -> Address {
    directives().and("copies").and(&id.into().to_string())
}

/// What happened after which they are looked at again.
pub fn directive_events() -> Address {
    directives().and("events")
}

pub fn directive_event(id: impl Into<DirectiveEventId>) -> Address {
    directive_events().and(&id.into().to_string())
}

/// One directive put aside after one event.
pub fn directive_aside(
    directive: impl Into<DirectiveId>,
    event: impl Into<DirectiveEventId>,
) -> Address {
    self::directive(directive).and("aside").and(&event.into().to_string())
}

/// What is to be known before signing, by state.
pub fn signing() -> Address {
    directives().and("signing")
}
