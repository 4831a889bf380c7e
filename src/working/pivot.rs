//! A pivot that was wished for: on the line of the only unknown along a line, or where forces alone
//! would do.

use super::build::Builder;
use super::order::{Candidate, Chosen};
use super::{Kind, Meaning, Quantity, Underivable};
use crate::key::Axis;
use crate::system::{Asked, Spot};

/// What any balance costs that is not about the wished pivot, where it would else not be taken.
const ASIDE: f64 = 1e4;

/// True if moments about the pivot are among the balances.
pub(super) fn takes(pivot: &Spot, chosen: &[Chosen]) -> bool {
    let mut candidates = chosen.iter().flat_map(|one| &one.candidates);
    candidates.any(|one| matches!(&one.kind, Kind::Moments(spot) if spot == pivot))
}

impl Builder<'_> {
    /// An order that takes moments about the pivot, though others would be simpler.
    pub(super) fn rather_about(
        &self,
        pivot: &Spot,
        mut candidates: Vec<Candidate>,
    ) -> Result<Vec<Chosen>, Underivable> {
        for candidate in &mut candidates {
            if candidate.kind != Kind::Moments(pivot.clone()) {
                candidate.cost += ASIDE;
            }
        }
        let chosen = self.order_of(&candidates, None).ok();
        let chosen = chosen.filter(|chosen| takes(pivot, chosen));
        chosen.ok_or(Underivable::PivotUnused)
    }

    /// The balance of moments about a pivot that has a single unknown, if that is asked.
    pub(super) fn gives_what_is_asked(
        &self,
        pivot: &Spot,
        candidates: &[Candidate],
    ) -> Option<Chosen> {
        let gives = |candidate: &&Candidate| {
            let mut held = candidate.factors.keys();
            let one = held.next().filter(|_| held.next().is_none());
            candidate.kind == Kind::Moments(pivot.clone())
                && one.is_some_and(|one| self.is_asked(*one))
        };
        let balances = candidates.iter().filter(gives);
        let first = balances.min_by(|one, other| one.cost.total_cmp(&other.cost))?;
        Some(Chosen {
            unknowns: first.factors.keys().copied().collect(),
            candidates: vec![first.clone()],
            left: None,
        })
    }

    /// True for an unknown that is asked, or is a part of a force that is.
    fn is_asked(&self, unknown: Quantity) -> bool {
        let meaning = self.working.named(unknown).map(|named| named.meaning);
        let asked = self.system.asked();
        match meaning {
            Some(Meaning::Component(act, axis)) => {
                let part = match axis {
                    Axis::Horizontal => Asked::Horizontal(act),
                    Axis::Vertical => Asked::Vertical(act),
                };
                asked.contains(&Asked::Force(act)) || asked.contains(&part)
            }
            Some(Meaning::Force(act) | Meaning::FrictionNeeded(act)) => {
                asked.contains(&Asked::Force(act))
            }
            Some(Meaning::Couple(act)) => {
                asked.contains(&Asked::Force(act)) || asked.contains(&Asked::Couple(act))
            }
            _ => false,
        }
    }
}
