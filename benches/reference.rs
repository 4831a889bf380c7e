//! Writes problems drawn from the lessons in the form of tests/reference, for the second solver:
//! `cargo bench --bench reference > tests/reference/lesson_problems.json`.

#![allow(clippy::unwrap_used, clippy::print_stdout, missing_docs)]

use leverwright::draw::{code, draw};
use leverwright::lesson::built_in;
use leverwright::problem::{
    Direction, LoadKind, Place, Problem, Reference, Side, SupportKind, Tilt, Upright,
};
use serde_json::{Value, json};

fn main() {
    let mut problems = Vec::new();
    for lesson in built_in() {
        for seed in 1..=25 {
            let drawn = draw(&lesson, seed, "en").unwrap();
            problems.push(described(&code(&lesson, &drawn.place), &drawn.problem));
        }
    }
    println!("{:#}", json!({ "problems": problems }));
}

fn described(id: &str, problem: &Problem) -> Value {
    let values = problem.values();
    let body = problem.body();
    let tilt = match body.tilt {
        Tilt::Level => json!("level"),
        Tilt::Rising { angle, from } => {
            json!({ "angle_rad": values[angle.0], "from": reference(from) })
        }
    };
    let supports: Vec<Value> = problem
        .supports()
        .iter()
        .map(|support| {
            assert_eq!(support.kind, SupportKind::Hinge, "the lessons have hinges only");
            json!({ "name": support.symbol.as_str(), "kind": "hinge", "at": place(support.at, &values) })
        })
        .collect();
    let ropes: Vec<Value> = problem
        .ropes()
        .iter()
        .map(|rope| {
            json!({
                "name": rope.symbol.as_str(),
                "at": place(rope.at, &values),
                "direction": direction(rope.direction, &values),
            })
        })
        .collect();
    let loads: Vec<Value> = problem
        .loads()
        .iter()
        .map(|load| match load.kind {
            LoadKind::Mass(mass) => {
                json!({ "name": load.symbol.as_str(), "at": place(load.at, &values), "mass": values[mass.0] })
            }
            LoadKind::Force { size, direction: acting } => json!({
                "name": load.symbol.as_str(),
                "at": place(load.at, &values),
                "force": values[size.0],
                "direction": direction(acting, &values),
            }),
        })
        .collect();
    json!({
        "id": id,
        "gravity": problem.gravity(),
        "body": {
            "length": values[body.length.0],
            "tilt": tilt,
            "towards": side(body.towards),
            "mass": body.mass.map(|mass| values[mass.0]),
            "centre": place(body.centre, &values),
        },
        "supports": supports,
        "ropes": ropes,
        "loads": loads,
    })
}

fn reference(from: Reference) -> &'static str {
    match from {
        Reference::Horizontal => "horizontal",
        Reference::Vertical => "vertical",
    }
}

fn side(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}

fn place(place: Place, values: &[f64]) -> Value {
    match place {
        Place::Foot => json!("foot"),
        Place::Middle => json!("middle"),
        Place::Tip => json!("tip"),
        Place::Fraction { over, under } => json!({ "over": over, "under": under }),
        Place::At(given) => json!({ "distance": values[given.0] }),
    }
}

fn direction(direction: Direction, values: &[f64]) -> Value {
    match direction {
        Direction::Up => json!("up"),
        Direction::Down => json!("down"),
        Direction::Level(to) => json!(side(to)),
        Direction::Oblique {
            angle,
            from,
            upright,
            side: to,
        } => json!({
            "angle_rad": values[angle.0],
            "from": reference(from),
            "upright": if upright == Upright::Up { "up" } else { "down" },
            "side": side(to),
        }),
        Direction::FromBody { angle } => json!({ "from_body_rad": values[angle.0] }),
    }
}
