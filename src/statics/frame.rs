//! From a system of bodies to bare equilibrium, and back to its forces.

use super::{Action, Balance, Equilibrium, Motion, Sense, UnknownColumn, Unsolvable};
use crate::plane::Vector;
use crate::problem::{GivenId, Place};
use crate::system::{Act, ActId, BodyId, Effect, Friction, Hold, HoldKind, Line, Size, System};
use std::collections::BTreeMap;

/// What an action turned out to be, told for the body that is named first.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Reaction {
    /// Where it acts, in metres.
    pub at: Vector,
    /// The force on the body, in newtons.
    pub force: Vector,
    /// Its size in newtons: with a sign where it has a line, positive along it.
    pub size: f64,
    /// The couple on the body, in newton metres, anticlockwise positive.
    pub couple: f64,
    /// Of a rough contact: the push along its bearing and friction square to it, to the left of
    /// one who looks along the push.
    pub contact: Option<(f64, f64)>,
}

/// A force above this many times the largest load is told with caution.
const STRAINED: f64 = 1e4;

/// A force that is very large beside the loads.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strained {
    /// Which.
    pub act: ActId,
    /// Its size, in newtons.
    pub size_n: f64,
    /// The largest load, in newtons.
    pub load_n: f64,
}

/// Every force of a system, found.
#[derive(Clone, Debug, PartialEq)]
pub struct SystemSolution {
    reactions: BTreeMap<ActId, Reaction>,
    equilibrium: Equilibrium,
    balance: Balance,
}

impl SystemSolution {
    /// One action.
    pub fn reaction(&self, id: ActId) -> Option<Reaction> {
        self.reactions.get(&id).copied()
    }

    /// All actions: weights, loads, ropes, holds.
    pub fn all(&self) -> impl Iterator<Item = (ActId, Reaction)> + '_ {
        self.reactions.iter().map(|(id, found)| (*id, *found))
    }

    /// What is left of the forces (N) and of the moments about `pivot` (N m) on one body.
    pub fn residual(&self, body: BodyId, pivot: Vector) -> (Vector, f64) {
        let values = self.balance.values();
        self.equilibrium.residual(values, body.0, pivot)
    }

    /// The largest load, in newtons, and how far apart the forces act, in metres.
    pub fn scales(&self) -> (f64, f64) {
        (self.balance.force_scale(), self.balance.length_scale())
    }

    /// The largest force, where it is so large beside the largest load that the lines of action
    /// can hardly be told from ones that hold nothing: a hair's breadth changes it many times over.
    pub fn strained(&self) -> Option<Strained> {
        let load_n = self.balance.force_scale();
        let sizes = self.all().map(|(act, found)| (act, found.force.size()));
        let (act, size_n) = sizes.max_by(|(_, one), (_, other)| one.total_cmp(other))?;
        (size_n > STRAINED * load_n).then_some(Strained {
            act,
            size_n,
            load_n,
        })
    }

    /// Motions that nothing resists, though these loads do not cause them.
    pub fn free_motions(&self) -> &[Motion] {
        self.balance.free_motions()
    }

    /// The value of the unknown that came last.
    pub(super) fn last_unknown(&self) -> f64 {
        self.balance.values().last().copied().unwrap_or(f64::NAN)
    }

    /// The equations that were solved.
    pub fn equilibrium(&self) -> &Equilibrium {
        &self.equilibrium
    }
}

/// Which unknowns an action stands on, by their places.
#[derive(Clone, Copy)]
pub(super) enum Columns {
    Known,
    Line(usize),
    Point(usize, usize, Option<usize>),
    Couple(usize),
    /// The push, friction (none where it is at its limit: then the push carries it), a couple of
    /// a base.
    Contact(usize, Option<usize>, Option<usize>),
}

