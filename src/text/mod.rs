//! Words without colour: spans in a learner's line, symbols, tagged prose, and the one catalogue
//! of words per language.
//!
//! Meaning and colour are kept apart: a sentence is a list of tagged pieces, and only the screen
//! decides how a tag looks.

mod bound;
mod formula;
mod language;
mod manner;
mod noun;
mod prose;
mod span;
mod symbol;
mod words;

pub use bound::{HARD_SPACE, SOFT_SPACE, bound};
pub use formula::{Block, Formula};
pub(crate) use formula::{lowered, superscript};
pub use language::Language;
pub use manner::{Decimal, Manner, Settings, Slope, Symbols, Turning};
pub use prose::{Piece, Prose, Tag};
pub use span::{Span, printable, visible};
pub use symbol::Symbol;
pub use words::{Slot, Words};
