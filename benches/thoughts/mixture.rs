//! Tables 3 and 5: two mistakes line by line, and how sure what is said may be taken.

use super::case::{Case, Made, Share, is_family};
use super::manner::{below, chance, named, number, skipped, weighted};
use super::pupil::{Line, Wrong, first_apart, work};
use leverwright::key::StepId;
use leverwright::session::{Ranked, Thought};
use rand::Rng;
use rand::rngs::ChaCha8Rng;

/// Pairs tried in each problem.
const PAIRS: usize = 4;
/// Answers of each problem in the mixture.
const ANSWERS: usize = 25;
/// The share from which the tutor says a thought with "perhaps".
const SAID: f64 = 0.5;

/// Table 3.
pub(super) fn pairs(cases: &[Case], random: &mut ChaCha8Rng) {
    println!("\n3. Two mistakes in a working, line by line: each within the first two of its line");
    let (mut both, mut either) = (Share::default(), Share::default());
    let mut missed = Vec::new();
    for case in cases {
        let made = case.made();
        for _ in 0..PAIRS {
            let Some(found) = pair(case, &made, random) else {
                continue;
            };
            both.count(found.first && found.second);
            either.count(found.first);
            either.count(found.second);
            missed.extend(found.missed);
        }
    }
    println!(
        "workings {}, both found in {}; mistakes found {}",
        both.all,
        both.told(),
        either.told()
    );
    for line in missed.iter().take(20) {
        println!("missed: {line}");
    }
}

struct Pair {
    first: bool,
    second: bool,
    missed: Option<String>,
}

/// Two mistakes that show on different lines, and what is made of the working.
fn pair(case: &Case, made: &[Made], random: &mut ChaCha8Rng) -> Option<Pair> {
    let one = &made[below(random, made.len())];
    let other = &made[below(random, made.len())];
    let calculator = |made: &Made| made.wrong == Wrong::Radians;
    if one.shows_at == other.shows_at || calculator(one) || calculator(other) {
        return None;
    }
    let figures = 4 + below(random, 2) as u8;
    let skips: Vec<StepId> = work(&case.paper, &[], figures)?
        .iter()
        .map(|line| line.step)
        .filter(|step| skipped(random, *step))
        .collect();
    let told = |wrongs: &[Wrong]| -> Option<Vec<Line>> {
        let mut lines = work(&case.paper, wrongs, figures)?;
        lines.retain(|line| !skips.contains(&line.step));
        Some(lines)
    };
    let right = told(&[])?;
    let wrong = told(&[one.wrong, other.wrong])?;
    let at = |wrong: Wrong| first_apart(&right, &told(&[wrong])?);
    let (first_at, second_at) = (at(one.wrong)?, at(other.wrong)?);
    // Both on one line is no working of two lines, and what one hides the other cannot show.
    // (of two whose product is right nothing can be seen).
    let form = |wrongs: &[Wrong], step: StepId| {
        let lines = told(wrongs)?;
        lines
            .into_iter()
            .find(|line| line.step == step)
            .map(|line| line.form)
    };
    let both = [one.wrong, other.wrong];
    let shows = |step: StepId, without: Wrong| {
        let with = form(&both, step);
        with.is_some() && with != form(&[without], step) && with != form(&[], step)
    };
    if first_at == second_at || !shows(first_at, other.wrong) || !shows(second_at, one.wrong) {
        return None;
    }
    let typed: Vec<String> = wrong
        .iter()
        .map(|line| named(random, &case.paper, line, figures))
        .collect();
    let ranked = case.session.thoughts_in(&typed);
    let index = |step: StepId| wrong.iter().position(|line| line.step == step);
    let offered = |step: StepId, made: Wrong| {
        let ranked = index(step).map(|at| &ranked[at]);
        let two = ranked.map_or(&[][..], |ranked| {
            &ranked.thoughts[..ranked.thoughts.len().min(2)]
        });
        two.iter().any(|thought| is_family(thought, made.id()))
    };
    let (first, second) = (
        offered(first_at, one.wrong),
        offered(second_at, other.wrong),
    );
    let missed = (!first || !second).then(|| {
        let lines = typed.iter().zip(&ranked);
        let lines: Vec<String> = lines
            .map(|(line, ranked)| format!("`{line}` {} {:?}", ranked.truth, ids(ranked)))
            .collect();
        format!("{:?} + {:?}: {}", one.wrong, other.wrong, lines.join("; "))
    });
    Some(Pair {
        first,
        second,
        missed,
    })
}

