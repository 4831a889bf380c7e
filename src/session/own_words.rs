//! Names that are told in words: "R is the push of the floor", "let x be the distance to the
//! climber". Where the words are those of a quantity of the problem the name stands for it from
//! then on; else lines with that name are noted, and not judged.

use super::own_meant::Meaning;
use super::{Outcome, Session};
use crate::judge::{NameRole, Names};
use crate::key::StepId;
use crate::reading::NameId;
use crate::text::{Prose, Slot, Words};
use crate::units::find_unit;

/// A name that was told in words.
#[derive(Clone)]
pub(super) struct ToldName {
    pub(super) name: String,
    /// What it stands for; `None` where the words are of nothing that is known here.
    pub(super) step: Option<StepId>,
    /// What it was seen to stand for in a line.
    pub(super) means: Option<Meaning>,
    /// The words that told it.
    pub(super) words: String,
    /// Whether it was said that it is not known.
    said: bool,
    /// The line that told it.
    pub(super) line: usize,
}

/// What one part of a line tells.
struct Told {
    name: String,
    words: String,
    /// The same name set equal to a formula: `let y = 1.5 m be the depth`.
    formula: Option<String>,
}

impl Session {
    /// The names of the problem, with those that were told in words.
    pub(super) fn with_told_names(&self, mut names: Names) -> Names {
        for told in &self.state.told_names {
            if let Some(step) = told.step {
                names.call(step, &told.name);
            }
        }
        names
    }

    /// The answer to a line that tells names in words, perhaps with a formula before or in it.
    pub(super) fn answer_told_names(&mut self, line: &str) -> Option<Outcome> {
        let (formula, mut told) = self.told_in(line)?;
        let line = self.state.next_number;
        let mut message = Prose::default();
        for one in &mut told {
            let step = self
                .step_said(&one.words)
                .filter(|_| !self.is_symbol(&one.name));
            self.state.told_names.retain(|known| known.name != one.name);
            // A name of the problem keeps what it stands for there.
            if self.is_symbol(&one.name) {
                one.formula = None;
                // Of a direction she says by it that it is this one, and none of her own.
                let told = self.direction_named(&one.name).map(|step| ToldName {
                    name: one.name.clone(),
                    step: Some(step),
                    means: None,
                    words: String::new(),
                    said: false,
                    line,
                });
                self.state.told_names.extend(told);
                continue;
            }
            self.state
                .own_names
                .retain(|(known, _)| known.shown() != one.name);
            // A unit stays one.
            let known = step.is_some() || find_unit(&one.name).is_none();
            if one.formula.is_some() || !known {
                continue;
            }
            let name = one.name.clone();
            self.state.told_names.push(ToldName {
                name,
                step,
                means: None,
                words: one.words.clone(),
                said: false,
                line,
            });
            if let Some(step) = step {
                message = message.then(self.told_name_said(&one.name, step));
            }
        }
        let with_formula = told.into_iter().find_map(|one| one.formula);
        if let Some(rest) = formula.or(with_formula) {
            return Some(self.answered_at_step(&rest));
        }
        if message.to_string().is_empty() {
            message = self.words.say("talk.told-words", &[]);
        }
        Some(Outcome::noted(message))
    }

    /// The answer to `let a = T1 and b = T2`, and to `a = T1` before T1 is found: other names for what
    /// the problem has.
    pub(super) fn answer_renamed(&mut self, line: &str) -> Option<Outcome> {
        // `f = R` after `f = FN` is a balance.
        let renamed = self.renamed(line).filter(|_| line.contains('='));
        if let Some((name, step)) = renamed.filter(|(name, _)| !self.is_hers(name))
            && !self.state.standing.contains_key(&step)
            && self
                .key
                .open_in(step)
                .iter()
                .all(|id| !self.state.standing.contains_key(id))
        {
            let message = self.told_name_said(&name, step);
            self.stands_for(name, step);
            return Some(Outcome::noted(message));
        }
        let (first, rest) = line.trim().split_once(char::is_whitespace)?;
        if !self.is_in("own.let", &first.to_lowercase()) {
            return None;
        }
        let and = Words::listed("reading.and").into_iter();
        let rest = and.fold(rest.to_owned(), |rest, and| {
            rest.replace(&format!(" {and} "), ", ")
        });
        let parts = rest.split([',', ';']);
        let renamed: Option<Vec<(String, StepId)>> = parts.map(|part| self.renamed(part)).collect();
        let renamed = renamed.filter(|all| !all.is_empty())?;
        let mut message = Prose::default();
        for (name, step) in renamed {
            message = message.then(self.told_name_said(&name, step));
            self.stands_for(name, step);
        }
        Some(Outcome::noted(message))
    }

