//! Workings of systems: every method and every pivot gives the forces that the solver gives.

#[path = "workings/found.rs"]
mod found;
#[path = "workings/limits.rs"]
mod limits;
#[path = "workings/sought.rs"]
mod sought;
#[path = "workings/three.rs"]
mod three;

use crate::systems_random::system;
use leverwright::draw::draw;
use leverwright::key::{Atom, Axis};
use leverwright::lesson::built_in;
use leverwright::problem::Place;
use leverwright::statics::{SystemSolution, solve_system};
use leverwright::system::{ActId, BodyId, HoldKind, Spot, System};
use leverwright::working::{
    Kind, Meaning, Method, Quantity, Rule, Told, Underivable, Working, derive, told,
};

const METHODS: [Method; 3] = [Method::Components, Method::LeverArms, Method::Coordinates];

/// Spots to try as pivots: where the holds are, and the ends of the first leg.
fn pivots(system: &System) -> Vec<Spot> {
    let mut found: Vec<Spot> = system
        .parts()
        .holds
        .iter()
        .map(|hold| hold.at.clone())
        .collect();
    if system.leg(BodyId(0), 0).is_some() {
        for place in [Place::Foot, Place::Middle, Place::Tip] {
            found.push(Spot::On {
                body: BodyId(0),
                leg: 0,
                place,
            });
        }
    }
    found
}

/// Every unknown of a working against the solver, relative to the largest force.
fn compare(system: &System, working: &Working, solution: &SystemSolution) -> Result<usize, String> {
    compare_at(system, working, solution, &system.values())
}

/// The same at other values of the givens.
fn compare_at(
    system: &System,
    working: &Working,
    solution: &SystemSolution,
    values: &[f64],
) -> Result<usize, String> {
    let gravity = system.gravity();
    let (force, length) = solution.scales();
    let largest = solution
        .all()
        .map(|(_, found)| found.force.size())
        .fold(force, f64::max);
    let mut compared = 0;
    for (index, named) in working.quantities.iter().enumerate() {
        let id = leverwright::working::Quantity(index);
        let value = working
            .value(id, values, gravity)
            .ok_or_else(|| format!("{} has no value", named.symbol))?;
        if !value.is_finite() {
            return Err(format!("{} is {value}", named.symbol));
        }
        let of = |act: ActId| solution.reaction(act).unwrap_or_default();
        let (wanted, scale) = match named.meaning {
            Meaning::Component(act, Axis::Horizontal) => (of(act).force.x, largest),
            Meaning::Component(act, Axis::Vertical) => (of(act).force.y, largest),
            Meaning::Couple(act) => (of(act).couple, largest * length),
            Meaning::FrictionNeeded(act) => (of(act).contact.map_or(0.0, |c| c.1), largest),
            Meaning::Size(act) => (of(act).force.size(), largest),
            Meaning::Push(act) => (of(act).contact.map_or(f64::NAN, |c| c.0), largest),
            Meaning::Force(act) => {
                let rough = matches!(act, ActId::Hold(index)
                    if matches!(system.parts().holds[index].kind, HoldKind::Rough { .. } | HoldKind::Base { .. }));
                // At the limit friction has a part along the push where it is not square to it.
                let contact = of(act)
                    .contact
                    .filter(|_| rough && matches!(named.rule, Rule::Solved(_)));
                match contact {
                    Some(_) => continue,
                    None => (of(act).size, largest),
                }
            }
            Meaning::Weight(act) | Meaning::Resultant(act) => (of(act).size, largest),
            _ => continue,
        };
        if (value - wanted).abs() > 1e-6 * scale {
            return Err(format!("{} is {value}, not {wanted}", named.symbol));
        }
        compared += 1;
    }
    Ok(compared)
}

/// True for a working that begins with moments about a pivot on the line of an unknown, and has a
/// part of a hinge's force from them.
fn is_on_a_line(working: &Working, pivot: Option<&Spot>) -> bool {
    let meaning = |id: &Quantity| working.named(*id).map(|named| named.meaning);
    let (Some(pivot), Some(first)) = (pivot, working.stages.first()) else {
        return false;
    };
    let is_force = |id: &Quantity| matches!(meaning(id), Some(Meaning::Force(_)));
    first.balances[0].kind == Kind::Moments(pivot.clone())
        && matches!(first.unknowns[..], [one] if matches!(meaning(&one), Some(Meaning::Component(..))))
        && first.balances[0].removed.iter().any(is_force)
}

