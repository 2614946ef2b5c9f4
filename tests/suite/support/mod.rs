//! A house of its own for each test, people in it, and a browser to see it with.

pub mod archive;
pub mod browser;
pub mod crawl;
pub mod family;
pub mod house;
pub mod html;
pub mod mail;
pub mod paper;
mod prepared;
pub mod reader;
pub mod routes;
mod sent;
pub mod server;
pub mod smtp;

pub use browser::Browser;
pub use family::Family;
pub use house::TestHouse;
