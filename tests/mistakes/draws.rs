//! The hard rules for drawn numbers.

use super::scene::*;
use leverwright::draw::{Refusal, draw, misnamed, refuse};
use leverwright::key::derive;
use leverwright::lesson::built_in;

/// A scene that passes every hard rule.
fn good() -> Scene {
    Scene {
        length: 4.6,
        mass: 12.0,
        rise: 20.0,
        loads: vec![(7.0, None)],
        lift: None,
        tied: 3.2,
        hinge: None,
        pulling: Pulling::Back(40.0),
    }
}

fn refused(scene: &Scene) -> Option<Refusal> {
    let problem = scene.problem();
    let key = derive(&problem).unwrap();
    refuse(&problem, &key)
}

#[test]
fn good_numbers_pass() {
    assert_eq!(refused(&good()), None);
}

#[test]
fn each_hard_rule_refuses() {
    type Rule = fn(&Refusal) -> bool;
    let changed = |change: fn(&mut Scene)| {
        let mut scene = good();
        change(&mut scene);
        scene
    };
    let rows: Vec<(Scene, Rule)> = vec![
        (changed(|scene| scene.rise = 30.0), |r| {
            matches!(r, Refusal::SpecialAngle { .. })
        }),
        (changed(|scene| scene.loads[0].0 = 12.0), |r| {
            matches!(r, Refusal::SameLiteral { .. })
        }),
        (changed(|scene| scene.mass = 2.3), |r| {
            matches!(r, Refusal::SameLiteral { .. })
        }),
        (changed(|scene| scene.tied = 4.6), |r| {
            matches!(r, Refusal::EqualDistances { .. })
        }),
        (changed(|scene| scene.pulling = Pulling::Back(22.0)), |r| {
            matches!(r, Refusal::AnglesTooClose { .. })
        }),
        (changed(|scene| scene.pulling = Pulling::Back(68.0)), |r| {
            matches!(r, Refusal::SumNearRightAngle { .. })
        }),
        (changed(|scene| scene.pulling = Pulling::Back(51.0)), |r| {
            matches!(r, Refusal::SumNearRightAngle { .. })
        }),
        (
            changed(|scene| {
                scene.tied = 0.3;
            }),
            |r| matches!(r, Refusal::AbsurdForce { .. }),
        ),
        (
            Scene {
                length: 20.0,
                mass: 3.0,
                rise: 75.0,
                loads: vec![(70.0, Some(0.4))],
                lift: None,
                tied: 18.0,
                hinge: None,
                pulling: Pulling::Level,
            },
            |r| matches!(r, Refusal::TinyPull { .. }),
        ),
        (changed(|scene| scene.pulling = Pulling::Down), |r| {
            matches!(r, Refusal::Unsolvable { .. })
        }),
        // 12·9.8·2.3 + 7·9.8·4.6 = 586 against 110·4.6 = 506, all times cos 20°.
        (changed(|scene| scene.lift = Some(110.0)), |r| {
            matches!(r, Refusal::MomentsNearlyCancel { .. })
        }),
        // A rope one centimetre short of a metre hides that its distance was not divided out.
        (
            Scene {
                length: 4.8,
                mass: 12.0,
                rise: 0.0,
                loads: vec![(7.0, Some(1.2))],
                lift: None,
                tied: 0.99,
                hinge: None,
                pulling: Pulling::Up,
            },
            |r| matches!(r, Refusal::MistakeHidden { .. }),
        ),
    ];
    for (index, (scene, expected)) in rows.iter().enumerate() {
        let refusal = refused(scene);
        assert!(
            refusal.as_ref().is_some_and(expected),
            "row {index}: {refusal:?}"
        );
        let told = refusal.unwrap().to_string();
        assert!(!told.is_empty() && !told.contains("NaN"), "{told}");
    }
}

/// Numbers of the working that are not printed are literals, too.
#[test]
fn distances_from_the_far_end_and_complements_are_literals() {
    let changed = |change: fn(&mut Scene)| {
        let mut scene = good();
        change(&mut scene);
        refused(&scene)
    };
    let same = |refusal: Option<Refusal>, number: &str| {
        let told = refusal.map(|refusal| refusal.to_string());
        let expected = format!("the number {number} stands for two quantities");
        assert!(
            told.as_ref()
                .is_some_and(|told| told.starts_with(&expected)),
            "{told:?}"
        );
    };
    // 4.6 m less 3.2 m is the load's 1.4 m.
    same(changed(|scene| scene.loads[0].1 = Some(1.4)), "1.4");
    // 70° is the complement of the body's 20°, and 90° what complements are taken from.
    same(changed(|scene| scene.mass = 70.0), "70");
    same(changed(|scene| scene.loads[0].0 = 90.0), "90");
    // A quarter of 4 m is one metre: halved twice, the length says nothing more.
    let quarter = changed(|scene| scene.length = 4.0);
    assert!(
        matches!(quarter, Some(Refusal::UnitDistance { .. })),
        "{quarter:?}"
    );
    // The middle is as far from both ends.
    assert_eq!(refused(&good()), None);
}

/// A draw in which little would be misnamed comes before one in which much would be.
#[test]
fn draws_misname_at_most_two_per_cent() {
    for lesson in built_in() {
        for seed in 0..12 {
            let problem = draw(&lesson, seed, "en").unwrap().problem;
            let share = misnamed(&problem, &derive(&problem).unwrap());
            assert!(share <= 0.02, "{} {seed}: {share}", lesson.id());
        }
    }
}

#[test]
fn the_misnamed_share_is_a_share() {
    for scene in all_scenes().iter().chain([&good()]) {
        let problem = scene.problem();
        let key = derive(&problem).unwrap();
        let share = misnamed(&problem, &key);
        assert!((0.0..1.0).contains(&share), "{share}");
    }
}

#[test]
fn a_mistake_hidden_behind_the_right_number_is_misnamed() {
    // At one metre a moment and its force have the same number.
    let share = |tied: f64| {
        let mut scene = good();
        scene.tied = tied;
        let problem = scene.problem();
        misnamed(&problem, &derive(&problem).unwrap())
    };
    assert!(
        share(1.0) > share(1.3) + 0.02,
        "{} {}",
        share(1.0),
        share(1.3)
    );
}
