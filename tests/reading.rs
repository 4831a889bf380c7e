//! Filled with its room.
