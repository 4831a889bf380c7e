//! How a body can move when nothing holds it.

use crate::plane::Vector;
use crate::units::figures_text;
use std::fmt;

/// A small motion of one body that no support and no rope resists.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Motion {
    /// It turns about a point.
    Turn {
        /// Which body.
        body: usize,
        /// The point, in metres.
        about: Vector,
        /// The sense in which the loads turn it.
        anticlockwise: bool,
    },
    /// It slides.
    Slide {
        /// Which body.
        body: usize,
        /// Unit vector of the direction in which the loads push it.
        direction: Vector,
    },
}

/// A turn whose centre is farther away than this many lengths of the body is a slide.
const FAR: f64 = 1e9;

impl Motion {
    /// The motion of a body whose point `origin` moves by `shift` while it turns by `angle`;
    /// `None` if it rests. `length` is the length scale of the body.
    pub(super) fn of(
        body: usize,
        origin: Vector,
        shift: Vector,
        angle: f64,
        length: f64,
    ) -> Option<Motion> {
        let turned = angle.abs() * length;
        if turned.max(shift.size()) <= 1.0 / FAR {
            return None;
        }
        if turned * FAR <= shift.size() {
            let direction = shift * (1.0 / shift.size());
            return Some(Motion::Slide { body, direction });
        }
        // The point that rests: shift + angle × (about − origin) = 0.
        let about = origin + shift.quarter_turn() * (1.0 / angle);
        Some(Motion::Turn {
            body,
            about,
            anticlockwise: angle > 0.0,
        })
    }

    /// Which body moves.
    pub fn body(&self) -> usize {
        match self {
            Motion::Turn { body, .. } | Motion::Slide { body, .. } => *body,
        }
    }

    /// The motion of a body with this name: `the ladder from sliding to the right`.
    pub fn told(&self, name: &str) -> String {
        match self {
            Motion::Turn {
                about,
                anticlockwise,
                ..
            } => {
                let sense = if *anticlockwise {
                    "anticlockwise"
                } else {
                    "clockwise"
                };
                format!(
                    "{name} from turning {sense} about the point ({} m, {} m)",
                    place_text(about.x),
                    place_text(about.y)
                )
            }
            Motion::Slide { direction, .. } => {
                format!("{name} from sliding {}", way_text(*direction))
            }
        }
    }
}

impl fmt::Display for Motion {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let name = match self.body() {
            0 => "the body".to_owned(),
            later => format!("body {}", later + 1),
        };
        formatter.write_str(&self.told(&name))
    }
}

/// Which way: to a side, up or down, or at an angle between 0° and 360°.
fn way_text(direction: Vector) -> String {
    let near = |part: f64| part.abs() < 1e-9;
    match direction {
        Vector { x, y } if near(y) && x > 0.0 => "to the right".to_owned(),
        Vector { y, .. } if near(y) => "to the left".to_owned(),
        Vector { x, y } if near(x) && y > 0.0 => "upwards".to_owned(),
        Vector { x, .. } if near(x) => "downwards".to_owned(),
        _ => {
            let degrees = direction.angle().to_degrees();
            let turn = if degrees < 0.0 {
                degrees + 360.0
            } else {
                degrees
            };
            format!(
                "at {}° from the level line to the right, anticlockwise",
                place_text(turn)
            )
        }
    }
}

/// A coordinate to three figures, with rounding dust shown as 0.
pub(super) fn place_text(value: f64) -> String {
    if value.abs() < 1e-9 {
        "0".to_owned()
    } else {
        figures_text(value, 3)
    }
}
