//! What must hold for every picture, whatever the problem, the marks and the size.

#![allow(clippy::unwrap_used)]

use super::flaws::{Flaw, flaws};
use super::letters::shown;
use super::{
    AngleMark, ComponentMark, DistanceMark, ForceMark, Ink, Legs, Line, Marks, Picture, Scene,
    Shape, Spot, Stage, Stroke, Style, TriangleMark, picture, scene,
};
use crate::plane::Vector;
use crate::problem::{
    Body, Direction, ForceId, Given, GivenId, Load, LoadKind, Parts, Place, Problem, Reference,
    Rope, Side, Support, SupportKind, Tilt, Upright,
};
use crate::text::Symbol;
use crate::units::Dimension;
use proptest::prelude::*;

const SIZES: [(u16, u16); 6] = [(30, 10), (38, 14), (48, 20), (60, 24), (90, 36), (140, 45)];

#[derive(Clone, Debug)]
struct Choice {
    tilt: Option<(f64, bool)>,
    left: bool,
    support: u8,
    own: bool,
    ropes: Vec<(u8, u8, f64)>,
    loads: Vec<(u8, u8, f64)>,
}

fn choices() -> impl Strategy<Value = Choice> {
    let part = || (0..6u8, 0..6u8, 10.0..80.0f64);
    (
        prop::option::of((10.0..80.0f64, any::<bool>())),
        any::<bool>(),
        0..3u8,
        any::<bool>(),
        prop::collection::vec(part(), 0..3),
        prop::collection::vec(part(), 0..4),
    )
        .prop_map(|(tilt, left, support, own, ropes, loads)| Choice {
            tilt,
            left,
            support,
            own,
            ropes,
            loads,
        })
}

fn given(parts: &mut Parts, symbol: String, value: f64, unit: &str, kind: Dimension) -> GivenId {
    let written = if unit == "°" {
        format!("{value:.0}°")
    } else {
        format!("{value:.1} {unit}")
    };
    let value = if unit == "°" {
        value.to_radians()
    } else {
        value
    };
    parts.givens.push(Given {
        symbol: Symbol::new(symbol),
        meaning: "test".into(),
        value,
        written,
        dimension: kind,
    });
    GivenId(parts.givens.len() - 1)
}

fn place(parts: &mut Parts, which: u8, name: &str, part: f64) -> Place {
    match which {
        0 | 1 => Place::Tip,
        2 => Place::Middle,
        3 => Place::Fraction { over: 2, under: 3 },
        _ => {
            let symbol = format!("d_{name}");
            Place::At(given(parts, symbol, part / 20.0, "m", Dimension::LENGTH))
        }
    }
}

fn direction(parts: &mut Parts, which: u8, name: &str, angle: f64) -> Direction {
    let side = if which.is_multiple_of(2) {
        Side::Left
    } else {
        Side::Right
    };
    match which {
        0 => Direction::Up,
        1 | 2 => Direction::Level(side),
        3 => Direction::FromBody {
            angle: given(
                parts,
                format!("γ_{name}"),
                angle * 2.0,
                "°",
                Dimension::ANGLE,
            ),
        },
        _ => Direction::Oblique {
            angle: given(parts, format!("φ_{name}"), angle, "°", Dimension::ANGLE),
            from: Reference::Horizontal,
            upright: Upright::Up,
            side,
        },
    }
}

