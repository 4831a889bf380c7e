//! A line taken apart into what its words mention, by the longest phrase known at each place.

use super::Invention;
use super::amount::Unit;
use super::scene::{Behind, Phrase, SceneWords, alike_words, places, scene, telling_words};
use super::share::{SHARES, ShareWord, axes, differences};
use super::stretch::{Bound, Share};
use super::tokens::{folded, one_letter_off, one_letter_short, starts_with, tokens};
use crate::problem::{ForceId, Problem, Reference};
use crate::text::Words;

/// What a word or a phrase mentions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Mention {
    /// A force by its symbol or its noun.
    Force(ForceId),
    /// A mass, of this or of whatever.
    Mass(Option<ForceId>),
    /// "Times g", which makes a weight of a mass.
    TimesG,
    /// The Earth, which makes weights and is no part of the body.
    Earth,
    /// What stands behind a hinge or a rope.
    Behind(Behind),
    /// A rope, whatever it is called.
    Rope,
    /// A pull, of whatever.
    Pull,
    /// A hinge or support, whatever it is called.
    Hinge,
    /// A reaction, of whatever.
    Reaction,
    /// A weight, of whatever.
    Weight,
    /// The body's own weight.
    OwnWeight,
    /// The body.
    Body,
    /// A force, of whatever.
    AnyForce,
    /// A force that nothing here makes, or what would make it.
    Invented(Invention),
    /// A place, in metres from the foot.
    Place(f64),
    /// A share of the body: "the left half".
    Share(Bound, Share),
    /// Where it does act, whatever that is.
    There,
    /// Directions.
    Up,
    Down,
    /// "Straight up": taken apart into `Upright` and `Up`.
    StraightUp,
    /// "Straight down": taken apart into `Upright` and `Down`.
    StraightDown,
    /// The up or down that follows is upright.
    Upright,
    Left,
    Right,
    /// "To the" before left or right.
    Aimed,
    /// "Upper left": taken apart into two sides, where it is no place.
    Diagonal {
        up: bool,
        right: bool,
    },
    /// Along what follows; alone, along the rope.
    Along,
    /// At a right angle to what follows; alone, to the body.
    Across,
    /// A part or component of a force.
    Part,
    /// Along the rope.
    AlongRope,
    /// Not known.
    Open,
    /// A line to measure an angle from, or along which a force acts.
    Line(Reference),
    /// An axis, and which of its two senses, where that is told.
    Axis(Reference, Option<bool>),
    /// The sense of an angle.
    Clockwise,
    Anticlockwise,
    /// Less what follows.
    Minus,
    /// Above or below what follows, or upwards and downwards.
    Above,
    Below,
    /// About so much.
    About,
    /// Near what follows.
    Near,
    /// On the tip's side of what follows.
    Beyond,
    /// On the foot's side of what follows.
    ShortOf,
    /// What follows is only compared with.
    Than,
    /// Not which point: a place follows, or the way is open.
    Somewhere,
    /// What follows is a place.
    At,
    /// What follows is a place, or what a rope runs to.
    To,
    /// What follows is a place, or what a force acts on.
    On,
    /// Between two things that follow.
    Between,
    /// A length or a distance follows, or went before.
    Measured,
    /// A thing acts: pulls, holds.
    Acts,
    /// A thing acts, and pushes.
    Pushes,
    /// A thing acts, and lifts.
    Lifts,
    /// A force that pushes, of whatever.
    Push,
    /// What follows is where a distance is measured from, or what makes a force.
    From,
    /// What follows is where a force points away from, or a distance is measured from.
    Away,
    /// What follows is what makes a force.
    Of,
    /// What follows is where a force points to.
    Towards,
    /// What follows is denied.
    No,
    /// A length in metres.
    Length(f64),
    /// An angle in degrees.
    Degrees(f64),
    /// A number without a unit.
    Number(f64),
    /// A number with the unit of a force.
    Newtons,
    /// A number with the unit of something else.
    Quantity,
    /// A function or a sum sign of a calculation.
    Function,
    /// Moments, the pivot.
    Moment,
    /// A question.
    Asks,
    /// "Why".
    Why,
    /// A polite word.
    Chat,
    /// A comma.
    Break,
    /// "And".
    And,
    /// "Or": one of two, and not which.
    Or,
    /// "But": what was denied ends.
    But,
    /// What follows is a reason.
    Because,
    /// A semicolon, the end of a sentence.
    Stop,
    /// A word that says nothing.
    Filler,
    /// A word that is not known.
    Unknown,
}

