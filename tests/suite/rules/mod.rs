//! What must be true of the whole house.

mod access;
mod crash;
mod due;
mod history;
mod layers;
mod lowered;
mod numbers;
mod pages;
mod reading;
mod roles;
mod two_people;
mod typing;
mod years;