fn only_knots(system: &System) -> bool {
    system.parts().bodies.iter().all(|body| body.knot)
}

#[test]
fn verif_all_methods_and_pivots_give_the_same_forces() {
    let (mut workings, mut compared, mut refused, mut on_a_line) = (0, 0, 0, 0);
    let mut faults = Vec::new();
    for index in 0..160 {
        let (family, system) = system(21, index);
        if family == crate::systems_random::Family::Near {
            continue;
        }
        let values = system.values();
        let Ok(solution) = solve_system(&system, &values, system.gravity()) else {
            continue;
        };
        let mut wishes: Vec<Option<Spot>> = vec![None];
        wishes.extend(pivots(&system).into_iter().map(Some));
        for method in METHODS {
            for pivot in &wishes {
                match derive(&system, &values, method, pivot.as_ref()) {
                    Ok(working) => match compare(&system, &working, &solution) {
                        Ok(count) => {
                            workings += 1;
                            compared += count;
                            on_a_line += usize::from(is_on_a_line(&working, pivot.as_ref()));
                            assert!(!told(&system, &working, &values).is_empty());
                        }
                        Err(fault) => faults.push(format!("{index} {method:?} {pivot:?}: {fault}")),
                    },
                    Err(Underivable::PivotOnLine { .. }) => refused += 1,
                    Err(Underivable::KnotPivot) if pivot.is_some() && only_knots(&system) => {}
                    Err(trouble) => faults.push(format!("{index} {method:?} {pivot:?}: {trouble}")),
                }
            }
        }
    }
    assert!(
        faults.is_empty(),
        "{} faults\n{}",
        faults.len(),
        faults[..faults.len().min(12)].join("\n")
    );
    assert!(
        workings > 400 && compared > 2000 && refused > 0 && on_a_line > 0,
        "{workings} {compared} {refused} {on_a_line}"
    );
}

/// The guided lessons' problems: the same forces by the guided key and by every method.
#[test]
fn verif_lessons_by_every_method() {
    for lesson in built_in() {
        for seed in 0..6 {
            let problem = draw(&lesson, seed, "en").unwrap().problem;
            let system = System::of(&problem);
            let values = system.values();
            let solution = solve_system(&system, &values, system.gravity()).unwrap();
            for method in METHODS {
                let working = derive(&system, &values, method, None).unwrap();
                let count = compare(&system, &working, &solution).unwrap();
                assert!(count >= 3, "{} {seed}: {count}", lesson.id());
            }
        }
    }
}

/// Where three forces act on one body, their triangle gives the forces that moments give.
#[test]
fn verif_the_triangle_of_forces_agrees() {
    let mut systems = Vec::new();
    for index in 0..1500 {
        let (family, system) = system(33, index);
        if family != crate::systems_random::Family::Near {
            systems.push(system);
        }
    }
    for lesson in built_in() {
        for seed in 0..10 {
            systems.push(System::of(&draw(&lesson, seed, "en").unwrap().problem));
        }
    }
    let (mut agreed, mut compared) = (0, 0);
    let mut refused = std::collections::BTreeMap::new();
    for system in &systems {
        let values = system.values();
        let Ok(solution) = solve_system(system, &values, system.gravity()) else {
            continue;
        };
        match derive(system, &values, Method::Triangle, None) {
            Ok(working) => {
                // Unknowns of the balances stand unused beside the triangle's quantities.
                let mut own = working.clone();
                for named in &mut own.quantities {
                    if matches!(named.rule, Rule::Solved(_)) {
                        named.rule = Rule::Formula(leverwright::key::Formula::Number(0.0));
                        named.meaning = Meaning::Sum;
                    }
                }
                let count = compare(system, &own, &solution);
                compared += count.unwrap_or_else(|fault| {
                    panic!("{fault}: {}", leverwright::lesson::write_system(system))
                });
                assert!(!told(system, &working, &values).is_empty());
                agreed += 1;
            }
            Err(trouble) => *refused.entry(trouble.code()).or_insert(0) += 1,
        }
    }
    assert!(
        agreed >= 60 && compared >= 150,
        "{agreed} {compared} {refused:?}"
    );
    for code in ["no-triangle", "too-many-forces"] {
        assert!(refused.contains_key(code), "{refused:?}");
    }
}

