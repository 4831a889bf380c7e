//! The diagram told, for those who listen to the screen.

use super::Marks;
use crate::problem::Problem;
use crate::text::{Prose, Words};

/// One of eight directions on the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Heading {
    /// To the right.
    Right,
    /// Up and to the right.
    UpRight,
    /// Straight up.
    Up,
    /// Up and to the left.
    UpLeft,
    /// To the left.
    Left,
    /// Down and to the left.
    DownLeft,
    /// Straight down.
    Down,
    /// Down and to the right.
    DownRight,
}

/// A word for a place along the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlaceWord {
    /// The foot.
    Foot,
    /// Half-way.
    Middle,
    /// The tip.
    Tip,
    /// Somewhere between.
    Between,
}

/// A place along the body as it is told.
#[derive(Clone, Debug, PartialEq)]
pub struct Whereabouts {
    /// The word for it.
    pub word: PlaceWord,
    /// Distance from the foot, in metres.
    pub distance_m: f64,
}

/// One thing the diagram shows.
#[derive(Clone, Debug, PartialEq)]
pub enum Told {
    /// The body: what it is called and which way it rises or lies from its foot.
    Body {
        /// What it is called.
        noun: String,
        /// Which way it goes from its foot.
        heading: Heading,
        /// True if it lies level.
        level: bool,
    },
    /// A support.
    Support {
        /// What it is called.
        noun: String,
        /// Where it is.
        at: Whereabouts,
    },
    /// A rope.
    Rope {
        /// What it is called.
        noun: String,
        /// Where it is tied.
        at: Whereabouts,
        /// Which way it runs from there.
        heading: Heading,
    },
    /// A load.
    Load {
        /// What it is.
        noun: String,
        /// Where it acts.
        at: Whereabouts,
        /// Which way it acts.
        heading: Heading,
    },
    /// A given number that is labelled on the scene.
    Given {
        /// Its name as shown.
        symbol: String,
        /// What it means.
        meaning: String,
        /// Its value as printed.
        written: String,
    },
    /// A force's arrow.
    Force {
        /// Its label.
        label: String,
        /// Where it acts.
        at: Whereabouts,
        /// Which way; `None` for a direction still to be found.
        heading: Option<Heading>,
    },
    /// The ring at the pivot.
    Pivot {
        /// Where it is.
        at: Whereabouts,
    },
    /// An arc between a force's line and the body.
    Angle {
        /// Its label.
        label: String,
        /// The name of the force.
        force: String,
    },
    /// A component across the body.
    Component {
        /// Its label.
        label: String,
        /// The name of the force.
        force: String,
        /// Where it acts.
        at: Whereabouts,
        /// True if it points to the upper side of the body.
        upper: bool,
    },
    /// A distance from the pivot.
    Distance {
        /// Its label.
        label: String,
        /// The name of the force.
        force: String,
    },
    /// The right triangle that a hint lights up.
    Triangle {
        /// The name of the force.
        force: String,
    },
}

/// Everything the diagram with these marks shows, from the body outwards.
pub fn tell(problem: &Problem, values: &[f64], marks: &Marks) -> Vec<Told> {
    let _ = (problem, values, marks);
    Vec::new()
}

/// The sentences for what is told, one each.
pub fn told_words(told: &[Told], words: &Words) -> Vec<Prose> {
    let _ = (told, words);
    Vec::new()
}
