//! Laminae of the form, as Rust types: see form.rs.
#![allow(dead_code)]

use super::terms::{Coordinate, Place, Quantity};
use schemars::JsonSchema;
use serde::Deserialize;

/// A flat body of named shapes, some of which are holes. It has a mass as a whole, or a mass per area,
/// or a mass in every shape.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct LaminaWeight {
    symbol: Option<String>,
    noun: String,
    body: String,
    shapes: Vec<Shape>,
    /// The mass of the whole, holes taken away.
    mass: Option<Quantity>,
    mass_per_area: Option<Quantity>,
}

#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum Shape {
    Rectangle(RectangleShape),
    Triangle(TriangleShape),
    Disc(DiscShape),
    Round(RoundShape),
}

/// x and y tell its corner, from where the body begins: x along its first leg, y to the left of it.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct RectangleShape {
    shape: RectangleWord,
    noun: Option<String>,
    width: Quantity,
    height: Quantity,
    x: Option<Coordinate>,
    y: Option<Coordinate>,
    /// True if it is taken away.
    hole: Option<bool>,
    mass: Option<Quantity>,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
enum RectangleWord {
    Rectangle,
}

/// x and y tell the foot of its base.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct TriangleShape {
    shape: TriangleWord,
    noun: Option<String>,
    width: Quantity,
    height: Quantity,
    /// The place of the base below the apex; its foot (a right angle) if left out.
    apex: Option<Place>,
    x: Option<Coordinate>,
    y: Option<Coordinate>,
    /// Which way the apex points, turned about the foot of the base; up if left out.
    points: Option<Facing>,
    /// True if it is taken away.
    hole: Option<bool>,
    mass: Option<Quantity>,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
enum TriangleWord {
    Triangle,
}

/// x and y tell its centre.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct DiscShape {
    shape: DiscWord,
    noun: Option<String>,
    radius: Quantity,
    x: Option<Coordinate>,
    y: Option<Coordinate>,
    /// True if it is taken away.
    hole: Option<bool>,
    mass: Option<Quantity>,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
enum DiscWord {
    Disc,
}

/// x and y tell the middle of a semicircle's straight side, or the corner of a quarter circle.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct RoundShape {
    shape: RoundWord,
    noun: Option<String>,
    radius: Quantity,
    x: Option<Coordinate>,
    y: Option<Coordinate>,
    /// Which way it points from there; up if left out. A quarter circle that points up lies right of it.
    points: Option<Facing>,
    /// True if it is taken away.
    hole: Option<bool>,
    mass: Option<Quantity>,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum RoundWord {
    Semicircle,
    QuarterCircle,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
enum Facing {
    Up,
    Left,
    Down,
    Right,
}
