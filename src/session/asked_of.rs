//! What the class asks of an answer beside its value: its unit, and how many figures.

use super::Outcome;
use super::Session;
use super::state::Open;
use super::turn::Sign;
use crate::diagnosis::{Diagnosis, Voice};
use crate::judge::{Judgement, Remark, Truth};
use crate::key::StepId;
use crate::problem::{Asking, FiguresAsked, UnitAsked};
use crate::text::Slot;
use crate::units::{Dimension, unit_for, unit_of_figure};

/// The figures that are carried on the way.
const CARRIED: u8 = 3;

/// What a value that holds lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lack {
    /// Its unit.
    Unit,
    /// Figures.
    TooFew,
    /// It has more figures than it may have.
    TooMany,
}

impl Session {
    /// Asks this of answers from here on; what was answered before stands.
    pub fn ask_of_answers(&mut self, asking: Asking) {
        self.problem = self.problem.clone().asking(asking);
    }

    /// What a line that holds lacks, where it waits for that.
    pub(super) fn lack(&self, judgement: &Judgement) -> Option<Lack> {
        let asks = self.problem.asks();
        let bare = judgement.remarks.contains(&Remark::UnitMissing);
        if asks.unit == UnitAsked::Asked && bare {
            return Some(Lack::Unit);
        }
        let target = judgement.target;
        let dimension = self.key.step(target)?.dimension;
        if !target.is_unknown() || dimension == Dimension::ANGLE {
            return None;
        }
        let of_target = judgement.values.iter().find(|(id, _)| *id == target);
        let (value, written) = of_target?.1.typed?;
        if value == 0.0 {
            return None;
        }
        let figures = self.problem.figures();
        let place = unit_of_figure(value, figures);
        let exact = asks.figures == FiguresAsked::Exact;
        let few = exact || asks.figures == FiguresAsked::Asked && figures > CARRIED;
        if few && written.last_place > place * (1.0 + 1e-6) {
            return Some(Lack::TooFew);
        }
        (exact && written.last_place < place * (1.0 - 1e-6)).then_some(Lack::TooMany)
    }

    /// A line that holds and waits for what it lacks.
    pub(super) fn waits_for(
        &mut self,
        asked: StepId,
        (judgement, number): (&Judgement, usize),
        lack: Lack,
    ) -> Outcome {
        let wanted = self
            .key
            .step(judgement.target)
            .map_or(Dimension::NUMBER, |step| step.dimension);
        let (truth, kept, verdict, key, slip) = match lack {
            Lack::Unit => (
                Truth::WrongUnit {
                    wanted,
                    found: Dimension::NUMBER,
                },
                "unit-missing",
                "verdict.unit-missing",
                "talk.unit-missing",
                "unit-missing",
            ),
            Lack::TooFew => (
                Truth::TooFewFigures,
                "too-few-figures",
                "verdict.figures",
                "talk.figures-wanted",
                "figures-asked",
            ),
            Lack::TooMany => (
                Truth::TooFewFigures,
                "too-many-figures",
                "verdict.figures-many",
                "talk.figures-wanted",
                "figures-asked",
            ),
        };
        let unit = unit_for(wanted).map_or("", |unit| unit.symbol).to_owned();
        let slots = [
            ("unit", Slot::Value(unit)),
            ("figures", Slot::Word(self.figures_word())),
        ];
        let message = self.words.say(key, &slots);
        let mut waiting = judgement.clone();
        waiting.truth = truth;
        self.miss_told(asked, Some((slip, Voice::Flat)));
        self.state.open = Some(Open {
            judgement: waiting,
            diagnosis: Diagnosis::default(),
            number,
        });
        self.state.hint_stage = 0;
        Outcome::verdict(Sign::Incomplete, verdict, kept, message)
    }

    /// Keeps among the slips that a value stands without its unit, where the class marks that.
    pub(super) fn mark_unit(&mut self, judgement: &Judgement) {
        let bare = judgement.remarks.contains(&Remark::UnitMissing);
        if self.problem.asks().unit == UnitAsked::Marked && bare {
            self.miss_told(judgement.target, Some(("unit-missing", Voice::Flat)));
        }
    }

    /// How many figures are asked, in a word.
    pub(super) fn figures_word(&self) -> String {
        self.words.word(figures_key(self.problem.figures()))
    }

    /// How many are to be carried on the way, in a word.
    pub(super) fn carried_word(&self) -> String {
        let carried = self.problem.figures().max(CARRIED);
        self.words.word(figures_key(carried))
    }
}

fn figures_key(figures: u8) -> &'static str {
    match figures {
        0..=2 => "figures.two",
        3 => "figures.three",
        4 => "figures.four",
        5 => "figures.five",
        _ => "figures.six",
    }
}
