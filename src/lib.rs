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
//! meet first in `judge`. Who may use whom is kept by `tests/house.rs`.

pub mod cli;
pub mod diagnosis;
pub mod draw;
pub mod hint;
pub mod judge;
pub mod key;
pub mod lesson;
pub mod mistakes;
pub mod plain;
pub mod plane;
pub mod practice;
pub mod problem;
pub mod reading;
pub mod record;
pub mod screen;
pub mod session;
pub mod sketch;
pub mod statics;
pub mod store;
pub mod text;
pub mod units;
