//! The forces on one body as sides of a triangle: unknown ones as wholes, given ones added up.

use super::angle::Turn;
use super::build::Builder;
use super::force::{Elementary, Source};
use super::triangle::{Contact, Side, no_triangle, turn_of};
use super::trouble::Underivable;
use super::{Expression, Meaning, Quantity, Rule};
use crate::key::Formula;
use crate::problem::GivenId;
use crate::system::{ActId, Bearing, Friction, HoldKind};
use crate::text::Symbol;
use crate::units::Dimension;

impl Builder<'_> {
    /// The unknown forces, each as a whole.
    pub(super) fn unknown_sides(
        &mut self,
        contacts: &mut Vec<Contact>,
    ) -> Result<Vec<Side>, Underivable> {
        let mut sides: Vec<Side> = Vec::new();
        let forces: Vec<Elementary> = (self.forces.iter())
            .filter(|force| force.unknown.is_some())
            .cloned()
            .collect();
        let mut met: Vec<ActId> = Vec::new();
        for force in forces {
            if met.contains(&force.act) {
                if self.places_of(force.act) > 1 {
                    return Err(self.pulls_twice(force.act));
                }
                continue;
            }
            met.push(force.act);
            let name = self.symbol_of(force.act);
            let hold = match force.act {
                ActId::Hold(index) => self.system.parts().holds.get(index),
                _ => None,
            };
            let mut size = None;
            let (turn, name) = match hold.map(|hold| &hold.kind) {
                Some(HoldKind::Hinge | HoldKind::BuiltIn) => {
                    size = self.hinge_at_limit(force.act);
                    (None, name)
                }
                Some(HoldKind::Rough { push, friction }) => {
                    let turn = self.contact_turn((&force, push, friction), contacts)?;
                    (turn, whole_name(&name))
                }
                Some(HoldKind::Line(_)) if self.size_found(force.act) < 0.0 => {
                    // It acts against the direction in which it is told.
                    (Some(force.turn.plus(1.0, &Turn::fixed(180.0))), name)
                }
                _ => (Some(force.turn.clone()), name),
            };
            sides.push(Side {
                name,
                is_sum: false,
                size,
                act: force.act,
                at: force.at.clone(),
                turn,
            });
        }
        Ok(sides)
    }

    /// The way in which a rough contact acts, push and friction as one force; `None` where friction is
    /// as needed.
    fn contact_turn(
        &mut self,
        (force, push, friction): (&Elementary, &Bearing, &Friction),
        contacts: &mut Vec<Contact>,
    ) -> Result<Option<Turn>, Underivable> {
        let (act, at) = (force.act, &force.at);
        let way = self.turn(push, at, Some(act));
        contacts.push(Contact {
            act,
            push: way.clone(),
            limit: self.told_by_condition(act),
        });
        match friction {
            Friction::AsNeeded | Friction::UpTo(_) => {
                let limit = self.slips(act);
                Ok(limit.map(|coefficient| {
                    let angle = self.friction_angle(act, coefficient);
                    way.clone().plus(self.slip_side(act), &angle)
                }))
            }
            Friction::Limiting {
                coefficient,
                bearing,
            } => {
                let along = self.turn(bearing, at, Some(act));
                let off = along.plus(-1.0, &way);
                let sine = libm::sin(off.value(&|atom| self.atom(atom)));
                if sine.abs() < 1.0 - 1e-9 {
                    return Err(no_triangle("friction is not square to the push"));
                }
                let angle = self.friction_angle(act, *coefficient);
                Ok(Some(way.plus(sine.signum(), &angle)))
            }
        }
    }

    /// The size of a hinge's force, where it is its limit by the condition.
    fn hinge_at_limit(&mut self, id: ActId) -> Option<Expression> {
        let known = self.told_by_condition(id);
        let act = self.system.act(id)?;
        known.or_else(|| self.at_limit(&act)).map(Formula::step)
    }

    /// The size of a force or of the push of a contact, where the condition says it.
    fn told_by_condition(&self, act: ActId) -> Option<Quantity> {
        let mut told = self.working.conditions.iter().copied();
        told.find(|id| {
            let named = self.working.named(*id);
            named.is_some_and(|named| named.meaning == Meaning::Force(act))
        })
    }

    /// The angle between the push of a contact at its limit and its force as a whole.
    fn friction_angle(&mut self, act: ActId, coefficient: GivenId) -> Turn {
        let formula = Formula::ArcTangent(Box::new(Formula::given(coefficient)));
        let wish = format!("φ_{}", self.suffix(act));
        turn_of(&self.angle_quantity(Meaning::Angle(act), &wish, formula))
    }

    /// Every force on the body by its name: the push and the friction of a contact are one.
    fn acting(&self) -> Vec<String> {
        let mut met: Vec<ActId> = Vec::new();
        let mut names = Vec::new();
        for force in &self.forces {
            if met.contains(&force.act) {
                continue;
            }
            met.push(force.act);
            let name = Symbol::new(self.symbol_of(force.act)).shown();
            names.push(
                match (self.is_rough(force.act), self.places_of(force.act)) {
                    (true, _) => format!("{name} with its friction"),
                    (false, places @ 2..) => format!("{name} (at {places} places)"),
                    _ => name,
                },
            );
        }
        names
    }

    /// At how many places an action pulls: a rope may pull at both of its ends.
    fn places_of(&self, act: ActId) -> usize {
        let of_it = self.forces.iter().filter(|force| force.act == act);
        match act {
            ActId::Cord(_) => of_it.count(),
            _ => of_it.count().min(1),
        }
    }

    /// Why there is no triangle with a rope that pulls at more than one place.
    fn pulls_twice(&self, act: ActId) -> Underivable {
        let mut acts: Vec<ActId> = self.forces.iter().map(|force| force.act).collect();
        acts.sort();
        acts.dedup();
        let count: usize = acts.iter().map(|act| self.places_of(*act)).sum();
        match count {
            0..4 => {
                let name = Symbol::new(self.symbol_of(act)).shown();
                no_triangle(&format!(
                    "{name} pulls at 2 places, and it is worked here for three different forces"
                ))
            }
            _ => self.too_many(),
        }
    }

    fn is_rough(&self, act: ActId) -> bool {
        let ActId::Hold(index) = act else {
            return false;
        };
        let hold = self.system.parts().holds.get(index);
        hold.is_some_and(|hold| matches!(hold.kind, HoldKind::Rough { .. }))
    }

    pub(super) fn too_many(&self) -> Underivable {
        Underivable::TooManyForces {
            names: self.acting(),
        }
    }

    pub(super) fn too_few(&self) -> Underivable {
        let names = self.acting();
        match &names[..] {
            [one, other] => no_triangle(&format!(
                "only two forces act on the body, {one} and {other}, and they are equal and opposite"
            )),
            _ => no_triangle("fewer than three forces act on the body"),
        }
    }

    fn size_found(&self, act: ActId) -> f64 {
        self.solution.reaction(act).map_or(0.0, |found| found.size)
    }

    /// The known forces beside so many unknown ones: loads are added up as far as must be, and a hold
    /// at its limit with them only where nothing else leaves three.
    pub(super) fn known_sides(
        &mut self,
        known: Vec<Elementary>,
        unknown: &[Side],
        contacts: &mut Vec<Contact>,
    ) -> Result<Vec<Side>, Underivable> {
        let (mut loads, mut held) = (Vec::new(), Vec::new());
        for force in &known {
            // Of a contact whose friction is unknown the whole is unknown.
            if unknown.iter().any(|side| side.act == force.act) {
                continue;
            }
            match force.act {
                ActId::Weight(_) | ActId::Load(_) => {
                    let size = match &force.size {
                        Source::Known => self.known_size(force.act),
                        Source::Formula(formula) => formula.clone(),
                    };
                    loads.push(Side {
                        name: self.name_of(&size),
                        is_sum: false,
                        size: Some(size),
                        act: force.act,
                        at: force.at.clone(),
                        turn: Some(force.turn.clone()),
                    });
                }
                _ => held.extend(self.held(force, contacts)?),
            }
        }
        let room = 3usize.saturating_sub(unknown.len());
        if loads.len() + held.len() <= room {
            loads.extend(held);
            return Ok(loads);
        }
        let apart = room.saturating_sub(held.len());
        if held.len() < room
            && let Some(added) = self.added(&loads, apart)
        {
            let mut sides = added?;
            sides.extend(held);
            return Ok(sides);
        }
        loads.extend(held);
        self.added(&loads, room)
            .unwrap_or_else(|| Err(self.too_many()))
    }

    /// A hold whose force is its limit by the condition; nothing for the friction of a contact, which
    /// is one force with its push.
    fn held(
        &mut self,
        force: &Elementary,
        contacts: &mut Vec<Contact>,
    ) -> Result<Option<Side>, Underivable> {
        let name = self.symbol_of(force.act);
        let Source::Formula(size) = &force.size else {
            return Ok(None);
        };
        let hold = match force.act {
            ActId::Hold(index) => self.system.parts().holds.get(index),
            _ => None,
        };
        let side = |name: String, size: Expression, turn: Turn| Side {
            name,
            is_sum: false,
            size: Some(size),
            act: force.act,
            at: force.at.clone(),
            turn: Some(turn),
        };
        if let Some(HoldKind::Rough { push, friction }) = hold.map(|hold| &hold.kind) {
            if contacts.iter().any(|known| known.act == force.act) {
                return Ok(None);
            }
            let turn = self.contact_turn((force, push, friction), contacts)?;
            let way = self.turn(push, &force.at, Some(force.act));
            let Some(turn) = turn else {
                return Err(no_triangle("the directions of two forces are unknown"));
            };
            let off = turn.between(&way, &|atom| self.atom(atom));
            let whole = self.whole_at_limit(force.act, size.clone(), &off);
            let whole = Formula::step(whole);
            return Ok(Some(side(whole_name(&name), whole, turn)));
        }
        // The triangle has sizes and the ways in which forces act.
        let is_against = self.number(size, false).is_some_and(|size| size < 0.0);
        let (size, turn) = match is_against {
            true => (
                Formula::Absolute(Box::new(size.clone())),
                force.turn.clone().plus(1.0, &Turn::fixed(180.0)),
            ),
            false => (size.clone(), force.turn.clone()),
        };
        Ok(Some(side(name, size, turn)))
    }

    /// The size of a contact's force as a whole, from its push and the angle between the two.
    pub(super) fn whole_at_limit(&mut self, act: ActId, push: Expression, off: &Turn) -> Quantity {
        let name = self.own_name(&whole_name(&self.symbol_of(act)));
        let formula = match off.fixed_degrees() {
            Some(0.0) => push,
            _ => push.over(off.cosine()),
        };
        let rule = Rule::Formula(formula);
        self.add(name, Dimension::FORCE, Meaning::Size(act), rule)
    }
}

/// What the push and the friction of a contact are called as one force.
fn whole_name(push: &str) -> String {
    format!("R_{}", push.replace('_', ""))
}
