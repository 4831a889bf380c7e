//! Questions with right and wrong answers, and problems that were worked by hand.

#![allow(clippy::unwrap_used)]

use super::*;
use crate::problem::ForceId;

fn built(answers: &[&str]) -> Builder {
    let mut builder = Builder::new(Words::english());
    for answer in answers {
        if let Err(fault) = builder.answer(answer) {
            panic!("`{answer}` to {:?}: {fault}", builder.question());
        }
    }
    builder
}

const PLANK: &[&str] = &["a plank", "2.4 m", "18 kg", "1", "right", "1", "foot"];

fn with(more: &[&str]) -> Builder {
    built(&[PLANK, more].concat())
}

#[test]
fn a_level_plank_on_a_rope_is_worked_by_hand() {
    // Moments about the foot: T·2.0 = 18·9.8·1.2 + 12·9.8·2.4, so T = 246.96 N (worked by hand).
    let builder = with(&["rope", "2 m", "1", "1", "basket", "12 kg", "tip", "1", ""]);
    assert_eq!(builder.question(), None);
    assert_eq!(builder.standing(), Standing::Sound);
    let problem = builder.problem().unwrap();
    let solution = solve(&problem, &problem.values()).unwrap();
    let tension = solution.force(ForceId::Rope(0));
    assert!((tension.y - 246.96).abs() < 1e-9, "{tension:?}");
    assert_eq!(
        problem.statement(),
        "The plank is uniform; its length is L = 2.4 m and its mass mb = 18 kg. It is held level and \
         reaches to the right from its foot; distances are measured along it from there. The plank is hinged at its foot. A rope T, whose own \
         weight does not count, is tied to the plank at a distance dT = 2 m from its foot and \
         runs straight up. The plank carries the basket, of mass m1 = 12 kg, hanging from it \
         at its tip. Find the tension T of the rope, then the force H of the hinge on the plank."
    );
}

#[test]
fn what_cannot_be_held_is_told_at_once() {
    let rows: &[(&[&str], &str)] = &[
        // Two ropes and a hinge: four unknowns.
        (&["1", "tip", "1", "2", "1.2 m", "1"], "indeterminate"),
        // A rope along the plank goes through the hinge.
        (&["1", "tip", "3"], "keeps the body from turning"),
        // A prop at the hinge.
        (&["2", "foot"], "keeps the body from turning"),
    ];
    for (more, told) in rows {
        let mut builder = with(&more[..more.len() - 1]);
        let remark = builder.answer(more[more.len() - 1]).unwrap();
        let remark = remark.map(|prose| prose.to_string());
        assert!(
            remark.as_deref().is_some_and(|said| said.contains(told)),
            "{more:?}: {remark:?}"
        );
    }
}

#[test]
fn a_rope_that_would_push_is_told_and_can_be_mended_by_going_back() {
    // A hinge at 1.6 m, beyond the middle, and a rope at the tip: the plank sinks at its foot.
    let mut builder = built(&[
        "plank", "2.4 m", "18 kg", "level", "right", "1", "1.6 m", "1", "tip",
    ]);
    let told = builder.answer("1").unwrap().unwrap().to_string();
    assert!(told.contains("would have to push"), "{told}");
    assert!(builder.back().is_some() && builder.back().is_some());
    assert_eq!(builder.question(), Some(Question::HoldAt));
    builder.answer("foot").unwrap();
    assert_eq!(builder.answer("1").unwrap(), None);
    assert_eq!(builder.standing(), Standing::Sound);
}

#[test]
fn an_answer_that_does_not_fit_says_what_is_wanted() {
    let rows: &[(&[&str], &str, &str)] = &[
        (&[], " ", "Nothing is typed"),
        (&[], "<b>", "A name"),
        (&["plank"], "long", "not read as a number"),
        (&["plank"], "3 kg", "unit"),
        (&["plank"], "0 m", "above 0"),
        (&["plank"], "-2 m", "above 0"),
        (&["plank"], "−2", "above 0"),
        (&["plank", "2 m"], "-20 kg", "above 0"),
        (&["plank", "2 m"], "- kg", "not read as a number"),
        (&["plank"], "--2 m", "not read as a number"),
        (&["plank", "2 m", "8 kg"], "3", "one of the choices"),
        (&["plank", "2 m", "8 kg", "tilted", "1"], "90", "below 90"),
        (&["plank", "2 m", "8 kg", "1", "1", "1"], "2.5 m", "below 2"),
        (
            &[
                "plank", "2 m", "8 kg", "1", "1", "1", "foot", "1", "tip", "1", "1",
            ],
            "Plank",
            "already",
        ),
    ];
    for (before, typed, told) in rows {
        let mut builder = built(before);
        let fault = builder.answer(typed).unwrap_err().to_string();
        assert!(fault.contains(told), "{before:?} `{typed}`: {fault}");
        assert_eq!(builder.answered(), before.len());
    }
}

