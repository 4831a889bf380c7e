//! The triangle of forces where sizes or directions come from a condition, and pivots on the line
//! of an unknown: by hand beside each.

use super::compare_at;
use super::found::{filed, settings};
use leverwright::key::Formula;
use leverwright::lesson::parse_system;
use leverwright::statics::solve_system;
use leverwright::system::{ActId, Spot, System};
use leverwright::working::{
    Kind, Meaning, Method, Quantity, Rule, Sense, Told, Underivable, Working, derive, settle, told,
};

fn named(name: &str) -> System {
    let path = format!("{}/tests/{name}.json", env!("CARGO_MANIFEST_DIR"));
    parse_system(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// The lines of a working by the triangle at these values.
fn lines(system: &System, values: &[f64]) -> String {
    let working = derive(system, values, Method::Triangle, None);
    let working = working.unwrap_or_else(|why| panic!("{}: {why}", system.parts().title));
    let line = |told: Told| match told {
        Told::Quantity { text, .. } | Told::Angle { text, .. } => text,
        other => format!("{other:?}"),
    };
    let lines = told(system, &working, values).into_iter().map(line);
    lines.collect::<Vec<_>>().join("\n")
}

/// - The wall's push 70 N and its friction 0.368·70 N = 25.76 N are one force of 74.59 N. The floor
///   bears 70 N level, and about its foot W·cos 60°·2 m = 70 N·sin 60°·4 m + 25.76 N·cos 60°·4 m, so
///   W = 294 N and N = 294 N − 25.8 N.
/// - Of the floor the push alone is told: W = N = 268 N; about its foot 268 N·cos 60°/2 =
///   S·sin 60°, S = 77.4 N, which friction at the floor bears.
/// - The hinge bears 500 N level (its line meets the stay and the load at the tip), so
///   T = 500 N/cos 30° and W1 = 500 N·tan 30°.
/// - At the joint T·cos 25° = 500 N·cos 30° and m·g = T·sin 25° + 500 N·sin 30°: the strut is told
///   from its foot and presses, so its size is counted below zero.
/// - Of the lamp's two ropes T1·cos α = T2·cos 25° and T1·sin α + T2·sin 25° = 156.8 N with T1 =
///   150 N: sin(α + 25°) = 156.8·sin 65°/150, so α = 46.3° or 83.7°; with T2 = 140 N
///   tan α = (156.8 − 140·sin 25°)/(140·cos 25°).
/// - Of three wires at a hook two as one; H = hypot(120 + 90·sin 35° − 60, 90·cos 35°).
#[test]
fn val_what_the_condition_tells_is_a_side() {
    for (name, wanted) in [
        (
            "wall_bears",
            &[
                "RS = S/cos φS = 70.0 N/cos 20.2° = 74.6 N",
                "N = RN·sin ψRN = 277 N·sin 75.4° = 268 N",
                "m = Wb/g = 294 N/(9.8 m/s²) = 30.0 kg",
            ][..],
        ),
        (
            "floor_bears",
            &[
                "RN = N/sin ψRN = 268 N/sin 73.9° = 279 N",
                "S = RN·sin αS = 279 N·sin 16.1° = 77.4 N",
                "m = Wb/g = 268 N/(9.8 m/s²) = 27.3 kg",
            ],
        ),
        (
            "hinge_breaks",
            &[
                "T = H/sin αH = 500 N/sin 60.0° = 577 N",
                "W1 = H·sin β/sin αH = 500 N·sin 30°/sin 60.0° = 289 N",
            ],
        ),
        (
            "joint_strut",
            &[
                "T = |S|·sin αT/sin αS = 500 N·sin 60.0°/sin 65.0° = 478 N",
                "m = W1/g = 452 N/(9.8 m/s²) = 46.1 kg",
            ],
        ),
        (
            "ring_angle",
            &[
                "αW1 = asin(W1·sin αT1/T1) = asin(157 N·sin 65.0°/150 N) = 71.3°",
                "α = αW1 − β = 71.3° − 25° = 46.3°",
            ],
        ),
        ("ring_pulled", &["α = 90° − αT2 = 90° − 52.4° = 37.6°"]),
        (
            "three_wires",
            &[
                "R = √(Rx² + Ry²) = √((172 N)² + (73.7 N)²) = 187 N",
                "H = √(R² + F3² − 2R·F3·cos ψR) = √((187 N)² + (60 N)² − 2·187 N·60 N·cos 23.2°) = \
                 134 N",
            ],
        ),
    ] {
        let system = named(&format!("workings/{name}"));
        let values = settle(&system).unwrap().values;
        let lines = lines(&system, &values);
        for line in wanted {
            let mut told = lines.lines();
            assert!(told.any(|one| one == *line), "{name}: {line}\n{lines}");
        }
        // A force that the condition tells is not told again.
        let condition = lines.lines().filter(|line| line.contains("max"));
        assert!(condition.count() <= 1, "{name}: {lines}");
    }
}

/// By hand, each with its direction and the parts that are asked:
/// - The lines of pull and rope cross 1 m above the pin: 200 N·cos 45° = T·cos 60°, T = 283 N, and
///   the pin bears 200 N·sin 45° + 283 N·sin 60° = 386 N downwards.
/// - Rope and bag cross on the arm, level with the pin (or the wall): T = 117.6 N/sin 35° = 205 N,
///   H = 117.6 N/tan 35° = 168 N.
/// - On the slope N = 392 N·cos 20° + 260 N·sin 20° = 457 N, friction 260 N·cos 20° − 392 N·sin 20° =
///   110 N; about to slip tan(θ + 16.7°) = 150/392.
/// - The balloon lifts with 206 N more than the arm weighs, 500 N·1 m/206 N beyond its middle. About
///   the pin T·sin 40°·1.5 m = 206 N·3.427 m, T = 732 N, and the pin bears 732 N·sin 40° − 206 N upwards.
/// - At the hook F − 90 N·sin 35° = 68.4 N level, 90 N·cos 35° + 60 N = 133.7 N upright: the slope is
///   atan(133.7/68.4) = 62.9°. With two wires 190 N·cos 20° − 120 N = 58.5 N.
#[test]
fn val_the_direction_and_the_parts_that_are_asked_are_told() {
    let acts = |force: &str, sense: Sense| {
        let force = force.to_owned();
        format!("{:?}", Told::Acts { force, sense })
    };
    for (name, wanted) in [
        (
            "post_pulled",
            &[
                &acts("H", Sense::Down),
                "αP = 90° − β = 90° − 60° = 30.0°",
                "H = P·sin αH/sin αP = 200 N·sin 105°/sin 30.0° = 386 N",
            ][..],
        ),
        (
            "bag_at_rope",
            &[
                &acts("H", Sense::Right),
                "H = W1·sin αH/sin β = 118 N·sin 55.0°/sin 35° = 168 N",
            ],
        ),
        (
            "bag_at_wall",
            &[&acts("RN", Sense::Right), "N = RN = 168 N", "FN = 0"],
        ),
        (
            "block_pushed",
            &[
                "N = RN·cos(αP − θ) = 470 N·cos(33.6° − 20°) = 457 N",
                "FN = RN·sin(αP − θ) = 470 N·sin(33.6° − 20°) = 110 N",
            ],
        ),
        (
            "block_steep",
            &[
                "φN = atan(μ) = atan(0.3) = 16.7°",
                "N = RN·cos φN = 420 N·cos 16.7° = 402 N",
            ],
        ),
        ("arm_lifted", &["Hy = H·sin ψH = 620 N·sin 25.3° = 265 N"]),
        ("hook_three", &["ψH = ψR + αQ = 47.2° + 15.8° = 62.9°"]),
        ("hook_part", &["Hx = H·cos ψH = 87.5 N·cos 48.0° = 58.5 N"]),
        ("plate_nailed", &["xP = x̄ = 0.550 m"]),
    ] {
        let system = named(&format!("workings/{name}"));
        let lines = lines(&system, &settle(&system).unwrap().values);
        for line in wanted {
            let mut told = lines.lines();
            assert!(told.any(|one| one == *line), "{name}: {line}\n{lines}");
        }
        assert!(!lines.contains("/0 m"), "{name}: {lines}");
    }
}

/// A sum of given forces and the force that is asked tell which way they act, and where a sum acts
/// beside another force: the balloon's lift beyond the middle, the two wires to the right and down.
#[test]
fn a_resultant_tells_its_way_and_its_side() {
    let below = |right| Sense::Slanted {
        above: false,
        right,
    };
    let above = |right| Sense::Slanted { above: true, right };
    for (name, wanted) in [
        ("arm_lifted", &[("R", Sense::Up), ("ψH", above(true))][..]),
        ("hook_three", &[("ψR", below(true)), ("ψH", above(false))]),
        ("hook_part", &[("ψH", below(true)), ("Hx", Sense::Right)]),
        ("three_wires", &[("ψR", below(true)), ("ψH", above(false))]),
    ] {
        let system = named(&format!("workings/{name}"));
        let values = system.values();
        let working = derive(&system, &values, Method::Triangle, None).unwrap();
        let lines = told(&system, &working, &values);
        for (symbol, sense) in wanted {
            let start = format!("{symbol} = ");
            let is_told = |line: &Told| {
                matches!(line, Told::Quantity { text, way: Some(way), .. }
                    if text.starts_with(&start) && way.sense == *sense)
            };
            assert!(lines.iter().any(is_told), "{name}: {symbol} {lines:#?}");
        }
        let beside = lines.iter().find_map(|line| match line {
            Told::Resultant { from, .. } => from.as_ref().map(|(_, _, side)| *side),
            _ => None,
        });
        let wanted = (name == "arm_lifted").then_some(Sense::Right);
        assert_eq!(beside, wanted, "{name}");
    }
}

/// The other rope angle has the same sine: 180° − 71.3° − 25°.
#[test]
fn val_the_blunt_angle_has_the_same_sine() {
    let system = named("workings/ring_angle");
    let settled = settle(&system).unwrap();
    let given = system.parts().sought.as_ref().unwrap().given;
    let mut values = settled.values.clone();
    values[given.0] = settled.roots[1].value;
    let lines = lines(&system, &values);
    let line = "αW1 = 180° − asin(W1·sin αT1/T1) = 180° − asin(157 N·sin 65.0°/150 N) = 108.67°";
    assert!(lines.contains(line), "{lines}");
    assert!(lines.contains("= 83.7°"), "{lines}");
}

/// A strut that acts against the way in which its line is told is told so, as by the balances.
#[test]
fn a_strut_is_told_with_its_sense_in_a_triangle() {
    let system = named("boards/jib");
    let values = system.values();
    for method in [Method::Triangle, Method::Components] {
        let working = derive(&system, &values, method, None).unwrap();
        let lines = told(&system, &working, &values);
        let is_told = |told: &Told| {
            matches!(told, Told::Quantity { text, way: Some(way), .. }
                if text.starts_with("S = ") && way.sense == Sense::Reverse)
        };
        assert_eq!(
            lines.iter().filter(|told| is_told(told)).count(),
            1,
            "{lines:#?}"
        );
    }
}

/// Forces that are named in a refusal are those that act: a rope that pulls at two places, a push
/// with its friction, two forces alone, one that is nothing.
#[test]
fn a_refused_triangle_names_the_forces_that_act() {
    for (name, why) in [
        (
            "worked/pulley",
            "W, F, T (at 2 places) and H act on the body",
        ),
        (
            "boards/incline_slip",
            "only two forces act on the body, W and N with its friction, and they",
        ),
        ("cases/es-piecewise-load", "RB turns out to be 0 N"),
        (
            "workings/arm_balanced",
            "Wb and U add up to no single force",
        ),
        (
            "workings/lever_slanted",
            "only where they are level or upright, and P and Q slant; take another method",
        ),
        (
            "workings/hook_limit",
            "the three lines meet where H acts, so they do not tell its direction",
        ),
        (
            "boards/topple",
            "the floor pushes along a width, and it is worked here for forces that act at one point",
        ),
        (
            "boards/ladder",
            "d is sought, and this working by the triangle of forces starts from it",
        ),
    ] {
        let system = named(name);
        let values = settle(&system).unwrap().values;
        let trouble = derive(&system, &values, Method::Triangle, None).unwrap_err();
        assert!(trouble.to_string().contains(why), "{name}: {trouble}");
    }
}

/// Every problem that is filed: its triangle, where it has one, gives what the solver gives.
#[test]
fn verif_every_filed_triangle_agrees() {
    let folders = ["boards", "cases", "general", "worked", "workings"];
    let (mut worked, mut by_condition) = (0, 0);
    for (name, system) in filed(&folders) {
        for values in settings(&system) {
            let Ok(mut working) = derive(&system, &values, Method::Triangle, None) else {
                continue;
            };
            let solution = solve_system(&system, &values, system.gravity()).unwrap();
            let sought = system.parts().sought.as_ref().map(|sought| sought.given);
            if let (Some(given), Some(found)) = (sought, working.find(Meaning::Sought)) {
                let found = working.value(found, &values, system.gravity()).unwrap();
                let off = (found - values[given.0]).abs();
                assert!(off < 1e-6 * values[given.0].abs(), "{name}: {found}");
            }
            let twice = twice_told(&system, &working, &values);
            assert!(twice.is_none(), "{name}: {twice:?}");
            for (index, named) in working.quantities.iter().enumerate() {
                let value = working.value(Quantity(index), &values, system.gravity());
                if let Meaning::Direction(act) = named.meaning {
                    let force = solution.reaction(act).unwrap().force;
                    let off = value.unwrap() - force.y.abs().atan2(force.x.abs());
                    assert!(off.abs() < 1e-6, "{name}: {}", named.symbol);
                }
            }
            by_condition += usize::from(!working.conditions.is_empty());
            for named in &mut working.quantities {
                // Unknowns of the balances stand unused; a size that the condition tells is told with
                // the sign of its force.
                if matches!(named.rule, Rule::Solved(_)) {
                    named.rule = Rule::Formula(Formula::Number(0.0));
                    named.meaning = Meaning::Sum;
                }
            }
            for id in working.conditions.clone() {
                working.quantities[id.0].meaning = Meaning::Sum;
            }
            let compared = compare_at(&system, &working, &solution, &values);
            assert!(compared.is_ok(), "{name}: {compared:?}");
            worked += 1;
        }
    }
    assert!(worked >= 40 && by_condition >= 8, "{worked} {by_condition}");
}

/// A quantity that is told with its formula more than once.
fn twice_told(system: &System, working: &Working, values: &[f64]) -> Option<String> {
    let texts = told(system, working, values).into_iter();
    let texts = texts.filter_map(|line| match line {
        Told::Quantity { text, .. } | Told::Angle { text, .. } => Some(text),
        _ => None,
    });
    let mut texts: Vec<String> = texts
        .filter(|text| text.matches(" = ").count() > 1)
        .collect();
    texts.sort();
    let twice = texts.windows(2).find(|pair| pair[0] == pair[1]);
    twice.map(|pair| pair[0].clone())
}

/// The place of a hold by its name.
fn at(system: &System, symbol: &str) -> Spot {
    let acts = system.acts();
    let act = acts.iter().find(|act| act.symbol.matches(symbol));
    act.and_then(|act| act.on.first()).unwrap().at.clone()
}

fn about(system: &System, symbol: &str) -> Result<Working, Underivable> {
    let values = settle(system).unwrap().values;
    derive(
        system,
        &values,
        Method::Components,
        Some(&at(system, symbol)),
    )
}

/// About the right rest 490 N·(5 m − 2 m) = Ay·5 m: the moments say nothing of B, and they give Ay,
/// which is asked as all is. Where B alone is asked they do not help, and where they have two
/// unknowns of a hinge neither.
#[test]
fn val_a_pivot_on_the_line_of_an_unknown_gives_another_that_is_asked() {
    let path = format!(
        "{}/tests/workings/beam_on_two.json",
        env!("CARGO_MANIFEST_DIR")
    );
    let text = std::fs::read_to_string(path).unwrap();
    let asking = |asked: &str| {
        let asked = format!("\"system\": {{ \"asked\": [{asked}],");
        parse_system(&text.replacen("\"system\": {", &asked, 1)).unwrap()
    };
    for system in [
        parse_system(&text).unwrap(),
        asking("\"A\""),
        asking("\"B\", \"A\""),
        asking("{\"vertical\": \"A\"}"),
    ] {
        let working = about(&system, "B").unwrap();
        let first = &working.stages[0];
        assert_eq!(first.balances[0].kind, Kind::Moments(at(&system, "B")));
        let up = working.value(first.unknowns[0], &system.values(), system.gravity());
        assert!((up.unwrap() - 294.0).abs() < 1e-9, "{up:?}");
        let force = working.find(Meaning::Force(ActId::Hold(1))).unwrap();
        let force = working.value(force, &system.values(), system.gravity());
        assert!((force.unwrap() - 196.0).abs() < 1e-9, "{force:?}");
    }
    for system in [asking("\"B\""), asking("{\"horizontal\": \"A\"}")] {
        let why = about(&system, "B").unwrap_err();
        let wanted = "the pivot lies on the line of B, so moments about it say nothing of B";
        assert!(why.to_string().starts_with(wanted), "{why}");
    }
    let lessons = leverwright::lesson::built_in();
    let lesson = lessons.iter().find(|lesson| lesson.id() == "mast").unwrap();
    let problem = leverwright::draw::draw(lesson, 7, "en").unwrap().problem;
    let mast = System::of(&problem);
    let why = about(&mast, mast.parts().cords[0].symbol.as_str()).unwrap_err();
    assert_eq!(why.code(), "pivot-on-line");
}
