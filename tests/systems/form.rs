//! The whole form of problem files as Rust types, from which lessons/problem.schema.json is made.
//!
//! The reader (src/lesson) does not use them: it tells faults with their places. That both know the
//! same fields is what tests/systems/fields.rs proves.
#![allow(dead_code)]

use super::guided::GuidedFile;
use super::lamina::LaminaWeight;
use super::terms::{Direction, Place, Quantity, Spot};
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::BTreeMap;

/// A problem file.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
pub(super) enum ProblemFile {
    General(GeneralFile),
    Guided(GuidedFile),
}

/// Bodies in general: any number of bodies, ropes, contacts with friction, spread loads, joints.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
pub(super) struct GeneralFile {
    /// The version of the form, always 1.
    #[schemars(range(min = 1, max = 1))]
    pub(super) leverwright: u32,
    /// The acceleration of free fall, such as "9.8 m/s^2".
    g: String,
    /// Other values of it that count as right.
    accepted_g: Option<Vec<String>>,
    /// Significant figures of the results; 3 if left out.
    #[schemars(range(min = 2, max = 6))]
    figures: Option<u32>,
    system: System,
    text: Text,
}

/// The bodies, what acts on them, and what is asked.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct System {
    bodies: Vec<Body>,
    weights: Option<Vec<Weight>>,
    loads: Option<Vec<Load>>,
    ropes: Option<Vec<Rope>>,
    holds: Option<Vec<Hold>>,
    /// What is to be found, in order.
    asked: Option<Vec<Asked>>,
    sought: Option<Sought>,
    /// The names of all numbers in the order of telling, if the usual order does not suit.
    order: Option<Vec<String>>,
}

/// A rigid body, or a knot where forces meet.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Body {
    /// Its name, by which other parts refer to it.
    name: String,
    /// Where its first leg begins; the origin if left out.
    start: Option<Spot>,
    /// Its straight parts, each beginning where the one before ends.
    legs: Option<Vec<Leg>>,
    /// True for a point where forces meet, which has no moments.
    knot: Option<bool>,
}

/// A straight part of a body.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Leg {
    length: Quantity,
    direction: Direction,
}

/// A body's own weight, or that of a part of it.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum Weight {
    Point(PointWeight),
    Lamina(LaminaWeight),
}

/// A mass whose centre is told.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct PointWeight {
    symbol: Option<String>,
    noun: String,
    body: String,
    at: Spot,
    mass: Quantity,
}

/// What a body carries.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum Load {
    Mass(MassLoad),
    Force(ForceLoad),
    Couple(CoupleLoad),
    Spread(SpreadLoad),
}

/// A hung or standing mass: its weight acts downwards.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct MassLoad {
    symbol: Option<String>,
    noun: String,
    body: String,
    at: Spot,
    mass: Quantity,
}

/// A given force.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct ForceLoad {
    symbol: Option<String>,
    noun: String,
    body: String,
    at: Spot,
    force: Quantity,
    direction: Direction,
}

/// A given couple.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct CoupleLoad {
    symbol: Option<String>,
    noun: String,
    body: String,
    couple: Quantity,
    turns: Turns,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
enum Turns {
    Clockwise,
    Anticlockwise,
}

/// A load spread along a leg that changes evenly from its first to its last value; one of them may be
/// left out for a triangle.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct SpreadLoad {
    symbol: Option<String>,
    noun: String,
    body: String,
    /// Which leg, counted from 0; the first if left out.
    leg: Option<u32>,
    from: Place,
    to: Place,
    /// Newtons a metre where it begins.
    first: Option<Quantity>,
    /// Newtons a metre where it ends.
    last: Option<Quantity>,
    direction: Direction,
}

/// A rope: it pulls with one tension at every end listed.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Rope {
    symbol: Option<String>,
    noun: String,
    ends: Vec<End>,
}

/// Where a rope pulls, and which way.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct End {
    body: String,
    at: Spot,
    direction: Direction,
}

/// What holds a body, or joins two.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum Hold {
    Plain(PlainHold),
    Line(LineHold),
    Rough(RoughHold),
    Base(BaseHold),
}

/// A hinge (a force any way), a built-in end (a force any way and a couple), or a couple alone.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct PlainHold {
    symbol: Option<String>,
    noun: String,
    body: String,
    /// The body that meets the reverse; the ground if left out.
    by: Option<String>,
    at: Spot,
    kind: PlainKind,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum PlainKind {
    Hinge,
    BuiltIn,
    Couple,
}

/// A push one way (roller, peg, smooth contact), or a force along a line in either sense (strut, link).
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct LineHold {
    symbol: Option<String>,
    noun: String,
    body: String,
    /// The body that meets the reverse; the ground if left out.
    by: Option<String>,
    at: Spot,
    kind: LineKind,
    direction: Direction,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum LineKind {
    Push,
    Line,
}

/// A rough contact: a push one way, and friction square to it.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct RoughHold {
    symbol: Option<String>,
    noun: String,
    body: String,
    /// The body that meets the reverse; the ground if left out.
    by: Option<String>,
    at: Spot,
    kind: RoughKind,
    direction: Direction,
    friction: Friction,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum RoughKind {
    Rough,
}

/// A flat rough base: the push acts somewhere within its width.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct BaseHold {
    symbol: Option<String>,
    noun: String,
    body: String,
    /// The body that meets the reverse; the ground if left out.
    by: Option<String>,
    /// The middle of the base.
    at: Spot,
    kind: BaseKind,
    direction: Direction,
    friction: Friction,
    width: Quantity,
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum BaseKind {
    Base,
}

/// What is known of friction.
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum Friction {
    AsNeeded(FrictionWord),
    UpTo(UpTo),
    Limiting(Limiting),
}

#[derive(Deserialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
enum FrictionWord {
    AsNeeded,
}

/// Friction up to this coefficient times the push.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct UpTo {
    up_to: Quantity,
}

/// About to slip: friction is this coefficient times the push, and acts on the body this way.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Limiting {
    limiting: Quantity,
    direction: Direction,
}

/// The name of a force, a part of it, a couple, or "sought".
#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum Asked {
    Name(String),
    Horizontal(Horizontal),
    Vertical(Vertical),
    Couple(AskedCouple),
}

#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Horizontal {
    horizontal: String,
}

#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Vertical {
    vertical: String,
}

#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct AskedCouple {
    couple: String,
}

/// The number that is sought, where it is looked for, and what just happens at its value.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Sought {
    given: String,
    from: String,
    to: String,
    when: When,
}

#[derive(Deserialize, JsonSchema)]
#[serde(untagged)]
enum When {
    Reaches(Reaches),
    Vanishes(Vanishes),
    Slips(Slips),
    Topples(Topples),
    Rests(Rests),
}

/// A force has this size.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Reaches {
    reaches: String,
    limit: Quantity,
}

/// A force vanishes: a contact is about to part.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Vanishes {
    vanishes: String,
}

/// A rough contact is about to slip.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Slips {
    slips: String,
    coefficient: Quantity,
}

/// A base is about to topple.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Topples {
    topples: String,
}

/// A body that is free to turn rests: no couple is needed to hold it.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Rests {
    rests: String,
}

/// The words. In the statement, {L} prints a value and {L=} its name and value.
#[derive(Deserialize, JsonSchema)]
#[serde(deny_unknown_fields)]
struct Text {
    title: String,
    statement: String,
    caution: Option<String>,
    /// What each number is, by its name.
    meanings: Option<BTreeMap<String, String>>,
}
