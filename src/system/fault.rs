//! What is wrong with a system's parts, as data that can be told.

use std::fmt;

/// Something wrong with a system's parts.
#[derive(Clone, Debug, PartialEq)]
pub enum Fault {
    /// A reference to a given, body, leg or action that is not there.
    NoSuch {
        /// What refers to it.
        what: String,
    },
    /// A given number that is not finite, or not positive where it must be.
    NotPositive {
        /// The given's name.
        symbol: String,
    },
    /// An angle outside its range.
    AngleOutOfRange {
        /// The given's name.
        symbol: String,
        /// Upper end of the range, in degrees; the lower is 0, both ends excluded.
        below_deg: f64,
    },
    /// A given of the wrong dimension for what it is used for.
    WrongDimension {
        /// The given's name.
        symbol: String,
        /// What it is used for.
        used_as: &'static str,
    },
    /// A place that lies beyond its leg.
    OffLeg {
        /// What is placed there.
        what: String,
        /// Its distance from the leg's beginning, in metres.
        distance_m: f64,
        /// The leg's length, in metres.
        length_m: f64,
    },
    /// A hold or a rope at a point that no part of its body reaches.
    Apart {
        /// The hold or the rope.
        what: String,
        /// The body.
        body: String,
        /// How far the point lies from the body, in metres.
        distance_m: f64,
    },
    /// A straight rope whose two ends do not lie on the line along which they pull.
    OffItsLine {
        /// The rope.
        what: String,
        /// How far apart the two lines lie along which its ends pull, in metres.
        distance_m: f64,
        /// True where it depends on what is sought: then this is the most of its range.
        varies: bool,
    },
    /// A body that starts at a spot of itself or of one that comes after it.
    StartsAtLater {
        /// The body.
        what: String,
    },
    /// Two points that must be apart fall together, so that a direction has no meaning.
    NoDirection {
        /// What points nowhere.
        what: String,
    },
    /// Limiting friction that does not act along its contact.
    FrictionNotSquare {
        /// The contact.
        what: String,
    },
    /// A load that is spread from a place to the same place.
    NoLength {
        /// The load.
        what: String,
    },
    /// A given that nothing uses.
    Unused {
        /// The given's name.
        symbol: String,
    },
    /// Two quantities of one name.
    NameTwice {
        /// The name.
        symbol: String,
    },
    /// A body on which nothing acts.
    Idle {
        /// The body.
        what: String,
    },
    /// A hold that joins a body to itself, or a rope without an end.
    Loose {
        /// What it is.
        what: String,
    },
    /// A hole that is as large as all that it is cut from.
    HoleTooLarge {
        /// The hole.
        what: String,
    },
    /// A hole that reaches beyond what it is cut from.
    HoleOutside {
        /// The hole.
        what: String,
    },
    /// A shape that lies on another of the same lamina, so that its area would count twice.
    Overlap {
        /// The shape.
        what: String,
    },
    /// A lamina of holes only.
    AllHoles {
        /// What it is the weight of.
        what: String,
    },
    /// A lamina whose masses leave nothing.
    NoMass {
        /// What it is the weight of.
        what: String,
    },
    /// A couple or a built-in end at a knot, which has no moments.
    TurnsKnot {
        /// What would turn it.
        what: String,
    },
    /// A force that acts beside a knot, where all forces meet.
    ApartAtKnot {
        /// The force.
        what: String,
    },
    /// At no value in the range of what is sought can it be drawn.
    NoValue {
        /// What is sought, with the value at the beginning of its range.
        at: String,
        /// What is wrong there.
        fault: Box<Fault>,
    },
    /// The range of what is sought is empty.
    EmptyRange,
    /// An acceleration of free fall that is not positive and finite.
    Gravity,
    /// Figures outside 2 to 6.
    Figures,
}

