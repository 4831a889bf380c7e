//! "6 kN up on the right beam": the body that a force is said to act on.

use super::Session;
use crate::judge::statements;
use crate::key::StepId;

/// The most words that name a body.
const MOST_WORDS: usize = 5;

impl Session {
    /// A line without the bodies that are said in it, and their nouns: one for the whole line, or
    /// one for each statement where several are said.
    pub(super) fn without_bodies(&self, line: &str) -> (String, Vec<String>) {
        let mut left = line.to_owned();
        let mut nouns: Vec<String> = Vec::new();
        let spans = statements(line);
        let of_statement =
            |text: &str| self.without_label(text).or_else(|| self.without_body(text));
        let said: Vec<_> = spans
            .iter()
            .map(|span| of_statement(&line[span.start..span.end]))
            .collect();
        let mut told = said.iter().flatten();
        let Some((_, first)) = told.next() else {
            return (left, nouns);
        };
        let several = told.next().is_some();
        for (span, said) in spans.iter().zip(&said) {
            if let Some((text, _)) = said {
                left.replace_range(span.start..span.end, text);
            }
            let noun = said.as_ref().map(|(_, noun)| noun);
            let before = nouns.last().cloned();
            nouns.push(noun.cloned().or(before).unwrap_or_else(|| first.clone()));
        }
        nouns.truncate(if several { spans.len() } else { 1 });
        (left, nouns)
    }

    /// `Left leg: Jy = 19.4 N down`: the label of what acts between two bodies tells on which of
    /// them. Before anything else it may be a heading.
    fn without_label(&self, text: &str) -> Option<(String, String)> {
        let general = self.key.general.as_ref()?;
        let (label, rest) = text.split_once(':')?;
        let words = format!(" {}", label.trim().to_lowercase());
        let (_, noun) = self
            .body_at(&words)
            .filter(|(length, _)| *length == words.len())?;
        let (name, _) = rest.split_once('=')?;
        let mut between = general.between.keys();
        let is_named = |id: &StepId| {
            let step = self.key.step(*id);
            step.is_some_and(|step| step.symbol.matches(name.trim()))
        };
        between.any(is_named).then_some(())?;
        let blanks = " ".repeat(label.len() + 1);
        Some((format!("{blanks}{rest}"), noun))
    }

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
