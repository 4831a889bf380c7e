//! What is true of her own values, though the problem has others: sums worked out beside the
//! working, and what solves one of her lines.

use super::Session;
use super::own_relations::following;
use crate::judge::{
    Evidence, Judgement, KnownTruth, Remark, Truth, is_true_of_typed, known_truth, own_of_wrong,
    says_as_own, solves_own, types_wrong, types_wrong_as_part, wrong_named,
};
use crate::reading::{Node, Tree, read};

impl Session {
    /// A true sum of known numbers, which would not answer a question: here none is asked, and no
    /// name says what it is meant for.
    pub(super) fn plain_sum(&mut self, line: &str, found: &Judgement) -> Option<Judgement> {
        let refused = found.truth == Truth::DoesNotHold;
        let sum = refused && self.known_truth(line) == Some(KnownTruth::Sum);
        sum.then(|| Judgement {
            truth: Truth::Noted,
            value: None,
            names: None,
            caret: None,
            remarks: vec![Remark::OfNumbers],
            evidence: Evidence::default(),
            ..found.clone()
        })
    }

    /// `568*1.5 = 852` and `W1*1.5 = 852` with W1 = 568 N, which is wrong: true of her numbers, and
    /// no attempt at anything else.
    pub(super) fn true_of_hers(&mut self, line: &str, found: &Judgement) -> Option<Judgement> {
        if !matches!(found.truth, Truth::DoesNotHold | Truth::Circular) {
            return None;
        }
        let freely = self.state.freely.as_ref()?;
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        if known_truth(&board, line) == Some(KnownTruth::OfNames) {
            let (lines, unknown) = wrong_named(&board, line);
            // A balance that her wrong T fulfils is no better for it.
            return (!lines.is_empty() && !unknown).then(|| Judgement {
                truth: Truth::Follows(lines),
                evidence: Evidence::default(),
                ..following(found, None)
            });
        }
        let lines: Vec<&str> = freely
            .lines
            .iter()
            .map(|(_, line, _)| line.as_str())
            .collect();
        is_true_of_typed(&board, line, &lines).then(|| Judgement {
            layout: found.layout.clone(),
            remarks: vec![Remark::OfNumbers],
            ..Judgement::noted_true(found.target)
        })
    }

    /// `θ = 48.5°` after `86.6·4 sin θ = 196·2 cos θ` with a wrong 86.6, and that line multiplied out:
    /// the root of a line of hers that is not linear.
    pub(super) fn solves_her_line(&mut self, line: &str, found: &Judgement) -> Option<Judgement> {
        let refused = matches!(found.truth, Truth::DoesNotHold | Truth::Mismatched(_));
        let freely = self.state.freely.as_ref().filter(|_| refused)?;
        if !self.is_general() {
            return None;
        }
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let gone = |at: &usize| freely.void.contains_key(at) || freely.fallen.contains_key(at);
        let stands = |truth: &str| matches!(truth, "holds" | "rounded" | "follows");
        let lines = || freely.lines.iter().filter(|(at, ..)| !gone(at));
        let of = |told: &dyn Fn(&str) -> bool| -> Vec<&str> {
            let told = lines().filter(|(.., truth)| told(truth));
            told.map(|(_, line, _)| line.as_str()).collect()
        };
        let number = found.evidence.number.filter(|_| found.evidence.alone);
        if let Some(number) = number {
            let hers = of(&|truth| stands(truth) || truth == "wrong");
            let solves =
                found.target.is_unknown() && solves_own(&board, found.target, number, &hers);
            let own = own_of_wrong(&board, found, self.state.next_number, None);
            return solves.then(|| following(found, own));
        }
        // Of what does not hold only the line before is gone on with, and not by telling it again.
        let mut hers = of(&stands);
        let last = lines().next_back().filter(|(.., truth)| *truth == "wrong");
        hers.extend(
            last.map(|(_, told, _)| told.as_str())
                .filter(|told| *told != line),
        );
        let wrong = of(&|truth| truth == "wrong");
        // Two wrong lines, one after the other, may give together what neither gives.
        let two = match wrong.as_slice() {
            [.., one, other] if ![*one, *other].contains(&line) => {
                board.says_as_two(line, (one, other)) || board.says_as_two(line, (other, one))
            }
            _ => false,
        };
        (two || says_as_own(&board, line, &hers)).then(|| following(found, None))
    }

    /// A form that comes to the right value by way of a wrong one of hers, and is proved by nothing, or
    /// only if her number meant another quantity: it agrees by chance, whether or not the value stands
    /// already.
    pub(super) fn by_chance_of_hers(&mut self, line: &str, found: &Judgement) -> Option<Judgement> {
        if !matches!(found.truth, Truth::Holds | Truth::HoldsRounded) {
            return None;
        }
        let (names, own_values) = (self.names(), self.own_values());
        let readings = read(line, names.vocabulary()).unwrap_or_default();
        let form = |side: &Tree| matches!(side.node, Node::Binary(..) | Node::Call(..));
        let mut sides = readings.first().into_iter().flat_map(|first| &first.sides);
        // A value may be that of two quantities; a form may not.
        let formed = sides.any(form);
        let board = self.board(&names, &own_values);
        // So it does where her wrong force has the number of a part that it has rightly.
        let by_chance = || match found.proved {
            true => types_wrong_as_part(&board, found.target, line),
            false => types_wrong(&board, found.target, line),
        };
        (formed && by_chance()).then(|| Judgement {
            layout: found.layout.clone(),
            remarks: vec![Remark::ByChance],
            proved: false,
            ..Judgement::noted_true(found.target)
        })
    }
}