impl Fault {
    /// A short name that stays the same in every version, for machines.
    pub fn code(&self) -> &'static str {
        match self {
            Fault::NoSuch { .. } => "no-such-part",
            Fault::NotPositive { .. } => "not-positive",
            Fault::AngleOutOfRange { .. } => "angle-out-of-range",
            Fault::WrongDimension { .. } => "wrong-dimension",
            Fault::OffLeg { .. } => "off-body",
            Fault::Apart { .. } => "apart",
            Fault::OffItsLine { .. } => "off-its-line",
            Fault::StartsAtLater { .. } => "starts-at-later",
            Fault::NoDirection { .. } => "no-direction",
            Fault::FrictionNotSquare { .. } => "friction-not-square",
            Fault::NoLength { .. } => "no-length",
            Fault::Unused { .. } => "unused-number",
            Fault::NameTwice { .. } => "name-twice",
            Fault::Idle { .. } => "idle-body",
            Fault::Loose { .. } => "loose",
            Fault::HoleTooLarge { .. } => "hole-too-large",
            Fault::HoleOutside { .. } => "hole-outside",
            Fault::Overlap { .. } => "overlap",
            Fault::AllHoles { .. } => "all-holes",
            Fault::NoMass { .. } => "no-mass",
            Fault::TurnsKnot { .. } => "turns-knot",
            Fault::ApartAtKnot { .. } => "apart-at-knot",
            Fault::NoValue { .. } => "no-value",
            Fault::EmptyRange => "empty-range",
            Fault::Gravity => "gravity",
            Fault::Figures => "figures",
        }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::NoSuch { what } => {
                write!(formatter, "{what} refers to something that is not there")
            }
            Fault::NotPositive { symbol } => {
                write!(formatter, "{symbol} must be a positive number")
            }
            Fault::AngleOutOfRange { symbol, below_deg } => write!(
                formatter,
                "{symbol} must lie between 0° and {below_deg}°, both excluded"
            ),
            Fault::WrongDimension { symbol, used_as } => write!(
                formatter,
                "{symbol} is used as {used_as}, but its unit is of another kind"
            ),
            Fault::OffLeg {
                what,
                distance_m,
                length_m,
            } => write!(
                formatter,
                "{what} is placed {distance_m} m along a part that is only {length_m} m long"
            ),
            Fault::Apart {
                what,
                body,
                distance_m,
            } => write!(
                formatter,
                "{what} is placed {} m away from {body}, which has no part there; move it, or say \
                 where {body} starts",
                crate::units::figures_text(*distance_m, 3)
            ),
            Fault::OffItsLine {
                what,
                distance_m,
                varies,
            } => write!(
                formatter,
                "the two ends of {what} pull against each other, but their lines miss by {}{} m; move \
                 an end, or tell each direction as \"towards\" the other end",
                if *varies { "up to " } else { "" },
                crate::units::figures_text(*distance_m, 3)
            ),
            Fault::StartsAtLater { what } => write!(
                formatter,
                "{what} begins at a body that does not stand before it in the list"
            ),
            Fault::FrictionNotSquare { what } => write!(
                formatter,
                "the friction of {what} must act square to its push"
            ),
            Fault::NoDirection { what } => {
                write!(formatter, "{what} points at the place where it acts")
            }
            Fault::NoLength { what } => write!(
                formatter,
                "{what} is spread over no length: its two places are the same"
            ),
            Fault::Unused { symbol } => write!(formatter, "{symbol} is given but nothing uses it"),
            Fault::NameTwice { symbol } => {
                write!(formatter, "the name {symbol} is used for two things")
            }
            Fault::Idle { what } => write!(formatter, "nothing acts on {what}"),
            Fault::Loose { what } => write!(formatter, "{what} joins nothing"),
            Fault::HoleTooLarge { what } => {
                write!(formatter, "{what} takes away as much as there is, or more")
            }
            Fault::HoleOutside { what } => {
                write!(
                    formatter,
                    "{what} reaches beyond the shapes that it is cut from"
                )
            }
            Fault::Overlap { what } => {
                write!(
                    formatter,
                    "{what} overlaps a shape before it, so its area would count twice"
                )
            }
            Fault::AllHoles { what } => write!(formatter, "{what} has no shape but holes"),
            Fault::NoMass { what } => {
                write!(formatter, "the holes of {what} take away all of its mass")
            }
            Fault::TurnsKnot { what } => write!(
                formatter,
                "{what} turns a knot, which is a point and cannot be turned; give the body legs or \
                 leave \"knot\" out"
            ),
            Fault::ApartAtKnot { what } => write!(
                formatter,
                "{what} acts beside the knot; at a knot all forces act at one point"
            ),
            Fault::NoValue { at, fault } => write!(
                formatter,
                "no value of this range will do: at its beginning, {at}, {fault}"
            ),
            Fault::EmptyRange => write!(formatter, "the range of what is sought is empty"),
            Fault::Gravity => write!(formatter, "g must be a positive number of m/s²"),
            Fault::Figures => write!(formatter, "figures must lie between 2 and 6"),
        }
    }
}
