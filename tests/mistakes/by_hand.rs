//! Values of mistakes against hand arithmetic that knows nothing of the rewrites.

use super::scene::*;
use leverwright::key::{Axis, Part, StepId};
use leverwright::mistakes::Scope::{Everywhere, Force, Here, Pull, Two, Weights};
use leverwright::problem::ForceId;

#[test]
fn verif_level_body_upright_rope() {
    let one = worked(&level_upright());
    let (b, w) = (14.0 * G, 9.0 * G);
    one.check(&[
        (
            "mass-for-weight",
            Force(OWN),
            PULL,
            (14.0 * 2.5 + w * 3.2) / 4.0,
        ),
        (
            "mass-for-weight",
            Weights,
            PULL,
            (14.0 * 2.5 + 9.0 * 3.2) / 4.0,
        ),
        (
            "divided-by-g",
            Force(FIRST),
            PULL,
            (b * 2.5 + 9.0 / G * 3.2) / 4.0,
        ),
        ("own-weight-left-out", Force(OWN), PULL, w * 3.2 / 4.0),
        (
            "own-weight-left-out",
            Force(OWN),
            UPRIGHT_PART,
            w - w * 3.2 / 4.0,
        ),
        (
            "own-weight-at-tip",
            Force(OWN),
            PULL,
            (b * 5.0 + w * 3.2) / 4.0,
        ),
        (
            "own-weight-at-rope",
            Force(OWN),
            PULL,
            (b * 4.0 + w * 3.2) / 4.0,
        ),
        ("force-forgotten", Force(FIRST), PULL, b * 2.5 / 4.0),
        (
            "force-forgotten",
            Force(FIRST),
            UPRIGHT_PART,
            b - b * 2.5 / 4.0,
        ),
        ("term-left-out", Force(FIRST), PULL, b * 2.5 / 4.0),
        (
            "turns-the-wrong-way",
            Force(FIRST),
            PULL,
            (b * 2.5 - w * 3.2) / 4.0,
        ),
        ("forces-for-moments", Here(StepId::MomentSum), PULL, b + w),
        (
            "divided-by-distance",
            Force(OWN),
            PULL,
            (b / 2.5 + w * 3.2) / 4.0,
        ),
        ("arm-not-divided-out", Force(ROPE), PULL, b * 2.5 + w * 3.2),
        (
            "arm-multiplied",
            Force(ROPE),
            PULL,
            (b * 2.5 + w * 3.2) * 4.0,
        ),
        (
            "mass-in-the-force-balance",
            Weights,
            UPRIGHT_PART,
            14.0 + 9.0 - (b * 2.5 + w * 3.2) / 4.0,
        ),
        (
            "mass-in-the-force-balance",
            Force(OWN),
            UPRIGHT_PART,
            14.0 + w - (b * 2.5 + w * 3.2) / 4.0,
        ),
        (
            "load-at-middle",
            Force(FIRST),
            PULL,
            (b * 2.5 + w * 2.5) / 4.0,
        ),
        ("load-at-tip", Force(FIRST), PULL, (b * 2.5 + w * 5.0) / 4.0),
        (
            "load-at-rope",
            Force(FIRST),
            PULL,
            (b * 2.5 + w * 4.0) / 4.0,
        ),
        ("rope-at-tip", Force(ROPE), PULL, (b * 2.5 + w * 3.2) / 5.0),
        (
            "rope-at-middle",
            Force(ROPE),
            PULL,
            (b * 2.5 + w * 3.2) / 2.5,
        ),
        (
            "from-the-far-end",
            Force(FIRST),
            PULL,
            (b * 2.5 + w * (5.0 - 3.2)) / 4.0,
        ),
        (
            "from-the-far-end",
            Everywhere,
            PULL,
            (b * 2.5 + w * (5.0 - 3.2)) / (5.0 - 4.0),
        ),
        (
            "from-the-middle",
            Force(ROPE),
            PULL,
            (b * 2.5 + w * 3.2) / 1.5,
        ),
        (
            "rope-pull-forgotten-upward",
            Force(ROPE),
            UPRIGHT_PART,
            b + w,
        ),
        (
            "one-weight-only",
            Force(OWN),
            UPRIGHT_PART,
            b - (b * 2.5 + w * 3.2) / 4.0,
        ),
    ]);
    for oblique in [
        "not-resolved",
        "sine-cosine-exchanged",
        "stopped-at-component",
    ] {
        assert!(
            one.found
                .iter()
                .all(|instance| instance.mistake.id != oblique),
            "{oblique}"
        );
    }
}

