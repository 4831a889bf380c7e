//! What a learner says in words about a force: which, where, which way.
//!
//! The words that are listened for stand in the catalogue of words (`statement.*`, lists parted
//! by commas), so another language brings its own.

use crate::problem::{Acting, ForceId, Place, Problem, Side};
use crate::text::{Symbol, Words};
use std::f64::consts::PI;

/// Where a force was said to act.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Where {
    /// At this distance from the foot, in metres.
    At(f64),
    /// Where it does act, whatever that is ("at its place", "where it is tied").
    There,
}

/// Which way a force was said to act.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Way {
    /// Up (`Some(true)`), down (`Some(false)`), or not said.
    pub up: Option<bool>,
    /// To the right (`Some(true)`), left (`Some(false)`), or not said.
    pub right: Option<bool>,
    /// Along the rope.
    pub along: bool,
    /// Not known yet.
    pub open: bool,
}

/// What a statement says about forces.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Said {
    /// The forces named, in order.
    pub forces: Vec<ForceId>,
    /// Where.
    pub place: Option<Where>,
    /// Which way.
    pub way: Option<Way>,
}

/// Reads a statement.
pub fn said(problem: &Problem, words: &Words, line: &str) -> Said {
    let lower = decimal_points(&line.to_lowercase().replace('⊥', " "));
    let tokens: Vec<&str> = lower
        .split(|c: char| !(c.is_alphanumeric() || matches!(c, '_' | '.' | '/' | '?')))
        .filter(|token| !token.is_empty())
        .collect();
    let has = |key: &str| {
        let list = words.word(key);
        list.split(',')
            .map(str::trim)
            .any(|word| phrase(&tokens, word))
    };
    // "the left end" is a place, not a direction.
    let ends = format!(
        "{},{}",
        words.word("statement.left-end"),
        words.word("statement.right-end")
    );
    let without_ends = ends
        .split(',')
        .fold(tokens.join(" "), |text, end| text.replace(end.trim(), " "));
    let way_tokens: Vec<&str> = without_ends.split_whitespace().collect();
    let points = |key: &str| {
        words
            .word(key)
            .split(',')
            .map(str::trim)
            .any(|word| phrase(&way_tokens, word))
    };
    let way = Way {
        up: if points("statement.up") {
            Some(true)
        } else if points("statement.down") {
            Some(false)
        } else {
            None
        },
        right: if points("statement.right") {
            Some(true)
        } else if points("statement.left") {
            Some(false)
        } else {
            None
        },
        along: points("statement.along"),
        open: points("statement.open"),
    };
    Said {
        forces: forces(problem, &tokens, &has),
        place: place(problem, &tokens, &has),
        way: (way != Way::default()).then_some(way),
    }
}

/// True if the words of a phrase stand in a row.
fn phrase(tokens: &[&str], wanted: &str) -> bool {
    let wanted: Vec<&str> = wanted.split_whitespace().collect();
    !wanted.is_empty()
        && tokens
            .windows(wanted.len())
            .any(|window| window == wanted.as_slice())
}

fn forces(problem: &Problem, tokens: &[&str], has: &dyn Fn(&str) -> bool) -> Vec<ForceId> {
    let mut found: Vec<ForceId> = Vec::new();
    let all = problem.forces();
    for force in &all {
        let by_symbol = tokens.iter().any(|token| force.symbol.matches(token));
        let noun = force.noun.to_lowercase();
        let telling: Vec<&str> = noun
            .split_whitespace()
            .filter(|word| word.len() > 2)
            .collect();
        let by_noun = force.id != ForceId::OwnWeight
            && (phrase(tokens, &noun)
                || telling
                    .iter()
                    .any(|word| tokens.iter().any(|token| close(token, word))));
        let by_word = match force.id {
            ForceId::Rope(_) => has("statement.rope"),
            ForceId::Support(_) => has("statement.hinge"),
            ForceId::Load(_) | ForceId::OwnWeight => false,
        };
        if by_symbol || by_noun || by_word {
            found.push(force.id);
        }
    }
    // "at the hinge" and "from the hinge" are places when another force is named.
    if found.len() > 1 && has("statement.at") {
        let weights = |id: &ForceId| matches!(id, ForceId::Load(_) | ForceId::OwnWeight);
        if found.iter().any(weights) {
            found.retain(weights);
        } else {
            found.retain(|id| !matches!(id, ForceId::Support(_)));
        }
    }
    let own = all.iter().any(|force| force.id == ForceId::OwnWeight);
    let body = has("statement.body")
        || tokens
            .iter()
            .any(|token| close(token, &problem.body().noun.to_lowercase()));
    let loads = found.iter().any(|id| matches!(id, ForceId::Load(_)));
    let only_weight = has("statement.weight") && !loads;
    let alone = body && found.is_empty();
    if own
        && (has("statement.own-weight") || (only_weight && (body || found.is_empty())) || alone)
        && !found.contains(&ForceId::OwnWeight)
    {
        found.insert(0, ForceId::OwnWeight);
    }
    found
}

/// The same word, or its singular or plural.
fn close(token: &str, noun: &str) -> bool {
    !noun.is_empty()
        && (token == noun
            || token.strip_suffix('s') == Some(noun)
            || noun.strip_suffix('s') == Some(token))
}

