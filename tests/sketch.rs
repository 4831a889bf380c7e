//! Diagrams from outside: how they look, and what must hold for every one.

mod problems;

use leverwright::problem::{Direction, ForceId, Place, Problem, Side};
use leverwright::sketch::{
    AngleMark, ComponentMark, DistanceMark, ForceMark, Marks, Picture, Stage, Style, picture, scene,
};
use problems::{Maker, boom, level_oblique, level_upright, mast, plank};

const STAGES: [Stage; 5] = [
    Stage::Scene,
    Stage::Forces,
    Stage::Angles,
    Stage::Components,
    Stage::Turning,
];

/// Everything that a finished working has named, for a stage.
fn all_marks(problem: &Problem, stage: Stage) -> Marks {
    let forces = problem.forces();
    let values = problem.values();
    let mut marks = Marks {
        stage,
        givens: true,
        ..Marks::default()
    };
    if stage == Stage::Scene {
        return marks;
    }
    marks.pivot = Some(Place::Foot);
    if std::env::var("LIT").is_ok() {
        marks.triangle = Some(ForceId::Load(0));
    }
    for force in &forces {
        let label = force.symbol.shown();
        let at_pivot = problem.distance(force.at, &values) == 0.0;
        marks.forces.push(ForceMark {
            force: force.id,
            label: label.clone(),
            direction: (std::env::var("HINGE").is_ok() && at_pivot).then_some(1.0),
        });
        if at_pivot {
            continue;
        }
        if stage == Stage::Angles {
            marks.angles.push(AngleMark {
                force: force.id,
                label: "θ".to_owned(),
            });
        }
        if matches!(stage, Stage::Components | Stage::Turning) {
            marks.components.push(ComponentMark {
                force: force.id,
                label: format!("{label}⊥"),
            });
        }
        if stage == Stage::Turning {
            marks.distances.push(DistanceMark {
                force: force.id,
                label: format!("{:.2} m", problem.distance(force.at, &values)),
            });
        }
    }
    marks
}

fn drawn(problem: &Problem, marks: &Marks, columns: u16, rows: u16, unicode: bool) -> Picture {
    let scene = scene(problem, &problem.values(), marks);
    picture(&scene, columns, rows, Style { unicode })
}

fn told(picture: &Picture) -> String {
    let mut text = picture.lines().join("\n");
    for entry in &picture.legend {
        text.push_str(&format!("\n[{}] {}", entry.mark, entry.text));
    }
    text
}

#[test]
fn show() {
    let _ = (Direction::Up, ForceId::OwnWeight, Maker::new("x", 1.0));
    let wanted = std::env::var("SHOW").unwrap_or_default();
    let problems: Vec<(&str, Problem)> = vec![
        ("upright", level_upright()),
        ("oblique", level_oblique()),
        ("mast60", mast(60.0, Side::Right)),
        ("mast35left", mast(35.0, Side::Left)),
        ("mast15", mast(15.0, Side::Right)),
        ("mast78", mast(78.0, Side::Right)),
        ("plank", plank()),
        ("boomA", boom(40.0, 30.0, Side::Right)),
        ("boomB", boom(65.0, 110.0, Side::Left)),
    ];
    let columns: u16 = std::env::var("COLS").map_or(48, |c| c.parse().unwrap());
    let rows: u16 = std::env::var("ROWS").map_or(22, |c| c.parse().unwrap());
    let ascii = std::env::var("ASCII").is_ok();
    for (name, problem) in problems {
        for stage in STAGES {
            if wanted.is_empty() || wanted.contains(name) {
                let shown = drawn(&problem, &all_marks(&problem, stage), columns, rows, !ascii);
                println!("--- {name} {stage:?} {columns}x{rows}\n{}", told(&shown));
            }
        }
    }
}
