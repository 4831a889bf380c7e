//! Names that already mean something else: to the learner who types, or on the command line.

use crate::text::{Symbol, Words};
use crate::units::find_unit;
use std::collections::BTreeSet;
use std::sync::LazyLock;

/// Words that a typed line reads as a function, a number or an operator.
const READ_AS_MATHEMATICS: &[&str] = &[
    "sin",
    "sine",
    "cos",
    "cosine",
    "tan",
    "tangent",
    "asin",
    "arcsin",
    "arcsine",
    "invsin",
    "acos",
    "arccos",
    "arccosine",
    "invcos",
    "atan",
    "atan2",
    "arctan",
    "arctangent",
    "invtan",
    "cot",
    "sec",
    "csc",
    "sqrt",
    "root",
    "sqr",
    "abs",
    "exp",
    "log",
    "ln",
    "pi",
    "π",
    "inv",
    "arc",
    "inverse",
    "times",
    "over",
    "plus",
    "minus",
    "is",
    "equals",
];

/// The commands of the program, there already or still to come.
const COMMANDS: &[&str] = &[
    "check", "diagnose", "grade", "help", "library", "practice", "report", "review", "sheet",
    "solve", "station",
];

/// What a quantity of this name would be mistaken for.
pub(super) fn symbol_means(symbol: &str) -> Option<&'static str> {
    let folded = Symbol::new(symbol).folded();
    let long = folded.chars().count() > 1;
    // A capital G is a weight in some countries, and spelling tells it from g.
    if folded == "g" && symbol != "G" {
        return Some("the acceleration of free fall");
    }
    if READ_AS_MATHEMATICS.contains(&folded.as_str()) || is_read(&folded) {
        return Some("a function, a number or a sign of arithmetic");
    }
    // A single letter such as m or N is as often a quantity as a unit; readers tell them apart.
    if long && (find_unit(symbol).is_some() || find_unit(&folded).is_some()) {
        return Some("a unit");
    }
    if long && is_order(&folded) {
        return Some("an order to the tutor");
    }
    let made = folded.ends_with("perp") || symbol.contains(['⊥', '∥']);
    made.then_some("a part of a force, which the working names")
}

/// What a lesson of this name would be mistaken for.
pub(super) fn lesson_means(id: &str) -> Option<&'static str> {
    if COMMANDS.contains(&id) {
        return Some("a command of the program");
    }
    is_order(id).then_some("an order to the tutor")
}

/// True for the words that a learner may say at any time, such as `hint` and `quit`.
fn is_order(word: &str) -> bool {
    static ORDERS: LazyLock<BTreeSet<String>> = LazyLock::new(|| {
        let words = Words::english();
        let keys = words.keys();
        let lists = keys.filter(|key| key.starts_with("command.") || *key == "plain.put-away");
        lists.flat_map(Words::listed).collect()
    });
    ORDERS.contains(word)
}

/// True for an operator in the words of any language.
fn is_read(word: &str) -> bool {
    static READ: LazyLock<BTreeSet<String>> = LazyLock::new(|| {
        let operators = [
            "reading.times",
            "reading.over",
            "reading.plus",
            "reading.minus",
            "reading.equals",
        ];
        operators.into_iter().flat_map(Words::listed).collect()
    });
    READ.contains(word)
}