fn ids(ranked: &Ranked) -> Vec<&str> {
    ranked
        .thoughts
        .iter()
        .map(|thought| thought.id.as_str())
        .collect()
}

/// What an answer of the mixture really is.
#[derive(Clone, Copy, PartialEq)]
enum Truly {
    One(Wrong),
    Two(Wrong, Wrong),
    Slip,
    Nonsense,
}

impl Truly {
    /// True if this thought names it.
    fn is(self, thought: &Thought) -> bool {
        match self {
            Truly::One(wrong) => is_family(thought, wrong.id()),
            Truly::Two(one, other) => {
                is_family(thought, one.id()) || is_family(thought, other.id())
            }
            Truly::Slip => matches!(thought.id.as_str(), "pen" | "sum"),
            Truly::Nonsense => false,
        }
    }
}

/// Table 5.
pub(super) fn calibration(cases: &[Case], random: &mut ChaCha8Rng) {
    println!("\n5. 65 % one mistake, 10 % two, 10 % slips, 15 % nonsense; half typed as forms");
    let (mut flat, mut perhaps, mut said) = (Share::default(), Share::default(), Share::default());
    let mut bins = [(Share::default(), 0.0); 5];
    let mut wrongly = Vec::new();
    for case in cases {
        let made = case.made();
        for _ in 0..ANSWERS {
            let Some((truly, step, typed)) = answer(case, &made, random) else {
                continue;
            };
            let ranked = case.session.thoughts_behind(step, &typed);
            if matches!(ranked.truth.as_str(), "holds" | "rounded") {
                continue;
            }
            let first = ranked.thoughts.first();
            let is_right = first.is_some_and(|first| truly.is(first));
            let spoken = first.filter(|first| first.flat || first.share >= SAID);
            said.count(spoken.is_some());
            if let Some(first) = spoken {
                let share = if first.flat { &mut flat } else { &mut perhaps };
                share.count(is_right);
                if !is_right && wrongly.len() < 25 {
                    let truth = told(truly);
                    wrongly.push(format!(
                        "{truth} `{typed}` at {}: {:?} {:.2}{}",
                        ranked.step.0,
                        ids(&ranked),
                        first.share,
                        if first.flat { " flat" } else { "" }
                    ));
                }
            }
            if let Some(first) = first.filter(|first| !first.flat) {
                let bin = &mut bins[((first.share * 5.0) as usize).min(4)];
                bin.0.count(is_right);
                bin.1 += first.share;
            }
        }
    }
    println!("said at all {} of {}", said.told(), said.all);
    println!("said flatly {}, right {}", flat.all, flat.told());
    println!(
        "said with perhaps {}, right {}",
        perhaps.all,
        perhaps.told()
    );
    println!("of first thoughts that are not flat, by their share:");
    for (at, (share, sum)) in bins.iter().enumerate() {
        let mean = 100.0 * sum / share.all.max(1) as f64;
        println!(
            "  from {:3} %: {:6} answers, mean share {mean:5.1} %, right {}",
            at * 20,
            share.all,
            share.told()
        );
    }
    for line in wrongly {
        println!("wrongly: {line}");
    }
}

fn told(truly: Truly) -> String {
    match truly {
        Truly::One(wrong) => format!("{wrong:?}"),
        Truly::Two(one, other) => format!("{one:?} + {other:?}"),
        Truly::Slip => "slip".to_owned(),
        Truly::Nonsense => "nonsense".to_owned(),
    }
}

fn chosen(made: &[Made], random: &mut ChaCha8Rng) -> Option<Wrong> {
    let weights: Vec<f64> = made.iter().map(|made| made.wrong.weight()).collect();
    Some(made.get(weighted(random, &weights))?.wrong)
}

