//! Values of a given for which something just happens, held against closed forms.

mod scene;

use leverwright::problem::{GivenId, Reference, Side, Upright};
use leverwright::statics::{Root, Unsolvable, roots};
use leverwright::system::{
    ActId, Bearing, BodyId, Coordinate, Friction, HoldKind, LoadKind, Spot, System, Turning, When,
};
use leverwright::units::Dimension;
use proptest::prelude::*;
use scene::{G, Scene};
use std::f64::consts::{FRAC_PI_2, PI};

/// How near a simple root must lie, as a part of the value.
const NEAR: f64 = 1e-9;
/// A double root is flat: a part of 1e-16 in what vanishes is 1e-8 in the value.
const NEAR_DOUBLE: f64 = 1e-6;

fn found(system: &System) -> Vec<Root> {
    roots(system, G).unwrap_or_else(|trouble| panic!("{trouble}"))
}

/// One root, at this value, where everything holds.
fn only(system: &System, value: f64) {
    let found = found(system);
    let told: Vec<f64> = found.iter().map(|root| root.value).collect();
    assert_eq!(told.len(), 1, "{told:?} for {value}");
    assert!(
        (told[0] - value).abs() <= NEAR * value,
        "{told:?} for {value}"
    );
    assert!(found[0].solution.is_ok(), "{:?}", found[0].solution);
}

const LADDER: (f64, f64, f64) = (5.0, 18.0, 74.0);

/// A ladder of 5 m and 18 kg against a wall, with a climber of 74 kg at a distance along it. The
/// floor is rough up to a coefficient, or as needed.
fn ladder(angle: f64, floor: Friction, wall: Option<f64>, climber_m: Option<f64>) -> Scene {
    let mut scene = Scene::new();
    let (length, own, climber) = LADDER;
    let (length, slope) = (scene.length("L", length), scene.angle("θ", angle));
    let ladder = scene.body(
        Bearing::Oblique {
            angle: slope,
            from: Reference::Horizontal,
            upright: Upright::Up,
            side: Side::Right,
        },
        length,
    );
    scene.weight("W", ladder, Scene::middle(ladder), own);
    if let Some(distance) = climber_m {
        let at = scene.length("d", distance);
        scene.weight("W_1", ladder, Scene::at(ladder, at), climber);
    }
    scene.hold(
        "N",
        ladder,
        Scene::foot(ladder),
        HoldKind::Rough {
            push: Bearing::Up,
            friction: floor,
        },
    );
    // The wall stands to the right of the ladder's tip.
    let push = Bearing::Level(Side::Left);
    let kind = match wall {
        None => HoldKind::Push(push),
        Some(coefficient) => HoldKind::Rough {
            push,
            friction: Friction::Limiting {
                coefficient: scene.number("μ_2", coefficient),
                bearing: Bearing::Up,
            },
        },
    };
    scene.hold("N_2", ladder, Scene::tip(ladder), kind);
    scene
}

const FLOOR: ActId = ActId::Hold(0);

fn slips(scene: &mut Scene, coefficient: f64) -> When {
    When::Slips {
        act: FLOOR,
        coefficient: scene.number("μ", coefficient),
    }
}

/// Moments about the foot, with the wall's push equal to friction μ (m + M) g:
/// μ (m + M) g L sin θ = m g (L/2) cos θ + M g d cos θ. Common textbook ladder, solved by hand for d:
/// d = (L/M) (μ (m + M) tan θ − m/2).
#[test]
fn val_how_far_a_climber_gets_before_the_ladder_slips() {
    let (length, own, climber) = LADDER;
    for (angle_deg, coefficient) in [(60.0_f64, 0.3), (65.0, 0.35), (50.0, 0.55), (70.0, 0.2)] {
        let angle = angle_deg.to_radians();
        let mut scene = ladder(angle, Friction::AsNeeded, None, Some(1.0));
        let when = slips(&mut scene, coefficient);
        let system = scene.seek("d", 0.01, 5.0, when);
        let held = coefficient * (own + climber) * angle.tan();
        only(&system, length / climber * (held - own / 2.0));
    }
}

