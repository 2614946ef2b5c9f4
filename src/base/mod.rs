//! The vocabulary every other part speaks: ids, instants, zones, days, text, changes.
//!
//! Pure: nothing here knows of HTTP or of the database (but for the derive that lets a
//! value be a column), and nothing reads the clock: the time is always handed in.

pub mod change;
pub mod check;
pub mod clock;
pub mod content_line;
pub mod day;
pub mod holidays;
pub mod ids;
pub mod number;
pub mod order;
pub mod picture;
pub mod quantity;
pub mod reach;
pub mod recurrence;
pub mod text;
pub mod time_of_day;
pub mod zone;
