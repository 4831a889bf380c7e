//! The words that a line may hold, as the catalogue of each language lists them under `reading.…`.
//! Those of every language are understood in every other.

use super::tree::{Function, Way};
use crate::text::Words;
use std::sync::LazyLock;

/// Words by what they say, in small letters.
pub(super) struct Said {
    /// At the head of a line, saying nothing of it.
    pub(super) fillers: Vec<String>,
    /// Fillers that may stand for a result: `answer = 385 N`.
    pub(super) results: Vec<String>,
    /// Saying that a value is rounded.
    pub(super) about: Vec<String>,
    /// After a value, telling which way it points; none for what says only against which line an
    /// angle is measured.
    pub(super) ways: Vec<(String, Option<Way>)>,
    /// Behind a value below zero; the minus alone says it already.
    pub(super) other_way: Vec<String>,
    /// Before a way: `acting left`.
    pub(super) verbs: Vec<String>,
    /// Between a value and the line that a force lies along or makes an angle with: which sense it
    /// has along that line they do not say.
    pub(super) lies: Vec<String>,
    /// Between two ways: `up and to the left`.
    pub(super) and: Vec<String>,
    /// Before the angle of a force: `385 N at 25°`.
    pub(super) at: Vec<String>,
    /// The unit of that angle.
    pub(super) degrees: Vec<String>,
    /// Behind it, before the line that it is measured from.
    pub(super) with: Vec<String>,
    /// Articles.
    pub(super) articles: Vec<String>,
    /// Before `M`, or alone, at the head of a sum of moments.
    pub(super) moments: Vec<String>,
    /// Before a function, making it its inverse.
    pub(super) inverse: Vec<String>,
    pub(super) times: Vec<String>,
    pub(super) over: Vec<String>,
    pub(super) plus: Vec<String>,
    pub(super) minus: Vec<String>,
    pub(super) equals: Vec<String>,
    /// Spelled units and their symbols.
    units: Vec<(String, &'static str)>,
    functions: Vec<(String, Function)>,
    pub(super) cotangent: Vec<String>,
    /// Between a function and its angle: `sine of 35°`.
    pub(super) of: Vec<String>,
}

impl Said {
    /// The symbol of a unit that is spelled, in small letters.
    pub(super) fn unit(&self, spelling: &str) -> Option<&'static str> {
        let mut known = self.units.iter();
        let found = known.find(|(spelled, _)| spelled == spelling);
        found.map(|(_, symbol)| *symbol)
    }

    /// The function of this name.
    pub(super) fn function(&self, word: &str) -> Option<Function> {
        let small = word.to_lowercase();
        let mut known = self.functions.iter();
        let found = known.find(|(name, _)| *name == small);
        found.map(|(_, function)| *function)
    }
}

/// True for a word of a list, in any case.
pub(super) fn is_one(list: &[String], word: &str) -> bool {
    let small = word.to_lowercase();
    list.contains(&small)
}

/// The words of all languages.
pub(super) fn said() -> &'static Said {
    static SAID: LazyLock<Said> = LazyLock::new(read);
    &SAID
}

fn read() -> Said {
    let list = Words::listed;
    let way = |key: &str, way: Option<Way>| {
        let words = list(key).into_iter();
        words.map(|words| (words, way)).collect::<Vec<_>>()
    };
    let function = |key: &str, function: Function| {
        let names = list(key).into_iter();
        names.map(|name| (name, function)).collect::<Vec<_>>()
    };
    let unit = |key: &str, symbol: &'static str| {
        let names = list(key).into_iter();
        names.map(|name| (name, symbol)).collect::<Vec<_>>()
    };
    Said {
        units: [
            unit("reading.degrees", "°"),
            unit("reading.unit.newton", "N"),
            unit("reading.unit.kilonewton", "kN"),
            unit("reading.unit.newton-metre", "N m"),
            unit("reading.unit.metre", "m"),
            unit("reading.unit.centimetre", "cm"),
            unit("reading.unit.millimetre", "mm"),
            unit("reading.unit.kilogram", "kg"),
            unit("reading.unit.gram", "g"),
        ]
        .concat(),
        fillers: list("reading.fillers"),
        results: list("reading.results"),
        about: list("reading.about"),
        ways: [
            way("reading.way.up", Some(Way::Up)),
            way("reading.way.down", Some(Way::Down)),
            way("reading.way.left", Some(Way::Left)),
            way("reading.way.right", Some(Way::Right)),
            way("reading.way.anticlockwise", Some(Way::Anticlockwise)),
            way("reading.way.clockwise", Some(Way::Clockwise)),
            way("reading.way.none", None),
        ]
        .concat(),
        other_way: list("solve.reverse"),
        verbs: list("reading.verbs"),
        lies: list("reading.lies"),
        and: list("reading.and"),
        at: list("reading.at"),
        degrees: list("reading.degrees"),
        with: list("reading.with"),
        articles: list("reading.articles"),
        moments: list("reading.moments"),
        inverse: list("reading.inverse"),
        times: list("reading.times"),
        over: list("reading.over"),
        plus: list("reading.plus"),
        minus: list("reading.minus"),
        equals: list("reading.equals"),
        functions: [
            function("reading.sine", Function::Sine),
            function("reading.cosine", Function::Cosine),
            function("reading.tangent", Function::Tangent),
            function("reading.arcsine", Function::ArcSine),
            function("reading.arccosine", Function::ArcCosine),
            function("reading.arctangent", Function::ArcTangent),
            function("reading.root", Function::SquareRoot),
            function("reading.absolute", Function::Absolute),
        ]
        .concat(),
        cotangent: list("reading.cotangent"),
        of: list("reading.of"),
    }
}
