//! The order of balances in which each can be worked by hand.
//!
//! Candidates are the balances of each body, of all bodies together and of each pair: forces along
//! both axes and moments about every spot where something acts. Again and again the one is taken
//! that has a single unknown left; where none has, the fewest that give their unknowns together.

use super::build::Builder;
use super::force::Elementary;
use super::pivot::takes;
use super::trouble::Underivable;
use super::{Kind, Meaning, Quantity};
use crate::key::Axis;
use crate::plane::{Vector, moment};
use crate::system::{ActId, Bearing, BodyId, Spot};
use std::collections::{BTreeMap, BTreeSet};

/// What a balance of moments costs a person more than one of forces, in terms.
const MOMENTS: f64 = 2.5;
/// What a balance of forces along a tilted line costs more than one along an axis.
const TILTED: f64 = 0.2;
/// What a part or component of a force costs a person, in terms.
const PART: f64 = 0.3;
/// What moments cost more where they give a part of a hinge's force, in terms.
const HINGE: f64 = 2.0;
/// How much sooner what is sought is worked out than something else, in terms.
const SOUGHT: f64 = 4.0;
/// What an unknown that a balance does not hold is worth, in terms.
const SPARED: f64 = 0.4;
/// The same for a part of a hinge's force.
const SPARED_PART: f64 = 0.55;
/// A factor below this part of the largest counts as none.
const NONE: f64 = 1e-9;

/// A balance that may be taken.
#[derive(Clone, Debug)]
pub(super) struct Candidate {
    pub(super) kind: Kind,
    pub(super) bodies: Vec<BodyId>,
    /// Its unknowns with their factors.
    pub(super) factors: BTreeMap<Quantity, f64>,
    /// The same, of what is sought how fast the balance changes with it.
    rates: BTreeMap<Quantity, f64>,
    /// Unknowns of these bodies that it does not hold.
    pub(super) removed: Vec<Quantity>,
    /// What it costs a person, roughly.
    pub(super) cost: f64,
}

impl Candidate {
    /// How it changes with each of these.
    fn row(&self, unknowns: &[Quantity]) -> Vec<f64> {
        let rate = |unknown| self.rates.get(unknown).copied().unwrap_or(0.0);
        unknowns.iter().map(rate).collect()
    }
}

/// Balances that are taken together, and what they give.
#[derive(Clone, Debug)]
pub(super) struct Chosen {
    pub(super) candidates: Vec<Candidate>,
    pub(super) unknowns: Vec<Quantity>,
    /// Where one of them is a part of a force at its limit: the other part, which follows.
    pub(super) left: Option<Quantity>,
}