/// The same equation solved for μ: μ = (m/2 + M d/L) ÷ ((m + M) tan θ).
#[test]
fn val_the_coefficient_that_a_climber_needs() {
    let (length, own, climber) = LADDER;
    for (angle_deg, distance) in [(60.0_f64, 4.0), (75.0, 5.0), (52.0, 1.25)] {
        let angle = angle_deg.to_radians();
        let mut scene = ladder(angle, Friction::AsNeeded, None, Some(distance));
        let when = slips(&mut scene, 0.4);
        let system = scene.seek("μ", 0.01, 2.0, when);
        let needed = (own / 2.0 + climber * distance / length) / ((own + climber) * angle.tan());
        only(&system, needed);
    }
}

/// No climber, a smooth wall: tan θ = 1 ÷ (2 μ). A rough wall about to slip too:
/// tan θ = (1 − μ_1 μ_2) ÷ (2 μ_1). Both stand in most textbooks of statics (from memory).
#[test]
fn val_the_least_angle_of_a_leaning_ladder() {
    for (floor, wall, tangent) in [
        (0.25_f64, None, 2.0),
        (0.4, None, 1.25),
        (0.4, Some(0.25), 1.125),
        (0.5, Some(0.2), 0.9),
    ] {
        let mut scene = ladder(1.0, Friction::AsNeeded, wall, None);
        let when = slips(&mut scene, floor);
        let system = scene.seek("θ", 0.05, 1.5, when);
        only(&system, f64::atan(tangent));
    }
}

/// A ladder so rough at its foot that the climber reaches the top, and one that slips under its
/// own weight: nobody's place makes it just slip.
#[test]
fn val_no_place_of_the_climber_makes_this_ladder_slip() {
    for (angle_deg, coefficient) in [(70.0_f64, 0.9), (35.0, 0.1)] {
        let mut scene = ladder(angle_deg.to_radians(), Friction::AsNeeded, None, Some(1.0));
        let when = slips(&mut scene, coefficient);
        let system = scene.seek("d", 0.01, 5.0, when);
        let trouble = roots(&system, G).unwrap_err();
        assert_eq!(trouble.code(), "none-in-range", "{trouble}");
        let Unsolvable::NoneInRange { low, high, .. } = trouble else {
            panic!("not told where");
        };
        assert_eq!((low, high), (0.01, 5.0));
    }
}

/// A ladder leaning alone slips at tan θ = 1 ÷ (2 μ) whatever its mass; a plank whose weight stands
/// over one prop leaves the other free whatever it weighs; a load at the hinge turns nothing. None
/// of these masses is an answer.
#[test]
fn val_a_number_without_influence_is_no_answer() {
    let mut leaning = ladder(f64::atan(1.0), Friction::AsNeeded, None, None);
    let when = slips(&mut leaning, 0.5);
    let leaning = leaning.seek("mass_W", 1.0, 100.0, when);
    let on_props = |load: Option<Spot>, when: When, sought: &str| {
        let mut scene = Scene::new();
        let length = scene.length("L", 4.0);
        let body = scene.body(Bearing::Level(Side::Right), length);
        scene.weight("W", body, Scene::middle(body), 20.0);
        if let Some(at) = load {
            scene.weight("W_1", body, at, 10.0);
        }
        let right = match sought {
            "mass_W" => Scene::middle(body),
            _ => Scene::tip(body),
        };
        scene.hold("A", body, Scene::foot(body), HoldKind::Push(Bearing::Up));
        scene.hold("B", body, right, HoldKind::Push(Bearing::Up));
        let when = match when {
            When::Reaches { act, .. } => When::Reaches {
                act,
                limit: scene.force("F", 10.0 * G),
            },
            other => other,
        };
        scene.seek(sought, 1.0, 100.0, when)
    };
    let centred = on_props(None, When::Vanishes(ActId::Hold(0)), "mass_W");
    let reaches = When::Reaches {
        act: ActId::Hold(1),
        limit: GivenId(0),
    };
    let foot = Scene::foot(BodyId(0));
    let at_the_hinge = on_props(Some(foot), reaches, "mass_W_1");
    for (system, name) in [
        (leaning, "massW"),
        (centred, "massW"),
        (at_the_hinge, "massW1"),
    ] {
        let trouble = roots(&system, G).unwrap_err();
        assert_eq!(trouble.code(), "holds-for-every-value", "{trouble}");
        let said = trouble.to_string();
        let all =
            format!("holds for every {name} between 1 kg and 100 kg: {name} has no influence");
        assert!(said.contains(&all), "{said}");
    }
    // A hair beside it one mass is the answer.
    let off = on_props(Some(Scene::tip(BodyId(0))), reaches, "mass_W_1");
    let told = roots(&off, G).unwrap_err();
    assert_eq!(told.code(), "none-in-range", "{told}");
    let mut leaning = ladder(f64::atan(1.0), Friction::AsNeeded, None, None);
    let when = slips(&mut leaning, 0.5 + 1e-6);
    let told = roots(&leaning.seek("mass_W", 1.0, 100.0, when), G).unwrap_err();
    assert_eq!(told.code(), "none-in-range", "{told}");
}

