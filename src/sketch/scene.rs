//! Strokes and labels, in metres from the model.

use super::frame::Frame;
use super::sheet::Sheet;
use super::{Ink, Marks, Stage, acting, lever, site, triangle};
use crate::plane::Vector;
use crate::problem::Problem;

/// A spot of a drawing: a point of the model, and a shift for what has no length in the model.
///
/// Arrows and strings need a length on the page, not in metres; they are told in steps. A drawing
/// chooses how long a step is: a picture of cells takes about one row. What must stand whole rows
/// of text apart, such as stacked dimension lines, is told in rows.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Spot {
    /// The point, in metres, with the foot of the body at the origin.
    pub at: Vector,
    /// The shift from there, in steps, x right and y up.
    pub shift: Vector,
    /// A further shift, in rows of text, x right and y up.
    pub rows: Vector,
}

impl Spot {
    /// A point of the model.
    pub fn at(at: Vector) -> Spot {
        Spot {
            at,
            ..Spot::default()
        }
    }

    /// This spot moved by so many steps.
    #[must_use]
    pub fn moved(self, steps: Vector) -> Spot {
        Spot {
            shift: self.shift + steps,
            ..self
        }
    }

    /// This spot moved by so many rows of text.
    #[must_use]
    pub fn moved_rows(self, rows: Vector) -> Spot {
        Spot {
            rows: self.rows + rows,
            ..self
        }
    }
}

/// How a line is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Line {
    /// Unbroken.
    Solid,
    /// Broken.
    Dashed,
    /// Heavy, for the body.
    Heavy,
}

/// The form of a stroke.
#[derive(Clone, Debug, PartialEq)]
pub enum Shape {
    /// A straight line.
    Line {
        /// One end.
        from: Spot,
        /// The other end.
        to: Spot,
        /// How it is drawn.
        line: Line,
    },
    /// An arrow; where its tail stands aside of the point at which it acts, a bent line joins
    /// them.
    Arrow {
        /// The point at which it acts, by its tail or by its head.
        acts: Spot,
        /// Its tail.
        from: Spot,
        /// Its head.
        to: Spot,
        /// How its shaft is drawn.
        line: Line,
    },
    /// An arc of a circle.
    Arc {
        /// Its centre.
        centre: Spot,
        /// Its radius, in steps.
        radius: f64,
        /// Where it begins, anticlockwise from the x axis, in radians.
        from: f64,
        /// How far it goes, in radians, anticlockwise positive.
        sweep: f64,
    },
    /// A dimension line with an end mark at each end.
    Dimension {
        /// One end.
        from: Spot,
        /// The other end.
        to: Spot,
    },
    /// A right-angle mark: the corner, and the two unit directions of its legs.
    RightAngle {
        /// The corner.
        corner: Spot,
        /// One leg.
        along: Vector,
        /// The other leg.
        across: Vector,
    },
    /// A load spread along the body: a row of arrows between two lines.
    Spread {
        /// Where it begins on the body.
        from: Spot,
        /// Where it ends on the body.
        to: Spot,
        /// Which way its first arrow stands off the body, 1 where the load is largest.
        first: Vector,
        /// Which way its last arrow stands off the body.
        last: Vector,
    },
    /// The bent arrow of a couple.
    Turn {
        /// Its centre.
        centre: Spot,
        /// The direction of its middle from there, anticlockwise from the x axis, in radians.
        middle: f64,
        /// Which way it turns.
        anticlockwise: bool,
    },
    /// A hinge, a ring.
    Hinge(Spot),
    /// The stand under a hinge.
    Stand(Spot),
    /// A roller, a wheel.
    Wheel(Spot),
    /// A point at which something is tied.
    Knot(Spot),
    /// The ring of the pivot.
    Ring(Spot),
    /// A hung box, by the middle of its upper side.
    Box(Spot),
    /// A standing box.
    Standing {
        /// The middle of its lower side.
        at: Spot,
        /// True where a rope runs just above, so that it must be low.
        low: bool,
    },
    /// The face of a ground, wall or ceiling.
    Face {
        /// Its middle.
        at: Spot,
        /// Which way it looks, towards the body: anticlockwise from the x axis, in radians.
        looks: f64,
        /// Half its width, in steps.
        half: f64,
    },
}

/// One stroke.
#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    /// What it shows.
    pub ink: Ink,
    /// Its form.
    pub shape: Shape,
}

/// A text to be placed.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// What it names.
    pub ink: Ink,
    /// The text.
    pub text: String,
    /// The spots it may stand at, the best first.
    pub anchors: Vec<Spot>,
    /// The direction from the anchor in which it had best stand, as a unit vector; zero where
    /// any will do.
    pub lean: Vector,
    /// The ends of the dimension line that it may stand on, interrupting it.
    pub on: Option<(Spot, Spot)>,
    /// The angle that it names, if it names one.
    pub angle: Option<Sector>,
}