/// Two known sides and the angle between them, by the rules of cosines and sines: by hand from the
/// parts of the two forces (tests/boards/two_wires.json).
#[test]
fn val_a_third_side_by_the_rule_of_cosines() {
    let json = include_str!("boards/two_wires.json");
    let system = leverwright::lesson::parse_system(json).unwrap();
    let values = system.values();
    let working = derive(&system, &values, Method::Triangle, None).unwrap();
    let value = |meaning| {
        let id = working.find(meaning).unwrap();
        working.value(id, &values, system.gravity()).unwrap()
    };
    let (sine, cosine) = 35_f64.to_radians().sin_cos();
    let (level, upright) = (120.0 + 90.0 * sine, 90.0 * cosine);
    let size = value(Meaning::Size(ActId::Hold(0)));
    assert!((size - level.hypot(upright)).abs() < 1e-9, "{size}");
    let angle = value(Meaning::Corner(ActId::Load(1)));
    assert!((angle - (upright / level).atan()).abs() < 1e-12, "{angle}");
}

/// Every board and published case that seeks a number: its working finds that number, by every
/// method, from balances that hold at it and at no value beside it.
#[test]
fn verif_what_is_sought_is_worked_like_an_unknown() {
    let (mut worked, mut by_balance, mut plain) = (0, 0, Vec::new());
    for folder in ["boards", "cases"] {
        let path = format!("{}/tests/{folder}", env!("CARGO_MANIFEST_DIR"));
        for entry in std::fs::read_dir(path).unwrap() {
            let path = entry.unwrap().path();
            let json = std::fs::read_to_string(&path).unwrap();
            let Ok(system) = leverwright::lesson::parse_system(&json) else {
                continue;
            };
            let Some(sought) = system.parts().sought.clone() else {
                continue;
            };
            for root in leverwright::statics::roots(&system, system.gravity()).unwrap() {
                let Ok(solution) = &root.solution else {
                    continue;
                };
                let mut values = system.values();
                values[sought.given.0] = root.value;
                for method in METHODS {
                    let working = derive(&system, &values, method, None).unwrap();
                    if let Err(fault) = compare_at(&system, &working, solution, &values) {
                        panic!("{} {method:?}: {fault}", path.display());
                    }
                    let told = told(&system, &working, &values);
                    let name = system.given(sought.given).symbol.shown();
                    let says = |line: &Told| matches!(line, Told::Quantity { text, .. } if text.starts_with(&format!("{name} = ")));
                    if !told.iter().any(says) {
                        plain.push(path.display().to_string());
                        continue;
                    }
                    worked += 1;
                    by_balance +=
                        usize::from(holds_only_there(&system, &working, &values, sought.given.0));
                }
            }
        }
    }
    assert!(plain.is_empty(), "{plain:?}");
    assert!(worked >= 30 && by_balance >= 24, "{worked} {by_balance}");
}

/// True if a balance gives what is sought; then it must hold at its value, and not beside it.
fn holds_only_there(system: &System, working: &Working, values: &[f64], given: usize) -> bool {
    let Some((sought, _)) = working.sought else {
        return false;
    };
    let stage = working
        .stages
        .iter()
        .find(|stage| stage.unknowns.contains(&sought));
    let stage = stage.expect("a stage that finds it");
    let solution = solve_system(system, values, system.gravity()).unwrap();
    let (force, length) = solution.scales();
    let scale = force * length.max(1.0);
    let residual = |nudge: f64| -> f64 {
        let mut nudged = values.to_vec();
        nudged[given] *= 1.0 + nudge;
        let atom = |atom: &Atom<Quantity>| match atom {
            Atom::Given(id) => nudged.get(id.0).copied(),
            Atom::Gravity => Some(system.gravity()),
            // Forces as they are at the value; what rests on the given itself moves with it.
            Atom::Step(id) => match working.named(*id)?.rule {
                Rule::Solved(_) => working.value(*id, values, system.gravity()),
                _ => working.value(*id, &nudged, system.gravity()),
            },
        };
        let balances = stage.balances.iter();
        let sums = balances.map(|balance| {
            let terms = balance.terms.iter();
            let sum: f64 = terms
                .map(|term| term.sign * term.amount.value(&atom).unwrap())
                .sum();
            sum.abs()
        });
        sums.fold(0.0_f64, f64::max)
    };
    let (there, beside) = (residual(0.0), residual(0.01));
    let title = format!("{} {:?}", system.parts().title, stage.balances);
    assert!(there <= 1e-6 * scale, "{title}: {there} of {scale}");
    assert!(beside > 1e-4 * scale, "{title}: {beside} of {scale}");
    true
}
