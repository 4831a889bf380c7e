//! What the learner has established: her values, right or not, and her own names.

use crate::key::{Samples, StepId};
use crate::units::{Dimension, Written};
use std::collections::BTreeMap;

/// A value further off than this share was rounded harder than three figures allow.
const COARSE: f64 = 0.005;

/// A value that the learner has established, right or not.
#[derive(Clone, Debug, PartialEq)]
pub struct Own {
    /// The number of the line.
    pub line: usize,
    /// The value that its name holds: in full for an expression, as typed for a bare number. SI.
    pub value: f64,
    /// The number as typed, if one was typed.
    pub typed: Option<(f64, Written)>,
    /// What it is as a function of the givens; the first entry is at the problem's own numbers.
    pub function: Samples,
    /// True if it is the right value, rounded or not.
    pub right: bool,
    /// True if the learner counted it with the other sign: in another sense than the key.
    pub against: bool,
    /// True if it was told by the unknown before that was found, or passed over then: a relation,
    /// and no value yet.
    pub relation: bool,
}

impl Own {
    /// The right value, as line `line` has it; 0 where it is in no line of hers.
    pub fn right(function: Samples, line: usize) -> Own {
        Own {
            line,
            value: function[0],
            typed: None,
            function,
            right: true,
            against: false,
            relation: false,
        }
    }

    /// The value of line `line` in the way that was told with it: that of its function where `sign`
    /// is 1, the other where it is −1.
    pub fn pointing(self, sign: f64, line: usize) -> Own {
        let function = self.function.map(|value| sign * value);
        let turned = |value: f64| value.abs().copysign(function[0]);
        Own {
            line,
            value: turned(self.value),
            typed: self.typed.map(|(typed, written)| (turned(typed), written)),
            function,
            right: self.right && sign > 0.0,
            against: false,
            ..self
        }
    }

    /// The value in the sense of its function: a part told as a size points as what it was judged
    /// by.
    pub(super) fn in_sense(&self) -> f64 {
        self.value.abs().copysign(self.function[0])
    }

    /// True for a right value that was rounded too hard, and with which she goes on.
    pub(super) fn is_coarse(&self) -> bool {
        let right = self.function[0].abs();
        self.right && (self.value.abs() - right).abs() > COARSE * right
    }

    /// The same value as a size: of a part that points back the size is written.
    pub(super) fn size(&self) -> Own {
        let sign = 1.0_f64.copysign(self.function[0]);
        Own {
            value: self.value.abs(),
            typed: self.typed.map(|(typed, written)| (typed.abs(), written)),
            function: self.function.map(|value| sign * value),
            ..self.clone()
        }
    }
}

/// The learner's standing values.
pub type Standing = BTreeMap<StepId, Own>;

/// True for the value of a line of hers that was right: `T = 879 N` after `T = (…)/(3.8·0.91)`.
pub(super) fn says_right_again(standing: &Standing, id: StepId, is: &dyn Fn(f64) -> bool) -> bool {
    let own = standing.get(&id);
    own.is_some_and(|own| own.right && !own.relation && is(own.value))
}

/// A name of the learner's own.
#[derive(Clone, Debug, PartialEq)]
pub struct OwnName {
    /// The value it holds, SI.
    pub value: f64,
    /// What it is as a function of the givens.
    pub function: Samples,
    /// Its dimension.
    pub dimension: Dimension,
    /// True if it is a multiple of the unknown, named before the unknown is found. Its value must
    /// not be told then.
    pub of_unknown: bool,
    /// True if it was made of a weight that was not found yet. Its value must not be told then.
    pub of_open_weight: bool,
    /// True if it was made of numbers without units only, so that its dimension is not known.
    pub bare: bool,
    /// What a bare name stands for inside a sine, cosine or tangent, in degrees.
    pub degrees: Option<Samples>,
    /// What else the number that it was set to may stand for: 1.5 m is half a beam and a depth.
    pub others: Vec<Samples>,
}