fn problem(choice: &Choice) -> Problem {
    let mut parts = Parts {
        title: String::new(),
        statement: String::new(),
        caution: String::new(),
        givens: Vec::new(),
        body: Body {
            noun: "beam".into(),
            length: GivenId(0),
            mass: None,
            weight_symbol: Symbol::new("W_b"),
            centre: Place::Middle,
            tilt: Tilt::Level,
            towards: if choice.left { Side::Left } else { Side::Right },
        },
        supports: Vec::new(),
        ropes: Vec::new(),
        loads: Vec::new(),
        gravity: 9.8,
        accepted_gravity: Vec::new(),
        figures: 3,
    };
    given(&mut parts, "L".into(), 4.0, "m", Dimension::LENGTH);
    if let Some((angle, vertical)) = choice.tilt {
        let angle = given(&mut parts, "θ".into(), angle, "°", Dimension::ANGLE);
        let from = if vertical {
            Reference::Vertical
        } else {
            Reference::Horizontal
        };
        parts.body.tilt = Tilt::Rising { angle, from };
    }
    let kinds = [
        SupportKind::Hinge,
        SupportKind::BuiltIn,
        SupportKind::Roller(Direction::Up),
    ];
    parts.supports.push(Support {
        symbol: Symbol::new("H"),
        noun: "hinge".into(),
        at: Place::Foot,
        kind: kinds[usize::from(choice.support)],
    });
    if choice.own {
        let mass = given(&mut parts, "m_b".into(), 20.0, "kg", Dimension::MASS);
        parts.body.mass = Some(mass);
    }
    for (index, (where_at, which, angle)) in choice.ropes.iter().enumerate() {
        let name = format!("r{index}");
        let at = place(&mut parts, *where_at, &name, *angle);
        let direction = direction(&mut parts, *which, &name, *angle);
        parts.ropes.push(Rope {
            symbol: Symbol::new(format!("T_{index}")),
            noun: "rope".into(),
            at,
            direction,
        });
    }
    for (index, (where_at, which, angle)) in choice.loads.iter().enumerate() {
        let name = format!("l{index}");
        let at = place(&mut parts, *where_at, &name, *angle);
        let kind = if *which < 4 {
            let symbol = format!("m_{index}");
            LoadKind::Mass(given(&mut parts, symbol, *angle, "kg", Dimension::MASS))
        } else {
            let symbol = format!("P_{index}");
            LoadKind::Force {
                size: given(&mut parts, symbol, *angle, "N", Dimension::FORCE),
                direction: direction(&mut parts, *which, &name, *angle),
            }
        };
        parts.loads.push(Load {
            symbol: Symbol::new(format!("W_{index}")),
            noun: "lamp".into(),
            at,
            kind,
            stands: *which == 3,
        });
    }
    Problem::new(parts).unwrap()
}

fn marks(problem: &Problem, stage: Stage, bits: u64, found: Option<f64>) -> Marks {
    let mut marks = Marks {
        stage,
        givens: bits & 1 == 0,
        pivot: (bits & 2 == 0).then_some(Place::Foot),
        site: bits & 16 == 0,
        triangle: (bits & 12 == 0).then(|| lit(ForceId::OwnWeight)),
        ..Marks::default()
    };
    for (index, force) in problem.forces().iter().enumerate() {
        let bits = bits >> (4 + 4 * index);
        let name = force.symbol.shown();
        let value = if bits & 8 == 0 { " = 118 N" } else { "" };
        marks.forces.push(ForceMark {
            force: force.id,
            label: format!("{name}{value}"),
            direction: found.filter(|_| matches!(force.id, ForceId::Support(_))),
        });
        if bits & 1 == 0 {
            let label = format!("α{index}");
            marks.angles.push(AngleMark {
                force: force.id,
                label,
                size: None,
            });
        }
        if bits & 2 == 0 {
            let label = format!("{name}⊥{value}");
            marks.components.push(ComponentMark {
                force: force.id,
                label,
            });
        }
        if bits & 4 == 0 {
            let label = format!("a{index} = 2.4 m");
            marks.distances.push(DistanceMark {
                force: force.id,
                label,
            });
        }
    }
    marks
}

fn lit(force: ForceId) -> TriangleMark {
    TriangleMark {
        force,
        legs: Legs::Body,
        along: String::new(),
        across: "W⊥ ?".into(),
        angle: "α".into(),
    }
}

