//! Which way a force was said to act, and whether it does.

use super::angle::{AngleFit, Line, angle_fit, parallel};
use super::clash::{Clash, Telling, clash};
use crate::plane::Vector;
use crate::problem::{Acting, ForceId, Problem, Reference};

/// Which way a force was said to act.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Way {
    /// Up (`Some(true)`), down (`Some(false)`), or not said.
    pub up: Option<bool>,
    /// To the right (`Some(true)`), left (`Some(false)`), or not said.
    pub right: Option<bool>,
    /// Straight up or down, which goes to no side.
    pub upright: bool,
    /// Along the rope, towards its other end.
    pub along: bool,
    /// Away from what stands behind the hinge or the rope.
    pub away: bool,
    /// How it lies to the body.
    pub to_body: Option<ToBody>,
    /// Along this line, and not in which sense.
    pub line: Option<Reference>,
    /// At an angle, in degrees, with this line; `None` where the line was not said.
    pub degrees: Option<(f64, Option<Line>)>,
    /// In which sense the angle turns from its line, where that was said.
    pub clockwise: Option<bool>,
    /// Not known yet.
    pub open: bool,
    /// How it was told, where that may contradict itself.
    pub told: Telling,
}

/// How a direction was said to lie to the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ToBody {
    /// Along it.
    Along,
    /// At a right angle to it.
    Across,
    /// Towards a place of it, or what stands there.
    Towards,
    /// Towards what a rope runs to: for a rope, along itself.
    RopeEnd,
}

impl Way {
    /// This way, and what `other` adds to it.
    #[must_use]
    pub fn and(self, other: Way) -> Way {
        Way {
            up: self.up.or(other.up),
            right: self.right.or(other.right),
            upright: self.upright || other.upright,
            along: self.along || other.along,
            away: self.away || other.away,
            to_body: self.to_body.or(other.to_body),
            line: self.line.or(other.line),
            degrees: self.degrees.or(other.degrees),
            clockwise: self.clockwise.or(other.clockwise),
            open: self.open || other.open,
            told: self.told.and(other.told),
        }
    }

    /// The same, said of this force.
    fn of(self, force: ForceId) -> Way {
        match (self.to_body, force) {
            (Some(ToBody::RopeEnd), ForceId::Rope(_)) => Way {
                along: true,
                to_body: None,
                ..self
            },
            (Some(ToBody::RopeEnd), _) => Way {
                to_body: Some(ToBody::Towards),
                ..self
            },
            _ => self,
        }
    }

    /// True if one says up and the other down, or one left and the other right.
    pub(super) fn contradicts(self, other: Way) -> bool {
        let differ = |one: Option<bool>, other: Option<bool>| {
            one.zip(other).is_some_and(|(one, other)| one != other)
        };
        differ(self.up, other.up) || differ(self.right, other.right)
    }

    /// True if a side was said: up, down, left or right.
    pub fn has_side(self) -> bool {
        self.up.is_some() || self.right.is_some()
    }
}

/// What of a way is still to be said.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WayAsked {
    /// All of it.
    All,
    /// All of it, though it was called unknown: the problem tells it.
    Told,
    /// Whether up or down.
    UpOrDown,
    /// Whether to the left or to the right.
    LeftOrRight,
    /// Whether there is more to it: it goes to a side as well, or up or down.
    More,
    /// All of it, though it was said to lie along or across the body: nothing says that yet.
    Guessed,
}

/// What is wrong with a way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WayFault {
    /// The angle is another one.
    Angle,
    /// Two ways were told that cannot both be; this is the second.
    Two(Clash),
    /// It is another way.
    Other,
}

/// How a way that was said stands to the problem.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WayFit {
    /// It is so.
    Right,
    /// It is not said, or not fully.
    Missing(WayAsked),
    /// It is not so.
    Wrong(WayFault),
}

/// Parts of a direction below this count as none.
pub(super) const NONE: f64 = 1e-9;

/// Whether the way said for a force is its way. A hinge's may be left open or guessed.
pub fn way_fits(problem: &Problem, force: ForceId, way: Option<Way>) -> WayFit {
    let (Some(known), Some(way)) = (problem.force(force), way.map(|way| way.of(force))) else {
        return WayFit::Missing(WayAsked::All);
    };
    let values = problem.values();
    let unit = match known.acting {
        Acting::Along(direction) => Some(direction.unit(problem.body(), &values)),
        Acting::Anywhere => None,
    };
    let fit = match (unit, way.to_body) {
        (Some(unit), _) => {
            let body = Vector::at_angle(problem.body_angle(&values));
            known_way_fits(force, way, unit, body)
        }
        (None, Some(ToBody::Along | ToBody::Across)) if !way.open => {
            WayFit::Missing(WayAsked::Guessed)
        }
        (None, _) => WayFit::Right,
    };
    match (fit, clash(way, unit)) {
        (WayFit::Right | WayFit::Missing(_), Some(clash)) => WayFit::Wrong(WayFault::Two(clash)),
        (fit, _) => fit,
    }
}

