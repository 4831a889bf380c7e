//! "811 N along the rope": a force told with the line that it lies along, or across.

use super::Session;
use super::acting::Way;
use crate::judge::{Judgement, Truth};
use crate::key::{Axis, StepId};
use crate::system::System;

/// The sine of the largest angle, half a degree, by which two lines may differ that are told as one.
const SAME_LINE: f64 = 0.0087;

/// A straight body, and a vector along it.
pub(super) type Straight = (String, Way);

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
        let fixed = one.0.is_finite() && is_parallel(one, other);
        fixed.then(|| (body.noun.to_lowercase(), one))
    });
    straight.collect()
}

impl Session {
    /// Judges a force that is told with the line that it lies along or across; `None` for other
    /// lines, and where the way of the force or of the line is not known.
    pub(super) fn judged_along(&self, asked: StepId, line: &str) -> Option<Judgement> {
        let says = ["statement.along", "statement.across"];
        if !says.iter().any(|key| self.has_word(line, key)) {
            return None;
        }
        let (force, way, across) = self.force_and_line(line)?;
        let mut judgement = self.judged(asked, force);
        if !judgement.truth.holds() {
            return None;
        }
        let lies_so = |own: Way| match across {
            true => is_parallel((-own.1, own.0), way),
            false => is_parallel(own, way),
        };
        self.compare_ways(&mut judgement, &lies_so);
        Some(judgement)
    }

    /// Refuses a force that lies in no way that it may have; where only a wrong direction of hers
    /// puts it so, it follows from that.
    fn compare_ways(&self, judgement: &mut Judgement, lies_so: &dyn Fn(Way) -> bool) {
        let ways = self.ways_of(judgement.target);
        if !ways.is_empty() {
            if !ways.into_iter().any(lies_so) {
                judgement.refuse_way();
            }
            return;
        }
        let Some((by_parts, hers, line)) = self.ways_beside_direction(judgement.target) else {
            return;
        };
        if by_parts.into_iter().any(lies_so) {
            return;
        }
        match hers.into_iter().any(lies_so) {
            true => judgement.truth = Truth::Follows(vec![line]),
            false => judgement.refuse_way(),
        }
    }

    /// `FN = 28.4 N up the slope`: a force told with the sense in which it acts along a sloping line;
    /// `None` for other lines.
    pub(super) fn judged_up_or_down(&self, asked: StepId, line: &str) -> Option<Judgement> {
        let says = ["statement.up", "statement.down"];
        if !says.iter().any(|key| self.has_word(line, key)) {
            return None;
        }
        let (force, way) = self.force_and_sense(line)?;
        let mut judgement = self.judged(asked, force);
        if matches!(judgement.truth, Truth::NotUnderstood(_)) {
            return None;
        }
        let acts_so = |own: Way| is_parallel(own, way) && own.0 * way.0 + own.1 * way.1 > 0.0;
        if judgement.truth.holds() {
            self.compare_ways(&mut judgement, &acts_so);
        }
        Some(judgement)
    }

    /// A force, and a vector up or down the line of which that is told behind it.
    fn force_and_sense<'l>(&self, line: &'l str) -> Option<(&'l str, Way)> {
        let line = line.trim_end().trim_end_matches('.');
        self.sloping_lines().into_iter().find_map(|(noun, way)| {
            let at = line.len().checked_sub(noun.len())?;
            let (rest, last) = (line.get(..at)?, line.get(at..)?);
            let rest = (last.to_lowercase() == noun).then_some(rest)?;
            let rest = self.before(rest, "statement.filler").unwrap_or(rest);
            let (force, sign) = match self.before(rest, "statement.up") {
                Some(force) => (force, 1.0),
                None => (self.before(rest, "statement.down")?, -1.0),
            };
            let sign = f64::copysign(sign, sign * way.1);
            let has_value = force.contains(|c: char| c.is_ascii_digit()) && force.contains('=');
            has_value.then_some((force, (sign * way.0, sign * way.1)))
        })
    }

    /// The lines that rise: of bodies, ropes and struts, and of what a rough contact lies on, by its
    /// noun and by what a slope is called.
    fn sloping_lines(&self) -> Vec<Straight> {
        let frictions = self.exerted().into_iter();
        let frictions = frictions.filter(|force| force.kind == "friction");
        let slopes =
            frictions.filter_map(|force| Some((force.noun, *force.on.first()?.ways.first()?)));
        let mut lines: Vec<Straight> = slopes.collect();
        if let Some((_, way)) = lines.first().cloned() {
            let usual = self.words.word("statement.slope");
            lines.extend(usual.split(',').map(|noun| (noun.trim().to_owned(), way)));
        }
        lines.extend(self.known_lines());
        let rises = |(noun, (x, y)): &Straight| !noun.is_empty() && y.abs() > SAME_LINE * x.abs();
        lines.into_iter().filter(rises).collect()
    }

    /// A force, and a vector along the line that is told behind it; true where it lies across that.
    fn force_and_line<'l>(&self, line: &'l str) -> Option<(&'l str, Way, bool)> {
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

    /// The nouns of straight bodies, and of what pulls or pushes along a line of its own.
    pub(super) fn known_lines(&self) -> Vec<Straight> {
        let mut lines = self.straight.clone();
        if !self.is_general() {
            let angle = self.problem.body_angle(&self.problem.values());
            let noun = self.problem.body().noun.to_lowercase();
            lines.push((noun, (libm::cos(angle), libm::sin(angle))));
        }
        let along = self.exerted().into_iter();
        lines.extend(
            along
                .filter(|force| matches!(force.kind, "pull" | "line") && !force.noun.is_empty())
                .filter_map(|force| Some((force.noun, *force.on.first()?.ways.first()?))),
        );
        lines
    }

    /// The ways in which a force or a part of one may act; none where they are not known.
    pub(super) fn ways_of(&self, step: StepId) -> Vec<Way> {
        if let Some(axis) = step.along() {
            return vec![match axis {
                Axis::Horizontal => (1.0, 0.0),
                Axis::Vertical => (0.0, 1.0),
            }];
        }
        match step {
            StepId::PartOf(_, Axis::Horizontal) => return vec![(1.0, 0.0)],
            StepId::PartOf(_, Axis::Vertical) => return vec![(0.0, 1.0)],
            StepId::Across(_) if !self.is_general() => {
                let angle = self.problem.body_angle(&self.problem.values());
                return vec![(-libm::sin(angle), libm::cos(angle))];
            }
            _ => {}
        }
        let symbol = self.key.step(step).map(|step| step.symbol.shown());
        let exerted = self.exerted().into_iter();
        let own = exerted.filter(|force| Some(&force.symbol) == symbol.as_ref());
        own.flat_map(|force| force.on)
            .flat_map(|on| on.ways)
            .collect()
    }
}

fn is_parallel((x, y): Way, (u, v): Way) -> bool {
    (x * v - y * u).abs() <= SAME_LINE * libm::hypot(x, y) * libm::hypot(u, v)
}
