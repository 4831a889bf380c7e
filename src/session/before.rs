//! Lines judged already while one line is answered. A line is looked at beside the right values
//! alone, beside her own, and as it may be written otherwise; what is judged against the same
//! values twice has the same verdict.

use super::Session;
use crate::judge::{Effort, Judgement, Own, OwnName, Standing};
use crate::key::{Key, StepId};
use crate::text::Symbol;
use std::cell::RefCell;

/// The most verdicts that are remembered: of a long line with many ways to write it.
const MOST: usize = 64;

/// The verdicts of one turn, and what they cost.
#[derive(Clone, Default)]
pub(super) struct Before {
    verdicts: RefCell<Vec<(Question, Judgement)>>,
    effort: Effort,
}

/// Everything that a verdict depends on and that changes within a session.
#[derive(Clone, PartialEq)]
pub(super) struct Question {
    asked: StepId,
    line: String,
    /// The step that bare names are read for, and names told in words.
    asking: Option<StepId>,
    told_names: Vec<(String, Option<StepId>)>,
    next_number: usize,
    wide: bool,
    standing: Standing,
    own_names: Vec<(Symbol, OwnName)>,
    earlier: Vec<(StepId, Own)>,
    carried: Vec<(StepId, Key)>,
}

impl Question {
    pub(super) fn of(session: &Session, asked: StepId, line: &str) -> Question {
        let state = &session.state;
        let told = state.told_names.iter();
        Question {
            asked,
            line: line.to_owned(),
            asking: session.asked(),
            told_names: told.map(|told| (told.name.clone(), told.step)).collect(),
            next_number: state.next_number,
            wide: state.wide,
            standing: state.standing.clone(),
            own_names: state.own_names.clone(),
            earlier: state.earlier.clone(),
            carried: state.carried.clone(),
        }
    }
}

impl Before {
    /// The verdict on a line, as it was or as `judge` finds it.
    pub(super) fn or_judge(
        &self,
        question: Question,
        judge: impl FnOnce() -> Judgement,
    ) -> Judgement {
        let known = self
            .verdicts
            .borrow()
            .iter()
            .find_map(|(asked, judgement)| (*asked == question).then(|| judgement.clone()));
        if let Some(known) = known {
            return known;
        }
        let judgement = judge();
        let mut all = self.verdicts.borrow_mut();
        if all.len() == MOST {
            all.remove(0);
        }
        all.push((question, judgement.clone()));
        judgement
    }

    /// What was spent on the line that is answered now.
    pub(super) fn effort(&self) -> &Effort {
        &self.effort
    }

    /// Forgets all verdicts.
    pub(super) fn clear(&mut self) {
        self.verdicts.get_mut().clear();
        self.effort.renew();
    }
}
