//! A wrong value of hers that she goes on with, told once more.

use super::board::{Board, Own};
use super::expression::typed_number;
use super::grade::COMMON_FIGURES;
use super::{Evidence, Judgement, Remark, Truth};
use crate::reading::{Tree, Value};
use crate::units::Dimension;

/// A form comes to her value if it is off by no more than this share.
const SAME_FORM: f64 = 1e-6;

/// Notes a chain all of whose sides tell the wrong value of hers that stands at its step.
pub(super) fn note_said_again(
    board: &Board<'_>,
    dimension: Dimension,
    (sides, values): (&[&Tree], &[Value]),
    judgement: &mut Judgement,
) {
    let own = board.standing.get(&judgement.target);
    let Some(own) = own.filter(|own| !own.right) else {
        return;
    };
    let refused = matches!(judgement.truth, Truth::DoesNotHold | Truth::TooFewFigures);
    let mut both = sides.iter().zip(values);
    if refused && both.all(|(side, value)| tells(own, dimension, side, *value)) {
        judgement.truth = Truth::Noted;
        judgement.proved = true;
        judgement.values.clear();
        judgement.caret = None;
        // Its sign may say the same as a way behind it.
        judgement.evidence = Evidence {
            number: judgement.evidence.number,
            ..Evidence::default()
        };
        judgement.remarks = vec![Remark::OwnAgain(own.line)];
    }
}

impl Judgement {
    /// True for a wrong value of hers told once more.
    pub(super) fn says_own_again(&self) -> bool {
        self.own_again_of().is_some()
    }

    /// The line that told a wrong value of hers first, for one that tells it once more.
    pub fn own_again_of(&self) -> Option<usize> {
        self.remarks.iter().find_map(|remark| match remark {
            Remark::OwnAgain(line) => Some(*line),
            _ => None,
        })
    }
}

/// True if a side is her value: as she typed it, rounded to three figures or more, or worked out
/// once more.
fn tells(own: &Own, dimension: Dimension, side: &Tree, value: Value) -> bool {
    let number = value.number_as(dimension);
    let near = |hers: f64, share: f64| (number - hers).abs() <= share * hers.abs();
    let same = match typed_number(side, number, dimension) {
        Some(typed) => {
            own.typed.is_some_and(|(hers, _)| near(hers, 1e-9))
                || typed.written.significant >= COMMON_FIGURES && typed.is(own.value)
        }
        None => near(own.value, SAME_FORM),
    };
    value.may_be(dimension) && same
}
