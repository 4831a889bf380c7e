//! What the steps of a walk are called, as plain data.

use super::{Balance, Kind, Meaning, Named, Quantity, Rule, Working, spot_name};
use crate::key::{Axis, Heading};
use crate::system::{ActId, Effect, HoldKind, Line, System, When};

/// Headings of the steps of a working.
pub(super) struct Headings<'a> {
    system: &'a System,
    working: &'a Working,
    /// The printed numbers, with what is sought found.
    values: &'a [f64],
}

impl<'a> Headings<'a> {
    pub(super) fn new(system: &'a System, working: &'a Working, values: &'a [f64]) -> Headings<'a> {
        Headings {
            system,
            working,
            values,
        }
    }

    pub(super) fn of_quantity(&self, id: Quantity) -> Heading {
        let Some(named) = self.working.named(id) else {
            return Heading::default();
        };
        let (kind, act) = kind_of(named.meaning);
        let mut heading = Heading {
            kind,
            ..act.map_or_else(Heading::default, |act| self.of_act(act))
        };
        match named.meaning {
            Meaning::Force(act) => heading.kind = self.force_kind(act),
            Meaning::Across(act) | Meaning::Along(act) => {
                heading.force = self.friction_in(named).unwrap_or(heading.force);
                heading.bodies = self.parted_on(id, act).into_iter().collect();
            }
            Meaning::Angle(act) => {
                // It is the angle of the part that rests on it.
                let mut all = (0..self.working.quantities.len()).map(Quantity);
                let part = all.find(|part| self.rests_on(*part, id));
                heading.bodies = part
                    .and_then(|part| self.parted_on(part, act))
                    .into_iter()
                    .collect();
            }
            Meaning::Part(act, axis) => {
                heading.force = self.friction_in(named).unwrap_or(heading.force);
                heading.end = self.end_of(id, act, axis).unwrap_or_default();
            }
            Meaning::Area(_) | Meaning::PieceAt(..) => {
                heading.noun = self.piece_of(id, heading.noun)
            }
            _ => {}
        }
        heading
    }

    /// True for a part whose formula holds this quantity.
    fn rests_on(&self, part: Quantity, of: Quantity) -> bool {
        let named = self.working.named(part);
        named.is_some_and(|named| match &named.rule {
            Rule::Formula(formula) => {
                let is_part = matches!(named.meaning, Meaning::Across(_) | Meaning::Along(_));
                is_part && formula.inputs().contains(&of)
            }
            _ => false,
        })
    }

    /// The noun of the body across or along which a part lies, of what acts on several.
    fn parted_on(&self, part: Quantity, act: ActId) -> Option<String> {
        if self.system.act(act)?.on.len() < 2 {
            return None;
        }
        let mut balances = self.working.stages.iter().flat_map(|one| &one.balances);
        let balance = balances.find(|balance| {
            let mut terms = balance.terms.iter();
            terms.any(|term| term.amount.inputs().contains(&part))
        })?;
        let body = match (&balance.kind, balance.bodies.as_slice()) {
            (Kind::Tilted { body, .. }, _) | (_, [body]) => body,
            _ => return None,
        };
        Some(self.system.parts().bodies.get(body.0)?.noun.clone())
    }

    /// The way of the end of a rope that a part is of, where the rope pulls the same body in
    /// several ways: over a pulley at its end.
    fn end_of(&self, part: Quantity, act: ActId, axis: Axis) -> Option<&'static str> {
        let values = self.values;
        let size = self.working.find(Meaning::Force(act))?;
        let value = |id| self.working.value(id, values, self.system.gravity());
        let (whole, part) = (value(size)?, value(part)?);
        let on = self.system.act(act)?.on;
        let way = |effect: &Effect| match &effect.line {
            Line::Known(bearing) => Some(self.system.unit(bearing, &effect.at, values)),
            Line::Open | Line::Couple(_) => None,
        };
        let is_it = |effect: &&Effect| {
            let along = way(effect).map_or(f64::NAN, |way| match axis {
                Axis::Horizontal => way.x,
                Axis::Vertical => way.y,
            });
            (along.abs() * whole - part).abs() <= 1e-9 * whole.abs()
        };
        let one = on.iter().find(is_it)?;
        let at_it = on.iter().filter(|other| other.body == one.body);
        (at_it.count() > 1).then_some(())?;
        let way = way(one)?;
        Some(match (way.x > 0.0, way.y > 0.0) {
            (true, true) => "up-right",
            (true, false) => "down-right",
            (false, true) => "up-left",
            (false, false) => "down-left",
        })
    }

    /// The name of the friction that a part is of: a contact itself is called by its push.
    fn friction_in(&self, part: &Named) -> Option<String> {
        let Rule::Formula(formula) = &part.rule else {
            return None;
        };
        let inputs = formula.inputs().into_iter();
        let mut frictions = inputs
            .filter_map(|id| self.working.named(id))
            .filter(|named| {
                matches!(
                    named.meaning,
                    Meaning::Friction(_) | Meaning::FrictionNeeded(_)
                )
            });
        frictions.next().map(|friction| friction.symbol.shown())
    }

