//! The part of a formula that a mistake has changed, as the learner wrote it.

use crate::key::{Atom, Formula, Key, StepId, difference};

/// A sine as the cosine of the other angle, or the reverse, where the line has only that one: a
/// learner who typed `cos β` did not write sin(90° − β).
pub(super) fn in_typed_ratio(
    key: &Key,
    formula: &Formula,
    (sine, cosine): (bool, bool),
) -> Formula {
    formula.rewrite(&|part| match part {
        Formula::Sine(angle) if cosine && !sine => {
            Some(Formula::Cosine(Box::new(complement(key, angle))))
        }
        Formula::Cosine(angle) if sine && !cosine => {
            Some(Formula::Sine(Box::new(complement(key, angle))))
        }
        _ => None,
    })
}

/// What an angle lacks to a right one: β for 90° − β.
fn complement(key: &Key, angle: &Formula) -> Formula {
    let written_out = match angle {
        Formula::Atom(Atom::Step(id @ StepId::Angle(_))) => key.formula(*id),
        _ => None,
    };
    match written_out.as_ref().unwrap_or(angle) {
        Formula::Sum(parts)
            if let [Formula::Degrees(90.0), Formula::Negative(other)] = parts.as_slice() =>
        {
            other.as_ref().clone()
        }
        _ => difference(Formula::Degrees(90.0), angle.clone()),
    }
}

/// The smallest part in which two formulas of the same shape differ.
pub(super) fn changed_part(wrong: &Formula, right: &Formula) -> Option<Formula> {
    if wrong == right {
        return None;
    }
    let (mine, other) = (wrong.bare(), right.bare());
    let (parts, others) = (mine.children(), other.children());
    if std::mem::discriminant(mine) == std::mem::discriminant(other)
        && parts.len() == others.len()
        && !parts.is_empty()
    {
        let changed: Vec<_> = parts
            .iter()
            .zip(&others)
            .filter(|(mine, other)| mine != other)
            .collect();
        if let [(mine, other)] = changed.as_slice() {
            return changed_part(mine, other);
        }
    }
    Some(mine.clone())
}
