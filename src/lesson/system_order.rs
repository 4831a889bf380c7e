//! The order of a system's givens: every reference to them, and putting them into another order.

use crate::problem::{GivenId, Place};
use crate::system::{
    Bearing, Coordinate, Friction, HoldKind, Lamina, LaminaMass, LoadKind, Parts, Shape, Spot,
    WeightKind, When,
};

/// Puts the givens into this order of their present places; those that are not named are left out.
pub(super) fn renumber(parts: &mut Parts, order: &[usize]) {
    let moved = |given: &mut GivenId| {
        let place = order.iter().position(|&old| old == given.0);
        // A reference to what is told nowhere leads nowhere; it was reported.
        given.0 = place.unwrap_or(usize::MAX);
    };
    each_given(parts, &moved);
    let old = &parts.givens;
    parts.givens = order
        .iter()
        .filter_map(|&place| old.get(place).cloned())
        .collect();
}

/// Every reference to a given among the parts.
fn each_given(parts: &mut Parts, change: &dyn Fn(&mut GivenId)) {
    for body in &mut parts.bodies {
        spot(&mut body.start, change);
        for leg in &mut body.legs {
            change(&mut leg.length);
            bearing(&mut leg.bearing, change);
        }
    }
    for weight in &mut parts.weights {
        match &mut weight.kind {
            WeightKind::Point { at, mass } => {
                spot(at, change);
                change(mass);
            }
            WeightKind::Lamina(found) => lamina(found, change),
        }
    }
    for part in &mut parts.loads {
        load(&mut part.kind, change);
    }
    for end in parts.cords.iter_mut().flat_map(|cord| &mut cord.ends) {
        spot(&mut end.at, change);
        bearing(&mut end.bearing, change);
    }
    for part in &mut parts.holds {
        spot(&mut part.at, change);
        hold(&mut part.kind, change);
    }
    if let Some(sought) = &mut parts.sought {
        change(&mut sought.given);
        match &mut sought.when {
            When::Reaches { limit: given, .. }
            | When::Slips {
                coefficient: given, ..
            } => {
                change(given);
            }
            When::Vanishes(_) | When::Topples(_) | When::Rests(_) => {}
        }
    }
}

fn place(place: &mut Place, change: &dyn Fn(&mut GivenId)) {
    if let Place::At(given) = place {
        change(given);
    }
}

fn spot(spot: &mut Spot, change: &dyn Fn(&mut GivenId)) {
    let along = |axis: &mut Coordinate| axis.0.iter_mut().for_each(|(_, given)| change(given));
    match spot {
        Spot::Origin | Spot::Resultant(_) | Spot::Centroid(_) => {}
        Spot::On { place: at, .. } => place(at, change),
        Spot::At { x, y } => {
            along(x);
            along(y);
        }
    }
}

fn lamina(lamina: &mut Lamina, change: &dyn Fn(&mut GivenId)) {
    match &mut lamina.mass {
        LaminaMass::Whole(given) | LaminaMass::PerArea(given) => change(given),
        LaminaMass::OfPieces => {}
    }
    for piece in &mut lamina.pieces {
        match &mut piece.shape {
            Shape::Rectangle { width, height } => {
                change(width);
                change(height);
            }
            Shape::Triangle {
                width,
                height,
                apex,
            } => {
                change(width);
                change(height);
                place(apex, change);
            }
            Shape::Disc { radius }
            | Shape::Semicircle { radius }
            | Shape::QuarterCircle { radius } => change(radius),
        }
        for axis in [&mut piece.x, &mut piece.y] {
            axis.0.iter_mut().for_each(|(_, given)| change(given));
        }
        piece.mass.iter_mut().for_each(change);
    }
}

fn bearing(bearing: &mut Bearing, change: &dyn Fn(&mut GivenId)) {
    match bearing {
        Bearing::Oblique { angle, .. }
        | Bearing::FromAxis { angle }
        | Bearing::FromLeg { angle, .. } => {
            change(angle);
        }
        Bearing::Towards(to) => spot(to, change),
        Bearing::Up
        | Bearing::Down
        | Bearing::Level(_)
        | Bearing::Along { .. }
        | Bearing::Across { .. } => {}
    }
}

fn load(kind: &mut LoadKind, change: &dyn Fn(&mut GivenId)) {
    match kind {
        LoadKind::Mass { at, mass } => {
            spot(at, change);
            change(mass);
        }
        LoadKind::Force {
            at,
            size,
            bearing: way,
        } => {
            spot(at, change);
            change(size);
            bearing(way, change);
        }
        LoadKind::Couple { size, .. } => change(size),
        LoadKind::Spread {
            from,
            to,
            first,
            last,
            bearing: way,
            ..
        } => {
            place(from, change);
            place(to, change);
            first.iter_mut().chain(last).for_each(change);
            bearing(way, change);
        }
    }
}

fn hold(kind: &mut HoldKind, change: &dyn Fn(&mut GivenId)) {
    let friction = |friction: &mut Friction| match friction {
        Friction::AsNeeded => {}
        Friction::UpTo(coefficient) => change(coefficient),
        Friction::Limiting {
            coefficient,
            bearing: way,
        } => {
            change(coefficient);
            bearing(way, change);
        }
    };
    match kind {
        HoldKind::Hinge | HoldKind::BuiltIn | HoldKind::Couple => {}
        HoldKind::Push(way) | HoldKind::Line(way) => bearing(way, change),
        HoldKind::Rough { push, friction: of } => {
            bearing(push, change);
            friction(of);
        }
        HoldKind::Base {
            push,
            friction: of,
            width,
        } => {
            bearing(push, change);
            friction(of);
            change(width);
        }
    }
}