    pub(super) fn of_condition(&self, id: Quantity) -> Heading {
        let heading = self.of_quantity(id);
        let when = self
            .system
            .parts()
            .sought
            .as_ref()
            .map(|sought| sought.when);
        let condition = match when {
            Some(When::Reaches { .. }) => "reaches",
            Some(When::Vanishes(_)) => "vanishes",
            Some(When::Slips { .. }) => "slips",
            Some(When::Topples(_)) => "topples",
            Some(When::Rests(_)) => "rests",
            None => "",
        };
        Heading {
            condition,
            ..heading
        }
    }

    pub(super) fn of_balance(&self, balance: &Balance) -> Heading {
        let nouns = balance.bodies.iter().filter_map(|body| {
            let found = self.system.parts().bodies.get(body.0)?;
            Some(found.noun.clone())
        });
        let bodies: Vec<String> = nouns.collect();
        let removed = balance
            .removed
            .iter()
            .filter_map(|id| self.working.named(*id));
        let removed: Vec<String> = removed.map(|named| named.symbol.shown()).collect();
        let mut heading = Heading {
            noun: bodies.first().cloned().unwrap_or_default(),
            bodies,
            ..Heading::default()
        };
        heading.kind = match &balance.kind {
            Kind::Moments(spot) => {
                heading.spot = spot_name(self.system, spot).unwrap_or_default();
                heading.removed = removed.join(", ");
                "moments"
            }
            Kind::Forces(Axis::Horizontal) => "level",
            Kind::Forces(Axis::Vertical) => "upright",
            Kind::Tilted { across: true, .. } => "forces-across",
            Kind::Tilted { across: false, .. } => "forces-along",
        };
        heading
    }

    fn of_act(&self, act: ActId) -> Heading {
        let found = self.system.act(act);
        Heading {
            noun: found
                .as_ref()
                .map_or_else(String::new, |act| act.noun.to_owned()),
            force: found.map_or_else(String::new, |act| act.symbol.shown()),
            ..Heading::default()
        }
    }

    fn force_kind(&self, act: ActId) -> &'static str {
        match act {
            ActId::Hold(index) => match self.system.parts().holds.get(index).map(|hold| &hold.kind)
            {
                Some(HoldKind::Line(_)) => "line",
                _ => "push",
            },
            _ => "pull",
        }
    }

    /// The noun of the piece of a lamina that a quantity is of.
    fn piece_of(&self, id: Quantity, whole: String) -> String {
        for centre in &self.working.centres {
            let ActId::Weight(weight) = centre.act else {
                continue;
            };
            let is_it =
                |known: &Vec<super::Expression>| known.iter().any(|one| one.inputs().contains(&id));
            let at = centre.pieces.iter().position(is_it);
            let lamina = self.system.lamina(weight);
            if let (Some(at), Some(lamina)) = (at, lamina)
                && let Some(piece) = lamina.pieces.get(at)
            {
                return piece.noun.clone();
            }
        }
        whole
    }
}

/// The end of a quantity's keys in the catalogue of words, and the action that it is of.
fn kind_of(meaning: Meaning) -> (&'static str, Option<ActId>) {
    match meaning {
        Meaning::Weight(act) => ("weight", Some(act)),
        Meaning::Area(act) => ("area", Some(act)),
        Meaning::Mass(act) => ("mass", Some(act)),
        Meaning::PieceAt(act, Axis::Horizontal) => ("piece-x", Some(act)),
        Meaning::PieceAt(act, Axis::Vertical) => ("piece-y", Some(act)),
        Meaning::CentreAt(act, Axis::Horizontal) => ("centre-x", Some(act)),
        Meaning::CentreAt(act, Axis::Vertical) => ("centre-y", Some(act)),
        Meaning::Resultant(act) => ("resultant", Some(act)),
        Meaning::ResultantAt(act) => ("resultant-at", Some(act)),
        Meaning::Slope(act) => ("slope", Some(act)),
        Meaning::Angle(act) | Meaning::Corner(act) => ("angle", Some(act)),
        Meaning::Across(act) => ("across", Some(act)),
        Meaning::Along(act) => ("along", Some(act)),
        Meaning::Arm(act) => ("arm", Some(act)),
        Meaning::Part(act, Axis::Horizontal) => ("part-x", Some(act)),
        Meaning::Part(act, Axis::Vertical) => ("part-y", Some(act)),
        Meaning::Friction(act) | Meaning::FrictionNeeded(act) => ("friction", Some(act)),
        Meaning::Push(act) => ("push", Some(act)),
        Meaning::AtEdge(act) => ("at-edge", Some(act)),
        Meaning::Force(act) => ("pull", Some(act)),
        Meaning::Component(act, Axis::Horizontal) => ("reaction-x", Some(act)),
        Meaning::Component(act, Axis::Vertical) => ("reaction-y", Some(act)),
        Meaning::Couple(act) => ("couple", Some(act)),
        Meaning::Size(act) => ("size", Some(act)),
        Meaning::Direction(act) => ("direction", Some(act)),
        Meaning::Sum | Meaning::SumAt | Meaning::Meeting => ("sum", None),
        Meaning::Sought => ("sought", None),
    }
}
