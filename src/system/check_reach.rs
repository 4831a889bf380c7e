//! Whether what holds a body meets it.

use super::{Act, ActId, Body, BodyId, Effect, Fault, HoldKind, Line, Spot, System, WeightKind};
use crate::plane::Vector;
use crate::problem::Place;

/// A point farther from a body than this, in metres, was not meant to lie on it.
const APART_M: f64 = 1e-3;

impl System {
    /// The holds and ropes that act where their body is not, with the fault of each. A plate and
    /// a body of coordinates only may reach anywhere, and loads may hang on what is not told. The
    /// forces can be found all the same.
    pub fn out_of_reach(&self) -> Vec<(ActId, Fault)> {
        let choices = choices(self);
        let apart = |act: &Act<'_>| {
            if !matches!(act.id, ActId::Hold(_) | ActId::Cord(_)) {
                return None;
            }
            let is_bar = self.is_bar(act.id);
            act.on.iter().find_map(|effect| {
                let body = self.parts().bodies.get(effect.body.0)?;
                let away = choices
                    .iter()
                    .map(|values| away(self, body, (effect, is_bar), values));
                let distance_m = away.fold(f64::INFINITY, f64::min);
                let is_apart = distance_m.is_finite() && distance_m > APART_M;
                let fault = Fault::Apart {
                    what: act.noun.to_owned(),
                    body: body.noun.clone(),
                    distance_m,
                };
                (is_apart && !is_plate(self, effect.body)).then_some((act.id, fault))
            })
        };
        self.acts().iter().filter_map(apart).collect()
    }

    /// True for a hold along a line, such as a bar, which ends elsewhere on the other body.
    fn is_bar(&self, act: ActId) -> bool {
        let ActId::Hold(hold) = act else {
            return false;
        };
        let hold = self.parts().holds.get(hold);
        hold.is_some_and(|hold| matches!(hold.kind, HoldKind::Line(_)))
    }
}

/// The numbers at which the drawing is looked at: of what is sought the middle and both ends of
/// its range, since bodies may meet at the value only that is found.
pub(super) fn choices(system: &System) -> Vec<Vec<f64>> {
    let values = system.values();
    let sought = system.parts().sought.as_ref();
    let ends = sought.map_or(Vec::new(), |sought| vec![sought.low, sought.high]);
    let at = |end: f64| {
        let mut moved = values.clone();
        if let Some(value) = sought.and_then(|sought| moved.get_mut(sought.given.0)) {
            *value = end;
        }
        moved
    };
    let mut all: Vec<Vec<f64>> = ends.into_iter().map(at).collect();
    all.push(values.clone());
    all
}

fn is_plate(system: &System, body: BodyId) -> bool {
    let mut weights = system.parts().weights.iter();
    weights.any(|weight| weight.body == body && matches!(weight.kind, WeightKind::Lamina(_)))
}

/// How far an effect acts from the legs of its body, in metres; infinite without legs. A bar may
/// meet the body at its other end anywhere along its line.
fn away(system: &System, body: &Body, (effect, is_bar): (&Effect, bool), values: &[f64]) -> f64 {
    let at = system.point(&effect.at, values);
    let ends = |leg: usize| {
        [Place::Foot, Place::Tip].map(|place| {
            let body = effect.body;
            system.point(&Spot::On { body, leg, place }, values)
        })
    };
    let line = match &effect.line {
        Line::Known(bearing) if is_bar && effect.reversed => {
            Some(system.unit(bearing, &effect.at, values))
        }
        _ => None,
    };
    let legs = (0..body.legs.len()).map(|leg| match line {
        Some(unit) => distance_of_line(at, unit, ends(leg)),
        None => distance(at, ends(leg)),
    });
    legs.fold(f64::INFINITY, f64::min)
}

/// How far a point lies from a straight part.
fn distance(at: Vector, [from, to]: [Vector; 2]) -> f64 {
    let along = to - from;
    let share = (at - from).dot(along) / along.dot(along);
    (at - (from + along * share.clamp(0.0, 1.0))).size()
}

/// How far a line through a point passes by a straight part.
fn distance_of_line(at: Vector, unit: Vector, ends: [Vector; 2]) -> f64 {
    let [one, other] = ends.map(|end| unit.cross(end - at));
    match one * other <= 0.0 {
        true => 0.0,
        false => one.abs().min(other.abs()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_meets_a_part_or_passes_its_nearer_end() {
        let part = [Vector::new(2.0, 0.0), Vector::new(4.0, 3.0)];
        for (y, wanted) in [(1.0, 0.0), (3.0, 0.0), (3.5, 0.5), (-2.0, 2.0)] {
            let at = Vector::new(0.0, y);
            let found = distance_of_line(at, Vector::new(1.0, 0.0), part);
            assert!((found - wanted).abs() < 1e-12, "{y}: {found}");
        }
    }

    #[test]
    fn the_distance_is_to_the_nearest_point_of_the_part() {
        let part = [Vector::new(1.0, 1.0), Vector::new(4.0, 5.0)];
        for (x, y, wanted) in [
            (2.5, 3.0, 0.0),
            (-2.0, 1.0, 3.0),
            (4.0, 7.0, 2.0),
            (3.3, 2.4, 1.0),
        ] {
            let found = distance(Vector::new(x, y), part);
            assert!((found - wanted).abs() < 1e-12, "{x}, {y}: {found}");
        }
    }
}
