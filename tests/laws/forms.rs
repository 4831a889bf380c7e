//! The balance of moments as people write it, worked to three figures in one place or another, and
//! balances that are built to come out right by chance.

use super::problems;
use leverwright::judge::{Board, Judgement, Names, Remark, Standing, Truth, judge};
use leverwright::key::{Axis, BalanceKind, Key, Part, Pins, Sampling, StepId, derive};
use leverwright::problem::{ForceId, Problem};

/// A term of the balance of moments: which way it turns, the force, its part across, its distance.
struct Turning {
    force: ForceId,
    sign: f64,
    size: f64,
    across: f64,
    distance: f64,
}

/// The known terms of a problem's balance, and the unknown's with the unknown put at one newton.
fn turnings(problem: &Problem, key: &Key) -> (Vec<Turning>, Turning) {
    let sampling = Sampling::of(problem);
    let value = |id: StepId| key.value(id, sampling.own(), &Pins::new());
    let mut known = Vec::new();
    let mut unknown = None;
    let balance = key.balance(StepId::MomentSum).unwrap();
    assert!(matches!(balance.kind, BalanceKind::MomentsAbout(_)));
    for term in &balance.terms {
        let pull = value(StepId::Pull(term.force))
            .filter(|_| key.step(StepId::Pull(term.force)).is_some());
        let moment = value(StepId::Moment(term.force)).unwrap();
        let distance = value(StepId::Distance(term.force)).unwrap();
        let size = pull.or_else(|| value(StepId::Weight(term.force))).unwrap();
        let turning = Turning {
            force: term.force,
            sign: term.sign,
            size: if pull.is_some() { 1.0 } else { size },
            across: moment / distance / if pull.is_some() { size } else { 1.0 },
            distance,
        };
        match pull {
            Some(_) => unknown = Some(turning),
            None => known.push(turning),
        }
    }
    (known, unknown.unwrap())
}

/// A positive number to so many significant figures.
fn figures(value: f64, figures: usize) -> String {
    let first = value.abs().log10().floor() as i32;
    let decimals = (figures as i32 - 1 - first).max(0) as usize;
    let place = 10_f64.powi(first + 1 - figures as i32);
    format!("{:.decimals$}", (value / place).round() * place)
}

/// A sum of terms with their signs, the first positive one in front.
fn sum(terms: &[(f64, String)]) -> String {
    let mut terms: Vec<&(f64, String)> = terms.iter().collect();
    terms.sort_by(|one, other| other.0.total_cmp(&one.0));
    let mut written = String::new();
    for (index, (sign, term)) in terms.iter().enumerate() {
        let joint = match (index, *sign < 0.0) {
            (0, false) => "",
            (0, true) => "-",
            (_, false) => " + ",
            (_, true) => " - ",
        };
        written.push_str(joint);
        written.push_str(term);
    }
    written
}

