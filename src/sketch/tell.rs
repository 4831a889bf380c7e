//! The diagram told, for those who listen to the screen.

use super::frame::Frame;
use super::sheet::{Guise, Sheet};
use super::{Legs, Marks, Stage};
use crate::plane::Vector;
use crate::problem::{Direction, ForceId, Given, LoadKind, Place, Problem};
use crate::units::{Dimension, value_text};

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
    /// A fraction of the way from the foot to the tip.
    Part {
        /// Numerator.
        over: u32,
        /// Denominator.
        under: u32,
    },
    /// At a given distance from the foot.
    Between,
}

/// A place along the body as it is told.
#[derive(Clone, Debug, PartialEq)]
pub struct Whereabouts {
    /// The word for it.
    pub word: PlaceWord,
    /// Distance from the foot with its unit, as the problem writes its lengths.
    pub distance: String,
}

/// How a load is there.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LoadHow {
    /// A mass that hangs from the body.
    Hangs,
    /// A mass that stands on the body.
    Stands,
    /// A given force.
    Pushes,
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
        /// How it is there.
        how: LoadHow,
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
    /// The bent arrow of a couple.
    Couple {
        /// Its label.
        label: String,
        /// Where it is drawn, for one that acts there.
        at: Option<Whereabouts>,
        /// True if it turns anticlockwise; `None` for a sense still to be found.
        anticlockwise: Option<bool>,
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
        /// True if it points to the upper side of the body, false for the lower; `None` where
        /// the direction of its force is still to be found.
        upper: Option<bool>,
    },
    /// A distance from the pivot.
    Distance {
        /// Its label.
        label: String,
        /// The name of the force.
        force: String,
        /// True where no pivot is marked and it is measured from the foot.
        from_foot: bool,
    },
    /// The right triangle that a hint lights up.
    Triangle {
        /// The name of the force.
        force: String,
        /// True if its short sides are level and upright, not along and across the body.
        by_axes: bool,
    },
}

/// Everything the diagram with these marks shows, from the body outwards, and nothing else.
pub fn tell(problem: &Problem, values: &[f64], marks: &Marks) -> Vec<Told> {
    let frame = match marks.stage {
        Stage::Turning => Frame::lying(problem, values),
        _ => Frame::standing(problem, values),
    };
    let Some(frame) = frame else {
        return Vec::new();
    };
    let mut told = vec![Told::Body {
        noun: problem.body().noun.clone(),
        heading: heading(frame.along),
        level: frame.is_level(),
    }];
    if marks.stage == Stage::Scene {
        tell_site(&frame, marks, &mut told);
    } else {
        tell_forces(&frame, marks, &mut told);
        tell_parts(&frame, marks, &mut told);
    }
    if let Some(pivot) = marks.pivot {
        let at = whereabouts(&frame, pivot);
        told.push(Told::Pivot { at });
    }
    told
}

/// The forces of a sheet with these marks.
pub(super) fn of_sheet(sheet: &Sheet, marks: &Marks) -> Vec<Told> {
    let mut told = Vec::new();
    if let Some(frame) = Frame::of_sheet(sheet)
        && marks.stage != Stage::Scene
    {
        tell_forces(&frame, marks, &mut told);
    }
    told
}

fn tell_site(frame: &Frame, marks: &Marks, told: &mut Vec<Told>) {
    let problem = frame.problem;
    told.extend(problem.supports().iter().map(|support| Told::Support {
        noun: support.noun.clone(),
        at: whereabouts(frame, support.at),
    }));
    told.extend(problem.ropes().iter().map(|rope| Told::Rope {
        noun: rope.noun.clone(),
        at: whereabouts(frame, rope.at),
        heading: heading(Vector::at_angle(frame.angle(rope.direction))),
    }));
    told.extend(problem.loads().iter().map(|load| {
        let (direction, how) = match load.kind {
            LoadKind::Mass(_) if load.stands => (Direction::Down, LoadHow::Stands),
            LoadKind::Mass(_) => (Direction::Down, LoadHow::Hangs),
            LoadKind::Force { direction, .. } => (direction, LoadHow::Pushes),
        };
        Told::Load {
            noun: load.noun.clone(),
            at: whereabouts(frame, load.at),
            heading: heading(Vector::at_angle(frame.angle(direction))),
            how,
        }
    }));
    if marks.givens {
        told.extend(problem.givens().iter().map(given_told));
    }
}

