//! All tests that look at the program from outside, in one binary.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod besides;
mod boards;
mod commands;
mod corpus;
mod dialogues;
mod freely;
mod general;
mod house;
mod languages;
mod laws;
mod lessons;
mod lines;
mod mistakes;
mod naming;
mod pinned;
mod reading;
mod readme;
mod records;
mod sisters;
mod sketch;
mod statics;
mod systems;
mod systems_laws;
mod systems_random;
mod systems_roots;
mod terminal;
mod thoughts;
mod walk;
mod workings;