/// The balance in a dozen ways.
fn ways(known: &[Turning], unknown: &Turning, symbol: &str) -> Vec<String> {
    let side = |term: &dyn Fn(&Turning) -> String| {
        let terms: Vec<(f64, String)> = known
            .iter()
            .map(|one| (-one.sign * unknown.sign, term(one)))
            .collect();
        sum(&terms)
    };
    let three = |value: f64| figures(value, 3);
    let four = |value: f64| figures(value, 4);
    let exact = |value: f64| format!("{}", (value * 1e6).round() / 1e6);
    let total: f64 = known
        .iter()
        .map(|one| -one.sign * unknown.sign * one.across * one.distance)
        .sum();
    let factor = unknown.across * unknown.distance;
    let right = format!("{}*{symbol}", three(factor));
    let parts = format!(
        "{symbol}*{}*{}",
        three(unknown.across),
        exact(unknown.distance)
    );
    let products = side(&|one| format!("{}*{}", three(one.across), exact(one.distance)));
    let moments = side(&|one| three(three(one.across).parse::<f64>().unwrap() * one.distance));
    let arms = side(&|one| {
        format!(
            "{}*{}",
            four(one.size),
            three(one.across / one.size * one.distance)
        )
    });
    let rounded_total = three(total);
    vec![
        format!("{products} = {right}"),
        format!("{parts} = {products}"),
        format!("{moments} = {parts}"),
        format!("{rounded_total} = {right}"),
        format!("{} = {parts}", four(total)),
        format!("{arms} = {right}"),
        format!("{products} - {parts} = 0"),
        format!("0 = {parts} - ({moments})"),
        format!("{symbol} = ({products})/{}", three(factor)),
        format!(
            "{symbol} = ({moments})/({}*{})",
            three(unknown.across),
            exact(unknown.distance)
        ),
        format!("{symbol} = {rounded_total}/{}", three(factor)),
        side(&|one| {
            let ratio = one.across / one.size;
            let ratio = if ratio < 0.9995 {
                format!("{}*", three(ratio))
            } else {
                String::new()
            };
            format!(
                "{}*9.8*{ratio}{}",
                exact(one.size / 9.8),
                exact(one.distance)
            )
        }) + &format!(" = {parts}"),
        side(&|one| {
            let ratio = one.across / one.size;
            let ratio = if ratio < 0.9995 {
                format!("{}*", three(ratio))
            } else {
                String::new()
            };
            format!("{}*{ratio}{}", four(one.size), exact(one.distance))
        }) + &format!(" = {parts}"),
    ]
}

/// The parts of the hinge's force as people write them, with the rope's angle as one number.
fn parts_of_the_hinge(problem: &Problem, key: &Key) -> Vec<(StepId, String)> {
    let sampling = Sampling::of(problem);
    let value = |id: StepId| {
        key.step(id)
            .and_then(|_| key.value(id, sampling.own(), &Pins::new()))
    };
    let pull = ForceId::Rope(0);
    let part = |axis| value(StepId::PartOf(pull, axis));
    let (Some(level), Some(upright)) = (part(Axis::Horizontal), part(Axis::Vertical)) else {
        return Vec::new();
    };
    let size = figures(value(StepId::Pull(pull)).unwrap(), 3);
    let slope = format!("{:.0}", upright.abs().atan2(level.abs()).to_degrees());
    let steep = format!("{:.0}", level.abs().atan2(upright.abs()).to_degrees());
    let upwards = StepId::Reaction(ForceId::Support(0), Part::Along(Axis::Vertical));
    let sideways = StepId::Reaction(ForceId::Support(0), Part::Along(Axis::Horizontal));
    let balance = key.balance(StepId::ForceSum(Axis::Vertical)).unwrap();
    let weights: Vec<(f64, String)> = balance
        .terms
        .iter()
        .filter_map(|term| Some((-term.sign, figures(value(StepId::Weight(term.force))?, 3))))
        .collect();
    let pulls_up = balance.terms.iter().find(|term| term.force == pull);
    let pulled = |written: String| {
        let mut terms = weights.clone();
        terms.extend(pulls_up.map(|term| (-term.sign, written)));
        sum(&terms)
    };
    vec![
        (sideways, format!("{size}*cos({slope})")),
        (sideways, format!("{size} sin {steep}")),
        (sideways, figures(level.abs(), 3)),
        (upwards, pulled(format!("{size}*sin({slope})"))),
        (upwards, pulled(format!("{size} cos {steep}"))),
        (upwards, pulled(figures(upright.abs(), 3))),
    ]
}