/// The phrases known at one problem, in one language.
pub(super) struct Reader<'a> {
    pub(super) problem: &'a Problem,
    pub(super) phrases: Vec<Phrase>,
    /// Articles that say "of" behind a noun.
    pub(super) of_behind: Vec<String>,
    pub(super) units: Vec<(Vec<String>, Unit)>,
    /// What makes a weight of a mass: "g", "times g".
    pub(super) gravity: Vec<Vec<String>>,
    /// What makes a number a share of the body's length.
    pub(super) shares: Vec<Vec<String>>,
    /// From where it is counted.
    pub(super) from_foot: Vec<Vec<String>>,
    /// Words of a share of the body.
    pub(super) share_words: Vec<(Vec<String>, ShareWord)>,
}

/// Lists of words and what they mention. Of two phrases of one length the first is taken.
const LISTS: &[(&str, Mention)] = &[
    ("statement.and", Mention::And),
    ("statement.but", Mention::But),
    ("statement.or", Mention::Or),
    ("statement.because", Mention::Because),
    ("statement.why", Mention::Why),
    ("statement.asks", Mention::Asks),
    ("statement.no", Mention::No),
    ("statement.there", Mention::There),
    ("statement.up", Mention::Up),
    ("statement.down", Mention::Down),
    ("statement.straight-up", Mention::StraightUp),
    ("statement.straight-down", Mention::StraightDown),
    ("statement.left", Mention::Left),
    ("statement.right", Mention::Right),
    (
        "statement.upper-left",
        Mention::Diagonal {
            up: true,
            right: false,
        },
    ),
    (
        "statement.upper-right",
        Mention::Diagonal {
            up: true,
            right: true,
        },
    ),
    (
        "statement.lower-left",
        Mention::Diagonal {
            up: false,
            right: false,
        },
    ),
    (
        "statement.lower-right",
        Mention::Diagonal {
            up: false,
            right: true,
        },
    ),
    ("statement.above", Mention::Above),
    ("statement.below", Mention::Below),
    ("statement.along-rope", Mention::AlongRope),
    ("statement.along", Mention::Along),
    ("statement.across", Mention::Across),
    ("statement.open", Mention::Open),
    ("statement.part", Mention::Part),
    ("statement.horizontal", Mention::Line(Reference::Horizontal)),
    ("statement.vertical", Mention::Line(Reference::Vertical)),
    ("statement.at", Mention::At),
    ("statement.to", Mention::To),
    ("statement.on", Mention::On),
    ("statement.about", Mention::About),
    ("statement.near", Mention::Near),
    ("statement.beyond", Mention::Beyond),
    ("statement.short-of", Mention::ShortOf),
    ("statement.than", Mention::Than),
    ("statement.somewhere", Mention::Somewhere),
    ("statement.clockwise", Mention::Clockwise),
    ("statement.anticlockwise", Mention::Anticlockwise),
    ("statement.minus", Mention::Minus),
    (
        "statement.axis-x",
        Mention::Axis(Reference::Horizontal, None),
    ),
    (
        "statement.axis-x-plus",
        Mention::Axis(Reference::Horizontal, Some(true)),
    ),
    (
        "statement.axis-x-minus",
        Mention::Axis(Reference::Horizontal, Some(false)),
    ),
    ("statement.axis-y", Mention::Axis(Reference::Vertical, None)),
    (
        "statement.axis-y-plus",
        Mention::Axis(Reference::Vertical, Some(true)),
    ),
    (
        "statement.axis-y-minus",
        Mention::Axis(Reference::Vertical, Some(false)),
    ),
    ("statement.between", Mention::Between),
    ("statement.measured", Mention::Measured),
    ("statement.acts", Mention::Acts),
    ("statement.pushes", Mention::Pushes),
    ("statement.lifts", Mention::Lifts),
    ("statement.push", Mention::Push),
    ("statement.from", Mention::From),
    ("statement.away", Mention::Away),
    ("statement.of", Mention::Of),
    ("statement.towards", Mention::Towards),
    ("statement.own-weight", Mention::OwnWeight),
    ("statement.weight", Mention::Weight),
    ("statement.mass", Mention::Mass(None)),
    ("statement.earth", Mention::Earth),
    ("statement.times-g", Mention::TimesG),
    ("statement.rope", Mention::Rope),
    ("statement.pull", Mention::Pull),
    ("statement.hinge", Mention::Hinge),
    ("statement.reaction", Mention::Reaction),
    ("statement.body", Mention::Body),
    ("statement.contact", Mention::Invented(Invention::Contact)),
    ("statement.friction", Mention::Invented(Invention::Friction)),
    ("statement.flow", Mention::Invented(Invention::Flow)),
    ("statement.motion", Mention::Invented(Invention::Motion)),
    ("statement.force", Mention::AnyForce),
    ("statement.moment", Mention::Moment),
    ("statement.function", Mention::Function),
    ("statement.chat", Mention::Chat),
    ("statement.filler", Mention::Filler),
];

