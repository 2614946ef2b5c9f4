//! Where tasks are.

use super::{Address, record};
use crate::base::ids::TaskId;

pub fn tasks() -> Address {
    record("/tasks")
}

pub fn task(id: impl Into<TaskId>) -> Address {
    let id = id.into();
    record(format!("/tasks/{id}"))
}

/// Only those of the board that are overdue.
pub fn overdue_tasks() -> Address {
    record("/tasks?show=overdue")
}

/// Only those of the board that can be done from afar.
pub fn tasks_from_afar() -> Address {
    record("/tasks?show=afar")
}

/// The tasks about one item.
pub fn tasks_about(kind: &str, item: impl Into<i64>) -> Address {
    let item = item.into();
    record(format!("/tasks/about/{kind}/{item}"))
}
