//! A line taken apart into what its words mention, by the longest phrase known at each place.

use super::Invention;
use super::tokens::{one_letter_off, quotient, starts_with, tokens};
use crate::problem::{ForceId, Problem, Reference, Side, Size};
use crate::text::Words;
use crate::units::Dimension;

/// What a word or a phrase mentions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Mention {
    /// A force by its symbol, its noun or its mass.
    Force(ForceId),
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
    /// Where it does act, whatever that is.
    There,
    /// Directions.
    Up,
    Down,
    Left,
    Right,
    /// Along what follows; alone, along the rope.
    Along,
    /// Along the rope.
    AlongRope,
    /// Not known.
    Open,
    /// A line to measure an angle from, or along which a force acts.
    Line(Reference),
    /// Above or below what follows, or upwards and downwards.
    Above,
    Below,
    /// What follows is a place.
    At,
    /// What follows is where a distance is measured from, or what makes a force.
    From,
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
    /// A comma, "and".
    Break,
    /// A semicolon, the end of a sentence.
    Stop,
    /// A word that says nothing.
    Filler,
    /// A word that is not known.
    Unknown,
}

/// The phrases known at one problem, in one language.
pub(super) struct Reader<'a> {
    problem: &'a Problem,
    phrases: Vec<(Vec<String>, Mention)>,
    units: [(Vec<String>, Unit); 5],
}

/// What a unit after a number makes of it.
#[derive(Clone, Copy)]
enum Unit {
    Length(f64),
    Degrees,
    Other,
}

