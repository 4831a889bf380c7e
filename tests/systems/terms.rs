//! Numbers, points, places and directions of the form, as Rust types: see form.rs.
#![allow(dead_code)]

use schemars::JsonSchema;
use serde::Deserialize;

/// A number with its unit, such as "2.4 m".
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
pub(super) enum Quantity {
    Text(#[schemars(regex(pattern = r"^-?[0-9]+(\.[0-9]+)?( ?[^0-9. ].*)?$"))] String),
    Named(Named),
    SameAs(SameAs),
    Unknown(Unknown),
    Exact(Exact),
}

/// A number with a name of its own.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Named {
    symbol: Option<String>,
    is: String,
}

/// The value of a number that is told elsewhere.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct SameAs {
    same_as: String,
}

/// The number that is sought.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Unknown {
    symbol: Option<String>,
    sought: SoughtKind,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub(super) enum SoughtKind {
    Length,
    Mass,
    Force,
    Angle,
    Coefficient,
    Couple,
    Spread,
    #[serde(rename = "mass_per_area")]
    MassPerArea,
}

/// A value that differs from how it is printed; for programs that write files.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Exact {
    symbol: Option<String>,
    written: String,
    /// In SI, angles in radians.
    si: f64,
}

/// A point.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
pub(super) enum Spot {
    Origin(OriginWord),
    On(OnLeg),
    At(Coordinates),
    Resultant(Resultant),
    Centroid(Centroid),
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub(super) enum OriginWord {
    Origin,
}

/// A place on a leg of a body.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct OnLeg {
    on: String,
    /// Which leg, counted from 0; the first if left out.
    leg: Option<u32>,
    at: Place,
}

/// Coordinates from the origin: x to the right, y upwards.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Coordinates {
    x: Coordinate,
    y: Coordinate,
}

/// Where the resultant of a spread load acts.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Resultant {
    resultant: String,
}

/// The centre of mass of a lamina, by the name of its weight.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Centroid {
    centroid: String,
}

#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
pub(super) enum Coordinate {
    Plain(Quantity),
    Sum(Sum),
}

/// A sum of multiples of lengths, such as [["1", "L"], ["-0.5", "d"]].
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Sum {
    sum: Vec<(String, Term)>,
}

/// The name of a length, or a length that is told here.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
pub(super) enum Term {
    Name(String),
    Told(Quantity),
}

/// A place along a leg.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
pub(super) enum Place {
    Word(PlaceWord),
    Fraction(Fraction),
    Distance(Quantity),
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub(super) enum PlaceWord {
    Foot,
    Middle,
    Tip,
}

/// A fraction of the length, such as "2/3".
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Fraction {
    #[schemars(regex(pattern = r"^[0-9]+/[0-9]+$"))]
    fraction: String,
}

/// Which way something points.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
pub(super) enum Direction {
    Word(DirectionWord),
    Oblique(Oblique),
    FromAxis(FromAxis),
    Towards(Towards),
    Along(Along),
    Across(Across),
    WithLeg(WithLeg),
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub(super) enum DirectionWord {
    Up,
    Down,
    Left,
    Right,
}

/// At an angle below 90° with the horizontal or the vertical.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Oblique {
    angle: Quantity,
    from: Reference,
    up: bool,
    side: Side,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub(super) enum Reference {
    Horizontal,
    Vertical,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub(super) enum Side {
    Left,
    Right,
}

/// At an angle below 360° from the x axis, anticlockwise.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct FromAxis {
    angle: Quantity,
    from: Axis,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
pub(super) enum Axis {
    XAxis,
}

/// From where it acts towards a point.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Towards {
    towards: Spot,
}

/// Along a leg: onward to its end, or back.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Along {
    along: String,
    leg: Option<u32>,
    onward: bool,
}

/// Square to a leg, to the left or right of one who walks along it.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct Across {
    across: String,
    leg: Option<u32>,
    left: bool,
}

/// At an angle below 180° with a leg, from its onward or backward direction towards a side.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct WithLeg {
    with: String,
    angle: Quantity,
    leg: Option<u32>,
    onward: bool,
    left: bool,
}
