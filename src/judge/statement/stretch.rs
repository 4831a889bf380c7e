//! Rough places: a stretch of the body, and not which point of it.

use super::place::{Side, acts_at, forward, is_steep, length};
use crate::problem::{ForceId, Problem};

/// A stretch of the body where a force was said to act, in metres from the foot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stretch {
    from: f64,
    to: f64,
    /// The end that is perhaps meant: "on the left side".
    end: Option<f64>,
    /// The point was told as well: "where it hangs, on the left side".
    pointed: bool,
}

/// What bounds a share of the body.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Bound {
    /// The end at this side.
    At(Side),
    /// Both alike: the middle third.
    Middle,
    /// An end, and not which: "the first half".
    Either,
}

/// How large a share of the body is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Share {
    Half,
    Third,
    Quarter,
    /// A part, of no size in particular.
    Part,
    /// A side, which may be its end.
    Side,
    /// "Far left": near the end, or the end.
    Far,
}

/// Ends of a stretch that belong to it reach so far beyond it, in metres; those that do not, so
/// far short of it.
const EDGE: f64 = 1e-6;

impl Stretch {
    /// From one point to another, both of them in it.
    pub(super) fn between(one: f64, other: f64) -> Stretch {
        Stretch {
            from: one.min(other) - EDGE,
            to: one.max(other) + EDGE,
            end: None,
            pointed: false,
        }
    }

    /// Near a point: nearer than a quarter of the body, or than half of it where the point is an
    /// end.
    pub(super) fn near(problem: &Problem, metres: f64) -> Stretch {
        let whole = length(problem);
        let is_end = metres < EDGE || metres > whole - EDGE;
        let reach = whole * if is_end { 0.5 } else { 0.25 };
        Stretch {
            from: metres - reach + EDGE,
            to: metres + reach - EDGE,
            ..Stretch::between(0.0, whole)
        }
    }

    /// At one side of a point, the point itself left out; `None` where the body does not lie that
    /// way.
    pub(super) fn beside(problem: &Problem, metres: f64, side: Side) -> Option<Stretch> {
        let all = Stretch::between(0.0, length(problem));
        match forward(problem, side)? {
            true => Some(Stretch {
                from: metres + EDGE,
                ..all
            }),
            false => Some(Stretch {
                to: metres - EDGE,
                ..all
            }),
        }
    }

    /// A share of the body; `None` where it has none so: no upper half of a level body.
    pub(super) fn share(problem: &Problem, bound: Bound, share: Share) -> Option<Stretch> {
        let whole = length(problem);
        let size = match share {
            Share::Half | Share::Part | Share::Side => 0.5,
            Share::Third => 1.0 / 3.0,
            Share::Quarter | Share::Far => 0.25,
        };
        let side = match bound {
            Bound::Either => return Some(Stretch::between(0.0, whole)),
            Bound::Middle => {
                let margin = whole * 0.5 * (1.0 - size);
                return Some(Stretch::between(margin, whole - margin));
            }
            Bound::At(side) => side,
        };
        let outer = forward(problem, side)?;
        let (end, inner) = match outer {
            true => (whole, whole * (1.0 - size)),
            false => (0.0, whole * size),
        };
        // The middle is on neither side.
        let open = matches!(share, Share::Half | Share::Part | Share::Side);
        let inner = match (open, outer) {
            (false, _) => inner,
            (true, true) => inner + 2.0 * EDGE,
            (true, false) => inner - 2.0 * EDGE,
        };
        // A steep body has a right and a left face all along.
        let face =
            share == Share::Side && is_steep(problem) && matches!(side, Side::Left | Side::Right);
        let inner = if face { whole - end } else { inner };
        Some(Stretch {
            end: matches!(share, Share::Side | Share::Far).then_some(end),
            ..Stretch::between(end, inner)
        })
    }

    /// About so far from the foot: so far, or a twentieth of the body from there.
    pub(super) fn about(problem: &Problem, metres: f64) -> Stretch {
        let reach = 0.05 * length(problem);
        Stretch {
            end: Some(metres),
            ..Stretch::between(metres - reach, metres + reach)
        }
    }

    /// The one point that is perhaps meant, in metres from the foot.
    pub(super) fn point(self) -> Option<f64> {
        self.end
    }

    /// The same, without an end that is perhaps meant.
    pub(super) fn without_end(self) -> Stretch {
        Stretch { end: None, ..self }
    }

    /// The same, where the point was told as well.
    pub(super) fn pointed(self) -> Stretch {
        Stretch {
            pointed: true,
            ..self
        }
    }

    /// What lies in both.
    pub(super) fn and(self, other: Stretch) -> Stretch {
        let both = Stretch {
            from: self.from.max(other.from),
            to: self.to.min(other.to),
            end: None,
            pointed: self.pointed || other.pointed,
        };
        let ends = [self.end, other.end].into_iter().flatten();
        let end = ends.into_iter().find(|end| both.holds(*end));
        Stretch { end, ..both }
    }

    /// True for one in which no point lies: two were told that do not meet.
    pub(super) fn is_empty(self) -> bool {
        self.from > self.to
    }

    /// True for a point in it.
    pub(super) fn holds(self, metres: f64) -> bool {
        (self.from..=self.to).contains(&metres)
    }

    /// True where the point at which a force acts is told by it, and not only a stretch.
    pub(super) fn tells(self, problem: &Problem, force: ForceId) -> bool {
        self.pointed || self.end.is_some_and(|end| acts_at(problem, force, end))
    }
}

/// The right or the left side of the body, or its end there. Where that word stands `alone`, it is
/// the half and no face of a steep body.
pub(super) fn side(problem: &Problem, right: bool, alone: bool) -> Option<Stretch> {
    let side = if right { Side::Right } else { Side::Left };
    let stretch = Stretch::share(problem, Bound::At(side), Share::Side)?;
    match alone {
        true => {
            let half = Stretch::share(problem, Bound::At(side), Share::Half)?;
            Some(Stretch {
                end: stretch.end,
                ..half
            })
        }
        false => Some(stretch),
    }
}
