//! The point in which the lines of three forces meet.

use super::angle::{Slope, Turn};
use super::build::Builder;
use super::place::{Signed, opposite, positive_first, sided};
use super::sense::{Sense, straight};
use super::triangle::{Section, Side, no_triangle};
use super::trouble::Underivable;
use super::{Expression, Meaning, Quantity, Rule};
use crate::key::{Atom, Axis, Formula};
use crate::plane::Vector;
use crate::text::Symbol;
use crate::units::Dimension;

impl Builder<'_> {
    /// The point in which the lines meet, and so the direction of the third force.
    pub(super) fn meeting(&mut self, sides: &mut [Side], third: usize) -> Result<(), Underivable> {
        let from = sides[third].at.clone();
        let point = self.free_letter();
        let mut lines: Vec<Quantity> = Vec::new();
        let rest: Vec<usize> = (0..3).filter(|at| *at != third).collect();
        let mut points = Vec::new();
        for at in &rest {
            let side = &sides[*at];
            let spot = side.at.clone();
            let mut way = self.way(&from, &spot);
            if side.is_sum {
                way.extend(self.shift.clone());
            }
            let x = self.coordinate(&way, Axis::Horizontal);
            let y = self.coordinate(&way, Axis::Vertical);
            let turn = sides[*at].turn.clone().unwrap_or_else(|| Turn::fixed(0.0));
            let slope = turn.slope(&|atom| self.atom(atom));
            points.push(Crossed { x, y, slope });
        }
        let [one, two] = &points[..] else {
            return Err(Underivable::NoOrder);
        };
        let names = (format!("x_{point}"), format!("y_{point}"));
        let (x, y) = self.crossing(one, two, &names, &mut lines);
        let act = sides[third].act;
        let open = Symbol::new(sides[third].name.clone()).shown();
        let (_, length) = self.solution.scales();
        let is_off = |part: &Option<Signed>| {
            let value = part.as_ref().and_then(|(_, part)| self.number(part, false));
            value.is_some_and(|value| value.abs() > 1e-9 * length)
        };
        let found = self.atom_reaction(act);
        let along = match (is_off(&x), is_off(&y)) {
            (false, false) => {
                return Err(no_triangle(&format!(
                    "the three lines meet where {open} acts, so they do not tell its direction"
                )));
            }
            (true, false) => Vector::new(found.x, 0.0),
            (false, true) => Vector::new(0.0, found.y),
            (true, true) => found,
        };
        let straight = straight(along);
        let turn = match (straight, x, y) {
            (Some(sense), ..) => turn_along(sense),
            (None, Some((_, x)), Some((_, y))) => {
                let size = |part: Expression| Formula::Absolute(Box::new(part));
                let formula = Formula::ArcTangent(Box::new(size(y).over(size(x))));
                let name = sides[third].name.replace('_', "");
                let symbol = self.unique(&format!("ψ_{name}"));
                let rule = Rule::Formula(formula);
                let slope = self.add(symbol, Dimension::ANGLE, Meaning::Direction(act), rule);
                lines.push(slope);
                let slope = Turn::angle(Atom::Step(slope));
                sided(&slope, found.x > 0.0, found.y > 0.0)
            }
            // Parallel lines do not meet.
            (None, ..) => return Err(self.parallel()),
        };
        sides[third].turn = Some(turn);
        self.working.triangle.push(Section::Meeting {
            open: open.clone(),
            from,
            point,
            lines,
        });
        self.working
            .triangle
            .extend(straight.map(|sense| Section::Acts {
                force: open,
                sense,
                lines: Vec::new(),
            }));
        Ok(())
    }

    /// Where two lines cross. An upright line says x, a level one y, and an oblique one leads from
    /// the one to the other; of two oblique ones their slopes give x.
    fn crossing(
        &mut self,
        one: &Crossed,
        two: &Crossed,
        (x_name, y_name): &(String, String),
        lines: &mut Vec<Quantity>,
    ) -> (Option<Signed>, Option<Signed>) {
        let straight = |line: &Crossed| line.slope.right == 0.0 || line.slope.up == 0.0;
        let (a, b) = match straight(two) && !straight(one) {
            true => (two, one),
            false => (one, two),
        };
        if a.slope.up == 0.0 && b.slope.right == 0.0 {
            return self.crossing(b, a, &(x_name.clone(), y_name.clone()), lines);
        }
        if a.slope.up == 0.0 {
            let y = self.meeting_part(y_name, parts(&a.y), lines);
            let (sign, ratio) = tangent(b);
            let mut sum = parts(&b.x);
            if let Some((side, rise)) = self.signed_sum(less(&y, &b.y)) {
                sum.push((side * sign, rise.over(ratio)));
            }
            return (self.meeting_part(x_name, sum, lines), y);
        }
        let x = if a.slope.right == 0.0 {
            self.meeting_part(x_name, parts(&a.x), lines)
        } else {
            self.oblique_crossing(a, b, x_name, lines)
        };
        let mut sum = parts(&b.y);
        if b.slope.up != 0.0
            && let Some((side, run)) = self.signed_sum(less(&x, &b.x))
        {
            let (sign, ratio) = tangent(b);
            sum.push((side * sign, run.times(ratio)));
        }
        (x, self.meeting_part(y_name, sum, lines))
    }

    /// The x at which two oblique lines are equally high.
    fn oblique_crossing(
        &mut self,
        a: &Crossed,
        b: &Crossed,
        name: &str,
        lines: &mut Vec<Quantity>,
    ) -> Option<Signed> {
        let ((rise_a, ratio_a), (rise_b, ratio_b)) = (tangent(a), tangent(b));
        let mut over = less(&b.y, &a.y);
        let times = |place: &Option<Signed>, sign: f64, ratio: &Expression| {
            let placed = place.clone();
            placed.map(|(side, length)| (side * sign, length.times(ratio.clone())))
        };
        over.extend(times(&a.x, rise_a, &ratio_a));
        over.extend(times(&b.x, -rise_b, &ratio_b));
        let (side, over) = self.signed_sum(over)?;
        let (other, under) = self.signed_sum(vec![(rise_a, ratio_a), (-rise_b, ratio_b)])?;
        self.meeting_part(name, vec![(side * other, over.over(under))], lines)
    }

    /// A letter for the meeting point that is no force's.
    fn free_letter(&self) -> &'static str {
        let acts = self.system.acts();
        let is_free = |letter: &&str| !acts.iter().any(|act| act.symbol.matches(letter));
        ["P", "Q", "X", "K"]
            .into_iter()
            .find(is_free)
            .unwrap_or("Z")
    }

    /// A coordinate of the meeting point, with its sign; `None` where it is zero.
    fn meeting_part(
        &mut self,
        name: &str,
        parts: Vec<Signed>,
        lines: &mut Vec<Quantity>,
    ) -> Option<Signed> {
        let (sign, sum) = self.signed_sum(parts)?;
        let formula = if sign < 0.0 { negative(sum) } else { sum };
        let symbol = self.unique(name);
        let part = self.add(
            symbol,
            Dimension::LENGTH,
            Meaning::Meeting,
            Rule::Formula(formula),
        );
        lines.push(part);
        Some((1.0, Formula::step(part)))
    }
}

/// The direction of what acts level or upright.
pub(super) fn turn_along(sense: Sense) -> Turn {
    Turn::fixed(match sense {
        Sense::Up => 90.0,
        Sense::Left => 180.0,
        Sense::Down => 270.0,
        _ => 0.0,
    })
}

/// A line by one of its points and its slope.
struct Crossed {
    x: Option<Signed>,
    y: Option<Signed>,
    slope: Slope,
}

/// Height over width of a line, with its sign.
fn tangent(line: &Crossed) -> Signed {
    let sign = line.slope.right * line.slope.up;
    let angle = Box::new(line.slope.angle.formula());
    (sign, Formula::Tangent(angle))
}

fn parts(place: &Option<Signed>) -> Vec<Signed> {
    place.clone().into_iter().collect()
}

fn less(from: &Option<Signed>, taken: &Option<Signed>) -> Vec<Signed> {
    let mut parts = parts(from);
    parts.extend(taken.clone().map(|(sign, amount)| (-sign, amount)));
    parts
}

fn negative(formula: Expression) -> Expression {
    match formula {
        Formula::Sum(parts) => {
            Formula::Sum(positive_first(parts.into_iter().map(opposite).collect()))
        }
        one => opposite(one),
    }
}
