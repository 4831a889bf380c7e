//! What the typed numbers of a line may stand for, before they are tried in turn ([`super`]).

use super::super::stock::{Meaning, Stock};
use crate::key::{Samples, agree};
use crate::reading::{Function, Literal, Node, Operator, Place, Tree};
use crate::units::Dimension;

/// How the numbers of a line are taken.
#[derive(Clone, Copy)]
pub(super) struct Typed<'a> {
    /// The dimension of the line, where it is known.
    pub(super) wanted: Option<Dimension>,
    /// True if an angle that may be two of this working is the same each time that it is typed.
    pub(super) alike: bool,
    /// A number of the line in whose place an angle is looked at.
    pub(super) fixed: Option<(&'a Literal, &'a Samples)>,
}

impl Typed<'_> {
    /// The numbers as they stand, in a line of this dimension.
    pub(super) fn as_it_stands(wanted: Option<Dimension>) -> Typed<'static> {
        Typed {
            wanted,
            alike: false,
            fixed: None,
        }
    }
}

/// What the numbers of a line may stand for.
#[derive(Default)]
pub(super) struct Meant {
    /// For each number the quantities that it may be, the likeliest first.
    pub(super) meanings: Vec<Vec<Meaning>>,
    /// The number of each literal, and its place in `meanings`.
    pub(super) slots: Vec<(usize, usize)>,
    /// True if an angle that may be two is typed several times.
    pub(super) again: bool,
    pure: Vec<bool>,
    divisors: Vec<bool>,
    twofold: Vec<bool>,
}

impl Meant {
    /// What the numbers of these sides may stand for; `wide` where a sum of angles may be meant.
    pub(super) fn of(stock: &Stock, sides: &[&Tree], typed: &Typed<'_>, wide: bool) -> Meant {
        let mut meant = Meant::default();
        let mut known: Vec<(&Literal, usize)> = Vec::new();
        let mut doubtful = Vec::new();
        for side in sides {
            for place in side.literals() {
                let literal = place.literal;
                if let Some((_, angle)) = typed.fixed.filter(|(one, _)| one.index == literal.index)
                {
                    meant.add_fixed(literal, angle);
                    continue;
                }
                let as_angle = is_angle(side, &place, typed.wanted.unwrap_or(Dimension::NUMBER));
                // An angle that stands alone in two ratios means the same both times, and so does a
                // ratio that is typed twice.
                let is_ratio = !as_angle
                    && literal.value.abs() < 1.0
                    && !stock.equals_a_quantity(literal, false);
                let two_angles = as_angle && is_two_angles(stock, literal);
                let one_meaning = is_ratio
                    || is_alone_in_ratio(side, literal.index)
                        && (typed.alike || !two_angles)
                        // 115° is 90° + 25° and 180° − 65° in one sine rule.
                        && !(wide && literal.value > 90.0);
                let twice = known.iter().find(|(known, _)| {
                    one_meaning && known.value == literal.value && known.unit == literal.unit
                });
                if let Some((_, meaning)) = twice {
                    meant.slots.push((literal.index, *meaning));
                    continue;
                }
                if two_angles {
                    meant.again |= doubtful.contains(&literal.value);
                    doubtful.push(literal.value);
                }
                meant.slots.push((literal.index, meant.meanings.len()));
                if one_meaning {
                    known.push((literal, meant.meanings.len()));
                }
                let of_whole = is_of_whole(side, literal, typed.wanted);
                let is_pure = stock.is_pure(literal);
                meant
                    .divisors
                    .push(is_pure && is_divisor(side, literal.index));
                meant.pure.push(is_pure);
                meant.twofold.push(two_angles);
                meant
                    .meanings
                    .push(stock.meanings(literal, as_angle, of_whole));
            }
        }
        meant
    }

    /// A number that stands for this angle and nothing else.
    fn add_fixed(&mut self, literal: &Literal, angle: &Samples) {
        let meaning = Meaning {
            function: *angle,
            dimension: Dimension::ANGLE,
            constant: false,
        };
        let slot = self.add_name(vec![meaning]);
        self.slots.push((literal.index, slot));
    }