proptest! {
    /// What is found is an answer by itself: a little to either side it does not happen.
    #[test]
    fn verif_what_is_sought_stands_alone(
        angle_deg in 20.0_f64..80.0,
        coefficient in 0.05_f64..1.2,
        distance in 0.1_f64..5.0,
        which in 0_usize..4,
    ) {
        let scene = || ladder(angle_deg.to_radians(), Friction::AsNeeded, None, Some(distance));
        let (name, low, high) = [
            ("d", 0.01, 5.0),
            ("θ", 0.05, 1.5),
            ("mass_W_1", 0.5, 500.0),
            ("mass_W", 0.5, 500.0),
        ][which];
        let mut sought = scene();
        let when = slips(&mut sought, coefficient);
        let system = sought.seek(name, low, high, when);
        let given = system.parts().sought.as_ref().unwrap().given;
        let apart = |value: f64| {
            let mut values = system.values();
            values[given.0] = value;
            let solution = leverwright::statics::solve_system(&system, &values, G).unwrap();
            let (push, friction) = solution.reaction(FLOOR).unwrap().contact.unwrap();
            (friction.abs() - coefficient * push) / push
        };
        match roots(&system, G) {
            Ok(found) => {
                prop_assert!(found.len() <= 2, "{} values", found.len());
                for root in found {
                    prop_assert!(apart(root.value).abs() < 1e-6);
                    for value in [root.value - 1e-3 * (high - low), root.value + 1e-3 * (high - low)] {
                        prop_assert!(apart(value).abs() > 1e-11, "{value} beside {}", root.value);
                    }
                }
            }
            Err(trouble) => prop_assert_eq!(trouble.code(), "none-in-range"),
        }
    }
}

/// A plank of 6 m on props at its foot and at `b`, a walker beyond the second. Moments about the
/// second when the first is free: M (x − b) = m (b − L/2), so x = b + m (b − L/2) ÷ M.
#[test]
fn val_a_plank_tips_under_a_walker() {
    for (plank, walker, second) in [(30.0, 60.0, 4.0), (24.0, 80.0, 4.5), (50.0, 90.0, 3.6)] {
        let mut scene = Scene::new();
        let length = scene.length("L", 6.0);
        let body = scene.body(Bearing::Level(Side::Right), length);
        scene.weight("W", body, Scene::middle(body), plank);
        let place = scene.length("x", 5.0);
        scene.weight("W_1", body, Scene::at(body, place), walker);
        let second_at = scene.length("b", second);
        scene.hold("A", body, Scene::foot(body), HoldKind::Push(Bearing::Up));
        scene.hold(
            "B",
            body,
            Scene::at(body, second_at),
            HoldKind::Push(Bearing::Up),
        );
        let system = scene.seek("x", 0.01, 6.0, When::Vanishes(ActId::Hold(0)));
        only(&system, second + plank * (second - 3.0) / walker);
    }
}

