//! Measuring whether wrong lines are named rightly and right lines never called wrong.
//!
//! Every mistake that can be made in a drawn problem is typed twice at the step where it shows: as
//! an expression, and as a bare number of three figures. The line is judged without any earlier
//! values and diagnosed. It is *named rightly* when the first instance named, or one that cannot
//! be told from it, is of the same family, or gives the same function at the step the line speaks
//! about. Right lines are typed in many forms.
//!
//! The whole moment balance of every mistake is typed too, each component written out. There the
//! first mistake named must be one that writes these very terms: what agrees by identity only
//! is false.

use leverwright::diagnosis::{Diagnosis, diagnose};
use leverwright::draw::{MOST_TRIES, candidates, code, misnamed, refuse};
use leverwright::judge::{Board, Judgement, Names, Standing, Truth, judge};
use leverwright::key::{Key, Sampling, StepId, agree, derive};
use leverwright::lesson::Lesson;
use leverwright::mistakes::{Instance, Skill, instances, right_line, typed_line};
use leverwright::problem::Problem;
use std::collections::BTreeMap;

use super::forms;

/// The mistakes that learners make most, for which the goals are set.
pub(super) const COMMONEST: [&str; 16] = [
    "sine-cosine-exchanged",
    "complement",
    "mass-for-weight",
    "own-weight-left-out",
    "own-weight-at-tip",
    "not-resolved",
    "hypotenuse-confused",
    "stopped-at-component",
    "multiplied-at-the-end",
    "term-left-out",
    "turns-the-wrong-way",
    "forces-for-moments",
    "arm-not-divided-out",
    "radian-calculator",
    "moment-called-force",
    "force-forgotten",
];

/// Lines typed, and how many were named rightly.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Share {
    /// Lines typed.
    pub(super) typed: usize,
    /// Of them, those whose family was named first.
    pub(super) named: usize,
}

impl Share {
    /// Counts one line.
    fn count(&mut self, named: bool) {
        self.typed += 1;
        self.named += usize::from(named);
    }

    /// Counts the lines of another share too.
    pub(super) fn add(&mut self, other: Share) {
        self.typed += other.typed;
        self.named += other.named;
    }

    /// The share named, in per cent; 100 for no lines.
    pub(super) fn percent(self) -> f64 {
        if self.typed == 0 {
            100.0
        } else {
            100.0 * self.named as f64 / self.typed as f64
        }
    }
}

/// What was found for one mistake.
#[derive(Clone, Debug, Default)]
pub(super) struct Row {
    /// Typed as expressions.
    pub(super) expressions: Share,
    /// Typed as bare numbers.
    pub(super) numbers: Share,
    /// Typed as whole moment balances, with every component written out.
    pub(super) balances: Share,
    /// Lines that were not named rightly, told.
    pub(super) missed: Vec<String>,
}

/// What was found for one lesson.
#[derive(Clone, Debug, Default)]
pub(super) struct Findings {
    /// Problems drawn.
    pub(super) draws: usize,
    /// Candidates looked at for them.
    pub(super) tried: usize,
    /// The sum of the misnamed weight.
    pub(super) misnamed: f64,
    /// By mistake.
    pub(super) rows: BTreeMap<&'static str, Row>,
    /// Right lines typed.
    pub(super) right_lines: usize,
    /// Right lines that did not hold, told.
    pub(super) condemned: Vec<String>,
    /// Why candidates were refused.
    pub(super) refused: BTreeMap<String, usize>,
}

impl Findings {
    /// Expressions, numbers and balances over these mistakes.
    pub(super) fn total(&self, wanted: impl Fn(&str) -> bool) -> [Share; 3] {
        let mut total = [Share::default(); 3];
        for (_, row) in self.rows.iter().filter(|(id, _)| wanted(id)) {
            let shares = [row.expressions, row.numbers, row.balances];
            for (sum, share) in total.iter_mut().zip(shares) {
                sum.add(share);
            }
        }
        total
    }
}

/// Draws so many problems of a lesson and measures.
pub(super) fn measure(lesson: &Lesson, draws: usize, seed: u64) -> Findings {
    let mut findings = Findings::default();
    for at in 0..draws as u64 {
        let mut tried = 0;
        for place in candidates(lesson, seed.wrapping_add(at)).take(MOST_TRIES) {
            tried += 1;
            let Ok(problem) = lesson.problem_at(&place, "en") else {
                continue;
            };
            let Ok(key) = derive(&problem) else { continue };
            if let Some(refusal) = refuse(&problem, &key) {
                let kind = format!("{refusal:?}");
                let kind = kind.split([' ', '(', '{']).next().unwrap_or_default();
                *findings.refused.entry(kind.to_owned()).or_default() += 1;
                continue;
            }
            findings.draws += 1;
            findings.misnamed += misnamed(&problem, &key);
            let scene = Scene::of(problem, key, code(lesson, &place));
            scene.wrong_lines(&mut findings);
            scene.wrong_balances(&mut findings);
            scene.right_lines(&mut findings);
            break;
        }
        findings.tried += tried;
    }
    findings
}

/// A drawn problem with all that is needed to judge a line.
struct Scene {
    problem: Problem,
    key: Key,
    sampling: Sampling,
    names: Names,
    instances: Vec<Instance>,
    code: String,
}