fn given_told(given: &Given) -> Told {
    Told::Given {
        symbol: given.symbol.shown(),
        meaning: given.meaning.clone(),
        written: given.written.clone(),
    }
}

fn tell_forces(frame: &Frame, marks: &Marks, told: &mut Vec<Told>) {
    for mark in &marks.forces {
        // A force may be drawn by its component alone, once that is found.
        let parted = marks.is_replaced(mark.force);
        let Some(place) = frame.place_of(mark.force).filter(|_| !parted) else {
            continue;
        };
        if let Some(Guise::Couple(given)) = frame.guise(mark.force) {
            let found = mark.direction.map(libm::sin).or(*given);
            told.push(Told::Couple {
                label: mark.label.clone(),
                at: (given.is_none()).then(|| whereabouts(frame, place)),
                anticlockwise: found.map(|turns| turns > 0.0),
            });
            continue;
        }
        let direction = frame.marked(mark.force, &marks.forces);
        told.push(Told::Force {
            label: mark.label.clone(),
            at: whereabouts(frame, place),
            heading: direction.and_then(|(_, direction)| direction).map(heading),
        });
    }
}

fn tell_parts(frame: &Frame, marks: &Marks, told: &mut Vec<Told>) {
    if marks.given_angles && marks.stage == Stage::Angles {
        let givens = frame.problem.givens().iter();
        let angles = givens.filter(|given| given.dimension == Dimension::ANGLE);
        told.extend(angles.map(given_told));
    }
    let angles = matches!(marks.stage, Stage::Angles | Stage::Components);
    for mark in marks.angles.iter().filter(|_| angles) {
        told.push(Told::Angle {
            label: mark.label.clone(),
            force: name(frame, marks, mark.force),
        });
    }
    let components = matches!(marks.stage, Stage::Components | Stage::Turning);
    for mark in marks.components.iter().filter(|_| components) {
        let Some(place) = frame.place_of(mark.force) else {
            continue;
        };
        let direction = frame
            .marked(mark.force, &marks.forces)
            .and_then(|(_, direction)| direction);
        told.push(Told::Component {
            label: mark.label.clone(),
            force: name(frame, marks, mark.force),
            at: whereabouts(frame, place),
            upper: direction.map(|direction| direction.dot(frame.upper) > 0.0),
        });
    }
    told.extend(marks.distances.iter().map(|mark| Told::Distance {
        label: mark.label.clone(),
        force: name(frame, marks, mark.force),
        from_foot: marks.pivot.is_none(),
    }));
    if let Some(lit) = &marks.triangle {
        let force = name(frame, marks, lit.force);
        told.push(Told::Triangle {
            force,
            by_axes: lit.legs == Legs::Axes,
        });
    }
}

/// What a force is called: by the problem, since its label may carry a value.
fn name(frame: &Frame, marks: &Marks, id: ForceId) -> String {
    match frame.problem.force(id) {
        Some(force) => force.symbol.shown(),
        None => (marks.forces.iter())
            .find(|mark| mark.force == id)
            .map(|mark| mark.label.clone())
            .unwrap_or_default(),
    }
}

fn whereabouts(frame: &Frame, place: Place) -> Whereabouts {
    let word = match place {
        Place::Foot => PlaceWord::Foot,
        Place::Middle => PlaceWord::Middle,
        Place::Tip => PlaceWord::Tip,
        Place::Fraction { over, under } => PlaceWord::Part { over, under },
        Place::At(_) => PlaceWord::Between,
    };
    let metres = frame.distance(place);
    let printed = match place {
        Place::At(given) => given.0 < frame.problem.givens().len(),
        _ => true,
    };
    Whereabouts {
        word,
        distance: match printed {
            true => frame.problem.length_text(metres),
            // What is worked out is told like any result.
            false => value_text(metres, Dimension::LENGTH, frame.problem.figures()),
        },
    }
}

/// The heading of a direction: straight only where it is straight, else between two.
fn heading(direction: Vector) -> Heading {
    let straight = 0.01;
    match (direction.x, direction.y) {
        (x, y) if x.abs() < straight && y > 0.0 => Heading::Up,
        (x, _) if x.abs() < straight => Heading::Down,
        (x, y) if y.abs() < straight && x > 0.0 => Heading::Right,
        (_, y) if y.abs() < straight => Heading::Left,
        (x, y) if x > 0.0 && y > 0.0 => Heading::UpRight,
        (x, _) if x > 0.0 => Heading::DownRight,
        (_, y) if y > 0.0 => Heading::UpLeft,
        _ => Heading::DownLeft,
    }
}