    /// From here on a name is another one for a quantity, whatever it was before.
    pub(super) fn stands_for(&mut self, name: String, step: StepId) {
        let own = &mut self.state.own_names;
        own.retain(|(known, _)| known.shown() != name);
        self.state.told_names.retain(|known| known.name != name);
        self.state.told_names.push(ToldName {
            name,
            step: Some(step),
            means: None,
            words: String::new(),
            said: false,
            line: self.state.next_number,
        });
    }

    /// `a = T1`, `a for T1`: a name of her own, and the quantity whose symbol stands behind it.
    fn renamed(&self, part: &str) -> Option<(String, StepId)> {
        let part = part.trim().trim_end_matches('.');
        let (name, after) = part.split_at(part.find(|c: char| c.is_whitespace() || c == '=')?);
        let after = after.trim_start();
        let verb = after.split_whitespace().next()?;
        let is_verb = verb == "=" || self.is_in("own.is", &verb.to_lowercase());
        let symbol = after.strip_prefix(verb).filter(|_| is_verb)?.trim();
        let short = name == "a" || self.is_short_name(name);
        // `Wbp` is `Wbperp`, as in any line.
        let known = self.is_symbol(name) || self.is_symbol(&format!("{name}erp"));
        if !short || known || find_unit(name).is_some() {
            return None;
        }
        let asked = self.key.asked();
        let mut of = asked.filter(|step| step.symbol.matches(symbol) && !step.id.is_balance());
        let step = of.next().filter(|_| of.next().is_none())?;
        Some((name.to_owned(), step.id))
    }

    pub(super) fn told_name_said(&self, name: &str, step: StepId) -> Prose {
        let known = self.key.step(step);
        let symbol = known.map_or_else(String::new, |step| step.symbol.shown());
        let slots = [
            ("name", Slot::Name(name.to_owned())),
            ("symbol", Slot::Name(symbol)),
            ("step", Slot::Word(self.title(step))),
        ];
        self.words.say("talk.told-name", &slots)
    }

    /// The answer to a line with a name that was told in words which say nothing known here.
    pub(super) fn answer_unexplained(&mut self, asked: StepId, line: &str) -> Option<Outcome> {
        // `42 x 9.8` multiplies.
        let multiplies = self.is_readable(line);
        let stands =
            |name: &str| tokens(line).any(|token| token == name) && !(name == "x" && multiplies);
        let set = |name: &str| {
            let mut parts = line.split([',', ';']);
            parts.any(|part| {
                let rest = part.trim_start().strip_prefix(name);
                rest.is_some_and(|rest| rest.trim_start().starts_with('='))
            })
        };
        let of =
            |told: &&ToldName| told.step.is_none() && told.means.is_none() && stands(&told.name);
        if let Some(noted) = self.not_seen_as_meant(asked, line) {
            return Some(noted);
        }
        let name = self.state.told_names.iter().find(of)?.name.clone();
        if let Some(outcome) = self.answer_by_meaning(line, &name) {
            return Some(outcome);
        }
        if set(&name) {
            self.state.told_names.retain(|known| known.name != name);
            return None;
        }
        let mut told = self.state.told_names.iter_mut();
        let told = told.find(|told| told.name == name)?;
        let key = match told.said {
            true => "talk.name-unknown-again",
            false => "talk.name-unknown",
        };
        told.said = true;
        let message = self.words.say(key, &[("name", Slot::Name(name))]);
        Some(Outcome::noted(message))
    }

    /// The names that a line tells in words, and the formula that stands before them.
    fn told_in(&self, line: &str) -> Option<(Option<String>, Vec<Told>)> {
        let (mut formula, mut all) = (None, Vec::new());
        for part in line.split([',', ';']) {
            let part = part.trim().trim_end_matches('.');
            if let Some(told) = self.told_once(part) {
                all.push(told);
            } else if all.is_empty() && formula.is_none() && part.contains('=') {
                formula = Some(part.to_owned());
            } else if all.is_empty() || !self.is_words(part) {
                return None;
            }
        }
        (!all.is_empty()).then_some((formula, all))
    }

