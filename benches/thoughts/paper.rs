//! A problem as it stands on paper, read by somebody with a pencil: masses, distances, directions.
//!
//! Nothing here comes from a key. Angles are in degrees, as they are printed.

use leverwright::key::{Key, StepId};
use leverwright::problem::{
    Direction, ForceId, GivenId, LoadKind, Place, Problem, Reference, Side, Tilt, Upright,
};

/// A weight on the body.
#[derive(Clone, Debug)]
pub(super) struct Weighed {
    pub(super) force: ForceId,
    pub(super) mass: f64,
    /// Metres from the hinge.
    pub(super) at: f64,
}

/// The rope.
#[derive(Clone, Debug)]
pub(super) struct Tied {
    pub(super) force: ForceId,
    pub(super) at: f64,
    /// Between rope and body, at most 90°.
    pub(super) with_body: f64,
    /// Above the horizontal, at most 90°.
    pub(super) slope: f64,
    /// +1 where it pulls to the right, −1 to the left.
    pub(super) side: f64,
    /// The angle printed with it.
    pub(super) printed: Option<f64>,
}

/// A straight uniform body on a hinge at its foot, held by one rope.
#[derive(Clone, Debug)]
pub(super) struct Paper {
    pub(super) g: f64,
    pub(super) length: f64,
    pub(super) weights: Vec<Weighed>,
    /// Between a weight and the body; 90° for a level body.
    pub(super) weight_angle: f64,
    pub(super) rope: Tied,
    names: Vec<(StepId, String)>,
}

fn degrees(problem: &Problem, id: GivenId) -> f64 {
    // What is printed has no digits behind it.
    let turned = problem.given(id).value.to_degrees();
    (turned * 1e6).round() / 1e6
}

/// An angle between two lines.
fn between(one: f64, other: f64) -> f64 {
    let apart = (one - other).rem_euclid(180.0);
    apart.min(180.0 - apart)
}

impl Paper {
    /// Reads a problem; `None` for one with forces other than weights.
    pub(super) fn read(problem: &Problem, key: &Key) -> Option<Paper> {
        let number = |id: GivenId| problem.given(id).value;
        let length = number(problem.body().length);
        let place = |place: Place| match place {
            Place::Foot => 0.0,
            Place::Middle => length / 2.0,
            Place::Tip => length,
            Place::Fraction { over, under } => length * f64::from(over) / f64::from(under),
            Place::At(id) => number(id),
        };
        let rise = match problem.body().tilt {
            Tilt::Level => 0.0,
            Tilt::Rising {
                angle,
                from: Reference::Horizontal,
            } => degrees(problem, angle),
            Tilt::Rising { angle, .. } => 90.0 - degrees(problem, angle),
        };
        let mut weights = vec![Weighed {
            force: ForceId::OwnWeight,
            mass: number(problem.body().mass?),
            at: length / 2.0,
        }];
        for (index, load) in problem.loads().iter().enumerate() {
            let LoadKind::Mass(mass) = load.kind else {
                return None;
            };
            weights.push(Weighed {
                force: ForceId::Load(index),
                mass: number(mass),
                at: place(load.at),
            });
        }
        let names = key.steps.iter();
        let names = names.map(|step| (step.id, step.symbol.typed())).collect();
        Some(Paper {
            g: problem.gravity(),
            length,
            weights,
            weight_angle: 90.0 - rise,
            rope: rope(problem, rise, place)?,
            names,
        })
    }

    /// True if the body leans, so that weights have components.
    pub(super) fn leans(&self) -> bool {
        self.weight_angle < 90.0
    }

    /// The name of a step's quantity; `None` where nobody asks for it.
    pub(super) fn name(&self, step: StepId) -> Option<&str> {
        let found = self.names.iter().find(|(id, _)| *id == step);
        found.map(|(_, name)| name.as_str())
    }
}

fn rope(problem: &Problem, rise: f64, place: impl Fn(Place) -> f64) -> Option<Tied> {
    let [rope] = problem.ropes() else { return None };
    let body = match problem.body().towards {
        Side::Right => rise,
        Side::Left => 180.0 - rise,
    };
    let (line, printed) = match rope.direction {
        Direction::Up => (90.0, None),
        Direction::Down => return None,
        Direction::Level(Side::Right) => (0.0, None),
        Direction::Level(Side::Left) => (180.0, None),
        Direction::Oblique {
            angle,
            from,
            upright,
            side,
        } => {
            let printed = degrees(problem, angle);
            let slope = match from {
                Reference::Horizontal => printed,
                Reference::Vertical => 90.0 - printed,
            };
            if upright == Upright::Down {
                return None;
            }
            let line = match side {
                Side::Right => slope,
                Side::Left => 180.0 - slope,
            };
            (line, Some(printed))
        }
        Direction::FromBody { angle } => {
            let printed = degrees(problem, angle);
            let turn = match problem.body().towards {
                Side::Right => -printed,
                Side::Left => printed,
            };
            (body + 180.0 + turn, Some(printed))
        }
    };
    let line = line.rem_euclid(360.0);
    Some(Tied {
        force: ForceId::Rope(0),
        at: place(rope.at),
        with_body: between(line, body),
        slope: between(line, 0.0),
        side: if (90.0..270.0).contains(&line) {
            -1.0
        } else {
            1.0
        },
        printed,
    })
    .filter(|_| line <= 180.0)
}