fn place(problem: &Problem, tokens: &[&str], has: &dyn Fn(&str) -> bool) -> Option<Where> {
    let values = problem.values();
    let length = values[problem.body().length.0];
    for (index, given) in problem.givens().iter().enumerate() {
        let named = tokens.iter().any(|token| names(&given.symbol, token));
        if named && given.dimension == crate::units::Dimension::LENGTH {
            return Some(Where::At(values[index]));
        }
    }
    if let Some(metres) = metres(tokens) {
        return Some(Where::At(metres));
    }
    let tip_is_right = problem.body().towards == Side::Right;
    let end = |right: bool| if right == tip_is_right { length } else { 0.0 };
    let named = [
        ("statement.left-end", end(false)),
        ("statement.right-end", end(true)),
        ("statement.lower-end", 0.0),
        ("statement.middle", length / 2.0),
        ("statement.tip", length),
        ("statement.foot", 0.0),
    ];
    let found = named
        .iter()
        .find(|(key, _)| has(key))
        .map(|(_, metres)| Where::At(*metres));
    found.or_else(|| has("statement.there").then_some(Where::There))
}

/// Decimal commas as points, so that a comma still parts words.
fn decimal_points(line: &str) -> String {
    let letters: Vec<char> = line.chars().collect();
    let digit = |index: Option<usize>| {
        index
            .and_then(|index| letters.get(index))
            .is_some_and(char::is_ascii_digit)
    };
    letters
        .iter()
        .enumerate()
        .map(|(index, c)| {
            let decimal = *c == ',' && digit(index.checked_sub(1)) && digit(Some(index + 1));
            if decimal { '.' } else { *c }
        })
        .collect()
}

/// The first length among the words, in metres; a number without a unit is in metres.
fn metres(tokens: &[&str]) -> Option<f64> {
    tokens.iter().enumerate().find_map(|(index, token)| {
        let digits = token.trim_end_matches(|c: char| c.is_alphabetic() || c == '.');
        let number = digits.parse::<f64>().ok()?;
        let attached = &token[digits.len()..];
        let unit = if attached.is_empty() {
            tokens.get(index + 1).copied().unwrap_or_default()
        } else {
            attached
        };
        let factor = match unit {
            "cm" => 0.01,
            "mm" => 0.001,
            _ => 1.0,
        };
        Some(number * factor)
    })
}

fn names(symbol: &Symbol, token: &str) -> bool {
    symbol.matches(token)
}

/// How a part of a statement stands to the problem.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// It is so.
    Right,
    /// It is not so.
    Wrong,
    /// It was not said.
    Missing,
}

/// Whether the place said for a force is its place.
pub fn place_fits(problem: &Problem, force: ForceId, place: Option<Where>) -> Fit {
    let Some(force) = problem.force(force) else {
        return Fit::Missing;
    };
    let at = problem.distance(force.at, &problem.values());
    match place {
        // A hinge is where it is; nobody needs to say so.
        None if matches!(force.id, ForceId::Support(_)) => Fit::Right,
        None => Fit::Missing,
        Some(Where::There) => Fit::Right,
        Some(Where::At(said)) if (said - at).abs() < 1e-6 => Fit::Right,
        Some(Where::At(_)) => Fit::Wrong,
    }
}

/// Whether the way said for a force is its way. A hinge's may be left open or guessed.
pub fn way_fits(problem: &Problem, force: ForceId, way: Option<Way>) -> Fit {
    let Some(force) = problem.force(force) else {
        return Fit::Missing;
    };
    let Some(way) = way else { return Fit::Missing };
    let Acting::Along(direction) = force.acting else {
        return Fit::Right;
    };
    if way.along && matches!(force.id, ForceId::Rope(_)) && way.up.is_none() && way.right.is_none()
    {
        return Fit::Right;
    }
    let angle = direction.angle(problem.body(), &problem.values());
    let unit = crate::plane::Vector::at_angle(angle);
    let part_fits = |said: Option<bool>, part: f64| match said {
        None => true,
        Some(positive) => part.abs() > 1e-9 && (part > 0.0) == positive,
    };
    if way.open && way.up.is_none() && way.right.is_none() {
        return Fit::Missing;
    }
    if part_fits(way.up, unit.y) && part_fits(way.right, unit.x) {
        Fit::Right
    } else {
        Fit::Wrong
    }
}

/// The place that a statement about the pivot names, in metres from the foot.
pub fn pivot_said(problem: &Problem, words: &Words, line: &str) -> Option<f64> {
    let said = said(problem, words, line);
    let of_force = said.forces.iter().find_map(|id| match id {
        ForceId::Support(_) | ForceId::Rope(_) => problem
            .force(*id)
            .map(|force| problem.distance(force.at, &problem.values())),
        _ => None,
    });
    match said.place {
        Some(Where::At(distance)) => Some(distance),
        _ => of_force,
    }
}

/// True if the hinge's force may be left open: its direction is what the working finds.
pub fn may_stay_open(problem: &Problem, force: ForceId) -> bool {
    problem
        .force(force)
        .is_some_and(|force| force.acting == Acting::Anywhere)
}

/// The direction in which a force was said to act, anticlockwise from the x axis in radians.
pub fn way_angle(way: Way) -> Option<f64> {
    Some(match (way.up, way.right) {
        (None, None) => return None,
        (Some(up), None) => {
            if up {
                PI / 2.0
            } else {
                -PI / 2.0
            }
        }
        (None, Some(right)) => {
            if right {
                0.0
            } else {
                PI
            }
        }
        (Some(up), Some(right)) => {
            let slope = if up { PI / 4.0 } else { -PI / 4.0 };
            if right { slope } else { PI - slope }
        }
    })
}

/// True if a place is where the moments of the guided working are taken.
pub fn is_pivot(problem: &Problem, pivot: Place, distance: f64) -> bool {
    (problem.distance(pivot, &problem.values()) - distance).abs() < 1e-6
}