#[test]
fn verif_level_body_oblique_rope() {
    let one = worked(&level_oblique());
    let moments = 12.0 * G * 2.2 + 7.0 * G * 4.4;
    let pull = moments / (3.0 * sin(35.0));
    let (level, upright) = (pull * cos(35.0), 19.0 * G - pull * sin(35.0));
    let size = StepId::Reaction(ForceId::Support(0), Part::Size);
    let direction = StepId::Reaction(ForceId::Support(0), Part::Direction);
    let radians = 35.0_f64.sin();
    let part = |axis| Here(StepId::PartOf(ROPE, axis));
    one.check(&[
        (
            "sine-cosine-exchanged",
            Force(ROPE),
            PULL,
            moments / (3.0 * cos(35.0)),
        ),
        ("complement", Force(ROPE), PULL, moments / (3.0 * sin(55.0))),
        ("not-resolved", Force(ROPE), PULL, moments / 3.0),
        ("stopped-at-component", Force(ROPE), PULL, moments / 3.0),
        (
            "hypotenuse-confused",
            Force(ROPE),
            PULL,
            moments * sin(35.0) / 3.0,
        ),
        (
            "multiplied-at-the-end",
            Force(ROPE),
            PULL,
            moments / 3.0 * sin(35.0),
        ),
        (
            "exchanged-at-the-end",
            Force(ROPE),
            PULL,
            moments / 3.0 / cos(35.0),
        ),
        (
            "tangent-used",
            Force(ROPE),
            PULL,
            moments / (3.0 * sin(35.0) / cos(35.0)),
        ),
        (
            "resolved-twice",
            Force(ROPE),
            PULL,
            moments / (3.0 * sin(35.0) * sin(35.0)),
        ),
        (
            "arm-not-divided-out",
            Force(ROPE),
            PULL,
            moments / sin(35.0),
        ),
        ("moment-called-force", Force(ROPE), PULL, moments),
        (
            "radian-calculator",
            Everywhere,
            PULL,
            moments / (3.0 * radians),
        ),
        (
            "forces-for-moments",
            Here(StepId::MomentSum),
            PULL,
            19.0 * G / sin(35.0),
        ),
        ("forces-for-moments", Everywhere, PULL, 19.0 * G),
        ("whole-tension-sideways", Force(ROPE), LEVEL_PART, pull),
        (
            "whole-tension-upward",
            Force(ROPE),
            UPRIGHT_PART,
            19.0 * G - pull,
        ),
        (
            "rope-pull-forgotten-upward",
            Force(ROPE),
            UPRIGHT_PART,
            19.0 * G,
        ),
        (
            "sine-cosine-exchanged",
            part(Axis::Horizontal),
            LEVEL_PART,
            pull * sin(35.0),
        ),
        (
            "direction-reversed",
            Force(FIRST),
            UPRIGHT_PART,
            5.0 * G - pull * sin(35.0),
        ),
        (
            "components-added",
            Here(size),
            size,
            level.abs() + upright.abs(),
        ),
        (
            "squares-subtracted",
            Here(size),
            size,
            (level * level - upright * upright).abs().sqrt(),
        ),
        (
            "arctangent-inverted",
            Here(direction),
            direction,
            (level / upright).abs().atan(),
        ),
    ]);
    // The sense of a hinge's part is chosen: turning it round is no mistake.
    let turned = one.found.iter().any(|made| {
        made.mistake.id == "direction-reversed" && made.scope == part(Axis::Horizontal)
    });
    assert!(!turned);
}

#[test]
fn verif_tilted_body_level_rope_two_loads() {
    let one = worked(&tilted(Pulling::Level));
    // Weights lie 65° from the body, the rope 25°.
    let (b, w, v) = (20.0 * G * 3.0, 11.0 * G * 2.2, 8.0 * G * 6.0);
    let rope = 4.5 * sin(25.0);
    one.check(&[
        (
            "sine-cosine-exchanged",
            Force(FIRST),
            PULL,
            ((b + v) * sin(65.0) + w * cos(65.0)) / rope,
        ),
        (
            "sine-cosine-exchanged",
            Weights,
            PULL,
            (b + w + v) * cos(65.0) / rope,
        ),
        (
            "sine-cosine-exchanged",
            Everywhere,
            PULL,
            (b + w + v) * cos(65.0) / (4.5 * cos(25.0)),
        ),
        ("not-resolved", Weights, PULL, (b + w + v) / rope),
        ("not-resolved", Everywhere, PULL, (b + w + v) / 4.5),
        (
            "hypotenuse-confused",
            Force(OWN),
            PULL,
            (b / sin(65.0) + (w + v) * sin(65.0)) / rope,
        ),
        (
            "force-forgotten",
            Force(SECOND),
            PULL,
            (b + w) * sin(65.0) / rope,
        ),
        (
            "turns-the-wrong-way",
            Force(OWN),
            PULL,
            (w + v - b) * sin(65.0) / rope,
        ),
        (
            "resolved-twice",
            Force(SECOND),
            PULL,
            (b + w + v * sin(65.0)) * sin(65.0) / rope,
        ),
        (
            "radian-calculator",
            Here(StepId::Across(OWN)),
            PULL,
            (b * 65.0_f64.sin() + (w + v) * sin(65.0)) / rope,
        ),
    ]);
}

