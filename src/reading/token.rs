//! The pieces of a typed line.

use super::tree::{Function, Literal, NameId};
use crate::text::Span;
use crate::units::Unit;

/// A piece of a line and where it stands.
#[derive(Clone, Debug)]
pub(super) struct Token {
    pub(super) kind: Kind,
    pub(super) span: Span,
}

/// What a piece is.
#[derive(Clone, Debug)]
pub(super) enum Kind {
    Literal(Literal),
    Name(NameId),
    /// A word that is neither name nor function nor unit.
    Unknown(String),
    Function(Function),
    /// A unit that does not belong to the number before it.
    Unit(&'static Unit),
    Plus,
    Minus,
    Times,
    Divide,
    Power,
    Open(char),
    Close(char),
    /// `=`, or `≈` where true.
    Equals(bool),
}

impl Kind {
    /// True if an expression can end here.
    pub(super) fn ends_operand(&self) -> bool {
        matches!(
            self,
            Kind::Literal(_) | Kind::Name(_) | Kind::Unknown(_) | Kind::Unit(_) | Kind::Close(_)
        )
    }
}
