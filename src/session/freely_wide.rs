//! A line of a free working that comes out right and whose way is not seen, looked at with more
//! that its numbers may stand for; and what only a free working takes as told.

use super::{Outcome, Session};
use crate::judge::{Judgement, Remark, Truth};
use crate::key::StepId;
use crate::text::{Prose, Slot};

/// What an area is called by itself, and what that of a whole lamina is in its key.
const AREA: &str = "A";
const WHOLE_AREA: &str = "ΣA";
const SQUARE_METRE: [&str; 2] = ["m²", "m^2"];

impl Session {
    /// A line that is proved once its numbers may stand for what is worked out on the drawing or in
    /// the head: places on a tilted body, sums of weights, moments about another point.
    pub(super) fn seen_widely(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        if !is_unseen(found) {
            return None;
        }
        let mut ways = vec![line.to_owned(), in_kilograms_force(line)];
        ways.extend(self.with_lengths_in_shares(line));
        let mut ways = ways.into_iter().enumerate();
        ways.find_map(|(at, way)| {
            // The second only where it says something else.
            if at > 0 && way == line {
                return None;
            }
            let mut judgement = match at {
                0 => self.judged_widely(asked, &way),
                _ => self.judged_in_force(asked, &way),
            };
            let seen = judgement.proved && judgement.stands() || at > 0 && judgement.truth.holds();
            if !seen || judgement.names.is_some() || judgement.remarks.contains(&Remark::NotSeen) {
                return None;
            }
            judgement.layout.clone_from(&found.layout);
            Some(judgement)
        })
    }

    /// A line judged with all that its numbers may stand for.
    pub(super) fn judged_widely(&mut self, asked: StepId, line: &str) -> Judgement {
        self.state.wide = true;
        let judgement = self.judged_in_force(asked, line);
        self.state.wide = false;
        judgement
    }

    /// A right way whose numbers were rounded too hard, where some were worked out in the head.
    pub(super) fn rounded_hard_widely(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let refused = found.truth == Truth::DoesNotHold && !found.evidence.rounded_hard;
        if !refused || found.target.is_balance() || found.evidence.alone {
            return None;
        }
        let mut judgement = self.judged_widely(asked, line);
        let hard = judgement.truth == Truth::DoesNotHold && judgement.evidence.rounded_hard;
        if !hard || judgement.target != found.target {
            return None;
        }
        judgement.layout.clone_from(&found.layout);
        Some(judgement)
    }

    /// `A = 0.717 m²` where A is a force: the whole area of a lamina, if it is that.
    pub(super) fn as_whole_area(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        if !matches!(found.truth, Truth::DoesNotHold | Truth::WrongUnit { .. }) {
            return None;
        }
        let (name, rest) = line.split_once('=')?;
        let is_area = SQUARE_METRE.iter().any(|unit| rest.contains(unit));
        let known = self
            .key
            .steps
            .iter()
            .any(|step| step.symbol.as_str() == WHOLE_AREA);
        if name.trim() != AREA || !known || found.evidence.alone && !is_area {
            return None;
        }
        let mut judgement = self.judged_in_force(asked, &format!("{WHOLE_AREA} ={rest}"));
        if !judgement.truth.holds() {
            return None;
        }
        judgement.layout.clone_from(&found.layout);
        Some(judgement)
    }

    /// `Smax = S`: a limit told by what reaches it, which is the same the other way about.
    pub(super) fn given_told_by(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        found.evidence.misread?;
        let (given, name) = line.split_once('=')?;
        if !self.is_symbol(name.trim()) {
            return None;
        }
        let mut judgement = self.judged_in_force(asked, &format!("{} = {given}", name.trim()));
        if !judgement.truth.holds() {
            return None;
        }
        judgement.layout.clone_from(&found.layout);
        Some(judgement)
    }

    /// `T·(4.6 sin 70 =`: a line that ends before its bracket does.
    pub(super) fn answer_broken_off(&mut self, line: &str) -> Option<Outcome> {
        let ends = line.trim_end().ends_with('=');
        let open = line.matches('(').count() > line.matches(')').count();
        (ends && open).then(|| Outcome::noted(self.words.say("talk.freely-what", &[])))
    }