impl Builder<'_> {
    /// The stages in order.
    pub(super) fn order(&self, pivot: Option<&Spot>) -> Result<Vec<Chosen>, Underivable> {
        let candidates = self.candidates(pivot);
        let Some(pivot) = pivot else {
            return self.order_of(&candidates, None);
        };
        let first = self.refuse_pivot(pivot, &candidates)?;
        // About this pivot only, where that gives every unknown.
        let about = |candidate: &&Candidate| match &candidate.kind {
            Kind::Moments(spot) => spot == pivot,
            Kind::Forces(_) | Kind::Tilted { .. } => true,
        };
        let only: Vec<Candidate> = candidates.iter().filter(about).cloned().collect();
        let chosen = match self.order_of(&only, first.clone()) {
            Ok(chosen) => chosen,
            Err(_) => self.order_of(&candidates, first)?,
        };
        match takes(pivot, &chosen) {
            true => Ok(chosen),
            false => self.rather_about(pivot, candidates),
        }
    }

    /// The stages in order, from one that is taken first where there is one.
    pub(super) fn order_of(
        &self,
        candidates: &[Candidate],
        first: Option<Chosen>,
    ) -> Result<Vec<Chosen>, Underivable> {
        let mut open: BTreeSet<Quantity> = self
            .forces
            .iter()
            .filter_map(|force| force.unknown)
            .chain(self.twists.iter().filter_map(|twist| twist.unknown))
            .chain(self.working.sought.map(|(sought, _)| sought))
            .collect();
        for unknown in first.iter().flat_map(|first| &first.unknowns) {
            open.remove(unknown);
        }
        let mut chosen: Vec<Chosen> = first.into_iter().collect();
        while !open.is_empty() {
            let extra = |one: &Candidate, unknown| self.extra(one, unknown);
            let mut next = single(candidates, &open, &extra)
                .or_else(|| together(candidates, &open, 2))
                .or_else(|| together(candidates, &open, 3))
                .or_else(|| all_together(candidates, &open))
                .ok_or(Underivable::NoOrder)?;
            for unknown in &next.unknowns {
                open.remove(unknown);
            }
            next.left = self.left_by_limit(&next.unknowns, &open);
            if let Some(left) = &next.left {
                open.remove(left);
            }
            chosen.push(next);
        }
        Ok(chosen)
    }

    /// Refuses a pivot on the line of the only unknown of its kind that moments would give, unless
    /// they give what is sought, or something else that is asked: its balance is then given, to be
    /// taken first.
    fn refuse_pivot(
        &self,
        pivot: &Spot,
        candidates: &[Candidate],
    ) -> Result<Option<Chosen>, Underivable> {
        let lines: Vec<Quantity> = self
            .forces
            .iter()
            .filter_map(|force| force.unknown)
            .chain(self.twists.iter().filter_map(|twist| twist.unknown))
            .filter(|unknown| {
                let meaning = self.working.named(*unknown).map(|named| named.meaning);
                matches!(
                    meaning,
                    Some(
                        Meaning::Force(ActId::Cord(_) | ActId::Hold(_))
                            | Meaning::FrictionNeeded(_)
                            | Meaning::Couple(_)
                    )
                )
            })
            .collect::<BTreeSet<_>>()
            .into_iter()
            .collect();
        let about = |candidate: &&Candidate| candidate.kind == Kind::Moments(pivot.clone());
        let sought = self.working.sought.map(|(sought, _)| sought);
        let [only] = lines.as_slice() else {
            return Ok(None);
        };
        let says = candidates
            .iter()
            .filter(about)
            .flat_map(|candidate| candidate.factors.keys())
            .any(|unknown| unknown == only || Some(*unknown) == sought);
        if says {
            return Ok(None);
        }
        if let Some(first) = self.gives_what_is_asked(pivot, candidates) {
            return Ok(Some(first));
        }
        let unknown = self
            .working
            .named(*only)
            .map_or_else(String::new, |named| named.symbol.shown());
        Err(Underivable::PivotOnLine { unknown })
    }

    fn candidates(&self, pivot: Option<&Spot>) -> Vec<Candidate> {
        let spots = self.spots(pivot);
        let mut found = Vec::new();
        for bodies in self.groups() {
            let knot = bodies.iter().all(|body| {
                self.system
                    .parts()
                    .bodies
                    .get(body.0)
                    .is_some_and(|b| b.knot)
            });
            let mut kinds = vec![Kind::Forces(Axis::Horizontal), Kind::Forces(Axis::Vertical)];
            if let [body] = bodies[..] {
                kinds.extend(self.tilted(body));
            }
            if !knot {
                kinds.extend(spots.iter().cloned().map(Kind::Moments));
            }
            for kind in kinds {
                let wanted = match (&kind, pivot) {
                    (Kind::Moments(spot), Some(pivot)) => spot == pivot,
                    _ => true,
                };
                let mut candidate = self.candidate(kind, &bodies);
                if !wanted {
                    candidate.cost += 50.0;
                }
                if !candidate.factors.is_empty() {
                    found.push(candidate);
                }
            }
        }
        found
    }

    /// What it is worth that an unknown does not stand in a balance: of a hinge's force, two parts
    /// of which none is given and both are carried on, a little more.
    fn spared(&self, unknown: Quantity) -> f64 {
        match self.working.named(unknown).map(|named| named.meaning) {
            Some(Meaning::Component(..)) => SPARED_PART,
            _ => SPARED,
        }
    }

    /// What a balance costs more, or less, for the unknown that it would give: what is sought comes
    /// soon, and the parts of a hinge's force come from forces rather than from moments.
    fn extra(&self, candidate: &Candidate, unknown: Quantity) -> f64 {
        let meaning = self.working.named(unknown).map(|named| named.meaning);
        match (meaning, &candidate.kind) {
            (Some(Meaning::Sought), _) => -SOUGHT,
            (Some(Meaning::Component(..)), Kind::Moments(_)) => HINGE,
            _ => 0.0,
        }
    }

    /// Along and across the tilted legs of a body that a contact or rope acts along or across: there
    /// its forces are simple.
    fn tilted(&self, body: BodyId) -> Vec<Kind> {
        let mut kinds = Vec::new();
        let legs = self
            .system
            .parts()
            .bodies
            .get(body.0)
            .map_or(0, |one| one.legs.len());
        for leg in 0..legs {
            let square = |values: &[f64]| {
                let along = self.leg_unit(body, leg, values);
                let is_tilted = along.x.abs() > NONE && along.y.abs() > NONE;
                let mut simple = self.forces.iter().filter(|force| {
                    let turn = force.turn.value(&|atom| self.atom_at(atom, values));
                    let unit = Vector::at_angle(turn);
                    let (one, other) = (unit.dot(along), unit.dot(along.quarter_turn()));
                    let is_simple = one.abs() < NONE || other.abs() < NONE;
                    force.body == body && force.unknown.is_some() && is_simple
                });
                is_tilted && simple.next().is_some()
            };
            if square(&self.values) && square(&self.moved) {
                let kind = |across: bool| Kind::Tilted { body, leg, across };
                kinds.extend([kind(false), kind(true)]);
            }
        }
        kinds
    }

    fn leg_unit(&self, body: BodyId, leg: usize, values: &[f64]) -> Vector {
        let onward = true;
        let along = Bearing::Along { body, leg, onward };
        self.system.unit(&along, &Spot::Origin, values)
    }

    /// How much one newton of a force counts in a balance.
    pub(super) fn weight_in(&self, kind: &Kind, force: &Elementary, values: &[f64]) -> f64 {
        let turn = force.turn.value(&|atom| self.atom_at(atom, values));
        let unit = exact_unit(turn) * force.sign;
        match kind {
            Kind::Forces(Axis::Horizontal) => unit.x,
            Kind::Forces(Axis::Vertical) => unit.y,
            Kind::Tilted { body, leg, across } => {
                let along = self.leg_unit(*body, *leg, values);
                let way = if *across { along.quarter_turn() } else { along };
                let part = unit.dot(way);
                if part.abs() < 1e-12 { 0.0 } else { part }
            }
            Kind::Moments(spot) => moment(
                self.system.point(spot, values),
                self.system.point(&force.at, values),
                unit,
            ),
        }
    }

    /// Each body, all together, and each pair.
    fn groups(&self) -> Vec<Vec<BodyId>> {
        let count = self.system.parts().bodies.len();
        let mut groups: Vec<Vec<BodyId>> = (0..count).map(|body| vec![BodyId(body)]).collect();
        if count > 1 {
            groups.push((0..count).map(BodyId).collect());
        }
        if (3..=6).contains(&count) {
            for one in 0..count {
                for other in one + 1..count {
                    groups.push(vec![BodyId(one), BodyId(other)]);
                }
            }
        }
        groups
    }

    /// Spots where something acts, each point once; the wanted pivot first, holds before others.
    fn spots(&self, pivot: Option<&Spot>) -> Vec<Spot> {
        let mut spots: Vec<Spot> = pivot.cloned().into_iter().collect();
        let rank = |act: ActId| match act {
            ActId::Hold(_) => 0,
            ActId::Cord(_) => 1,
            ActId::Weight(_) | ActId::Load(_) => 2,
        };
        for wanted in 0..3 {
            for force in self.forces.iter().filter(|force| rank(force.act) == wanted) {
                let here = self.system.point(&force.at, &self.values);
                let known = spots
                    .iter()
                    .any(|spot| (self.system.point(spot, &self.values) - here).size() < 1e-9);
                if !known {
                    spots.push(force.at.clone());
                }
            }
        }
        spots
    }

    /// True of a rope whose pull is known, if its ends on these bodies undo each other at any
    /// numbers: within them it is an inner force.
    pub(super) fn pulls_back(
        &self,
        kind: &Kind,
        force: &Elementary,
        within: &dyn Fn(BodyId, Option<BodyId>) -> bool,
    ) -> bool {
        if force.unknown.is_some() || !matches!(force.act, ActId::Cord(_)) {
            return false;
        }
        let ends = || {
            let all = self.forces.iter().filter(|other| other.act == force.act);
            all.filter(|other| within(other.body, other.partner))
        };
        let sum = |values: &[f64]| -> f64 {
            let parts = ends().map(|end| self.weight_in(kind, end, values));
            parts.sum()
        };
        ends().count() > 1
            && [&self.values, &self.moved]
                .into_iter()
                .all(|at| sum(at).abs() <= NONE)
    }

    fn candidate(&self, kind: Kind, bodies: &[BodyId]) -> Candidate {
        let mut factors: BTreeMap<Quantity, f64> = BTreeMap::new();
        let mut moved: BTreeMap<Quantity, f64> = BTreeMap::new();
        let mut all: BTreeSet<Quantity> = BTreeSet::new();
        let (mut terms, mut parts) = (0, 0);
        let within = |body: BodyId, partner: Option<BodyId>| {
            bodies.contains(&body) && !partner.is_some_and(|partner| bodies.contains(&partner))
        };
        for force in &self.forces {
            if !within(force.body, force.partner) || self.pulls_back(&kind, force, &within) {
                continue;
            }
            all.extend(force.unknown);
            let mut any = false;
            for (values, sums) in [(&self.values, &mut factors), (&self.moved, &mut moved)] {
                let part = self.weight_in(&kind, force, values);
                any |= part.abs() > NONE;
                if let Some(unknown) = force.unknown {
                    let share = self.share(&force.size, force.unknown, values);
                    *sums.entry(unknown).or_default() += part * share;
                }
            }
            terms += usize::from(any);
            if any && !matches!(kind, Kind::Moments(_)) {
                let whole = self.weight_in(&kind, force, &self.values).abs() > 1.0 - NONE;
                parts += usize::from(!whole);
            }
        }
        for twist in &self.twists {
            if !within(twist.body, twist.partner) {
                continue;
            }
            all.extend(twist.unknown);
            if let (Kind::Moments(_), Some(unknown)) = (&kind, twist.unknown) {
                for (values, sums) in [(&self.values, &mut factors), (&self.moved, &mut moved)] {
                    let share = self.share(&twist.size, twist.unknown, values);
                    *sums.entry(unknown).or_default() += twist.sign * share;
                }
            }
            terms += usize::from(matches!(kind, Kind::Moments(_)));
        }
        factors.retain(|unknown, factor| {
            factor.abs() > NONE || moved.get(unknown).is_some_and(|moved| moved.abs() > NONE)
        });
        let removed = all.into_iter().filter(|one| !factors.contains_key(one));
        let removed: Vec<Quantity> = removed.collect();
        let mut rates = factors.clone();
        if let Some((sought, _)) = self.working.sought
            && let Some(slope) = self.sought_slope(&kind, &within)
        {
            factors.insert(sought, slope);
            rates.insert(sought, self.sought_rate(&kind, &within));
        }
        let own = match kind {
            Kind::Forces(_) => 0.0,
            Kind::Tilted { .. } => TILTED,
            Kind::Moments(_) => MOMENTS,
        };
        let cost = terms as f64 + PART * parts as f64 + 2.0 * (bodies.len() as f64 - 1.0) + own
            - removed.iter().map(|one| self.spared(*one)).sum::<f64>();
        Candidate {
            kind,
            bodies: bodies.to_vec(),
            removed,
            factors,
            rates,
            cost,
        }
    }
}

