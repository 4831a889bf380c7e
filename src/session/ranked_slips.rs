//! Slips among the thoughts behind a line: what slipped, where the number shows it.

use super::Session;
use super::ranked::{Speaks, Thought};
use super::written_out::Formulas;
use crate::diagnosis::{Beside, rounded_on_the_way};
use crate::judge::{Judgement, functions_of_own};
use crate::key::StepId;
use crate::units::{Dimension, number_text, value_text};

/// The g to which many are used, m/s².
const USUAL_TEN: f64 = 10.0;
/// Figures to which numbers on the way are rounded too hard.
const TOO_FEW: u8 = 2;

impl Session {
    /// A slip in a few words.
    pub(super) fn slip(&self, kind: &str, speaks: Speaks, share: f64) -> Thought {
        // What the line itself shows has its words in the summary of a session.
        let here = format!("diagnose.slip.{kind}");
        let key = match self.words.has(&here) {
            true => here,
            false => format!("summary.slip.{kind}"),
        };
        Thought {
            id: kind.to_owned(),
            family: None,
            name: self.words.word(&key),
            family_name: None,
            of: None,
            made_at: None,
            flat: speaks != Speaks::Value,
            speaks,
            share,
            formulas: None,
            gives: None,
            alike: Vec::new(),
        }
    }

    /// What beside mistakes may explain a number, each that has so large a share.
    pub(super) fn slips(&self, judgement: &Judgement, beside: &Beside, least: f64) -> Vec<Thought> {
        let another = beside.another.map_or(0.0, |(_, share)| share);
        let kinds = [
            ("pen", beside.pen),
            ("coarse", beside.coarse),
            ("ten", beside.ten),
            ("another", another),
        ];
        let told = kinds.into_iter().filter(|(_, share)| *share >= least);
        let slip = |(kind, share)| {
            let slip = self.slip(kind, Speaks::Value, share);
            match beside.another.filter(|_| kind == "another") {
                Some((given, _)) => Thought {
                    formulas: self.given_for(given, judgement.target),
                    ..slip
                },
                None => self.with_what_slipped(slip, judgement),
            }
        };
        told.map(slip).collect()
    }

    /// One quantity beside the one that is asked, each with its value.
    fn given_for(&self, given: StepId, asked: StepId) -> Option<(Formulas, Formulas)> {
        let (key, sampling) = (&self.key, &self.sampling);
        let hers = functions_of_own(key, &self.state.standing, sampling);
        let told = |step: StepId| {
            // What she told for a step herself is not what it comes to.
            let mut beside = hers.clone();
            beside.remove(&asked);
            beside.remove(&step);
            let function = key.function(key, step, sampling, &beside)?;
            Some(Formulas {
                names: self.symbol_of(step),
                numbers: self.told_value(step, function[0]),
            })
        };
        Some((told(given)?, told(asked)?))
    }

    /// A slip with the quantity that was taken otherwise: g, or the one that was rounded too hard.
    pub(super) fn with_what_slipped(&self, slip: Thought, judgement: &Judgement) -> Thought {
        let formulas = match slip.id.as_str() {
            "gravity" | "ten" => {
                let told = |gravity: f64| Formulas {
                    names: "g".to_owned(),
                    numbers: format!("{} m/s²", number_text(gravity)),
                };
                Some((told(USUAL_TEN), told(self.problem.gravity())))
            }
            "coarse" => self.rounded_too_hard(judgement),
            _ => None,
        };
        Thought { formulas, ..slip }
    }

    /// The one quantity that was rounded too hard on the way, as it was taken and as it is.
    fn rounded_too_hard(&self, judgement: &Judgement) -> Option<(Formulas, Formulas)> {
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let number = judgement.evidence.number?;
        let (step, taken, full) = rounded_on_the_way(&board, judgement.target, number)?;
        let known = self.key.step(step);
        let dimension = known.map_or(Dimension::NUMBER, |known| known.dimension);
        let told = |value: f64, figures: u8| Formulas {
            names: self.symbol_of(step),
            numbers: value_text(value, dimension, figures),
        };
        Some((told(taken, TOO_FEW), told(full, self.problem.figures())))
    }
}

/// The key of what to ask about a slip.
pub(super) fn asked_of_slip(kind: &str) -> Option<&'static str> {
    Some(match kind {
        "sum" | "pen" => "diagnose.ask.sum",
        "gravity" | "ten" => "diagnose.ask.gravity",
        "coarse" | "figures" => "diagnose.ask.figures",
        _ => return None,
    })
}
