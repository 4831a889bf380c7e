//! A problem of bodies in general, worked by a method about a pivot.

use super::args::{MethodName, Solve};
use super::{Trouble, json, shown};
use crate::problem::Place;
use crate::session::working_line;
use crate::sketch::Sheet;
use crate::statics::{Root, SystemSolution, Unsolvable};
use crate::system::{Act, ActId, BodyId, Effect, Line, Spot, System};
use crate::text::{Slot, Words, printable};
use crate::units::{Dimension, number_text, value_text};
use crate::working::{
    Method, Settled, Underivable, Working, centres, derive, only_laminae, settle, shows_more, told,
    why,
};
use std::io::{Write, stdout};

/// Prints the working of a system, as text or JSON.
pub(super) fn run(system: &System, wishes: &Solve, words: &Words) -> Result<(), Trouble> {
    let refuse = |code: &str, message: String| {
        if wishes.json {
            writeln!(stdout().lock(), "{}", json::refused(code, &message))?;
        }
        Err(Trouble::Input(vec![message]))
    };
    let misuse = |code: &str, message: String| {
        if wishes.json {
            writeln!(stdout().lock(), "{}", json::refused(code, &message))?;
        }
        Err(Trouble::Use(message))
    };
    if only_laminae(system) {
        if wishes.pivot.is_some() {
            return misuse("no-pivot-needed", words.word("solve.no-pivot-centre"));
        }
        let working = match centres(system) {
            Ok(working) => working,
            Err(trouble) => return refuse(trouble.code(), why(&trouble, words)),
        };
        let values = system.values();
        let text = match wishes.json {
            true => json::centres(system, &values, &working),
            false => shown(
                &text(system, &values, &[], &Board::alone(&working), words),
                words,
            ),
        };
        return print(&text);
    }
    let solved = match settle(system) {
        Ok(solved) => solved,
        Err(trouble) => return refuse(trouble.code(), why(&trouble, words)),
    };
    if wishes.pivot.is_some() && wishes.method == Some(MethodName::Triangle) {
        return misuse("no-pivot-needed", words.word("solve.no-pivot-needed"));
    }
    let knots_only = system.parts().bodies.iter().all(|body| body.knot);
    if wishes.pivot.is_some() && knots_only {
        let trouble = Underivable::KnotPivot;
        return refuse(trouble.code(), why(&trouble, words));
    }
    let pivot = match &wishes.pivot {
        Some(name) => match spot(system, name) {
            Some(spot) => Some(spot),
            None => return misuse("no-such-pivot", no_pivot(system, name, words)),
        },
        None => None,
    };
    let method = match wishes.method {
        Some(MethodName::Arms) => Method::LeverArms,
        Some(MethodName::Coordinates) => Method::Coordinates,
        Some(MethodName::Triangle) => Method::Triangle,
        Some(MethodName::Components) | None => Method::Components,
    };
    let working = match derive(system, &solved.values, method, pivot.as_ref()) {
        Ok(working) => working,
        Err(trouble) => return refuse(trouble.code(), why(&trouble, words)),
    };
    let board = Board {
        working: &working,
        others: others(system, &solved, method, pivot.as_ref()),
    };
    let text = if wishes.json {
        json::system(system, &solved, &board)
    } else {
        let mut text = text(system, &solved.values, &solved.roots, &board, words);
        text.push_str(&strained(system, &solved.solution, words));
        shown(&text, words)
    };
    print(&text)
}

/// What stands on the board.
pub(super) struct Board<'a> {
    /// The working.
    pub(super) working: &'a Working,
    /// The workings at the other true values of what is sought.
    pub(super) others: Vec<Other>,
}

impl Board<'_> {
    fn alone(working: &Working) -> Board<'_> {
        let others = Vec::new();
        Board { working, others }
    }
}

/// A working at another true value of what is sought.
pub(super) struct Other {
    /// The value, in SI units.
    pub(super) value: f64,
    /// All values of the givens.
    pub(super) values: Vec<f64>,
    /// The forces there.
    pub(super) solution: SystemSolution,
    /// The working there.
    pub(super) working: Working,
}

