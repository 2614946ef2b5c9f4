//! What each carries: the hours, nights, errands and travel that someone gave for the person, in
//! her own words and by her own hand.
//!
//! It is written down so that it is seen, not so that it is weighed: nothing here is compared, put
//! in an order of merit or made a share of. Whoever does not wish to be shown is not, and no sum
//! tells of her; the person can wish that none of it is shown. Both are in `wish`, with who said so.

pub mod form;
pub mod model;
pub mod store;
pub mod wish;
