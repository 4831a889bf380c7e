//! Changes of unit that are written out: `35·π/180 rad` is 35°, `72·9.8/1000 kN` is 72·9.8 N. The
//! factor belongs to the unit and to no quantity.

use super::evaluate::{Leaf, Value, evaluate};
use super::tree::{Literal, Node, Operator, Tree};
use crate::units::{Dimension, Unit, find_unit};
use std::f64::consts::PI;

/// How far a typed number may be from π to be meant for it: 3.14.
const NEAR_PI: f64 = 0.0017;
/// How far a told number may be from the value before it to be meant for it, as a share.
const NEAR: f64 = 0.01;
/// No angle of statics has more degrees.
const TWO_TURNS: f64 = 720.0;

/// A tree without the factors that only change a unit.
pub(super) fn converted(tree: Tree) -> Tree {
    let changed = to_degrees(&tree).or_else(|| to_radians(&tree));
    let tree = match changed.or_else(|| to_whole_unit(&tree)) {
        Some(changed) => changed,
        None => tree,
    };
    let Tree { node, span } = tree;
    let node = match node {
        Node::Negative(inner) => Node::Negative(Box::new(converted(*inner))),
        Node::Call(function, inner) => Node::Call(function, Box::new(converted(*inner))),
        Node::Binary(operator, left, right) => Node::Binary(
            operator,
            Box::new(converted(*left)),
            Box::new(converted(*right)),
        ),
        leaf => leaf,
    };
    Tree { node, span }
}

/// `72·9.8/1000 = 0.7056 kN`: the last side says what the others were divided for.
pub(super) fn convert_sides(sides: &mut [Tree], next_index: &mut usize) {
    let Some((last, others)) = sides.split_last_mut() else {
        return;
    };
    let Node::Literal(Literal {
        unit: Some(unit),
        typed,
        ..
    }) = &last.node
    else {
        return;
    };
    let force =
        unit.factor != 1.0 && matches!(unit.dimension, Dimension::FORCE | Dimension::MOMENT);
    for side in others.iter_mut().filter(|side| is_in_whole_units(side)) {
        if let Some(changed) = without(side, true, &|literal, over| is_change(unit, literal, over))
        {
            *side = changed;
        } else if force
            && has_no_unit(side)
            && bare_value(side).is_some_and(|value| is_near(value, *typed))
        {
            // `√(0.8² + 1.28²) = 1.51 kN`: the numbers before it are in its unit.
            let span = side.span;
            let alone = Tree {
                node: Node::Literal(Literal::unit_alone(*next_index, unit)),
                span,
            };
            *next_index += 1;
            let inner = std::mem::replace(side, alone.clone());
            let node = Node::Binary(Operator::Multiply, Box::new(inner), Box::new(alone));
            *side = Tree { node, span };
        }
    }
}

/// An angle in degrees that was turned into radians.
fn to_degrees(tree: &Tree) -> Option<Tree> {
    let radians = |unit: Option<&Unit>| {
        unit.is_none_or(|unit| unit.dimension == Dimension::ANGLE && unit.factor == 1.0)
    };
    let pi = |literal: &Literal, over: bool| {
        over && !literal.unit_alone && radians(literal.unit) && (literal.typed - PI).abs() < NEAR_PI
    };
    let half_turn =
        |literal: &Literal, over: bool| !over && radians(literal.unit) && literal.typed == 180.0;
    let unit = |literal: &Literal, over: bool| over && literal.unit_alone && radians(literal.unit);
    let rest = without(&without(tree, true, &pi)?, true, &half_turn)?;
    let mut rest = without(&rest, true, &unit).unwrap_or(rest);
    // `63·9.8·π/180` and `412·sin 35·π/180` convert nothing.
    if !is_angle(&rest) {
        return None;
    }
    if let Node::Literal(literal) = &mut rest.node
        && radians(literal.unit)
        && let Some(degree) = find_unit("°")
    {
        literal.unit = Some(degree);
        literal.value = literal.typed * degree.factor;
        literal.written.last_place *= degree.factor;
    }
    Some(rest)
}

/// An angle in radians that was turned into degrees: `1.013·180/π`, `tan⁻¹(…)·180/π`.
fn to_radians(tree: &Tree) -> Option<Tree> {
    let radians = |unit: Option<&Unit>| {
        unit.is_none_or(|unit| unit.dimension == Dimension::ANGLE && unit.factor == 1.0)
    };
    let pi = |literal: &Literal, over: bool| {
        !over && !literal.unit_alone && (literal.typed - PI).abs() < NEAR_PI
    };
    let half_turn = |literal: &Literal, over: bool| {
        let angle = |unit: &Unit| unit.dimension == Dimension::ANGLE;
        over && literal.unit.is_none_or(angle) && literal.typed == 180.0
    };
    let mut rest = without(&without(tree, true, &pi)?, true, &half_turn)?;
    match &mut rest.node {
        Node::Call(function, _) if function.gives_angle() => Some(rest),
        Node::Literal(literal) if radians(literal.unit) && literal.typed.abs() <= 2.0 * PI => {
            literal.unit = find_unit("rad");
            Some(rest)
        }
        _ => None,
    }
}

/// True for what may be a number of degrees: a number that is no other quantity, a name, a sum of
/// such.
fn is_angle(tree: &Tree) -> bool {
    match &tree.node {
        Node::Literal(literal) => {
            let angle = |unit: &Unit| unit.dimension == Dimension::ANGLE;
            literal.unit.is_none_or(angle) && literal.typed.abs() <= TWO_TURNS
        }
        Node::Name(_) => true,
        Node::Negative(inner) => is_angle(inner),
        Node::Binary(Operator::Add | Operator::Subtract, left, right) => {
            is_angle(left) && is_angle(right)
        }
        _ => false,
    }
}

