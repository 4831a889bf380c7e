//! Nouns that the problem's own wording brings: places of the body ("its knot is at a distance
//! dT"), and what stands behind a hinge or a rope ("hinged to the ground", "back to the tower").

use super::mention::Mention;
use super::tokens::{folded, starts_with, tokens};
use crate::problem::{ForceId, Place, Problem, Side};
use crate::text::Words;

/// What holds the body, though only through a hinge or a rope.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Behind {
    /// The body is hinged to it.
    pub(super) hinge: bool,
    /// A rope runs to it.
    pub(super) rope: bool,
}

/// Words that say how a problem's wording speaks of its scene.
pub(super) struct SceneWords {
    /// "Hinged to".
    pub(super) held_to: Vec<String>,
    /// Where a noun after "hinged to" ends: "at", "with".
    pub(super) ends: Vec<String>,
    /// "To".
    pub(super) to: Vec<String>,
    /// Nouns that are places in whatever problem speaks of them: "hook", "knot".
    pub(super) places: Vec<String>,
}

/// A phrase, in tokens, and what it mentions.
pub(super) type Phrase = (Vec<String>, Mention);

/// What the wording of a problem adds to the phrases known already.
pub(super) fn scene(problem: &Problem, words: &SceneWords, known: &[Phrase]) -> Vec<Phrase> {
    let all = tokens(problem.statement());
    let sentences: Vec<&[String]> = all.split(|token| token == ";").collect();
    let mut behind: Vec<(String, Behind)> = Vec::new();
    let mut add = |noun: &str, hinge: bool| {
        let entry = Behind {
            hinge,
            rope: !hinge,
        };
        match behind.iter_mut().find(|(other, _)| other == noun) {
            Some((_, seen)) => {
                seen.hinge |= entry.hinge;
                seen.rope |= entry.rope;
            }
            None => behind.push((noun.to_owned(), entry)),
        }
    };
    let ropes: Vec<Vec<String>> = problem
        .ropes()
        .iter()
        .map(|rope| tokens(&rope.noun))
        .collect();
    for sentence in &sentences {
        for noun in held_by(sentence, words, known) {
            add(noun, true);
        }
        let of_a_rope = (0..sentence.len())
            .any(|at| ropes.iter().any(|rope| starts_with(&sentence[at..], rope)));
        for noun in run_to(sentence, words, known).filter(|_| of_a_rope) {
            add(noun, false);
        }
    }
    let places = words.places.iter().filter_map(|noun| {
        let part = |(phrase, mention): &Phrase| {
            phrase.as_slice() == std::slice::from_ref(noun)
                && matches!(mention, Mention::Force(_) | Mention::Body)
        };
        let taken = known.iter().any(part) || behind.iter().any(|(other, _)| other == noun);
        let metres = place_of_noun(problem, &sentences, noun, known).filter(|_| !taken)?;
        Some((vec![noun.clone()], Mention::Place(metres)))
    });
    let places: Vec<Phrase> = places.collect();
    // "The practice tower", so that "practice" alone may still be the practice dummy.
    let with_the_word_before = |noun: &String| -> Vec<Vec<String>> {
        let pairs = all
            .windows(2)
            .filter(|pair| pair[1] == *noun && pair[0].len() > 2);
        let longer = pairs.map(<[String]>::to_vec);
        longer.chain([vec![noun.clone()]]).collect()
    };
    let behind = behind.into_iter().flat_map(|(noun, behind)| {
        let phrases = with_the_word_before(&noun);
        phrases
            .into_iter()
            .map(move |phrase| (phrase, Mention::Behind(behind)))
    });
    behind.chain(places).collect()
}

/// True for a word that names nothing known yet, or only what might touch a body somewhere.
fn is_new(word: &str, known: &[Phrase]) -> bool {
    let of_old = |(phrase, mention): &Phrase| {
        !matches!(mention, Mention::Invented(_))
            && matches!(phrase.as_slice(), [only] if only == word)
    };
    word.chars().count() > 2 && word.chars().all(char::is_alphabetic) && !known.iter().any(of_old)
}

/// Nouns after "hinged to".
fn held_by<'s>(
    sentence: &'s [String],
    words: &'s SceneWords,
    known: &'s [Phrase],
) -> impl Iterator<Item = &'s str> {
    let held = words.held_to.iter().filter_map(|phrase| {
        let phrase: Vec<String> = phrase.split_whitespace().map(str::to_owned).collect();
        let at = (0..sentence.len()).find(|at| starts_with(&sentence[*at..], &phrase))?;
        Some(&sentence[at + phrase.len()..])
    });
    held.flat_map(|rest| nouns(rest, words, known))
}

/// Nouns after "to".
fn run_to<'s>(
    sentence: &'s [String],
    words: &'s SceneWords,
    known: &'s [Phrase],
) -> impl Iterator<Item = &'s str> {
    let ends = (0..sentence.len()).filter(|at| words.to.contains(&sentence[*at]));
    ends.flat_map(|at| nouns(&sentence[at + 1..], words, known))
}

