//! A mistake of hers made once more in another form: it follows from nothing, though the number is the
//! one that she goes on with.

use super::Session;
use super::freely_wide::is_unseen;
use crate::diagnosis::diagnose_of;
use crate::judge::{Evidence, Judgement, Remark, Truth, TypedRatio};
use crate::key::StepId;
use crate::reading::read;

/// Values that differ by no more than this share are one, rounded on the way.
const SAME_VALUE: f64 = 0.005;
/// Angles nearer than this are one, in radians.
const ONE_ANGLE: f64 = 1e-6;

impl Session {
    /// `T⊥ = T sin 55` after `T⊥ = T cos 35` was refused, and a refused sum with its factors in
    /// another order: judged as if it were told for the first time. Who goes on with it puts numbers
    /// together or solves; another ratio or a name that shows the mistake by itself, or the same
    /// numbers, say nothing new.
    pub(super) fn own_mistake_again(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let own_again = |remark: &Remark| matches!(remark, Remark::OwnAgain(_));
        let follows = matches!(found.truth, Truth::Follows(_))
            || found.truth == Truth::Noted && found.remarks.iter().any(own_again);
        let freely = self.state.freely.as_ref();
        let freely = freely.filter(|_| follows && !self.is_general())?;
        let target = found.target;
        if found.evidence.alone {
            return self.own_form_again(found);
        }
        let refused = freely
            .lines
            .iter()
            .rev()
            .filter(|(.., truth)| *truth == "wrong");
        let mut refused = refused.filter_map(|(at, first, _)| {
            let open = self.state.judged.get(at)?;
            (open.judgement.target == target).then_some((first, &open.judgement.evidence))
        });
        let (first, before) = refused.next()?;
        let ratios = &found.evidence.typed_ratios;
        let another = ratios
            .iter()
            .any(|one| !is_among(one, &before.typed_ratios));
        let numbers = self.numbers_in(line);
        let same = !numbers.is_empty() && numbers == self.numbers_in(first);
        // `Hy = 1068 - T` after `Hy = 1068 - 419` was refused.
        let known = |id: &StepId| *id == target || before.rests_on.contains(id);
        let named = found.evidence.rests_on.iter().any(|id| !known(id));
        // A balance is brought into another form by whoever goes on with it, but not with other ratios.
        let anew = match target.is_balance() {
            true => another,
            false => another || same || named,
        };
        if !anew {
            return self.own_form_again(found);
        }
        let (standing, carried) = (self.state.standing.clone(), self.state.carried.clone());
        let earlier = std::mem::take(&mut self.state.earlier);
        self.state.standing.remove(&target);
        self.state.carried.retain(|(step, _)| *step != target);
        let anew = self.judged_in_force(asked, line);
        let shown = same || self.shows_mistake(&anew);
        self.state.standing = standing;
        self.state.carried = carried;
        self.state.earlier = earlier;
        match anew.truth == Truth::DoesNotHold && shown {
            true => Some(anew),
            false => self.own_form_again(found),
        }
    }

    /// `T = 523·sin 35`, or its value, after `T = 2301/4.4·sin 35` was refused: what comes to the value
    /// of a refused form goes on with it, and is no right way.
    fn own_form_again(&self, found: &Judgement) -> Option<Judgement> {
        let own = self.state.standing.get(&found.target);
        let own = own.filter(|own| !own.right && !found.target.is_balance())?;
        let mut lines = self.state.freely.as_ref()?.lines.iter();
        let refused =
            |(at, _, truth): &&(usize, String, &str)| *at == own.line && *truth == "wrong";
        lines.find(refused)?;
        let mut values = found.values.iter();
        let (_, value) = values.find(|(step, _)| *step == found.target)?;
        let same = (value.value - own.value).abs() <= SAME_VALUE * own.value.abs();
        let follows = same && matches!(found.truth, Truth::Follows(_));
        follows.then(|| Judgement {
            layout: found.layout.clone(),
            remarks: vec![Remark::OwnAgain(own.line)],
            evidence: Evidence {
                number: found.evidence.number,
                ..Evidence::default()
            },
            ..Judgement::noted_true(found.target)
        })
    }

    /// `T⊥ = T·cos 25` whose value agrees with a right or an own one by chance: its form shows what is
    /// wrong with it.
    pub(super) fn refused_by_form(&self, mut found: Judgement) -> Judgement {
        let free = self.is_free() && !self.is_general();
        if !free || !is_unseen(&found) || found.evidence.alone {
            return found;
        }
        let refused = Judgement {
            truth: Truth::DoesNotHold,
            remarks: Vec::new(),
            ..found.clone()
        };
        if self.shows_mistake(&refused) {
            found = refused;
        }
        found
    }

    /// True if the form of a line shows by itself what is wrong with it.
    fn shows_mistake(&self, judgement: &Judgement) -> bool {
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let diagnosis = diagnose_of(&board, judgement, &self.instances, &self.state.leaning);
        judgement.evidence.wrong_angle.is_some() || diagnosis.is_by_form()
    }

    /// The numbers of a line as they were typed, smallest first.
    fn numbers_in(&self, line: &str) -> Vec<f64> {
        let names = self.names();
        let readings = read(line, names.vocabulary()).unwrap_or_default();
        let sides = readings.first().into_iter().flat_map(|one| &one.sides);
        let literals = sides.flat_map(|side| side.literals());
        let mut numbers: Vec<f64> = literals.map(|place| place.literal.typed).collect();
        numbers.sort_by(f64::total_cmp);
        numbers
    }
}

fn is_among(one: &TypedRatio, others: &[TypedRatio]) -> bool {
    let mut others = others.iter();
    others.any(|other| other.ratio == one.ratio && (other.angle - one.angle).abs() < ONE_ANGLE)
}
