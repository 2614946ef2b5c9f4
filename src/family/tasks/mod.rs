//! Tasks: what is to be done for the person, who does it and by when.
//!
//! A task is open, taken, waiting (on someone, until a day), done, or let go; each can be taken
//! back. It is handed over by the other's yes: until then it stays with whoever has it. One whose
//! owner was paused or has left can be taken as if it were open (`hands`). A repeating one is a
//! row for each time (`repeats`). Its pages join it with names and items: `across/tasks`. There,
//! too, stands what hides a task about an item with rules of its own (`across/tasks/seen`).

pub mod form;
pub mod hands;
pub mod model;
pub mod moves;
pub mod repeats;
pub mod store;