    /// A capital G is the g of the problem or a weight: where it does not hold as the one, nobody
    /// knows what it is.
    pub(super) fn asks_capital(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let letter = |c: char| c.is_alphanumeric() || c == '_';
        let stands = line
            .split(|c| !letter(c))
            .any(|word| word.trim_start_matches(|c: char| c.is_ascii_digit()) == "G");
        let told = self.state.told_names.iter().any(|told| told.name == "G");
        let known = told || self.is_symbol("G") || self.is_own_name("G");
        let defined = line.trim_start().starts_with('G');
        if !stands || known || defined && line.trim_start()[1..].trim_start().starts_with('=') {
            return None;
        }
        let refused = self.judged_freely(asked, line).truth == Truth::DoesNotHold;
        let slots = [("name", Slot::Name("G".to_owned()))];
        refused.then(|| Outcome::noted(self.words.say("talk.freely-which", &slots)))
    }

    /// The value of the unknown's component or part once a right balance stands, or the part of the
    /// hinge's force that it balances, whichever step would be asked; beside a pull of her own that
    /// stands it holds, follows or is wrong.
    pub(super) fn after_the_balance(&mut self, line: &str, found: &Judgement) -> Option<Judgement> {
        let unknown = self.key.unknown().filter(|_| !self.is_general())?;
        let stands = |own: &crate::judge::Own| own.right;
        let balance = self.state.standing.get(&StepId::MomentSum);
        let given = balance.is_some_and(stands) || self.is_balanced(found.target);
        let of_own = balance.is_some_and(|own| !own.right);
        let pulled = self.state.standing.contains_key(&unknown);
        if !found.remarks.contains(&Remark::LeaveLetter) || !given && !of_own && !pulled {
            return None;
        }
        let is_it = |judged: &Judgement| judged.target == found.target;
        let holds = |judged: &Judgement| is_it(judged) && judged.truth.holds();
        let judge = |session: &Session| session.judged_anywhere(unknown, line);
        let right = (given || pulled).then(|| self.beside_right_alone(judge));
        right.filter(holds).or_else(|| {
            let refused = |judged: &Judgement| is_it(judged) && judged.truth == Truth::DoesNotHold;
            let told = || pulled.then(|| self.judged_told(found.target, line));
            let hers = Some(judge(self)).filter(holds);
            hers.or_else(|| told().filter(refused))
        })
    }

    /// That a number tells nothing of what rests on the unknown before that is found.
    pub(super) fn leave_letter(&self, target: StepId) -> Prose {
        let part = self.key.step(target);
        let part = part.map_or_else(String::new, |step| step.symbol.shown());
        let slots = [
            ("symbol", Slot::Name(self.unknown_symbol())),
            ("part", Slot::Name(part)),
        ];
        match self.is_free() {
            true => self.words.say("talk.leave-letter-freely", &slots),
            false => self.words.say("talk.leave-letter", &slots[..1]),
        }
    }

    /// True for a part of the unknown where the part of the hinge's force along its axis is found,
    /// or another part of the unknown.
    fn is_balanced(&self, part: StepId) -> bool {
        let StepId::PartOf(force, along) = part else {
            return false;
        };
        let gives = |step: &StepId| match step {
            StepId::PartOf(of, _) => *of == force,
            step => step.along() == Some(along),
        };
        let mut standing = self.state.standing.iter();
        standing.any(|(step, own)| own.right && gives(step))
    }
}

/// True for a line that comes out right and is not seen to be the right way.
pub(super) fn is_unseen(found: &Judgement) -> bool {
    let unseen = |remark: &Remark| matches!(remark, Remark::NotSeen | Remark::ByChance);
    found.truth == Truth::Noted && !found.proved && found.remarks.iter().any(unseen)
}

/// `T = 24.3g`: numbers of kilograms times g, as the forces that they are.
fn in_kilograms_force(line: &str) -> String {
    let chars: Vec<char> = line.chars().collect();
    let number = |at: usize| {
        let before = chars[..at].iter().rev().find(|c| **c != ' ');
        before.is_some_and(char::is_ascii_digit)
    };
    let ends = |at: usize| {
        let behind = chars.get(at + 1..).unwrap_or_default();
        let next = behind.iter().find(|c| **c != ' ');
        behind.first().is_none_or(|c| !c.is_alphanumeric())
            && next.is_none_or(|c| matches!(c, '+' | '-' | '−' | '='))
    };
    let mut way = String::new();
    for (at, c) in chars.iter().enumerate() {
        match *c == 'g' && number(at) && ends(at) {
            true => way.push_str(" kgf"),
            false => way.push(*c),
        }
    }
    way
}