/// The unit vector of a direction, exact along the axes.
fn exact_unit(turn: f64) -> Vector {
    let unit = Vector::at_angle(turn);
    let clean = |value: f64| if value.abs() < 1e-12 { 0.0 } else { value };
    Vector::new(clean(unit.x), clean(unit.y))
}

/// The cheapest balance with one open unknown; `extra` is what it costs beside for that unknown.
fn single(
    candidates: &[Candidate],
    open: &BTreeSet<Quantity>,
    extra: &dyn Fn(&Candidate, Quantity) -> f64,
) -> Option<Chosen> {
    let left = |candidate: &Candidate| -> Vec<Quantity> {
        candidate
            .factors
            .keys()
            .filter(|unknown| open.contains(unknown))
            .copied()
            .collect()
    };
    // What vanishes at the printed numbers only stands in the balance, but is not given by it.
    let gives = |candidate: &&Candidate| match left(candidate)[..] {
        [only] => candidate
            .factors
            .get(&only)
            .is_some_and(|one| one.abs() > NONE),
        _ => false,
    };
    candidates
        .iter()
        .filter(gives)
        .min_by(|one, other| {
            let cost = |one: &Candidate| {
                let unknown = left(one).first().copied();
                one.cost + unknown.map_or(0.0, |unknown| extra(one, unknown))
            };
            cost(one).total_cmp(&cost(other))
        })
        .map(|candidate| Chosen {
            unknowns: left(candidate),
            candidates: vec![candidate.clone()],
            left: None,
        })
}