#[test]
fn verif_tilted_body_oblique_rope_two_loads() {
    let one = worked(&tilted(Pulling::Back(50.0)));
    // The rope makes 25° + 50° with the body.
    let known = (20.0 * 3.0 + 11.0 * 2.2 + 8.0 * 6.0) * G * sin(65.0);
    one.check(&[
        (
            "given-angle-as-is",
            Force(ROPE),
            PULL,
            known / (4.5 * sin(50.0)),
        ),
        (
            "angle-sum-for-difference",
            Force(ROPE),
            PULL,
            known / (4.5 * sin(25.0)),
        ),
        ("complement", Force(ROPE), PULL, known / (4.5 * sin(15.0))),
        (
            "complement",
            Everywhere,
            PULL,
            known / sin(65.0) * sin(25.0) / (4.5 * sin(15.0)),
        ),
        (
            "term-left-out",
            Force(FIRST),
            PULL,
            (60.0 + 48.0) * G * sin(65.0) / (4.5 * sin(75.0)),
        ),
        (
            "distances-exchanged",
            Two(FIRST, SECOND),
            PULL,
            (20.0 * 3.0 + 11.0 * 6.0 + 8.0 * 2.2) * G * sin(65.0) / (4.5 * sin(75.0)),
        ),
        (
            "distances-exchanged",
            Two(OWN, SECOND),
            PULL,
            (20.0 * 6.0 + 11.0 * 2.2 + 8.0 * 3.0) * G * sin(65.0) / (4.5 * sin(75.0)),
        ),
        // The rope's 4.5 m for the weight's 2.2 m, and the weight's for the rope's.
        (
            "distances-exchanged",
            Two(FIRST, ROPE),
            PULL,
            (20.0 * 3.0 + 11.0 * 4.5 + 8.0 * 6.0) * G * sin(65.0) / (2.2 * sin(75.0)),
        ),
        (
            "distance-left-out",
            Force(FIRST),
            PULL,
            (20.0 * 3.0 + 11.0 + 8.0 * 6.0) * G * sin(65.0) / (4.5 * sin(75.0)),
        ),
        // What hangs at the tip has no moment about it.
        (
            "from-the-far-end",
            Everywhere,
            PULL,
            (20.0 * 3.0 + 11.0 * 3.8) * G * sin(65.0) / (1.5 * sin(75.0)),
        ),
    ]);
}

#[test]
fn verif_a_load_moved_past_the_hinge_turns_the_other_way() {
    let mut scene = level_upright();
    scene.hinge = Some(1.0);
    scene.loads[0].1 = Some(0.4);
    let one = worked(&scene);
    // The load lies 0.6 m before the hinge, the middle 1.5 m and the rope 3 m behind it.
    let (b, w) = (14.0 * G, 9.0 * G);
    one.check(&[
        (
            "own-weight-at-tip",
            Force(OWN),
            PULL,
            (b * 4.0 - w * 0.6) / 3.0,
        ),
        ("load-at-tip", Force(FIRST), PULL, (b * 1.5 + w * 4.0) / 3.0),
        (
            "turns-the-wrong-way",
            Force(FIRST),
            PULL,
            (b * 1.5 + w * 0.6) / 3.0,
        ),
        (
            "rope-at-middle",
            Force(ROPE),
            PULL,
            (b * 1.5 - w * 0.6) / 1.5,
        ),
    ]);
}

#[test]
fn verif_masses_places_and_angles_of_other_forces() {
    let level = worked(&level_upright());
    let (b, w) = (14.0 * G, 9.0 * G);
    level.check(&[
        (
            "masses-exchanged",
            Two(OWN, FIRST),
            PULL,
            (9.0 * G * 2.5 + 14.0 * G * 3.2) / 4.0,
        ),
        ("halved-twice", Force(OWN), PULL, (b * 1.25 + w * 3.2) / 4.0),
        (
            "all-mass-at-one-point",
            Force(FIRST),
            PULL,
            (b + w) * 3.2 / 4.0,
        ),
    ]);
    // The rope leans 130° from the right, the body 25°: 75° lie between them, 65° at the weights.
    let leaning = worked(&tilted(Pulling::Back(50.0)));
    let moments = (20.0 * 3.0 + 11.0 * 2.2 + 8.0 * 6.0) * G;
    let pull = |weights: f64, rope: f64| moments * weights / (4.5 * rope);
    leaning.check(&[
        (
            "angle-of-another-force",
            Pull,
            PULL,
            pull(sin(65.0), sin(65.0)),
        ),
        (
            "angle-of-another-force",
            Weights,
            PULL,
            pull(sin(75.0), sin(75.0)),
        ),
        (
            "gradian-calculator",
            Everywhere,
            PULL,
            pull(sin(58.5), sin(67.5)),
        ),
        (
            "all-mass-at-one-point",
            Force(SECOND),
            PULL,
            39.0 * G * 6.0 * sin(65.0) / (4.5 * sin(75.0)),
        ),
    ]);
    let direction = StepId::Reaction(ForceId::Support(0), Part::Direction);
    leaning.check(&[
        (
            "reaction-along-the-body",
            Here(direction),
            direction,
            25.0_f64.to_radians(),
        ),
        (
            "reaction-along-the-pull",
            Here(direction),
            direction,
            50.0_f64.to_radians(),
        ),
    ]);
}
