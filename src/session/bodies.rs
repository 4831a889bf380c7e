//! "6 kN up on the right beam": the body that a force is said to act on.

use super::Session;

/// The most words that name a body.
const MOST_WORDS: usize = 5;

impl Session {
    /// A line of a general problem without the body that is said in it, and the noun of that body.
    /// Blanks keep the places of what comes after.
    pub(super) fn without_body(&self, line: &str) -> Option<(String, String)> {
        let small = line.to_lowercase();
        if small.len() != line.len() {
            return None;
        }
        let on = self.words.word("general.on");
        let ons: Vec<&str> = on.split(',').map(str::trim).collect();
        let starts = small.char_indices().map(|(at, _)| at).filter(|at| {
            let before = small[..*at].chars().next_back();
            before.is_none_or(|c| !c.is_alphanumeric())
        });
        starts.into_iter().find_map(|start| {
            let rest = &small[start..];
            let said = ons.iter().find_map(|on| rest.strip_prefix(on))?;
            let length = rest.len() - said.len();
            let (more, noun) = self.body_at(said)?;
            let mut end = start + length + more;
            // `On the right beam: …`
            if line[..start].trim().is_empty() && line[end..].starts_with([',', ':']) {
                end += 1;
            }
            let blanks = " ".repeat(end - start);
            Some((format!("{}{blanks}{}", &line[..start], &line[end..]), noun))
        })
    }

    /// The body that a text begins with, behind a blank: the bytes of the words, and its noun.
    fn body_at(&self, text: &str) -> Option<(usize, String)> {
        let article = self.words.word("general.article");
        let words = words_at(text);
        (1..=words.len()).rev().find_map(|count| {
            let said = words[..count].iter().map(|(_, word)| *word);
            let said: Vec<&str> = said.filter(|word| !is_listed(&article, word)).collect();
            Some((words[count - 1].0, self.body_said(&said)?))
        })
    }

    /// The noun of the body that these words say: all of it, or a part that no other body has.
    fn body_said(&self, said: &[&str]) -> Option<String> {
        let general = self.key.general.as_ref()?;
        let mut nouns: Vec<&String> = general.bodies.values().flatten().collect();
        nouns.sort();
        nouns.dedup();
        let part = self.words.word("general.body-words");
        let fits = |noun: &&&String| {
            let noun = noun.to_lowercase();
            let of_noun = |word: &&str| noun.split_whitespace().any(|one| one == *word);
            let all = said
                .iter()
                .all(|word| of_noun(word) || is_listed(&part, word));
            all && said.iter().any(of_noun)
        };
        let exact = nouns
            .iter()
            .find(|noun| noun.to_lowercase() == said.join(" "));
        let mut some = nouns.iter().filter(fits);
        let one = some.next().filter(|_| some.next().is_none());
        exact.or(one).map(|noun| (*noun).clone())
    }
}

/// True for a word of a list of the catalogue.
fn is_listed(list: &str, word: &str) -> bool {
    list.split(',').any(|known| known.trim() == word)
}

/// The words that a text begins with, behind a blank, each with the bytes up to its end; up to a
/// sign that ends them.
fn words_at(text: &str) -> Vec<(usize, &str)> {
    let mut words = Vec::new();
    let mut at = 0;
    let behind = text.starts_with(' ');
    for word in text.split(' ').filter(|_| behind) {
        at += word.len();
        let bare = word.trim_end_matches([',', '.', ':', ')']);
        if !bare.is_empty() {
            words.push((at - (word.len() - bare.len()), bare));
        }
        at += 1;
        if words.len() == MOST_WORDS || bare.len() < word.len() {
            break;
        }
    }
    words
}
