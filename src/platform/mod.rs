//! The plumbing: database, history, sign-in, pages, mail, paper. Knows no capability.

pub mod address;
pub mod audit;
pub mod auth;
pub mod backup;
pub mod config;
pub mod db;
pub mod error;
pub mod files;
pub mod house;
pub mod jobs;
pub mod look;
pub mod mail;
pub mod ocr;
pub mod pdf;
pub mod random;
pub mod web;
pub mod words;