/// A boom at a hinge, a rope from its tip at an angle with it: T L sin φ = (m/2 + M) g L cos θ,
/// so M = T sin φ ÷ (g cos θ) − m/2 at the breaking tension. Common textbook boom, by hand.
#[test]
fn val_the_heaviest_load_of_a_boom_before_its_rope_breaks() {
    for (tilt_deg, rope_deg, breaking) in [
        (20.0_f64, 40.0_f64, 900.0),
        (50.0, 25.0, 600.0),
        (5.0, 90.0, 450.0),
    ] {
        let mut scene = Scene::new();
        let (length, tilt) = (
            scene.length("L", 3.0),
            scene.angle("θ", tilt_deg.to_radians()),
        );
        let boom = scene.body(Bearing::FromAxis { angle: tilt }, length);
        scene.weight("W", boom, Scene::middle(boom), 14.0);
        scene.weight("W_1", boom, Scene::tip(boom), 30.0);
        let load = scene.last_given();
        let angle = scene.angle("φ", rope_deg.to_radians());
        // Above the boom, back to its foot: to the left of one who walks along it.
        let bearing = Bearing::FromLeg {
            angle,
            body: boom,
            leg: 0,
            onward: false,
            left: true,
        };
        scene.rope("T", &[(boom, Scene::tip(boom), bearing)]);
        scene.hold("H", boom, Scene::foot(boom), HoldKind::Hinge);
        let limit = scene.force("T_max", breaking);
        let act = ActId::Cord(0);
        let system = scene.seek_id(load, 0.1, 200.0, When::Reaches { act, limit });
        let (rope, tilt) = (rope_deg.to_radians(), tilt_deg.to_radians());
        only(&system, breaking * rope.sin() / (G * tilt.cos()) - 7.0);
    }
}

/// A lamp on a knot between two equal parts of one rope, each at θ above the horizontal:
/// 2 T sin θ = W, so θ = arcsin(W ÷ 2T).
#[test]
fn val_the_flattest_rope_that_holds_a_lamp() {
    for (mass, breaking) in [(12.0, 100.0), (20.0, 1000.0), (9.0, 51.0)] {
        let mut scene = Scene::new();
        let angle = scene.angle("θ", 0.5);
        let knot = scene.knot();
        scene.weight("W", knot, Spot::Origin, mass);
        let part = |side| {
            (
                knot,
                Spot::Origin,
                Bearing::Oblique {
                    angle,
                    from: Reference::Horizontal,
                    upright: Upright::Up,
                    side,
                },
            )
        };
        scene.rope("T", &[part(Side::Left), part(Side::Right)]);
        let limit = scene.force("T_max", breaking);
        let act = ActId::Cord(0);
        let system = scene.seek("θ", 0.01, 1.5, When::Reaches { act, limit });
        only(&system, f64::asin(mass * G / (2.0 * breaking)));
    }
}

const BLOCK: (f64, f64, f64) = (40.0, 0.5, 0.8);

/// A block of 40 kg, 0.5 m wide, pushed at 0.8 m above the floor.
fn block(force: f64) -> Scene {
    let mut scene = Scene::new();
    let (mass, width, height) = BLOCK;
    let (width, height) = (scene.length("b", width), scene.length("h", height));
    let block = scene.block();
    let above = |factor: f64| Spot::At {
        x: Coordinate::default(),
        y: Coordinate(vec![(factor, height)]),
    };
    scene.weight("W", block, above(0.5), mass);
    let size = scene.force("P", force);
    scene.load(
        "P",
        block,
        LoadKind::Force {
            at: above(1.0),
            size,
            bearing: Bearing::Level(Side::Right),
        },
    );
    scene.hold(
        "N",
        block,
        Spot::Origin,
        HoldKind::Base {
            push: Bearing::Up,
            friction: Friction::AsNeeded,
            width,
        },
    );
    scene
}