/// The cheapest few balances that hold as many open unknowns and fix them all.
fn together(candidates: &[Candidate], open: &BTreeSet<Quantity>, count: usize) -> Option<Chosen> {
    let left = |candidate: &Candidate| -> BTreeSet<Quantity> {
        let keys = candidate.factors.keys();
        keys.filter(|unknown| open.contains(unknown))
            .copied()
            .collect()
    };
    let mut fit: Vec<(&Candidate, BTreeSet<Quantity>)> = candidates
        .iter()
        .map(|candidate| (candidate, left(candidate)))
        .filter(|(_, left)| !left.is_empty() && left.len() <= count)
        .collect();
    fit.sort_by(|(one, _), (other, _)| one.cost.total_cmp(&other.cost));
    fit.truncate(60);
    let mut best: Option<(f64, Chosen)> = None;
    let mut picked = Vec::new();
    pick(&fit, count, 0, &mut picked, &mut best);
    best.map(|(_, chosen)| chosen)
}

fn pick(
    fit: &[(&Candidate, BTreeSet<Quantity>)],
    count: usize,
    from: usize,
    picked: &mut Vec<usize>,
    best: &mut Option<(f64, Chosen)>,
) {
    let union: BTreeSet<Quantity> = picked
        .iter()
        .flat_map(|index: &usize| fit[*index].1.iter().copied())
        .collect();
    if union.len() > count {
        return;
    }
    if picked.len() == count {
        let cost: f64 = picked.iter().map(|index| fit[*index].0.cost).sum();
        let cheaper = best.as_ref().is_none_or(|(known, _)| cost < *known);
        let unknowns: Vec<Quantity> = union.into_iter().collect();
        let rows: Vec<Vec<f64>> = picked
            .iter()
            .map(|index| fit[*index].0.row(&unknowns))
            .collect();
        if unknowns.len() == count && cheaper && rank(rows) == count {
            let candidates = picked.iter().map(|index| fit[*index].0.clone()).collect();
            *best = Some((
                cost,
                Chosen {
                    candidates,
                    unknowns,
                    left: None,
                },
            ));
        }
        return;
    }
    for index in from..fit.len() {
        picked.push(index);
        pick(fit, count, index + 1, picked, best);
        picked.pop();
    }
}

