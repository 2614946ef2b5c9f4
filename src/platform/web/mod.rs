//! Pages and forms: what stands between HTTP and a handler that reads like its sentence.

pub mod answer;
pub mod ask_again;
pub mod asked;
pub mod assets;
pub mod form;
pub mod guard;
pub mod install;
pub mod layout;
pub mod page;
pub mod path;
pub mod pile;
pub mod refusal;
pub mod stamp;
pub mod typed;
mod uploads;
pub mod urls;
