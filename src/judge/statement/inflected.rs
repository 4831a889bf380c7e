//! Words of a language that declines and joins its nouns: an article that says "of", and compounds.

use super::mention::{Mention, Reader};

/// Letters between the parts of a compound.
const JOINTS: [&str; 5] = ["", "s", "es", "n", "en"];
/// A last part shorter than this is no word.
const SHORTEST: usize = 3;

impl Reader<'_> {
    /// What a word mentions behind what went before it: "Spitze der Theke", the tip of the counter.
    pub(super) fn inflected(
        &self,
        token: &String,
        mention: Mention,
        before: Option<&Mention>,
    ) -> Mention {
        let article = mention == Mention::Filler && self.of_behind.contains(token);
        match article && before.is_some_and(|before| is_noun(*before)) {
            true => Mention::Of,
            false => mention,
        }
    }

    /// A compound of a thing of the problem and a word for what is of it: "Mastspitze", the tip of
    /// the mast.
    pub(super) fn compound(&self, token: &str) -> Option<[Mention; 3]> {
        if self.of_behind.is_empty() {
            return None;
        }
        let single = |wanted: fn(Mention) -> bool| {
            let phrases = self
                .phrases
                .iter()
                .filter(move |(_, mention)| wanted(*mention));
            phrases.filter_map(|(phrase, mention)| match phrase.as_slice() {
                [word] => Some((word.as_str(), *mention)),
                _ => None,
            })
        };
        let thing = |mention| matches!(mention, Mention::Body | Mention::Force(_));
        single(thing).find_map(|(noun, owner)| {
            let rest = token.strip_prefix(noun)?;
            let parts = JOINTS.iter().filter_map(|joint| rest.strip_prefix(joint));
            let mut long = parts.filter(|part| part.chars().count() >= SHORTEST);
            long.find_map(|part| {
                let mut known = single(is_of_something);
                let (_, of_it) = known.find(|(word, _)| *word == part)?;
                Some([of_it, Mention::Of, owner])
            })
        })
    }
}

/// What may be of a thing.
fn is_of_something(mention: Mention) -> bool {
    matches!(
        mention,
        Mention::Place(_)
            | Mention::Weight
            | Mention::Mass(_)
            | Mention::AnyForce
            | Mention::Pull
            | Mention::Push
            | Mention::Reaction
    )
}

fn is_noun(mention: Mention) -> bool {
    is_of_something(mention)
        || matches!(
            mention,
            Mention::Share(..)
                | Mention::Rope
                | Mention::Hinge
                | Mention::Body
                | Mention::Force(_)
                | Mention::Moment
                | Mention::OwnWeight
                | Mention::Part
        )
}
