//! Moments of the weights about the place of the rope, and nothing else: a line with no unknown in
//! it, so no function shows what was meant, only its terms do.

use super::{Because, Named, Voice, form};
use crate::judge::{Board, Judgement};
use crate::mistakes::Instance;

/// The mistake whose known moments, all of them and nothing else, stand in an equation.
pub(super) fn by_rope_place(
    board: &Board<'_>,
    judgement: &Judgement,
    instances: &[Instance],
) -> Option<Named> {
    if board.key.general.is_some() || judgement.evidence.broken_link {
        return None;
    }
    let about = |index: &usize| {
        let instance = &instances[*index];
        instance.mistake.id == "pivot-at-the-rope"
            && form::has_known_moments(board, judgement, &instance.key)
    };
    let instance = (0..instances.len()).find(about)?;
    Some(Named {
        instance,
        alike: Vec::new(),
        voice: Voice::Flat,
        because: Because::Form,
        share: 1.0,
        beside: None,
    })
}
