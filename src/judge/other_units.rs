//! Lines whose numbers are typed without units and are counted in other ones: a balance in
//! kilonewtons or in centimetres.

use super::board::Board;
use super::printed_units::printed_force;
use super::stock::Stock;
use super::{Judgement, Remark, Truth, judge_reading};
use crate::key::StepId;
use crate::reading::{Node, Reading};
use crate::units::Dimension;

/// What a newton and a metre are typed as.
const COUNTED_IN: [(f64, f64); 4] = [(1e-3, 1.0), (1.0, 100.0), (1.0, 1000.0), (1e-3, 1000.0)];
/// How far the value of such a line may be off, as a share.
const NEAR: f64 = 0.01;

/// Judges a line that does not hold as it stands in other units; `None` where that proves nothing.
pub(super) fn judge(
    board: &Board<'_>,
    stock: &Stock,
    asked: StepId,
    reading: &Reading,
    line: (&str, usize),
    known: &Judgement,
) -> Option<Judgement> {
    let unseen = known.truth == Truth::Noted && known.remarks.contains(&Remark::NotSeen);
    let forms = reading.sides.iter();
    let forms = forms.filter(|side| !matches!(side.node, Node::Literal(_)));
    let places = forms.flat_map(|side| side.literals());
    let bare = places
        .into_iter()
        .all(|place| place.literal.unit.is_none() || place.in_angle);
    if !bare || !(unseen || known.truth == Truth::DoesNotHold) {
        return None;
    }
    COUNTED_IN.iter().find_map(|(force, length)| {
        let counted = stock.counted_in(*force, *length);
        let mut judgement = judge_reading(board, &counted, asked, reading, line);
        // A balance with more than one unknown is proved, and gives no value yet.
        let hard = judgement.evidence.rounded_hard || judgement.truth == Truth::TooFewFigures;
        // In the unit in which the forces are printed `B = 12·1.5/3 = 6` has figures enough.
        let hard = hard && printed_force(board).is_none();
        if is_balance_of_several(board, &judgement) || hard {
            return Some(judgement);
        }
        let (step, own) = judgement.values.first_mut()?;
        // Only in a balance does the unknown come out in the unit that the numbers are in.
        let balance = step.is_balance();
        let of = board
            .key
            .gives(*step)
            .and_then(|unknown| board.key.step(unknown));
        let unit = match of.map_or(Dimension::FORCE, |unknown| unknown.dimension) {
            Dimension::FORCE => *force,
            Dimension::MOMENT => force * length,
            Dimension::LENGTH => *length,
            _ => 1.0,
        };
        let value = if balance { own.value / unit } else { own.value };
        let right = own.function[0];
        let fits = (value.abs() - right.abs()).abs() <= NEAR * right.abs();
        if balance {
            own.value = right;
        }
        (fits && judgement.proved && judgement.truth.holds()).then_some(judgement)
    })
}

/// True for a line that in other units stands, or shows what is wrong with it.
pub(super) fn says_something(judgement: &Judgement) -> bool {
    let told = judgement.evidence.wrong_way
        || judgement.remarks.contains(&Remark::NotSeen)
        || matches!(
            judgement.truth,
            Truth::WrongUnit { .. } | Truth::TooFewFigures
        );
    judgement.stands() || told || judgement.evidence.rounded_hard
}

/// True for a balance that is proved with unknowns in it that are still open.
fn is_balance_of_several(board: &Board<'_>, judgement: &Judgement) -> bool {
    let open = |step: &StepId| step.is_unknown() && !board.standing.contains_key(step);
    let named = &judgement.evidence.rests_on;
    judgement.truth == Truth::Noted
        && judgement.proved
        && judgement.values.is_empty()
        && named.iter().filter(|step| open(step)).count() > 1
}