/// Finds every force of a system at these values of its givens.
///
/// # Errors
/// Why there is no answer: see [`Unsolvable`]. Beside those of [`super::solve`]: a contact that
/// would slip, a base that would topple.
pub fn solve_system(
    system: &System,
    values: &[f64],
    gravity: f64,
) -> Result<SystemSolution, Unsolvable> {
    let solution = any_sense(system, values, gravity)?;
    solution.equilibrium.solve()?;
    holding(system, &solution, values)?;
    Ok(solution)
}

/// The same without a look at senses and friction: ropes may push here, contacts pull.
pub(super) fn any_sense(
    system: &System,
    values: &[f64],
    gravity: f64,
) -> Result<SystemSolution, Unsolvable> {
    steadied(system, values, gravity, None)
}

/// The same; a body that is free to turn may be held by a couple, the last of the unknowns.
pub(super) fn steadied(
    system: &System,
    values: &[f64],
    gravity: f64,
    held: Option<BodyId>,
) -> Result<SystemSolution, Unsolvable> {
    checked(system, values, gravity)?;
    let mut equilibrium = Equilibrium::new();
    let acts = system.acts();
    let columns: Vec<Columns> = acts
        .iter()
        .map(|act| add(&mut equilibrium, system, act, values, gravity))
        .collect();
    if let Some(body) = held {
        equilibrium.unknown(UnknownColumn::couple("the couple that holds it", body.0));
    }
    let balance = equilibrium.with_any_sense().solve()?;
    let reactions = acts
        .iter()
        .zip(&columns)
        .map(|(act, columns)| {
            let found = read_back(system, act, *columns, &balance, values, gravity);
            (act.id, found)
        })
        .collect();
    Ok(SystemSolution {
        reactions,
        equilibrium,
        balance,
    })
}

fn checked(system: &System, values: &[f64], gravity: f64) -> Result<(), Unsolvable> {
    let expected = system.givens().len();
    if values.len() != expected {
        return Err(Unsolvable::WrongValues {
            expected,
            found: values.len(),
        });
    }
    let bad = system
        .givens()
        .iter()
        .zip(values)
        .find(|(_, value)| !value.is_finite());
    if let Some((given, _)) = bad {
        let what = given.symbol.to_string();
        return Err(Unsolvable::NotFinite { what });
    }
    if !gravity.is_finite() {
        let what = "the acceleration of free fall".to_owned();
        return Err(Unsolvable::NotFinite { what });
    }
    Ok(())
}

/// Size of an action that is known beforehand, in newtons or newton metres.
pub(crate) fn known_size(
    system: &System,
    size: &Size,
    values: &[f64],
    gravity: f64,
) -> Option<f64> {
    match size {
        Size::Weight(mass) => Some(values[mass.0] * gravity),
        Size::Lamina(weight) => Some(system.lamina(*weight)?.mass(values) * gravity),
        Size::Given(size) => Some(values[size.0]),
        Size::Spread {
            length,
            from,
            to,
            first,
            last,
        } => {
            let along = |place: &Place| place.distance(*length, values);
            let value = |given: &Option<GivenId>| given.map_or(0.0, |given| values[given.0]);
            Some(0.5 * (value(first) + value(last)) * (along(to) - along(from)).abs())
        }
        Size::Unknown => None,
    }
}

/// Adds what an action puts into the equations.
pub(super) fn add(
    equilibrium: &mut Equilibrium,
    system: &System,
    act: &Act<'_>,
    values: &[f64],
    gravity: f64,
) -> Columns {
    let name = act.symbol.to_string();
    if let Some(size) = known_size(system, &act.size, values, gravity) {
        for effect in &act.on {
            let action = match &effect.line {
                Line::Couple(turning) => {
                    let sign = turning.map_or(1.0, |turning| turning.sign());
                    Action::couple(effect.body.0, sign * size)
                }
                Line::Known(bearing) => {
                    let unit = system.unit(bearing, &effect.at, values);
                    Action::force(effect.body.0, system.point(&effect.at, values), unit * size)
                }
                Line::Open => continue,
            };
            equilibrium.load(action);
        }
        return Columns::Known;
    }
    match act.id {
        ActId::Hold(index) => match system.parts().holds.get(index) {
            Some(hold) => add_hold(equilibrium, system, act, hold, values),
            None => Columns::Known,
        },
        _ => Columns::Line(line(equilibrium, system, act, &name, Sense::Pull, values)),
    }
}

