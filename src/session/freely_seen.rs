//! What of a free working is in sight: its drawing has only what her lines speak of, its steps are
//! what the problem asks for, and help follows the line of hers that does not hold.

use super::state::{Freely, Open};
use super::turn::{Progress, Sign, StepView};
use super::{Outcome, Session};
use crate::hint::kind_word;
use crate::judge::statement::{
    Fit, Named, PivotSaid, Statement, WayFit, is_pivot, pivot_said, place_fits, read, way_fits,
};
use crate::judge::{NameRole, statements};
use crate::key::{Axis, Part, Pins, StepId};
use crate::problem::{ForceId, Size};
use crate::reading::{Node, Tree};

/// A typed number this near to a force, as a share of it, is that force rounded.
const ROUNDED: f64 = 0.005;

/// What a line speaks of.
#[derive(Clone, Default)]
pub(super) struct Seen {
    forces: Vec<ForceId>,
    pivot: bool,
    /// The point that it says in words to take moments about, in metres from the foot.
    pub(super) about: Option<f64>,
}

impl Freely {
    /// What the lines in force speak of, and what was said before them.
    fn seen(&self) -> impl Iterator<Item = &Seen> {
        let stands = |number: &usize| self.lines.iter().any(|(at, ..)| at == number);
        let of_lines = self.seen.iter().filter(move |(number, _)| stands(number));
        std::iter::once(&self.said).chain(of_lines.map(|(_, seen)| seen))
    }

    /// The point that was told last in words.
    pub(super) fn about(&self) -> Option<f64> {
        self.seen().filter_map(|seen| seen.about).last()
    }
}

impl Session {
    /// What she has said of forces and pivot by now.
    pub(super) fn said_so_far(&self) -> Seen {
        Seen {
            forces: self.forces_in_sight(),
            pivot: self.pivot_in_sight(),
            about: None,
        }
    }

    /// The forces that may be drawn: those named, and in a free working those that her lines use or
    /// name.
    pub(super) fn forces_in_sight(&self) -> Vec<ForceId> {
        let named = self.state.named.iter().copied();
        match &self.state.freely {
            None => named.collect(),
            Some(freely) => named
                .filter(|force| freely.seen().any(|seen| seen.forces.contains(force)))
                .collect(),
        }
    }

    /// True if the pivot may be drawn: once it was chosen, and in a free working once a balance of
    /// hers was taken about it.
    pub(super) fn pivot_in_sight(&self) -> bool {
        match &self.state.freely {
            None => self.state.pivot_said,
            Some(freely) => freely.seen().any(|seen| seen.pivot),
        }
    }

    /// True once the body may be drawn as a lever: in a free working, with her first balance of
    /// moments.
    pub(super) fn turns(&self) -> bool {
        if self.is_free() {
            return self.pivot_in_sight() && self.tells_moments();
        }
        let asked = self.at_hand().and_then(|step| self.key.rank(step));
        asked.is_none() || asked >= self.key.rank(StepId::MomentSum)
    }

    /// True if a balance of moments of hers stands, solved or not, holds in names or waits to be
    /// mended.
    fn tells_moments(&self) -> bool {
        let balance = StepId::MomentSum;
        let pending = self.state.pending_names.iter();
        let open = self.state.open.as_ref();
        let mut reached = self.state.reached.keys();
        reached.any(|step| *step == balance || matches!(step, StepId::Pull(_)))
            || pending.map(|(step, _)| *step).any(|step| step == balance)
            || open.is_some_and(|open| open.judgement.target == balance)
    }

    /// Remembers what the line that was answered speaks of.
    pub(super) fn take_in_sight(&mut self, line: &str, outcome: &Outcome) {
        let number = self.state.next_number;
        if self.is_general() || !outcome.numbered {
            return;
        }
        let mut seen = self.seen_in_words(line);
        if outcome.sign != Sign::Unclear {
            self.see_in_form(line, &outcome.progress, &mut seen);
        }
        if let Some(freely) = &mut self.state.freely {
            freely.seen.insert(number, seen);
        }
    }

    /// What a line says in words. A force that is said to act elsewhere, or another way, is not drawn.
    fn seen_in_words(&self, line: &str) -> Seen {
        let mut seen = Seen::default();
        if self.has_word(line, "freely.pivot") {
            seen.about = self.pivot_chosen(line);
            let said = pivot_said(&self.problem, &self.words, line);
            seen.pivot = matches!(said, PivotSaid::At(metres)
                if is_pivot(&self.problem, self.key.pivot, metres));
            return seen;
        }
        if let Statement::Says(said) = read(&self.problem, &self.words, line) {
            for said in said {
                let Named::Force(force) = said.named else {
                    continue;
                };
                let misplaced = place_fits(&self.problem, force, said.place) == Fit::Wrong;
                let way = way_fits(&self.problem, force, said.way);
                let turned = said.way.is_some() && matches!(way, WayFit::Wrong(_));
                if !said.refused && !said.denied && !misplaced && !turned {
                    seen.forces.push(force);
                }
            }
        }
        seen
    }

