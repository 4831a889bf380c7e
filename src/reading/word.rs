//! Words: names, functions, units away from a number, and names run together (`mg`, `Tsin35`).

use super::said::{is_one, said};
use super::scan::{Scan, exact};
use super::signs::{blanks, continues_word, is_blank, is_open, partner, starts_word, word_length};
use super::token::Kind;
use super::tree::{Function, Literal, Remark};
use crate::text::Span;
use crate::units::find_unit;

/// More names run together than this are an English word that happens to be spelled with names.
const MOST_NAMES_TOGETHER: usize = 4;

/// The function of this name.
pub(super) fn function(word: &str) -> Option<Function> {
    said().function(word)
}

/// A part of letters that run together.
#[derive(Clone, Copy)]
enum Part {
    Name,
    Function(Function),
    Times,
}

impl Scan<'_> {
    /// Reads the word that starts here; a word that is not known becomes an unknown token.
    pub(super) fn word(&mut self) {
        let rest = self.rest();
        let length = word_length(rest).max(rest.chars().next().map_or(1, char::len_utf8));
        let word = &rest[..length];
        if self.times_letter(word)
            || self.several_words(length)
            || self.inverse_digit(word)
            || self.about(word)
        {
            return;
        }
        if let Some(id) = self.lexicon.find(word) {
            // After a bracket, `m` may still be metres.
            let bracket = matches!(
                self.tokens.last().map(|token| &token.kind),
                Some(Kind::Close(_))
            );
            if bracket && let Some((unit, length)) = self.unit_here(rest, false) {
                self.push(Kind::Unit(unit), length);
                return;
            }
            self.push(Kind::Name(id), length);
        } else if let Some(function) = function(word) {
            self.push(Kind::Function(function), length);
            self.pass_of();
        } else if is_one(&said().cotangent, word) {
            self.cotangent(length);
        } else if self.inverse_words(word) || self.operator_word() || self.pi(word) {
        } else if self.after_operand()
            && let Some((unit, length)) = self.unit_here(rest, true)
        {
            self.push(Kind::Unit(unit), length);
        } else if !self.run_together(word) {
            self.push(Kind::Unknown(word.to_owned()), length);
        }
    }

    /// The tangent to the power of −1, which needs no minus sign that would make it the inverse.
    fn cotangent(&mut self, length: usize) {
        self.push(Kind::Function(Function::Tangent), length);
        self.push(Kind::Power, 0);
        let literal = Literal {
            index: self.next_index(),
            value: -1.0,
            typed: -1.0,
            digits: "−1".to_owned(),
            written: exact(),
            unit: None,
            unit_alone: false,
        };
        self.push(Kind::Literal(literal), 0);
    }

    /// `x` between two factors is a multiplication sign, unless x is a name.
    fn times_letter(&mut self, word: &str) -> bool {
        if !self.after_operand()
            || !word.starts_with(['x', 'X'])
            || self.lexicon.find("x").is_some()
        {
            return false;
        }
        let after = &self.rest()[1..];
        let next = after.chars().next();
        let factor = after[blanks(after)..].chars().next();
        let starts = |c: char| c.is_ascii_digit() || is_open(c) || matches!(c, '.' | '√' | '½');
        let alone = !next.is_some_and(continues_word);
        let applies = match (alone, factor) {
            (true, Some(c)) => starts(c) || starts_word(c),
            (false, Some(c)) => c.is_ascii_digit() && self.lexicon.find(word).is_none(),
            _ => false,
        };
        if applies {
            let span = Span::new(self.at, self.at + 1);
            self.remarks.push(Remark::LetterAsTimes { span });
            self.push(Kind::Times, 1);
        }
        applies
    }

    /// Names of several words: `Wb perp`, `weight of the beam`. The longest that is known, unless
    /// its words are all names by themselves.
    fn several_words(&mut self, first: usize) -> bool {
        let rest = self.rest();
        let mut ends = vec![first];
        let mut known = self.lexicon.find(&rest[..first]).is_some();
        let mut best = None;
        while let Some(&end) = ends.last() {
            let gap = blanks(&rest[end..]);
            let word = word_length(&rest[end + gap..]);
            if gap == 0 || word == 0 || ends.len() >= 6 {
                break;
            }
            let next = &rest[end + gap..end + gap + word];
            // `T x sin 65`: a letter alone between two factors multiplies.
            let after = &rest[end + gap + word..];
            let factor = after[blanks(after)..].chars().next();
            let multiplies = known && matches!(next, "x" | "X");
            if multiplies
                && factor.is_some_and(|c| c.is_ascii_digit() || is_open(c) || starts_word(c))
            {
                break;
            }
            known &= self.lexicon.find(next).is_some();
            ends.push(end + gap + word);
            if self.lexicon.find(&rest[..end + gap + word]).is_some() && !known {
                best = Some(end + gap + word);
            }
        }
        let Some(length) = best else {
            return false;
        };
        match self.lexicon.find(&rest[..length]) {
            Some(id) => {
                self.push(Kind::Name(id), length);
                true
            }
            None => false,
        }
    }

    /// `inv tan`, `arc tan`, `inverse tan`.
    fn inverse_words(&mut self, word: &str) -> bool {
        if !is_one(&said().inverse, word) {
            return false;
        }
        let rest = self.rest();
        let from = word.len() + blanks(&rest[word.len()..]);
        let length = word_length(&rest[from..]);
        let inverse = function(&rest[from..from + length]).and_then(Function::inverse);
        if let Some(inverse) = inverse {
            self.push(Kind::Function(inverse), from + length);
        }
        inverse.is_some()
    }

    /// `tan-1(0.5)`: a raised −1 as plain keyboards have it, only before a bracket.
    fn inverse_digit(&mut self, word: &str) -> bool {
        let Some(inverse) = function(word).and_then(Function::inverse) else {
            return false;
        };
        let after = &self.rest()[word.len()..];
        let digits = after.strip_prefix(['-', '−']).map(str::trim_start);
        let applies = digits
            .and_then(|digits| digits.strip_prefix('1'))
            .is_some_and(|rest| rest.trim_start_matches(is_blank).starts_with(is_open));
        if applies && let Some(one) = after.find('1') {
            self.push(Kind::Function(inverse), word.len() + one + 1);
        }
        applies
    }

    /// `T = approx. 385 N`, `T ca. 385 N`: before a number these words carry nothing; after a name
    /// they stand for the sign.
    fn about(&mut self, word: &str) -> bool {
        if !is_one(&said().about, word) || self.lexicon.find(word).is_some() {
            return false;
        }
        let point = usize::from(self.rest()[word.len()..].starts_with('.'));
        let after = &self.rest()[word.len() + point..];
        if !after[blanks(after)..].starts_with(|c: char| c.is_ascii_digit()) {
            return false;
        }
        if self.after_operand() {
            self.push(Kind::Equals(true), word.len() + point);
        } else {
            let span = Span::new(self.at, self.at + word.len() + point);
            self.remarks.push(Remark::PassedOver { span });
            self.at = span.end;
        }
        true
    }

    /// Operators in words.
    fn operator_word(&mut self) -> bool {
        if !self.after_operand() {
            return false;
        }
        let said = said();
        let kinds = [
            (&said.times, Kind::Times),
            (&said.over, Kind::Divide),
            (&said.plus, Kind::Plus),
            (&said.minus, Kind::Minus),
            (&said.equals, Kind::Equals(false)),
        ];
        // The longest: "ist gleich" before "ist".
        let rest = self.rest();
        let longest = |words: &Vec<String>| {
            let starts = |phrase: &&String| {
                let start = rest.get(..phrase.len());
                start.is_some_and(|start| start.to_lowercase() == **phrase)
                    && !rest[phrase.len()..].starts_with(continues_word)
            };
            words.iter().filter(starts).map(String::len).max()
        };
        let found = kinds
            .into_iter()
            .filter_map(|(words, kind)| Some((longest(words)?, kind)));
        let Some((length, kind)) = found.max_by_key(|(length, _)| *length) else {
            return false;
        };
        self.push(kind, length);
        true
    }

    /// `sine of 35°`: what stands between a function and its angle carries nothing.
    fn pass_of(&mut self) {
        let rest = self.rest();
        let gap = blanks(rest);
        let length = word_length(&rest[gap..]);
        let word = &rest[gap..gap + length];
        if gap > 0 && is_one(&said().of, word) && self.lexicon.find(word).is_none() {
            let span = Span::new(self.at + gap, self.at + gap + length);
            self.remarks.push(Remark::PassedOver { span });
            self.at = span.end;
        }
    }

    /// π is an angle of so many radians: it has no other use here, and `sin(35*pi/180)` comes out.
    fn pi(&mut self, word: &str) -> bool {
        if !matches!(word, "π" | "pi" | "Pi" | "PI") {
            return false;
        }
        let index = self.next_index();
        let literal = Literal {
            index,
            value: std::f64::consts::PI,
            typed: std::f64::consts::PI,
            digits: "π".to_owned(),
            written: exact(),
            unit: find_unit("rad"),
            unit_alone: false,
        };
        self.push(Kind::Literal(literal), word.len());
        true
    }

    /// Names and functions run together: `mg`, `Tsinγ`, `d_Tsin35`. Spelled exactly, or in any
    /// case where a function stands among them.
    fn run_together(&mut self, word: &str) -> bool {
        // No function of two arguments is read.
        if word == "atan2" {
            return false;
        }
        let parts = self.split(word, false).or_else(|| {
            let parts = self.split(word, true)?;
            let has_function = |(part, _): &(Part, usize)| matches!(part, Part::Function(_));
            parts.iter().any(has_function).then_some(parts)
        });
        let Some(parts) = parts else {
            return false;
        };
        // `Wbx = …` multiplies nothing: it is a name.
        let after = self.rest()[word.len()..].trim_start();
        let dangling = matches!(parts.last(), Some((Part::Times, _)));
        if dangling && (after.is_empty() || after.starts_with(['=', ')', '+', '*', '/', '·'])) {
            return false;
        }
        for (part, length) in parts {
            let span = Span::new(self.at, self.at + length);
            let kind = match part {
                Part::Function(function) => Kind::Function(function),
                Part::Times => {
                    self.remarks.push(Remark::LetterAsTimes { span });
                    Kind::Times
                }
                Part::Name => match self.lexicon.find(self.text(span)) {
                    Some(id) => Kind::Name(id),
                    None => Kind::Unknown(self.text(span).to_owned()),
                },
            };
            self.push(kind, length);
        }
        true
    }

    /// The parts of a word up to its end, or up to digits after a function (`sin40`). Longer
    /// parts are preferred.
    fn split(&self, word: &str, any_case: bool) -> Option<Vec<(Part, usize)>> {
        let ends: Vec<usize> = word.char_indices().map(|(at, _)| at).collect();
        // best[at]: the part to take there; filled from the end.
        let mut best: Vec<Option<(Part, usize)>> = vec![None; word.len() + 1];
        for &at in ends.iter().rev() {
            let longest = ends
                .iter()
                .copied()
                .chain([word.len()])
                .rev()
                .take_while(|end| *end > at);
            best[at] = longest.filter(|end| end - at <= 40).find_map(|end| {
                let part = self.part(&word[at..end], any_case, at > 0 || self.after_operand())?;
                let digit = word[end..].starts_with(|c: char| c.is_ascii_digit());
                let may_stop = end == word.len() || (digit && !matches!(part, Part::Name));
                (may_stop || best[end].is_some()).then_some((part, end - at))
            });
        }
        let mut parts = Vec::new();
        let mut at = 0;
        while let Some((part, length)) = best.get(at).copied().flatten() {
            parts.push((part, length));
            at += length;
        }
        let names = parts.iter().filter(|(part, _)| matches!(part, Part::Name));
        (!parts.is_empty() && names.count() <= MOST_NAMES_TOGETHER).then_some(parts)
    }

    fn part(&self, text: &str, any_case: bool, after_operand: bool) -> Option<Part> {
        let lowered = text.contains(|c: char| matches!(c, '₀'..='₉'));
        let known = if any_case || lowered {
            self.lexicon.find(text)
        } else {
            self.lexicon.exact(text)
        };
        if known.is_some() {
            return Some(Part::Name);
        }
        if let Some(function) = function(text) {
            return Some(Part::Function(function));
        }
        (text == "x" && after_operand && self.lexicon.find("x").is_none()).then_some(Part::Times)
    }
}

/// True for a pair of brackets that belong together.
pub(super) fn closes(open: char, close: char) -> bool {
    partner(open) == close
}
