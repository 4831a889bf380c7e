//! leverwright: a terminal tutor that grades step-by-step working on planar statics and names the
//! thought behind each wrong line.
//!
//! The one way of the data; everything down to `session` is pure:
//!
//! ```text
//!  lesson file ─► lesson ─► draw ─► problem ─► statics (values)
//!                                      │
//!                                      ├─► key ──────────┬──────────► mistakes (rewritten keys)
//!                                      │                 │                    │
//!  the learner's line ─► reading ──────┼──────────► judge (verdict, evidence) │
//!                                      │                 └──► diagnosis ◄─────┘
//!                                      │                          │
//!                                      └─► sketch                hint
//!                                             │                   │
//!                                             └───► session ◄─────┘
//!                                                      │ Turn, View
//!                               store, record ◄── practice ──► screen, plain ◄── cli
//! ```
//!
//! `reading` never sees values, so the reader cannot bend a line towards the answer; line and key
//! meet first in `judge`. The rooms below stand in reading order: each uses only rooms above it, and
//! which of them is kept by `tests/house.rs`.

// The ground: words without colour, quantities with units, points and angles.
pub mod plane;
pub mod text;
pub mod units;

// What is asked, valid by construction.
pub mod problem;
pub mod system;

// Three views of a problem, of which none sees another: a line as trees, strokes, values.
pub mod reading;
pub mod sketch;
pub mod statics;

// The right working, and where a line meets it.
pub mod key;
pub mod working;

pub mod judge;
pub mod mistakes;

pub mod diagnosis;

// Families of problems, and numbers worth asking.
pub mod lesson;

pub mod draw;

// A problem of the learner's own, by questions.
pub mod builder;

// The next smallest help, and the one place that joins the rooms: a line in, a turn out.
pub mod hint;

pub mod session;

// What was entered, and the folder where it is kept.
pub mod record;
pub mod store;

// What learners meet.
pub mod practice;

pub mod plain;
pub mod screen;

pub mod cli;
