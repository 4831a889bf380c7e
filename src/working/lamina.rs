//! Centres of mass of laminae, worked out piece by piece.

use super::angle::Turn;
use super::build::Builder;
use super::place::{Run, multiple, opposite, positive_first};
use super::trouble::Underivable;
use super::{Centre, Expression, Meaning, Method, Quantity, Rule, Working, derive};
use crate::key::{Atom, Axis, Formula, place_length};
use crate::problem::{GivenId, Place};
use crate::system::{
    ActId, BodyId, Coordinate, Hold, HoldKind, Lamina, LaminaMass, Piece, Shape, System, Weight,
    WeightKind,
};
use crate::text::Symbol;
use crate::units::Dimension;
use std::f64::consts::PI;

impl Centre {
    /// True if a quantity is told here.
    pub(super) fn tells(&self, id: Quantity) -> bool {
        let pieces = self.pieces.iter().flatten();
        self.sums.contains(&id) || pieces.into_iter().any(|one| *one == Formula::step(id))
    }
}

impl Builder<'_> {
    /// The way from the origin to the centre of mass of a lamina.
    pub(super) fn centroid_runs(&mut self, weight: usize, depth: usize) -> Vec<Run> {
        let Some(body) = self.system.parts().weights.get(weight).map(|one| one.body) else {
            return Vec::new();
        };
        let Some(found) = self.system.parts().bodies.get(body.0) else {
            return Vec::new();
        };
        let mut runs = self.runs(&found.start.clone(), depth + 1);
        let along = match self.system.leg(body, 0) {
            Some(_) => self.leg_turn(body, 0),
            None => Turn::fixed(0.0),
        };
        self.centre_of(weight);
        let act = ActId::Weight(weight);
        for (axis, degrees) in [(Axis::Horizontal, 0.0), (Axis::Vertical, 90.0)] {
            let Some(centre) = self.working.find(Meaning::CentreAt(act, axis)) else {
                continue;
            };
            let place = Formula::step(centre);
            let value = self.number(&place, false).unwrap_or(0.0);
            if value == 0.0 && self.number(&place, true) == Some(0.0) {
                continue;
            }
            let turn = along.clone().plus(1.0, &Turn::fixed(degrees));
            let (factor, length) = match value < 0.0 {
                true => (-1.0, Formula::Absolute(Box::new(place))),
                false => (1.0, place),
            };
            runs.push(Run {
                factor,
                length,
                turn,
            });
        }
        runs
    }

    /// The mass of a lamina.
    pub(super) fn lamina_mass(&mut self, weight: usize) -> Expression {
        self.centre_of(weight);
        let known = self.working.find(Meaning::Mass(ActId::Weight(weight)));
        known.map_or(Formula::Number(0.0), Formula::step)
    }

    /// Works a centre of mass out, once.
    fn centre_of(&mut self, weight: usize) {
        let act = ActId::Weight(weight);
        if self.working.centres.iter().any(|centre| centre.act == act) {
            return;
        }
        let Some(lamina) = self.system.lamina(weight) else {
            return;
        };
        let mut shares = Vec::new();
        let mut places = [Vec::new(), Vec::new()];
        let mut pieces = Vec::new();
        for (index, piece) in lamina.pieces.iter().enumerate() {
            let share = self.piece_share(act, lamina, piece, index + 1);
            let [x, y] = [Axis::Horizontal, Axis::Vertical]
                .map(|axis| self.centroid_at(act, piece, axis, index + 1));
            pieces.push(vec![share.clone(), x.clone(), y.clone()]);
            shares.push((piece.hole, share));
            places[0].push(x);
            places[1].push(y);
        }
        let sums = self.sums(act, lamina, &shares, &places);
        self.working.centres.push(Centre { act, pieces, sums });
    }

    /// How much a piece counts: its mass where each has one, else its area.
    fn piece_share(
        &mut self,
        act: ActId,
        lamina: &Lamina,
        piece: &Piece,
        number: usize,
    ) -> Expression {
        if let (LaminaMass::OfPieces, Some(mass)) = (lamina.mass, piece.mass) {
            return Formula::given(mass);
        }
        let square = |radius: GivenId| {
            Formula::Number(PI).times(Formula::Square(Box::new(Formula::given(radius))))
        };
        let area = match piece.shape {
            Shape::Rectangle { width, height } => {
                Formula::given(width).times(Formula::given(height))
            }
            Shape::Triangle { width, height, .. } => Formula::given(width)
                .times(Formula::given(height))
                .over(Formula::Number(2.0)),
            Shape::Disc { radius } => square(radius),
            Shape::Semicircle { radius } => square(radius).over(Formula::Number(2.0)),
            Shape::QuarterCircle { radius } => square(radius).over(Formula::Number(4.0)),
        };
        let symbol = self.unique(&format!("A_{number}"));
        let rule = Rule::Formula(area);
        Formula::step(self.add(symbol, Dimension::AREA, Meaning::Area(act), rule))
    }

    /// Where the centroid of a piece lies along an axis of the body.
    fn centroid_at(&mut self, act: ActId, piece: &Piece, axis: Axis, number: usize) -> Expression {
        let own = own_centroid(piece, axis);
        let from = match axis {
            Axis::Horizontal => &piece.x,
            Axis::Vertical => &piece.y,
        };
        let mut parts = terms(from);
        parts.extend(own);
        let mut parts = positive_first(parts);
        let formula = match parts.len() {
            0 => Formula::Number(0.0),
            1 => parts.remove(0),
            _ => Formula::Sum(parts),
        };
        let letter = match axis {
            Axis::Horizontal => "x",
            Axis::Vertical => "y",
        };
        let wish = format!("{letter}_{number}");
        if let Formula::Atom(Atom::Given(given)) = formula
            && self.system.given(given).symbol.as_str() == wish
        {
            return formula;
        }
        let symbol = self.unique(&wish);
        let meaning = Meaning::PieceAt(act, axis);
        Formula::step(self.add(symbol, Dimension::LENGTH, meaning, Rule::Formula(formula)))
    }

    /// Area, mass and centre of mass of the whole.
    fn sums(
        &mut self,
        act: ActId,
        lamina: &Lamina,
        shares: &[(bool, Expression)],
        places: &[Vec<Expression>; 2],
    ) -> Vec<Quantity> {
        let signed = |hole: bool, part: Expression| if hole { opposite(part) } else { part };
        let added = |parts: Vec<Expression>| {
            let mut parts = positive_first(parts);
            match parts.len() {
                1 => parts.remove(0),
                _ => Formula::Sum(parts),
            }
        };
        let whole = added(
            shares
                .iter()
                .map(|(hole, share)| signed(*hole, share.clone()))
                .collect(),
        );
        let mut sums = Vec::new();
        let by_mass = lamina.mass == LaminaMass::OfPieces;
        let name = self.suffix(act);
        let whole = if shares.len() == 1 && !by_mass {
            whole
        } else {
            let (wish, dimension, meaning) = match by_mass {
                true => (format!("m_{name}"), Dimension::MASS, Meaning::Mass(act)),
                false => ("ΣA".to_owned(), Dimension::AREA, Meaning::Area(act)),
            };
            let symbol = self.unique(&wish);
            let whole = self.add(symbol, dimension, meaning, Rule::Formula(whole));
            sums.push(whole);
            Formula::step(whole)
        };
        for (axis, places) in [Axis::Horizontal, Axis::Vertical].into_iter().zip(places) {
            // Where all lie at the same height there is nothing to average.
            let same = places.iter().all(|place| self.same(place, &places[0]));
            let formula = if same {
                places[0].clone()
            } else {
                let moments = places
                    .iter()
                    .zip(shares)
                    .filter_map(|(place, (hole, share))| {
                        let vanishes = self.same(place, &Formula::Number(0.0));
                        let moment = share.clone().times(place.clone());
                        (!vanishes).then(|| signed(*hole, moment))
                    });
                added(moments.collect()).over(whole.clone())
            };
            let wish = match axis {
                Axis::Horizontal => "x̄",
                Axis::Vertical => "ȳ",
            };
            let symbol = self.unique(wish);
            let meaning = Meaning::CentreAt(act, axis);
            sums.push(self.add(symbol, Dimension::LENGTH, meaning, Rule::Formula(formula)));
        }
        if let LaminaMass::PerArea(density) = lamina.mass {
            let symbol = self.unique(&format!("m_{name}"));
            let rule = Rule::Formula(Formula::given(density).times(whole));
            sums.push(self.add(symbol, Dimension::MASS, Meaning::Mass(act), rule));
        }
        sums
    }

    /// True if two lengths are equal whatever the numbers.
    fn same(&self, one: &Expression, other: &Expression) -> bool {
        [false, true].into_iter().all(|moved| {
            let (one, other) = (self.number(one, moved), self.number(other, moved));
            matches!((one, other), (Some(one), Some(other))
                if (one - other).abs() <= 1e-12 * (one.abs() + other.abs()))
        })
    }
}

