//! Screens as a learner sees them, and what keys change.

#![allow(clippy::unwrap_used)]

mod again;
mod at_lessons;
mod building;
mod fixture;
mod looks;
mod naming;
mod settings;
mod stacked;
mod stand_ins;
mod summary;
mod updates;
