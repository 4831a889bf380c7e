//! Flat shapes of which a body may be cut: their areas, their centroids, what lies within them.

use super::Coordinate;
use crate::plane::Vector;
use crate::problem::{GivenId, Place};
use std::f64::consts::{PI, TAU};

/// A named shape, told in its own axes: x to the right, y the way in which it points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Shape {
    /// Its corner at the origin, `width` along x and `height` along y.
    Rectangle {
        /// Along x.
        width: GivenId,
        /// Along y.
        height: GivenId,
    },
    /// Its base along x from the origin, its apex above a place of the base.
    Triangle {
        /// The base.
        width: GivenId,
        /// The height of the apex above the base.
        height: GivenId,
        /// The place of the base below the apex: at its foot or tip there is a right angle.
        apex: Place,
    },
    /// Its centre at the origin.
    Disc {
        /// The radius.
        radius: GivenId,
    },
    /// The middle of its straight side at the origin, that side along x.
    Semicircle {
        /// The radius.
        radius: GivenId,
    },
    /// Its corner at the origin, its straight sides along x and y.
    QuarterCircle {
        /// The radius.
        radius: GivenId,
    },
}

/// Which way a shape points.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Facing {
    /// As told: its own y is the body's.
    #[default]
    Up,
    /// Turned a quarter anticlockwise about its own origin.
    Left,
    /// Turned half round.
    Down,
    /// Turned a quarter clockwise.
    Right,
}

impl Facing {
    /// Quarter turns anticlockwise.
    pub fn quarters(self) -> usize {
        match self {
            Facing::Up => 0,
            Facing::Left => 1,
            Facing::Down => 2,
            Facing::Right => 3,
        }
    }
}

/// A shape of a lamina, or a hole in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// What it is called.
    pub noun: String,
    /// The shape.
    pub shape: Shape,
    /// Where its own origin lies along the body's first leg.
    pub x: Coordinate,
    /// Where its own origin lies to the left of the body's first leg.
    pub y: Coordinate,
    /// Which way it points.
    pub points: Facing,
    /// True if it is taken away.
    pub hole: bool,
    /// Its own mass, where each piece has one.
    pub mass: Option<GivenId>,
}

/// Corners of the polygon that stands for a full circle.
const CORNERS: usize = 240;
/// Lines of the grid of places inside a shape.
const GRID: usize = 14;

impl Piece {
    /// Its area, in m².
    pub fn area(&self, values: &[f64]) -> f64 {
        let square = |radius: GivenId| values[radius.0] * values[radius.0];
        match self.shape {
            Shape::Rectangle { width, height } => values[width.0] * values[height.0],
            Shape::Triangle { width, height, .. } => 0.5 * values[width.0] * values[height.0],
            Shape::Disc { radius } => PI * square(radius),
            Shape::Semicircle { radius } => 0.5 * PI * square(radius),
            Shape::QuarterCircle { radius } => 0.25 * PI * square(radius),
        }
    }

    /// Its centroid in the body's axes, in metres. Meriam and Kraige, Engineering Mechanics:
    /// Statics, table D/3 (from memory).
    pub fn centroid(&self, values: &[f64]) -> Vector {
        let arc = |radius: GivenId| 4.0 * values[radius.0] / (3.0 * PI);
        let own = match self.shape {
            Shape::Rectangle { width, height } => {
                Vector::new(0.5 * values[width.0], 0.5 * values[height.0])
            }
            Shape::Triangle {
                width,
                height,
                apex,
            } => Vector::new(
                (values[width.0] + apex.distance(width, values)) / 3.0,
                values[height.0] / 3.0,
            ),
            Shape::Disc { .. } => Vector::default(),
            Shape::Semicircle { radius } => Vector::new(0.0, arc(radius)),
            Shape::QuarterCircle { radius } => Vector::new(arc(radius), arc(radius)),
        };
        self.placed(own, values)
    }

    /// A point of its own axes in the body's.
    fn placed(&self, own: Vector, values: &[f64]) -> Vector {
        let turned = (0..self.points.quarters()).fold(own, |point, _| point.quarter_turn());
        Vector::new(self.x.value(values), self.y.value(values)) + turned
    }

