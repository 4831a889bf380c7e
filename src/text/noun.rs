//! Nouns in their cases, for languages that have them.

use super::words::capitalised;
use std::collections::BTreeMap;

/// The articles by which a template asks for a case, in the order in which a noun tells its forms.
const CASES: [&str; 4] = ["der", "des", "dem", "den"];

/// How an adjective may end before a noun without an article, or behind one.
const ADJECTIVES: [&str; 5] = ["er", "es", "en", "em", "e"];

/// Nouns with their four forms, each with its article.
#[derive(Clone, Debug, Default)]
pub(super) struct Nouns {
    forms: BTreeMap<String, Vec<String>>,
    /// A preposition with an article, and the word for both: `zu dem`, `zum`.
    joined: Vec<(String, String)>,
}

impl Nouns {
    /// Reads two lists: `Mast = der Mast, des Mastes, dem Mast, den Mast; Seil = …`, and
    /// `zu dem = zum, an dem = am`.
    pub(super) fn of(list: &str, joined: &str) -> Nouns {
        let joined = joined.split(',').filter_map(|pair| pair.split_once('='));
        let joined = joined.map(|(two, one)| (two.trim().to_owned(), one.trim().to_owned()));
        let pairs = list.split(';').filter_map(|pair| pair.split_once('='));
        let forms = pairs.map(|(noun, forms)| {
            let forms = forms.split(',').map(|form| form.trim().to_owned());
            (noun.trim().to_owned(), forms.collect())
        });
        Nouns {
            forms: forms.collect(),
            joined: joined.collect(),
        }
    }

    /// What stands before a noun in its case, and the noun, with a preposition and the article made
    /// one word where the language does so: `quer zu`, `dem Mast` becomes `quer`, `zum Mast`.
    pub(super) fn join<'b>(&self, before: &'b str, noun: String) -> (&'b str, String) {
        let found = self.joined.iter().find_map(|(two, one)| {
            let (preposition, article) = two.split_once(' ')?;
            let bare = noun.strip_prefix(article)?.strip_prefix(' ')?;
            let before = before.strip_suffix(' ')?;
            let at = before.len().checked_sub(preposition.len())?;
            let last = before.get(at..)?;
            let apart = !before[..at].ends_with(char::is_alphabetic);
            if !apart || last.to_lowercase() != preposition {
                return None;
            }
            let one = match last == preposition {
                true => one.clone(),
                false => capitalised(one),
            };
            Some((&before[..at], format!("{one} {bare}")))
        });
        found.unwrap_or((before, noun))
    }

    /// A noun in all of its forms, without articles; of one that is not known those that are usual.
    pub(super) fn forms_of(&self, noun: &str) -> Vec<String> {
        let mut all = vec![noun.to_owned()];
        if self.forms.is_empty() {
            return all;
        }
        let bare = |case: &str| {
            let told = self.in_case(noun, case);
            let (_, bare) = told.split_once(' ')?;
            (!told.contains('„')).then(|| bare.to_owned())
        };
        let known: Vec<String> = CASES.iter().filter_map(|case| bare(case)).collect();
        match known.is_empty() {
            true => all.extend(["s", "es"].map(|ending| format!("{noun}{ending}"))),
            false => all.extend(known),
        }
        let mut seen: Vec<String> = Vec::new();
        for form in all {
            if !seen.contains(&form) {
                seen.push(form);
            }
        }
        seen
    }

    /// A text with a noun in its case wherever one is asked for: `{body:dem}`.
    pub(super) fn declined(&self, text: &str, name: &str, noun: &str) -> String {
        CASES.iter().fold(text.to_owned(), |text, case| {
            let asked = format!("{{{name}:{case}}}");
            match text.contains(&asked) {
                true => text.replace(&asked, &self.in_case(noun, case)),
                false => text,
            }
        })
    }

    /// A noun in a case, as its article tells it. A compound goes as its last part does; a noun
    /// whose gender is not known stands in quotation marks by itself.
    pub(super) fn in_case(&self, noun: &str, case: &str) -> String {
        let place = CASES.iter().position(|known| *known == case);
        let form = place.and_then(|place| {
            let (adjectives, noun) = with_adjectives(noun)?;
            let (before, forms) = self.known(noun)?;
            let (article, form) = forms.get(place)?.split_once(' ')?;
            // Behind an article an adjective has one of two endings.
            let plain = case == "der" || case == "den" && article != "den";
            let ending = if plain { "e" } else { "en" };
            let adjectives = adjectives.iter().map(|stem| format!("{stem}{ending} "));
            let adjectives: String = adjectives.collect();
            Some(match before {
                "" => format!("{article} {adjectives}{form}"),
                _ => format!("{article} {adjectives}{before}{}", form.to_lowercase()),
            })
        });
        match (form, case) {
            (Some(form), _) => form,
            (None, "des") => format!("von „{noun}“"),
            (None, _) => format!("„{noun}“"),
        }
    }

    /// True for a noun whose forms are told.
    pub(super) fn knows(&self, noun: &str) -> bool {
        with_adjectives(noun).is_some_and(|(_, noun)| self.known(noun).is_some())
    }

    /// What stands before the longest known noun at the end of this one, and the forms of that.
    fn known<'n>(&self, noun: &'n str) -> Option<(&'n str, &Vec<String>)> {
        let starts = noun.char_indices().map(|(at, _)| at);
        starts.into_iter().find_map(|at| {
            let (before, last) = noun.split_at(at);
            // A part of a compound begins small, a noun by itself does not.
            let known = match before {
                "" => last.to_owned(),
                _ if before.ends_with(' ') || last.chars().count() < 4 => return None,
                _ => capital(last)?,
            };
            Some((before, self.forms.get(&known)?))
        })
    }
}

