//! Words of several parts that mention one thing: a share of the body, an axis, a difference of
//! angles.

use super::mention::{Mention, Reader};
use super::place::Side;
use super::stretch::{Bound, Share};
use crate::problem::Reference;

/// A word of which a share is put together.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum ShareWord {
    /// What bounds it: "left", "upper".
    Bound(Bound),
    /// How large it is: "half", "part".
    Size(Share),
    /// That it is near an end: "far left".
    Far,
    /// A word for an end after it: "far left end".
    End,
}

/// Lists of words of shares.
pub(super) const SHARES: &[(&str, ShareWord)] = &[
    (
        "statement.bound-left",
        ShareWord::Bound(Bound::At(Side::Left)),
    ),
    (
        "statement.bound-right",
        ShareWord::Bound(Bound::At(Side::Right)),
    ),
    (
        "statement.bound-upper",
        ShareWord::Bound(Bound::At(Side::Up)),
    ),
    (
        "statement.bound-lower",
        ShareWord::Bound(Bound::At(Side::Down)),
    ),
    (
        "statement.bound-outer",
        ShareWord::Bound(Bound::At(Side::Out)),
    ),
    (
        "statement.bound-inner",
        ShareWord::Bound(Bound::At(Side::In)),
    ),
    ("statement.bound-middle", ShareWord::Bound(Bound::Middle)),
    ("statement.bound-either", ShareWord::Bound(Bound::Either)),
    ("statement.share-half", ShareWord::Size(Share::Half)),
    ("statement.share-third", ShareWord::Size(Share::Third)),
    ("statement.share-quarter", ShareWord::Size(Share::Quarter)),
    ("statement.share-part", ShareWord::Size(Share::Part)),
    ("statement.share-side", ShareWord::Size(Share::Side)),
    ("statement.share-far", ShareWord::Far),
    ("statement.share-end", ShareWord::End),
];

impl Reader<'_> {
    /// A share of the body, and how many tokens it is: "upper half", "far left end".
    pub(super) fn share(&self, tokens: &[String]) -> Option<(Mention, usize)> {
        let far = self.longest(tokens, |word| (word == ShareWord::Far).then_some(()));
        let start = far.map_or(0, |((), taken)| taken);
        let (bound, taken) = self.longest(&tokens[start..], |word| match word {
            ShareWord::Bound(bound) => Some(bound),
            _ => None,
        })?;
        let rest = &tokens[start + taken..];
        let level = matches!(bound, Bound::At(Side::Left | Side::Right));
        if far.is_some() {
            let end = self.longest(rest, |word| (word == ShareWord::End).then_some(()));
            let end = end.map_or(0, |((), taken)| taken);
            return level.then_some((Mention::Share(bound, Share::Far), start + taken + end));
        }
        let (size, more) = self.longest(rest, |word| match word {
            ShareWord::Size(size) => Some(size),
            _ => None,
        })?;
        Some((Mention::Share(bound, size), taken + more))
    }

    /// The longest phrase of shares of one kind at the start of these tokens.
    fn longest<T>(
        &self,
        tokens: &[String],
        kind: impl Fn(ShareWord) -> Option<T>,
    ) -> Option<(T, usize)> {
        let here = self.share_words.iter().filter_map(|(phrase, word)| {
            let kind = kind(*word)?;
            // In the plural it is no share: "hinge parts".
            tokens.starts_with(phrase).then_some((kind, phrase.len()))
        });
        here.reduce(|best, next| if next.1 > best.1 { next } else { best })
    }
}

/// "180° - 40°" is one angle. A minus elsewhere says nothing.
pub(super) fn differences(mentions: &mut Vec<Mention>) {
    let mut at = 0;
    while at + 2 < mentions.len() {
        if let [Mention::Degrees(one), Mention::Minus, other] = mentions[at..at + 3]
            && let Mention::Degrees(less) | Mention::Number(less) = other
        {
            mentions.splice(at..at + 3, [Mention::Degrees(one - less)]);
        } else {
            at += 1;
        }
    }
}

/// Where no angle is told, an axis is a direction: "along the positive x axis".
pub(super) fn axes(mentions: &mut [Mention]) {
    let angle = |mention: &Mention| matches!(mention, Mention::Degrees(_));
    if mentions.iter().any(angle) {
        return;
    }
    for mention in mentions {
        let Mention::Axis(line, sense) = *mention else {
            continue;
        };
        *mention = match (line, sense) {
            (line, None) => Mention::Line(line),
            (Reference::Horizontal, Some(true)) => Mention::Right,
            (Reference::Horizontal, Some(false)) => Mention::Left,
            (Reference::Vertical, Some(true)) => Mention::Up,
            (Reference::Vertical, Some(false)) => Mention::Down,
        };
    }
}
