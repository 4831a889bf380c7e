//! The forces of a problem as sentences speak of them: by name or by what exerts them, and which
//! way each acts on which body, by the right values and by those that follow from her own.

use super::Session;
use crate::judge::Board;
use crate::key::{Axis, General, Part, StepId};
use crate::problem::{Acting, ForceId};

/// Which way a force acts: its parts to the right and upwards.
pub(super) type Way = (f64, f64);

/// One force as it acts on one body.
pub(super) struct OnBody {
    /// The body's noun.
    pub(super) body: String,
    /// Every way that it may act there: by the right values, and by hers.
    pub(super) ways: Vec<Way>,
}

/// A force that a sentence may speak of.
pub(super) struct Exerted {
    pub(super) symbol: String,
    /// What it is called by as printed: several forces of one contact share it.
    pub(super) act: String,
    /// What exerts it; empty for a part of a force.
    pub(super) noun: String,
    pub(super) kind: &'static str,
    /// The step that is its direction.
    pub(super) direction: Option<StepId>,
    /// True for a rope.
    pub(super) only_pulls: bool,
    pub(super) on: Vec<OnBody>,
}

/// What has a way of its own.
const PLAIN: [&str; 7] = [
    "weight",
    "pull",
    "push",
    "line",
    "friction",
    "reaction-x",
    "reaction-y",
];

impl Session {
    /// Every force of the problem whose way is known.
    pub(super) fn exerted(&self) -> Vec<Exerted> {
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        match self.key.general.as_ref() {
            Some(general) => self.exerted_in(general, &board),
            None => self.exerted_on_the_body(&board),
        }
    }

    /// The ways of a force of which a wrong direction of hers stands: those that its parts give it,
    /// those of her angle, which may be the one with either end of the horizontal, and the line in
    /// which she told it.
    pub(super) fn ways_beside_direction(
        &self,
        size: StepId,
    ) -> Option<(Vec<Way>, Vec<Way>, usize)> {
        let (direction, [level, upright]) = match (size, self.key.general.as_ref()) {
            (StepId::Reaction(support, Part::Size), _) => {
                let part = |part| StepId::Reaction(support, part);
                let along = |axis| part(Part::Along(axis));
                let parts = [along(Axis::Horizontal), along(Axis::Vertical)];
                (part(Part::Direction), parts)
            }
            (size, Some(general)) => {
                let of = *general.parts.get(&size)?;
                let mut all = general.parts.iter();
                let found = all.find(|(id, parts)| id.is_direction() && **parts == of);
                (*found?.0, of)
            }
            _ => return None,
        };
        let own = self.state.standing.get(&direction);
        let own = own.filter(|own| !own.right)?;
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let by_parts = together(&sizes(&board, level)?, &sizes(&board, upright)?);
        let (x, y) = (libm::cos(own.value), libm::sin(own.value));
        let hers = [(x, y), (-x, y), (-x, -y), (x, -y)];
        Some((by_parts, hers.to_vec(), own.line))
    }

    fn exerted_in(&self, general: &General, board: &Board<'_>) -> Vec<Exerted> {
        let steps = self.key.steps.iter().filter_map(|step| {
            let heading = self.key.heading(step.id)?;
            let kind = heading.kind;
            let parts = general.parts.get(&step.id).filter(|_| kind == "size");
            let on = match (parts, general.ends.get(&step.id)) {
                (Some(parts), _) => on_bodies(general, step.id, &of_parts(general, board, *parts)?),
                (None, Some(ends)) if PLAIN.contains(&kind) => {
                    let on = ends.iter().map(|(body, way)| OnBody {
                        body: body.clone(),
                        ways: vec![(way.x, way.y)],
                    });
                    on.collect()
                }
                (None, None) if PLAIN.contains(&kind) => {
                    on_bodies(general, step.id, &of_one(general, board, step.id, kind)?)
                }
                _ => return None,
            };
            let is_part = kind.starts_with("reaction");
            let mut all = general.parts.iter();
            let direction =
                all.find(|(id, of)| id.is_direction() && parts.is_some_and(|parts| parts == *of));
            Some(Exerted {
                symbol: step.symbol.shown(),
                act: heading.force.clone(),
                noun: if is_part {
                    String::new()
                } else {
                    heading.noun.to_lowercase()
                },
                kind,
                direction: direction.map(|(id, _)| *id),
                only_pulls: general.ends.contains_key(&step.id),
                on,
            })
        });
        steps.collect()
    }