/// Lists of words of which each may stand for a thing that a problem calls by another of them.
const ALIKE: &[&str] = &[
    "statement.alike-figure",
    "statement.alike-box",
    "statement.alike-bag",
    "statement.alike-lamp",
];

impl<'a> Reader<'a> {
    pub(super) fn new(problem: &'a Problem, words: &Words) -> Reader<'a> {
        let mut phrases: Vec<Phrase> = Vec::new();
        let mut add = |phrase: &str, mention: Mention| {
            let phrase = folded(phrase);
            let tokens: Vec<String> = phrase.split_whitespace().map(str::to_owned).collect();
            if !tokens.is_empty() {
                phrases.push((tokens, mention));
            }
        };
        for form in words.forms_of(&problem.body().noun) {
            add(&form, Mention::Body);
        }
        for force in problem.forces() {
            if force.id != ForceId::OwnWeight {
                for form in words.forms_of(force.noun) {
                    add(&form, Mention::Force(force.id));
                }
            }
        }
        for (key, metres) in places(problem) {
            for word in list(words, key) {
                add(&word, Mention::Place(metres));
            }
        }
        for (key, mention) in LISTS {
            for word in list(words, key) {
                add(&word, *mention);
            }
        }
        // Nothing stands on the tip of a level body by standing on top of it.
        let values = problem.values();
        if problem.body_angle(&values).sin().abs() < 1e-9 {
            for word in list(words, "statement.on-top") {
                add(&word, Mention::On);
            }
        }
        // One telling word of a longer noun is enough, if no other force shares it.
        let telling = telling_words(problem, words);
        let alike: Vec<Vec<String>> = ALIKE.iter().map(|key| list(words, key)).collect();
        for (word, mention) in alike_words(&telling, &alike).into_iter().chain(telling) {
            add(&word, mention);
        }
        let scene_words = SceneWords {
            held_to: list(words, "statement.held-to"),
            ends: ["statement.at", "statement.on", "statement.and"]
                .iter()
                .flat_map(|key| list(words, key))
                .collect(),
            to: list(words, "statement.to"),
            places: list(words, "statement.place-nouns"),
        };
        // Of two phrases of one length the first is taken: the problem's own words go before.
        let own = scene(problem, &scene_words, &phrases);
        phrases.splice(0..0, own);
        let gravity = list(words, "statement.times-g");
        let in_tokens = |phrase: &String| phrase.split_whitespace().map(str::to_owned).collect();
        Reader {
            problem,
            phrases,
            of_behind: list(words, "statement.of-behind"),
            units: super::amount::UNITS
                .iter()
                .map(|(key, unit)| (list(words, key), *unit))
                .collect(),
            gravity: gravity.iter().map(in_tokens).collect(),
            shares: list(words, "statement.share")
                .iter()
                .map(in_tokens)
                .collect(),
            from_foot: list(words, "statement.from-foot")
                .iter()
                .map(in_tokens)
                .collect(),
            share_words: SHARES
                .iter()
                .flat_map(|(key, word)| {
                    let all = list(words, key);
                    all.into_iter().map(|phrase| (in_tokens(&phrase), *word))
                })
                .collect(),
        }
    }

    /// The mentions of a line, in order.
    pub(super) fn mentions(&self, line: &str) -> Vec<Mention> {
        let tokens = tokens(line);
        let mut mentions = Vec::new();
        let mut at = 0;
        while at < tokens.len() {
            let placed = mentions.iter().rfind(|said| **said != Mention::Filler);
            let placed = matches!(placed, Some(Mention::At | Mention::On));
            // "At the top left" is a place: the words are taken one by one.
            let whole = if placed && self.is_diagonal(&tokens[at..]) {
                &tokens[at..=at]
            } else {
                &tokens[at..]
            };
            let (mention, taken) = self.mention(whole);
            let mention = self.inflected(&tokens[at], mention, mentions.last());
            match mention {
                Mention::Unknown if let Some(parts) = self.compound(&tokens[at]) => {
                    mentions.extend(parts);
                }
                Mention::Diagonal { up, right } => {
                    let upright = if up { Mention::Up } else { Mention::Down };
                    let level = if right { Mention::Right } else { Mention::Left };
                    mentions.extend([upright, level]);
                }
                Mention::StraightUp => mentions.extend([Mention::Upright, Mention::Up]),
                Mention::StraightDown => mentions.extend([Mention::Upright, Mention::Down]),
                Mention::Left | Mention::Right => {
                    let aimed = taken > 1 && self.mention(&whole[..1]).0 == Mention::To;
                    mentions.extend(aimed.then_some(Mention::Aimed));
                    mentions.push(mention);
                }
                mention => mentions.push(mention),
            }
            at += taken.max(1);
        }
        in_degrees(&mut mentions);
        differences(&mut mentions);
        axes(&mut mentions);
        mentions
    }

    fn is_diagonal(&self, tokens: &[String]) -> bool {
        matches!(self.mention(tokens), (Mention::Diagonal { .. }, _))
    }

    /// What the next tokens mention, and how many of them.
    fn mention(&self, tokens: &[String]) -> (Mention, usize) {
        match tokens[0].as_str() {
            "," => return (Mention::Break, 1),
            ";" => return (Mention::Stop, 1),
            _ => {}
        }
        let longest = self
            .phrases
            .iter()
            .filter(|(phrase, _)| starts_with(tokens, phrase))
            .map(|(phrase, mention)| {
                // "Pulls" as it stands goes before the plural of "pull".
                let exact = phrase.iter().zip(tokens).all(|(word, token)| word == token);
                (*mention, (phrase.len(), exact))
            })
            .reduce(|best, next| if next.1 > best.1 { next } else { best });
        if let Some((share, taken)) = self.share(tokens)
            && longest.is_none_or(|(_, (length, _))| length <= taken)
        {
            return (share, taken);
        }
        let (mention, taken) = match longest.map(|(mention, (length, _))| (mention, length)) {
            Some((mention, length)) if length > 1 => (mention, length),
            single => self
                .number(tokens)
                .or_else(|| self.symbol(tokens))
                .or(single)
                .or_else(|| self.misspelt(&tokens[0]).map(|mention| (mention, 1)))
                .unwrap_or((Mention::Unknown, 1)),
        };
        match (mention, self.times_g(&tokens[taken.min(tokens.len())..])) {
            (Mention::Mass(None), Some(more)) => (Mention::Weight, taken + more),
            _ => (mention, taken),
        }
    }

    /// A word with one letter wrong: "tention", "hindge", "midle". Short words are left alone,
    /// since one letter makes another word of them; but a letter left out is seen earlier.
    fn misspelt(&self, token: &str) -> Option<Mention> {
        let shortest = |mention: &Mention| match mention {
            Mention::Force(_)
            | Mention::Rope
            | Mention::Pull
            | Mention::Hinge
            | Mention::Reaction
            | Mention::Weight
            | Mention::Body => Some(5),
            Mention::Place(_)
            | Mention::Up
            | Mention::Down
            | Mention::Line(_)
            | Mention::Open
            | Mention::Towards => Some(6),
            _ => None,
        };
        let letters = token.chars().count();
        let near = |word: &String| {
            letters > 5 && one_letter_off(token, word)
                || letters > 3 && one_letter_short(token, word)
        };
        self.phrases
            .iter()
            .find(
                |(phrase, mention)| match (phrase.as_slice(), shortest(mention)) {
                    ([word], Some(shortest)) => word.chars().count() >= shortest && near(word),
                    _ => false,
                },
            )
            .map(|(_, mention)| *mention)
    }
}

/// A list of words of the catalogue.
pub(super) fn list(words: &Words, key: &str) -> Vec<String> {
    let all = folded(&words.word(key));
    let all = all.split(',').map(str::trim);
    all.filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}

/// True for a line that calculates: a function, an operation on numbers, an equation of numbers.
pub(super) fn calculates(mentions: &[Mention], line: &str) -> bool {
    let has = |wanted: fn(&Mention) -> bool| mentions.iter().any(wanted);
    let number = has(|mention| {
        matches!(
            mention,
            Mention::Number(_)
                | Mention::Newtons
                | Mention::Quantity
                | Mention::Length(_)
                | Mention::Degrees(_)
        )
    });
    let placed = has(|mention| {
        matches!(
            mention,
            Mention::Length(_)
                | Mention::Place(_)
                | Mention::Up
                | Mention::Down
                | Mention::Left
                | Mention::Right
                | Mention::AlongRope
                | Mention::Along
                | Mention::Axis(..)
                | Mention::Share(..)
        )
    });
    let sign = |signs: &[char]| line.contains(signs);
    has(|mention| *mention == Mention::Function)
        || number && sign(&['*', '×', '·', '^', '√', '÷', '∙'])
        || number && !placed && sign(&['=', '+', '−'])
        || sign(&['='])
            && sign(&['+', '·', '*'])
            && !placed
            && has(|mention| matches!(mention, Mention::Force(_) | Mention::Number(_)))
}

/// "40 above the horizontal", "25 from the vertical": a number before a line is an angle.
fn in_degrees(mentions: &mut [Mention]) {
    for at in 0..mentions.len() {
        let Mention::Number(number) = mentions[at] else {
            continue;
        };
        let small = |mention: &&Mention| {
            matches!(
                mention,
                Mention::Filler
                    | Mention::Unknown
                    | Mention::Measured
                    | Mention::From
                    | Mention::To
                    | Mention::Above
                    | Mention::Below
                    | Mention::Clockwise
                    | Mention::Anticlockwise
            )
        };
        let mut after = mentions[at + 1..].iter().skip_while(small);
        if matches!(after.next(), Some(Mention::Line(_) | Mention::Axis(..))) {
            mentions[at] = Mention::Degrees(number);
        }
    }
}