/// The new nouns up to the next small word that parts: "the ground" of "the ground at its foot".
fn nouns<'s>(
    rest: &'s [String],
    words: &'s SceneWords,
    known: &'s [Phrase],
) -> impl Iterator<Item = &'s str> {
    rest.iter()
        .take_while(|token| *token != "," && !words.ends.contains(*token))
        .map(String::as_str)
        .filter(|token| is_new(token, known))
}

/// Where a noun of the wording is, in metres from the foot: by a distance, a place or a force told
/// in the same part of the sentence.
fn place_of_noun(
    problem: &Problem,
    sentences: &[&[String]],
    noun: &String,
    known: &[Phrase],
) -> Option<f64> {
    let values = problem.values();
    let clauses = sentences
        .iter()
        .flat_map(|sentence| sentence.split(|token| token == ","));
    let told = |part: &[String]| {
        let by_distance = || {
            problem
                .forces()
                .into_iter()
                .find_map(|force| match force.at {
                    Place::At(given) => {
                        let symbol = &problem.given(given).symbol;
                        let here = part.iter().any(|token| symbol.matches(token));
                        here.then(|| values[given.0])
                    }
                    _ => None,
                })
        };
        let by_place = || {
            (0..part.len()).find_map(|at| {
                known.iter().find_map(|(phrase, mention)| match mention {
                    Mention::Place(metres) if starts_with(&part[at..], phrase) => Some(*metres),
                    _ => None,
                })
            })
        };
        let by_force = || {
            problem.forces().into_iter().find_map(|force| {
                let name = tokens(force.noun);
                let here = force.id != ForceId::OwnWeight
                    && (0..part.len()).any(|at| starts_with(&part[at..], &name));
                here.then(|| problem.distance(force.at, &values))
            })
        };
        by_distance().or_else(by_place).or_else(by_force)
    };
    clauses
        .filter(|clause| clause.contains(noun))
        .chain(sentences.iter().copied().filter(|part| part.contains(noun)))
        .find_map(told)
}

/// Places by name, in metres from the foot.
pub(super) fn places(problem: &Problem) -> Vec<(&'static str, f64)> {
    let body = problem.body();
    let length = problem.given(body.length).value;
    let end = |right: bool| {
        if right == (body.towards == Side::Right) {
            length
        } else {
            0.0
        }
    };
    let mut places = vec![
        ("statement.left-end", end(false)),
        ("statement.right-end", end(true)),
        ("statement.lower-end", 0.0),
        ("statement.middle", length / 2.0),
        ("statement.tip", length),
        ("statement.foot", 0.0),
    ];
    // Where only one rope is, its knot is one place.
    if let [rope] = problem.ropes() {
        let metres = problem.distance(rope.at, &problem.values());
        places.push(("statement.knot", metres));
    }
    places
}

/// Words of more than two letters that stand in the noun of one force only.
pub(super) fn telling_words(problem: &Problem, words: &Words) -> Vec<(String, Mention)> {
    let words_of = |noun: &str| -> Vec<String> {
        let forms = folded(&words.forms_of(noun).join(" "));
        let mut telling: Vec<String> = Vec::new();
        for word in forms.split_whitespace() {
            if word.chars().count() > 2 && !telling.iter().any(|known| known == word) {
                telling.push(word.to_owned());
            }
        }
        telling
    };
    let mut known: Vec<(String, Mention)> = words_of(&problem.body().noun)
        .into_iter()
        .map(|word| (word, Mention::Body))
        .collect();
    for force in problem.forces() {
        if force.id != ForceId::OwnWeight {
            let words = words_of(force.noun);
            known.extend(
                words
                    .into_iter()
                    .map(|word| (word, Mention::Force(force.id))),
            );
        }
    }
    let shared = |word: &str, mention: Mention| {
        known
            .iter()
            .any(|(other, of)| other == word && *of != mention)
    };
    known
        .iter()
        .filter(|(word, mention)| !shared(word, *mention))
        .cloned()
        .collect()
}

/// Other words for a thing that a telling word names: "man" for the bird watcher, where no second
/// thing is called by a word of that list.
pub(super) fn alike_words(
    telling: &[(String, Mention)],
    lists: &[Vec<String>],
) -> Vec<(String, Mention)> {
    let named = |list: &Vec<String>| {
        let mut things = telling.iter().filter(|(word, _)| list.contains(word));
        let (_, first) = things.next()?;
        things.all(|(_, other)| other == first).then_some(*first)
    };
    let others = |list: &Vec<String>| {
        let thing = named(list)?;
        let new = |word: &&String| !telling.iter().any(|(known, _)| known == *word);
        let words = list.iter().filter(new).cloned();
        Some(words.map(|word| (word, thing)).collect::<Vec<_>>())
    };
    lists.iter().filter_map(others).flatten().collect()
}
