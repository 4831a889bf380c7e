//! `T < Wb + W1`, "T2 is larger than T1": known things compared. What is true is noted, as it
//! settles no value; what is clearly not so is told.

use super::turn::Sign;
use super::{Outcome, Session};
use crate::judge::NameRole;
use crate::key::StepId;
use crate::reading::{Leaf, Value, evaluate, read};

/// Sides nearer to each other than this share of the larger are not told apart.
const NEAR: f64 = 0.02;
/// Words between two names and the sign that says the same.
const WORDS: [(&str, &str); 2] = [("compare.larger", ">"), ("compare.smaller", "<")];

impl Session {
    /// The answer to a comparison of what the problem knows; `None` where it is none, where its
    /// sides are nearly equal, or where a sign is a matter of convention.
    pub(super) fn answer_compared(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        let (larger, smaller) = self.compared(line)?;
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
        self.miss(asked, None);
        let message = self.words.say("compare.wrong", &[]);
        Some(Outcome::verdict(
            Sign::Wrong,
            "verdict.wrong",
            "wrong",
            message,
        ))
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
