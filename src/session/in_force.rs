//! A line of a free working judged beside what is in force: by the right key alone, or else beside
//! her own wrong values.

use super::Session;
use crate::judge::{Aside, Judgement, Own, Remark, Truth, types_wrong, wrong_named};
use crate::key::StepId;

impl Session {
    /// A line of a guided walk. A right balance is right, though she goes on with a wrong one and with
    /// what it gave her.
    pub(super) fn judged_guided(&mut self, asked: StepId, line: &str) -> Judgement {
        let told = self.judged_told(asked, line);
        let goes_on = self.state.standing.values().any(|own| !own.right);
        if told.truth.holds() || !goes_on || self.is_general() {
            return told;
        }
        let anew = self.with_no_force_found(|session| session.judged_anywhere(asked, line));
        match anew.truth.holds() && anew.target == StepId::MomentSum {
            true => anew,
            false => told,
        }
    }

    /// A balance that is false with the pull she has found: judged as one for that, and no sum.
    pub(super) fn as_balance(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let refused = found.truth == Truth::DoesNotHold && !self.is_general();
        if !refused || found.evidence.aside != Some(Aside::False) {
            return None;
        }
        let anew = self.with_no_force_found(|session| session.judged_anywhere(asked, line));
        let balance = anew.truth == Truth::DoesNotHold && anew.evidence.equation;
        balance.then_some(anew)
    }

    /// A line judged by the right key alone, or else beside her own wrong values.
    pub(super) fn judged_in_force(&mut self, asked: StepId, line: &str) -> Judgement {
        let clean = self.beside_right_alone(|session| session.judged_anywhere(asked, line));
        if clean.stands() {
            return clean;
        }
        // A balance once solved may be written again, in numbers of which one was the unknown.
        let anew = self.with_no_force_found(|session| session.judged_anywhere(asked, line));
        let turned = clean.evidence.wrong_way;
        if anew.stands() && !anew.truth.holds() && !turned {
            return anew;
        }
        let mut hers = self.judged_anywhere(asked, line);
        // A balance beside a reaction of hers that was rounded, or missed, is judged by what it
        // adds up.
        let follows =
            |found: &Judgement| found.truth == Truth::Noted && !found.evidence.follows.is_empty();
        if !hers.truth.holds() && !follows(&hers) {
            let open =
                self.with_wrong_unknowns_open(|session| session.judged_anywhere(asked, line));
            // So is an equation for the unknown, beside a wrong value of that.
            let follows = |found: &Judgement| {
                follows(found)
                    || found.target.is_balance() && matches!(found.truth, Truth::Follows(_))
            };
            hers = open.filter(follows).unwrap_or(hers);
        }
        // A relation that follows from her own wrong values is as good as a value that does.
        // What is only noted by the right key is not condemned for her wrong values.
        if clean.truth == Truth::Noted && !hers.truth.holds() && !follows(&hers) {
            return self.knowing_hers(line, clean);
        }
        // An equation for what she has wrong is one, and gives it anew.
        if hers.truth == Truth::DoesNotHold && self.is_equation_anew(&anew) {
            return anew;
        }
        // True among wrong values of her own proves nothing.
        if hers.truth == Truth::Noted {
            hers.proved = false;
        }
        self.follows_where_named(line, &mut hers);
        if !hers.truth.holds() && clean.evidence.aside != Some(Aside::True) {
            hers.evidence.aside = hers.evidence.aside.filter(|aside| *aside != Aside::True);
        }
        hers
    }

    /// A line whose way is not seen, and in which a wrong value of hers is typed: its numbers are those
    /// of her working, and it is not said that they are none.
    fn knowing_hers(&self, line: &str, mut noted: Judgement) -> Judgement {
        let unseen = noted.remarks.contains(&Remark::NotSeen);
        let known = noted.remarks.contains(&Remark::AllKnown);
        let (names, own_values) = (self.names(), self.own_values());
        let typed = || types_wrong(&self.board(&names, &own_values), noted.target, line);
        if unseen && !known && typed() {
            noted.remarks.push(Remark::AllKnown);
        }
        noted
    }