/// True where nothing but laminae is told: then their centres of mass are all that can be asked.
pub fn only_laminae(system: &System) -> bool {
    let parts = system.parts();
    let free = parts.loads.is_empty() && parts.cords.is_empty() && parts.holds.is_empty();
    let is_lamina = |weight: &Weight| matches!(weight.kind, WeightKind::Lamina(_));
    free && !parts.weights.is_empty() && parts.weights.iter().all(is_lamina)
}

/// The working of the centres of mass of laminae that nothing holds.
///
/// # Errors
/// As for [`super::derive`].
pub fn centres(system: &System) -> Result<Working, Underivable> {
    // Held fast, each body has balances that need its centre of mass.
    let mut parts = system.parts().clone();
    for (index, body) in parts.bodies.iter().enumerate() {
        parts.holds.push(Hold {
            symbol: Symbol::new(format!("held_{index}")),
            noun: body.noun.clone(),
            body: BodyId(index),
            by: None,
            at: body.start.clone(),
            kind: HoldKind::BuiltIn,
        });
    }
    let held = System::new(parts).map_err(|_| Underivable::NoOrder)?;
    let mut working = derive(&held, &held.values(), Method::Coordinates, None)?;
    working.stages.clear();
    working.results.clear();
    Ok(working)
}

/// The terms of a coordinate.
fn terms(coordinate: &Coordinate) -> Vec<Expression> {
    let sized = |(factor, given): &(f64, GivenId)| {
        let length = multiple(factor.abs(), Formula::given(*given));
        if *factor < 0.0 {
            opposite(length)
        } else {
            length
        }
    };
    coordinate.0.iter().map(sized).collect()
}

