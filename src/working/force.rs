//! Every action taken apart into forces along known directions, and couples.

use super::angle::Turn;
use super::build::Builder;
use super::{Expression, Meaning, Quantity, Rule};
use crate::key::{Atom, Axis, Formula, difference, place_length};
use crate::problem::GivenId;
use crate::system::{Act, ActId, Bearing, BodyId, Effect, Friction, HoldKind, Line, Size, Spot};
use crate::text::Symbol;
use crate::units::Dimension;

/// A force along a known direction: its size is known, or a multiple of an unknown.
#[derive(Clone, Debug)]
pub(super) struct Elementary {
    pub(super) act: ActId,
    pub(super) body: BodyId,
    /// The body that meets the reverse.
    pub(super) partner: Option<BodyId>,
    pub(super) at: Spot,
    pub(super) turn: Turn,
    /// −1 where the body meets the reverse.
    pub(super) sign: f64,
    pub(super) size: Source,
    pub(super) unknown: Option<Quantity>,
}

/// Where a size comes from; known sizes become quantities only when they are needed.
#[derive(Clone, Debug)]
pub(super) enum Source {
    /// Known before anything is worked out.
    Known,
    /// This formula.
    Formula(Expression),
}

/// A couple.
#[derive(Clone, Debug)]
pub(super) struct Twist {
    pub(super) act: ActId,
    pub(super) body: BodyId,
    pub(super) partner: Option<BodyId>,
    pub(super) sign: f64,
    pub(super) size: Source,
    pub(super) unknown: Option<Quantity>,
}

