//! What follows in a free working from a wrong line that gives no value by itself: a relation
//! between unknowns, or a force that is left out wherever it would stand.

use super::Session;
use crate::diagnosis::Diagnosis;
use crate::judge::{Judgement, Own, Truth, follows_relation, is_of_a_kind, own_of_wrong};
use crate::key::StepId;
use std::collections::BTreeMap;

/// Mistakes by which a force is nowhere: who makes one in the moments and in the forces alike is
/// true to her own drawing.
const LEAVE_OUT: [&str; 2] = ["own-weight-left-out", "force-forgotten"];

/// Her value is that of such a working if it is off by no more than this share.
const SAME: f64 = 0.005;

impl Session {
    /// A line that does not hold and follows from a wrong relation of hers.
    pub(super) fn by_own_relation(&mut self, line: &str, found: &Judgement) -> Option<Judgement> {
        // Of `A = B = 294 N` the names are no form that comes to a value.
        let names_alone = || {
            let (names, _) = line.rsplit_once('=').unwrap_or((line, ""));
            !names.contains(|c: char| c.is_ascii_digit() || "+-−*·/(".contains(c))
        };
        let chain = !found.evidence.broken_link || names_alone();
        let refused = found.truth == Truth::DoesNotHold && chain;
        let freely = self.state.freely.as_ref().filter(|_| refused)?;
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let holds = |truth: &str| matches!(truth, "holds" | "rounded");
        let lines = &freely.lines;
        let mended = |at: usize, wrong: &str| {
            let mut later = lines.iter().filter(|(number, ..)| *number > at);
            later.any(|(_, line, truth)| holds(truth) && is_of_a_kind(&board, wrong, line))
        };
        let wrong: Vec<&str> = lines
            .iter()
            .filter(|(at, line, truth)| *truth == "wrong" && !mended(*at, line))
            .map(|(_, line, _)| line.as_str())
            .collect();
        if wrong.is_empty() {
            return None;
        }
        let right = lines.iter().filter(|(.., truth)| holds(truth));
        let right: Vec<&str> = right.map(|(_, line, _)| line.as_str()).collect();
        if !follows_relation(&board, &wrong, &right, line) {
            return None;
        }
        let own = own_of_wrong(&board, found, self.state.next_number, None);
        let told = found.target.is_balance() || self.names_target(found);
        Some(following(found, own.filter(|_| told)))
    }

    /// A force left out of the part of a support's force as it was of the balance before it.
    pub(super) fn left_out_again(
        &mut self,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
    ) -> Option<Judgement> {
        let refused = self.is_free() && judgement.truth == Truth::DoesNotHold;
        let spoken = diagnosis.spoken().filter(|_| refused)?;
        let left_out = LEAVE_OUT.contains(&self.instances[spoken.instance].mistake.id);
        if !left_out || !diagnosis.is_by_form() {
            return None;
        }
        let part = matches!(judgement.target, StepId::Reaction(..));
        let unknown = self.key.unknown().filter(|_| part)?;
        // What she found before is what that working gives.
        let hers = self.state.standing.get(&unknown).filter(|own| !own.right)?;
        let without = &self.instances[spoken.instance].key;
        let gives = without.function(&self.key, unknown, &self.sampling, &BTreeMap::new())?;
        if (gives[0] - hers.value).abs() > SAME * gives[0].abs() {
            return None;
        }
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let own = own_of_wrong(&board, judgement, self.state.next_number, None)?;
        Some(following(judgement, Some(own)))
    }
}

/// A refused line as one that follows, with the value that it gives its step.
fn following(refused: &Judgement, own: Option<Own>) -> Judgement {
    let mut follows = refused.clone();
    follows.truth = Truth::Follows(Vec::new());
    follows.values = own.into_iter().map(|own| (refused.target, own)).collect();
    follows.establishes = follows.values.iter().map(|(step, _)| *step).collect();
    follows.value = None;
    follows.caret = None;
    follows.remarks.clear();
    follows
}