/// One unknown along the lines of all effects.
fn line(
    equilibrium: &mut Equilibrium,
    system: &System,
    act: &Act<'_>,
    name: &str,
    sense: Sense,
    values: &[f64],
) -> usize {
    let acts = act
        .on
        .iter()
        .filter_map(|effect| {
            let Line::Known(bearing) = &effect.line else {
                return None;
            };
            let unit = system.unit(bearing, &effect.at, values);
            Some(force_on(system, effect, unit, values))
        })
        .collect();
    equilibrium.unknown(UnknownColumn {
        name: name.to_owned(),
        acts,
        sense,
    })
}

fn force_on(system: &System, effect: &Effect, unit: Vector, values: &[f64]) -> Action {
    let sign = if effect.reversed { -1.0 } else { 1.0 };
    let at = system.point(&effect.at, values);
    Action::force(effect.body.0, at, unit * sign)
}

pub(super) fn add_hold(
    equilibrium: &mut Equilibrium,
    system: &System,
    act: &Act<'_>,
    hold: &Hold,
    values: &[f64],
) -> Columns {
    let name = act.symbol.to_string();
    let force = |equilibrium: &mut Equilibrium, name: String, unit: Vector, sense: Sense| {
        let acts = act
            .on
            .iter()
            .map(|effect| force_on(system, effect, unit, values))
            .collect();
        equilibrium.unknown(UnknownColumn { name, acts, sense })
    };
    let couple = |equilibrium: &mut Equilibrium, name: String| {
        let acts = act
            .on
            .iter()
            .map(|effect| Action::couple(effect.body.0, if effect.reversed { -1.0 } else { 1.0 }))
            .collect();
        equilibrium.unknown(UnknownColumn {
            name,
            acts,
            sense: Sense::Either,
        })
    };
    let (right, up) = (Vector::new(1.0, 0.0), Vector::new(0.0, 1.0));
    match &hold.kind {
        HoldKind::Hinge | HoldKind::BuiltIn => {
            let x = force(equilibrium, format!("{name}x"), right, Sense::Either);
            let y = force(equilibrium, format!("{name}y"), up, Sense::Either);
            let turns = (hold.kind == HoldKind::BuiltIn)
                .then(|| couple(equilibrium, format!("couple of {name}")));
            Columns::Point(x, y, turns)
        }
        HoldKind::Push(_) => {
            Columns::Line(line(equilibrium, system, act, &name, Sense::Push, values))
        }
        HoldKind::Line(_) => {
            Columns::Line(line(equilibrium, system, act, &name, Sense::Either, values))
        }
        HoldKind::Couple => Columns::Couple(couple(equilibrium, name)),
        HoldKind::Rough { push, friction } => {
            let push = system.unit(push, &hold.at, values);
            let (unit, own) = contact_unit(system, hold, push, friction, values);
            let normal = force(equilibrium, name.clone(), unit, Sense::Push);
            let tangent = own.then(|| {
                let name = format!("friction of {name}");
                force(equilibrium, name, push.quarter_turn(), Sense::Either)
            });
            Columns::Contact(normal, tangent, None)
        }
        HoldKind::Base { push, friction, .. } => {
            let push = system.unit(push, &hold.at, values);
            let (unit, own) = contact_unit(system, hold, push, friction, values);
            let normal = force(equilibrium, name.clone(), unit, Sense::Push);
            let tangent = own.then(|| {
                let name = format!("friction of {name}");
                force(equilibrium, name, push.quarter_turn(), Sense::Either)
            });
            let turns = couple(equilibrium, format!("couple of {name}"));
            Columns::Contact(normal, tangent, Some(turns))
        }
    }
}