/// Lists of words and what they mention. Of two phrases of one length the first is taken.
const LISTS: &[(&str, Mention)] = &[
    ("statement.break", Mention::Break),
    ("statement.why", Mention::Why),
    ("statement.asks", Mention::Asks),
    ("statement.no", Mention::No),
    ("statement.there", Mention::There),
    ("statement.up", Mention::Up),
    ("statement.down", Mention::Down),
    ("statement.left", Mention::Left),
    ("statement.right", Mention::Right),
    ("statement.above", Mention::Above),
    ("statement.below", Mention::Below),
    ("statement.along-rope", Mention::AlongRope),
    ("statement.along", Mention::Along),
    ("statement.open", Mention::Open),
    ("statement.horizontal", Mention::Line(Reference::Horizontal)),
    ("statement.vertical", Mention::Line(Reference::Vertical)),
    ("statement.at", Mention::At),
    ("statement.from", Mention::From),
    ("statement.of", Mention::Of),
    ("statement.towards", Mention::Towards),
    ("statement.own-weight", Mention::OwnWeight),
    ("statement.weight", Mention::Weight),
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

impl<'a> Reader<'a> {
    pub(super) fn new(problem: &'a Problem, words: &Words) -> Reader<'a> {
        let list = |key: &str| -> Vec<String> {
            let words = words.word(key);
            words
                .split(',')
                .map(|word| word.trim().to_owned())
                .collect()
        };
        let mut phrases: Vec<(Vec<String>, Mention)> = Vec::new();
        let mut add = |phrase: &str, mention: Mention| {
            let tokens: Vec<String> = phrase
                .to_lowercase()
                .split_whitespace()
                .map(str::to_owned)
                .collect();
            if !tokens.is_empty() {
                phrases.push((tokens, mention));
            }
        };
        let body = problem.body();
        add(&body.noun, Mention::Body);
        for force in problem.forces() {
            if force.id != ForceId::OwnWeight {
                add(force.noun, Mention::Force(force.id));
            }
        }
        for (key, metres) in places(problem) {
            for word in list(key) {
                add(&word, Mention::Place(metres));
            }
        }
        for (key, mention) in LISTS {
            for word in list(key) {
                add(&word, *mention);
            }
        }
        // One telling word of a longer noun is enough, if no other force shares it.
        for (word, mention) in telling_words(problem) {
            add(&word, mention);
        }
        Reader {
            problem,
            phrases,
            units: [
                (list("statement.unit-metre"), Unit::Length(1.0)),
                (list("statement.unit-centimetre"), Unit::Length(0.01)),
                (list("statement.unit-millimetre"), Unit::Length(0.001)),
                (list("statement.unit-degree"), Unit::Degrees),
                (list("statement.unit-other"), Unit::Other),
            ],
        }
    }

    /// The mentions of a line, in order.
    pub(super) fn mentions(&self, line: &str) -> Vec<Mention> {
        let tokens = tokens(line);
        let mut mentions = Vec::new();
        let mut at = 0;
        while at < tokens.len() {
            let (mention, taken) = self.mention(&tokens[at..]);
            mentions.push(mention);
            at += taken.max(1);
        }
        mentions
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
        match longest.map(|(mention, (length, _))| (mention, length)) {
            Some((mention, length)) if length > 1 => (mention, length),
            single => {
                let number = self.number(tokens);
                let symbol = || self.symbol(&tokens[0]).map(|mention| (mention, 1));
                number
                    .or_else(symbol)
                    .or(single)
                    .or_else(|| self.misspelt(&tokens[0]).map(|mention| (mention, 1)))
                    .unwrap_or((Mention::Unknown, 1))
            }
        }
    }

    /// What makes a force, with one letter wrong: "tention", "hindge". Short words are left
    /// alone, since one letter makes another word of them.
    fn misspelt(&self, token: &str) -> Option<Mention> {
        let makes_a_force = |mention: &Mention| {
            matches!(
                mention,
                Mention::Force(_)
                    | Mention::Rope
                    | Mention::Pull
                    | Mention::Hinge
                    | Mention::Reaction
                    | Mention::Weight
                    | Mention::Body
            )
        };
        let long = token.chars().count() > 5;
        let near = |phrase: &[String]| match phrase {
            [word] => word.chars().count() > 4 && one_letter_off(token, word),
            _ => false,
        };
        self.phrases
            .iter()
            .find(|(phrase, mention)| long && makes_a_force(mention) && near(phrase))
            .map(|(_, mention)| *mention)
    }

    /// A number, with its unit where one stands beside it.
    fn number(&self, tokens: &[String]) -> Option<(Mention, usize)> {
        let token = tokens[0].as_str();
        let digits = token.trim_end_matches(|c: char| c.is_alphabetic());
        if !digits.starts_with(|c: char| c.is_ascii_digit() || c == '.') {
            return None;
        }
        let number = quotient(digits)?;
        let attached = &token[digits.len()..];
        let (unit, taken) = if attached.is_empty() {
            (tokens.get(1).map_or("", String::as_str), 2)
        } else {
            (attached, 1)
        };
        let known = self
            .units
            .iter()
            .find(|(names, _)| names.iter().any(|name| name == unit))
            .map(|(_, unit)| *unit);
        let length = self.problem.body().length;
        Some(match known {
            Some(Unit::Length(factor)) => (Mention::Length(number * factor), taken),
            Some(Unit::Degrees) => (Mention::Degrees(number), taken),
            Some(Unit::Other) => (Mention::Quantity, taken),
            None if self.problem.given(length).symbol.matches(unit) && !unit.is_empty() => (
                Mention::Length(number * self.problem.given(length).value),
                taken,
            ),
            None if attached.is_empty() => (Mention::Number(number), 1),
            None => return None,
        })
    }

    /// The symbol of a force, of one of its parts, of a mass, a length or an angle.
    fn symbol(&self, token: &str) -> Option<Mention> {
        let forces = self.problem.forces();
        let part = token
            .strip_suffix(['x', 'y'])
            .filter(|stem| !stem.is_empty());
        let by_symbol = forces.iter().find(|force| {
            let support = matches!(force.id, ForceId::Support(_));
            force.symbol.matches(token)
                || support && part.is_some_and(|stem| force.symbol.matches(stem))
        });
        if let Some(force) = by_symbol {
            return Some(Mention::Force(force.id));
        }
        let stem = token.strip_suffix('g').unwrap_or(token);
        let values = self.problem.values();
        for (index, given) in self.problem.givens().iter().enumerate() {
            let whole = given.symbol.matches(token);
            if whole && given.dimension == Dimension::LENGTH {
                return Some(Mention::Length(values[index]));
            }
            if whole && given.dimension == Dimension::ANGLE {
                return Some(Mention::Degrees(values[index].to_degrees()));
            }
            if given.dimension == Dimension::MASS && (whole || given.symbol.matches(stem)) {
                let of = |size: Size| matches!(size, Size::Weight(mass) if mass.0 == index);
                let force = forces.iter().find(|force| of(force.size));
                return force.map(|force| Mention::Force(force.id));
            }
        }
        None
    }
}

/// Places by name, in metres from the foot.
fn places(problem: &Problem) -> [(&'static str, f64); 6] {
    let body = problem.body();
    let length = problem.given(body.length).value;
    let end = |right: bool| {
        if right == (body.towards == Side::Right) {
            length
        } else {
            0.0
        }
    };
    [
        ("statement.left-end", end(false)),
        ("statement.right-end", end(true)),
        ("statement.lower-end", 0.0),
        ("statement.middle", length / 2.0),
        ("statement.tip", length),
        ("statement.foot", 0.0),
    ]
}

/// Words of more than two letters that stand in the noun of one force only.
fn telling_words(problem: &Problem) -> Vec<(String, Mention)> {
    let words_of = |noun: &str| -> Vec<String> {
        noun.to_lowercase()
            .split_whitespace()
            .filter(|word| word.chars().count() > 2)
            .map(str::to_owned)
            .collect()
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

/// True for a line that calculates: a function, an operation on numbers, an equation of numbers.
pub(super) fn calculates(mentions: &[Mention], line: &str) -> bool {
    let has = |wanted: fn(&Mention) -> bool| mentions.iter().any(wanted);
    let number = has(|mention| {
        matches!(
            mention,
            Mention::Number(_) | Mention::Quantity | Mention::Length(_) | Mention::Degrees(_)
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