    /// What a form speaks of: by names, by numbers that are a force or its mass, by what it settles.
    fn see_in_form(&self, line: &str, progress: &[StepId], seen: &mut Seen) {
        let names = self.names();
        let vocabulary = names.vocabulary();
        let (mut steps, mut formed) = (Vec::new(), false);
        for part in statements(line) {
            let readings = crate::reading::read(&line[part.start..part.end], vocabulary);
            let Some(reading) = readings.ok().and_then(|all| all.into_iter().next()) else {
                continue;
            };
            let numbers = numbers_of(&reading.sides);
            for force in self.problem.forces() {
                if self.is_among(force.id, force.size, &numbers) {
                    seen.forces.push(force.id);
                }
            }
            for (name, _) in reading.sides.iter().flat_map(Tree::names) {
                match names.role(name) {
                    Some(NameRole::Step(step)) => steps.push(step),
                    Some(NameRole::Given(given)) => {
                        let of = |size| matches!(size, Size::Weight(id) | Size::Given(id) if id == given);
                        let forces = self.problem.forces();
                        let forces = forces.iter().filter(|force| of(force.size));
                        seen.forces.extend(forces.map(|force| force.id));
                    }
                    _ => {}
                }
            }
            let alone = |side: &Tree| matches!(side.node, Node::Literal(_) | Node::Name(_));
            formed |= reading.sides.iter().any(|side| !alone(side));
        }
        let settled = progress.iter().copied();
        let told = settled.clone().chain(steps.iter().copied());
        let told = told.filter(|step| !matches!(step, StepId::Distance(_)));
        seen.forces.extend(told.filter_map(StepId::force));
        let mut reactions = steps.iter();
        let reacts = reactions.any(|step| matches!(step, StepId::Reaction(..)));
        // A value alone, though it is right, draws no balance.
        if !formed || reacts || !self.tells_moments() {
            return;
        }
        let balance = settled.clone().any(|step| step == StepId::MomentSum);
        let open = self.state.open.as_ref();
        let open = open.filter(|open| open.number == self.state.next_number);
        let waits = open.is_some_and(|open| open.judgement.target == StepId::MomentSum);
        let pending = self.state.pending_names.last();
        let in_names = pending.is_some_and(|(step, _)| *step == StepId::MomentSum);
        let turning = self.problem.forces();
        let turning = turning.iter().map(|force| force.id);
        let arm = |force: &ForceId| self.key.step(StepId::Distance(*force)).is_some();
        let turning: Vec<ForceId> = turning.filter(arm).collect();
        // The pull told at once by all that it balances.
        let solved = settled.clone().any(|step| matches!(step, StepId::Pull(_)))
            && turning.iter().all(|force| seen.forces.contains(force));
        seen.pivot |= balance || waits || in_names || solved;
        if balance {
            seen.forces.extend(turning);
        }
    }

    /// True if one of these numbers is the size of a known force, or its mass beside g.
    fn is_among(&self, force: ForceId, size: Size, numbers: &[f64]) -> bool {
        let near = |value: f64| {
            let mut numbers = numbers.iter();
            numbers.any(|number| (number - value).abs() <= ROUNDED * value)
        };
        let same = |value: f64| numbers.iter().any(|number| (number - value).abs() < 1e-9);
        match size {
            Size::Weight(mass) => {
                let weight = StepId::Weight(force);
                let weight = self.key.value(weight, self.sampling.own(), &Pins::new());
                let mass = self.problem.given(mass).value;
                weight.is_some_and(near) || same(mass) && same(self.problem.gravity())
            }
            Size::Given(id) => near(self.problem.given(id).value),
            Size::Unknown => false,
        }
    }

    /// What a free working shows as its steps: what the problem asks for.
    pub(super) fn steps_freely(&self) -> Vec<StepView> {
        let sought = |id: &StepId| matches!(id, StepId::Pull(_) | StepId::Reaction(..));
        let wanted: Vec<StepId> = match &self.key.general {
            Some(general) => general.wanted.clone(),
            None => (self.key.asked().map(|step| step.id).filter(sought)).collect(),
        };
        let progress = |id: &StepId| match self.state.reached.get(id) {
            Some((progress, _)) => *progress,
            None => Progress::Ahead,
        };
        let view = |id: StepId| StepView {
            title: self.title(id),
            progress: progress(&id),
            result: self.result(id),
        };
        wanted.into_iter().map(view).collect()
    }