    /// Lets a balance that holds only beside wrong values of hers follow from those named in it, though
    /// what it gives is right: the mistake that was refused on one line is none the less one on the
    /// next.
    fn follows_where_named(&self, line: &str, hers: &mut Judgement) {
        let holds = matches!(hers.truth, Truth::Holds | Truth::HoldsRounded);
        if !holds || !(hers.target.is_balance() || hers.evidence.equation) {
            return;
        }
        let (names, own_values) = (self.names(), self.own_values());
        let (lines, _) = wrong_named(&self.board(&names, &own_values), line);
        if !lines.is_empty() {
            hers.truth = Truth::Follows(lines);
            hers.values.clear();
            hers.establishes.clear();
        }
    }

    /// True for an equation that does not hold and gives an unknown of which a wrong value stands.
    fn is_equation_anew(&self, anew: &Judgement) -> bool {
        let wrong = |step: &StepId| {
            let own = self.state.standing.get(step);
            step.is_unknown() && own.is_some_and(|own| !own.right)
        };
        anew.truth == Truth::DoesNotHold
            && anew.target.is_balance()
            && anew.evidence.number.is_some()
            && !anew.evidence.broken_link
            && anew.evidence.rests_on.iter().any(wrong)
    }

    /// What is found out with none of the forces found that are made of an unknown.
    pub(super) fn with_no_force_found<T>(&mut self, look: impl Fn(&Session) -> T) -> T {
        let standing = self.state.standing.clone();
        let key = &self.key;
        (self.state.standing).retain(|id, _| id.is_of_givens() && key.open_in(*id).is_empty());
        let found = self.beside_right_alone(look);
        self.state.standing = standing;
        found
    }

    /// What is found out with the reactions and unknowns of hers that are not right still to be
    /// found; `None` where there is none.
    fn with_wrong_unknowns_open<T>(&mut self, look: impl Fn(&Session) -> T) -> Option<T> {
        let standing = self.state.standing.clone();
        let hers = |id: &StepId, own: &Own| {
            !own.right && (id.is_unknown() || matches!(id, StepId::Reaction(..)))
        };
        (self.state.standing).retain(|id, own| !hers(id, own));
        let found = (self.state.standing.len() < standing.len()).then(|| look(self));
        self.state.standing = standing;
        found
    }

    /// A line judged at a step, or at the one whose value it tells.
    pub(super) fn judged_anywhere(&self, asked: StepId, line: &str) -> Judgement {
        let here = self.judged_told(asked, line);
        let other = here.evidence.other_step.filter(|_| !here.stands());
        let there = other
            .filter(|other| *other != asked && !here.evidence.broken_link)
            .map(|other| self.judged_told(other, line));
        if let Some(there) = there.filter(|there| there.truth.holds()) {
            return there;
        }
        if let Some(told) = self.told_alone(&here, line) {
            return told;
        }
        // An equation with the name of the next step in it need not be meant for that step.
        let balance = StepId::MomentSum;
        let is_balance = here.truth == Truth::Circular && self.key.step(balance).is_some();
        match is_balance && asked != balance {
            true => self.judged_told(balance, line),
            false => here,
        }
    }

    /// A number alone judged as the one unknown whose value it is.
    fn told_alone(&self, here: &Judgement, line: &str) -> Option<Judgement> {
        let refused = here.truth == Truth::DoesNotHold && here.evidence.alone;
        if !refused || line.contains(['=', '≈']) {
            return None;
        }
        let open = |id: &StepId| id.is_unknown() && !self.state.reached.contains_key(id);
        let unknowns = self.key.asked().map(|step| step.id).filter(open);
        let mut told = unknowns
            .map(|unknown| self.judged_told(unknown, line))
            .filter(|told| told.truth.holds());
        // What may be two of them is asked about.
        told.next().filter(|_| told.next().is_none())
    }

    /// What is found out with none of her own wrong values in force.
    pub(super) fn beside_right_alone<T>(&mut self, look: impl Fn(&Session) -> T) -> T {
        let standing = self.state.standing.clone();
        let carried = std::mem::take(&mut self.state.carried);
        let earlier = std::mem::take(&mut self.state.earlier);
        self.state.standing.retain(|_, own| own.right);
        let found = look(self);
        self.state.standing = standing;
        self.state.carried = carried;
        self.state.earlier = earlier;
        found
    }
}
