//! `T < Wb + W1`, "T2 is larger than T1": known things compared. What is true is noted, as it
//! settles no value; what is clearly not so is told.

use super::turn::Sign;
use super::{Outcome, Session};
use crate::judge::NameRole;
use crate::key::StepId;
use crate::reading::{Leaf, Tree, Value, evaluate, read};

/// Sides nearer to each other than this share of the larger are not told apart.
const NEAR: f64 = 0.02;
/// Signs between what is larger and what is smaller.
const SIGNS: [char; 4] = ['<', '>', '≤', '≥'];
/// Words that say the same as such a sign between two names.
const WORDS: [(&str, &str); 2] = [("compare.larger", ">"), ("compare.smaller", "<")];

impl Session {
    /// The answer to a comparison of what the problem knows; `None` where it is none, where its
    /// sides are nearly equal, or where a sign is a matter of convention.
    pub(super) fn answer_compared(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let (larger, smaller) = self.compared(line)?;
        // Of two numbers it is seen at once.
        let bare = |side: &str| self.is_of_numbers(side);
        let numbers = self.number_of(&larger).zip(self.number_of(&smaller));
        let numbers = numbers.filter(|_| bare(&larger) && bare(&smaller));
        if numbers.is_some_and(|(large, small)| large.number <= small.number) {
            return Some(self.compares_otherwise(asked));
        }
        if self.would_tell([larger.as_str(), smaller.as_str()]) {
            return None;
        }
        let (large, small) = (self.size_of(&larger)?, self.size_of(&smaller)?);
        if large.dimension != small.dimension && !large.bare && !small.bare {
            return None;
        }
        let scale = large.number.abs().max(small.number.abs());
        let difference = large.number - small.number;
        if difference.abs() <= NEAR * scale {
            return None;
        }
        if difference > 0.0 {
            // A general problem says more of it.
            let noted = Outcome::noted(self.words.say("compare.holds", &[]));
            return (!self.is_general()).then_some(noted);
        }
        Some(self.compares_otherwise(asked))
    }

    /// The answer to a chain with one such comparison in it, `μN = 0.5·784 = 392 N > 285 N`: that to
    /// its equal sides, if the two beside the sign compare so.
    pub(super) fn answer_chain_compared(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let at = line.find(SIGNS)?;
        let (before, behind) = (&line[..at], line[at..].trim_start_matches(SIGNS));
        let sign = &line[at..line.len() - behind.len()];
        let (behind, or_equal) = match behind.strip_prefix('=') {
            Some(rest) => (rest, true),
            None => (behind, sign.contains(['≤', '≥'])),
        };
        let is_chain = |text: &str| text.contains('=');
        let more = |text: &str| text.contains(SIGNS) || text.trim().is_empty();
        // `=> T = 385` and `-> T = 385` conclude.
        let concludes = before.ends_with(['-', '=', '−']);
        if concludes || more(before) || more(behind) || !(is_chain(before) || is_chain(behind)) {
            return None;
        }
        let larger = sign.contains(['>', '≥']);
        let chains = [before, behind];
        let mut chains = chains.into_iter().filter(|text| is_chain(text));
        // Of equal sides the nearest to the sign that has a value: the others are judged for themselves.
        let left = before.rsplit('=').find_map(|side| self.number_of(side));
        let right = behind.split('=').find_map(|side| self.number_of(side));
        let (large, small) = if larger { (left, right) } else { (right, left) };
        let sizes = large.zip(small);
        let fails = sizes.is_some_and(|(large, small)| {
            let (one, other) = (large.number, small.number);
            let kinds = large.dimension != small.dimension && !large.bare && !small.bare;
            kinds || one < other || one == other && !or_equal
        });
        if fails {
            return Some(self.compares_otherwise(asked));
        }
        let first = self.answer(asked, chains.next()?.trim());
        let holds = |outcome: &Outcome| {
            matches!(
                outcome.sign,
                Sign::Right | Sign::Rounded | Sign::Follows | Sign::Noted
            )
        };
        match chains.next().filter(|_| holds(&first)) {
            Some(second) => Some(self.answer(asked, second.trim())),
            None => Some(first),
        }
    }

    /// That a comparison does not hold.
    fn compares_otherwise(&mut self, asked: StepId) -> Outcome {
        self.miss(asked, None);
        let message = self.words.say("compare.wrong", &[]);
        Outcome::verdict(Sign::Wrong, "verdict.wrong", "wrong", message)
    }