    /// True for a name that a free working shows: of a weight, of what is asked for, or one that
    /// was found.
    pub(super) fn is_at_hand_freely(&self, step: StepId) -> bool {
        let sought = matches!(
            step,
            StepId::Weight(_) | StepId::Pull(_) | StepId::Reaction(..)
        );
        sought || self.state.reached.contains_key(&step)
    }

    /// The line that waits to be mended. In a free working a wrong line waits until what it tells is
    /// found, whatever else is found meanwhile.
    pub(super) fn open_line(&self) -> Option<&Open> {
        let open = self.state.open.as_ref();
        let Some(freely) = self.state.freely.as_ref() else {
            return open;
        };
        let settled = |step: StepId| {
            let given = self.key.gives(step).filter(|_| step.is_balance());
            let given = given.unwrap_or(step);
            let reached = |id: &StepId| self.state.reached.contains_key(id);
            reached(&step) || reached(&given)
        };
        open.or_else(|| {
            let mut wrong = (freely.lines.iter().rev()).filter(|(_, _, truth)| *truth == "wrong");
            let waits = wrong.find_map(|(at, ..)| self.state.judged.get(at))?;
            (!settled(waits.judgement.target)).then_some(waits)
        })
    }

    /// The step of which help speaks in a free working while a line waits to be mended.
    pub(super) fn step_of_open(&self) -> Option<StepId> {
        self.state.freely.as_ref()?;
        let open = self.open_line()?;
        let target = open.judgement.target;
        let step = match target {
            StepId::MomentSum if self.is_of_support(open) => self.upright_of_support()?,
            StepId::Moment(_) | StepId::KnownMoments | StepId::Distance(_) => StepId::MomentSum,
            StepId::PartOf(force, axis) | StepId::Reaction(force, Part::Along(axis)) => {
                let part = Part::Along(axis);
                let part = |id: StepId| matches!(id, StepId::Reaction(_, along) if along == part);
                let mut asked = self.key.asked().map(|step| step.id);
                asked.find(|id| part(*id)).unwrap_or(StepId::Pull(force))
            }
            other => other,
        };
        let asked = self.key.asked().any(|asked| asked.id == step);
        let look = format!("hint.{}.look", kind_word(step));
        (asked && (step.is_general() || self.words.has(&look))).then_some(step)
    }

    /// True for a balance of forces with the support's force in it.
    fn is_of_support(&self, open: &Open) -> bool {
        let evidence = &open.judgement.evidence;
        let supports = |step: &StepId| matches!(step, StepId::Reaction(..));
        evidence.of_forces && evidence.rests_on.iter().any(supports)
    }

    /// The step that gives the upright part of the support's force.
    fn upright_of_support(&self) -> Option<StepId> {
        let asked = self.key.asked().map(|step| step.id);
        let reactions: Vec<StepId> = asked
            .filter(|id| matches!(id, StepId::Reaction(..)))
            .collect();
        let upright = |id: &&StepId| matches!(id, StepId::Reaction(_, Part::Along(Axis::Vertical)));
        reactions
            .iter()
            .find(upright)
            .or(reactions.first())
            .copied()
    }

    /// True if help may speak of the line that waits: where a step is asked it is told apart there.
    pub(super) fn may_help_open(&self) -> bool {
        !self.is_free() || self.step_of_open().is_some()
    }

    /// What was shown is said: its force, or all that its balance needs.
    pub(super) fn take_as_said(&mut self, shown: StepId) {
        let forces = self.problem.forces();
        let forces = forces.iter().map(|force| force.id);
        let of_shown = |force: &ForceId| match shown {
            StepId::MomentSum => self.key.step(StepId::Distance(*force)).is_some(),
            step => step.force() == Some(*force),
        };
        let forces: Vec<ForceId> = forces.filter(of_shown).collect();
        if let Some(freely) = &mut self.state.freely {
            freely.said.forces.extend(forces);
            freely.said.pivot |= shown == StepId::MomentSum;
        }
    }

    /// What a line of a free working is filed under: what it settles, or what it tells and does not
    /// hold. A hint is filed under the line it speaks of.
    pub(super) fn about_freely(&self, outcome: &Outcome) -> Option<StepId> {
        let number = self.state.next_number;
        if outcome.hint.is_some() {
            return self.step_of_open().or_else(|| self.asked());
        }
        let open = self.state.open.as_ref();
        let open = open.filter(|open| outcome.numbered && open.number == number);
        let settled = outcome.progress.first().copied();
        settled.or_else(|| open.map(|open| open.judgement.target))
    }
}

/// The numbers typed in these sides, in SI units; a bare unit is none.
fn numbers_of(sides: &[Tree]) -> Vec<f64> {
    let mut numbers = Vec::new();
    for side in sides {
        side.visit(&mut |tree| {
            if let Node::Literal(literal) = &tree.node
                && !literal.unit_alone
            {
                numbers.push(literal.value.abs());
            }
        });
    }
    numbers
}
