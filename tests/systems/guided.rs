//! The form of problem files with one straight body, as Rust types: see form.rs.
#![allow(dead_code)]

use super::terms::{DirectionWord, Exact, Fraction, Named, PlaceWord, Reference, SameAs, Side};
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::BTreeMap;

/// One straight body, for the guided walk.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct GuidedFile {
    /// The version of the form, always 1.
    #[schemars(range(min = 1, max = 1))]
    pub(super) leverwright: u32,
    /// The acceleration of free fall, such as "9.8 m/s^2".
    g: String,
    accepted_g: Option<Vec<String>>,
    #[schemars(range(min = 2, max = 6))]
    figures: Option<u32>,
    model: Model,
    text: GuidedText,
}

/// The body, what holds it, what it carries.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Model {
    body: GuidedBody,
    supports: Option<Vec<GuidedSupport>>,
    ropes: Option<Vec<GuidedRope>>,
    loads: Option<Vec<GuidedLoad>>,
    order: Option<Vec<String>>,
}

#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct GuidedBody {
    noun: String,
    length: GuidedQuantity,
    mass: Option<GuidedQuantity>,
    weight_symbol: Option<String>,
    centre: Option<GuidedPlace>,
    tilt: GuidedTilt,
    towards: Side,
}

#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum GuidedTilt {
    Level(Level),
    Rising(GuidedRising),
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
enum Level {
    Level,
}

#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct GuidedRising {
    angle: GuidedQuantity,
    from: Reference,
}

#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct GuidedSupport {
    symbol: Option<String>,
    noun: String,
    at: GuidedPlace,
    kind: SupportKind,
    /// The way in which a roller pushes.
    direction: Option<GuidedDirection>,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "snake_case")]
enum SupportKind {
    Hinge,
    Roller,
    BuiltIn,
}

#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct GuidedRope {
    symbol: Option<String>,
    noun: String,
    at: GuidedPlace,
    direction: GuidedDirection,
}

/// A mass, or a force with a direction.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct GuidedLoad {
    symbol: Option<String>,
    noun: String,
    at: GuidedPlace,
    mass: Option<GuidedQuantity>,
    force: Option<GuidedQuantity>,
    direction: Option<GuidedDirection>,
    /// True if it stands on the body; else it hangs.
    stands: Option<bool>,
}

#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum GuidedQuantity {
    Text(String),
    Named(Named),
    SameAs(SameAs),
    Exact(Exact),
}

#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum GuidedPlace {
    Word(PlaceWord),
    Fraction(Fraction),
    Distance(GuidedQuantity),
}

#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum GuidedDirection {
    Word(DirectionWord),
    Oblique(GuidedOblique),
    WithBody(WithBody),
}

#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct GuidedOblique {
    angle: GuidedQuantity,
    from: Reference,
    up: bool,
    side: Side,
}

/// At an angle with the part of the body that leads back to its foot, on its upper side.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct WithBody {
    angle_with_body: GuidedQuantity,
}

#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct GuidedText {
    title: String,
    statement: String,
    caution: Option<String>,
    /// The words for the nouns, where those are keys.
    nouns: Option<BTreeMap<String, String>>,
    meanings: BTreeMap<String, String>,
}