/// The sector of a circle that shows an angle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sector {
    /// Its centre.
    pub centre: Spot,
    /// The radius of its arc, in steps.
    pub radius: f64,
    /// Where it begins, anticlockwise from the x axis, in radians.
    pub from: f64,
    /// How far it goes, in radians, anticlockwise positive.
    pub sweep: f64,
}

/// A drawing in the model's own measures.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Scene {
    /// The strokes, what is to stay visible last.
    pub strokes: Vec<Stroke>,
    /// The labels, the most needed first.
    pub labels: Vec<Label>,
}

/// The drawing of a problem at these values with these marks, and nothing beyond the marks.
///
/// `values` are the givens in SI, in the order of [`Problem::givens`]; where they are too few,
/// the scene is empty.
pub fn scene(problem: &Problem, values: &[f64], marks: &Marks) -> Scene {
    let standing = Frame::standing(problem, values);
    let lit = (marks.triangle.as_ref())
        .zip(standing.as_ref())
        .and_then(|(mark, frame)| {
            let sides = triangle::sides(frame, mark, marks)?;
            Some((mark, sides))
        });
    let frame = match marks.stage {
        Stage::Turning if lit.is_none() => Frame::lying(problem, values),
        _ => standing,
    };
    let Some(mut frame) = frame else {
        return Scene::default();
    };
    match marks.stage {
        _ if let Some((mark, sides)) = lit => triangle::draw(&mut frame, mark, marks, sides),
        Stage::Scene => site::draw(&mut frame, marks),
        Stage::Forces | Stage::Angles | Stage::Components => acting::draw(&mut frame, marks),
        Stage::Turning => lever::draw(&mut frame, marks),
    }
    finished(frame)
}

/// The drawing of a sheet with these marks, and nothing beyond them.
pub(super) fn of_sheet(sheet: &Sheet, marks: &Marks) -> Scene {
    let Some(mut frame) = Frame::of_sheet(sheet) else {
        return Scene::default();
    };
    match marks.stage {
        Stage::Scene => site::draw(&mut frame, marks),
        _ => acting::draw(&mut frame, marks),
    }
    finished(frame)
}

fn finished(frame: Frame) -> Scene {
    let mut scene = frame.scene;
    scene.strokes.sort_by_key(|stroke| stroke.shape.rank());
    scene
}

impl Scene {
    /// The same without slanted dimension lines, which cross ropes and arcs where a small grid
    /// cannot keep them apart. Their labels go with them: a length without its line reads as the
    /// name of a point, or as the length of whatever is near.
    pub(super) fn unslanted(&self) -> Scene {
        let slanted = |from: &Spot, to: &Spot| (from.at.y - to.at.y).abs() > 1e-6;
        let mut scene = self.clone();
        scene.strokes.retain(|stroke| match &stroke.shape {
            Shape::Dimension { from, to } => !slanted(from, to),
            _ => true,
        });
        let measures = |label: &Label| label.on.is_some_and(|(from, to)| slanted(&from, &to));
        scene.labels.retain(|label| !measures(label));
        scene
    }

    /// The same without any dimension line, for a grid that has no room for them.
    pub(super) fn unmeasured(&self) -> Scene {
        let mut scene = self.clone();
        let line = |stroke: &Stroke| !matches!(stroke.shape, Shape::Dimension { .. });
        scene.strokes.retain(line);
        scene.labels.retain(|label| label.on.is_none());
        scene
    }

    /// True if a label of this text and kind is to be placed.
    pub(super) fn names(&self, label: &Label) -> bool {
        let same = |known: &Label| known.ink == label.ink && known.text == label.text;
        self.labels.iter().any(same)
    }

    /// The slanted dimension lines.
    pub(super) fn slanted(&self) -> impl Iterator<Item = (Spot, Spot)> + '_ {
        self.strokes.iter().filter_map(|stroke| match stroke.shape {
            Shape::Dimension { from, to } if (from.at.y - to.at.y).abs() > 1e-6 => Some((from, to)),
            _ => None,
        })
    }
}

impl Shape {
    /// What is drawn over what.
    fn rank(&self) -> u8 {
        match self {
            Shape::Line {
                line: Line::Dashed, ..
            } => 0,
            Shape::Dimension { .. } => 1,
            Shape::Face { .. } => 2,
            Shape::Arc { .. } | Shape::RightAngle { .. } => 3,
            Shape::Line {
                line: Line::Solid, ..
            } => 4,
            Shape::Spread { .. } => 4,
            Shape::Line {
                line: Line::Heavy, ..
            } => 5,
            Shape::Arrow { .. } | Shape::Turn { .. } => 6,
            Shape::Stand(_) | Shape::Wheel(_) | Shape::Box(_) | Shape::Standing { .. } => 7,
            Shape::Knot(_) => 8,
            Shape::Hinge(_) => 9,
            Shape::Ring(_) => 10,
        }
    }
}
