//! The body and what is fixed to it.

use super::GivenId;
use crate::plane::Vector;
use crate::text::Symbol;
use std::f64::consts::{FRAC_PI_2, PI};

/// Left or right on the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// Towards negative x.
    Left,
    /// Towards positive x.
    Right,
}

impl Side {
    /// +1 to the right, −1 to the left.
    pub fn sign(self) -> f64 {
        match self {
            Side::Left => -1.0,
            Side::Right => 1.0,
        }
    }

    /// The other side.
    pub fn other(self) -> Side {
        match self {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
        }
    }
}

/// Up or down on the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Upright {
    /// Towards positive y.
    Up,
    /// Towards negative y.
    Down,
}

/// The line from which an angle is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reference {
    /// The horizontal.
    Horizontal,
    /// The vertical.
    Vertical,
}

/// How the body stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tilt {
    /// Level.
    Level,
    /// Rising from its foot at an angle with the horizontal or the vertical.
    Rising {
        /// The given angle, between 0 and a right angle.
        angle: GivenId,
        /// The line from which it is measured.
        from: Reference,
    },
}

/// A straight rigid body. Distances along it are measured from its foot.
#[derive(Clone, Debug, PartialEq)]
pub struct Body {
    /// What it is called: "beam", "mast".
    pub noun: String,
    /// Its length.
    pub length: GivenId,
    /// Its mass; `None` where its own weight does not count.
    pub mass: Option<GivenId>,
    /// The name of its own weight: `W_b`.
    pub weight_symbol: Symbol,
    /// Where its own weight acts: the middle, if it is uniform.
    pub centre: Place,
    /// How it stands.
    pub tilt: Tilt,
    /// The side to which its tip lies from its foot.
    pub towards: Side,
}

impl Body {
    /// Angle from the x axis, foot to tip, anticlockwise, in radians.
    pub fn angle(&self, values: &[f64]) -> f64 {
        let rise = match self.tilt {
            Tilt::Level => 0.0,
            Tilt::Rising {
                angle,
                from: Reference::Horizontal,
            } => values[angle.0],
            Tilt::Rising {
                angle,
                from: Reference::Vertical,
            } => FRAC_PI_2 - values[angle.0],
        };
        match self.towards {
            Side::Right => rise,
            Side::Left => PI - rise,
        }
    }
}

/// A place along the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Its lower or first end: distance 0.
    Foot,
    /// Half-way.
    Middle,
    /// Its other end.
    Tip,
    /// A whole fraction of the length from the foot, such as two thirds.
    Fraction {
        /// Numerator.
        over: u32,
        /// Denominator.
        under: u32,
    },
    /// At a given distance from the foot.
    At(GivenId),
}

impl Place {
    /// Distance from the foot along the body, in metres.
    pub fn distance(self, length: GivenId, values: &[f64]) -> f64 {
        match self {
            Place::Foot => 0.0,
            Place::Middle => values[length.0] / 2.0,
            Place::Tip => values[length.0],
            Place::Fraction { over, under } => {
                values[length.0] * f64::from(over) / f64::from(under)
            }
            Place::At(given) => values[given.0],
        }
    }
}

/// A direction in the plane.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Direction {
    /// Straight up.
    Up,
    /// Straight down.
    Down,
    /// Level, to a side.
    Level(Side),
    /// At a given angle with the horizontal or the vertical, up or down, to a side.
    Oblique {
        /// The given angle, between 0 and a right angle.
        angle: GivenId,
        /// The line from which it is measured.
        from: Reference,
        /// Upwards or downwards.
        upright: Upright,
        /// To which side.
        side: Side,
    },
    /// At a given angle with the body, measured at the force's place from the part of the body
    /// that leads back to the foot, on the upper side of the body.
    FromBody {
        /// The given angle, between 0 and 180°.
        angle: GivenId,
    },
}

impl Direction {
    /// Angle from the x axis, anticlockwise, in radians.
    pub fn angle(self, body: &Body, values: &[f64]) -> f64 {
        match self {
            Direction::Up => FRAC_PI_2,
            Direction::Down => -FRAC_PI_2,
            Direction::Level(Side::Right) => 0.0,
            Direction::Level(Side::Left) => PI,
            Direction::Oblique {
                angle,
                from,
                upright,
                side,
            } => {
                let slope = match from {
                    Reference::Horizontal => values[angle.0],
                    Reference::Vertical => FRAC_PI_2 - values[angle.0],
                };
                let slope = if upright == Upright::Up {
                    slope
                } else {
                    -slope
                };
                if side == Side::Right {
                    slope
                } else {
                    PI - slope
                }
            }
            Direction::FromBody { angle } => {
                let back = body.angle(values) + PI;
                // The upper side of the body lies anticlockwise of a body that points right.
                back - values[angle.0] * body.towards.sign()
            }
        }
    }

    /// Unit vector of this direction: exact where it is upright or level, so that a weight has
    /// no part to the side, not even 1e-16 of it.
    pub fn unit(self, body: &Body, values: &[f64]) -> Vector {
        match self {
            Direction::Up => Vector::new(0.0, 1.0),
            Direction::Down => Vector::new(0.0, -1.0),
            Direction::Level(side) => Vector::new(side.sign(), 0.0),
            Direction::Oblique { .. } | Direction::FromBody { .. } => {
                Vector::at_angle(self.angle(body, values))
            }
        }
    }

    /// True if it is straight up or down whatever the numbers.
    pub fn is_upright(self) -> bool {
        matches!(self, Direction::Up | Direction::Down)
    }
}

/// What a support can do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SupportKind {
    /// A hinge: a force in any direction, no couple.
    Hinge,
    /// A roller or a smooth contact: a push in one direction.
    Roller(Direction),
    /// A built-in end: a force in any direction and a couple.
    BuiltIn,
}

/// Something that holds the body.
#[derive(Clone, Debug, PartialEq)]
pub struct Support {
    /// The name of its force: `H`.
    pub symbol: Symbol,
    /// What it is called: "hinge".
    pub noun: String,
    /// Where it is.
    pub at: Place,
    /// What it can do.
    pub kind: SupportKind,
}

/// A rope: it only pulls.
#[derive(Clone, Debug, PartialEq)]
pub struct Rope {
    /// The name of its tension: `T`.
    pub symbol: Symbol,
    /// What it is called: "rope", "guy line".
    pub noun: String,
    /// Where it is tied to the body.
    pub at: Place,
    /// Which way it pulls at the body.
    pub direction: Direction,
}

/// How a load acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadKind {
    /// A hung or standing mass: its weight acts downwards.
    Mass(GivenId),
    /// A given force in a direction.
    Force {
        /// Its size, in newtons.
        size: GivenId,
        /// Which way it acts on the body.
        direction: Direction,
    },
}

/// What the body carries.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// The name of its force: `W_1`.
    pub symbol: Symbol,
    /// What it is: "lamp".
    pub noun: String,
    /// Where it acts.
    pub at: Place,
    /// How it acts.
    pub kind: LoadKind,
    /// True for a mass that stands on the body, false for one that hangs from it. Only the
    /// drawing and its telling differ.
    pub stands: bool,
}