/// An answer of the mixture: what it truly is, the step, and what is typed.
fn answer(case: &Case, made: &[Made], random: &mut ChaCha8Rng) -> Option<(Truly, StepId, String)> {
    match below(random, 100) {
        0..65 => {
            let wrong = chosen(made, random)?;
            wrong_answer(case, Truly::One(wrong), &[wrong], random)
        }
        65..75 => {
            let (one, other) = (chosen(made, random)?, chosen(made, random)?);
            let truly = if one == other {
                Truly::One(one)
            } else {
                Truly::Two(one, other)
            };
            wrong_answer(case, truly, &[one, other], random)
        }
        75..85 => slip(case, random),
        _ => nonsense(case, random),
    }
}

fn wrong_answer(
    case: &Case,
    truly: Truly,
    wrongs: &[Wrong],
    random: &mut ChaCha8Rng,
) -> Option<(Truly, StepId, String)> {
    let figures = 4 + below(random, 3) as u8;
    let right = work(&case.paper, &[], figures)?;
    let lines = work(&case.paper, wrongs, figures)?;
    let step = first_apart(&right, &lines)?;
    let line = lines.iter().find(|line| line.step == step)?;
    let calculator = wrongs.contains(&Wrong::Radians);
    if chance(random, 50) && !calculator {
        return Some((truly, step, line.form.clone()));
    }
    // Half of the bare numbers stand where the mistake shows, half at the end.
    let at = if chance(random, 50) {
        step
    } else {
        case.pull()
    };
    let (at, value) = case.valued(&lines, at)?;
    let (_, true_value) = case.valued(&right, at)?;
    let wrong = (value - true_value).abs() > 2e-3 * true_value.abs();
    wrong.then(|| (truly, at, number(random, at, value, 3)))
}

/// A right value with digits exchanged, one digit off, or the point in a wrong place; typed alone or
/// behind the right form.
fn slip(case: &Case, random: &mut ChaCha8Rng) -> Option<(Truly, StepId, String)> {
    let lines = work(&case.paper, &[], 5)?;
    let valued: Vec<&Line> = lines.iter().filter(|line| line.value.is_some()).collect();
    let line = valued.get(below(random, valued.len()))?;
    let text = leverwright::units::figures_text(line.value?, 3);
    let mut digits: Vec<char> = text.chars().collect();
    let places: Vec<usize> = (0..digits.len())
        .filter(|at| digits[*at].is_ascii_digit())
        .collect();
    let at = *places.get(below(random, places.len().saturating_sub(1)))?;
    let next = places.iter().find(|place| **place > at).copied()?;
    match below(random, 3) {
        0 => digits.swap(at, next),
        1 => {
            let digit = digits[next].to_digit(10)?;
            digits[next] = char::from_digit((digit + 1 + below(random, 8) as u32) % 10, 10)?;
        }
        _ => digits.push('0'),
    }
    let slipped: String = digits.into_iter().collect();
    if slipped == text
        || slipped.contains('.') && slipped.trim_end_matches('0') == text.trim_end_matches('0')
    {
        return None;
    }
    let typed = match chance(random, 50) {
        true => format!("{} = {slipped}", line.form),
        false => slipped,
    };
    Some((Truly::Slip, line.step, typed))
}

/// A number from a third to three times the right one, or a product of printed numbers.
fn nonsense(case: &Case, random: &mut ChaCha8Rng) -> Option<(Truly, StepId, String)> {
    let lines = work(&case.paper, &[], 5)?;
    let (pull, right) = case.valued(&lines, case.pull())?;
    if chance(random, 50) {
        let share = (random.next_u64() >> 11) as f64 / (1_u64 << 53) as f64;
        let value = right * 3_f64.powf(2.0 * share - 1.0);
        return Some((Truly::Nonsense, pull, number(random, pull, value, 3)));
    }
    let paper = &case.paper;
    let weight = &paper.weights[below(random, paper.weights.len())];
    let force = leverwright::units::figures_text(weight.mass * paper.g, 4);
    let typed = match below(random, 4) {
        0 => format!("{force}*{}*{}", paper.length, paper.rope.at),
        1 => format!("{force}*{}/{}", weight.mass, paper.length),
        2 => format!("{force}*sin({}) + {}", paper.weight_angle, weight.mass),
        _ => format!("{}*{}/{}", weight.mass, paper.length, paper.rope.at),
    };
    Some((Truly::Nonsense, pull, typed))
}