impl Scene {
    fn of(problem: Problem, key: Key, code: String) -> Scene {
        let sampling = Sampling::of(&problem);
        let names = Names::of(&problem, &key, &[]);
        let instances = instances(&problem, &key, &sampling);
        Scene {
            problem,
            key,
            sampling,
            names,
            instances,
            code,
        }
    }

    fn judged(&self, step: StepId, line: &str) -> (Judgement, Diagnosis) {
        let standing = Standing::new();
        let board = Board::of(
            (&self.problem, &self.key, &self.sampling),
            (&self.names, &standing),
        );
        let judgement = judge(&board, step, line, 1);
        let diagnosis = diagnose(&board, &judgement, &self.instances);
        (judgement, diagnosis)
    }

    fn wrong_lines(&self, findings: &mut Findings) {
        for made in &self.instances {
            let Some(line) = typed_line(&self.problem, &self.key, made, &self.sampling) else {
                continue;
            };
            let row = findings.rows.entry(made.mistake.id).or_default();
            let fault = self.misnamed_as(made, line.step, &line.expression);
            row.expressions.count(fault.is_none());
            row.missed.extend(fault);
            if let Some((number, step)) = &line.number {
                let fault = self.misnamed_as(made, *step, number);
                row.numbers.count(fault.is_none());
                row.missed.extend(fault);
            }
        }
    }

    /// Types the moment balance of every mistake that changes a term of it.
    fn wrong_balances(&self, findings: &mut Findings) {
        let right = forms::balance_written_out(&self.problem, &self.key);
        for made in &self.instances {
            let line = forms::balance_written_out(&self.problem, &made.key);
            let Some(line) = line.filter(|line| Some(line) != right.as_ref()) else {
                continue;
            };
            let (judgement, diagnosis) = self.judged(StepId::MomentSum, &line);
            // The setting of a calculator cannot be written, and units that do not fit are said.
            if judgement.truth != Truth::DoesNotHold || made.mistake.skill == Skill::Numbers {
                continue;
            }
            let first = diagnosis
                .named
                .first()
                .map(|named| &self.instances[named.instance]);
            let written = |named: &Instance| forms::balance_written_out(&self.problem, &named.key);
            let named = first.is_some_and(|first| written(first).as_ref() == Some(&line));
            let row = findings.rows.entry(made.mistake.id).or_default();
            row.balances.count(named);
            if !named {
                row.missed.push(format!(
                    "{} balance `{line}` ({} {:?}): {:?}, named [{}]",
                    self.code,
                    made.mistake.id,
                    made.scope,
                    judgement.truth,
                    first.map_or(String::new(), |first| format!(
                        "{} {:?}",
                        first.mistake.id, first.scope
                    ))
                ));
            }
        }
    }

    /// What was named instead, told; `None` where the mistake was named rightly.
    fn misnamed_as(&self, made: &Instance, step: StepId, line: &str) -> Option<String> {
        let (judgement, diagnosis) = self.judged(step, line);
        let right = diagnosis.named.first().is_some_and(|first| {
            std::iter::once(first.instance)
                .chain(first.alike.iter().copied())
                .any(|index| self.one_thought(made, &self.instances[index], judgement.target))
        });
        if right {
            return None;
        }
        let told: Vec<String> = diagnosis
            .named
            .iter()
            .map(|named| {
                let instance = &self.instances[named.instance];
                let (id, share) = (instance.mistake.id, named.share);
                format!("{id} {:?} {share:.2}", instance.scope)
            })
            .collect();
        Some(format!(
            "{} {step:?} `{line}` ({} {:?}): {:?}, named [{}]",
            self.code,
            made.mistake.id,
            made.scope,
            judgement.truth,
            told.join("; ")
        ))
    }

    /// True for mistakes of one family, and for those that agree as functions here.
    fn one_thought(&self, made: &Instance, named: &Instance, step: StepId) -> bool {
        let function = |instance: &Instance| {
            instance
                .key
                .function(&self.key, step, &self.sampling, &BTreeMap::new())
        };
        made.mistake.family == named.mistake.family
            || function(made)
                .zip(function(named))
                .is_some_and(|(one, other)| agree(&one, &other))
    }

    fn right_lines(&self, findings: &mut Findings) {
        for step in self.key.asked().map(|step| step.id) {
            let Some(line) = right_line(&self.problem, &self.key, step, &self.sampling) else {
                continue;
            };
            let mut lines: Vec<(StepId, String)> =
                forms::of_expression(&self.problem, &self.key, step, &self.sampling)
                    .into_iter()
                    .map(|form| (step, form))
                    .collect();
            lines.push((step, line.expression));
            lines.extend(forms::of_value(
                &self.problem,
                &self.key,
                step,
                &self.sampling,
            ));
            for (step, line) in lines {
                findings.right_lines += 1;
                let (judgement, _) = self.judged(step, &line);
                if !holds(&judgement.truth) {
                    findings.condemned.push(format!(
                        "{} {step:?} `{line}`: {:?}",
                        self.code, judgement.truth
                    ));
                }
            }
        }
    }
}

fn holds(truth: &Truth) -> bool {
    truth.holds()
}
