//! Screens as a learner sees them.
