//! What a lesson's range gives: how much of it is kept, and how well the mistakes show there.

use super::{candidates, misnamed, refuse};
use crate::key::{Sampling, derive};
use crate::lesson::Lesson;
use crate::mistakes::{function, instances, unknown};
use crate::problem::Problem;
use std::collections::BTreeMap;

/// The least share of draws that a lesson must keep.
pub const LEAST_KEPT: f64 = 0.05;
/// The least number of problems that a lesson must give.
pub const LEAST_PROBLEMS: f64 = 200.0;

/// A lesson over its range.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Survey {
    /// Draws looked at.
    pub tried: usize,
    /// Of them, those that no rule refuses.
    pub kept: usize,
    /// About how many problems the lesson gives: the places of its grid times the share kept.
    pub problems: f64,
    /// The mean share of the mistakes' prior weight that a number at the pull would put under
    /// another mistake's name, or take for right.
    pub misnamed: f64,
    /// How many of the kept draws were looked at for that.
    pub looked_at: usize,
    /// Mistakes that give the right pull whatever the numbers, with the count of draws looked at in
    /// which they do.
    pub identical: BTreeMap<&'static str, usize>,
}

impl Survey {
    /// The share of draws that is kept.
    pub fn share(&self) -> f64 {
        self.kept as f64 / self.tried.max(1) as f64
    }

    /// True for a lesson of which too little is worth asking.
    pub fn is_too_narrow(&self) -> bool {
        self.share() < LEAST_KEPT || self.problems < LEAST_PROBLEMS
    }
}

/// Looks at a lesson's first draws, `tries` of them, and closer at `close` of those that are kept.
pub fn survey(lesson: &Lesson, tries: usize, close: usize, language: &str) -> Survey {
    let mut survey = Survey::default();
    for place in candidates(lesson, 1).take(tries) {
        survey.tried += 1;
        let Ok(problem) = lesson.problem_at(&place, language) else {
            continue;
        };
        let Ok(key) = derive(&problem) else { continue };
        if refuse(&problem, &key).is_some() {
            continue;
        }
        survey.kept += 1;
        if survey.looked_at < close {
            survey.looked_at += 1;
            survey.misnamed += misnamed(&problem, &key);
            for id in identical(&problem) {
                *survey.identical.entry(id).or_default() += 1;
            }
        }
    }
    survey.misnamed /= survey.looked_at.max(1) as f64;
    survey.problems = lesson.grid().size() as f64 * survey.share();
    survey
}

/// The mistakes that show at a step before the pull and give the right pull all the same.
fn identical(problem: &Problem) -> Vec<&'static str> {
    let Ok(key) = derive(problem) else {
        return Vec::new();
    };
    let sampling = Sampling::of(problem);
    let Some(pull) = unknown(&key) else {
        return Vec::new();
    };
    let none = BTreeMap::new();
    let Some(right) = function(&key, &key, pull, &sampling, &none) else {
        return Vec::new();
    };
    let mut found: Vec<&'static str> = instances(problem, &key, &sampling)
        .iter()
        .filter(|instance| !instance.mistake.has_no_prior())
        .filter(|instance| key.rank(instance.shows_at) <= key.rank(pull))
        .filter(|instance| {
            function(&instance.key, &key, pull, &sampling, &none)
                .is_some_and(|wrong| crate::key::agree(&wrong, &right))
        })
        .map(|instance| instance.mistake.id)
        .collect();
    found.sort_unstable();
    found.dedup();
    found
}
