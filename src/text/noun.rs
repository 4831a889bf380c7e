//! Nouns in their cases, for languages that have them.

use std::collections::BTreeMap;

/// The articles by which a template asks for a case, in the order in which a noun tells its forms.
const CASES: [&str; 4] = ["der", "des", "dem", "den"];

/// Nouns with their four forms, each with its article.
#[derive(Clone, Debug, Default)]
pub(super) struct Nouns {
    forms: BTreeMap<String, Vec<String>>,
}

impl Nouns {
    /// Reads a list: `Mast = der Mast, des Mastes, dem Mast, den Mast; Seil = …`.
    pub(super) fn of(list: &str) -> Nouns {
        let pairs = list.split(';').filter_map(|pair| pair.split_once('='));
        let forms = pairs.map(|(noun, forms)| {
            let forms = forms.split(',').map(|form| form.trim().to_owned());
            (noun.trim().to_owned(), forms.collect())
        });
        Nouns {
            forms: forms.collect(),
        }
    }

    /// A noun in a case, as its article tells it. A compound goes as its last part does; a noun
    /// whose gender is not known stands in quotation marks by itself.
    pub(super) fn in_case(&self, noun: &str, case: &str) -> String {
        let place = CASES.iter().position(|known| *known == case);
        let form = place.and_then(|place| {
            let (before, forms) = self.known(noun)?;
            let (article, form) = forms.get(place)?.split_once(' ')?;
            Some(match before {
                "" => format!("{article} {form}"),
                _ => format!("{article} {before}{}", form.to_lowercase()),
            })
        });
        match (form, case) {
            (Some(form), _) => form,
            (None, "des") => format!("von „{noun}“"),
            (None, _) => format!("„{noun}“"),
        }
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
             Theke = die Theke, der Theke, der Theke, die Theke; Ast = der Ast, des Astes, dem Ast, den Ast",
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
            ("roter Mast", "dem", "„roter Mast“"),
            ("", "dem", "„“"),
        ] {
            assert_eq!(nouns.in_case(noun, case), said);
        }
    }
}
