//! Wrong expressions and equations: right lines with one thing changed, and their truth by a general
//! evaluator of expressions with every force at its true value.

use super::manner::Style;
use super::pupil::relations;
use super::scene::{Drawn, Scene, angle_names};
use leverwright::problem::Problem;
use leverwright::session::Sign;
use leverwright::units::Dimension;
use rand::Rng;
use rand::SeedableRng;
use rand::rngs::ChaCha8Rng;
use std::collections::BTreeMap;

/// A line counts as wrong where its two sides differ by more than this share.
const APART: f64 = 0.03;

/// What was found.
#[derive(Default)]
pub(super) struct Slips {
    /// Wrong lines typed.
    pub(super) typed: usize,
    /// How many were refused, noted or not understood.
    pub(super) signs: BTreeMap<String, usize>,
    /// Wrong lines that were accepted.
    pub(super) accepted: Vec<String>,
    /// Lines that are wrong and hold at the printed numbers by chance.
    pub(super) by_chance: Vec<String>,
    /// How many of these were accepted.
    pub(super) chance_accepted: usize,
}

/// So many problems of each lesson in four manners each; one of `every` changed lines is looked at.
/// `tell` hears how far it is and what is found.
pub(super) fn measure_slips(problems: u64, seed: u64, every: usize, tell: &dyn Fn(&str)) -> Slips {
    let mut random = ChaCha8Rng::seed_from_u64(seed);
    let mut found = Slips::default();
    for drawn in Drawn::some(problems, seed) {
        tell(&format!(
            "{} --seed {}: {} wrong lines so far, accepted {}",
            drawn.lesson,
            drawn.seed,
            found.typed,
            found.accepted.len()
        ));
        let worlds = Worlds::of(&drawn.problem);
        let names = angle_names(&drawn.problem);
        for _ in 0..4 {
            let style = Style::plain(&mut random);
            let (definitions, lines) = relations(&worlds.scenes[0], &names, style);
            let mut begun = drawn.begun();
            for line in &definitions {
                begun.submit(line);
            }
            for right in &lines {
                for wrong in changed(right, &mut random).into_iter().step_by(every) {
                    let truth = worlds.truth(&wrong, &definitions);
                    let told = || {
                        format!(
                            "{} --seed {} {style:?}: {wrong}  (right: {right})",
                            drawn.lesson, drawn.seed
                        )
                    };
                    match truth {
                        Truth::Right => continue,
                        Truth::Wrong => {}
                        Truth::ByChance => found.by_chance.push(told()),
                    }
                    let turn = begun.clone().submit(&wrong);
                    let sign = turn.line.sign;
                    let accepted = matches!(sign, Sign::Right | Sign::Rounded | Sign::Follows);
                    if truth == Truth::ByChance {
                        found.chance_accepted += usize::from(accepted);
                        continue;
                    }
                    found.typed += 1;
                    *found.signs.entry(format!("{sign:?}")).or_default() += 1;
                    if accepted {
                        let line = format!("{} [{}]", told(), turn.line.message);
                        tell(&format!("accepted: {}", line.replace('\n', " ")));
                        found.accepted.push(line);
                    }
                }
            }
        }
    }
    found
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Truth {
    Right,
    ByChance,
    Wrong,
}

/// A right line with one thing changed, in every way that it can be.
fn changed(line: &str, random: &mut ChaCha8Rng) -> Vec<String> {
    let mut found = Vec::new();
    let mut put = |at: usize, long: usize, new: &str| {
        let text = format!("{}{new}{}", &line[..at], &line[at + long..]);
        if text != line {
            found.push(text);
        }
    };
    let start = line.find(": ").map_or(0, |at| at + 2);
    for (from, to) in [
        ("sin(", "cos("),
        ("cos(", "sin("),
        ("sin(", "tan("),
        ("cos(", "("),
        ("sin(", "("),
        (" + ", " - "),
        (" - ", " + "),
    ] {
        for (at, _) in line.match_indices(from).filter(|(at, _)| *at >= start) {
            put(at, from.len(), to);
        }
    }
    // Factors: each left out, and each put in the place of each.
    let is_part = |c: char| c.is_alphanumeric() || c == '.';
    let mut tokens: Vec<(usize, &str)> = Vec::new();
    let mut at = start;
    for piece in line[start..].split_inclusive(|c| !is_part(c)) {
        let token = piece.trim_end_matches(|c| !is_part(c));
        if !token.is_empty() && !["sin", "cos", "sqrt", "0"].contains(&token) {
            tokens.push((at, token));
        }
        at += piece.len();
    }
    for (at, token) in &tokens {
        put(*at, token.len(), &format!("2*{token}"));
        if line[..*at].ends_with('*') {
            put(*at - 1, token.len() + 1, "");
        }
        let (_, other) = tokens[random.next_u32() as usize % tokens.len()];
        let number = |text: &str| text.parse::<f64>().is_ok();
        if number(token) == number(other) && token.len().abs_diff(other.len()) < 4 {
            put(*at, token.len(), other);
        }
    }
    found
}

/// A problem at its printed numbers and at some near them.
struct Worlds {
    scenes: Vec<Scene>,
    names: Vec<BTreeMap<String, f64>>,
}

impl Worlds {
    fn of(problem: &Problem) -> Worlds {
        let shifts = [
            [1.0; 5],
            [1.013, 0.987, 1.021, 0.979, 1.009],
            [0.981, 1.017, 0.991, 1.023, 0.986],
        ];
        let values = shifts.map(|shift| {
            let shifted = problem.values().into_iter().enumerate();
            shifted
                .map(|(at, value)| value * shift[at % 5])
                .collect::<Vec<f64>>()
        });
        let scenes: Vec<Scene> = values
            .iter()
            .map(|values| Scene::with(problem, values))
            .collect();
        let names = scenes.iter().zip(&values).map(|(scene, values)| {
            let mut names = BTreeMap::new();
            for (given, value) in problem.givens().iter().zip(values) {
                let value = match given.dimension == Dimension::ANGLE {
                    true => value.to_degrees(),
                    false => *value,
                };
                names.insert(given.symbol.typed(), value);
            }
            for weight in &scene.weights {
                names.insert(weight.name.clone(), weight.mass * scene.gravity);
            }
            names.insert("g".to_owned(), scene.gravity);
            names.insert("T".to_owned(), scene.tension());
            names
        });
        let names = names.collect();
        Worlds { scenes, names }
    }

    /// Numbers are those of the printed problem, so a line in numbers is only looked at there.
    fn truth(&self, line: &str, definitions: &[String]) -> Truth {
        let in_numbers =
            line.contains(char::is_numeric) && !line.contains('L') && !line.contains("dT");
        let holds = |at: usize| self.holds(at, line, definitions);
        match (holds(0), in_numbers) {
            (false, _) => Truth::Wrong,
            (true, true) => Truth::Right,
            (true, false) if holds(1) && holds(2) => Truth::Right,
            (true, false) => Truth::ByChance,
        }
    }

    /// True if a line holds with the hinge's parts counted in any senses, or if it cannot be read.
    fn holds(&self, at: usize, line: &str, definitions: &[String]) -> bool {
        let scene = &self.scenes[at];
        let line = line.split_once(": ").map_or(line, |(_, line)| line);
        let sizes = [scene.hinge.0.abs(), scene.hinge.1.abs()];
        [(1.0, 1.0), (1.0, -1.0), (-1.0, 1.0), (-1.0, -1.0)]
            .iter()
            .any(|(right, up)| {
                let mut context = meval::Context::new();
                let ratio =
                    |function: fn(f64) -> f64| move |degrees: f64| function(degrees.to_radians());
                context
                    .func("sin", ratio(f64::sin))
                    .func("cos", ratio(f64::cos))
                    .func("tan", ratio(f64::tan));
                for (name, value) in &self.names[at] {
                    context.var(name.clone(), *value);
                }
                context
                    .var("Hx", right * sizes[0])
                    .var("Hy", up * sizes[1])
                    .var("H", up * sizes[1]);
                for definition in definitions {
                    let sides: Vec<&str> = definition.split(" = ").collect();
                    if sides[0].starts_with('x')
                        && let Ok(value) = meval::eval_str_with_context(sides[1], &context)
                    {
                        context.var(sides[0], value);
                    }
                }
                let value = |side: &str| meval::eval_str_with_context(side, &context);
                let sides: Vec<&str> = line.split('=').collect();
                match (value(sides[0]), value(sides[1])) {
                    (Ok(one), Ok(other)) => {
                        let least =
                            scene.tension().min(scene.weights[0].mass * scene.gravity) * 0.2;
                        (one - other).abs() <= APART * one.abs().max(other.abs()).max(least)
                    }
                    _ => true,
                }
            })
    }
}