    /// The forces of a lesson's problem, which has one body.
    fn exerted_on_the_body(&self, board: &Board<'_>) -> Vec<Exerted> {
        let values = self.problem.values();
        let body = self.problem.body();
        let forces = self.problem.forces();
        let known = forces.iter().filter_map(|force| {
            let (ways, direction) = match force.acting {
                Acting::Along(direction) => {
                    let unit = direction.unit(body, &values);
                    (vec![(unit.x, unit.y)], None)
                }
                Acting::Anywhere => {
                    let part = |part| StepId::Reaction(force.id, part);
                    let along = |axis| part(Part::Along(axis));
                    let direction = part(Part::Direction);
                    let own = self.state.standing.get(&direction);
                    if own.is_some_and(|own| !own.right) {
                        return None;
                    }
                    let level = sizes(board, along(Axis::Horizontal))?;
                    let upright = sizes(board, along(Axis::Vertical))?;
                    (together(&level, &upright), Some(direction))
                }
            };
            let kind = match force.id {
                ForceId::OwnWeight | ForceId::Load(_) => "weight",
                ForceId::Rope(_) => "pull",
                ForceId::Support(_) => "push",
            };
            Some(Exerted {
                symbol: force.symbol.shown(),
                act: force.symbol.shown(),
                noun: force.noun.to_lowercase(),
                kind,
                direction: direction.filter(|id| self.key.step(*id).is_some()),
                only_pulls: matches!(force.id, ForceId::Rope(_)),
                on: vec![OnBody {
                    body: body.noun.clone(),
                    ways,
                }],
            })
        });
        known.collect()
    }
}

/// How a force acts on each of its bodies: what acts between two acts the other way on the second.
fn on_bodies(general: &General, step: StepId, ways: &[Way]) -> Vec<OnBody> {
    let on = |body: &String, sign: f64| OnBody {
        body: body.clone(),
        ways: ways.iter().map(|(x, y)| (x * sign, y * sign)).collect(),
    };
    if let Some([first, second]) = general.between.get(&step) {
        return vec![on(first, 1.0), on(second, -1.0)];
    }
    let bodies = general.bodies.get(&step);
    let first = bodies.and_then(|bodies| bodies.first());
    first.map_or_else(Vec::new, |body| vec![on(body, 1.0)])
}

/// The ways of a force along a known line.
fn of_one(general: &General, board: &Board<'_>, step: StepId, kind: &str) -> Option<Vec<Way>> {
    if kind == "weight" {
        return Some(vec![(0.0, -1.0)]);
    }
    let (x, y) = match kind {
        "reaction-x" => (1.0, 0.0),
        "reaction-y" => (0.0, 1.0),
        _ => general.ways.get(&step).map(|way| (way.x, way.y))?,
    };
    let sizes = sizes(board, step)?;
    Some(sizes.iter().map(|size| (x * size, y * size)).collect())
}

/// The ways of a force with two parts; none while a wrong direction of hers stands.
fn of_parts(general: &General, board: &Board<'_>, parts: [StepId; 2]) -> Option<Vec<Way>> {
    let wrong = |(step, of): (&StepId, &[StepId; 2])| {
        let own = board.standing.get(step);
        *of == parts && step.is_direction() && own.is_some_and(|own| !own.right)
    };
    if general.parts.iter().any(wrong) {
        return None;
    }
    // Parts count to the right and upwards.
    let [level, upright] = parts;
    Some(together(&sizes(board, level)?, &sizes(board, upright)?))
}

/// What counts as right for a step, at the printed numbers.
fn sizes(board: &Board<'_>, step: StepId) -> Option<Vec<f64>> {
    let accepted = board.accepted(step);
    let sizes: Vec<f64> = accepted.iter().map(|(function, _)| function[0]).collect();
    (!sizes.is_empty()).then_some(sizes)
}

fn together(level: &[f64], upright: &[f64]) -> Vec<Way> {
    let with = |x: &f64| {
        let x = *x;
        upright.iter().map(move |y| (x, *y))
    };
    level.iter().flat_map(with).collect()
}