/// Labels that the marks ask for at their stage.
fn demanded(marks: &Marks) -> Vec<String> {
    let mut labels = Vec::new();
    // A triangle is drawn alone, where the force has one.
    if marks.triangle.is_some() {
        return labels;
    }
    if marks.stage == Stage::Scene {
        return labels;
    }
    let whole = (marks.forces.iter()).filter(|mark| !marks.is_replaced(mark.force));
    labels.extend(whole.map(|mark| mark.label.clone()));
    if matches!(marks.stage, Stage::Angles | Stage::Components) {
        labels.extend(marks.angles.iter().map(|mark| mark.label.clone()));
    }
    if matches!(marks.stage, Stage::Components | Stage::Turning) {
        labels.extend(marks.components.iter().map(|mark| mark.label.clone()));
    }
    labels.extend(marks.distances.iter().map(|mark| mark.label.clone()));
    labels
}

/// Every fault of a picture.
fn faults(scene: &Scene, marks: &Marks, picture: &Picture, unicode: bool) -> Vec<String> {
    // Several loads at one place of a small grid leave no room for more.
    let hard = |flaw: &Flaw| match flaw {
        Flaw::CoversLine(_) | Flaw::Ambiguous(..) | Flaw::Across(_) | Flaw::Merged(..) => false,
        // Any number of arrows may meet in these problems, which no lesson draws.
        Flaw::StandsIn(..) | Flaw::Crossed(..) | Flaw::Twice(..) => false,
        Flaw::Headless(..) | Flaw::Apart(..) => picture.columns > 40,
        _ => true,
    };
    let mut faults: Vec<String> = flaws(scene, picture, unicode)
        .iter()
        .filter(|flaw| hard(flaw))
        .map(|flaw| format!("{flaw:?}"))
        .collect();
    for wanted in demanded(marks) {
        let wanted = shown(&wanted, unicode);
        let told = (picture.labels.iter().map(|label| &label.text))
            .chain(picture.legend.iter().map(|entry| &entry.text))
            .any(|text| *text == wanted || *text == format!("{wanted} ?"));
        if !told {
            faults.push(format!("{wanted} is lost"));
        }
    }
    faults
}

const STAGES: [Stage; 5] = [
    Stage::Scene,
    Stage::Forces,
    Stage::Angles,
    Stage::Components,
    Stage::Turning,
];

/// A level body with one arrow: the point at which it acts, its tail and its head, in steps.
fn with_arrow(acts: f64, from: (f64, f64), to: (f64, f64)) -> Scene {
    let spot = |x: f64| Spot::at(Vector::new(x, 0.0));
    let shifted = |(x, y): (f64, f64)| spot(acts).moved(Vector::new(x, y));
    let stroke = |ink, shape| Stroke { ink, shape };
    let body = Shape::Line {
        from: spot(0.0),
        to: spot(4.0),
        line: Line::Heavy,
    };
    let arrow = Shape::Arrow {
        acts: spot(acts),
        from: shifted(from),
        to: shifted(to),
        line: Line::Solid,
    };
    let ring = Shape::Ring(spot(acts));
    let parts = [(Ink::Body, body), (Ink::Load, arrow), (Ink::Pivot, ring)];
    Scene {
        strokes: parts.map(|(ink, shape)| stroke(ink, shape)).to_vec(),
        labels: Vec::new(),
    }
}

fn flaws_of(scene: &Scene) -> Vec<Flaw> {
    let picture = picture(scene, 48, 16, Style { unicode: true });
    flaws(scene, &picture, true)
}

#[test]
fn an_arrow_off_its_point_is_a_flaw() {
    let off = flaws_of(&with_arrow(2.0, (2.0, 0.0), (2.0, -4.0)));
    assert!(matches!(off[..], [Flaw::Apart(Ink::Load, _)]), "{off:?}");
    let at = flaws_of(&with_arrow(2.0, (0.0, 0.0), (0.0, -4.0)));
    assert!(at.is_empty(), "{at:?}");
}

