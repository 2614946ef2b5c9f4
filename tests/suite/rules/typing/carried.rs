//! The forms of what each carries.

pub const FORMS: &[&str] = &[
    "/carried/add",
    "/carried/1/edit",
    "/carried/1/strike",
    "/carried/wish",
    "/carried/wish-of-all",
];
