//! Mail: written into the outbox in the transaction of what it tells of, and carried afterwards by
//! SMTP, or into files where no mail server is set.
//!
//! A *letter* is mailed because someone pressed a button (an invitation, a new password); a
//! *reminder* by itself, at most once for its key. Each goes to one address. Nothing that was
//! written is lost when the program dies: what was accepted and not yet noted is handed over again
//! with the same Message-ID. No clinical content: the one who writes a message sees to that.

pub mod carrier;
mod hand_over;
mod message;
pub mod outbox;
pub mod post;
pub mod retry;
mod words;
mod writing;

pub use carrier::{Carrier, Refused};
pub use outbox::{GivenUp, Waiting};
pub use post::Post;
pub use writing::{Key, Reminder, Stop, Text};

/// The kind of what was mailed because someone pressed a button.
pub const LETTER: &str = "letter";