/// The workings at the other values of what is sought that are as true.
fn others(system: &System, solved: &Settled, method: Method, pivot: Option<&Spot>) -> Vec<Other> {
    let Some(given) = system.parts().sought.as_ref().map(|sought| sought.given) else {
        return Vec::new();
    };
    let is_first = |root: &&Root| solved.values.get(given.0) == Some(&root.value);
    let roots = solved.roots.iter().filter(|root| !is_first(root));
    let other = |root: &Root| {
        let solution = root.solution.as_ref().ok();
        let solution = solution.filter(|_| root.stable != Some(false))?.clone();
        let mut values = solved.values.clone();
        *values.get_mut(given.0)? = root.value;
        let working = derive(system, &values, method, pivot).ok()?;
        Some(Other {
            value: root.value,
            values,
            solution,
            working,
        })
    };
    roots.filter_map(other).collect()
}

/// A word of caution where a force is very large beside the loads.
pub(super) fn strained(system: &System, solution: &SystemSolution, words: &Words) -> String {
    let Some(strained) = solution.strained() else {
        return String::new();
    };
    let act = system.act(strained.act);
    let force = |size: f64| Slot::Value(value_text(size, Dimension::FORCE, system.figures()));
    let slots = [
        (
            "symbol",
            Slot::Name(act.map_or_else(String::new, |act| act.symbol.shown())),
        ),
        ("size", force(strained.size_n)),
        ("load", force(strained.load_n)),
    ];
    format!("\n{}\n", words.say("solve.strained", &slots))
}

fn print(text: &str) -> Result<(), Trouble> {
    let mut output = stdout().lock();
    output.write_all(text.as_bytes())?;
    output.flush()?;
    Ok(())
}

/// Why a system's forces cannot be found.
pub(super) fn unsolved(system: &System) -> Option<Underivable> {
    if only_laminae(system) {
        return None;
    }
    settle(system).err()
}

/// A pivot by its name: an end of the first body, or what acts there.
fn spot(system: &System, name: &str) -> Option<Spot> {
    let places = [
        ("build.place.foot", Place::Foot),
        ("build.place.middle", Place::Middle),
        ("build.place.tip", Place::Tip),
    ];
    let small = name.to_lowercase();
    let listed = |key: &str| Words::listed(key).contains(&small);
    let found = places.into_iter().find(|(key, _)| listed(key));
    let place = found.map(|(_, place)| place);
    if let Some(place) = place
        && system.leg(BodyId(0), 0).is_some()
    {
        let legs = system.parts().bodies[0].legs.len();
        let leg = if place == Place::Tip { legs - 1 } else { 0 };
        return Some(Spot::On {
            body: BodyId(0),
            leg,
            place,
        });
    }
    let acts = system.acts();
    acts.iter()
        .filter(|act| acts_at_a_point(act))
        .find(|act| act.symbol.matches(name) || act.noun == name)
        .and_then(|act| act.on.first())
        .map(|effect| effect.at.clone())
}

/// False of a given couple, which has no point.
fn acts_at_a_point(act: &Act<'_>) -> bool {
    let is_couple = |effect: &Effect| matches!(effect.line, Line::Couple(_));
    matches!(act.id, ActId::Hold(_)) || !act.on.iter().any(is_couple)
}

fn no_pivot(system: &System, name: &str, words: &Words) -> String {
    let acts = system.acts();
    let known = acts.iter().filter(|act| acts_at_a_point(act));
    let known: Vec<String> = known.map(|act| act.symbol.shown()).collect();
    let slots = [
        ("name", Slot::Value(printable(name))),
        ("known", Slot::Word(known.join(", "))),
    ];
    let key = match system.leg(BodyId(0), 0) {
        Some(_) => "solve.no-pivot",
        None => "solve.no-pivot-acts",
    };
    words.say(key, &slots).to_string()
}