    /// What a name may stand for, which no literal does; gives its place in `meanings`.
    pub(super) fn add_name(&mut self, meanings: Vec<Meaning>) -> usize {
        self.meanings.push(meanings);
        for kind in [&mut self.pure, &mut self.divisors, &mut self.twofold] {
            kind.push(false);
        }
        self.meanings.len() - 1
    }

    /// In how many ways the numbers may be taken together.
    pub(super) fn assignments(&self) -> usize {
        self.meanings
            .iter()
            .fold(1_usize, |product, all| product.saturating_mul(all.len()))
    }

    /// Passes over the less likely meanings until no more than `most` ways are left.
    pub(super) fn keep(&mut self, most: usize) {
        while self.assignments() > most {
            // Of a pure number both are likely to the last.
            let longest = self
                .meanings
                .iter_mut()
                .zip(&self.pure)
                .enumerate()
                .max_by_key(|(_, (meanings, pure))| (meanings.len(), !**pure));
            let Some((place, (longest, _))) = longest else {
                break;
            };
            match longest.len() {
                0 | 1 => break,
                // What a number may stand for is kept longer than the number itself.
                2 => {
                    let itself = longest.iter().rposition(|meaning| meaning.constant);
                    longest.remove(itself.unwrap_or(1));
                }
                // The last is the number itself: keep it; of a pure number it stands before the
                // less likely, and is kept where something is divided by it.
                count => {
                    let kept = !self.divisors[place] && !self.twofold[place];
                    longest.remove(count - 1 - usize::from(kept));
                }
            }
        }
    }
}

/// True for a number with a unit that may be meant for all of the side in which it stands.
fn is_of_whole(side: &Tree, literal: &Literal, wanted: Option<Dimension>) -> bool {
    literal.unit.is_some_and(|unit| {
        let fits = match wanted {
            Some(wanted) => unit.dimension == wanted,
            None => matches!(unit.dimension, Dimension::FORCE | Dimension::MOMENT),
        };
        fits && unit.factor == 1.0 && is_last_factor(side, literal.index)
    })
}

/// True for a number that counts as an angle in a side of this dimension.
pub(super) fn is_angle(side: &Tree, place: &Place<'_>, wanted: Dimension) -> bool {
    place.in_angle || wanted == Dimension::ANGLE && !in_ratio(side, place.literal.index)
}

/// True for a number that two angles of this working have: 40° of the mast and 40° of the rope, or
/// a right one and a wrong one of hers.
fn is_two_angles(stock: &Stock, literal: &Literal) -> bool {
    let meanings = stock.meanings(literal, true, false);
    let mut angles = meanings.iter().filter(|meaning| !meaning.constant);
    let first = angles.next();
    first.is_some_and(|first| angles.any(|other| !agree(&other.function, &first.function)))
}

/// True for a literal that is all a sine, cosine or tangent is taken of.
fn is_alone_in_ratio(side: &Tree, index: usize) -> bool {
    let mut found = false;
    side.visit(&mut |tree| {
        if let Node::Call(function, inner) = &tree.node
            && function.takes_angle()
            && let Node::Literal(literal) = &inner.node
        {
            found |= literal.index == index;
        }
    });
    found
}

/// True for the last factor of a product: its unit may be meant for the product.
fn is_last_factor(side: &Tree, index: usize) -> bool {
    let mut found = false;
    side.visit(&mut |tree| {
        if let Node::Binary(Operator::Multiply | Operator::Divide, _, right) = &tree.node
            && let Node::Literal(literal) = &right.node
        {
            found |= literal.index == index;
        }
    });
    found
}

/// True for a literal by which something is divided, as in `4.2/2`.
fn is_divisor(side: &Tree, index: usize) -> bool {
    let mut found = false;
    side.visit(&mut |tree| {
        if let Node::Binary(Operator::Divide, _, right) = &tree.node
            && let Node::Literal(literal) = &right.node
        {
            found |= literal.index == index;
        }
    });
    found
}

/// True for a literal inside an inverse sine, cosine or tangent, where it is no angle.
fn in_ratio(side: &Tree, index: usize) -> bool {
    let mut found = false;
    side.visit(&mut |tree| {
        if let Node::Call(Function::ArcSine | Function::ArcCosine | Function::ArcTangent, inner) =
            &tree.node
        {
            found |= inner
                .literals()
                .iter()
                .any(|place| place.literal.index == index);
        }
    });
    found
}
