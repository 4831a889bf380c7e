//! Diagrams from outside: how they look, and what must hold for every one.

mod general;
mod problems;

use leverwright::problem::{ForceId, Place, Problem, Side};
use leverwright::sketch::{
    AngleMark, ComponentMark, DistanceMark, ForceMark, Ink, Legs, Marks, Picture, Shape, Stage,
    Style, TriangleMark, picture, scene, tell, told_words,
};
use leverwright::text::Words;
use problems::{boom, level_oblique, level_upright, mast, plank};

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
    for force in &forces {
        let label = force.symbol.shown();
        let at_pivot = problem.distance(force.at, &values) == 0.0;
        marks.forces.push(ForceMark {
            force: force.id,
            label: label.clone(),
            direction: None,
        });
        if at_pivot {
            continue;
        }
        if stage == Stage::Angles {
            marks.angles.push(AngleMark {
                force: force.id,
                label: "θ".to_owned(),
                size: None,
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

/// All five drawings of a problem, one below the other.
fn album(problem: &Problem, columns: u16, rows: u16, unicode: bool) -> String {
    let mut text = String::new();
    for stage in STAGES {
        let picture = drawn(problem, &all_marks(problem, stage), columns, rows, unicode);
        text.push_str(&format!("== {stage:?}\n{}\n", told(&picture)));
    }
    text
}

#[test]
fn pictures_of_a_level_beam_with_an_upright_rope() {
    insta::assert_snapshot!("upright_48x22", album(&level_upright(), 48, 22, true));
    insta::assert_snapshot!("upright_60x18", album(&level_upright(), 60, 18, true));
}

#[test]
fn pictures_of_a_level_beam_with_an_oblique_rope() {
    insta::assert_snapshot!("oblique_48x22", album(&level_oblique(), 48, 22, true));
    insta::assert_snapshot!("oblique_60x18", album(&level_oblique(), 60, 18, true));
}

#[test]
fn pictures_of_a_steep_mast() {
    let problem = mast(60.0, Side::Right);
    insta::assert_snapshot!("mast_48x22", album(&problem, 48, 22, true));
    insta::assert_snapshot!("mast_60x18", album(&problem, 60, 18, true));
}

#[test]
fn pictures_of_a_mast_that_leans_left() {
    let problem = mast(35.0, Side::Left);
    insta::assert_snapshot!("mast_left_48x22", album(&problem, 48, 22, true));
    insta::assert_snapshot!("mast_left_60x18", album(&problem, 60, 18, true));
}

#[test]
fn pictures_of_a_boom_and_a_plank() {
    let problem = boom(40.0, 30.0, Side::Right);
    insta::assert_snapshot!("boom_60x24", album(&problem, 60, 24, true));
    insta::assert_snapshot!("plank_60x18", album(&plank(), 60, 18, true));
}

#[test]
fn pictures_without_unicode() {
    let problem = mast(35.0, Side::Left);
    insta::assert_snapshot!("ascii_mast_left_48x22", album(&problem, 48, 22, false));
    insta::assert_snapshot!("ascii_plank_60x18", album(&plank(), 60, 18, false));
}

#[test]
fn pictures_on_a_very_small_screen() {
    insta::assert_snapshot!("small_upright_30x10", album(&level_upright(), 30, 10, true));
}

fn lit(force: ForceId) -> TriangleMark {
    TriangleMark {
        force,
        legs: Legs::Body,
        along: String::new(),
        across: "W1⊥ ?".to_owned(),
        angle: "α".to_owned(),
    }
}

/// A hint lights the triangle at a load, and the hinge's direction has been found.
#[test]
fn picture_of_a_lit_triangle_and_a_found_hinge() {
    let problem = mast(50.0, Side::Right);
    let mut marks = all_marks(&problem, Stage::Angles);
    marks.triangle = Some(lit(ForceId::Load(0)));
    for mark in &mut marks.forces {
        if mark.force == ForceId::Support(0) {
            mark.direction = Some(0.9);
            mark.label = "H = 512 N".to_owned();
        }
    }
    insta::assert_snapshot!("lit_60x24", told(&drawn(&problem, &marks, 60, 24, true)));
}

/// A cell is taken to be twice as high as wide, so the body's slope on the grid is its tilt.
#[test]
fn verif_angles_look_right() {
    for side in [Side::Left, Side::Right] {
        for degrees in [10.0_f64, 20.0, 35.0, 50.0, 65.0, 80.0] {
            let problem = mast(degrees, side);
            let marks = all_marks(&problem, Stage::Forces);
            let picture = drawn(&problem, &marks, 140, 45, true);
            let mut cells = Vec::new();
            for row in 0..picture.rows {
                for column in 0..picture.columns {
                    if picture.cell(column, row).ink == Ink::Body {
                        cells.push((f64::from(column) / 2.0, -f64::from(row)));
                    }
                }
            }
            let seen = slope(&cells);
            let meant = match side {
                Side::Right => degrees,
                Side::Left => 180.0 - degrees,
            };
            assert!((seen - meant).abs() < 1.5, "{degrees} {side:?}: {seen}");
        }
    }
}

/// The direction in which points are spread most, in degrees from 0 to 180 (the principal axis
/// of their second moments).
fn slope(points: &[(f64, f64)]) -> f64 {
    let count = points.len() as f64;
    let x = points.iter().map(|point| point.0).sum::<f64>() / count;
    let y = points.iter().map(|point| point.1).sum::<f64>() / count;
    let moment = |one: fn(f64, f64) -> f64| -> f64 {
        points
            .iter()
            .map(|point| one(point.0 - x, point.1 - y))
            .sum()
    };
    let (xx, yy, xy) = (
        moment(|x, _| x * x),
        moment(|_, y| y * y),
        moment(|x, y| x * y),
    );
    (2.0 * xy).atan2(xx - yy).to_degrees().rem_euclid(360.0) / 2.0
}

/// Nothing stands in the drawing that the marks do not name.
#[test]
fn verif_the_drawing_never_runs_ahead() {
    let problem = mast(60.0, Side::Right);
    let values = problem.values();
    for stage in [
        Stage::Forces,
        Stage::Angles,
        Stage::Components,
        Stage::Turning,
    ] {
        let mut marks = Marks {
            stage,
            givens: true,
            ..Marks::default()
        };
        let bare = scene(&problem, &values, &marks);
        assert_eq!(bare.labels.len(), 0, "{stage:?}");
        assert_eq!(bare.strokes.len(), 1, "{stage:?}: only the body");
        marks.forces.push(ForceMark {
            force: ForceId::Load(1),
            label: "W2".to_owned(),
            direction: None,
        });
        let named = scene(&problem, &values, &marks);
        let arrows = (named.strokes.iter())
            .filter(|stroke| matches!(stroke.shape, Shape::Arrow { .. }))
            .count();
        assert_eq!((arrows, named.labels.len()), (1, 1), "{stage:?}");
    }
    let silent = scene(&problem, &values, &Marks::default());
    assert_eq!(silent.labels, []);
}

/// A hinge force that is named but not found shows no direction.
#[test]
fn verif_an_unfound_hinge_is_a_stub() {
    let problem = level_upright();
    let mut marks = Marks {
        stage: Stage::Forces,
        ..Marks::default()
    };
    marks.forces.push(ForceMark {
        force: ForceId::Support(0),
        label: "H".to_owned(),
        direction: None,
    });
    let scene = scene(&problem, &problem.values(), &marks);
    assert_eq!(scene.labels[0].text, "H ?");
    assert!(
        !scene
            .strokes
            .iter()
            .any(|stroke| matches!(stroke.shape, Shape::Arrow { .. }))
    );
}

#[test]
fn the_diagram_is_told_in_sentences() {
    let words = Words::english();
    let mut text = String::new();
    for (problem, stage) in [
        (mast(60.0, Side::Right), Stage::Scene),
        (mast(60.0, Side::Right), Stage::Components),
        (level_upright(), Stage::Turning),
        (plank(), Stage::Scene),
    ] {
        let mut marks = all_marks(&problem, stage);
        if stage == Stage::Components {
            marks.triangle = Some(lit(ForceId::Load(0)));
        }
        let told = tell(&problem, &problem.values(), &marks);
        for sentence in told_words(&told, &words) {
            text.push_str(&format!("{sentence}\n"));
        }
        text.push('\n');
    }
    assert!(!text.contains(['[', '{']), "{text}");
    insta::assert_snapshot!("told", text);
}