    /// Corners of its outline, anticlockwise; an arc as a fine polygon within it. All shapes are
    /// convex.
    pub(super) fn outline(&self, values: &[f64]) -> Vec<Vector> {
        let arc = |radius: GivenId, share: f64| -> Vec<Vector> {
            let count = (CORNERS as f64 * share) as usize;
            let turn = |index: usize| TAU * share * index as f64 / count as f64;
            let radius = values[radius.0];
            (0..=count)
                .map(|index| Vector::at_angle(turn(index)) * radius)
                .collect()
        };
        let own = match self.shape {
            Shape::Rectangle { width, height } => {
                let (width, height) = (values[width.0], values[height.0]);
                vec![
                    Vector::default(),
                    Vector::new(width, 0.0),
                    Vector::new(width, height),
                    Vector::new(0.0, height),
                ]
            }
            Shape::Triangle {
                width,
                height,
                apex,
            } => vec![
                Vector::default(),
                Vector::new(values[width.0], 0.0),
                Vector::new(apex.distance(width, values), values[height.0]),
            ],
            Shape::Disc { radius } => {
                let mut round = arc(radius, 1.0);
                round.pop();
                round
            }
            Shape::Semicircle { radius } => arc(radius, 0.5),
            Shape::QuarterCircle { radius } => {
                let mut corner = vec![Vector::default()];
                corner.extend(arc(radius, 0.25));
                corner
            }
        };
        own.into_iter()
            .map(|point| self.placed(point, values))
            .collect()
    }

    /// Points of its outline and of its inside, a hair within it.
    pub(super) fn samples(&self, values: &[f64]) -> Vec<Vector> {
        let outline = self.outline(values);
        let centre = self.centroid(values);
        let at = |share: f64| -> Vec<Vector> {
            outline
                .iter()
                .map(|corner| centre + (*corner - centre) * share)
                .collect()
        };
        let within = (0..GRID).map(|ring| ring as f64 / GRID as f64);
        within.chain([1.0 - 1e-9]).flat_map(at).collect()
    }

    /// True if a point lies in it or on its edge.
    pub(super) fn holds(&self, point: Vector, values: &[f64]) -> bool {
        let outline = self.outline(values);
        let size = libm::sqrt(self.area(values));
        if let Shape::Disc { radius }
        | Shape::Semicircle { radius }
        | Shape::QuarterCircle { radius } = self.shape
        {
            // The polygon lies within the arc, so the arc itself is asked.
            let middle = self.placed(Vector::default(), values);
            let from = point - middle;
            let straight = match self.shape {
                Shape::Semicircle { .. } => vec![outline[outline.len() - 1], outline[0]],
                Shape::QuarterCircle { .. } => {
                    vec![outline[outline.len() - 1], outline[0], outline[1]]
                }
                _ => Vec::new(),
            };
            return from.size() <= values[radius.0] + 1e-9 * size
                && straight.windows(2).all(|side| left_of(side, point, size));
        }
        let corners = outline.len();
        (0..corners).all(|at| left_of(&[outline[at], outline[(at + 1) % corners]], point, size))
    }

    /// True if two shapes overlap by more than a hair: convex shapes are apart where a line along
    /// a side of one of them separates them.
    pub(super) fn overlaps(&self, other: &Piece, values: &[f64]) -> bool {
        let (one, two) = (self.outline(values), other.outline(values));
        let hair = 1e-7 * libm::sqrt(self.area(values).min(other.area(values)));
        let separated = |sides: &[Vector], others: &[Vector]| {
            (0..sides.len()).any(|at| {
                let from = sides[at];
                let along = sides[(at + 1) % sides.len()] - from;
                let normal = along.quarter_turn() * (1.0 / along.size());
                others
                    .iter()
                    .all(|point| (*point - from).dot(normal) <= hair)
            })
        };
        !separated(&one, &two) && !separated(&two, &one)
    }
}

/// True if a point is not to the right of a side, give or take a hair.
fn left_of(side: &[Vector], point: Vector, size: f64) -> bool {
    let along = side[1] - side[0];
    let normal = along.quarter_turn() * (1.0 / along.size());
    (point - side[0]).dot(normal) >= -1e-9 * size
}