/// A product in thousands or hundredths of a unit, put into the unit itself.
fn to_whole_unit(tree: &Tree) -> Option<Tree> {
    // `mb·g/1000 kN` divides by a thousand, not by so many kilonewtons.
    if let Node::Binary(Operator::Divide, left, right) = &tree.node
        && let Node::Literal(literal) = &right.node
        && literal.unit.is_some_and(|unit| {
            let thousand = unit.factor == 1000.0 && literal.typed == unit.factor;
            thousand && unit.dimension != Dimension::MASS
        })
    {
        return Some((**left).clone());
    }
    let unit = unit_over(tree).filter(|unit| unit.dimension != Dimension::ANGLE)?;
    let whole = crate::units::unit_for(unit.dimension)?;
    let rest = without(tree, true, &|literal, over| is_change(unit, literal, over))?;
    Some(with_unit(rest, unit, whole))
}

/// True for a factor that turns the whole unit's number into this unit's.
fn is_change(unit: &Unit, literal: &Literal, over: bool) -> bool {
    let factor = if over { 1.0 / unit.factor } else { unit.factor };
    let same = (literal.typed - factor).abs() <= 1e-9 * factor;
    unit.factor != 1.0 && literal.unit.is_none() && same
}

/// The unit of a product's numerator.
fn unit_over(tree: &Tree) -> Option<&'static Unit> {
    match &tree.node {
        Node::Literal(literal) => literal.unit,
        Node::Negative(inner) => unit_over(inner),
        Node::Binary(Operator::Multiply, left, right) => {
            unit_over(right).or_else(|| unit_over(left))
        }
        Node::Binary(Operator::Divide, left, _) => unit_over(left),
        _ => None,
    }
}

/// A product whose number in this unit is one in the whole unit.
fn with_unit(tree: Tree, unit: &'static Unit, whole: &'static Unit) -> Tree {
    let Tree { node, span } = tree;
    let inner = |tree: Box<Tree>| Box::new(with_unit(*tree, unit, whole));
    let node = match node {
        Node::Literal(mut literal) if literal.unit == Some(unit) => {
            literal.value /= unit.factor;
            literal.written.last_place /= unit.factor;
            literal.unit = Some(whole);
            Node::Literal(literal)
        }
        Node::Negative(of) => Node::Negative(inner(of)),
        Node::Binary(Operator::Multiply, left, right) => {
            Node::Binary(Operator::Multiply, inner(left), inner(right))
        }
        Node::Binary(Operator::Divide, left, right) => {
            Node::Binary(Operator::Divide, inner(left), right)
        }
        node => node,
    };
    Tree { node, span }
}

/// A product without its first factor for which `meant` is true; it is told whether the factor
/// stands over the line of the fraction.
fn without(tree: &Tree, over: bool, meant: &dyn Fn(&Literal, bool) -> bool) -> Option<Tree> {
    let is_meant = |tree: &Tree, over: bool| matches!(&tree.node, Node::Literal(literal) if meant(literal, over));
    let with = |node: Node| Tree {
        node,
        span: tree.span,
    };
    match &tree.node {
        Node::Negative(inner) => {
            without(inner, over, meant).map(|inner| with(Node::Negative(Box::new(inner))))
        }
        Node::Binary(operator @ (Operator::Multiply | Operator::Divide), left, right) => {
            let divides = *operator == Operator::Divide;
            let below = over != divides;
            if is_meant(right, below) {
                return Some((**left).clone());
            }
            if !divides && is_meant(left, over) {
                return Some((**right).clone());
            }
            // `35·(π/180)`.
            if let (false, Node::Binary(Operator::Divide, top, bottom)) = (divides, &right.node)
                && is_meant(top, over)
            {
                return Some(with(Node::Binary(
                    Operator::Divide,
                    left.clone(),
                    bottom.clone(),
                )));
            }
            let join = |left: Tree, right: Tree| {
                with(Node::Binary(*operator, Box::new(left), Box::new(right)))
            };
            without(left, over, meant)
                .map(|left| join(left, (**right).clone()))
                .or_else(|| without(right, below, meant).map(|right| join((**left).clone(), right)))
        }
        _ => None,
    }
}

/// The value of a side with numbers only.
fn bare_value(side: &Tree) -> Option<f64> {
    if matches!(side.node, Node::Literal(_)) || !side.names().is_empty() {
        return None;
    }
    let value = evaluate(side, &mut |leaf| match leaf {
        Leaf::Literal(literal) => Value::of_literal(literal),
        Leaf::Name(_) => Value::bare(0.0),
    });
    value.ok().map(|value| value.number)
}

/// True for a value and the number that was told for it.
fn is_near(value: f64, told: f64) -> bool {
    (value - told).abs() <= NEAR * told.abs()
}

/// True if no number here has a multiple of a unit.
fn is_in_whole_units(tree: &Tree) -> bool {
    let places = tree.literals();
    let mut units = places.iter().filter_map(|place| place.literal.unit);
    units.all(|unit| unit.factor == 1.0)
}

/// True if no number here has a unit.
fn has_no_unit(tree: &Tree) -> bool {
    let places = tree.literals();
    places.iter().all(|place| place.literal.unit.is_none())
}