    /// `let R = push of the floor`, `D is the pull of the hinge down`, `suppose the hinge pulls
    /// with D`.
    fn told_once(&self, part: &str) -> Option<Told> {
        let (first, rest) = part.split_once(char::is_whitespace)?;
        let opened = self.is_in("own.let", &first.to_lowercase());
        let rest = if opened { rest.trim() } else { part };
        let (name, after) = match rest.find(|c: char| c.is_whitespace() || c == '=') {
            Some(end) => (&rest[..end], rest[end..].trim_start()),
            None => return None,
        };
        let verb = after.split_whitespace().next().unwrap_or_default();
        let is_verb = verb == "=" || self.is_in("own.is", &verb.to_lowercase());
        if is_verb && self.is_short_name(name) {
            let words = after[verb.len()..].trim();
            if let Some((formula, be)) = words.split_once(" be ").filter(|_| opened && verb == "=")
            {
                return self.is_words(be).then(|| Told {
                    name: name.to_owned(),
                    words: be.to_owned(),
                    formula: Some(format!("{name} = {formula}")),
                });
            }
            let told = self.is_words(words) && !self.is_readable(words);
            return told.then(|| Told {
                name: name.to_owned(),
                words: words.to_owned(),
                formula: None,
            });
        }
        // The words first, and the name behind them.
        let (words, name) = rest.rsplit_once(" with ")?;
        let told = self.is_short_name(name) && self.is_words(words);
        told.then(|| Told {
            name: name.to_owned(),
            words: words.to_owned(),
            formula: None,
        })
    }

    /// True for words without a number or an operator.
    pub(super) fn is_words(&self, text: &str) -> bool {
        let text = text.replace(" - ", " ");
        let letter = |c: char| {
            c.is_alphabetic() || matches!(c, '\'' | '’' | '-' | ' ' | '(' | ')' | '.' | ':' | ',')
        };
        let long = |word: &str| word.chars().filter(|c| c.is_alphabetic()).count() > 3;
        let names = |c: char| c.is_alphanumeric() || "'’-() .:,_".contains(c);
        let plain = |word: &str| {
            word.chars().all(letter) || self.is_short_name(word.trim_matches([',', '.', ':']))
        };
        text.chars().all(names)
            && text.split_whitespace().all(plain)
            && text.split_whitespace().any(long)
            && !self.has_word(&text, "statement.function")
    }

    /// True for what may be a name: a letter or two, with an index.
    pub(super) fn is_short_name(&self, name: &str) -> bool {
        let small = self.is_in("beside.small", name) && name != "a";
        let mut letters = name.chars();
        let first = letters.next().is_some_and(char::is_alphabetic);
        let rest = letters.all(|c| c.is_alphanumeric() || matches!(c, '_' | '₀'..='₉' | '\''));
        first
            && rest
            && !small
            && name.chars().count() <= 3
            && !self.is_in("statement.filler", name)
    }

    /// True for a symbol of the problem, spelled as it is printed.
    pub(super) fn is_symbol(&self, name: &str) -> bool {
        let names = Names::asking(&self.problem, &self.key, &[], self.asked_by_names());
        let mut known = names.vocabulary().names.iter();
        known.any(|known| {
            let printed = known.symbol.shown() == name || known.symbol.typed() == name;
            printed || known.spellings.iter().any(|spelling| spelling == name)
        })
    }

    /// The direction of a force that a name of the problem stands for.
    fn direction_named(&self, name: &str) -> Option<StepId> {
        let names = Names::asking(&self.problem, &self.key, &[], self.asked_by_names());
        let known = &names.vocabulary().names;
        let at = known.iter().position(|known| {
            known.symbol.shown() == name || known.spellings.iter().any(|one| one == name)
        })?;
        match names.role(NameId(at))? {
            NameRole::Step(step) => Some(step).filter(|step| step.is_direction()),
            _ => None,
        }
    }