/// About to topple the push of the floor stands at the edge: P h = W b/2. About to slip P = μ W.
#[test]
fn val_a_block_topples_or_slips() {
    let (mass, width, height) = BLOCK;
    let weight = mass * G;
    let topples = When::Topples(FLOOR);
    let system = block(50.0).seek("P", 1.0, 500.0, topples);
    only(&system, weight * width / (2.0 * height));
    let system = block(75.0).seek("b", 0.05, 2.0, topples);
    only(&system, 2.0 * 75.0 * height / weight);
    let system = block(75.0).seek("h", 0.05, 5.0, topples);
    only(&system, weight * width / (2.0 * 75.0));
    for coefficient in [0.15, 0.3] {
        let mut scene = block(50.0);
        let when = slips(&mut scene, coefficient);
        let system = scene.seek("P", 1.0, 500.0, when);
        let pushed = found(&system);
        assert_eq!(pushed.len(), 1);
        assert!((pushed[0].value - coefficient * weight).abs() <= NEAR * weight);
        // It slips before it topples where μ < b/(2 h) = 0.3125.
        assert!(pushed[0].solution.is_ok());
    }
    let mut scene = block(50.0);
    let when = slips(&mut scene, 0.5);
    let pushed = found(&scene.seek("P", 1.0, 500.0, when));
    assert!((pushed[0].value - 0.5 * weight).abs() <= NEAR * weight);
    let trouble = pushed[0].solution.as_ref().unwrap_err();
    assert_eq!(trouble.code(), "would-topple");
}

/// A block on a slope slips at tan α = μ and topples at tan α = b/h (its weight then stands over
/// the lower edge).
#[test]
fn val_a_block_on_a_slope() {
    let sloped = || {
        let mut scene = Scene::new();
        let (height, width) = (scene.length("h", 0.9), scene.length("b", 0.6));
        let angle = scene.angle("α", 0.3);
        // The leg stands square to the slope; the slope rises to the right.
        let block = scene.body(
            Bearing::Oblique {
                angle,
                from: Reference::Vertical,
                upright: Upright::Up,
                side: Side::Left,
            },
            height,
        );
        scene.weight("W", block, Scene::middle(block), 25.0);
        let push = Bearing::Along {
            body: block,
            leg: 0,
            onward: true,
        };
        let friction = Friction::AsNeeded;
        scene.hold(
            "N",
            block,
            Scene::foot(block),
            HoldKind::Base {
                push,
                friction,
                width,
            },
        );
        scene
    };
    only(
        &sloped().seek("α", 0.01, 1.5, When::Topples(FLOOR)),
        f64::atan(0.6 / 0.9),
    );
    for coefficient in [0.2, 0.45] {
        let mut scene = sloped();
        let when = slips(&mut scene, coefficient);
        only(&scene.seek("α", 0.01, 1.5, when), f64::atan(coefficient));
    }
}

/// A sledge of 100 N is pulled by P at α above the level: it just slides where
/// P cos α = μ (W − P sin α), so α = arctan μ ± arccos(μ W ÷ (P √(1 + μ²))).
fn sledge(force: f64, coefficient: f64) -> System {
    let mut scene = Scene::new();
    let knot = scene.knot();
    scene.weight("W", knot, Spot::Origin, 100.0 / G);
    let (size, angle) = (scene.force("P", force), scene.angle("α", 0.4));
    scene.load(
        "P",
        knot,
        LoadKind::Force {
            at: Spot::Origin,
            size,
            bearing: Bearing::Oblique {
                angle,
                from: Reference::Horizontal,
                upright: Upright::Up,
                side: Side::Right,
            },
        },
    );
    scene.hold(
        "N",
        knot,
        Spot::Origin,
        HoldKind::Rough {
            push: Bearing::Up,
            friction: Friction::AsNeeded,
        },
    );
    let when = slips(&mut scene, coefficient);
    scene.seek("α", 0.001, FRAC_PI_2 - 0.001, when)
}

