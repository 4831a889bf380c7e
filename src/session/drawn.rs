//! What is drawn of a problem of bodies in general: the scene, and on it each force once a line of
//! hers that stands speaks of it.

use super::Session;
use crate::key::{Atom, Formula, Heading, StepId};
use crate::sketch::{DistanceMark, Entry, ForceMark, Marks, Share, Sheet, Stage};
use crate::units::value_text;
use std::collections::BTreeSet;
use std::f64::consts::FRAC_PI_2;

/// Steps that are the size of a force.
const SIZES: [&str; 6] = ["weight", "resultant", "pull", "push", "line", "size"];
/// Other steps that speak of a force.
const SPEAKS: [&str; 8] = [
    "across",
    "along",
    "part-x",
    "part-y",
    "reaction-x",
    "reaction-y",
    "direction",
    "friction",
];

impl Session {
    /// The stages of the drawing so far, the present one last.
    pub(super) fn sheet_stages(&self, sheet: &Sheet) -> Vec<Marks> {
        let mut stages = vec![Marks {
            stage: Stage::Scene,
            givens: true,
            ..Marks::default()
        }];
        let spoken = self.spoken_of(sheet);
        if spoken.is_empty() {
            return stages;
        }
        let forces: Vec<ForceMark> = spoken.iter().map(|entry| self.entry_mark(entry)).collect();
        let all = forces.len() == sheet.entries().len();
        stages.push(Marks {
            stage: Stage::Forces,
            forces: forces.clone(),
            site: true,
            ..Marks::default()
        });
        // Once all that acts is there the body is free.
        if all {
            let distances = sheet.distances().into_iter();
            stages.push(Marks {
                stage: Stage::Forces,
                forces,
                given_angles: true,
                distances: distances
                    .map(|(force, label)| DistanceMark { force, label })
                    .collect(),
                ..Marks::default()
            });
        }
        stages
    }

    /// What her lines speak of, in the order of the problem.
    fn spoken_of<'a>(&self, sheet: &'a Sheet) -> Vec<&'a Entry> {
        let reached: Vec<StepId> = self.state.reached.keys().copied().collect();
        let mut steps: BTreeSet<StepId> = reached.iter().copied().collect();
        let mut given = BTreeSet::new();
        for balance in reached.iter().filter_map(|id| self.key.balance(*id)) {
            for term in &balance.terms {
                steps.extend(term.amount.inputs());
                given.extend(givens(&term.amount).filter_map(|size| sheet.sized_by(size)));
            }
        }
        let said: BTreeSet<(String, Share)> = (steps.iter())
            .filter_map(|id| self.acts_by(self.key.heading(*id)?))
            .collect();
        let is_said = |entry: &&Entry| {
            given.contains(&entry.force) || said.contains(&(entry.symbol.clone(), entry.share))
        };
        sheet.entries().iter().filter(is_said).collect()
    }

    /// What a step speaks of: the name of what acts, and which part of it.
    fn acts_by(&self, heading: &Heading) -> Option<(String, Share)> {
        let own = heading.force.clone();
        match heading.kind {
            "friction" => Some((own, Share::Friction)),
            "couple" => Some((own, Share::Couple)),
            kind if SIZES.contains(&kind) || SPEAKS.contains(&kind) => {
                // A part of friction is told by the friction's own name.
                let friction = self.step_of("friction", |step, _| step == own);
                let contact = friction.and_then(|id| self.key.heading(id));
                Some(match contact {
                    Some(contact) => (contact.force.clone(), Share::Friction),
                    None => (own, Share::Whole),
                })
            }
            _ => None,
        }
    }

    /// The step of this kind whose own name, or that of its force, is as told.
    fn step_of(&self, kind: &str, is_it: impl Fn(&str, &str) -> bool) -> Option<StepId> {
        let mut steps = self.key.steps.iter();
        let found = steps.find(|step| {
            let heading = self.key.heading(step.id);
            heading.is_some_and(|heading| {
                heading.kind == kind && is_it(&step.symbol.shown(), &heading.force)
            })
        });
        found.map(|step| step.id)
    }

    /// The arrow of what acts, as far as she has found it.
    fn entry_mark(&self, entry: &Entry) -> ForceMark {
        let of = |kind: &str| self.step_of(kind, |_, force| force == entry.symbol);
        let sizes: &[&str] = match entry.share {
            Share::Whole => &SIZES,
            Share::Friction => &["friction"],
            Share::Couple => &["couple"],
        };
        let steps = || sizes.iter().filter_map(|kind| of(kind));
        let name = match entry.share {
            // Friction and couple have names of their own.
            Share::Friction | Share::Couple => steps().next(),
            Share::Whole => None,
        };
        let name = name.and_then(|id| self.key.step(id));
        let name = name.map_or_else(|| entry.symbol.clone(), |step| step.symbol.shown());
        let value = steps().find_map(|id| Some((id, self.found(id)?)));
        let text = value.and_then(|(id, value)| {
            let dimension = self.key.step(id)?.dimension;
            // The arrow has the sign, but that of a rope which would have to push.
            let pulls = self.key.heading(id)?.kind == "pull";
            let shown = if pulls { value } else { value.abs() };
            Some(value_text(shown, dimension, self.problem.figures()))
        });
        let way = match (entry.share, value) {
            (Share::Couple, Some((_, value))) => Some(value.signum() * FRAC_PI_2),
            (Share::Couple, None) => None,
            (_, Some((id, value))) if self.either_way(id) => self.way_found(id, value),
            _ => self.by_parts(&of),
        };
        ForceMark {
            force: entry.force,
            label: text.map_or_else(|| name.clone(), |text| format!("{name} {text}")),
            direction: way,
        }
    }

    /// True for what acts along a line in a sense that its value tells.
    fn either_way(&self, id: StepId) -> bool {
        let heading = self.key.heading(id);
        heading.is_some_and(|heading| matches!(heading.kind, "line" | "friction"))
    }

    /// Which way something points with this value.
    fn way_found(&self, id: StepId, value: f64) -> Option<f64> {
        let way = self.key.general.as_ref()?.ways.get(&id)?;
        angle_of(way.x * value, way.y * value)
    }

    /// Which way a force with two parts points, once all are found.
    fn by_parts(&self, of: &dyn Fn(&str) -> Option<StepId>) -> Option<f64> {
        let parts = [of("reaction-x"), of("reaction-y")];
        if parts.iter().all(Option::is_none) {
            return None;
        }
        let value = |part: Option<StepId>| part.map_or(Some(0.0), |id| self.found(id));
        angle_of(value(parts[0])?, value(parts[1])?)
    }

    /// The value of a step as she has it, in the sense of the key.
    fn found(&self, id: StepId) -> Option<f64> {
        let own = self.state.standing.get(&id).filter(|own| !own.relation);
        let value = self.value_of(id)?;
        Some(own.map_or(value, |own| own.function[0]))
    }
}

/// The angle of a way from the x axis; none where nothing points anywhere.
fn angle_of(x: f64, y: f64) -> Option<f64> {
    (libm::hypot(x, y) > 1e-9).then(|| libm::atan2(y, x))
}

/// The givens of a formula.
fn givens(formula: &Formula) -> impl Iterator<Item = crate::problem::GivenId> + '_ {
    let mut open = vec![formula];
    let mut found = Vec::new();
    while let Some(formula) = open.pop() {
        if let Formula::Atom(Atom::Given(id)) = formula {
            found.push(*id);
        }
        open.extend(formula.children());
    }
    found.into_iter()
}
