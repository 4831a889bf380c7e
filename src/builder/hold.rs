//! What holds the body besides its hinge.

use super::draft::Spot;
use super::read::Measure;
use crate::problem::{Reference, Side};

/// Which way a rope runs from the body.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Way {
    Up,
    Level(Side),
    Aslant {
        from: Option<Reference>,
        angle: Option<Measure>,
        side: Option<Side>,
    },
    WithBody {
        angle: Option<Measure>,
    },
}

impl Way {
    fn is_whole(&self) -> bool {
        match self {
            Way::Up | Way::Level(_) => true,
            Way::Aslant { from, angle, side } => {
                from.is_some() && angle.is_some() && side.is_some()
            }
            Way::WithBody { angle } => angle.is_some(),
        }
    }
}

/// A rope, or a prop below the body that pushes straight up.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Hold {
    Rope {
        spot: Option<Spot>,
        way: Option<Way>,
    },
    Prop {
        spot: Option<Spot>,
    },
}

impl Hold {
    pub(super) fn is_whole(&self) -> bool {
        match self {
            Hold::Rope { spot, way } => spot.is_some() && way.as_ref().is_some_and(Way::is_whole),
            Hold::Prop { spot } => spot.is_some(),
        }
    }

    pub(super) fn spot(&self) -> Option<&Spot> {
        match self {
            Hold::Rope { spot, .. } | Hold::Prop { spot } => spot.as_ref(),
        }
    }

    pub(super) fn set_spot(&mut self, at: Spot) {
        match self {
            Hold::Rope { spot, .. } | Hold::Prop { spot } => *spot = Some(at),
        }
    }

    /// The key of its noun in the catalogue of words.
    pub(super) fn noun(&self) -> &'static str {
        match self {
            Hold::Rope { .. } => "build.noun.rope",
            Hold::Prop { .. } => "build.noun.prop",
        }
    }

    fn letter(&self) -> &'static str {
        match self {
            Hold::Rope { .. } => "T",
            Hold::Prop { .. } => "N",
        }
    }

    /// The name of its force: a letter, with a number where there are several of its kind.
    pub(super) fn symbol(&self, all: &[Hold], index: usize) -> String {
        let alike = |hold: &&Hold| hold.letter() == self.letter();
        match all.iter().filter(alike).count() {
            0 | 1 => self.letter().to_owned(),
            _ => {
                let before = all.iter().take(index).filter(alike).count();
                format!("{}{}", self.letter(), before + 1)
            }
        }
    }
}