/// Two angles, none, and one that only just does: the least pull is μ W ÷ √(1 + μ²), for μ = 3/4
/// three fifths of the weight, at arctan 3/4.
#[test]
fn val_two_angles_none_and_a_double_one() {
    for (force, coefficient) in [(62.0, 0.75_f64), (70.0, 0.75), (30.0, 0.3)] {
        let (middle, root) = (
            f64::atan(coefficient),
            (1.0 + coefficient * coefficient).sqrt(),
        );
        let half = f64::acos(coefficient * 100.0 / (force * root));
        let expected = [middle - half, middle + half];
        let angles: Vec<f64> = found(&sledge(force, coefficient))
            .iter()
            .map(|root| root.value)
            .collect();
        let inside: Vec<f64> = expected
            .into_iter()
            .filter(|angle| (0.001..1.56).contains(angle))
            .collect();
        assert_eq!(angles.len(), inside.len(), "{angles:?} for {inside:?}");
        for (angle, expected) in angles.iter().zip(&inside) {
            assert!((angle - expected).abs() <= NEAR, "{angle} for {expected}");
        }
    }
    assert_eq!(found(&sledge(62.0, 0.75)).len(), 2);
    for force in [59.9, 40.0] {
        assert_eq!(
            roots(&sledge(force, 0.75), G).unwrap_err().code(),
            "none-in-range"
        );
    }
    let double = found(&sledge(60.0, 0.75));
    let values: Vec<f64> = double.iter().map(|root| root.value).collect();
    assert_eq!(values.len(), 1, "{values:?}");
    assert!(
        (values[0] - f64::atan(0.75)).abs() <= NEAR_DOUBLE,
        "{values:?}"
    );
}

/// A couple that lifts a beam off one of its two props: it takes the whole moment of the weight,
/// C = W L/2.
#[test]
fn val_the_couple_that_lifts_a_beam_off_a_prop() {
    let mut scene = Scene::new();
    let length = scene.length("L", 4.0);
    let beam = scene.body(Bearing::Level(Side::Right), length);
    scene.weight("W", beam, Scene::middle(beam), 35.0);
    let size = scene.given("C", 10.0, Dimension::MOMENT);
    scene.load(
        "C",
        beam,
        LoadKind::Couple {
            size,
            turning: Turning::Anticlockwise,
        },
    );
    scene.hold("A", beam, Scene::foot(beam), HoldKind::Push(Bearing::Up));
    scene.hold("B", beam, Scene::tip(beam), HoldKind::Push(Bearing::Up));
    let system = scene.seek("C", 1.0, 5000.0, When::Vanishes(ActId::Hold(1)));
    only(&system, 35.0 * G * 2.0);
}

/// A sign change across a pole is no root: where a strut's line runs through the hinge its force
/// grows without bound and turns its sign, but it never vanishes.
#[test]
fn val_a_pole_is_no_root() {
    let mut scene = Scene::new();
    let length = scene.length("L", 2.0);
    let beam = scene.body(Bearing::Level(Side::Right), length);
    scene.weight("W", beam, Scene::middle(beam), 10.0);
    let angle = scene.angle("α", 3.0);
    scene.hold("H", beam, Scene::foot(beam), HoldKind::Hinge);
    scene.hold(
        "S",
        beam,
        Scene::tip(beam),
        HoldKind::Line(Bearing::FromAxis { angle }),
    );
    let pole = PI;
    let system = scene.seek("α", pole - 1.0, pole + 1.0, When::Vanishes(ActId::Hold(1)));
    assert_eq!(roots(&system, G).unwrap_err().code(), "none-in-range");
    assert_eq!(BodyId(0), beam);
}