/// The action of one newton of push, with the friction that goes with it at the limit; and
/// whether friction is an unknown of its own.
fn contact_unit(
    system: &System,
    hold: &Hold,
    push: Vector,
    friction: &Friction,
    values: &[f64],
) -> (Vector, bool) {
    match friction {
        Friction::AsNeeded | Friction::UpTo(_) => (push, true),
        Friction::Limiting {
            coefficient,
            bearing,
        } => {
            let way = system.unit(bearing, &hold.at, values);
            (push + way * values[coefficient.0], false)
        }
    }
}

fn read_back(
    system: &System,
    act: &Act<'_>,
    columns: Columns,
    balance: &Balance,
    values: &[f64],
    gravity: f64,
) -> Reaction {
    let value = |column: usize| balance.values().get(column).copied().unwrap_or(0.0);
    let Some(effect) = act.on.first() else {
        return Reaction::default();
    };
    let at = system.point(&effect.at, values);
    let unit = match &effect.line {
        Line::Known(bearing) => system.unit(bearing, &effect.at, values),
        _ => Vector::default(),
    };
    let mut found = Reaction {
        at,
        ..Reaction::default()
    };
    match columns {
        Columns::Known => {
            let size = known_size(system, &act.size, values, gravity).unwrap_or(0.0);
            found.size = size;
            match &effect.line {
                Line::Couple(turning) => {
                    found.couple = turning.map_or(1.0, |turning| turning.sign()) * size;
                }
                _ => found.force = unit * size,
            }
        }
        Columns::Line(column) => {
            found.size = value(column);
            found.force = unit * found.size;
        }
        Columns::Point(x, y, turns) => {
            found.force = Vector::new(value(x), value(y));
            found.size = found.force.size();
            found.couple = turns.map_or(0.0, value);
        }
        Columns::Couple(column) => {
            found.couple = value(column);
            found.size = found.couple;
        }
        Columns::Contact(normal, tangent, turns) => {
            if let ActId::Hold(index) = act.id
                && let Some(hold) = system.parts().holds.get(index)
                && let HoldKind::Rough { push, friction } | HoldKind::Base { push, friction, .. } =
                    &hold.kind
            {
                let push = system.unit(push, &hold.at, values);
                let (unit, _) = contact_unit(system, hold, push, friction, values);
                let across = push.quarter_turn();
                found.force = unit * value(normal) + across * tangent.map_or(0.0, value);
                found.contact = Some((found.force.dot(push), found.force.dot(across)));
            }
            found.size = found.force.size();
            found.couple = turns.map_or(0.0, value);
        }
    }
    found
}

/// Friction no larger than the contact can give, pushes within their bases.
fn holding(system: &System, solution: &SystemSolution, values: &[f64]) -> Result<(), Unsolvable> {
    let slack = 1e-9 * solution.balance.force_scale();
    for (index, hold) in system.parts().holds.iter().enumerate() {
        let found = solution.reaction(ActId::Hold(index));
        let Some((found, (push, friction))) = found.and_then(|f| Some((f, f.contact?))) else {
            continue;
        };
        let name = || hold.symbol.to_string();
        if let HoldKind::Rough {
            friction: Friction::UpTo(coefficient),
            ..
        }
        | HoldKind::Base {
            friction: Friction::UpTo(coefficient),
            ..
        } = &hold.kind
        {
            let most = values[coefficient.0] * push;
            if friction.abs() > most + slack {
                return Err(Unsolvable::WouldSlip {
                    contact: name(),
                    needed_n: friction.abs(),
                    most_n: most,
                });
            }
        }
        if let HoldKind::Base { width, .. } = &hold.kind {
            let (half, off) = (0.5 * values[width.0], found.couple.abs());
            if off > half * push + slack * half {
                return Err(Unsolvable::WouldTopple {
                    base: name(),
                    off_m: off / push,
                    half_m: half,
                });
            }
        }
    }
    Ok(())
}