/// The parts of the hinge's force hold in every form.
#[test]
fn verif_the_hinges_parts_are_known_in_many_forms() {
    let (mut lines, mut others) = (0, Vec::new());
    for problem in problems().iter().step_by(9) {
        let key = derive(problem).unwrap();
        for (step, line) in parts_of_the_hinge(problem, &key) {
            let first = judged_at(problem, &key, step, &line);
            let value = first.value;
            let mut judgements = vec![(line.clone(), first)];
            // Its value behind it, with three figures and more.
            for digits in [3, 4, 5] {
                let chain = value.map(|value| format!("{line} = {}", figures(value, digits)));
                judgements.extend(chain.map(|chain| {
                    let judgement = judged_at(problem, &key, step, &chain);
                    (chain, judgement)
                }));
            }
            for (line, judgement) in judgements {
                lines += 1;
                if !judgement.truth.holds() {
                    let statement = problem.statement();
                    others.push(format!("{line}: {:?} | {statement}", judgement.truth));
                }
            }
        }
    }
    assert!(lines > 400 && others.is_empty(), "{lines}: {others:#?}");
}

/// On a level body under an upright rope the hinge's force follows from the moments about the
/// rope's point, though a stretch from there may be as long as another distance of the problem.
#[test]
fn verif_the_hinges_force_is_known_from_the_moments_about_the_ropes_point() {
    let (mut lines, mut others) = (0, Vec::new());
    for problem in problems() {
        let key = derive(&problem).unwrap();
        let hinge = StepId::Reaction(ForceId::Support(0), Part::Along(Axis::Vertical));
        let (known, unknown) = turnings(&problem, &key);
        if key.step(hinge).is_none()
            || key
                .steps
                .iter()
                .any(|step| matches!(step.id, StepId::Angle(_)))
        {
            continue;
        }
        // Such a draw is not kept: there the weight at the rope's point has no moment by chance.
        let apart = |one: &Turning| (one.distance - unknown.distance).abs() > 1e-9;
        if !known.iter().all(apart) {
            continue;
        }
        let terms: Vec<(f64, String)> = known
            .iter()
            .map(|one| (one, unknown.distance - one.distance))
            .map(|(one, stretch)| {
                let across = figures(one.across, 4);
                (stretch, format!("{across}*{:.2}", stretch.abs()))
            })
            .collect();
        let line = format!("({})/{}", sum(&terms), unknown.distance);
        lines += 1;
        let judgement = judged_at(&problem, &key, hinge, &line);
        if !judgement.truth.holds() {
            others.push(format!(
                "{line}: {:?} | {}",
                judgement.truth,
                problem.statement()
            ));
        }
    }
    assert!(lines > 100 && others.is_empty(), "{lines}: {others:#?}");
}

fn judged(problem: &Problem, key: &Key, line: &str) -> Judgement {
    judged_at(problem, key, StepId::MomentSum, line)
}

fn judged_at(problem: &Problem, key: &Key, asked: StepId, line: &str) -> Judgement {
    let (sampling, names) = (Sampling::of(problem), Names::of(problem, key, &[]));
    let standing = Standing::new();
    judge(
        &Board::of((problem, key, &sampling), (&names, &standing)),
        asked,
        line,
        1,
    )
}

/// The name of the unknown pull, as it is typed.
fn pull_symbol(key: &Key, unknown: &Turning) -> String {
    key.step(StepId::Pull(unknown.force))
        .unwrap()
        .symbol
        .typed()
}

/// However a right balance is worked to three figures, it is not called wrong; nearly always it is
/// proved.
#[test]
fn verif_a_balance_worked_on_the_way_is_known() {
    let (mut lines, mut noted, mut wrong) = (0, Vec::new(), Vec::new());
    for problem in problems().iter().step_by(9) {
        let key = derive(problem).unwrap();
        let (known, unknown) = turnings(problem, &key);
        let symbol = pull_symbol(&key, &unknown);
        for line in ways(&known, &unknown, &symbol) {
            let judgement = judged(problem, &key, &line);
            lines += 1;
            let is_noted =
                judgement.truth == Truth::Noted && judgement.remarks.contains(&Remark::NotSeen);
            if !judgement.truth.holds() && !is_noted {
                wrong.push(format!("{line} | {}", problem.statement()));
            }
            if is_noted {
                noted.push(format!("{line} | {}", problem.statement()));
            }
        }
    }
    assert!(
        wrong.is_empty(),
        "{} wrong: {:#?}",
        wrong.len(),
        &wrong[..wrong.len().min(10)]
    );
    let share = noted.len() as f64 / lines as f64;
    assert!(
        lines > 500 && share < 0.005,
        "{share}: {:#?}",
        &noted[..noted.len().min(10)]
    );
}

