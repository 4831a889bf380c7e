//! A drawn problem with a session at it, and what is asked of a list of thoughts.

use super::paper::Paper;
use super::pupil::{Line, Wrong, first_apart, work};
use leverwright::draw::draw;
use leverwright::key::{Key, Sampling, StepId, derive};
use leverwright::lesson::Lesson;
use leverwright::mistakes::{CATALOGUE, Instance, instances};
use leverwright::problem::Problem;
use leverwright::session::{Ranked, Session, Thought};
use leverwright::text::Words;

/// A problem at hand.
pub(super) struct Case {
    pub(super) problem: Problem,
    pub(super) key: Key,
    pub(super) sampling: Sampling,
    pub(super) paper: Paper,
    pub(super) session: Session,
    pub(super) instances: Vec<Instance>,
}

/// A mistake made in a problem: the working, and the line where it shows.
pub(super) struct Made {
    pub(super) wrong: Wrong,
    pub(super) shows_at: StepId,
}

impl Case {
    pub(super) fn draw(lesson: &Lesson, seed: u64) -> Option<Case> {
        let problem = draw(lesson, seed, "en")?.problem;
        Case::of(problem)
    }

    pub(super) fn of(problem: Problem) -> Option<Case> {
        let key = derive(&problem).ok()?;
        let sampling = Sampling::of(&problem);
        let paper = Paper::read(&problem, &key)?;
        let session = Session::start(problem.clone(), None, Words::english()).ok()?;
        let instances = instances(&problem, &key, &sampling);
        Some(Case {
            problem,
            key,
            sampling,
            paper,
            session,
            instances,
        })
    }

    /// Every one of the commonest mistakes that changes something here.
    pub(super) fn made(&self) -> Vec<Made> {
        let Some(right) = work(&self.paper, &[], 6) else {
            return Vec::new();
        };
        let all = Wrong::all(&self.paper).into_iter();
        all.filter_map(|wrong| {
            let lines = work(&self.paper, &[wrong], 6)?;
            // A line that is missing shows nothing: the next one that differs does.
            let shows_at = first_apart(&right, &lines)?;
            Some(Made { wrong, shows_at })
        })
        .collect()
    }

    /// The pull, whose value a balance gives.
    pub(super) fn pull(&self) -> StepId {
        StepId::Pull(self.paper.rope.force)
    }

    /// The step that a bare number answers for a line: the pull, for what has the pull in it.
    pub(super) fn valued(&self, lines: &[Line], step: StepId) -> Option<(StepId, f64)> {
        let of = |step: StepId| lines.iter().find(|line| line.step == step);
        match of(step)?.value {
            Some(value) => Some((step, value)),
            None => Some((self.pull(), of(self.pull())?.value?)),
        }
    }
}

/// The family of a mistake.
pub(super) fn family(id: &str) -> &'static str {
    let found = CATALOGUE.iter().find(|mistake| mistake.id == id);
    found.map_or("", |mistake| mistake.family)
}

/// True if a thought is of the mistake's family, or agrees with one that is.
pub(super) fn is_family(thought: &Thought, id: &str) -> bool {
    let wanted = family(id);
    thought.family == Some(wanted) || thought.alike.iter().any(|(_, family)| *family == wanted)
}

/// True if a thought is the mistake, or agrees with it.
pub(super) fn is_mistake(thought: &Thought, id: &str) -> bool {
    thought.id == id || thought.alike.iter().any(|(other, _)| *other == id)
}

/// The place of the first thought that passes, from 0.
pub(super) fn place(ranked: &Ranked, passes: impl Fn(&Thought) -> bool) -> Option<usize> {
    ranked.thoughts.iter().position(passes)
}

/// Of how many, how many.
#[derive(Clone, Copy, Default)]
pub(super) struct Share {
    pub(super) all: usize,
    pub(super) of_them: usize,
}

impl Share {
    pub(super) fn count(&mut self, is: bool) {
        self.all += 1;
        self.of_them += usize::from(is);
    }

    pub(super) fn add(&mut self, other: Share) {
        self.all += other.all;
        self.of_them += other.of_them;
    }

    pub(super) fn told(self) -> String {
        match self.all {
            0 => "-".to_owned(),
            all => format!("{:.2} %", 100.0 * self.of_them as f64 / all as f64),
        }
    }
}
