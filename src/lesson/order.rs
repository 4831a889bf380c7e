//! The order in which givens are told, where a file asks for another than the usual one.

use super::decode::{Item, Report};
use super::family::Variant;
use super::fault::FaultKind;
use crate::problem::{Direction, Given, GivenId, LoadKind, Parts, Place, SupportKind, Tilt};

/// Puts the givens into the order of a list of their names, which must name each once.
pub(super) fn apply(variant: &mut Variant, item: &Item<'_>, report: &mut Report) {
    let givens = &variant.parts.givens;
    let Some(elements) = item.elements("names", (0, givens.len()), report) else {
        return;
    };
    let mut order: Vec<usize> = Vec::new();
    for element in &elements {
        let Some(name) = element.text("the name of a given", report) else {
            continue;
        };
        match givens
            .iter()
            .position(|given| given.symbol.as_str() == name)
        {
            Some(index) if order.contains(&index) => report.add(element, FaultKind::Twice),
            Some(index) => order.push(index),
            None => report.add(
                element,
                FaultKind::NoSuchGiven {
                    symbol: name.to_owned(),
                    given: names(givens),
                },
            ),
        }
    }
    if order.len() != givens.len() {
        let why = format!(
            "this order must name each of {} once",
            names(givens).join(", ")
        );
        report.add(item, FaultKind::Contradiction { why });
        return;
    }
    let moved = |given: &mut GivenId| {
        given.0 = order
            .iter()
            .position(|&old| old == given.0)
            .unwrap_or(given.0);
    };
    variant
        .drawn
        .iter_mut()
        .for_each(|drawn| moved(&mut drawn.given));
    each_given(&mut variant.parts, &moved);
    variant.parts.givens = order
        .iter()
        .map(|&old| variant.parts.givens[old].clone())
        .collect();
}

fn names(givens: &[Given]) -> Vec<String> {
    givens
        .iter()
        .map(|given| given.symbol.as_str().to_owned())
        .collect()
}

/// Every reference to a given among the parts.
fn each_given(parts: &mut Parts, change: &dyn Fn(&mut GivenId)) {
    let place = |place: &mut Place| {
        if let Place::At(given) = place {
            change(given);
        }
    };
    let direction = |direction: &mut Direction| match direction {
        Direction::Oblique { angle, .. } | Direction::FromBody { angle } => change(angle),
        Direction::Up | Direction::Down | Direction::Level(_) => {}
    };
    change(&mut parts.body.length);
    parts.body.mass.iter_mut().for_each(change);
    if let Tilt::Rising { angle, .. } = &mut parts.body.tilt {
        change(angle);
    }
    place(&mut parts.body.centre);
    for support in &mut parts.supports {
        place(&mut support.at);
        if let SupportKind::Roller(normal) = &mut support.kind {
            direction(normal);
        }
    }
    for rope in &mut parts.ropes {
        place(&mut rope.at);
        direction(&mut rope.direction);
    }
    for load in &mut parts.loads {
        place(&mut load.at);
        match &mut load.kind {
            LoadKind::Mass(mass) => change(mass),
            LoadKind::Force {
                size,
                direction: acting,
            } => {
                change(size);
                direction(acting);
            }
        }
    }
}
