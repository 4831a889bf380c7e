//! "811 N along the rope": a force told with the line that it lies along, or across.

use super::Session;
use super::bearing::refuse_way;
use crate::judge::Judgement;
use crate::key::{Axis, Part, StepId};
use crate::problem::ForceId;
use crate::system::System;
use std::collections::BTreeMap;

/// The sine of the largest angle, half a degree, by which two lines may differ that are told as one.
const SAME_LINE: f64 = 0.0087;

/// A straight body, and a unit vector along it.
pub(super) type Straight = (String, Line);

/// The level and the upright part of a unit vector.
type Line = (f64, f64);

/// The bodies with one leg, but those whose line depends on what is sought.
pub(super) fn straight_bodies(system: &System) -> Vec<Straight> {
    let parts = system.parts();
    let with = |sought: Option<f64>| {
        let mut values = system.values();
        if let Some((of, value)) = parts.sought.as_ref().zip(sought) {
            values[of.given.0] = value;
        }
        values
    };
    let low = with(parts.sought.as_ref().map(|sought| sought.low));
    let high = with(parts.sought.as_ref().map(|sought| sought.high));
    let straight = parts.bodies.iter().filter_map(|body| {
        let [leg] = body.legs.as_slice() else {
            return None;
        };
        let line = |values: &[f64]| {
            let unit = system.unit(&leg.bearing, &body.start, values);
            (unit.x, unit.y)
        };
        let (one, other) = (line(&low), line(&high));
        let fixed = one.0.is_finite() && cross(one, other).abs() < SAME_LINE;
        fixed.then(|| (body.noun.to_lowercase(), one))
    });
    straight.collect()
}

impl Session {
    /// Judges a force that is told with the line that it lies along or across; `None` for other
    /// lines, and where the way of the force or of the line is not known.
    pub(super) fn judged_along(&self, asked: StepId, line: &str) -> Option<Judgement> {
        let (force, way, across) = self.force_and_line(line)?;
        let mut judgement = self.judged(asked, force);
        if !judgement.truth.holds() {
            return None;
        }
        let own = self.line_of(judgement.target)?;
        let off = match across {
            true => own.0 * way.0 + own.1 * way.1,
            false => cross(own, way),
        };
        if off.abs() > SAME_LINE {
            refuse_way(&mut judgement);
        }
        Some(judgement)
    }

    /// A force, and the unit vector of the line that is told behind it; true where it lies across
    /// that.
    fn force_and_line<'l>(&self, line: &'l str) -> Option<(&'l str, Line, bool)> {
        let line = line.trim_end().trim_end_matches('.');
        let (rest, way) = self.known_lines().into_iter().find_map(|(noun, way)| {
            let at = line.len().checked_sub(noun.len())?;
            let (rest, last) = (line.get(..at)?, line.get(at..)?);
            (last.to_lowercase() == noun).then_some((rest, way))
        })?;
        let rest = self.before(rest, "statement.filler").unwrap_or(rest);
        let told = |key: &str| self.before(rest, key);
        let (force, across) = match told("statement.along") {
            Some(force) => (force, false),
            None => (told("statement.across")?, true),
        };
        force
            .contains(|c: char| c.is_ascii_digit())
            .then_some((force, way, across))
    }

    /// The nouns of straight bodies, and of forces of known line, each with its line.
    fn known_lines(&self) -> Vec<Straight> {
        let mut lines = self.straight.clone();
        let forces = self.problem.forces();
        let nouns = forces
            .iter()
            .filter(|force| matches!(force.id, ForceId::Rope(_)))
            .map(|force| (force.noun.to_lowercase(), StepId::Pull(force.id)));
        lines.extend(nouns.filter_map(|(noun, pull)| Some((noun, self.line_of(pull)?))));
        let Some(general) = &self.key.general else {
            let angle = self.problem.body_angle(&self.problem.values());
            let noun = self.problem.body().noun.to_lowercase();
            lines.push((noun, (libm::cos(angle), libm::sin(angle))));
            return lines;
        };
        lines.extend(general.ways.iter().filter_map(|(step, way)| {
            let heading = self.key.heading(*step)?;
            let whole = step.is_pull() && !heading.noun.is_empty();
            whole.then(|| (heading.noun.to_lowercase(), (way.x, way.y)))
        }));
        lines
    }

    /// A unit vector along a force or a part of one.
    fn line_of(&self, step: StepId) -> Option<Line> {
        if let Some(general) = &self.key.general {
            if let Some(way) = general.ways.get(&step) {
                return Some((way.x, way.y));
            }
            let parts = general.parts.get(&step)?;
            let worth = |part: &StepId| Some((*general.ways.get(part)?, self.worth_of(*part)?));
            return unit(parts.iter().try_fold((0.0, 0.0), |(x, y), part| {
                let (way, worth) = worth(part)?;
                Some((x + worth * way.x, y + worth * way.y))
            })?);
        }
        match step {
            StepId::Reaction(_, Part::Along(Axis::Horizontal)) => Some((1.0, 0.0)),
            StepId::Reaction(_, Part::Along(Axis::Vertical)) => Some((0.0, 1.0)),
            StepId::Reaction(support, Part::Size) => {
                let part = |axis: Axis| self.worth_of(StepId::Reaction(support, Part::Along(axis)));
                unit((part(Axis::Horizontal)?, part(Axis::Vertical)?))
            }
            step => self.way_of_page(step),
        }
    }

    /// What a step is worth: as she has it, else by the key.
    fn worth_of(&self, step: StepId) -> Option<f64> {
        let own = self.state.standing.get(&step).map(|own| own.function[0]);
        let right = || self.key.samples(step, &self.sampling, &BTreeMap::new());
        own.or_else(|| Some(right()?[0]))
    }
}

fn unit((x, y): Line) -> Option<Line> {
    let size = libm::hypot(x, y);
    (size > 0.0).then(|| (x / size, y / size))
}

fn cross((x, y): Line, (u, v): Line) -> f64 {
    x * v - y * u
}