#[test]
fn every_way_of_a_rope_gives_a_problem_that_is_worked() {
    let tilted = [
        "beam", "3,2 m", "20", "tilted", "vertical", "35", "left", "1", "foot", "1", "2.5",
    ];
    let rows: &[&[&str]] = &[
        &["straight"],
        &["level, to the right"],
        &["4", "1", "25 deg", "right"],
        &["4", "the vertical", "40", "1"],
        &["5", "70"],
    ];
    for way in rows {
        let builder = built(&[&tilted, *way, &["1", "lamp", "6 kg", "tip", "1", ""]].concat());
        assert_eq!(builder.question(), None, "{way:?}");
        assert_eq!(builder.standing(), Standing::Sound, "{way:?}");
        let statement = builder.problem().unwrap().statement().to_owned();
        assert!(!statement.contains('['), "{statement}");
    }
}

/// What helps against a prop that would pull is told by what else holds the body.
#[test]
fn a_prop_that_would_pull_is_told_with_what_helps() {
    let bench = ["bench", "2 m", "14 kg", "1", "1"];
    let rows: &[(&[&str], &str)] = &[
        // 14·9.8·0.5/0.3 N down at 0.2 m, with the middle beyond both: 229 N.
        (
            &["3", "2", "0.2 m", "3", "0.5 m", "1"],
            "pull the body down with 229 N, and a prop only pushes. Put the props on both sides",
        ),
        // The middle on the left of the hinge at 1.2 m: 14·9.8·0.2/0.8 = 34.3 N.
        (
            &["1", "1.2 m", "2", "2 m", "1"],
            "34.3 N, and a prop only pushes. Put it on the other side of the hinge",
        ),
    ];
    for (holds, told) in rows {
        let builder = built(&[&bench, *holds].concat());
        let trouble = builder.trouble().map(|prose| prose.to_string());
        let trouble = trouble.unwrap_or_default();
        assert!(trouble.contains(told), "{trouble}");
    }
}

#[test]
fn nothing_heavy_is_no_problem() {
    let light = [
        "rod", "1 m", "none", "1", "1", "1", "foot", "1", "tip", "1", "1",
    ];
    let mut builder = built(&light);
    let told = builder.answer("").unwrap().unwrap().to_string();
    assert!(told.contains("every force is nought"), "{told}");
}

#[test]
fn a_built_in_end_holds_alone_and_two_props_hold_what_is_level() {
    let builder = built(&[
        "bracket", "0.9 m", "3 kg", "1", "1", "2", "foot", "1", "pot", "5", "tip", "1", "",
    ]);
    assert_eq!(builder.question(), None);
    assert_eq!(builder.standing(), Standing::Sound);
    let props = [
        "bench", "2 m", "14 kg", "1", "1", "3", "2", "0.2 m", "3", "1.7 m",
    ];
    let mut builder = built(&props);
    // Nothing loads it from the side, so upright forces are enough to find both pushes.
    assert_eq!(builder.answer("1").unwrap(), None);
    assert_eq!(builder.standing(), Standing::Sound);
}

/// What is answered before a question, the question, a right answer with how it is listed, a wrong one
/// with what is said of it.
type Row<'a> = (
    &'a [&'a str],
    Question,
    (&'a str, &'a str),
    (&'a str, &'a str),
);