/// The same, for a force whose direction the problem tells.
fn known_way_fits(force: ForceId, way: Way, unit: Vector, body: Vector) -> WayFit {
    if way.away && matches!(force, ForceId::Rope(_)) {
        return WayFit::Wrong(WayFault::Other);
    }
    if way.along && matches!(force, ForceId::Rope(_)) {
        return along_the_rope(way, unit, body);
    }
    if way.along && way.has_side() {
        return sides(way, unit);
    }
    let off_the_body = match way.to_body {
        Some(ToBody::Along) => !parallel(unit, body),
        Some(ToBody::Across) => unit.dot(body).abs() > NONE,
        Some(ToBody::Towards | ToBody::RopeEnd) => !way.has_side() && !parallel(unit, body),
        None => false,
    };
    if way.along || off_the_body {
        return WayFit::Wrong(WayFault::Other);
    }
    if way.to_body == Some(ToBody::Across) && !way.has_side() && way.degrees.is_none() {
        return WayFit::Missing(if unit.x.abs() > unit.y.abs() {
            WayAsked::LeftOrRight
        } else {
            WayAsked::UpOrDown
        });
    }
    if let Some(angle) = way.degrees {
        return told_by_an_angle(force, way, angle_fit(angle, way, unit, body), unit);
    }
    if way.open && !way.has_side() && way.line.is_none() {
        return WayFit::Missing(WayAsked::Told);
    }
    sides(way, unit)
}

/// How a way stands whose angle fits so. The sides that were said must fit; those that were not
/// follow from the drawing, or from the angle itself.
fn told_by_an_angle(force: ForceId, way: Way, angle: AngleFit, unit: Vector) -> WayFit {
    let rope = matches!(force, ForceId::Rope(_));
    match (angle, sides(way, unit)) {
        (AngleFit::Wrong, _) => WayFit::Wrong(WayFault::Angle),
        (AngleFit::Partly, WayFit::Missing(WayAsked::All)) if !rope => {
            WayFit::Missing(WayAsked::All)
        }
        (_, WayFit::Missing(_)) => WayFit::Right,
        (_, fit) => fit,
    }
}

/// How a rope's way stands of which it was said that it lies along the rope: that is the whole of
/// it, if what was said beside it is true.
fn along_the_rope(way: Way, unit: Vector, body: Vector) -> WayFit {
    if let Some(angle) = way.degrees
        && angle_fit(angle, way, unit, body) == AngleFit::Wrong
    {
        return WayFit::Wrong(WayFault::Angle);
    }
    if !way.has_side() {
        return WayFit::Right;
    }
    match sides(way, unit) {
        // "Up and back to the tower". "Straight up to the tower" is perhaps not meant so.
        WayFit::Missing(_) if !way.upright => WayFit::Right,
        fit => fit,
    }
}

/// The way of a force of which `new` is said after `old`. What is new completes the old; where it
/// is false by itself, or whole, it stands alone.
pub fn way_after(problem: &Problem, force: ForceId, old: Way, new: Way) -> Way {
    let new = new.of(force);
    let kept = Way {
        right: old.right.filter(|_| !new.upright),
        ..old.of(force)
    };
    let joined = new.and(kept);
    // "Towards the top", after "up and left".
    let towards = new.to_body == Some(ToBody::Towards) && !new.has_side();
    let alone = match towards {
        true => Way {
            up: old.up,
            right: old.right,
            ..new
        },
        false => new,
    };
    // "With the vertical": the line of an angle said before.
    let awaited = matches!(old.degrees, Some((_, None)));
    let a_line = new.line.is_some() && !new.has_side() && new.degrees.is_none();
    let only_a_line = a_line && (awaited || !new.told.lies());
    match way_fits(problem, force, Some(alone)) {
        WayFit::Wrong(_) if !only_a_line => alone,
        WayFit::Right if way_fits(problem, force, Some(joined)) != WayFit::Right => alone,
        _ => joined,
    }
}

/// Whether the sides and the line that were said are those of a direction.
fn sides(way: Way, unit: Vector) -> WayFit {
    let sign = |part: f64| match part {
        part if part > NONE => 1,
        part if part < -NONE => -1,
        _ => 0,
    };
    let said = |side: Option<bool>| side.map(|positive| if positive { 1 } else { -1 });
    let (up, right) = (said(way.up), said(way.right));
    let parts = [(up, sign(unit.y)), (right, sign(unit.x))];
    if parts
        .iter()
        .any(|(said, is)| said.is_some_and(|said| said != *is))
    {
        return WayFit::Wrong(WayFault::Other);
    }
    let (level, upright) = (unit.x.abs() > NONE, unit.y.abs() > NONE);
    match way.line {
        // "Down, and level": it has no such part.
        Some(Reference::Horizontal) if !level && way.told.is_split() => {
            return WayFit::Wrong(WayFault::Other);
        }
        Some(Reference::Vertical) if !upright && way.told.is_split() => {
            return WayFit::Wrong(WayFault::Other);
        }
        Some(Reference::Horizontal) if upright && up.is_none() => {
            return WayFit::Wrong(WayFault::Other);
        }
        Some(Reference::Vertical) if level && right.is_none() => {
            return WayFit::Wrong(WayFault::Other);
        }
        Some(Reference::Horizontal) if right.is_none() => {
            return WayFit::Missing(WayAsked::LeftOrRight);
        }
        Some(Reference::Vertical) if up.is_none() => return WayFit::Missing(WayAsked::UpOrDown),
        _ => {}
    }
    match (up, right) {
        (None, None) => WayFit::Missing(WayAsked::All),
        (None, Some(_)) if upright => WayFit::Missing(WayAsked::More),
        (Some(_), None) if level => WayFit::Missing(WayAsked::More),
        _ => WayFit::Right,
    }
}

/// True if a force's way may be left open: its direction is what the working finds (a hinge).
pub fn may_stay_open(problem: &Problem, force: ForceId) -> bool {
    problem
        .force(force)
        .is_some_and(|force| force.acting == Acting::Anywhere)
}