impl Builder<'_> {
    /// Takes every action apart.
    pub(super) fn take_apart(&mut self) {
        for act in self.system.acts() {
            if self.vanishes(&act) {
                continue;
            }
            if act.size == Size::Unknown {
                self.unknown_act(&act);
            } else {
                self.known_act(&act);
            }
        }
    }

    fn known_act(&mut self, act: &Act<'_>) {
        for effect in &act.on {
            match &effect.line {
                Line::Known(bearing) => {
                    let turn = self.turn(bearing, &effect.at, Some(act.id));
                    self.forces.push(Elementary {
                        act: act.id,
                        body: effect.body,
                        partner: None,
                        at: effect.at.clone(),
                        turn,
                        sign: 1.0,
                        size: Source::Known,
                        unknown: None,
                    });
                }
                Line::Couple(turning) => self.twists.push(Twist {
                    act: act.id,
                    body: effect.body,
                    partner: None,
                    sign: turning.map_or(1.0, |turning| turning.sign()),
                    size: Source::Known,
                    unknown: None,
                }),
                Line::Open => {}
            }
        }
    }

    fn unknown_act(&mut self, act: &Act<'_>) {
        if self.reaches(act) {
            return;
        }
        let ActId::Hold(index) = act.id else {
            let force = self.unknown(
                act.symbol.as_str(),
                Dimension::FORCE,
                Meaning::Force(act.id),
            );
            self.along_lines(act, force, Some(force));
            return;
        };
        let Some(hold) = self.system.parts().holds.get(index) else {
            return;
        };
        let symbol = act.symbol.as_str();
        match &hold.kind {
            HoldKind::Push(_) | HoldKind::Line(_) => {
                let force = self.unknown(symbol, Dimension::FORCE, Meaning::Force(act.id));
                self.along_lines(act, force, Some(force));
            }
            HoldKind::Hinge | HoldKind::BuiltIn => {
                for (axis, degrees) in [(Axis::Horizontal, 0.0), (Axis::Vertical, 90.0)] {
                    let meaning = Meaning::Component(act.id, axis);
                    let name = part_name(symbol, axis);
                    let force = self.unknown(&name, Dimension::FORCE, meaning);
                    self.at_effects(
                        act,
                        &Turn::fixed(degrees),
                        Formula::step(force),
                        Some(force),
                    );
                }
                if hold.kind == HoldKind::BuiltIn {
                    let name = format!("M_{}", symbol.replace('_', ""));
                    self.twist(act, &name);
                }
            }
            HoldKind::Couple => self.twist(act, symbol),
            HoldKind::Rough { push, friction } => {
                self.contact(act, &hold.at, push, friction);
            }
            HoldKind::Base {
                push,
                friction,
                width,
            } => {
                let normal = self.contact(act, &hold.at, push, friction);
                if self.at_edge(act, normal, *width) {
                    return;
                }
                let name = format!("M_{}", symbol.replace('_', ""));
                self.twist(act, &name);
            }
        }
    }

    /// The push of a rough contact, and its friction.
    fn contact(
        &mut self,
        act: &Act<'_>,
        at: &Spot,
        push: &Bearing,
        friction: &Friction,
    ) -> Quantity {
        let symbol = act.symbol.as_str();
        let at_limit = self.at_limit(act);
        let normal = at_limit
            .unwrap_or_else(|| self.unknown(symbol, Dimension::FORCE, Meaning::Force(act.id)));
        let open = at_limit.is_none().then_some(normal);
        let turn = self.turn(push, at, Some(act.id));
        self.at_effects(act, &turn, Formula::step(normal), open);
        let name = self.unique(&format!("F_{}", symbol.replace('_', "")));
        if let Some(coefficient) = self.slips(act.id) {
            // At the limit it acts the way in which it is needed.
            let across = turn.plus(self.slip_side(act.id), &Turn::fixed(90.0));
            let limit = self.limiting(act, name, coefficient, &across, (normal, open));
            self.working.conditions.push(limit);
            return normal;
        }
        match friction {
            Friction::AsNeeded | Friction::UpTo(_) => {
                let meaning = Meaning::FrictionNeeded(act.id);
                let needed = self.unknown(name.as_str(), Dimension::FORCE, meaning);
                let across = turn.plus(1.0, &Turn::fixed(90.0));
                self.at_effects(act, &across, Formula::step(needed), Some(needed));
            }
            Friction::Limiting {
                coefficient,
                bearing,
            } => {
                let way = self.turn(bearing, at, Some(act.id));
                self.limiting(act, name, *coefficient, &way, (normal, open));
            }
        }
        normal
    }

    /// Limiting friction this way, of a push that may be open.
    fn limiting(
        &mut self,
        act: &Act<'_>,
        name: Symbol,
        coefficient: GivenId,
        way: &Turn,
        (normal, open): (Quantity, Option<Quantity>),
    ) -> Quantity {
        let formula = Formula::given(coefficient).times(Formula::step(normal));
        let meaning = Meaning::Friction(act.id);
        let limit = self.add(name, Dimension::FORCE, meaning, Rule::Formula(formula));
        self.at_effects(act, way, Formula::step(limit), open);
        limit
    }

    fn unknown(&mut self, name: &str, dimension: Dimension, meaning: Meaning) -> Quantity {
        let symbol = self.unique(name);
        self.add(symbol, dimension, meaning, Rule::Solved(usize::MAX))
    }

    /// The lines of a force whose size is this quantity; `unknown` where it is to be found.
    pub(super) fn along_lines(
        &mut self,
        act: &Act<'_>,
        force: Quantity,
        unknown: Option<Quantity>,
    ) {
        for (index, effect) in act.on.iter().enumerate() {
            let Line::Known(bearing) = &effect.line else {
                continue;
            };
            let turn = match self.first_end(act, index) {
                Some(first) => first.plus(1.0, &Turn::fixed(180.0)),
                None => self.turn(bearing, &effect.at, Some(act.id)),
            };
            let partner = partner(act, index);
            self.forces.push(Elementary {
                act: act.id,
                body: effect.body,
                partner,
                at: effect.at.clone(),
                turn,
                sign: if effect.reversed { -1.0 } else { 1.0 },
                size: Source::Formula(Formula::step(force)),
                unknown,
            });
        }
    }

    /// The direction at the first end of a straight rope, at the end that pulls back along it.
    fn first_end(&mut self, act: &Act<'_>, index: usize) -> Option<Turn> {
        let ([first, second], 1) = (&act.on[..], index) else {
            return None;
        };
        let runs_to = |effect: &Effect, other: &Effect| matches!(&effect.line, Line::Known(Bearing::Towards(spot)) if *spot == other.at);
        let Line::Known(bearing) = &first.line else {
            return None;
        };
        let is_straight = runs_to(first, second) && runs_to(second, first);
        is_straight.then(|| self.turn(bearing, &first.at, Some(act.id)))
    }

    fn at_effects(
        &mut self,
        act: &Act<'_>,
        turn: &Turn,
        size: Expression,
        unknown: Option<Quantity>,
    ) {
        for (index, effect) in act.on.iter().enumerate() {
            self.forces.push(Elementary {
                act: act.id,
                body: effect.body,
                partner: partner(act, index),
                at: effect.at.clone(),
                turn: turn.clone(),
                sign: if effect.reversed { -1.0 } else { 1.0 },
                size: Source::Formula(size.clone()),
                unknown,
            });
        }
    }

    fn twist(&mut self, act: &Act<'_>, name: &str) {
        let couple = self.unknown(name, Dimension::MOMENT, Meaning::Couple(act.id));
        self.twists_of(act, couple, couple, 1.0);
    }

    /// The turning of a couple of this size on its body, and the reverse on another.
    pub(super) fn twists_of(
        &mut self,
        act: &Act<'_>,
        couple: Quantity,
        unknown: Quantity,
        sign: f64,
    ) {
        for (index, effect) in act.on.iter().enumerate() {
            self.twists.push(Twist {
                act: act.id,
                body: effect.body,
                partner: partner(act, index),
                sign: if effect.reversed { -sign } else { sign },
                size: Source::Formula(Formula::step(couple)),
                unknown: Some(unknown),
            });
        }
    }

    /// The size of a known action as a formula; its quantity is made when it is first needed.
    pub(super) fn known_size(&mut self, id: ActId) -> Expression {
        let Some(act) = self.system.act(id) else {
            return Formula::Number(0.0);
        };
        match &act.size {
            Size::Given(size) => Formula::given(*size),
            Size::Weight(mass) => {
                let meaning = Meaning::Weight(id);
                if let Some(known) = self.working.find(meaning) {
                    return Formula::step(known);
                }
                let formula = Formula::given(*mass).times(Formula::Atom(Atom::Gravity));
                let symbol = self.unique(act.symbol.as_str());
                let weight = self.add(symbol, Dimension::FORCE, meaning, Rule::Formula(formula));
                Formula::step(weight)
            }
            Size::Lamina(weight) => {
                let meaning = Meaning::Weight(id);
                if let Some(known) = self.working.find(meaning) {
                    return Formula::step(known);
                }
                let mass = self.lamina_mass(*weight);
                let formula = mass.times(Formula::Atom(Atom::Gravity));
                let symbol = self.unique(act.symbol.as_str());
                let weight = self.add(symbol, Dimension::FORCE, meaning, Rule::Formula(formula));
                Formula::step(weight)
            }
            Size::Spread {
                length,
                from,
                to,
                first,
                last,
            } => {
                let meaning = Meaning::Resultant(id);
                if let Some(known) = self.working.find(meaning) {
                    return Formula::step(known);
                }
                let (begins, ends) = (place_length(*from, *length), place_length(*to, *length));
                // A load may be told from its farther end.
                let backward = self.number(&begins, false) > self.number(&ends, false);
                let span = match backward {
                    true => difference(begins, ends),
                    false => difference(ends, begins),
                };
                let mean = match (first, last) {
                    (Some(first), Some(last)) if first == last => Formula::given(*first),
                    (Some(one), None) | (None, Some(one)) => {
                        Formula::given(*one).over(Formula::Number(2.0))
                    }
                    (Some(first), Some(last)) => {
                        Formula::Sum(vec![Formula::given(*first), Formula::given(*last)])
                            .over(Formula::Number(2.0))
                    }
                    (None, None) => Formula::Number(0.0),
                };
                let symbol = self.unique(act.symbol.as_str());
                let formula = Rule::Formula(mean.times(span));
                Formula::step(self.add(symbol, Dimension::FORCE, meaning, formula))
            }
            Size::Unknown => Formula::Number(0.0),
        }
    }
}

/// The other body of a joint.
fn partner(act: &Act<'_>, index: usize) -> Option<BodyId> {
    let reverses = act.on.iter().any(|effect| effect.reversed);
    act.on
        .iter()
        .enumerate()
        .find(|(other, _)| reverses && *other != index)
        .map(|(_, effect)| effect.body)
}

/// The name of a force's part along an axis.
pub(super) fn part_name(symbol: &str, axis: Axis) -> String {
    let letter = match axis {
        Axis::Horizontal => "x",
        Axis::Vertical => "y",
    };
    let joint = if symbol.contains('_') { "" } else { "_" };
    format!("{symbol}{joint}{letter}")
}