    /// The value of a side in which nothing is still to be found, by its size.
    fn number_of(&self, side: &str) -> Option<Value> {
        let names = self.names();
        let readings = read(side, names.vocabulary()).ok()?;
        let [tree] = readings.first()?.sides.as_slice() else {
            return None;
        };
        let known = |id| {
            let value = match names.role(id)? {
                NameRole::Step(step) => self.state.standing.get(&step)?.value.abs(),
                NameRole::Given(given) if !self.key.is_sought(given) => {
                    self.problem.given(given).value
                }
                NameRole::Gravity => self.problem.gravity(),
                NameRole::Own(_) | NameRole::Given(_) => return None,
            };
            let dimension = names.vocabulary().name(id)?.dimension;
            Some(Value::of(value, dimension))
        };
        let nothing = Value::of(f64::NAN, crate::units::Dimension::NUMBER);
        let mut leaf = |leaf: Leaf<'_>| match leaf {
            Leaf::Literal(literal) => Value::of_literal(literal),
            Leaf::Name(id) => known(id).unwrap_or(nothing),
        };
        let value = evaluate(tree, &mut leaf).ok()?;
        value.number.is_finite().then_some(value)
    }

    /// True for a side without names.
    fn is_of_numbers(&self, side: &str) -> bool {
        self.sides_of(side)
            .iter()
            .all(|side| side.names().is_empty())
    }

    /// True for a number beside what is still to be found: whether that is larger would tell it by
    /// and by.
    fn would_tell(&self, sides: [&str; 2]) -> bool {
        let open = |side: &str| self.number_of(side).is_none();
        let numbers = |side: &str| {
            self.sides_of(side)
                .iter()
                .any(|side| !side.literals().is_empty())
        };
        sides.iter().any(|side| open(side)) && sides.iter().any(|side| numbers(side))
    }

    fn sides_of(&self, text: &str) -> Vec<Tree> {
        let names = self.names();
        let readings = read(text, names.vocabulary()).unwrap_or_default();
        let first = readings.into_iter().next();
        first.map_or_else(Vec::new, |reading| reading.sides)
    }

    /// What is said to be larger, and what smaller.
    fn compared(&self, line: &str) -> Option<(String, String)> {
        let small = line.to_lowercase();
        let in_words = WORDS.iter().find_map(|(key, sign)| {
            let known = self.words.word(key);
            let mut phrases = known
                .split(',')
                .map(|phrase| format!(" {} ", phrase.trim()));
            let phrase = phrases.find(|phrase| small.contains(phrase.as_str()))?;
            let at = small.find(&phrase).filter(|_| small.len() == line.len())?;
            Some((at, phrase.len(), *sign))
        });
        let signs = || line.find(['<', '>']).map(|at| (at, 1, &line[at..=at]));
        let (at, length, sign) = in_words.or_else(signs)?;
        let (before, behind) = (line[..at].trim(), line[at + length..].trim());
        let more = |text: &str| text.contains(['<', '>', '=', '≤', '≥', '≈']) || text.is_empty();
        if more(before) || more(behind) || before.ends_with('-') {
            return None;
        }
        let (before, behind) = (before.to_owned(), behind.to_owned());
        Some(if sign == ">" {
            (before, behind)
        } else {
            (behind, before)
        })
    }

    /// The right value of a side, if nothing in it has a sense that is the learner's to choose.
    fn size_of(&self, side: &str) -> Option<Value> {
        let (names, own_values) = (self.names(), self.own_values());
        let board = self.board(&names, &own_values);
        let readings = read(side, names.vocabulary()).ok()?;
        let [tree] = readings.first()?.sides.as_slice() else {
            return None;
        };
        let known = |id| {
            let value = match names.role(id)? {
                NameRole::Step(step) if step.has_free_sense() => return None,
                // The law of friction has an answer of its own.
                NameRole::Step(step)
                    if (self.key.heading(step)).is_some_and(|one| one.kind == "friction") =>
                {
                    return None;
                }
                // Her own wrong value may say otherwise, unless it only has another sign.
                NameRole::Step(step)
                    if self.state.standing.get(&step).is_some_and(|own| {
                        let right = board.right(step).map_or(f64::NAN, |right| right[0]);
                        let apart = (own.value.abs() - right.abs()).abs();
                        !own.right && (right.is_nan() || apart > NEAR * right.abs())
                    }) =>
                {
                    return None;
                }
                NameRole::Step(step) => board.right(step)?[0],
                NameRole::Given(given) => self.problem.given(given).value,
                NameRole::Gravity => self.problem.gravity(),
                NameRole::Own(_) => return None,
            };
            let dimension = names.vocabulary().name(id)?.dimension;
            Some(Value::of(value, dimension))
        };
        if tree.names().is_empty() || tree.names().iter().any(|(id, _)| known(*id).is_none()) {
            return None;
        }
        let mut leaf = |leaf: Leaf<'_>| match leaf {
            Leaf::Literal(literal) => Value::of_literal(literal),
            Leaf::Name(id) => {
                known(id).unwrap_or_else(|| Value::of(f64::NAN, crate::units::Dimension::NUMBER))
            }
        };
        evaluate(tree, &mut leaf).ok()
    }
}
