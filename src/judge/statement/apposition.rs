//! "Weight of the onions, hinge, down": one force, and the second noun its place? Or two forces?
//!
//! A force is asked for as what makes it, where, which way, so a bare noun between a name and a
//! direction may be a place, said by what is there. The direction tells which it is, where it can:
//! a direction of the first force makes the noun a place, a direction of the noun's own makes it a
//! further force. Where it cannot tell, nobody guesses.

use super::mention::Mention;
use super::subject::{Subject, likely, subject};
use super::way::{Way, WayFit, may_stay_open, way_fits};
use crate::problem::{ForceId, Problem};

/// How a bare noun after a name is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Second {
    /// Where the first force acts.
    Place,
    /// A further force.
    Force,
    /// It may be either.
    Unclear(ForceId),
}

/// How `next`, named after `current` has neither place nor way, is taken with what follows.
pub(super) fn second(
    problem: &Problem,
    current: Subject,
    next: Subject,
    ahead: &[Mention],
) -> Second {
    let Some(way) = way_ahead(problem, ahead) else {
        return Second::Force;
    };
    if let Subject::Behind(_) = next {
        return Second::Place;
    }
    let Subject::Force(noun) = next else {
        return Second::Force;
    };
    let Some(first) = likely(problem, current) else {
        // Of something that is no force here, a hinge is the place, and no force by it.
        return match may_stay_open(problem, noun) && !way.open {
            true => Second::Place,
            false => Second::Force,
        };
    };
    choose(problem, first, noun, way)
}

/// Which of two forces a direction belongs to: to the first, and so the second noun is a place; to
/// the second; or to neither for sure.
pub(super) fn choose(problem: &Problem, first: ForceId, noun: ForceId, way: Way) -> Second {
    // Nobody says by a rope where a hinge is.
    if noun == ForceId::OwnWeight || first == noun || may_stay_open(problem, first) {
        return Second::Force;
    }
    let fits = |force: ForceId| {
        !way.open && !matches!(way_fits(problem, force, Some(way)), WayFit::Wrong(_))
    };
    if may_stay_open(problem, noun) {
        return match (way.open, fits(first)) {
            (true, _) => Second::Force,
            (false, true) => Second::Place,
            (false, false) => Second::Unclear(noun),
        };
    }
    match (fits(first), fits(noun)) {
        (true, false) | (false, false) if !way.open => Second::Place,
        (false, _) => Second::Force,
        _ => Second::Unclear(noun),
    }
}

/// The direction that follows a bare noun at once; `None` where the noun is not bare, no direction
/// follows, or a place of its own follows it.
fn way_ahead(problem: &Problem, ahead: &[Mention]) -> Option<Way> {
    let mut way = Way::default();
    let mut said = false;
    for mention in ahead {
        match mention {
            // "The hinge, to the upper right."
            Mention::Filler | Mention::Break | Mention::Upright | Mention::Aimed | Mention::To => {
                continue;
            }
            Mention::Up | Mention::Down => way.up = way.up.or(Some(*mention == Mention::Up)),
            Mention::Left | Mention::Right => {
                way.right = way.right.or(Some(*mention == Mention::Right));
            }
            Mention::And if said => continue,
            Mention::Line(line) => way.line = way.line.or(Some(*line)),
            Mention::AlongRope => way.along = true,
            Mention::Open => way.open = true,
            _ if !said => return None,
            Mention::Stop => break,
            mention if subject(problem, *mention).is_some() => break,
            Mention::Place(_) | Mention::Length(_) | Mention::Number(_) | Mention::At => {
                return None;
            }
            _ => continue,
        }
        said = true;
    }
    said.then_some(way)
}
