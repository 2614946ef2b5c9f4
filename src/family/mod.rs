//! What the members do together. Each folder owns its tables and knows no other folder here.

pub mod carried;
pub mod decisions;
pub mod members;
pub mod tasks;