#[test]
fn a_head_that_would_lie_under_the_mark_of_its_point_stands_beside_it() {
    let scene = with_arrow(2.0, (0.0, 4.0), (0.0, 0.0));
    assert_eq!(flaws_of(&scene), []);
    let lines = picture(&scene, 48, 16, Style { unicode: true }).lines();
    let column = |row: &String, sign: char| row.chars().position(|glyph| glyph == sign);
    let mark = lines.iter().position(|row| row.contains('◎')).unwrap();
    assert_eq!(
        column(&lines[mark - 1], '▼'),
        column(&lines[mark], '◎'),
        "{lines:?}"
    );
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 96,
        rng_seed: proptest::test_runner::RngSeed::Fixed(5),
        ..ProptestConfig::default()
    })]

    #[test]
    fn verif_no_label_covers_anything_and_none_is_lost(
        choice in choices(),
        bits in any::<u64>(),
        found in prop::option::of(-3.2..3.2f64),
        unicode in any::<bool>(),
    ) {
        let problem = problem(&choice);
        for stage in STAGES {
            let marks = marks(&problem, stage, bits, found);
            let scene = scene(&problem, &problem.values(), &marks);
            for (columns, rows) in SIZES {
                let picture = picture(&scene, columns, rows, Style { unicode });
                let faults = faults(&scene, &marks, &picture, unicode);
                prop_assert!(
                    faults.is_empty(),
                    "{stage:?} {columns}x{rows}: {faults:?}\n{}",
                    picture.lines().join("\n")
                );
                let ascii = picture.lines().iter().all(|line| line.is_ascii());
                prop_assert!(unicode || ascii);
            }
        }
    }

    #[test]
    fn verif_an_arc_shows_the_angle_that_its_label_comes_nearer_to(
        choice in choices(),
        size in 0.1..3.0f64,
    ) {
        let problem = problem(&choice);
        for force in problem.forces() {
            let marks = Marks {
                stage: Stage::Angles,
                angles: vec![AngleMark { force: force.id, label: "γ".into(), size: Some(size) }],
                ..Marks::default()
            };
            let scene = scene(&problem, &problem.values(), &marks);
            for stroke in &scene.strokes {
                if let Shape::Arc { sweep, .. } = stroke.shape {
                    let off = |angle: f64| (angle - size).abs();
                    let other = std::f64::consts::PI - sweep.abs();
                    prop_assert!(off(sweep.abs()) <= off(other) + 1e-6, "{sweep} {size}");
                }
            }
        }
    }

    #[test]
    fn verif_an_angle_that_is_given_too_has_one_label(choice in choices()) {
        let problem = problem(&choice);
        for force in problem.forces() {
            let marks = Marks {
                stage: Stage::Angles,
                given_angles: true,
                forces: vec![ForceMark { force: force.id, label: "T".into(), direction: None }],
                angles: vec![AngleMark { force: force.id, label: "γ".into(), size: None }],
                ..Marks::default()
            };
            let labels = scene(&problem, &problem.values(), &marks).labels;
            let named = labels.iter().find(|label| label.text.starts_with('γ'));
            if let Some(angle) = named.and_then(|label| label.angle) {
                let same = labels.iter().filter(|other| other.angle == Some(angle));
                prop_assert_eq!(same.count(), 1);
            }
        }
    }

    #[test]
    fn verif_no_size_and_no_value_breaks_a_picture(
        choice in choices(),
        columns in 0..70u16,
        rows in 0..30u16,
        spoilt in prop::sample::select(vec![
            f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 0.0, -1.0, 1e300, 1e-300, f64::MAX,
        ]),
        which in 0..8usize,
    ) {
        let problem = problem(&choice);
        for stage in STAGES {
            let marks = marks(&problem, stage, 0, Some(spoilt));
            let mut values = problem.values();
            let which = which % values.len();
            values[which] = spoilt;
            let scene = scene(&problem, &values, &marks);
            let picture = picture(&scene, columns, rows, Style { unicode: true });
            prop_assert_eq!(picture.cells.len(), usize::from(columns) * usize::from(rows));
            prop_assert_eq!(picture.lines().len(), usize::from(rows));
        }
    }
}