    /// The quantity of the problem that words are of: the one whose title says the same.
    pub(super) fn step_said(&self, words: &str) -> Option<StepId> {
        // A thing alone may be a place.
        if !self.has_word(words, "own.kinds") {
            return None;
        }
        let said = self.sense(words);
        let steps: Vec<(StepId, Vec<String>)> = self
            .key
            .steps
            .iter()
            .filter(|step| !step.id.is_balance() && !step.symbol.shown().is_empty())
            .map(|step| (step.id, self.sense(&self.title(step.id))))
            .collect();
        let only = |fits: &dyn Fn(&[String]) -> bool| {
            let mut found = steps
                .iter()
                .filter(|(_, title)| !title.is_empty() && fits(title));
            let one = found.next().map(|(id, _)| *id);
            one.filter(|_| found.next().is_none())
        };
        if said == ["own.friction"] {
            return self.only_friction();
        }
        only(&|title| title == said).or_else(|| {
            let more = |word: &String| said.contains(word);
            let rest = |title: &[String]| {
                let mut rest = said.iter().filter(|word| !title.contains(word));
                rest.all(|word| self.is_in("own.beside-title", word))
            };
            only(&|title| title.iter().all(more) && rest(title))
        })
    }

    /// The friction, where there is but one.
    pub(super) fn only_friction(&self) -> Option<StepId> {
        let steps = self.key.asked().map(|step| step.id);
        let is_friction = |id: &StepId| {
            let heading = self.key.heading(*id);
            id.is_unknown() && heading.is_some_and(|heading| heading.kind == "friction")
        };
        let mut found = steps.filter(is_friction);
        found.next().filter(|_| found.next().is_none())
    }

    /// The words of a text that say what it is of, in one order, each kind of force by one word.
    fn sense(&self, text: &str) -> Vec<String> {
        let small = text.to_lowercase().replace(['’', '\''], " ");
        let words = small
            .split(|c: char| !c.is_alphanumeric())
            .filter(|word| !word.is_empty());
        let kinds = ["own.pull", "own.push", "own.weight", "own.friction"];
        let mut sense: Vec<String> = words
            .filter(|word| !self.is_in("own.empty", word))
            .map(|word| {
                let kind = kinds.iter().find(|kind| self.is_in(kind, word));
                kind.map_or_else(|| word.to_owned(), |kind| (*kind).to_owned())
            })
            .collect();
        sense.sort();
        sense.dedup();
        sense
    }

    /// "115° and 130° between the forces": words with numbers among them, and no sign that sets
    /// anything equal.
    fn is_told_with_numbers(&self, line: &str) -> bool {
        if line.contains([
            '=', '≈', '<', '>', '≤', '≥', '+', '*', '·', '×', '/', '^', '√',
        ]) {
            return false;
        }
        let marks = |c: char| !c.is_alphanumeric();
        let words = line.split_whitespace().map(|word| word.trim_matches(marks));
        let is_word = |word: &&str| {
            let letters = word.chars().all(|c| c.is_alphabetic() || c == '-');
            let known = self.is_symbol(word) || find_unit(word).is_some();
            letters
                && !known
                && word.chars().count() > 3
                && !self.has_word(word, "statement.function")
        };
        // "The tension is 393 N" tells a value.
        let mut pairs = words.clone().zip(words.clone().skip(1));
        let tells = pairs.any(|(word, next)| {
            self.is_in("own.is", word) && next.starts_with(|c: char| c.is_ascii_digit())
        });
        // One number may be meant for a value.
        let digit = |word: &&str| word.starts_with(|c: char| c.is_ascii_digit());
        let one = words.clone().filter(digit).count() == 1;
        let count = words.filter(is_word).count();
        !tells && !one && (count > 1 || count == 1 && line.contains(", "))
    }

    /// The answer to words alone, which are not checked; `None` for other lines.
    pub(super) fn answer_words(&self, line: &str) -> Option<Outcome> {
        let parted = line.replace([';', ',', '.'], " ");
        let words: Vec<&str> = parted.split_whitespace().collect();
        let known = words.iter().filter(|word| self.is_readable(word)).count();
        let enough = words.len() > 2 || words.len() == 2 && known == 1;
        let alone = enough && 2 * known <= words.len() && self.is_words(&parted);
        let asks = line.trim_end().ends_with('?');
        let alone = alone || self.is_free() && self.is_told_with_numbers(line);
        (alone && !asks).then(|| Outcome::noted(self.words.say("talk.told-words", &[])))
    }
}

/// The words and signs of a line one by one.
fn tokens(line: &str) -> impl Iterator<Item = &str> {
    let apart = |c: char| !(c.is_alphanumeric() || matches!(c, '_' | '₀'..='₉' | '⊥'));
    let factor = |token| str::trim_start_matches(token, |c: char| c.is_ascii_digit());
    line.split(apart)
        .map(factor)
        .filter(|token| !token.is_empty())
}