/// A balance with two altered distances that gives the right unknown shows nothing.
#[test]
fn verif_a_balance_that_comes_out_by_chance_is_not_right() {
    let mut built = 0;
    for problem in problems().iter().step_by(6) {
        let key = derive(problem).unwrap();
        let (known, unknown) = turnings(problem, &key);
        let [first, second, ..] = known.as_slice() else {
            continue;
        };
        let symbol = pull_symbol(&key, &unknown);
        for (from, to) in [(first, second), (second, first)] {
            for share in [1.15, 0.85, 1.3] {
                let other = from.distance * share;
                let rest = to.distance
                    - to.sign * from.sign * from.across * (other - from.distance) / to.across;
                if rest <= 0.1 {
                    continue;
                }
                let distance = |one: &Turning| {
                    let value = match one.force {
                        force if force == from.force => other,
                        force if force == to.force => rest,
                        _ => one.distance,
                    };
                    format!("{:.2}", value)
                };
                let terms: Vec<(f64, String)> = known
                    .iter()
                    .map(|one| {
                        (
                            -one.sign * unknown.sign,
                            format!("{}*{}", figures(one.across, 4), distance(one)),
                        )
                    })
                    .collect();
                let line = format!(
                    "{} = {}*{symbol}*{}",
                    sum(&terms),
                    figures(unknown.across, 4),
                    unknown.distance
                );
                let judgement = judged(problem, &key, &line);
                built += 1;
                assert!(!judgement.truth.holds(), "{line}\n{}", problem.statement());
            }
        }
    }
    assert!(built > 200, "{built}");
}

/// A right balance with one of its numbers altered by a few per cent or more never holds.
#[test]
fn verif_an_altered_number_is_not_right() {
    let (mut altered, mut held) = (0, Vec::new());
    for problem in problems().iter().step_by(36) {
        let key = derive(problem).unwrap();
        let (known, unknown) = turnings(problem, &key);
        let symbol = pull_symbol(&key, &unknown);
        for line in ways(&known, &unknown, &symbol) {
            let altering = numbers(&line)
                .into_iter()
                .filter(|(_, number)| *number != "0");
            for (at, number) in altering {
                for share in [1.02, 0.95, 1.3, 0.5] {
                    let value: f64 = number.parse().unwrap();
                    let other = figures(value * share, 3);
                    if other == number {
                        continue;
                    }
                    let mut changed = line.clone();
                    changed.replace_range(at..at + number.len(), &other);
                    altered += 1;
                    if judged(problem, &key, &changed).truth.holds() {
                        held.push(format!("{line} -> {changed} | {}", problem.statement()));
                    }
                }
            }
        }
    }
    assert!(
        altered > 1000 && held.is_empty(),
        "{} of {altered}: {:#?}",
        held.len(),
        &held[..held.len().min(10)]
    );
}

/// The numbers of a line that stand for themselves, with their places.
fn numbers(line: &str) -> Vec<(usize, &str)> {
    let mut found = Vec::new();
    let mut start = None;
    for (at, sign) in line.char_indices().chain([(line.len(), ' ')]) {
        let digit = sign.is_ascii_digit() || sign == '.';
        match (digit, start) {
            (true, None) => start = Some(at),
            (false, Some(from)) => {
                found.push((from, &line[from..at]));
                start = None;
            }
            _ => {}
        }
    }
    found
}