/// Where the centroid of a shape lies from its own origin, along an axis of the body; nothing where
/// it lies at it. Meriam and Kraige, Engineering Mechanics: Statics, table D/3 (from memory).
fn own_centroid(piece: &Piece, axis: Axis) -> Option<Expression> {
    let third = |sum: Expression| sum.over(Formula::Number(3.0));
    let half = |length: GivenId| Formula::given(length).over(Formula::Number(2.0));
    let arc = |radius: GivenId| {
        Formula::Number(4.0)
            .times(Formula::given(radius))
            .over(Formula::Number(3.0).times(Formula::Number(PI)))
    };
    let (x, y) = match piece.shape {
        Shape::Rectangle { width, height } => (Some(half(width)), Some(half(height))),
        Shape::Triangle {
            width,
            height,
            apex,
        } => {
            let base = Formula::given(width);
            let along = match apex {
                Place::Foot => third(base),
                Place::Middle => half(width),
                Place::Tip => third(Formula::Number(2.0).times(base)),
                apex => third(Formula::Sum(vec![base, place_length(apex, width)])),
            };
            (Some(along), Some(third(Formula::given(height))))
        }
        Shape::Disc { .. } => (None, None),
        Shape::Semicircle { radius } => (None, Some(arc(radius))),
        Shape::QuarterCircle { radius } => (Some(arc(radius)), Some(arc(radius))),
    };
    // A quarter turn anticlockwise leads (x, y) to (−y, x).
    let (mut x, mut y) = (x, y);
    for _ in 0..piece.points.quarters() {
        (x, y) = (y.map(opposite), x);
    }
    match axis {
        Axis::Horizontal => x,
        Axis::Vertical => y,
    }
}