/// The stems of the adjectives before a noun, and the noun; none where something else stands there.
fn with_adjectives(noun: &str) -> Option<(Vec<&str>, &str)> {
    let Some((before, last)) = noun.rsplit_once(' ') else {
        return Some((Vec::new(), noun));
    };
    let stem = |word: &'_ str| -> Option<usize> {
        let small = word.chars().all(|letter| letter.is_lowercase());
        let ending = ADJECTIVES.iter().find(|ending| word.ends_with(*ending))?;
        let stem = word.len() - ending.len();
        (small && word[..stem].chars().count() > 1).then_some(stem)
    };
    let stems = before
        .split(' ')
        .map(|word| stem(word).map(|end| &word[..end]));
    Some((stems.collect::<Option<Vec<&str>>>()?, last))
}

/// A small first letter made a capital.
fn capital(word: &str) -> Option<String> {
    let mut letters = word.chars();
    let first = letters.next().filter(|first| first.is_lowercase())?;
    Some(first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_noun_stands_in_its_case() {
        let nouns = Nouns::of(
            "Mast = der Mast, des Mastes, dem Mast, den Mast; \
             Theke = die Theke, der Theke, der Theke, die Theke; \
             Ast = der Ast, des Astes, dem Ast, den Ast",
            "zu dem = zum, in dem = im, zu der = zur",
        );
        for (noun, case, said) in [
            ("Mast", "des", "des Mastes"),
            ("Theke", "dem", "der Theke"),
            ("Fahnenmast", "des", "des Fahnenmastes"),
            ("Fahnenmast", "den", "den Fahnenmast"),
            // Three letters may end any word.
            ("Bast", "dem", "„Bast“"),
            ("Kiste", "der", "„Kiste“"),
            ("Kiste", "des", "von „Kiste“"),
            ("roter Mast", "der", "der rote Mast"),
            ("roter Mast", "dem", "dem roten Mast"),
            ("roter Mast", "den", "den roten Mast"),
            ("linke Theke", "den", "die linke Theke"),
            ("linke Theke", "des", "der linken Theke"),
            (
                "langer roter Fahnenmast",
                "des",
                "des langen roten Fahnenmastes",
            ),
            ("rote Kiste", "dem", "„rote Kiste“"),
            // What is no adjective is not bent.
            ("Karls Mast", "dem", "„Karls Mast“"),
            ("lila Mast", "dem", "„lila Mast“"),
            ("er Mast", "dem", "„er Mast“"),
            ("", "dem", "„“"),
        ] {
            assert_eq!(nouns.in_case(noun, case), said);
        }
        for (before, noun, said) in [
            ("quer zu ", "dem Mast", "quer zum Mast"),
            ("In ", "dem Mast", "Im Mast"),
            ("bis zu ", "der Theke", "bis zur Theke"),
            ("zu ", "„Kiste“", "zu „Kiste“"),
            ("darin ", "dem Mast", "darin dem Mast"),
            ("zu", "dem Mast", "zudem Mast"),
            ("", "dem Mast", "dem Mast"),
        ] {
            let (before, noun) = nouns.join(before, noun.to_owned());
            assert_eq!(format!("{before}{noun}"), said);
        }
        assert_eq!(nouns.forms_of("Mast"), ["Mast", "Mastes"]);
        assert_eq!(nouns.forms_of("Theke"), ["Theke"]);
        let forms = ["roter Mast", "rote Mast", "roten Mastes", "roten Mast"];
        assert_eq!(nouns.forms_of("roter Mast"), forms);
        assert_eq!(nouns.forms_of("Kran"), ["Kran", "Krans", "Kranes"]);
        assert_eq!(Nouns::default().forms_of("mast"), ["mast"]);
    }
}
