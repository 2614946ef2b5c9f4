//! Sign-in and leave: who is asking, for whose record, and what the role allows.
//!
//! The doors, each a proof in a type: [`grant::Grant`] (a member of this record, in a role that
//! reaches the area), [`doors::Account`] (signed in, no record yet), [`doors::Visitor`] (not
//! signed in), [`doors::Operator`] (at the command line).

pub mod area;
pub mod doors;
mod entering;
pub mod grant;
pub mod links;
pub mod password;
pub mod policy;
pub mod session;
pub mod throttle;