fn text(
    system: &System,
    values: &[f64],
    roots: &[Root],
    board: &Board<'_>,
    words: &Words,
) -> String {
    let parts = system.parts();
    let g = [("g", Slot::Value(number_text(parts.gravity)))];
    let mut text = format!("{}\n\n", parts.title);
    if !parts.statement.is_empty() {
        text.push_str(&format!("{}\n", parts.statement));
    }
    text.push_str(&format!("{}\n\n", words.say("solve.gravity", &g)));
    let asked = system.asked_unnamed();
    if !asked.is_empty() {
        let slots = [("wanted", Slot::Name(asked.join(", ")))];
        text.push_str(&format!("{}\n\n", words.say("general.all-asked", &slots)));
    }
    if let Some(sheet) = Sheet::of(system) {
        let scene = sheet.scene(&super::solve::as_told());
        text.push_str(&format!("{}\n", super::solve::picture_text(&scene)));
    }
    text.push_str(&sought(system, roots, words));
    let written = written(system, board.working, values, words);
    text.extend(written.iter().map(String::as_str));
    for other in &board.others {
        let value = root_text(system, roots, other.value);
        text.push_str(&also(system, (other, value), &written, words));
    }
    let (gravity, figures) = (system.gravity(), system.figures());
    let mut all = vec![(board.working, values)];
    let others = board.others.iter();
    all.extend(others.map(|other| (&other.working, other.values.as_slice())));
    let mut all = all.into_iter();
    let more = all.any(|(working, values)| shows_more(working, values, gravity, figures));
    text.push_str(&format!(
        "\n{}\n",
        super::solve::carried(figures, more, words)
    ));
    if !parts.caution.is_empty() {
        text.push_str(&format!("\n{}\n", words.retold("caution", &parts.caution)));
    }
    text
}

/// The lines of a working, each with its end of line.
fn written(system: &System, working: &Working, values: &[f64], words: &Words) -> Vec<String> {
    let lines = told(system, working, values).into_iter();
    lines
        .map(|line| working_line(system, line, words))
        .collect()
}

/// The working at another value of what is sought: under their headings, the lines that are not
/// those of the first.
fn also(
    system: &System,
    (other, value): (&Other, String),
    first: &[String],
    words: &Words,
) -> String {
    let given = system.parts().sought.as_ref().map(|sought| sought.given);
    let slots = given.map(|given| {
        let given = system.given(given);
        [
            ("symbol", Slot::Name(given.symbol.shown())),
            ("value", Slot::Value(value)),
        ]
    });
    let said = slots.map(|slots| words.say("solve.also", &slots).to_string());
    let mut text = format!("\n{}\n", said.unwrap_or_default());
    let mut heading = None;
    for line in written(system, &other.working, &other.values, words) {
        if !line.starts_with(' ') {
            heading = Some(line);
        } else if !first.contains(&line) {
            text.push_str(&heading.take().unwrap_or_default());
            text.push_str(&line);
        }
    }
    text
}

/// A value of what is sought, with as many figures as tell it from the others.
fn root_text(system: &System, roots: &[Root], value: f64) -> String {
    const MOST_FIGURES: u8 = 7;
    let sought = system.parts().sought.as_ref();
    let dimension = sought.map_or(Dimension::NUMBER, |sought| {
        system.given(sought.given).dimension
    });
    let text = |value: f64, figures: u8| value_text(value, dimension, figures);
    let other = |figures: &u8| {
        let alike = |root: &&Root| text(root.value, *figures) == text(value, *figures);
        roots.iter().filter(alike).count() < 2
    };
    let figures = (system.figures()..=MOST_FIGURES).find(other);
    text(value, figures.unwrap_or(system.figures()))
}

/// What was sought, each value with a word where it is one of the equations only.
fn sought(system: &System, roots: &[Root], words: &Words) -> String {
    let Some(sought) = &system.parts().sought else {
        return String::new();
    };
    let given = system.given(sought.given);
    let mut text = String::new();
    for root in roots {
        let slots = [
            ("symbol", Slot::Name(given.symbol.shown())),
            ("value", Slot::Value(root_text(system, roots, root.value))),
            (
                "why",
                Slot::Word(
                    root.solution
                        .as_ref()
                        .err()
                        .map_or_else(String::new, Unsolvable::reason),
                ),
            ),
        ];
        let key = match (&root.solution, root.stable) {
            (Err(_), _) => "solve.sought-not",
            (Ok(_), Some(false)) => "solve.sought-unstable",
            (Ok(_), Some(true)) if roots.len() > 1 => "solve.sought-stable",
            (Ok(_), _) => "solve.sought",
        };
        text.push_str(&format!("{}\n", words.say(key, &slots)));
    }
    text.push('\n');
    text
}
