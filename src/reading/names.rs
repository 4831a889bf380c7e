//! The vocabulary as it is looked up: exact spellings first, folded ones next.

use super::tree::{NameId, Vocabulary};
use crate::text::Symbol;
use std::collections::BTreeMap;

/// Letters that are typed for one that looks like them and stands on no keyboard.
const LOOKALIKES: &[(&str, &str)] = &[
    ("a", "alpha"),
    ("b", "beta"),
    ("y", "gamma"),
    ("o", "theta"),
    ("w", "omega"),
    ("l", "ell"),
];

/// The names of a vocabulary by their spellings.
pub(super) struct Lexicon<'a> {
    vocabulary: &'a Vocabulary,
    exact: BTreeMap<String, NameId>,
    folded: BTreeMap<String, NameId>,
}

impl<'a> Lexicon<'a> {
    pub(super) fn new(vocabulary: &'a Vocabulary) -> Lexicon<'a> {
        let mut exact = BTreeMap::new();
        let mut folded = BTreeMap::new();
        for (place, name) in vocabulary.names.iter().enumerate() {
            let symbol = &name.symbol;
            let ways = [symbol.as_str().to_owned(), symbol.shown(), symbol.typed()];
            for way in ways.into_iter().chain(name.spellings.iter().cloned()) {
                folded.entry(fold(&way)).or_insert(NameId(place));
                exact.entry(way).or_insert(NameId(place));
            }
        }
        // Beside a length L the letter l is ℓ, which keyboards lack.
        let script = exact.iter().filter(|(way, _)| way.contains('ℓ'));
        let script: Vec<_> = script
            .map(|(way, id)| (way.replace('ℓ', "l"), *id))
            .collect();
        for (way, id) in script {
            exact.entry(way).or_insert(id);
        }
        Lexicon {
            vocabulary,
            exact,
            folded,
        }
    }

    pub(super) fn vocabulary(&self) -> &'a Vocabulary {
        self.vocabulary
    }

    /// The name that is spelled exactly so.
    pub(super) fn exact(&self, text: &str) -> Option<NameId> {
        self.exact.get(text).copied()
    }

    /// The name that is spelled so, case and subscripts forgiven.
    pub(super) fn find(&self, text: &str) -> Option<NameId> {
        self.exact(text)
            .or_else(|| self.folded.get(&fold(text)).copied())
    }

    /// The names that are this letter with an index: `W_1` and `W_b` for `W`. Components are left
    /// out, unless they are all there is.
    pub(super) fn with_index(&self, text: &str) -> Vec<Symbol> {
        let stem = fold(text);
        let letter = |symbol: &Symbol| {
            symbol
                .as_str()
                .split_once('_')
                .map(|(letter, _)| letter.to_owned())
        };
        let names = || self.vocabulary.names.iter().map(|name| &name.symbol);
        let same_case = names().any(|symbol| letter(symbol).as_deref() == Some(text));
        let indexed = |symbol: &&Symbol| match letter(symbol) {
            Some(letter) if same_case => letter == text,
            Some(letter) => fold(&letter) == stem,
            None => false,
        };
        let names = names();
        let (plain, others): (Vec<&Symbol>, Vec<&Symbol>) = names
            .filter(indexed)
            .partition(|symbol| !symbol.as_str().ends_with('⊥'));
        let kept = if plain.is_empty() { others } else { plain };
        kept.into_iter().cloned().collect()
    }

    /// The known name that is nearly spelled so: at most two edits and two fifths of
    /// its letters, so that a short name is not guessed from nothing, or one letter at its end.
    pub(super) fn nearest(&self, text: &str) -> Option<Symbol> {
        let typed: Vec<char> = fold(text).chars().collect();
        if typed.len() > 40 {
            return None;
        }
        let greek = LOOKALIKES
            .iter()
            .find(|(letter, _)| *letter == text)
            .and_then(|(_, spelled)| self.folded.get(*spelled));
        if let Some(id) = greek {
            return self.vocabulary.name(*id).map(|name| name.symbol.clone());
        }
        let (_, id) = self
            .folded
            .iter()
            .map(|(known, id)| (edits(&typed, &known.chars().collect::<Vec<_>>()), known, id))
            .filter(|(edits, known, _)| {
                let letters = typed.len().max(known.chars().count());
                let longer = fold(text).starts_with(known.as_str()) && *edits == 1;
                let shorter = known.starts_with(&fold(text)) && *edits == 1;
                *edits <= 2 && (edits * 5 <= letters * 2 || longer || shorter)
            })
            .map(|(edits, _, id)| (edits, *id))
            .min()?;
        self.vocabulary.name(id).map(|name| name.symbol.clone())
    }
}

pub(super) fn fold(text: &str) -> String {
    Symbol::new(text).folded()
}

/// The number of letters to add, drop or exchange (Levenshtein's distance).
fn edits(left: &[char], right: &[char]) -> usize {
    let mut row: Vec<usize> = (0..=right.len()).collect();
    for (i, a) in left.iter().enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, b) in right.iter().enumerate() {
            let change = diagonal + usize::from(a != b);
            diagonal = row[j + 1];
            row[j + 1] = change.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[right.len()]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn edits_are_counted() {
        for (left, right, count) in [
            ("", "", 0),
            ("theta", "tetha", 2),
            ("w", "wb", 1),
            ("abc", "", 3),
        ] {
            let letters = |text: &str| text.chars().collect::<Vec<_>>();
            assert_eq!(
                edits(&letters(left), &letters(right)),
                count,
                "{left} {right}"
            );
        }
    }
}
