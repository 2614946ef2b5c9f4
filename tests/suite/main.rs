//! The one test binary. `journeys` tell what people do, one file a journey; `rules` hold what must
//! be true of the whole house; `support` gives both a browser, a family and a house of their own.

mod journeys;
mod rules;
mod support;