#[test]
fn every_question_takes_what_fits_refuses_what_does_not_and_is_taken_back() {
    use Question as Q;
    let tilted = [
        "beam", "3.2 m", "20 kg", "tilted", "2", "35 deg", "left", "1", "foot", "1", "2.5",
    ];
    let aslant = [&tilted[..], &["4", "1", "20", "1"]].concat();
    let loaded = [&aslant[..], &["1", "lamp", "6", "tip"]].concat();
    let rows: &[Row<'_>] = &[
        (
            &[],
            Q::Body,
            ("the shop sign", "shop sign"),
            ("rope", "already"),
        ),
        (
            &tilted[..1],
            Q::Length,
            ("320 cm", "320 cm"),
            ("3.2 kg", "Usual is m"),
        ),
        (
            &tilted[..1],
            Q::Length,
            ("3,20", "3.20 m"),
            ("1001 m", "below 1000 m"),
        ),
        (
            &tilted[..2],
            Q::Mass,
            ("none", "does not count"),
            ("much", "not read"),
        ),
        (
            &tilted[..2],
            Q::Mass,
            ("020 kg", "20 kg"),
            ("1.00000000001", "figures"),
        ),
        (
            &tilted[..3],
            Q::Stance,
            ("tilted", "tilted"),
            ("", "Nothing"),
        ),
        (
            &tilted[..4],
            Q::AngleFrom,
            ("vertical", "the vertical"),
            ("x", "one of the choices"),
        ),
        (
            &tilted[..5],
            Q::Angle,
            ("0.5 rad", "0.5 rad"),
            ("0", "above 0"),
        ),
        (
            &tilted[..6],
            Q::Towards,
            ("left", "left"),
            ("0", "one of the choices"),
        ),
        (
            &tilted[..7],
            Q::Fixing,
            ("hinge", "a hinge"),
            ("4", "one of the choices"),
        ),
        (
            &tilted[..8],
            Q::FixedAt,
            ("at its foot", "foot"),
            ("3.3 m", "below 3.2"),
        ),
        (
            &tilted[..9],
            Q::Hold,
            ("a prop", "a prop"),
            ("3", "one of the choices"),
        ),
        (
            &tilted[..10],
            Q::HoldAt,
            ("3.2 m", "tip"),
            ("half", "not read"),
        ),
        (
            &tilted[..11],
            Q::RopeWay,
            ("5", "aslant"),
            ("level", "one of the choices"),
        ),
        (
            &aslant[..12],
            Q::RopeFrom,
            ("1", "the horizontal"),
            ("the", "one of the choices"),
        ),
        (
            &aslant[..13],
            Q::RopeAngle,
            ("20", "20°"),
            ("90", "below 90"),
        ),
        (
            &aslant[..14],
            Q::RopeSide,
            ("right", "right"),
            ("up", "one of the choices"),
        ),
        (
            &aslant,
            Q::MoreHolds,
            ("nothing", "nothing else"),
            ("none", "one of the choices"),
        ),
        (
            &loaded[..16],
            Q::Load,
            ("a red lamp", "red lamp"),
            ("beam", "already"),
        ),
        (
            &loaded[..16],
            Q::Load,
            ("", "nothing more"),
            ("the tip", "A name"),
        ),
        (
            &loaded[..17],
            Q::LoadMass,
            ("6", "6 kg"),
            ("6 N", "Usual is kg"),
        ),
        (
            &loaded[..18],
            Q::LoadAt,
            ("middle", "middle"),
            ("0 kg", "Usual is m"),
        ),
        (
            &loaded,
            Q::LoadHow,
            ("2", "stands on it"),
            ("3", "one of the choices"),
        ),
    ];
    for (before, question, (right, listed), (wrong, fault)) in rows {
        let mut builder = built(before);
        assert_eq!(builder.question(), Some(*question));
        let drawn = builder.problem();
        let said = builder.answer(wrong).unwrap_err().to_string();
        assert!(said.contains(fault), "{question:?} `{wrong}`: {said}");
        assert_eq!(builder.answered(), before.len());
        builder.answer(right).unwrap();
        let last = builder.listed().last().unwrap();
        assert_eq!(&last.told, listed, "{question:?}");
        assert!(!last.label.is_empty());
        assert_eq!(builder.back(), Some((*question, (*right).to_owned())));
        assert_eq!(builder.question(), Some(*question));
        assert_eq!(builder.problem(), drawn, "{question:?}");
    }
}

#[test]
fn trouble_stands_until_an_answer_mends_it() {
    // The hinge lies beyond the middle, so a rope that only pulls up at the tip must push, until a
    // heavy pot hangs there: T·0.8 = 40·9.8·0.8 - 18·9.8·0.4 (worked by hand).
    let mut builder = built(&[
        "plank", "2.4 m", "18 kg", "level", "right", "1", "1.6 m", "1", "tip", "1",
    ]);
    assert!(builder.trouble().is_some());
    for answer in ["1", "pot", "40", "tip"] {
        builder.answer(answer).unwrap();
        assert!(builder.trouble().is_some(), "{answer}");
    }
    assert_eq!(builder.answer("1").unwrap(), None);
    assert_eq!(builder.trouble(), None);
    let problem = builder.problem().unwrap();
    let solution = solve(&problem, &problem.values()).unwrap();
    assert!((solution.force(ForceId::Rope(0)).y - 303.8).abs() < 1e-9);
}

#[test]
fn what_holds_it_is_limited() {
    let mut builder = with(&["1", "tip", "1", "2", "1.2 m", "1", "3", "middle"]);
    assert_eq!(builder.question(), Some(Question::MoreHolds));
    let fault = builder.answer("2").unwrap_err().to_string();
    assert!(fault.contains("as much as"), "{fault}");
    builder.answer("1").unwrap();
    assert_eq!(builder.question(), Some(Question::Load));
}