/// All open unknowns at once, from the cheapest balances that are independent.
fn all_together(candidates: &[Candidate], open: &BTreeSet<Quantity>) -> Option<Chosen> {
    let unknowns: Vec<Quantity> = open.iter().copied().collect();
    let mut sorted: Vec<&Candidate> = candidates.iter().collect();
    sorted.sort_by(|one, other| one.cost.total_cmp(&other.cost));
    let (mut rows, mut kept): (Vec<Vec<f64>>, Vec<Candidate>) = (Vec::new(), Vec::new());
    for candidate in sorted {
        rows.push(candidate.row(&unknowns));
        if rank(rows.clone()) == rows.len() {
            kept.push(candidate.clone());
        } else {
            rows.pop();
        }
        if kept.len() == unknowns.len() {
            return Some(Chosen {
                candidates: kept,
                unknowns,
                left: None,
            });
        }
    }
    None
}

/// The number of independent rows, each scaled to its largest entry; one of dust alone says nothing.
fn rank(mut rows: Vec<Vec<f64>>) -> usize {
    for row in &mut rows {
        let scale = row.iter().fold(0.0_f64, |most, one| most.max(one.abs()));
        if scale > NONE {
            row.iter_mut().for_each(|one| *one /= scale);
        }
    }
    let columns = rows.first().map_or(0, Vec::len);
    let mut found = 0;
    for column in 0..columns {
        let best = (found..rows.len()).max_by(|one, other| {
            rows[*one][column]
                .abs()
                .total_cmp(&rows[*other][column].abs())
        });
        let Some(best) = best.filter(|best| rows[*best][column].abs() > 1e-8) else {
            continue;
        };
        rows.swap(found, best);
        for other in found + 1..rows.len() {
            let pivot = rows[found].clone();
            let factor = rows[other][column] / pivot[column];
            for (entry, taken) in rows[other].iter_mut().zip(&pivot).skip(column) {
                *entry -= factor * taken;
            }
        }
        found += 1;
    }
    found
}
