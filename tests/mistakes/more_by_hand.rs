//! More values of mistakes against hand arithmetic: forces that are not there, sizes of angles,
//! multiples of units, other pivots, shares, and how a balance was solved.

use super::scene::*;
use leverwright::key::{Axis, Part, StepId};
use leverwright::mistakes::Scope::{Force, Here, Pull, Two, Weights};
use leverwright::mistakes::value;
use leverwright::problem::ForceId;

#[test]
fn verif_parts_of_a_pull_along_the_axes() {
    // The rope pulls up and to the left: the hinge pushes to the right.
    // The rope makes 75° with the foot's side of the body, which rises 25°: 50° with the horizontal.
    let knot = worked(&tilted(Pulling::FromFoot(75.0)));
    let moments = (20.0 * 3.0 + 11.0 * 2.2 + 8.0 * 6.0) * G * sin(65.0);
    let tension = moments / (4.5 * sin(75.0));
    let level = StepId::PartOf(ROPE, Axis::Horizontal);
    let upright = StepId::PartOf(ROPE, Axis::Vertical);
    let size = StepId::Reaction(ForceId::Support(0), Part::Size);
    let (along, up) = (tension * cos(50.0), 39.0 * G - tension * sin(50.0));
    knot.check(&[
        (
            "given-angle-in-part",
            Force(ROPE),
            level,
            tension * cos(75.0),
        ),
        (
            "given-angle-in-part",
            Force(ROPE),
            upright,
            tension * sin(75.0),
        ),
        ("across-for-part", Here(level), level, tension * sin(75.0)),
        ("part-by-dividing", Here(level), level, tension / cos(50.0)),
        (
            "part-by-tangent",
            Here(upright),
            upright,
            tension * (sin(50.0) / cos(50.0)),
        ),
        ("parts-added-with-signs", Here(size), size, along + up),
        (
            "weight-left-out-upward",
            Force(FIRST),
            UPRIGHT_PART,
            28.0 * G - tension * sin(50.0),
        ),
    ]);
}

#[test]
fn verif_level_body_upright_rope_with_shares_units_and_other_pivots() {
    let one = worked(&level_upright());
    // 14 kg at 2.5 m, 9 kg at 3.2 m, the rope at 4 m of 5 m.
    let (b, w) = (14.0 * G, 9.0 * G);
    let right = (b * 2.5 + w * 3.2) / 4.0;
    one.check(&[
        (
            "gram-kilogram",
            Force(FIRST),
            PULL,
            (b * 2.5 + 1000.0 * w * 3.2) / 4.0,
        ),
        (
            "centimetre-metre",
            Force(FIRST),
            PULL,
            (b * 2.5 + w * 320.0) / 4.0,
        ),
        (
            "misread-given",
            Two(FIRST, OWN),
            PULL,
            (b * 2.5 + b * 3.2) / 4.0,
        ),
        ("pull-shared-between-forces", Pull, PULL, right / 2.0),
        ("shared-equally", Pull, PULL, (b + w) / 2.0),
        (
            "solved-wrongly",
            Force(FIRST),
            PULL,
            (b * 2.5 - w * 3.2) / 4.0,
        ),
        (
            "force-invented",
            Force(ROPE),
            UPRIGHT_PART,
            b + w - 2.0 * right,
        ),
        // About the middle the own weight has no moment.
        (
            "wrong-pivot-without-the-hinge-term",
            Force(OWN),
            PULL,
            w * 0.7 / 1.5,
        ),
        // About the load's place the own weight lies 0.7 m before it and the rope 0.8 m behind.
        (
            "wrong-pivot-without-the-hinge-term",
            Force(FIRST),
            PULL,
            -b * 0.7 / 0.8,
        ),
    ]);
    assert!(one.found.iter().all(|made| made.mistake.id != "two-pivots"));
}

#[test]
fn verif_oblique_ropes_with_angles_of_a_wrong_size() {
    let one = worked(&level_oblique());
    let moments = 12.0 * G * 2.2 + 7.0 * G * 4.4;
    let pull = moments / (3.0 * sin(35.0));
    one.check(&[
        (
            "doubled-angle",
            Force(ROPE),
            PULL,
            moments / (3.0 * sin(70.0)),
        ),
        (
            "halved-angle",
            Force(ROPE),
            PULL,
            moments / (3.0 * sin(17.5)),
        ),
        (
            "force-invented",
            Force(ROPE),
            UPRIGHT_PART,
            19.0 * G - 2.0 * pull * sin(35.0),
        ),
        ("pull-shared-between-forces", Pull, PULL, pull / 2.0),
    ]);
    // Half of all weights is the share of an upright rope only.
    assert!(
        one.found
            .iter()
            .all(|made| made.mistake.id != "shared-equally")
    );
}

#[test]
fn verif_two_loads_from_two_points_and_weights_across_the_body() {
    let one = worked(&tilted(Pulling::Back(50.0)));
    let (own, first, second) = (20.0 * G, 11.0 * G, 8.0 * G);
    // Weights lie 65° from the body, the rope 75°; it pulls at 130° from the right.
    let rope = 4.5 * sin(75.0);
    let pull = (own * 3.0 + first * 2.2 + second * 6.0) * sin(65.0) / rope;
    one.check(&[
        // What hangs at the tip has no distance from there.
        (
            "two-pivots",
            Weights,
            PULL,
            (own * 3.0 + first * 3.8) * sin(65.0) / rope,
        ),
        (
            "weight-not-downward",
            Force(OWN),
            UPRIGHT_PART,
            own * sin(65.0) + first + second - pull * sin(50.0),
        ),
        (
            "weight-not-downward",
            Weights,
            UPRIGHT_PART,
            (own + first + second) * sin(65.0) - pull * sin(50.0),
        ),
        (
            "misread-given",
            Two(OWN, SECOND),
            PULL,
            (second * 3.0 + first * 2.2 + second * 6.0) * sin(65.0) / rope,
        ),
        ("pull-shared-between-forces", Pull, PULL, pull / 3.0),
        (
            "solved-wrongly",
            Force(SECOND),
            PULL,
            (own * 3.0 + first * 2.2 - second * 6.0) * sin(65.0) / rope,
        ),
        // About the tip, where the second load hangs: 3 m, 3.8 m and 1.5 m.
        (
            "wrong-pivot-without-the-hinge-term",
            Force(SECOND),
            PULL,
            (own * 3.0 + first * 3.8) * sin(65.0) / (1.5 * sin(75.0)),
        ),
    ]);
    // With the pull twice the level part of the hinge's force is twice as large.
    let level = |key| value(key, &one.key, LEVEL_PART, &one.sampling).unwrap();
    let twice = one.instance("force-invented", Force(ROPE));
    assert!((level(&twice.key) / level(&one.key) - 2.0).abs() < 1e-9);
    let size = StepId::Reaction(ForceId::Support(0), Part::Size);
    assert!(value(&twice.key, &one.key, size, &one.sampling).is_some());
}
